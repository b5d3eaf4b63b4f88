"""Mutation run over the rules: how well do the tests guard the numbers?

One number, operator or comparison at a time is changed in memory; the tests that execute
the changed function (for data: the tests of the check and of its domain) must notice.
The mutants come from the operators of cosmic-ray and from one more that changes the
number in texts with a unit: limits, assumptions, constants.  The tests are collected
once, and every mutant lives in a process forked from there, so nothing on disk changes.

    python tests/mutation.py                          all of rules/
    python tests/mutation.py rules/formulas/lc.py     some files
    python tests/mutation.py --sample 1000 --seed 1   a random sample
    python tests/mutation.py --unchanged              proof of the method: nothing is changed,
                                                      so that nothing may be noticed

Needs the extra ``mutation`` and an operating system that can fork.  Not part of CI.
"""

import argparse
import os
import random
import signal
import sys
import time
from collections import defaultdict
from pathlib import Path
from types import CodeType
from typing import Any

import pytest
from _pytest.runner import runtestprotocol
from mutants import ROOT, Mutant, apply, mutants_of

RULES = ROOT / "rules"
TIMEOUT = 60
EXAMPLES = "test_worked_examples.py"
NO_PROGRAM = 2
"""Exit code of a mutant that cannot be imported: it says nothing about the tests."""


