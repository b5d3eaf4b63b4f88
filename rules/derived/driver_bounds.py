"""What the data of a loudspeaker driver say of each other.

Resonance, compliance and motor of one driver fix its electrical Q.  Data sheets agree with
themselves to some twenty percent; a factor of two is left, for data of different samples and
for added mass.  Beyond that one of the figures has slipped, and every excursion with it.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Way, derivation
from ..formulas.acoustics import AIR_DENSITY, SOUND_SPEED
from ..formulas.driver import compliance
from ..formulas.maths import PI

MOTOR = derivation("q_es = 2 pi f_s m r_e / bl^2, m = 1 / ((2 pi f_s)^2 c_ms)")
TWICE = Constant("2", "how far data of one driver are apart at most", COMMON_PRACTICE)


def electrical_q(
    v_as: float,
    s_d: float,
    f_s: float,
    r_e: float,
    bl: float,
    air_density: float,
    sound_speed: float,
    share: float,
) -> float:
    """A share of the electrical Q that suspension, resonance and motor give."""
    c_ms = compliance(v_as, s_d, air_density, sound_speed)
    return share * r_e / (2 * PI * f_s * c_ms * bl**2)


def least(
    v_as: float,
    s_d: float,
    f_s: float,
    r_e: float,
    bl: float,
    air_density: float,
    sound_speed: float,
    times: float,
) -> float:
    """The least electrical Q."""
    return electrical_q(v_as, s_d, f_s, r_e, bl, air_density, sound_speed, 1 / times)


_DRIVER: dict[str, Input | Constant] = {
    "v_as": Input("loudspeaker.v_as"),
    "s_d": Input("loudspeaker.s_d"),
    "f_s": Input("loudspeaker.f_s"),
    "r_e": Input("loudspeaker.r_e"),
    "bl": Input("loudspeaker.bl"),
    "air_density": AIR_DENSITY,
    "sound_speed": SOUND_SPEED,
}
_Q = "r_e / (2 pi f_s c_ms bl^2), c_ms = v_as / (air_density sound_speed^2 s_d^2)"

DERIVED: tuple[Derived, ...] = (
    Derived(
        "q_es_most",
        "1",
        "channel",
        "twice the electrical Q that f_s, v_as, s_d, r_e and bl give",
        (Way(electrical_q, {**_DRIVER, "share": TWICE}, f"share {_Q}"),),
        bounds_from_above=("loudspeaker.q_es",),
        bounds_by="practice",
        sources=(MOTOR,),
    ),
    Derived(
        "q_es_least",
        "1",
        "channel",
        "half of the electrical Q that f_s, v_as, s_d, r_e and bl give",
        (Way(least, {**_DRIVER, "times": TWICE}, f"{_Q}, over times"),),
        bounds_from_below=("loudspeaker.q_es",),
        bounds_by="practice",
        sources=(MOTOR,),
    ),
)
