"""Response of the output filter over the rated loads and without one.

The gain is that by which the checks of the carrier go as well; it
stands in dB below the voltage of the stage, the loads count as resistors.
"""

from math import inf

from ...linter.check import Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark
from ..derived.carrier import gain_into_load
from ..formulas.maths import larger, log10
from .parts import FILTER, of, times

LC = {"filter_kind": "lc"}


def into_load(
    x: float,
    load: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Gain in dB at a frequency x into a resistor."""
    far = (l_2, c_2, r_damper, c_damper)
    return 20 * log10(gain_into_load(x, load, l_total, c_total, n_legs, dcr, *far))


def without_load(
    x: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """The same with nothing connected; a peak of more than 40 dB is cut."""
    far = (l_2, c_2, r_damper, c_damper)
    return -larger(-into_load(x, inf, l_total, c_total, n_legs, dcr, *far), -40.0)


def beyond(carrier: float, corner: float) -> float:
    """Where the picture ends: twice the carrier, or ten times the corner if that is more."""
    return larger(2 * carrier, 10 * corner)


def _into(label: str, path: str) -> Curve:
    return Curve(label, (Amount({"load": Input(path), **FILTER}, into_load, LC),))


PICTURE = Curves(
    title="Does the filter pass the audio band and stop the carrier?",
    each="channel",
    x=Axis(
        "frequency",
        "Hz",
        times("f_corner", 0.03),
        Amount({"carrier": Input("f_carrier_effective"), "corner": Input("f_corner")}, beyond),
        logarithmic=True,
    ),
    y=Axis("load voltage over stage voltage", "dB"),
    curves=(
        _into("least load", "load_low"),
        _into("highest load", "load_high"),
        Curve("no load", (Amount(FILTER, without_load, LC),)),
    ),
    marks=(
        Mark("top of band", "x", (of("band_high"),)),
        Mark("corner", "x", (of("f_corner"),), "second"),
        Mark("carrier, least", "x", (of("f_carrier_effective"),), "trip"),
    ),
    note="Loads as resistors; shaded: every part of the filter at its worst at that frequency.",
    checks=(
        "treble-response",
        "treble-response-unclaimed",
        "treble-response-loudspeaker",
        "treble-response-loudspeaker-unclaimed",
        "carrier-attenuation",
        "open-load-peaking",
        "open-load-peaking-two-sections",
    ),
)
