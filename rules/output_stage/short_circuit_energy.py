"""Energy of one short-circuit event against the avalanche rating of the device.

While the protection makes up its mind the device that drives the short may carry the trip
current with the whole swing across it, and the energy of the inductor has to go somewhere
when it opens.  The single-pulse avalanche energy is the one printed number that says what
heat the crystal takes in microseconds.

Usually most of the inductor's energy flows back into the rail through the other switch's
diode, so the sum V I t + L I^2 / 2 is an upper bound and the limit is a major one.  Devices in
parallel share the current while their gates are on.  In avalanche the one with the lowest
breakdown voltage takes it all, until its own heat has raised that voltage above the others',
so the energy of the inductor counts against one device.  The
current is the trip's upper end; a short ahead of the inductor is not limited to that and
needs sensing of the switch voltage.  First fixes: a faster comparator, a lower trip, a
larger device.  It says nothing of repeated tries: see short-circuit-heating; nor of gallium
nitride, which has no avalanche and no such rating.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)


def figure(
    v_swing: float,
    i_trip: float,
    t_response: float,
    l: float,  # noqa: E741
    parallel: float,
    e_as: float,
) -> float:
    """Energy of one event over the single-pulse rating."""
    return (v_swing * i_trip * t_response / parallel + l * i_trip**2 / 2) / e_as


BOUND = derivation("energy in the device until it is off, and of the inductor after that")
ONE_ALONE = from_memory(
    "avalanche of parallel MOSFETs: breakdown voltages differ by several per cent from device to"
    " device and rise by a tenth per 100 K, so the lowest one takes the pulse"
)

CHECK = Check(
    title="Short-circuit energy vs. avalanche rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(v_swing i_trip t_response / parallel + l i_trip^2 / 2) / e_as",
    sentence="A short circuit puts {e_as:*figure} into the switch ({i_trip}, {v_swing},"
    " {t_response}, {l}); single-pulse rating {e_as} ({figure:%}).",
    inputs={
        "v_swing": Input("v_swing"),
        "i_trip": Input("output_stage.over_current.i_trip"),
        "t_response": Input("output_stage.over_current.t_response"),
        "l": Input("filter.inductor.l"),
        "parallel": Input("output_stage.parallel"),
        "e_as": Input("output_stage.device.e_as"),
    },
    applies={"output_stage.devices": "discrete", "gate_kind": "silicon"},
    limits=AtMost(major="100 %", minor="50 %", basis={"major": BOUND, "minor": COMMON_PRACTICE}),
    levers=(Lever("output_stage.over_current.t_response", "50 ns"),),
    sources=(BOUND, ONE_ALONE),
    cases=(
        Case(
            {
                "v_swing": "25.2 V",
                "i_trip": "10 A",
                "t_response": "600 ns",
                "l": "10 uH",
                "parallel": 1.0,
                "e_as": "60 mJ",
            },
            "1.085 %",
            "computed: power integrated over the event, 0.151 mJ and 0.5 mJ",
        ),
        Case(
            {
                "v_swing": "100 V",
                "i_trip": "60 A",
                "t_response": "5 us",
                "l": "22 uH",
                "parallel": 1.0,
                "e_as": "50 mJ",
            },
            "139.2 %",
            "derived: 30 mJ and 39.6 mJ",
        ),
        Case(
            {
                "v_swing": "100 V",
                "i_trip": "60 A",
                "t_response": "5 us",
                "l": "22 uH",
                "parallel": 2.0,
                "e_as": "50 mJ",
            },
            gives="109.2 %",
            origin="derived: half of 30 mJ and all of 39.6 mJ on one of two devices",
        ),
    ),
    topic=("output_stage.device.e_as",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      over_current: {i_trip: 40 A, t_response: 4 us}
      device: {e_as: 20 mJ}
    filter: {type: lc, inductor: {l: 22 uH}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 25 V}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 10 A, t_response: 600 ns}
      device: {e_as: 60 mJ}
    filter: {type: lc, inductor: {l: 10 uH}}
""",
)
