"""Carrier left at the load, which tells whether the filter is the one that was drawn."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Constant, Input, derivation
from ..formulas.bench import residual
from .shared import AT_FULL, BRIDGE, CHARGED, SHOCK, nominal, quantity

SHARE = Constant(
    "8 %",
    "of the largest sine, beyond which a filter is wrong for its carrier",
    derivation(
        "TPA3121D2 data sheet SLOS537A, table 4: 33 uH, 220 nF leave 7.0 % in 8 ohm at 250 kHz"
    ),
)


def most(v_ideal: float, share: float) -> float:
    """Share of the largest sine, rms."""
    return share * v_ideal / 2**0.5


STEP = Step(
    title="Carrier residual at the load",
    order=70,
    instrument="oscilloscope or rms meter with 1 MHz bandwidth or more, across the load terminals",
    applies={"filter_kind": "lc"},
    bench=AT_FULL,
    lines=(
        Line(
            "Dummy load of {r}, no inductance to speak of.",
            {"r": nominal("load_high", "ohm")},
            each="channel",
        ),
        BRIDGE,
        Line(
            "No signal: the residual is largest at rest.",
            applies={"levels": "two-level"},
            each="channel",
        ),
        Line(
            "Slow sine (20 to 100 Hz) at half modulation: read the carrier where the sine crests;"
            " at rest it is small. It lies at twice the switching frequency.",
            applies={"levels": "three-level"},
            each="channel",
        ),
    ),
    hazards=(Hazard("open-load-peaking"), Hazard("damper-power"), CHARGED, SHOCK),
    readings=(
        Reading(
            "residual-frequency",
            "Its frequency",
            quantity("f_carrier_effective", "kHz"),
            each="channel",
        ),
        Reading(
            "carrier-residual",
            "Carrier across the load, rms",
            Amount(
                "V",
                residual,
                {
                    "v_swing": Input("v_swing"),
                    "n_legs": Input("n_legs"),
                    "levels": Input("levels"),
                    "gain": Input("carrier_gain_loaded"),
                },
            ),
            harms=False,
            each="channel",
            limit=Amount("V", most, {"v_ideal": Input("v_ideal"), "share": SHARE}),
        ),
    ),
)
