"""The order of keys and channels, anchors, comments and line ends of a spec change no finding."""

import json
import random
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.finding import Finding, Remedy
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

SAMPLES = Path(__file__).parents[1] / "sample_specs"
NAMES = ("bedside-lamp-faulty",)
TWO = "bird-call-pocket-faulty"


def findings(content: str | bytes) -> dict[tuple[str, str], tuple[object, ...]]:
    """The answers by check and subject, without places: lines move."""
    spec = load_text(content, "a.amp.yaml").spec
    assert spec is not None
    return {(x.check, x.subject): told(x) for x in review(spec).findings}


def told(item: Finding) -> tuple[object, ...]:
    found = item.evidence
    return item.status, item.severity, item.message, found.figure, found.limit, found.margin


def shuffled(data: Any, dice: random.Random, top: bool = True) -> Any:
    """The same data, the keys of every section in another order; the version stays first."""
    if not isinstance(data, dict):
        return data
    names = [name for name in data if not top or name != "amplifier_spec"]
    dice.shuffle(names)
    first = ["amplifier_spec"] if top else []
    return {name: shuffled(data[name], dice, False) for name in [*first, *names]}


def anchored(text: str) -> str:
    """Every battery, supply and channel through an anchor and a merge key, with comments."""
    lines = ["# a comment", *text.splitlines()]
    found = []
    for line in lines:
        name = line.removesuffix(":")
        if name in ("supply", "battery", "thermal") and line.endswith(":"):
            found += [f"{line} &{name}  # anchored", "  # inside"]
        else:
            found.append(line)
    return "\n".join(found)


@pytest.mark.slow
def test_two_channels_in_another_order_get_the_same_findings_and_changes() -> None:
    """All keys in another order too; only who comes first among equals follows the file."""
    spec = load_text((SAMPLES / f"{TWO}.amp.yaml").read_bytes(), "a.amp.yaml").spec
    assert spec is not None
    data = dict(spec.data)
    data["channels"] = dict(reversed(data["channels"].items()))
    first, second = cured(spec.data), cured(shuffled(data, random.Random(7)))
    assert list(data["channels"]) == ["right", "left"]
    assert any(changes for _, changes in first.values())
    assert first == second


def cured(data: Any) -> dict[tuple[str, str], tuple[object, object]]:
    """The answers with the changes that are proposed for each."""
    spec = load_text(json.dumps(data, ensure_ascii=False), "a.amp.yaml").spec
    assert spec is not None
    return {
        (x.check, x.subject): (told(x), [changed(change) for change in x.advice.remedies])
        for x in with_remedies(review(spec)).findings
    }


def changed(item: Remedy) -> tuple[object, ...]:
    """What a change sets and does, whichever channel is named first."""
    lists = (item.changes, item.cured, item.eased, item.worsened, item.appeared, item.opened)
    return item.kind, item.title, *(sorted(names) for names in lists)


@pytest.mark.slow
@pytest.mark.parametrize("name", NAMES)
def test_notation_changes_no_finding(name: str) -> None:
    text = (SAMPLES / f"{name}.amp.yaml").read_text(encoding="utf-8")
    before = findings(text)
    spec = load_text(text, "a.amp.yaml").spec
    assert spec is not None
    mixed = json.dumps(shuffled(spec.data, random.Random(7)), ensure_ascii=False)
    for written in (mixed, anchored(text)):
        assert findings(written) == before
    crlf = text.replace("\n", "\r\n").encode("utf-8")
    assert findings(b"\xef\xbb\xbf" + crlf) == before
    twin = f"amplifier_spec: 1\nchannels: {{a: &a {json.dumps(channel(spec.data))}, b: *a}}\n"
    merged = (
        f"amplifier_spec: 1\nchannels: {{a: &a {json.dumps(channel(spec.data))}, b: {{<<: *a}}}}\n"
    )
    assert findings(twin) == findings(merged)


def channel(data: Any) -> Any:
    return next(iter(data["channels"].values()))
