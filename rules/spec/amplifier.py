"""The whole spec: what the file holds from its first line."""

from collections.abc import Mapping
from typing import Literal

from ...linter.check import MILESTONES
from ...linter.declare import Section, Value, absent, count, section, text, word
from .battery import Battery
from .channel import Channel
from .claims import Claims
from .designators import BORNE
from .deviations import Deviation
from .environment import Environment
from .first_values import AT_CONCEPT
from .measurement import Measurement
from .protection import Protection
from .safety import Safety
from .signal import Signal
from .supply import Supply
from .thermal import Thermal
from .trade_words import TRADE_WORDS
from .wiring import Wiring


class Amplifier(Section):
    """The whole product: shared sections, and its channels by name."""

    trade_words = TRADE_WORDS
    at_concept = AT_CONCEPT
    borne = BORNE

    amplifier_spec: Value = count(
        "version of the file format", "1 .. 1", example="1", required=True
    )
    title: str | None = text("what the product is", example="Stereo amplifier for a music school")
    revision: str | None = text("revision of the design that the file describes", example="B2")
    milestone: Literal["concept", "prototype", "production"] | None = word(
        MILESTONES,
        "milestone that the verdict is for",
        default=absent("concept"),
        asked_first="milestone",
    )
    environment: Environment | None = section(Environment, part="place of use")
    signal: Signal | None = section(Signal, part="source and input stage")
    supply: Supply | None = section(Supply, part="supply")
    battery: Battery | None = section(Battery, part="battery")
    channels: Mapping[str, Channel] | None = section(Channel, kind="named sections", part="ratings")
    thermal: Thermal | None = section(Thermal, part="heat path")
    wiring: Wiring | None = section(Wiring, part="wiring")
    protection: Protection | None = section(Protection, part="protection")
    safety: Safety | None = section(Safety, part="safety and users")
    claims: Claims | None = section(Claims, part="claims of the paperwork")
    deviations: tuple[Deviation, ...] | None = section(Deviation, kind="sections")
    measured: tuple[Measurement, ...] | None = section(Measurement, kind="sections")
