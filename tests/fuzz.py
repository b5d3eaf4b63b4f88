"""Specs that are accepted and absurd: no check may crash on them, and every report must come out.

    python tests/fuzz.py --mutants 200000 [--seed 1] [--jobs 2] [--table]

A mutant is a sample, a published design or the few lines in which a check fails or meets, with
values replaced (by zero, the ends of what is accepted, ranges, one-sided lines), sections called
``none``, and often most of the rest left out.  What crashes is printed with the spec that did it.
``--table`` writes the figures into ``FUZZ.md``.
"""

import argparse
import io
import json
import math
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from ampreview.linter.check import MILESTONES
from ampreview.linter.declare import Field, load_schema
from ampreview.linter.declare.usual import bounds, limits
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.judging.criteria import TODAY
from ampreview.linter.judging.review import Review, concluded
from ampreview.linter.judging.sheets import sheets_of
from ampreview.linter.judging.worksheet import worksheet
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_text, spec_of
from ampreview.linter.reading.source import Document
from ampreview.linter.reports.assess_json import json_pieces
from ampreview.linter.reports.assess_markdown import markdown_pieces
from ampreview.linter.reports.assess_page import LINES, page_lines, print_page
from ampreview.linter.reports.assess_sarif import sarif_pieces
from ampreview.linter.reports.assess_text import print_review
from ampreview.linter.reports.console import console
from ampreview.linter.reports.worksheet_text import markdown, of_sheets

ROOT = Path(__file__).parents[1]
SAMPLES = sorted((ROOT / "sample_specs").glob("*.amp.yaml"))
DESIGNS = sorted((ROOT / "tests" / "published" / "designs").glob("*.amp.yaml"))
FILE = "fuzz.amp.yaml"
SCHEMA = load_schema()
FITTING = [
    path
    for path, known in SCHEMA.fields.items()
    if "[]" not in path
    and not path.startswith(("deviations", "measured", "amplifier_spec"))
    and (known.kind in ("quantity", "count", "word", "flag") or known.can_be_none)
]
PORTION = 100
REPORTED = 50
CRASHED = "the check itself failed"
RESULTS = Path(__file__).with_name("FUZZ.md")


@cache
def sample(path: Path) -> Spec:
    """A spec file of the project."""
    return known_spec(path.read_bytes(), path.name)


def known_spec(text: str | bytes, name: str) -> Spec:
    """A spec that must be accepted."""
    loaded = load_text(text, name)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


@cache
def seeds() -> tuple[Spec, ...]:
    """What the mutants are made of: whole designs, and the few lines that a check needs."""
    whole = [sample(path) for path in (*SAMPLES, *DESIGNS)]
    few = (
        known_spec(f"amplifier_spec: 1\n{text}", f"{entry.name}.amp.yaml")
        for entry in load().entries
        for text in (entry.check.fails, entry.check.passes)
        if text
    )
    return (*whole, *few)


def spoilt(spec: Spec, dice: random.Random, changes: int) -> dict[str, Any]:
    """The data of a spec with some values replaced, added or taken away."""
    data: dict[str, Any] = json.loads(json.dumps(spec.data))
    for _ in range(changes):
        local = dice.choice(FITTING)
        path = local
        if SCHEMA.is_channel_path(local):
            path = f"channels.{dice.choice(spec.channels or ('main',))}.{local}"
        *above, name = path.split(".")
        below = data
        for step in above:
            if not isinstance(below.get(step), dict):
                below[step] = {}
            below = below[step]
        if dice.random() < 0.15:
            below.pop(name, None)
        else:
            below[name] = absurd(SCHEMA.fields[local], dice)
    return data


def thinned(data: Any, dice: random.Random, share: float) -> Any:
    """The same with a share of its values left out."""
    if not isinstance(data, dict):
        return data
    kept = {
        name: thinned(item, dice, share)
        for name, item in data.items()
        if isinstance(item, dict) or dice.random() >= share
    }
    return {"amplifier_spec": "1", **kept} if "amplifier_spec" in data else kept


def worsened(spec: Spec, dice: random.Random, data: dict[str, Any]) -> dict[str, Any]:
    """The same with stated numbers replaced, so that what is computed meets absurd values."""
    stated = [path for path, value in spec.values.items() if isinstance(value, Value)]
    for path in dice.sample(stated, min(len(stated), dice.randrange(6))):
        below: Any = data
        *above, name = path.split(".")
        for step in above:
            below = below.get(step) if isinstance(below, dict) else None
        if isinstance(below, dict) and name in below:
            below[name] = absurd(SCHEMA.field_of(path), dice)
    return data


def absurd(known: Field, dice: random.Random) -> Any:
    """A value that the field accepts, mostly far from what is usual."""
    if known.model is not None:
        return "none"
    if known.words:
        return dice.choice(known.words)
    if known.kind == "count":
        return str(max(round(number(known, dice)), 0 if known.zero else 1))
    kind = dice.randrange(8)
    if kind == 0:
        low, high = sorted((number(known, dice), number(known, dice)))
        return f"{plain(low, known)} .. {plain(high, known)}"
    if kind == 1:
        sides = sorted(
            dice.sample(("min", "typ", "max"), dice.randint(1, 3)), key=("min", "typ", "max").index
        )
        texts = (plain(x, known) for x in sorted(number(known, dice) for _ in sides))
        return dict(zip(sides, texts, strict=True))
    x = number(known, dice)
    if kind == 2 and x > 0 and known.unit not in ("degC", "dB", "%"):
        return f"{plain(x, known)} ± {dice.choice(('1', '50', '99', '99.9999999'))} %"
    return plain(x, known)


