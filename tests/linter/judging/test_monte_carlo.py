"""Yields against closed forms: builds are drawn once and shared by all checks."""

import sys
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.check import AtMost, Check, Input, Source
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry, load
from ampreview.linter.finding import Severity
from ampreview.linter.judging.monte_carlo import NumpyMissingError, build_many
from ampreview.linter.reading.loading import Spec, load_file, load_text

SAMPLES = Path(__file__).parents[3] / "sample_specs"
BOOK = Source("an invented handbook", "p. 1")


def check(name: str, figure: Any, inputs: dict[str, Input], limit: str) -> Entry:
    return Entry(
        name,
        "invented",
        "Prose.",
        Check(
            title="An invented question",
            figure=figure,
            unit="V",
            each="product",
            stake="performance",
            formula="",
            sentence="{figure}",
            inputs=inputs,
            limits=AtMost(major=limit, basis={"major": BOOK}),
            sources=(BOOK,),
            cases=(),
            fails="",
            passes="",
        ),
        "invented.py",
    )


RAIL = Input("supply.v_rail", "V", "rail")
SOURCE = Input("supply.v_source", "V", "source")


def spec(supply: str) -> Spec:
    loaded = load_text(f"amplifier_spec: 1\nsupply: {supply}\n", "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def share(text: str, *entries: Entry, builds: int = 40_000) -> float:
    done = build_many(
        spec(text),
        Catalogue(entries, {}, {}, load_schema()),
        "concept",
        Severity.MAJOR,
        builds,
        seed=7,
    )
    return done.good / done.builds


def rail(limit: str) -> Entry:
    return check("rail", lambda v: v, {"v": RAIL}, limit)


def test_a_uniform_tolerance_meets_in_proportion() -> None:
    """24 V ± 1 V at most 24.5 V: three quarters of the builds."""
    assert share("{v_rail: 24 V ± 1 V}", rail("24.5 V")) == pytest.approx(0.75, abs=0.01)


def test_a_uniform_tolerance_spreads_evenly_between_its_ends() -> None:
    """23 V to 25 V in 40 steps: each has a fortieth; a quarter lies beyond 24.5 V."""
    entries = (rail("24.5 V"), check("fixed", lambda v: v, {"v": SOURCE}, "1 V"))
    text = "{v_rail: 24 V ± 1 V, v_source: 12 V}"
    wanted = [("fixed", "product"), ("rail", "product"), ("unknown", "product")]
    known = Catalogue(entries, {}, {}, load_schema())
    done = build_many(spec(text), known, "concept", Severity.MAJOR, 40_000, 7, wanted)
    (found,) = done.spreads
    assert (found.finding.check, found.limit) == ("rail", 24.5)
    assert (found.low, found.high) == pytest.approx((23.0, 25.0), abs=1e-3)
    assert sum(found.counts) == 40_000
    assert all(count == pytest.approx(1000, abs=5 * 1000**0.5) for count in found.counts)
    assert found.missing / done.builds == pytest.approx(0.25, abs=0.01)


@pytest.mark.parametrize("name", ["choir-portable", "playhouse-subwoofer"])
def test_formulas_of_a_whole_design_run_on_arrays(name: str) -> None:
    """What the engine reckons one by one, here for many at a time: nothing breaks, nothing fails
    that meets in the worst case."""
    found = load_file(SAMPLES / f"{name}.amp.yaml").spec
    assert found is not None
    done = build_many(found, load(), "prototype", Severity.MAJOR, builds=50)
    assert done.good == 50


def test_a_data_sheet_line_is_triangular() -> None:
    """20/24/26 V at most 25 V: 1 - (1 x 1)/(6 x 2) = 11/12."""
    text = "{v_rail: {min: 20 V, typ: 24 V, max: 26 V}}"
    assert share(text, rail("25 V")) == pytest.approx(11 / 12, abs=0.01)


def test_a_range_is_a_condition_and_not_drawn() -> None:
    assert share("{v_rail: 20 V .. 26 V}", rail("25 V")) == 0.0
    assert share("{v_rail: 20 V .. 26 V}", rail("26 V")) == 1.0


def test_checks_share_their_draws() -> None:
    """The same spread in two checks: the joint yield is the smaller of the two, no product."""
    both = share("{v_rail: 24 V ± 1 V}", rail("24.5 V"), rail("24.2 V"))
    assert both == pytest.approx(0.6, abs=0.01)


def test_independent_spreads_multiply() -> None:
    other = check("source", lambda v: v, {"v": SOURCE}, "12.1 V")
    text = "{v_rail: 24 V ± 1 V, v_source: 12 V ± 0.2 V}"
    assert share(text, rail("24.5 V"), other) == pytest.approx(0.75 * 0.75, abs=0.01)


def test_sum_of_two_uniform_spreads() -> None:
    """x + y over ± 1 each, at most 0.5 above the middle: 1 - 1.5^2/8."""
    total = check("sum", lambda a, b: a + b, {"a": RAIL, "b": SOURCE}, "36.5 V")
    text = "{v_rail: 24 V ± 1 V, v_source: 12 V ± 1 V}"
    assert share(text, total) == pytest.approx(1 - 1.5**2 / 8, abs=0.01)


def test_the_same_seed_gives_the_same_builds() -> None:
    catalogue = Catalogue((rail("24.5 V"),), {}, {}, load_schema())
    runs = [
        build_many(spec("{v_rail: 24 V ± 1 V}"), catalogue, "concept", Severity.MAJOR, 1000, seed)
        for seed in (1, 1, 2)
    ]
    assert runs[0].good == runs[1].good
    assert runs[0].good != runs[2].good
    assert runs[0].shares[0].missing == 1000 - runs[0].good


def test_without_numpy_the_message_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(__import__("sys").modules, "numpy", None)
    with pytest.raises(NumpyMissingError, match=r"pip install 'ampreview\[montecarlo\]'"):
        share("{v_rail: 24 V ± 1 V}", rail("24.5 V"))


def test_without_numpy_the_status_says_that_something_is_wanting(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The review of a sound sample is printed, but the builds asked for are not there."""
    monkeypatch.setitem(sys.modules, "numpy", None)
    sample = Path(__file__).parents[3] / "sample_specs" / "bedside-lamp.amp.yaml"
    assert main(["assess", str(sample), "--remedies", "none"]) == 0
    asked = ["assess", str(sample), "--remedies", "none", "--tolerance", "monte-carlo"]
    assert main(asked) == 2
    assert "pip install" in capsys.readouterr().err
