"""Carrier against the audio band.

Pulse width modulation leaves products at the carrier plus and minus even multiples of
the audio frequency. They fall off very fast: with a full-scale tone at the top of the
band, the largest product inside the band is 1.8 % at a ratio of 5, 0.04 % at 6 and
0.0004 % at 8. Below 5 the modulator cannot be good whatever the rest does; between 5 and 7
the products are small, but the filter has no room between band and carrier. Published
amplifiers work well at 7.5 (half-bridge at 150 kHz) and 8.3, so the often heard "ten
times" is not made a limit here. A self-oscillating stage is judged at idle; its fall with
modulation has a check of its own. First fix: raise the carrier, or state the band that a
subwoofer or voice channel really has.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation


def figure(carrier: float, band_high: float) -> float:
    """Carrier frequency over the highest audio frequency."""
    return carrier / band_high


CHECK = Check(
    title="Carrier frequency vs. top of the band",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="carrier / band_high",
    sentence="Carrier {carrier}; top of the band {band_high} (ratio {figure}).",
    inputs={
        "carrier": Input("modulator.carrier"),
        "band_high": Input("band_high"),
    },
    limits=AtLeast(
        major="5",
        minor="7",
        basis={
            "major": derivation("largest product in the band 1.8 % at 5 (Bessel series)"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),),
    sources=(
        Source("MAX4295 data sheet", "p. 10: about ten times the band"),
        derivation("products at m carrier +/- n tone: Bessel series of natural sampling"),
    ),
    cases=(
        Case(
            {"carrier": "165 kHz", "band_high": "20 kHz"},
            gives="8.25",
            origin="published: Estefania, Universidad de Cantabria 2017, 165 kHz bridge;"
            " 20 kHz assumed, the ratio by hand",
        ),
        Case(
            {"carrier": "22 kHz", "band_high": "200 Hz"},
            gives="110",
            origin="published: J. Benfell, ECEN405 README: 22 kHz, 200 Hz; ratio by hand",
        ),
    ),
    topic=("modulator.carrier",),
    asked_from="prototype",
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    modulator: {carrier: 90 kHz}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    modulator: {carrier: 400 kHz ± 5 %}
""",
)
