"""Every capacitor of the signal path is in the claimed band: node equations against the check."""

import numpy as np
import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answer

BAND_LOW = 50.0
LOSSLESS = """
supply: {{rails: single}}
signal: {{r_in: 10 kohm, c_in: {c_in}}}
claims: {{response: 3 dB}}
channels:
  main:
    band: 50 Hz .. 20 kHz
    load_range: 4 ohm .. 8 ohm
    rated_load: 4 ohm
    output_stage: {{topology: half-bridge}}
    filter: {{c_block: {c_block}}}
    loudspeaker: {{z_rated: 8 ohm, series: 1, parallel: 2, c_series: {c_series}}}
"""
NOTHING = {"c_in": "100 uF", "c_block": "{c: 100 mF}", "c_series": "none"}


def by_nodes(c_in: float, c_block: float, c_series: float) -> float:
    """Loss of input and output at the band's low end, each loudspeaker a branch of its own."""
    s = 2j * np.pi * BAND_LOW
    at_input = s * c_in / (s * c_in + 1 / 10e3)
    one = 1 / (8 + 1 / (s * c_series))
    # nodes: behind the output capacitor, then between capacitor and resistor of each branch
    y = np.array(
        [
            [s * c_block + 2 * s * c_series, -s * c_series, -s * c_series],
            [-s * c_series, s * c_series + 1 / 8, 0],
            [-s * c_series, 0, s * c_series + 1 / 8],
        ]
    )
    volts = np.linalg.solve(y, np.array([s * c_block, 0, 0]))
    assert volts[1] == pytest.approx(one * 8 * volts[0])
    return -20 * np.log10(abs(at_input * volts[1]))


@pytest.mark.parametrize(
    ("farads", "stated"),
    [
        ((100e-6, 0.1, 1e-3), {"c_series": "{c: 1000 uF}"}),
        ((100e-6, 680e-6, 1e3), {"c_block": "{c: 680 uF}"}),
        ((0.39e-6, 0.1, 1e3), {"c_in": "390 nF"}),
        (
            (1e-6, 2e-3, 1e-3),
            {"c_in": "1 uF", "c_block": "{c: 2000 uF}", "c_series": "{c: 1000 uF}"},
        ),
    ],
)
def test_each_capacitor_takes_what_the_nodes_say(farads, stated, derived):
    spec = LOSSLESS.format(**{**NOTHING, **stated})
    assert derived("bass_loss", spec) == pytest.approx(by_nodes(*farads), abs=0.01)


@pytest.mark.parametrize(
    "stated",
    [
        {"c_series": "{c: 47 uF}"},
        {"c_block": "{c: 220 uF}"},
        {"c_in": "680 nF", "c_block": "{c: 1200 uF}", "c_series": "{c: 1000 uF}"},
    ],
)
def test_what_takes_the_bass_speaks_against_the_claim(stated):
    """The last one: each capacitor below its own limit, all together beyond 3 dB."""
    spec = LOSSLESS.format(**{**NOTHING, **stated})
    assert answer("bass-response", spec).severity is Severity.MAJOR
    silent = spec.replace("claims: {response: 3 dB}", "")
    assert answer("bass-response-unclaimed", silent).severity in (Severity.MAJOR, Severity.MINOR)


@pytest.mark.parametrize(("c_block", "behind"), [("100 mF", None), ("220 uF", Severity.MAJOR)])
def test_bass_that_is_lost_at_the_input_is_told_once(c_block, behind):
    """47 nF into 10 kohm: 339 Hz. What the output capacitor takes is told beside it."""
    spec = LOSSLESS.format(**{**NOTHING, "c_in": "47 nF", "c_block": f"{{c: {c_block}}}"})
    assert answer("input-coupling-corner", spec).severity is Severity.MAJOR
    assert answer("bass-response", spec).severity is behind


def test_a_tweeter_behind_its_capacitor_is_no_fault():
    spec = LOSSLESS.format(**{**NOTHING, "c_series": "{c: 10 uF}"})
    tweeter = spec.replace("50 Hz .. 20 kHz", "4 kHz .. 20 kHz")
    assert answer("bass-response", tweeter).severity is None


def test_a_capacitor_ahead_of_a_woofer_is_not_asked_to_cut_above_its_resonance():
    """1000 uF into 8 ohm: 20 Hz; the woofer plays from its resonance up."""
    woofer = LOSSLESS.format(**{**NOTHING, "c_series": "{c: 1000 uF}"})
    woofer = woofer.replace("z_rated: 8 ohm", "z_rated: 8 ohm, f_s: 45 Hz")
    assert answer("series-capacitor-corner", woofer).status is Status.NOT_APPLICABLE
    tweeter = woofer.replace("50 Hz .. 20 kHz", "4 kHz .. 20 kHz").replace("45 Hz", "900 Hz")
    assert answer("series-capacitor-corner", tweeter).severity is Severity.MAJOR
