"""Specs that are accepted and absurd: no check may crash on them, and every report must come out.

    python tests/fuzz.py --mutants 200000 [--seed 1] [--jobs 2] [--table]

A mutant (``fuzz_specs.py``) is judged by every check, in one of fifty every report is written.
Then numbers of it are replaced again and again, and the checks that they reach are judged anew
from what is known: a mutant for a small part of the price.  Checks that lack a number wait for
the next whole one.  What crashes is printed with the spec that did it.  ``--table`` writes the
figures into ``FUZZ.md``.
"""

import argparse
import gc
import io
import json
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from itertools import repeat
from pathlib import Path
from typing import Any

from ampreview.linter.check import MILESTONES
from ampreview.linter.evaluation.affected import Affected
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.gap import Gap
from ampreview.linter.evaluation.node import FigureError
from ampreview.linter.finding import Finding
from ampreview.linter.judging.criteria import TODAY
from ampreview.linter.judging.review import Review, concluded
from ampreview.linter.judging.sheets import sheets_of
from ampreview.linter.judging.worksheet import worksheet
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.loading import spec_of
from ampreview.linter.reading.source import Document
from ampreview.linter.reports.assess_json import json_pieces
from ampreview.linter.reports.assess_markdown import markdown_pieces
from ampreview.linter.reports.assess_page import LINES, page_lines, print_page
from ampreview.linter.reports.assess_sarif import sarif_pieces
from ampreview.linter.reports.assess_text import print_review
from ampreview.linter.reports.console import console
from ampreview.linter.reports.worksheet_text import markdown, of_sheets

if __package__:
    from .fuzz_specs import SCHEMA, absurd, mutant, seeds
else:
    from fuzz_specs import SCHEMA, absurd, mutant, seeds

FILE = "fuzz.amp.yaml"
PORTION = 500
VARIED = 100
REPORTED = 50
CRASHED = "the check itself failed"
RESULTS = Path(__file__).with_name("FUZZ.md")


@dataclass
class Tally:
    """What came of some mutants.

    whole: judged by every check; varied: by the checks that other numbers reach, of which there
    were ``judged``; kinds: check, status and severity of every answer met.
    """

    whole: int = 0
    varied: int = 0
    judged: int = 0
    refused: int = 0
    reported: int = 0
    kinds: set[tuple[str, str, str]] = field(default_factory=set)
    crashes: Counter[str] = field(default_factory=Counter)
    first: dict[str, str] = field(default_factory=dict)

    @property
    def accepted(self) -> int:
        """All mutants that were judged."""
        return self.whole + self.varied

    def add(self, other: "Tally") -> None:
        """Count another one in."""
        self.whole += other.whole
        self.varied += other.varied
        self.judged += other.judged
        self.refused += other.refused
        self.reported += other.reported
        self.kinds |= other.kinds
        self.crashes += other.crashes
        self.first = other.first | self.first

    def answered(self, item: Finding, data: Any) -> None:
        """Keep what kind of answer a check gave, and whether it crashed."""
        self.kinds.add((item.check, str(item.status), str(item.severity)))
        if CRASHED in item.message:
            self.crashed(f"{item.check}: {item.message}", data)

    def crashed(self, what: str, data: Any) -> None:
        """Keep the first spec of each kind of crash."""
        self.crashes[what[:200]] += 1
        self.first.setdefault(what[:200], json.dumps(data, ensure_ascii=False))


def tried(seed: int, wanted: int = PORTION, varied: int = VARIED) -> Tally:
    """A portion of accepted mutants: whole ones, and those that follow from each."""
    dice, tally = random.Random(seed), Tally()
    while tally.accepted < wanted:
        data = mutant(dice)
        loaded = spec_of(Document(data, {}, {}, ()), FILE, SCHEMA)
        if loaded.spec is None:
            tally.refused += 1
            continue
        run = Assessment(loaded.spec, load(), dice.choice(MILESTONES))
        tally.whole += 1
        try:
            answers = list(run.findings())
            done = concluded(run, answers, None, TODAY)
            if tally.whole % REPORTED == 1:
                report_all(done)
                tally.reported += 1
            for item in done.findings:
                tally.answered(item, data)
            for _ in range(min(varied, wanted - tally.accepted)):
                vary(run, answers, dice, tally)
        except Exception as error:  # whatever it is, it is what is looked for
            tally.crashed(f"{type(error).__name__}: {error}", data)
    return tally


