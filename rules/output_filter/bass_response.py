"""Bass loss of the capacitors in the signal path against the claimed response.

Each capacitor that the signal passes takes some bass: the one at the input, the output capacitor
of a half bridge on a single supply, the one in series with the loudspeaker. Each alone may be
right, and together they miss the claim: three corners at half the low end of the band take 4 dB.
The check adds up what the stated ones take at that end into the lowest rated load as a resistor,
the voice coil cold, and compares it with the deviation that the spec allows. An input that takes
3 dB by itself is told by input-coupling-corner alone, and counts as if put right. Where no
response is claimed, bass-response-unclaimed answers. 47 uF ahead of a woofer of 4 ohm cut at 847
Hz: the product has no bass, however well its filter is made. A stated high-pass is judged by
high-pass-in-band, since a box may lift there. Cure: larger capacitors, or a full bridge, which
needs none at the output.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(bass_loss: float, response: float, band_low: float) -> float:
    """Loss over the deviation allowed; band_low tells where it lies."""
    return bass_loss / response * (band_low / band_low)


CHECK = Check(
    title="Bass loss at the low band edge vs. claimed response",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="bass_loss / response, bass_loss at band_low",
    sentence="Capacitors in the signal path take {bass_loss} at {band_low}; limit {response}.",
    inputs={
        "bass_loss": Input("bass_loss"),
        "response": Input("claims.response"),
        "band_low": Input("band_low"),
    },
    applies={"response_claimed": "yes", "band_claimed": "yes", "loudspeaker.piezo": "none"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("deviation allowed by the spec"),
            "minor": derivation("half of it is left for amplifier and loudspeaker"),
        },
    ),
    levers=(
        Lever("loudspeaker.c_series.c", "E6", {"loudspeaker.c_series": "fitted"}),
        Lever("filter.c_block.c", "E6", {"output_stage.topology": "half-bridge"}),
        Lever("signal.c_in", "E6"),
    ),
    sources=(
        Source("CS4525 data sheet DS726PP1", "table 19, p. 59"),
        derivation("Kirchhoff's laws: capacitors in series with one resistance add corners"),
    ),
    cases=(
        Case(
            {"bass_loss": "3.0103 dB", "response": "3 dB", "band_low": "58 Hz"},
            gives="1.00343",
            origin="published: CS4525 data sheet table 19, 680 uF into 4 ohm: 3 dB at 58 Hz",
            tolerance=0.02,
        ),
        Case(
            {"bass_loss": "12.3832 dB", "response": "6 dB", "band_low": "30 Hz"},
            gives="2.06387",
            origin="computed: node equations at 30 Hz of 1 uF into 10 kohm, and of 1 mF ahead of"
            " two loudspeakers of 4 ohm in parallel, each behind 1.5 mF",
        ),
    ),
    topic=("loudspeaker.c_series", "filter.c_block.c", "signal.c_in"),
    fails="""
claims: {response: 3 dB}
channels:
  main:
    band: 60 Hz .. 18 kHz
    rated_load: 4 ohm
    loudspeaker: {z_rated: 4 ohm, c_series: {c: 47 uF, v_rated: 63 V}}
""",
    passes="""
claims: {response: 3 dB}
channels:
  main:
    band: 4 kHz .. 18 kHz
    rated_load: 4 ohm
    loudspeaker: {z_rated: 4 ohm, c_series: {c: 47 uF, v_rated: 63 V}}
""",
)
