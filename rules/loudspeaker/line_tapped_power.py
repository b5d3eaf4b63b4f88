"""Power of all taps of a constant-voltage line against the channel's rated power.

On a constant-voltage line impedances are not reckoned with but powers: the taps add up, and their
sum must not exceed the amplifier's rating.  It is the same thing: 100 V and 120 W are 83 ohm, and
a transformer of 1 to 5 ahead of the line shows the stage 3.3 ohm.  More taps than that, added
over the years, are the usual end of installed amplifiers: they trip in loud passages.

The figure is the sum of the taps over the rated power of the channel.  Transformers take a part
themselves, so a fifth is left (common practice).  Where the line gets less than its rated voltage
the taps take less, and line-voltage tells it.  First fixes: lower taps, a second channel.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation


def figure(p_tap: float, rated_power: float) -> float:
    """Sum of the taps over the rated power."""
    return p_tap / rated_power


LINE = """
channels:
  main:
    rated_power: 100 W
    line: {v_line: 100 V, p_tap: TAPS}
"""

CHECK = Check(
    title="Taps of the loudspeaker line vs. rated power",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="p_tap / rated_power",
    sentence="Taps of the line add up to {p_tap}; rated power {rated_power} ({figure:%}).",
    inputs={"p_tap": Input("line.p_tap"), "rated_power": Input("rated_power")},
    limits=AtMost(
        major="1",
        minor="0.85",
        basis={
            "major": derivation("the load takes more than the channel is rated for"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("line.p_tap", "5 W"),),
    sources=(derivation("taps in parallel: powers at one voltage add up"),),
    cases=(
        Case(
            {"p_tap": "120 W", "rated_power": "100 W"},
            gives="1.2",
            origin="computed: 83.3 ohm of 120 W beside 100 ohm of 100 W at 100 V, by Ohm's law",
        ),
        Case(
            {"p_tap": "60 W", "rated_power": "100 W"},
            gives="0.6",
            origin="common practice: ten ceiling loudspeakers of 6 W on 100 W",
        ),
    ),
    topic=("line",),
    fails=LINE.replace("TAPS", "120 W"),
    passes=LINE.replace("TAPS", "80 W"),
)
