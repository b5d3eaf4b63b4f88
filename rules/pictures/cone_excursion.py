"""Travel of the cone over frequency, with the largest sine that the channel gives.

The shape is that of the box by which the check of the excursion goes, behind the high-pass.
"""

from ...linter.picture import Amount, Axis, Curve, Curves, Mark
from ..derived.excursion import BOXES, MOTION
from ..formulas.driver import box_load, cone_shape, high_pass
from .parts import nothing, of, times


def travel(
    x: float,
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_ahead: float,
    v_as: float,
    v_b: float,
    f_b: float,
    v_ap: float,
    q_l: float,
    f_high_pass: float,
    order: float,
) -> float:
    """Peak travel at a frequency x."""
    load = box_load(x, v_as / v_b, f_b, v_b / v_ap, q_l)
    shape = cone_shape(x, f_s, q_ms, q_es, load, r_e, c_ahead)
    return x_free * shape * high_pass(x, f_high_pass, order)


PICTURE = Curves(
    title="Does the cone stay within its travel?",
    each="channel",
    x=Axis(
        "frequency", "Hz", times("band_low", 0.5), times("loudspeaker.f_s", 6.0), logarithmic=True
    ),
    y=Axis("travel one way, peak", "m", Amount({}, nothing)),
    curves=(
        Curve(
            "cone",
            tuple(
                Amount({**MOTION, **inputs}, travel, {"loudspeaker.enclosure.type": kind})
                for kind, inputs, _ in BOXES
            ),
        ),
    ),
    marks=(
        Mark("linear travel", "y", (of("loudspeaker.x_max"),), "trip"),
        Mark("mechanical limit", "y", (of("loudspeaker.x_mech"),)),
        Mark("low end of band", "x", (of("band_low"),), "second"),
    ),
    note="The largest sine that stage and limiter give, behind the high-pass.",
    checks=("cone-excursion", "excursion-destructive"),
)
