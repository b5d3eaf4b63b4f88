"""The box that a loudspeaker works in."""

from ...linter.declare import Section, Value, quantity, usually, word
from .designs import PASSIVE_RADIATOR, VENTED


class LoudspeakerEnclosure(Section):
    """Enclosure of ONE loudspeaker."""

    type: str | None = word(
        ("sealed", "vented", "passive-radiator", "open", "horn"),
        "kind of enclosure",
        nature="topology",
    )
    v_b: Value | None = quantity(
        "L",
        "net volume for ONE loudspeaker",
        "0.3 .. 280 L",
        also="0.0003 .. 0.3 L or 280 .. 3000 L",  # micro speakers; walls
    )
    f_b: Value | None = quantity(
        "Hz",
        "tuning of the port or passive radiator",
        "15 .. 300 Hz",
        possible="0.1 .. 1000000 Hz",
        concerns=VENTED,
        example="54 Hz",
    )
    v_ap: Value | None = quantity(
        "L",
        "air volume as compliant as the suspension of the passive radiator, all of ONE box",
        "0.5 .. 450 L",
        given="tol",
        concerns=PASSIVE_RADIATOR,
        example="20 L",
        also="0.0003 .. 0.5 L or 450 .. 3000 L",  # micro speakers; walls
    )
    q_l: Value | None = quantity(
        "1",
        "Q of the leakage losses",
        "3 .. 30",
        possible="0.01 .. 1000",
        concerns=VENTED,
        default=usually("7"),
        example="7",
        nature="outcome",
    )
    port_area: Value | None = quantity(
        "cm2",
        "cross-section of all ports of ONE loudspeaker",
        "1 .. 600 cm2",
        concerns=VENTED,
        also="0.02 .. 1 cm2",  # micro speakers
    )
    port_length: Value | None = quantity(
        "mm",
        "length of the port; default: what the tuning takes",
        "10 .. 1500 mm",
        concerns=VENTED,
        example="140 mm",
        also="1 .. 10 mm",  # micro speakers, slots in a wall
    )
