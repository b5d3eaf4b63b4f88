"""Constant-voltage lines and piezo transducers by second methods: nodes, scans, turns ratios."""

import numpy as np
import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.formulas.load import flux_share, line_impedance, piezo_impedance
from ampreview.rules.loudspeaker.line_saturation import FULL
from ampreview.rules.loudspeaker.line_voltage import LINE
from ampreview.rules.loudspeaker.loudspeaker_clipped_power import LOADED
from ampreview.rules.loudspeaker.piezo_filter_peak import HORN as PEAK
from ampreview.rules.loudspeaker.piezo_voltage import HORN
from ampreview.rules.protection.dc_fault_line import HALL

from ..whole import answer, answers


def test_a_line_of_turns_ratios() -> None:
    """Ten loudspeakers of 8 ohm on taps of 6 W, each by its turns ratio, in parallel."""
    turns = 100.0 / (6.0 * 8.0) ** 0.5  # line voltage over the voltage of 6 W into 8 ohm
    each = 8.0 * turns**2
    assert line_impedance(100.0, 60.0, 1.0) == pytest.approx(each / 10)
    assert line_impedance(100.0, 60.0, 5.0) == pytest.approx(each / 10 / 5**2)


@pytest.mark.parametrize("order", [1, 2, 3, 4])
def test_flux_behind_a_high_pass_scanned(order: int) -> None:
    """Butterworth high-pass of 1 Hz, voltage over frequency on a fine grid."""
    f = np.geomspace(1e-4, 1e2, 200_001)
    level = f**order / (1 + f ** (2 * order)) ** 0.5 / f
    assert flux_share(order) == pytest.approx(level.max(), rel=1e-4)


def test_flux_in_time() -> None:
    """A sine of 100 V rms and 50 Hz has a flux of sqrt(2) 100 / (2 pi 50) Vs, peak: integrated."""
    t = np.linspace(0, 1 / 50, 100_001)
    flux = np.cumsum(2**0.5 * 100 * np.sin(2 * np.pi * 50 * t)) * t[1]
    swing = (flux.max() - flux.min()) / 2
    assert swing * 2 * np.pi / 2**0.5 == pytest.approx(100 / 50, rel=1e-3)


def test_impedance_of_a_piezo_by_complex_numbers() -> None:
    z = 22 + 1 / (2j * np.pi * 20e3 * 150e-9)
    assert piezo_impedance(20e3, 150e-9, 22.0) == pytest.approx(abs(z))


# 30.8 V peak and 95 % behind the losses of the path: 20.5 V rms
@pytest.mark.parametrize(
    ("ratio", "severity"), [("4.5", Severity.MAJOR), ("4.75", Severity.MINOR), ("6", None)]
)
def test_a_line_needs_its_voltage(ratio: str, severity: Severity | None) -> None:
    assert answer("line-voltage", LINE.replace("RATIO", ratio)).severity is severity


def test_a_high_pass_saves_the_transformers() -> None:
    """About 100 V at 20 Hz on transformers for 60 Hz; 0.71 of 100 V over 65 Hz behind it."""
    bare = answer("line-saturation", FULL.replace("WHAT", "none"))
    assert bare.severity is Severity.MAJOR
    assert bare.evidence.figure == pytest.approx(3.0, rel=0.1)
    cut = answer("line-saturation", FULL.replace("WHAT", "{f: 65 Hz, order: 2}"))
    assert cut.status is Status.MEETS
    assert cut.evidence.figure / bare.evidence.figure == pytest.approx(20 / 65 * 0.5**0.5, rel=1e-3)


def test_a_line_is_the_load_where_none_is_rated() -> None:
    """100 V, 50 W and a ratio of 6 are 5.56 ohm: 50 W are 16.7 V, which 32 V allow."""
    text = LINE.replace("RATIO", "6").replace("    rated_load: 8 ohm\n", "")
    found = answer("power-above-rail", text)
    assert found.status is Status.MEETS
    swing = 32.0**2 / 2 / (100.0**2 / 50 / 36)
    assert found.evidence.figure == pytest.approx(50.0 / swing, rel=0.15)


