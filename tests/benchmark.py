"""Speed as ratios within one run: ``python tests/benchmark.py``.  Not a test.

Every figure is divided by one taken in the same run on the same machine, so that it can be
compared between machines: the whole program against the bare import of its four libraries,
a review against reading the file, remedies against a review.
"""

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Severity
from ampreview.linter.judging.monte_carlo import build_many
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_file

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_specs" / "choir-portable.amp.yaml"
PROPOSAL = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"
LIBRARIES = "import pydantic, pint, ruamel.yaml, rich"
ROUNDS = 7


def best(work: Callable[[], object], rounds: int = ROUNDS) -> float:
    """The shortest of several runs, in seconds."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def process(*words: str) -> Callable[[], object]:
    return lambda: subprocess.run([sys.executable, *words], capture_output=True, check=False)


def main() -> None:
    catalogue = load()
    libraries = best(process("-c", LIBRARIES))
    whole = best(process("-m", "ampreview.linter", "assess", str(SAMPLE)))
    reading = best(lambda: load_file(SAMPLE))
    spec, proposal = load_file(SAMPLE).spec, load_file(PROPOSAL).spec
    assert spec is not None
    assert proposal is not None
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
    main()
