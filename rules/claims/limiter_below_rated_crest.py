"""Peak limiter against the crest of the rated power.

A level limiter is a promise taken back: below the crest of the rated sine it never lets the
rated power through, not for one period, whatever rails and switches can do.  Every other
check then looks better, since limits of current, heat and level are judged with the limiter.

The figure is the peak that the limiter lets through over that of the rated sine.  Half a
decibel is left to its setting.  First fixes: set the limiter to the crest of the rated
sine, or rate the power that it lets through.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_peak: float, rated_power: float, z_load: float) -> float:
    """Peak of the limiter over the crest of the rated sine."""
    return v_peak / (2 * rated_power * z_load) ** 0.5


_BASE = """
channels: {main: {rated_power: 50 W, rated_load: 4 ohm, limiter: {v_peak: PEAK}}}
"""

CHECK = Check(
    title="Peak limiter vs. peak voltage at rated power",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_peak / sqrt(2 rated_power z_load)",
    sentence="Limiter {v_peak} peak; {rated_power} into {z_load} needs {v_peak:/figure} peak"
    " ({figure:%}).",
    inputs={
        "v_peak": Input("limiter.v_peak"),
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
    },
    limits=AtLeast(major="0.95", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("limiter.v_peak", "0.5 V"), Lever("rated_power", "1 W")),
    sources=(derivation("peak of a sine of a power into a resistance"),),
    cases=(
        Case(
            {"v_peak": "20 V", "rated_power": "50 W", "z_load": "4 ohm"},
            "1",
            "computed: mean square of a sampled sine of 20 V peak, 200 V^2, over 4 ohm",
        ),
        Case(
            {"v_peak": "10 V", "rated_power": "50 W", "z_load": "4 ohm"},
            "0.5",
            "derived: half the voltage, a quarter of the power",
        ),
    ),
    topic=("limiter.v_peak",),
    fails=_BASE.replace("PEAK", "10 V"),
    passes=_BASE.replace("PEAK", "21 V"),
)
