"""The battery over one period of the lowest note, all channels at rated power.

A sine of full power draws its mean from a bridge, less a swing of the same size at twice the
frequency; half bridges add one at the frequency itself. The source sags by its resistance, as
in ``loaded_voltage``; the crest is that of the checks of lockout and cut-off.
"""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark
from ..derived.power import crest_inputs
from ..formulas.maths import PI, cos, sin
from ..formulas.supply import loaded_voltage, lowest
from .parts import nothing, of

BASS: Arguments = {"f": Input("all band_low")}
BATTERY = {"supply.source": "battery"}
LOCKOUT = Amount({"value": Input("protection.under_voltage.v_trip")}, when={"rail_feed": "pack"})
NOTE = "All channels at rated power with a sine at the lower end of their band, in phase."


def period(f: tuple[float, ...]) -> float:
    """One period of the lowest note of all channels."""
    return 1 / lowest(f)


def sagging(
    x: float,
    f: tuple[float, ...],
    v_open: float,
    r: float,
    p_mean: float,
    p_double: float,
    p_signal: float,
) -> float:
    """Voltage at a time x of a source with resistance."""
    angle = 2 * PI * lowest(f) * x
    return loaded_voltage(v_open, r, p_mean - p_double * cos(2 * angle) + p_signal * sin(angle))


PACK: Arguments = {
    **BASS,
    "v_open": Input("v_source_low_at_most"),
    "r": Input("r_ahead"),
    **crest_inputs("source"),
}

PICTURE = Curves(
    title="Does the battery hold through the lowest note?",
    each="product",
    x=Axis("time", "s", Amount({}, nothing), Amount(BASS, period)),
    y=Axis("voltage of the battery, low charge", "V"),
    curves=(Curve("battery", (Amount(PACK, sagging, BATTERY),)),),
    marks=(
        Mark("amplifier locks out", "y", (LOCKOUT,), "trip"),
        Mark("pack cuts off", "y", (of("battery.protection.v_cutoff"),)),
    ),
    note=NOTE,
    checks=("pack-collapse", "pack-voltage-under-load", "pack-cutoff-under-load"),
)