class Run:
    """A pytest plugin that runs the mutants instead of the tests."""

    def __init__(self, terms: argparse.Namespace) -> None:
        self.terms = terms
        self.reached: dict[tuple[str, int], set[int]] = defaultdict(set)
        self.lines: dict[Path, dict[int, int]] = {}
        self.seconds: list[float] = []
        self.items: list[Any] = []
        self.survivors: list[Mutant] = []
        self.void: list[Mutant] = []

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Coverage of every test first, then every mutant; the report on standard output."""
        if session.testsfailed:
            raise session.Interrupted("a file of tests cannot be read")
        self.items = session.items
        self.observe()
        mutants = self.chosen()
        print(f"{len(self.items)} tests, {len(mutants)} mutants", flush=True)
        running: dict[int, Mutant] = {}
        waiting = list(reversed(mutants))
        while waiting or running:
            while waiting and len(running) < self.terms.jobs:
                mutant = waiting.pop()
                running[self.fork(mutant)] = mutant
            pid, status = os.wait()
            mutant = running.pop(pid)
            if os.waitstatus_to_exitcode(status) == NO_PROGRAM:
                self.void.append(mutant)
            elif self.terms.unchanged and status:
                print(f"noticed although unchanged: {mutant.file}", flush=True)
            if status == 0:
                self.survivors.append(mutant)
                if not self.terms.unchanged:
                    print(f"survived {mutant.operator}: {mutant.show()}", flush=True)
            done = len(mutants) - len(waiting) - len(running)
            if done % 100 == 0:
                print(f"{done} done", file=sys.stderr, flush=True)
        print(f"{len(self.void)} mutants that are no program, left out", flush=True)
        mutants = [mutant for mutant in mutants if mutant not in self.void]
        texts = [mutant for mutant in mutants if mutant.operator == "TextNumber"]
        report("numbers in texts", texts, self.survivors)
        report("code", [mutant for mutant in mutants if mutant not in texts], self.survivors)
        report("all", mutants, self.survivors)
        return True

    def chosen(self) -> list[Mutant]:
        """The mutants of the files asked for, or a random sample of them."""
        files = self.terms.files or sorted(RULES.rglob("*.py"))
        files = [file.resolve() for file in files if file.name != "__init__.py"]
        if self.terms.unchanged:
            return [Mutant(file, 0, "", 0, 0) for file in files]
        mutants = [mutant for file in files for mutant in mutants_of(file)]
        if self.terms.sample and self.terms.sample < len(mutants):
            mutants = random.Random(self.terms.seed).sample(mutants, self.terms.sample)
        return mutants

    def observe(self) -> None:
        """Run every test once, in a child, and note which functions of the rules it calls."""
        reader, writer = os.pipe()
        pid = os.fork()
        if pid == 0:
            os.close(reader)
            with os.fdopen(writer, "w") as out:
                for number, item in enumerate(self.items):
                    calls: set[tuple[str, int]] = set()
                    start = time.monotonic()
                    passed = self.traced(item, calls)
                    spent = time.monotonic() - start
                    print(
                        number,
                        int(passed),
                        spent,
                        *(f"{f}|{n}" for f, n in calls),
                        sep="\t",
                        file=out,
                    )
            os._exit(0)
        os.close(writer)
        with os.fdopen(reader) as lines:
            for line in lines:
                count, good, spent, *reached = line.rstrip("\n").split("\t")
                self.seconds.append(float(spent))
                if good == "0":
                    print("left out, fails by itself:", self.items[int(count)].nodeid)
                    continue
                for place in ("|0", *reached):
                    path, _, first_line = place.rpartition("|")
                    self.reached[path, int(first_line)].add(int(count))
        os.waitpid(pid, 0)

    def traced(self, item: Any, calls: set[tuple[str, int]]) -> bool:
        """Run one test; True when it passes."""
        here = str(RULES)

        def note(frame: Any, event: str, arg: Any) -> None:
            if frame.f_code.co_filename.startswith(here):
                calls.add((frame.f_code.co_filename, frame.f_code.co_firstlineno))

        sys.settrace(note)
        try:
            return self.passes(item)
        finally:
            sys.settrace(None)

    @staticmethod
    def passes(item: Any) -> bool:
        """Whether a test passes; setup and teardown included."""
        reports = runtestprotocol(item, log=False, nextitem=None)
        return not any(report.failed for report in reports)

    def tests_for(self, mutant: Mutant) -> list[int]:
        """The tests that execute the mutated function; for data those near it; fast first."""
        file = str(mutant.file)
        if mutant.file not in self.lines:
            self.lines[mutant.file] = _functions(mutant.file)
        first = self.lines[mutant.file].get(mutant.line, 0)
        chosen = set(self.reached.get((file, first), ()))
        if not chosen:
            name, domain = mutant.file.stem.replace("_", "-"), mutant.file.parent.name
            near = (
                f"[{name}]",
                f"[{name}-",
                f"-{name}]",
                f"/{domain}/",
                "test_limits",
                "test_assumptions",
                "test_published_tables",
                "/rules/derived/",
            )
            usable = self.reached["", 0]
            chosen = {n for n in usable if any(x in self.items[n].nodeid for x in near)}
            for (other, _), numbers in self.reached.items():
                chosen |= numbers if other == file else set()
            chosen = chosen or usable
        return sorted(chosen, key=lambda n: self.seconds[n])

    def fork(self, mutant: Mutant) -> int:
        """A child that leaves with 0 when no test notices, NO_PROGRAM when there is no mutant."""
        pid = os.fork()
        if pid:
            return pid
        signal.alarm(TIMEOUT)
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        try:
            apply(mutant)
        except BaseException:
            os._exit(NO_PROGRAM)
        try:
            noticed = any(not self.passes(self.items[n]) for n in self.tests_for(mutant))
        except BaseException:
            noticed = True
        os._exit(1 if noticed else 0)


def report(what: str, mutants: list[Mutant], survivors: list[Mutant]) -> None:
    """One line of the result."""
    caught = sum(mutant not in survivors for mutant in mutants)
    share = 100 * caught / max(len(mutants), 1)
    print(f"{what}: {caught} of {len(mutants)} mutants caught, {share:.1f} %", flush=True)


def _functions(file: Path) -> dict[int, int]:
    """First line of the function that each line of a file belongs to."""
    found: dict[int, int] = {}

    def enter(code: CodeType) -> None:
        for part in code.co_consts:
            if isinstance(part, CodeType):
                last = max((line for _, _, line in part.co_lines() if line), default=0)
                for line in range(part.co_firstlineno, last + 1):
                    if not part.co_name.startswith("<"):
                        found[line] = part.co_firstlineno
                enter(part)

    enter(compile(file.read_text(), str(file), "exec"))
    return found


def main() -> int:
    """Parse the command line and hand over to pytest."""
    parser = argparse.ArgumentParser(description="mutation run over rules/")
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--sample", type=int, default=0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--unchanged", action="store_true")
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    terms = parser.parse_args()
    where = [str(ROOT / "tests" / name) for name in ("rules", "published", EXAMPLES)]
    return int(pytest.main([*where, "-q", "-s", "-p", "no:cacheprovider"], plugins=[Run(terms)]))


if __name__ == "__main__":
    sys.exit(main())
