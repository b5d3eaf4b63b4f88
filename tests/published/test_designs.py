"""Published designs that work: no critical, and no major but for their published weakness.

Each file in ``designs/`` transcribes one published design with its source.
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from ampreview.linter.declare import field_path, load_schema
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import Review, review

from .. import reviews

FOLDER = Path(__file__).parent / "designs"
SUFFIX = ".amp.yaml"

CAPACITORS = "560 pF and 100 pF as printed cannot give the 25 kHz that the author claims"
WEAKNESSES = {
    "thesis-full-bridge": {
        "stated-value-contradicts": CAPACITORS,
        "value-outside-usual-range": CAPACITORS,
        "carrier-attenuation": CAPACITORS,
        "dead-time-share": "375 ns measured where 22 ns were computed; the author's simulation"
        " of 350 ns shows strong crossover distortion",
    },
    "half-bridge-slow-driver": {
        "dead-time-share": "520 ns are fixed in the driver; the carrier was lowered for it",
    },
    "dock-half-bridge": {
        "filterless-drive": "two-level drive of a loudspeaker without a filter, as published",
    },
    "split-half-bridge-integrated-31v": {
        "power-above-rail": "130 W without a distortion on the page seen; +-31 V give a clean"
        " sine of 120 W into 4 ohm, so it is a power of a clipped sine",
    },
}
FILES = sorted(path.name.removesuffix(SUFFIX) for path in FOLDER.glob(f"*{SUFFIX}"))


def reviewed(file: str) -> Review:
    return reviews.reviewed(FOLDER / f"{file}{SUFFIX}", "prototype")


def names(file: str, severity: Severity) -> set[str]:
    return {x.check for x in reviewed(file).failing() if x.severity is severity}


def test_designs_are_there() -> None:
    assert len(FILES) >= 12
    assert set(WEAKNESSES) <= set(FILES)


@pytest.mark.parametrize("file", FILES)
def test_no_critical(file: str) -> None:
    assert names(file, Severity.CRITICAL) == set()


@pytest.mark.parametrize("file", FILES)
def test_each_major_is_a_published_weakness(file: str) -> None:
    """Both ways: no other major, and none of these missed."""
    assert names(file, Severity.MAJOR) == set(WEAKNESSES.get(file, {}))


@pytest.mark.parametrize("file", FILES)
def test_no_check_fails_by_itself(file: str) -> None:
    assert not [x for x in reviewed(file).findings if "check itself failed" in x.message]


def test_a_stated_band_clears_the_dock() -> None:
    """470 uF into 4 ohm cut below 85 Hz; no band is claimed, so it is a minor until one is."""
    assert "blocking-capacitor-corner-unclaimed" in names("dock-half-bridge", Severity.MINOR)
    loaded = reviewed("dock-half-bridge").spec
    changed = loaded.with_values(
        {f"channels.{name}.band": "85 Hz .. 20 kHz" for name in loaded.channels}
    ).spec
    assert changed is not None
    found = {x.check for x in review(changed, "prototype").failing()}
    assert not {x for x in found if x.startswith("blocking-capacitor-corner")}


def section() -> str:
    """The major findings that remain on designs that work, as Markdown."""
    found = {file: reviewed(file).failing() for file in FILES}
    critical = sum(x.severity is Severity.CRITICAL for items in found.values() for x in items)
    majors = {
        (file, x.check): WEAKNESSES.get(file, {}).get(x.check, "NOT PUBLISHED")
        for file, items in found.items()
        for x in items
        if x.severity is Severity.MAJOR
    }
    lines = ["## Designs that work: majors that remain", ""]
    lines.append(f"{len(FILES)} designs at `prototype`: {critical or 'no'} critical findings, and")
    lines.append(f"{len(majors)} kinds of major on {len({file for file, _ in majors})} of them:")
    lines += ["", "| design | major | published weakness |", "|---|---|---|"]
    lines += [f"| `{file}` | `{check}` | {why} |" for (file, check), why in majors.items()]
    return "\n".join(lines)


def holding(file: str, status: Status) -> dict[str, Finding]:
    """What holds a design, one answer for each check."""
    items = reviewed(file).verdict.holding
    return {x.check: x for x in reversed(items) if x.status is status}


def asked_of(item: Finding) -> str:
    """What an open item asks for, in the words of the fields."""
    spec = load_schema()
    fields = dict.fromkeys(field_path(gap.path) for gap in item.advice.missing)
    words = [spec.fields[path].part or spec.fields[path].meaning for path in fields]
    border = next((gap.border for gap in item.advice.missing if gap.border), "")
    first = words[0].partition(";")[0] if words else "see the check"
    more = f" and {len(words) - 1} more" if len(words) > 1 else ""
    return f"{first}{more}{f', {border}' if border else ''}"


def holding_section() -> str:
    """What holds the designs that work, as Markdown: each a question that a reviewer would ask."""
    counts = ["| design | holding findings | holding open items |", "|---|---|---|"]
    asked: dict[str, list[Finding]] = {}
    for file in FILES:
        findings, items = holding(file, Status.FINDING), holding(file, Status.OPEN)
        counts.append(f"| `{file}` | {len(findings)} | {len(items)} |")
        for check, item in items.items():
            asked.setdefault(check, []).append(item)
    lines = ["## Designs that work: what holds them at `prototype`", ""]
    lines += ["Published designs leave much unsaid. Checks are counted, not channels.", "", *counts]
    lines += ["", "| open check | designs | asked for, in one of them |", "|---|---|---|"]
    often = sorted(asked.items(), key=lambda entry: (-len(entry[1]), entry[0]))
    lines += [f"| `{check}` | {len(items)} | {asked_of(items[0])} |" for check, items in often]
    return "\n".join(lines)


def test_open_items_of_published_designs_say_what_is_missing() -> None:
    """Nobody can answer an item that asks for nothing."""
    for file in FILES:
        for check, item in holding(file, Status.OPEN).items():
            assert item.advice.missing, f"{file}: {check}: {item.message}"


def test_what_holds_is_what_is_stored(same_as_stored: Callable[[str], None]) -> None:
    same_as_stored(holding_section())


def test_the_stored_table_is_what_the_reviews_give(same_as_stored: Callable[[str], None]) -> None:
    same_as_stored(section())
