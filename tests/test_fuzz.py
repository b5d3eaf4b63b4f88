"""Any file whatever gives a verdict, or a refusal with its place; never a crash.

Random bytes, samples with garbled lines, and samples with values that are possible but absurd
go the whole way: read, reviewed, reported in every form, some of them cured and planned.
Set FUZZ to the number of examples for a longer run with other random choices.
"""

import io
import json
import os
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.declare import Field
from ampreview.linter.declare.usual import limits
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.reports.assess_json import json_pieces
from ampreview.linter.reports.assess_text import print_refusals
from ampreview.linter.reports.console import console

from .fuzz import FILE, report_all, tried
from .fuzz_specs import (
    FITTING,
    SAMPLES,
    SCHEMA,
    number,
    plain,
    sample,
    spoilt,
)

FIELDS = SCHEMA.fields
is_channel_path = SCHEMA.is_channel_path

HEAVY = ("choir", "foyer", "playhouse")
LIGHT = [path for path in SAMPLES if not path.name.startswith(HEAVY)]
SCRAPS = (
    "none", "0", "-1", "1e9", "24", "24 V", "1e-30 V", "nan", "inf ohm", "1,5 V", "{", "}", "[]",
    "{min: 1 V, max: 0 V}", "*", "*shared", "&shared x", "<<: *shared", "!!python/name:os.system x",
    "yes", "~", "", "'", '"', "|", ">", "%", "@", "`", "\t", "---", "...", "? x",
    "\u2028", "\u200b", "4R7", "20 V .. 10 V", "5 V ± 200 %", "# x", "- - -", "a: b: c", "9" * 60,
    "x" * 300,
)  # fmt: skip


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
    report_all(done, sheets=False)
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
@settled(12)
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


@pytest.mark.slow
@settled(2)
@given(st.sampled_from(LIGHT), st.integers(0, 2**32), st.integers(1, 12))
def test_samples_with_possible_but_absurd_values(path: Path, seed: int, changes: int) -> None:
    whole_way(as_text(sample(path), random.Random(seed), changes))


@pytest.mark.slow
@settled(1)
@given(st.sampled_from(LIGHT), st.integers(0, 2**32), st.integers(1, 4))
def test_cures_and_plans_of_absurd_specs(path: Path, seed: int, changes: int) -> None:
    done = whole_way(as_text(sample(path), random.Random(seed), changes))
    if done is not None:
        json.loads("".join(json_pieces([(FILE, with_remedies(done))])), parse_constant=pytest.fail)
        assert plan(done).after.verdict.milestone == done.verdict.milestone


def as_text(spec: Spec, dice: random.Random, changes: int) -> str:
    """A spoilt spec as text; JSON is YAML too."""
    return json.dumps(spoilt(spec, dice, changes), ensure_ascii=False)


@pytest.mark.slow
def test_no_check_crashes_on_accepted_mutants() -> None:
    """A short run of tests/fuzz.py; FUZZ.md has the figures of a long one."""
    found = tried(16, 200, 40)
    assert not found.crashes, found.first


def numbers_of(field: Field) -> Iterator[float]:
    dice = random.Random(field.meaning)
    return (number(field, dice) for _ in range(8))


def test_numbers_within_the_limits_are_accepted_and_beyond_them_refused() -> None:
    for path in FITTING:
        if FIELDS[path].kind == "quantity":
            is_taken_within_its_limits(path)


def is_taken_within_its_limits(path: str) -> None:
    field = FIELDS[path]
    low, high = limits(field.usual, field.usual_high, field.possible, field.unit)

    def loads(x: float) -> bool:
        data: Any = plain(x, field)
        full = f"channels.main.{path}" if is_channel_path(path) else path
        for step in reversed(full.split(".")):
            data = {step: data}
        text = json.dumps({"amplifier_spec": "1"} | data, ensure_ascii=False)
        return load_text(text, FILE).spec is not None

    assert all(loads(x) for x in numbers_of(field)), path
    assert not loads(high * 1.01 if high > 0 else high + 1), path
    if field.unit == "degC" or (low > 0 and not field.zero):
        assert not loads(low - 1 if field.unit == "degC" else low * 0.99), path