def vary(run: Assessment, answers: Sequence[Finding], dice: random.Random, tally: Tally) -> None:
    """One to three stated numbers replaced, and judged anew what they reach and can be computed."""
    stated = [path for path, value in run.spec.values.items() if isinstance(value, Value)]
    paths = dice.sample(stated, min(len(stated), dice.choice((1, 1, 2, 3))))
    changes = {path: absurd(SCHEMA.field_of(path), dice) for path in paths}
    revised = run.revised(changes, apart=True)
    if revised is None:
        tally.refused += 1
        return
    tally.varied += 1
    after, change = revised
    try:
        for found in judged_anew(after, change, run, answers):
            tally.judged += 1
            tally.answered(found, after.spec.data)
    except Exception as error:
        tally.crashed(f"{type(error).__name__}: {error}", after.spec.data)


def judged_anew(
    after: Assessment, change: Affected, before: Assessment, answers: Sequence[Finding]
) -> Iterator[Finding]:
    """The answers that a change can alter, of the checks that lack nothing."""
    for (entry, subject), old in zip(before.questions(), answers, strict=True):
        if not change.alters(entry.name, old.evidence.leaves):
            continue
        try:
            lacks = isinstance(after.prepare(entry, subject, after.graph), Gap)
        except FigureError:
            lacks = False
        if not lacks:
            yield after.judge(entry, subject)


def report_all(done: Review, sheets: bool = True) -> None:
    """Every report of a review, for its effect alone."""
    page = console(io.StringIO(), 80)
    assert len(page_lines(done, 80)) < LINES
    print_page(done, page)
    print_review(done, page)
    outcomes = [(FILE, done)]
    assert "".join(markdown_pieces(outcomes)).startswith("# Design review")
    for report in ("".join(json_pieces(outcomes)), "".join(sarif_pieces(outcomes))):
        json.loads(report, parse_constant=no_number)
    if sheets:
        run = Assessment(done.spec, done.catalogue, done.verdict.milestone)
        pages = [worksheet(run, entry, subject) for entry, subject in run.questions()]
        assert markdown(done.spec, of_sheets(sheets_of(pages)))


def no_number(name: str) -> None:
    """NaN and infinity are no JSON."""
    raise ValueError(name)


def portions(total: int, seed: int, varied: int, jobs: int) -> Iterator[Tally]:
    """The tallies of all portions, as they come."""
    first = seed * 1_000_000
    numbers = range(first, first + -(-total // PORTION))
    if jobs == 1:
        yield from (tried(number, varied=varied) for number in numbers)
        return
    with ProcessPoolExecutor(jobs) as executor:
        yield from executor.map(tried, numbers, repeat(PORTION), repeat(varied))


def main(words: Sequence[str] | None = None) -> int:
    """Run, and print what was found; 1 where anything crashed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--mutants", type=int, default=5_000, help="accepted mutants to judge")
    parser.add_argument("--varied", type=int, default=VARIED, help="made of each whole one")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--table", action="store_true", help=f"write {RESULTS.name}")
    options = parser.parse_args(words)
    whole, begin = Tally(), time.monotonic()
    load(), seeds(), gc.freeze()
    gc.set_threshold(100_000)
    for part in portions(options.mutants, options.seed, options.varied, options.jobs):
        for what in part.first.keys() - whole.first.keys():
            print(f"{what}\n  {part.first[what]}")
        whole.add(part)
        spent = time.monotonic() - begin
        crashed, kinds = sum(whole.crashes.values()), len(whole.kinds)
        print(f"{whole.accepted} in {spent:.0f} s, {kinds} kinds, crashed {crashed}", flush=True)
        if options.table:
            write_table(whole, options.seed)
    return 1 if whole.crashes else 0


def write_table(whole: Tally, seed: int) -> None:
    """The figures so far, in place of the table that is there."""
    rows = {
        "mutants accepted": whole.accepted,
        "judged by every check": whole.whole,
        "of these, reported in every form with worksheets": whole.reported,
        "varied from these by other numbers": whole.varied,
        "answers judged anew in them": whole.judged,
        "mutants refused on the way": whole.refused,
        "kinds of answers met (check, status, severity)": len(whole.kinds),
        "checks or reports that crashed": sum(whole.crashes.values()),
    }
    told = "".join(f"| {what} | {number} |\n" for what, number in rows.items())
    command = f"    python tests/fuzz.py --mutants {whole.accepted} --seed {seed} --table\n"
    below = RESULTS.read_text(encoding="utf-8").partition("\n## ")
    head = f"# Accepted and absurd specs\n\n{command}\n| what | how many |\n|---|---|\n{told}"
    RESULTS.write_text(f"{head}{''.join(below[1:])}", encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
