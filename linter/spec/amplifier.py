"""The whole spec: what the file holds from its first line."""

from collections.abc import Mapping
from typing import Literal

from ..check import MILESTONES
from ..quantity import Value
from .battery import Battery
from .channel import Channel
from .claims import Claims
from .deviations import Deviation
from .environment import Environment
from .field import Section, absent, count, section, text, word
from .protection import Protection
from .safety import Safety
from .signal import Signal
from .supply import Supply
from .thermal import Thermal
from .wiring import Wiring


class Amplifier(Section):
    """The whole product: shared sections, and its channels by name."""

    amplifier_spec: Value = count(
        "version of the file format", "1 .. 1", example="1", required=True
    )
    title: str | None = text("what the product is", example="Stereo amplifier for a music school")
    revision: str | None = text("revision of the design that the file describes", example="B2")
    milestone: Literal["concept", "prototype", "production"] | None = word(
        MILESTONES,
        "what the verdict is wanted for",
        default=absent("concept"),
    )
    environment: Environment | None = section(Environment)
    signal: Signal | None = section(Signal)
    supply: Supply | None = section(Supply)
    battery: Battery | None = section(Battery)
    channels: Mapping[str, Channel] | None = section(Channel, kind="named sections")
    thermal: Thermal | None = section(Thermal)
    wiring: Wiring | None = section(Wiring)
    protection: Protection | None = section(Protection)
    safety: Safety | None = section(Safety)
    claims: Claims | None = section(Claims)
    deviations: tuple[Deviation, ...] | None = section(Deviation, kind="sections")
