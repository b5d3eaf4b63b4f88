"""Claims against measured designs, clipped sines and lists of standards."""

import math

import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from ampreview.linter.finding import Severity, Status
from ampreview.rules.claims.efficiency_plausibility import figure as excess
from ampreview.rules.claims.rated_figures_agree import figure as disagreement
from ampreview.rules.formulas.paperwork import (
    EMISSION,
    LITHIUM_TRANSPORT,
    RADIO,
    SAFETY,
    cites,
    withdrawn,
)

from ..whole import answer


@pytest.mark.parametrize(
    ("rated", "p_in", "printed"),
    [
        # Universidad de Cantabria 2017: measured input and output, printed efficiency
        (7.34, 12.3, 59.7),
        (15.62, 28.0, 55.7),
        (27.69, 45.0, 61.53),
        (26.62, 32.0, 83.19),
        (57.13, 70.0, 81.62),
        (75.84, 90.0, 84.27),
        # TPA3221 data sheet SLASEE9B: output of fig. 6 and loss of fig. 9
        (176.0, 176.0 + 29.97, 85.45),
        (80.0, 80.0 + 17.0, 82.47),
    ],
)
def test_measured_efficiencies_have_no_excess(rated: float, p_in: float, printed: float) -> None:
    assert excess(printed / 100, (rated,), p_in) == pytest.approx(0.0, abs=2e-3)


STAGE = """
channels:
  main:
    rated_power: 30 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: integrated, efficiency: 80 %}
supply: {source: dc-source, rails: single, v_rail: 36 V}
claims: {efficiency: CLAIM}
"""


@pytest.mark.parametrize(
    ("claim", "severity"),
    [("79 %", None), ("82 %", Severity.MINOR), ("84 %", Severity.MAJOR), ("90 %", Severity.MAJOR)],
)
def test_a_claim_above_the_measured_stage(claim: str, severity: Severity | None) -> None:
    # measured 80 %: 37.5 W in for 30 W out
    assert answer("efficiency-plausibility", STAGE.replace("CLAIM", claim)).severity is severity


def test_a_claim_never_passes_on_an_incomplete_loss_sum() -> None:
    text = STAGE.replace(", efficiency: 80 %", "").replace("CLAIM", "85 %")
    assert answer("efficiency-plausibility", text).status is Status.OPEN


@pytest.mark.parametrize(("claim", "severity"), [("85 %", None), ("60 %", Severity.MINOR)])
def test_class_d_against_linear(claim: str, severity: Severity | None) -> None:
    # class B at its best, by quadrature: output over supply power of a full-swing sine
    out = quad(lambda x: math.sin(x) ** 2, 0, math.pi)[0]
    drawn = quad(math.sin, 0, math.pi)[0]
    assert out / drawn == pytest.approx(0.7854, rel=1e-4)
    assert answer("efficiency-of-class-d", STAGE.replace("CLAIM", claim)).severity is severity


def test_nbitwonder_entry_031_40_watt_on_a_24_volt_bridge() -> None:
    # 46.8 V peak to peak into 8 ohm: power by averaging the sine's instants is 34.2 W, not 40
    peak = 46.8 / 2
    power = quad(lambda x: (peak * math.sin(x)) ** 2 / 8, 0, math.pi)[0] / math.pi
    assert power == pytest.approx(34.2, abs=0.05)
    assert disagreement(40.0, peak / 2**0.5, 8.0) == pytest.approx(40.0 / power - 1, rel=1e-9)
    text = """
channels:
  main: {rated_power: 40 W, rated_voltage: 16.55 V, rated_load: 8 ohm}
"""
    assert answer("rated-figures-agree", text).severity is Severity.MAJOR


@pytest.mark.parametrize(
    ("watt", "volt", "ohm"),
    [
        (100.0, 28.3, 8.0),
        (125.0, 27.39, 6.0),
        (50.0, 20.0, 8.0),
        (10.0, 8.9, 8.0),
        (36.0, 12.0, 4.0),
    ],
)
def test_rounded_ratings_of_the_trade_agree(watt: float, volt: float, ohm: float) -> None:
    assert disagreement(watt, volt, ohm) < 0.03