def plain(x: float, known: Field) -> Any:
    """A number as the field is written."""
    return spell(Value(x, x, x), known.unit)


def number(known: Field, dice: random.Random) -> float:
    """A number between the ends of what is possible: small, usual, large, or zero."""
    low, high = limits(known.usual, known.usual_high, known.possible, known.unit)
    if known.zero and dice.random() < 0.2:
        return 0.0
    if known.unit in ("degC", "dB"):
        return dice.choice((low, high, 0.0 if low < 0 else low, dice.uniform(low, high)))
    usual_low, usual_high = bounds(known.usual, known.unit)
    low = max(low, usual_low / 1e9)
    first, last = dice.choice(((low, low), (high, high), (usual_low, usual_high), (low, high)))
    x = math.exp(dice.uniform(math.log(first), math.log(last)))
    return min(max(x, low * 1.001), high * 0.999)


def mutant(dice: random.Random) -> dict[str, Any]:
    """One mutant as plain data."""
    seed = dice.choice(seeds())
    data = worsened(seed, dice, spoilt(seed, dice, dice.randint(0, 8)))
    return thinned(data, dice, dice.choice((0.0, 0.0, 0.1, 0.4, 0.8)))


@dataclass
class Tally:
    """What came of some mutants."""

    accepted: int = 0
    refused: int = 0
    reported: int = 0
    crashes: Counter[str] = field(default_factory=Counter)
    first: dict[str, str] = field(default_factory=dict)

    def add(self, other: "Tally") -> None:
        """Count another one in."""
        self.accepted += other.accepted
        self.refused += other.refused
        self.reported += other.reported
        self.crashes += other.crashes
        self.first = other.first | self.first

    def crashed(self, what: str, data: dict[str, Any]) -> None:
        """Keep the first spec of each kind of crash."""
        self.crashes[what] += 1
        self.first.setdefault(what, json.dumps(data, ensure_ascii=False))


def tried(seed: int, wanted: int = PORTION) -> Tally:
    """A portion of accepted mutants, each judged, some reported in every form."""
    dice, tally = random.Random(seed), Tally()
    while tally.accepted < wanted:
        data = mutant(dice)
        milestone = dice.choice(MILESTONES)
        loaded = spec_of(Document(data, {}, {}, ()), FILE, SCHEMA)
        if loaded.spec is None:
            tally.refused += 1
            continue
        tally.accepted += 1
        try:
            run = Assessment(loaded.spec, load(), milestone)
            done = concluded(run, run.findings(), None, TODAY)
            if tally.accepted % REPORTED == 0:
                report_all(done)
                tally.reported += 1
        except Exception as error:  # whatever it is, it is what is looked for
            tally.crashed(f"{type(error).__name__}: {error}"[:200], data)
            continue
        for item in done.findings:
            if CRASHED in item.message:
                tally.crashed(f"{item.check}: {item.message}"[:200], data)
    return tally


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


def portions(total: int, seed: int, jobs: int) -> Iterator[Tally]:
    """The tallies of all portions, as they come."""
    first = seed * 1_000_000
    numbers = range(first, first + -(-total // PORTION))
    if jobs == 1:
        yield from map(tried, numbers)
        return
    with ProcessPoolExecutor(jobs) as executor:
        yield from executor.map(tried, numbers)


def main(words: Sequence[str] | None = None) -> int:
    """Run, and print what was found; 1 where anything crashed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--mutants", type=int, default=5_000, help="accepted mutants to judge")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--table", action="store_true", help=f"write {RESULTS.name}")
    options = parser.parse_args(words)
    whole, begin = Tally(), time.monotonic()
    for part in portions(options.mutants, options.seed, options.jobs):
        for what in part.first.keys() - whole.first.keys():
            print(f"{what}\n  {part.first[what]}")
        whole.add(part)
        spent = time.monotonic() - begin
        print(
            f"{whole.accepted} in {spent:.0f} s, crashed {sum(whole.crashes.values())}", flush=True
        )
    text = results(whole, options.seed)
    print(text)
    if options.table:
        RESULTS.write_text(text, encoding="utf-8")
    return 1 if whole.crashes else 0


def results(whole: Tally, seed: int) -> str:
    """The figures as a page."""
    return (
        "# Accepted and absurd specs\n\n"
        f"    python tests/fuzz.py --mutants {whole.accepted} --seed {seed} --table\n\n"
        "| what | how many |\n|---|---|\n"
        f"| mutants accepted and judged by every check | {whole.accepted} |\n"
        f"| of these, reported in every form with worksheets | {whole.reported} |\n"
        f"| mutants refused on the way | {whole.refused} |\n"
        f"| checks or reports that crashed | {sum(whole.crashes.values())} |\n"
    )


if __name__ == "__main__":
    sys.exit(main())
