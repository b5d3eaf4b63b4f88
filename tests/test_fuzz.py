"""Any file whatever gives a verdict, or a refusal with its place; never a crash.

Random bytes, samples with garbled lines, and samples with values that are possible but absurd
go the whole way: read, reviewed, reported in every form, some of them cured and planned.
Set FUZZ to the number of examples for a longer run with other random choices.
"""

import io
import json
import math
import os
import random
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.declare import Field, load_schema
from ampreview.linter.declare.usual import bounds, limits
from ampreview.linter.judging.review import Review, review
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.reports.assess_json import json_pieces
from ampreview.linter.reports.assess_markdown import markdown_pieces
from ampreview.linter.reports.assess_page import LINES, page_lines, print_page
from ampreview.linter.reports.assess_sarif import sarif_pieces
from ampreview.linter.reports.assess_text import print_refusals, print_review
from ampreview.linter.reports.console import console

SCHEMA = load_schema()
FIELDS = SCHEMA.fields
is_channel_path = SCHEMA.is_channel_path

FOLDER = Path(__file__).parents[1] / "sample_specs"
SAMPLES = sorted(FOLDER.glob("*.amp.yaml"))
LIGHT = [path for path in SAMPLES if "choir" not in path.name]
FILE = "fuzz.amp.yaml"
SCRAPS = (
    "none", "0", "-1", "1e9", "24", "24 V", "1e-30 V", "nan", "inf ohm", "1,5 V", "{", "}", "[]",
    "{min: 1 V, max: 0 V}", "*", "*shared", "&shared x", "<<: *shared", "!!python/name:os.system x",
    "yes", "~", "", "'", '"', "|", ">", "%", "@", "`", "\t", "---", "...", "? x",
    "\u2028", "\u200b", "4R7", "20 V .. 10 V", "5 V ± 200 %", "# x", "- - -", "a: b: c", "9" * 60,
    "x" * 300,
)  # fmt: skip
FITTING = [
    path
    for path, field in FIELDS.items()
    if "[]" not in path
    and not path.startswith(("deviations", "amplifier_spec"))
    and (field.kind in ("quantity", "count", "word", "flag") or field.can_be_none)
]


def settled(examples: int) -> settings:
    wanted = os.environ.get("FUZZ")
    return settings(
        max_examples=int(wanted or examples),
        derandomize=wanted is None,
        deadline=None,
        phases=[Phase.generate],
    )


def whole_way(content: str | bytes) -> Review | None:
    """Read, review and report; what comes out must be a verdict or refusals with places."""
    loaded = load_text(content, FILE)
    page = console(io.StringIO(), 80)
    if loaded.spec is None:
        assert loaded.refusals
        for refusal in loaded.refusals:
            assert refusal.place.file == FILE
            assert refusal.place.line >= 1
            assert refusal.place.column >= 1
            assert refusal.problem
            assert refusal.expected
        print_refusals(FILE, loaded.refusals, page)
        json.loads("".join(json_pieces([(FILE, loaded.refusals)])), parse_constant=pytest.fail)
        return None
    done = review(loaded.spec)
    failed = [item.message for item in done.findings if "check itself failed" in item.message]
    assert not failed
    assert len(page_lines(done, 80)) < LINES
    print_page(done, page)
    print_review(done, page)
    outcomes = [(FILE, done)]
    assert "".join(markdown_pieces(outcomes)).startswith("# Design review")
    for report in ("".join(json_pieces(outcomes)), "".join(sarif_pieces(outcomes))):
        json.loads(report, parse_constant=pytest.fail)
    return done


@settled(300)
@given(st.binary(max_size=400))
def test_random_bytes(content: bytes) -> None:
    assert whole_way(content) is None


@settled(100)
@given(st.text(st.sampled_from("ab: -{}[],&*<#'\"|>!%@?\n\t0.5 V"), max_size=120))
def test_random_text_of_the_signs_that_the_format_uses(content: str) -> None:
    whole_way(f"amplifier_spec: 1\n{content}")


@pytest.mark.slow
@settled(60)
@given(st.sampled_from(LIGHT), st.integers(0, 2**32), st.integers(1, 8))
def test_samples_with_garbled_lines(path: Path, seed: int, changes: int) -> None:
    dice = random.Random(seed)
    lines = path.read_text(encoding="utf-8").splitlines()
    for _ in range(changes):
        garble(lines, dice)
    whole_way("\n".join(lines))


def garble(lines: list[str], dice: random.Random) -> None:
    """One change of one line or two."""
    here, there = dice.randrange(len(lines)), dice.randrange(len(lines))
    key, colon, value = lines[here].partition(":")
    kind = dice.randrange(8)
    if kind == 0 and len(lines) > 2:
        del lines[here]
    elif kind == 1:
        lines.insert(there, lines[here])
    elif kind == 2:
        lines[here] = f"{key}{colon} {dice.choice(SCRAPS)}"
    elif kind == 3:
        other = lines[there].partition(":")
        lines[here], lines[there] = f"{key}{colon}{other[2]}", f"{other[0]}{other[1]}{value}"
    elif kind == 4:
        at = dice.randrange(len(lines[here]) + 1)
        lines[here] = lines[here][:at] + dice.choice(SCRAPS) + lines[here][at:]
    elif kind == 5:
        at = dice.randrange(len(lines[here]) + 1)
        lines[here] = lines[here][:at] + lines[here][at + 1 :]
    elif kind == 6:
        lines[here] = " " * dice.randrange(9) + lines[here].lstrip()
    else:
        lines[here] = f"{key}{colon} none"