def test_a_line_that_is_not_fully_tapped_asks_for_no_more_than_its_voltage() -> None:
    """50 W rated on 100 V are 200 ohm, 5.56 ohm at the bridge; taps of 40 W draw less, no more."""
    text = LINE.replace("RATIO", "6").replace("    rated_load: 8 ohm\n", "")
    part = answer("power-above-rail", text.replace("p_tap: 50 W", "p_tap: 40 W"))
    full = answer("power-above-rail", text)
    assert part.status is Status.MEETS
    assert part.evidence.figure == full.evidence.figure


COIL = ["loudspeaker-clipped-power", "loudspeaker-power-match", "filter-damping", "dc-fault-power"]


COILS_HEARD = [
    "thermal-compression",
    "level-beyond-drivers",
    "dc-detector-delay",
    "carrier-heats-loudspeaker",
    "treble-response-loudspeaker",
]


def test_no_voice_coil_is_looked_for_in_a_piezo_horn() -> None:
    found = answers(
        HORN.replace("LIMIT", "10 V") + "claims: {response: 3 dB, sound_level: 90 dB}\n"
    )
    assert {found[name].status for name in COIL + COILS_HEARD} == {Status.NOT_APPLICABLE}


HEARD_AT_LINE = [
    "dc-fault-power",
    "independent-disconnect",
    "loudspeaker-network",
    "carrier-heats-loudspeaker",
]


@pytest.mark.parametrize(
    ("detector", "severity"),
    [
        ("none", Severity.CRITICAL),
        ("{action: mute, independent: no}", Severity.CRITICAL),
        ("{action: remove-supply, independent: yes}", None),
    ],
)
def test_direct_voltage_burns_the_transformers_of_a_line(detector: str, severity: Severity) -> None:
    """80 V on the 3 ohm of wire of a line of 25 ohm: 2133 W, more than the 256 W that are told."""
    text = HALL.replace("WHAT", detector)
    found = answers(text.replace("loudspeaker: none", "loudspeaker: {z_rated: 8 ohm, parallel: 9}"))
    assert found["dc-fault-line"].severity is severity
    assert found["dc-fault-line"].evidence.figure <= 80.0**2 / 3.0
    assert {found[name].status for name in HEARD_AT_LINE} == {Status.NOT_APPLICABLE}


def test_a_piezo_horn_draws_most_at_the_top_of_the_band() -> None:
    """1 uF at 20 kHz is 8 ohm: as low as a coil of 8 ohm, and without resistor beyond it."""
    spec = HORN.replace("LIMIT", "10 V").replace("c: 150 nF, r_series: 22 ohm", "c: 4 uF")
    trip = "output_stage: {over_current: {i_trip: 6 A, t_response: 1 us, sensing: internal},"
    low = answer("trip-above-music", spec.replace("output_stage: {", trip))
    high = answer("trip-above-music", spec.replace("output_stage: {", trip).replace("4 uF", "1 uF"))
    assert low.severity is Severity.MAJOR
    assert high.evidence.figure > 2 * low.evidence.figure


def test_a_resistor_damps_the_piezo() -> None:
    """Node equations on a grid: 20 uH, 0.33 uF, two legs of path, 0.47 uF behind 8.2 ohm."""
    found = answer("piezo-filter-peak", PEAK.replace("SERIES", "8R2"))
    path = 2 * (0.07 + 0.02)
    s = 2j * np.pi * np.geomspace(2e4, 2e5, 20_001)
    load = s * 0.33e-6 + s * 0.47e-6 / (1 + s * 8.2 * 0.47e-6)
    peak = 20 * np.log10(np.abs(1 / (1 + (path + s * 20e-6) * load)).max())
    assert found.evidence.figure == pytest.approx(peak, abs=0.4)


@pytest.mark.parametrize(
    ("line", "status"),
    [
        ("line: none", Status.FINDING),
        ("line: {ratio: 5}", Status.OPEN),
        ("line: {p_tap: 50 W}", Status.NOT_APPLICABLE),
    ],
)
def test_a_line_without_taps_does_not_acquit_a_voice_coil(line: str, status: Status) -> None:
    text = LOADED.replace("limiter: none", f"limiter: none\n    {line}")
    assert answer("loudspeaker-clipped-power", text).status is status
