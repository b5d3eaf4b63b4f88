"""Distances and margins of invented figures, computed by hand."""

import pytest

from ampreview.linter.check import AtLeast, AtMost, Limits, Source
from ampreview.linter.evaluation.threshold import closeness, further_off, has_share, measured_to
from ampreview.linter.finding import Evidence, Finding, Severity, Status
from ampreview.linter.reports.phrases import margin_of

LIMIT_FROM = Source("invented")


def found(figure: float | None, unit: str, limits: Limits, limit: float) -> Evidence:
    rising = isinstance(limits, AtLeast)
    whole = Evidence(unit=unit, at_least=rising, limits=limits, figure=figure)
    return measured_to(whole, limit, LIMIT_FROM)


KELVIN = 273.15


@pytest.mark.parametrize(
    ("figure", "unit", "limits", "limit", "distance", "margin", "told"),
    [
        (0.935, "%", AtMost("90 %"), 0.9, -0.035, -0.035 / 0.9, "-3.9 %"),
        (2.45, "1", AtMost("1"), 1.0, -1.45, -1.45, "-145 %"),
        (-34.8e-9, "ns", AtLeast("0 ns"), 0.0, -34.8e-9, None, "-34.8 ns"),
        (12.0, "K", AtLeast("0 K", "10 K"), 10.0, 2.0, None, "+2 K"),
        (5.0, "K", AtLeast("0 K", "10 K"), 10.0, -5.0, None, "-5 K"),
        (100 + KELVIN, "degC", AtMost("130 degC"), 130 + KELVIN, 30.0, None, "+30 K"),
        (48.9, "dB", AtMost(minor="50 dB"), 50.0, 1.1, None, "+1.1 dB"),
        (0.02, "%", AtMost("3 %", minor="0 %"), 0.0, -0.02, None, "-2 points"),
        (1.0, "1", AtMost(minor="0"), 0.0, -1.0, None, "-1"),
        (0.0, "1", AtMost(minor="0"), 0.0, 0.0, None, ""),
    ],
)
def test_distance_and_margin(
    figure: float,
    unit: str,
    limits: Limits,
    limit: float,
    distance: float,
    margin: float | None,
    told: str,
) -> None:
    """A share only of a limit that is no zero and no temperature or level; the text shows it."""
    item = found(figure, unit, limits, limit)
    assert item.distance == pytest.approx(distance)
    assert item.margin == (None if margin is None else pytest.approx(margin))
    assert item.basis is LIMIT_FROM
    assert margin_of(item) == told


def test_where_a_share_means_something() -> None:
    assert has_share("V", 5.0)
    assert not has_share("V", 0.0)
    assert not any(has_share(unit, 5.0) for unit in ("K", "degC", "dB"))


def test_no_figure_has_no_distance() -> None:
    none = found(None, "V", AtMost("5 V"), 5.0)
    assert (none.distance, none.margin, margin_of(none)) == (None, None, "")


def test_the_span_of_the_limits_is_the_scale_where_there_is_no_share() -> None:
    """-34.8 ns on a scale of 10 ns; 2 K where 50 K are ample; a share is its own scale."""
    dead = found(-34.8e-9, "ns", AtLeast("0 ns", "10 ns"), 0.0)
    warm = found(12.0, "K", AtLeast("0 K", "10 K"), 10.0)
    full = found(4.0, "V", AtMost("5 V"), 5.0)
    near = [closeness(item) for item in (dead, warm, full)]
    assert near == pytest.approx([-3.48, 0.04, 0.2])


@pytest.mark.parametrize(
    ("old", "new", "by", "further"),
    [
        (-34.8, -49.8, 1e-6, True),
        (-34.8, -34.8, 1e-6, False),
        (-34.8, -30.0, 1e-6, False),
        (-34.8, -34.9, 1e-6, True),
        (-34.8, -34.9, 0.01, False),
        (-34.8, -35.2, 0.01, True),
    ],
)
def test_further_off(old: float, new: float, by: float, further: bool) -> None:
    """A hundredth of a miss of 34.8 ns is 0.348 ns, whichever way the figure must not go."""
    limits = AtLeast("0 ns"), AtMost("0 ns")
    for side, limit in zip((1, -1), limits, strict=True):
        pair = [
            Finding(
                "some-check", "invented", "A question", "product", Status.FINDING, "",
                Severity.CRITICAL, evidence=found(side * x * 1e-9, "ns", limit, 0.0),
            )
            for x in (old, new)
        ]  # fmt: skip
        assert further_off(pair[0], pair[1], by) is further