@cache
def sample(path: Path) -> Spec:
    spec = load_text(path.read_bytes(), path.name).spec
    assert spec is not None
    return spec


@pytest.mark.slow
@settled(30)
@given(st.sampled_from(SAMPLES), st.integers(0, 2**32), st.integers(1, 12))
def test_samples_with_possible_but_absurd_values(path: Path, seed: int, changes: int) -> None:
    whole_way(spoilt(sample(path), random.Random(seed), changes))


@pytest.mark.slow
@settled(6)
@given(st.sampled_from(LIGHT), st.integers(0, 2**32), st.integers(1, 4))
def test_cures_and_plans_of_absurd_specs(path: Path, seed: int, changes: int) -> None:
    done = whole_way(spoilt(sample(path), random.Random(seed), changes))
    if done is not None:
        json.loads("".join(json_pieces([(FILE, with_remedies(done))])), parse_constant=pytest.fail)
        assert plan(done).after.verdict.milestone == done.verdict.milestone


def spoilt(spec: Spec, dice: random.Random, changes: int) -> str:
    """The spec with some values replaced, added or taken away; JSON is YAML too."""
    data = json.loads(json.dumps(spec.data))
    for _ in range(changes):
        path = dice.choice(FITTING)
        if is_channel_path(path):
            path = f"channels.{dice.choice(spec.channels)}.{path}"
        *above, name = path.split(".")
        below = data
        for step in above:
            if not isinstance(below.get(step), dict):
                below[step] = {}
            below = below[step]
        if dice.random() < 0.15:
            below.pop(name, None)
        else:
            below[name] = absurd(
                FIELDS[path.split(".", 2)[2] if above[:1] == ["channels"] else path], dice
            )
    return json.dumps(data, ensure_ascii=False)


def absurd(field: Field, dice: random.Random) -> Any:
    """A value that the field accepts, mostly far from what is usual."""
    if field.model is not None:
        return "none"
    if field.words:
        return dice.choice(field.words)
    if field.kind == "count":
        return str(max(round(number(field, dice)), 0 if field.zero else 1))
    kind = dice.randrange(8)
    if kind == 0:
        low, high = sorted((number(field, dice), number(field, dice)))
        return f"{plain(low, field)} .. {plain(high, field)}"
    if kind == 1:
        sides = sorted(
            dice.sample(("min", "typ", "max"), dice.randint(1, 3)), key=("min", "typ", "max").index
        )
        texts = (plain(x, field) for x in sorted(number(field, dice) for _ in sides))
        return dict(zip(sides, texts, strict=True))
    x = number(field, dice)
    if kind == 2 and x > 0 and field.unit not in ("degC", "dB", "%"):
        return f"{plain(x, field)} ± {dice.choice(('1', '50', '99', '99.9999999'))} %"
    return plain(x, field)


def plain(x: float, field: Field) -> Any:
    return spell(Value(x, x, x), field.unit)


def number(field: Field, dice: random.Random) -> float:
    """A number between the ends of what is possible: small, usual, large, or zero."""
    low, high = limits(field.usual, field.usual_high, field.possible, field.unit)
    if field.zero and dice.random() < 0.2:
        return 0.0
    if field.unit in ("degC", "dB"):
        return dice.choice((low, high, 0.0 if low < 0 else low, dice.uniform(low, high)))
    usual_low, usual_high = bounds(field.usual, field.unit)
    low = max(low, usual_low / 1e9)
    first, last = dice.choice(((low, low), (high, high), (usual_low, usual_high), (low, high)))
    x = math.exp(dice.uniform(math.log(first), math.log(last)))
    return min(max(x, low * 1.001), high * 0.999)


def numbers_of(field: Field) -> Iterator[float]:
    dice = random.Random(field.meaning)
    return (number(field, dice) for _ in range(20))


@pytest.mark.parametrize("path", [p for p in FITTING if FIELDS[p].kind == "quantity"])
def test_numbers_within_the_limits_are_accepted_and_beyond_them_refused(path: str) -> None:
    field = FIELDS[path]
    low, high = limits(field.usual, field.usual_high, field.possible, field.unit)

    def loads(x: float) -> bool:
        data: Any = plain(x, field)
        full = f"channels.main.{path}" if is_channel_path(path) else path
        for step in reversed(full.split(".")):
            data = {step: data}
        text = json.dumps({"amplifier_spec": "1"} | data, ensure_ascii=False)
        return load_text(text, FILE).spec is not None

    assert all(loads(x) for x in numbers_of(field))
    assert not loads(high * 1.01 if high > 0 else high + 1)
    if field.unit == "degC" or (low > 0 and not field.zero):
        assert not loads(low - 1 if field.unit == "degC" else low * 0.99)
