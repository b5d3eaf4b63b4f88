"""Speed as ratios within one run: ``python tests/benchmark.py``.  Not a test.

Every figure is divided by one taken in the same run on the same machine, so that it can be
compared between machines: CPU time of the whole program against the bare import of its four
libraries, a review against reading the file, remedies against a review.  ``--table`` sets the
figures beside their goals, as the table in BENCHMARK.md has them; ``--table --short`` takes
seconds, for the rows on many specs alone.
"""

import os
import re
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from itertools import chain
from pathlib import Path

from ampreview.linter.batch.items import Item, Text, Variant
from ampreview.linter.batch.many import review_many
from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.cli import main as run_program
from ampreview.linter.editor.desk import Desk
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Severity
from ampreview.linter.judging.monte_carlo import build_many
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import Spec, load_file, load_text

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_specs" / "choir-portable.amp.yaml"
LARGEST = ROOT / "sample_specs" / "choir-portable-faulty.amp.yaml"
PROPOSAL = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"
LIBRARIES = "import pydantic, pint, ruamel.yaml, rich"
ROUNDS = 7
FEW, MANY = 4, 32
SMALL = """amplifier_spec: 1
supply: {{v_rail: {:.6g} V, bulk: {{v_rated: 35 V}}}}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {{topology: full-bridge, devices: integrated}}
"""

Row = tuple[str, float, float, str]
"""What, the goal, what is reached, the unit."""


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


def typed() -> Callable[[], object]:
    """A keystroke in the editor, in the largest spec, in a number that half of the checks use."""
    desk, text, versions = Desk(), LARGEST.read_text(encoding="utf-8"), iter(range(10_000))

    def work() -> None:
        version = next(versions)
        desk.latest["file:///x"] = version
        changed = re.sub(r"dead_time: \d+", f"dead_time: {30 + version % 40}", text)
        desk.look("file:///x", version, changed)

    work()
    return work


def different(number: int) -> list[Item]:
    """So many complete specs, no two of which have the same inductor, heatsink or pack."""
    text = SAMPLE.read_text(encoding="utf-8")
    found: list[Item] = []
    for n in range(number):
        share = 1.0 + n / 10_000
        other = text.replace("l: 10 uH", f"l: {10 * share:.6g} uH")
        other = other.replace("r_th_sa: 3.5 K/W", f"r_th_sa: {3.5 / share:.6g} K/W")
        found.append(
            Text(f"{n}.amp.yaml", other.replace("typ: 3.3 Ah", f"typ: {3.3 * share:.6g} Ah"))
        )
    return found


def specs_a_second(number: int) -> float:
    """Different complete specs, each reviewed once, in one process."""
    specs = different(number)
    return number / best(lambda: list(review_many(specs)), 1)


def two_over_one(number: int) -> float:
    """Wall time with one process over that with two, both warm; means little on a busy machine."""
    times = []
    for jobs in (1, 2):
        with ProcessPoolExecutor(jobs) as executor:
            list(review_many(different(jobs), executor))
            start = time.perf_counter()
            list(review_many(different(number), executor))
            times.append(time.perf_counter() - start)
    return times[0] / times[1]


def variants_a_second(number: int, **axes: tuple[str, str]) -> float:
    """A grid of two values; each is given as path and text with the number left out."""
    (slow, slow_text), (quick, quick_text) = axes.values()
    base, outer = Text("base", SAMPLE.read_text(encoding="utf-8")), 4
    items = [
        Variant(base, {slow: slow_text.format(a), quick: quick_text.format(b)})
        for a in range(outer)
        for b in range(number // outer)
    ]
    list(review_many(items[:1]))
    return len(items) / best(lambda: list(review_many(items)), 1)


def peak(kind: str, number: int) -> float:
    """The most memory that a report on so many small specs takes, in megabytes."""
    words = [sys.executable, __file__, "--peak", kind, str(number)]
    found = subprocess.run(words, capture_output=True, check=True, text=True)
    return int(found.stdout) / 1024


def print_peak(kind: str, number: int) -> None:
    """In a process of its own: write the specs, review them, tell the most memory used."""
    with tempfile.TemporaryDirectory() as folder:
        files = [Path(folder, f"{n}.amp.yaml") for n in range(number)]
        for n, path in enumerate(files):
            path.write_text(SMALL.format(20 + n / 100), encoding="utf-8")
        words = ["--report", kind, "--remedies", "none", "-o", str(Path(folder, "report"))]
        run_program(["assess", *map(str, files), *words])
    print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)


def many_rows(short: bool) -> Iterator[Row]:
    """Many specs and many variants."""
    number, few, many = (3, 5, 40) if short else (40, 10, 1000)
    yield "different specs a second and core", 100, specs_a_second(number), ""
    yield "two processes, times as quick as one", 1.8, two_over_one(number), ""
    for kind in ("sarif",) if short else ("sarif", "json-lines", "markdown"):
        ratio = peak(kind, many) / peak(kind, few)
        yield f"memory for {kind} on {many} specs over that on {few}", 1.2, ratio, ""
    light = variants_a_second(
        20 if short else 400,
        slow=("channels.left.loudspeaker.p_rated", "8{} W"),
        quick=("channels.left.filter.inductor.i_sat", "15.{:03} A"),
    )
    yield "variants a second and core, values that few checks use", 500, light, ""
    heavy = variants_a_second(
        4 if short else 40,
        slow=("channels.left.loudspeaker.p_rated", "8{} W"),
        quick=("channels.left.gate_drive.dead_time", "50.{:03} ns ± 4 ns"),
    )
    yield "variants a second and core, a value that the heat balance uses", 500, heavy, ""


def one_rows(rounds: int) -> Iterator[Row]:
    """One spec."""
    libraries = best(process("-c", LIBRARIES), rounds)
    plain = best(assess(SAMPLE, "--remedies", "none"), rounds) / libraries
    yield "`assess` of a sound sample, no remedies, over the bare import", 1.25, plain, ""
    default = best(assess(PROPOSAL), min(rounds, 3)) / libraries
    yield "the default report of a proposal full of faults, likewise", 2.5, default, ""
    few, many = (per_channel(number) for number in (FEW, MANY))
    yield f"a channel among {MANY} over one among {FEW}", 1.15, many / few, ""
    one = best(lambda: review(spec_in(SAMPLE)), rounds)
    yield "specs a second and core, no remedies, the same again and again", 100, 1 / one, ""
    warm = best(keystroke(), rounds) * 1e3
    yield "one value changed, what it can alter judged again", 20, warm, " ms"
    key = best(typed(), rounds) * 1e3
    yield (
        "a keystroke in the editor, largest sample, a value that half of the checks use",
        200,
        key,
        " ms",
    )


def table(short: bool) -> None:
    """What is wanted, what is reached; in short with few rounds and few specs."""
    print("| what, in CPU time | goal | reached |\n|---|---|---|")
    rows = chain([] if short else one_rows(ROUNDS), many_rows(short))
    for what, goal, reached, unit in rows:
        print(f"| {what} | {goal}{unit} | {reached:.3g}{unit} |", flush=True)


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
    if "--peak" in sys.argv[1:]:
        print_peak(sys.argv[2], int(sys.argv[3]))
    elif "--table" in sys.argv[1:]:
        table("--short" in sys.argv[1:])
    else:
        main()
