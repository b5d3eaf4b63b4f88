"""What a bridge returns to its rail, less what draws from the rail all the time."""

from ...linter.check import Assumption, Constant, Derived, Input, Way, derivation
from ..formulas.constants import NO_LIMITER
from ..formulas.pumping import BRIDGE_PUMPING, net_phase
from .ways import as_stated

NOTHING_ELSE = Assumption(
    "0 W", "absent", derivation("what is not stated to draw from the rail draws nothing")
)
_RETURNED: dict[str, Input | Constant] = {
    "phase": Input("phase_low"),
    "p_idle": Input("output_stage.p_idle", default=NOTHING_ELSE),
    "v_rail": Input("v_rail_high"),
    "v": Input("v_ideal"),
    "m_max": Input("m_max"),
    "v_limiter": Input("limiter.v_peak", default=NO_LIMITER),
    "z": Input("z_load"),
}


def returned(
    phase: float, p_idle: float, v_rail: float, v: float, m_max: float, v_limiter: float, z: float
) -> float:
    """The phase that is left where the channel itself draws its idle power all the time."""
    return net_phase(phase, p_idle, v_rail, v, m_max, v_limiter, z)


def returned_beside(
    phase: float,
    p_idle: float,
    v_rail: float,
    v: float,
    m_max: float,
    v_limiter: float,
    z: float,
    p_auxiliary: float,
    count: float,
) -> float:
    """The same where the other loads draw from the rail too, for every channel its part."""
    drawn = p_idle + p_auxiliary / count
    return net_phase(phase, drawn, v_rail, v, m_max, v_limiter, z)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "phase_returned",
        "deg",
        "channel",
        "the same, less what draws from the rail of a bridge all the time",
        (
            Way(
                returned_beside,
                {
                    **_RETURNED,
                    "p_auxiliary": Input("supply.p_auxiliary", default=NOTHING_ELSE),
                    "count": Input("channel_count"),
                },
                "arc cosine of cos phase + 2 (p_idle + p_auxiliary / count) z / (v_rail v m^2),"
                " m = smaller(m_max, v_limiter / v)",
                {"output_stage.topology": "full-bridge", "rail_feed": ("pack", "source")},
            ),
            Way(
                returned,
                _RETURNED,
                "arc cosine of cos phase + 2 p_idle z / (v_rail v m^2), m = smaller(m_max,"
                " v_limiter / v)",
                {"output_stage.topology": "full-bridge", "rail_feed": "converter"},
            ),
            Way(
                as_stated,
                {"value": Input("phase_low")},
                "value",
                {"output_stage.topology": "half-bridge"},
            ),
        ),
        sources=(BRIDGE_PUMPING,),
    ),
)