def test_a_missed_bridge_or_peak_is_caught() -> None:
    # 40 W into 8 ohm are 17.9 V rms, 25.3 V peak; one side of a bridge has half
    assert disagreement(40.0, 25.3, 8.0) == pytest.approx(0.5, abs=0.01)
    assert disagreement(40.0, 8.94, 8.0) == pytest.approx(3.0, abs=0.02)


def clipped(drive: float) -> tuple[float, float]:
    """Power over the onset of clipping, and distortion, of a hard-clipped sine."""

    def wave(x: float) -> float:
        return min(drive * math.sin(x), 1.0)

    edge = math.asin(1 / drive)
    parts = [(0.0, edge), (edge, math.pi / 2)]
    power = sum(quad(lambda x: wave(x) ** 2, *p)[0] for p in parts) * 4 / math.pi
    first = sum(quad(lambda x: wave(x) * math.sin(x), *p)[0] for p in parts) * 4 / math.pi
    return power, math.sqrt(max(power - first**2, 0.0)) / first


def test_ten_percent_power_is_a_fifth_above_one_percent() -> None:
    # hard clipper: 1.048 and 1.288 times the onset; published: 105 W and 88 W, 107.7 and 88.1 W
    at_1 = clipped(brentq(lambda k: clipped(k)[1] - 0.01, 1.001, 3.0))[0]
    at_10 = clipped(brentq(lambda k: clipped(k)[1] - 0.10, 1.001, 3.0))[0]
    assert at_1 == pytest.approx(1.048, abs=2e-3)
    assert at_10 / at_1 == pytest.approx(1.23, abs=5e-3)
    assert pytest.approx(at_10 / at_1, rel=0.04) == 105.0 / 88.0
    assert pytest.approx(at_10 / at_1, rel=0.01) == 107.7 / 88.1


@pytest.mark.parametrize(
    ("text", "gone"),
    [
        ("IEC 60065:2014", 1),
        ("EN 60950-1", 1),
        ("EN60950-1:2006+A2", 1),
        ("EN 55022", 1),
        ("CISPR 13", 1),
        ("EN 55024", 1),
        ("IEC 62133:2012", 1),
        ("2004/108/EC", 1),
        ("EN 55032", 0),
        ("CISPR 32", 0),
        ("EN 55035", 0),
        ("IEC 62368-1", 0),
        ("IEC 62133-2:2017", 0),
        ("2014/30/EU", 0),
        ("UN 38.3", 0),
    ],
)
def test_withdrawn_texts(text: str, gone: int) -> None:
    # EN 60065 and EN 60950-1: withdrawn 2020-12-20 (laboratories' notices); rest from memory
    assert withdrawn((text,)) == gone


@pytest.mark.parametrize(
    ("text", "families"),
    [
        ("UL 62368-1", {"safety"}),
        ("EN IEC 62368-1:2020", {"safety"}),
        ("EN 55032 class B", {"emission"}),
        ("47 CFR 15 subpart B", {"emission"}),
        ("FCC Part 15B", {"emission"}),
        ("ICES-003", {"emission"}),
        ("EN 301 489-1", {"emission"}),
        ("ETSI EN 300 328", {"radio"}),
        ("47 CFR 15 subpart C", {"radio"}),
        ("UN 38.3", {"transport"}),
        ("IEC 60065", set()),
    ],
)
def test_families_of_standards(text: str, families: set[str]) -> None:
    patterns = {
        "safety": SAFETY,
        "emission": EMISSION,
        "radio": RADIO,
        "transport": LITHIUM_TRANSPORT,
    }
    assert {name for name, family in patterns.items() if cites((text,), family)} == families


def test_radio_papers_are_asked_only_with_a_transmitter() -> None:
    text = "claims: {radio: WORD, standards: [IEC 62368-1]}\nchannels: {main: {rated_power: 5 W}}\n"
    assert answer("radio-standard-cited", text.replace("WORD", "yes")).severity is Severity.MINOR
    silent = answer("radio-standard-cited", text.replace("radio: WORD, ", ""))
    assert silent.status is Status.NOT_APPLICABLE
