"""Speed as ratios within one run: ``python tests/benchmark.py``.  Not a test.

Every figure is divided by one taken in the same run on the same machine, so that it can be
compared between machines: CPU time of the whole program against the bare import of its four
libraries, a review against reading the file, remedies against a review.  ``--table`` sets the
figures beside their goals, as the table in BENCHMARK.md has them.
"""

import os
import re
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Severity
from ampreview.linter.judging.monte_carlo import build_many
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import Spec, load_file, load_text

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_specs" / "choir-portable.amp.yaml"
PROPOSAL = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"
LIBRARIES = "import pydantic, pint, ruamel.yaml, rich"
ROUNDS = 7
FEW, MANY = 4, 32


def best(work: Callable[[], object], rounds: int = ROUNDS) -> float:
    """The least CPU time of several runs, that of processes started included, in seconds."""
    times = []
    for _ in range(rounds):
        start = _cpu()
        work()
        times.append(_cpu() - start)
    return min(times)


def _cpu() -> float:
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + children.ru_utime + children.ru_stime


def process(*words: str) -> Callable[[], object]:
    """A Python process, its modules compiled beforehand as those of an installed package are."""
    environment = os.environ | {"PYTHONDONTWRITEBYTECODE": ""}
    return lambda: subprocess.run(
        [sys.executable, *words], capture_output=True, check=False, env=environment
    )


def assess(path: Path, *words: str) -> Callable[[], object]:
    return process("-m", "ampreview.linter", "assess", str(path), *words)


def with_channels(number: int) -> Spec:
    """The sample with its channel as often as asked."""
    text = SAMPLE.read_text(encoding="utf-8")
    more = "".join(f"  channel-{n}: *channel\n" for n in range(2, number + 1))
    found = load_text(re.sub(r"  right: \*channel\n", more, text), "many.amp.yaml").spec
    assert found is not None
    return found


def per_channel(number: int) -> float:
    """The review of a spec with so many channels that state the same, over their number."""
    spec = with_channels(number)
    return best(lambda: review(spec), 3) / number


def spec_in(path: Path) -> Spec:
    found = load_file(path).spec
    assert found is not None
    return found


def keystroke() -> Callable[[], object]:
    """One value of a spec under review is changed, and what it can alter is judged again."""
    run = Assessment(spec_in(SAMPLE), load(), "prototype")
    before = {(x.check, x.subject): x for x in run.findings()}
    currents = iter(range(150, 999))

    def work() -> None:
        found = run.revised({"channels.left.filter.inductor.i_sat": f"{next(currents) / 10} A"})
        assert found is not None
        after, change = found
        for entry, subject in after.questions():
            old = before.get((entry.name, subject))
            if old is None or change.alters(entry.name, old.evidence.leaves):
                after.judge(entry, subject)

    return work


def table() -> None:
    """What is wanted, what is reached."""
    libraries = best(process("-c", LIBRARIES))
    plain = best(assess(SAMPLE, "--remedies", "none")) / libraries
    default = best(assess(PROPOSAL), 3) / libraries
    few, many = (per_channel(number) for number in (FEW, MANY))
    one = best(lambda: review(spec_in(SAMPLE)))
    rows = (
        ("`assess` of a sound sample, no remedies, over the bare import", 1.25, plain, ""),
        ("the default report of a proposal full of faults, likewise", 2.5, default, ""),
        (f"a channel among {MANY} over one among {FEW}", 1.15, many / few, ""),
        ("specs a second and core, no remedies, in one process", 100, 1 / one, ""),
        ("one value changed, what it can alter judged again", 20, best(keystroke()) * 1e3, " ms"),
    )
    print("| what, in CPU time | goal | reached |\n|---|---|---|")
    for what, goal, reached, unit in rows:
        print(f"| {what} | {goal}{unit} | {reached:.3g}{unit} |")


def main() -> None:
    catalogue = load()
    libraries = best(process("-c", LIBRARIES))
    whole = best(assess(SAMPLE))
    reading = best(lambda: load_file(SAMPLE))
    spec, proposal = spec_in(SAMPLE), spec_in(PROPOSAL)
    reviewing = best(lambda: review(spec))
    held = review(proposal)
    judging = best(lambda: review(proposal))
    advising = best(lambda: with_remedies(held), 2)
    planning = best(lambda: plan(held), 2)
    given = (spec, catalogue, "prototype", Severity.MAJOR)
    drawing = best(lambda: build_many(*given, builds=100_000), 2)
    print(f"bare import of the four libraries      {libraries * 1e3:8.0f} ms")
    print(f"one spec assessed, as a process        {whole / libraries:8.2f} x the bare import")
    print(f"one spec read                          {reading * 1e3:8.1f} ms")
    print(f"one spec reviewed in the worst case    {reviewing / reading:8.1f} x reading it")
    print(f"remedies of a proposal full of faults  {advising / judging:8.1f} x its review")
    print(f"the whole plan of that proposal        {planning / judging:8.1f} x its review")
    print(f"                                       {planning:8.2f} s")
    print(f"100 000 builds of the whole catalogue  {drawing / reviewing:8.1f} x one review")
    print(f"                                       {drawing:8.2f} s")


if __name__ == "__main__":
    table() if "--table" in sys.argv[1:] else main()
