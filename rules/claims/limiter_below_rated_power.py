"""Long-term limiter against the rated power.

A long-term limiter protects the coil, and may well lie below the rated power: music of the
rated crest has an eighth of its power on average.  Below that eighth it turns down every
piece of music that uses the rated power, so the rating is a number on paper.  Between the
eighth and the rated power the rating holds for moments only: minor, to be said beside it.

The figure is the rms voltage that the limiter lets through over that of the rated sine.  First
fixes: set the limiter by the loudspeaker's rating, or rate the power that it lets through.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)


def figure(v_rms: float, rated_power: float, z_load: float) -> float:
    """Voltage of the limiter over that of the rated sine."""
    return v_rms / (rated_power * z_load) ** 0.5


_BASE = """
channels: {main: {rated_power: 30 W, rated_load: 8 ohm, limiter: {v_rms: LEVEL}}}
"""

CHECK = Check(
    title="Long-term limiter vs. voltage at rated power",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_rms / sqrt(rated_power z_load)",
    sentence="Limiter {v_rms} rms; {rated_power} into {z_load} needs {v_rms:/figure} rms"
    " ({figure:%}).",
    inputs={
        "v_rms": Input("limiter.v_rms"),
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
    },
    limits=AtLeast(
        major="0.35",
        minor="0.95",
        basis={
            "major": from_memory("IEC 62368-1 Annex E: one eighth of the power, root 0.354"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("limiter.v_rms", "0.5 V"), Lever("rated_power", "1 W")),
    sources=(derivation("rms voltage of a power into a resistance"),),
    cases=(
        Case(
            {"v_rms": "3 V", "rated_power": "30 W", "z_load": "8 ohm"},
            "0.19365",
            "derived: 3 V into 8 ohm are 1.1 W of 30 W",
        ),
        Case(
            {"v_rms": "15.492 V", "rated_power": "30 W", "z_load": "8 ohm"},
            "1",
            "computed: mean square of a sampled sine of 21.909 V peak, 240 V^2, over 8 ohm",
        ),
    ),
    topic=("limiter.v_rms",),
    fails=_BASE.replace("LEVEL", "3 V"),
    passes=_BASE.replace("LEVEL", "15.5 V"),
)
