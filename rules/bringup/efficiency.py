"""Efficiency at three powers: the losses told apart, idle, switching and conduction."""

from ...linter.bringup_step import Amount, Bench, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from .shared import BY_LICENCE, CHARGED, PACK_AT_FULL, ROOM, SHOCK, power_drawn


def share_of_power(rated_power: float, share: float) -> float:
    """Output of a channel."""
    return rated_power * share


def efficiency(part: float, rated_power: float, loss: float) -> float:
    """What goes out over what goes into the channel."""
    return part * rated_power / (part * rated_power + loss)


OUT = {"part": Input("part_programme"), "rated_power": Input("rated_power")}
CREST = (("one eighth", "12.0412 dB"), ("half", "6.0206 dB"), ("full", "3.0103 dB"))
"""The share of rated power, and the crest factor of a programme that has it."""


def _share(text: str) -> Amount:
    share = Constant(text, "of rated power", COMMON_PRACTICE)
    return Amount("W", share_of_power, {"rated_power": Input("rated_power"), "share": share})


def _readings(share: str, crest: str) -> tuple[Reading, ...]:
    name, bench = share.replace(" ", "-"), (Bench("signal.crest_factor", crest),)
    return (
        *power_drawn(
            f"supply-power-at-{name}",
            f"{share.capitalize()} power: power from the supply",
            "programme",
            bench,
        ),
        Reading(
            f"efficiency-at-{name}",
            f"{share.capitalize()} power: efficiency of the channel",
            Amount("%", efficiency, OUT | {"loss": Input("p_loss_programme")}),
            each="channel",
            stop="below",
            bench=bench,
        ),
    )


STEP = Step(
    title="Efficiency at three powers",
    order=160,
    instrument="two true-rms voltmeters at the loads; voltmeter and ammeter in the supply lead",
    bench=(*ROOM, *PACK_AT_FULL),
    lines=(
        Line("Sine, 1 kHz or the middle of the band, all channels driven into the dummy loads."),
        Line(
            "Each channel {a}, {b} and {c}: one eighth, half and all of its rated power.",
            {"a": _share("12.5 %"), "b": _share("50 %"), "c": _share("100 %")},
            each="channel",
        ),
        Line("One minute each, from the smallest power up; read input and output together."),
        Line(
            "Efficiency is that of the output stage: take the power of the other loads off first."
        ),
    ),
    hazards=(Hazard("junction-temperature-margin"), BY_LICENCE, CHARGED, SHOCK),
    readings=tuple(reading for share in CREST for reading in _readings(*share)),
)
