"""What comes in, and what the input does with it."""

from typing import ClassVar

from ...linter.check import from_memory
from ...linter.declare import Nature, Section, Value, adverse, quantity, usually, word
from .designs import SPLIT_HALF
from .trade_sizes import FILMS

INPUT_DIELECTRICS = (
    "polypropylene",
    "polyester",
    "ceramic-class-1",
    "ceramic-class-2",
    "electrolytic",
)


class Signal(Section):
    """The programme, its source and the input of the amplifier."""

    nature: ClassVar[Nature] = "use"

    crest_factor: Value | None = quantity(
        "dB",
        "programme: peak over rms; 12.04 dB: one eighth of the power of a sine of the same peak",
        "3 .. 20 dB",
        given="range",
        default=usually("12.04 dB", from_memory("IEC 62368-1", "Annex E")),
        example="10 dB .. 15 dB",
    )
    channel_phase: str | None = word(
        ("in-phase", "opposite"),
        "bass of the half-bridge channels loads the two rails in phase or in opposition",
        concerns=SPLIT_HALF,
        default=adverse("in-phase"),
        nature="topology",
    )
    source_level: Value | None = quantity(
        "V", "highest level that the source delivers, rms", "0.05 .. 20 V"
    )
    v_in_max: Value | None = quantity(
        "V",
        "level at which the input stage itself clips, rms",
        "0.05 .. 20 V",
        nature="part",
    )
    r_in: Value | None = quantity(
        "ohm",
        "input resistance behind the coupling capacitor",
        "1 .. 220 kohm",
        given="tol",
        also="220 .. 10000 kohm",  # instrument inputs
        nature="part",
    )
    c_in: Value | None = quantity(
        "F",
        "coupling capacitor ahead of the input",
        "0.047 .. 22 uF",
        given="tol",
        also="1 .. 47 nF or 22 .. 100 uF",  # high and low input resistance
        nature="part",
    )
    c_in_dielectric: str | None = word(
        INPUT_DIELECTRICS,
        "dielectric of the coupling capacitor",
        called=FILMS,
        nature="part",
    )
    mute_time: Value | None = quantity(
        "s",
        "time that the outputs stay muted after switch-on; 0 s: no muting",
        "0 or 10 .. 9000 ms",
        nature="setting",
    )
