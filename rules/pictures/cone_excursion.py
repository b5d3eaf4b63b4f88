"""Travel of the cone over frequency, with the largest sine that the channel gives.

The shape is that of the box by which the check of the excursion goes, behind the high-pass.
"""

from ...linter.check import Arguments
from ...linter.picture import Amount, Axis, Curve, Curves, Mark
from ..derived.excursion import BOX, DRIVER, HIGH_PASS, HIGH_PASS_IF_ANY, VENT
from ..formulas.driver import high_pass, sealed_shape, vented_shape
from .parts import nothing, of, times

TYPE = "loudspeaker.enclosure.type"


def sealed(
    x: float,
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_high_pass: float,
    order: float,
) -> float:
    """Peak travel at a frequency x in a sealed box."""
    return x_free * sealed_shape(x, f_s, q_ts, v_as / v_b) * high_pass(x, f_high_pass, order)


def open_air(
    x: float, x_free: float, f_s: float, q_ts: float, f_high_pass: float, order: float
) -> float:
    """The same without a box."""
    return x_free * sealed_shape(x, f_s, q_ts, 0.0) * high_pass(x, f_high_pass, order)


def vented(
    x: float,
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    f_high_pass: float,
    order: float,
) -> float:
    """The same in a vented box."""
    shape = vented_shape(x, f_s, q_ts, v_as / v_b, f_b, q_l)
    return x_free * shape * high_pass(x, f_high_pass, order)


SEALED: Arguments = {**DRIVER, **BOX, **HIGH_PASS_IF_ANY}
VENTED: Arguments = {**DRIVER, **BOX, **VENT, **HIGH_PASS}
OPEN: Arguments = {**DRIVER, **HIGH_PASS_IF_ANY}
CAP_FREE = {"loudspeaker.c_series": "none"}

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
            (
                Amount(SEALED, sealed, {TYPE: "sealed", **CAP_FREE}),
                Amount(VENTED, vented, {TYPE: "vented", **CAP_FREE}),
                Amount(OPEN, open_air, {TYPE: "open", **CAP_FREE}),
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
