"""Published measurements, stated as such, against the model: agreement, and the cause told."""

from pathlib import Path

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.measured import Compared, comparisons
from ampreview.linter.reading.loading import load_text

DESIGNS = Path(__file__).parent / "designs"


def measured(design: str, reading: str) -> Compared:
    text = (DESIGNS / f"{design}.amp.yaml").read_text(encoding="utf-8")
    loaded = load_text(f"{text}measured: [{{{reading}}}]\n", design)
    assert loaded.spec is not None, loaded.refusals
    (found,) = comparisons(loaded.spec, load(), loaded.spec.measurements)
    return found


def test_the_loss_of_the_thesis_agrees_within_its_own_uncertainty() -> None:
    """Thesis of 2017: 90 W in and 75.84 W out at 70 V and 10.8 ohm.

    The input power is good for 3 points of the efficiency of 84.3 %: 90 W to 87 or 93 W.
    """
    at = "figure: p_loss_rated, value: 14.16 W ± 3.2 W, load: 10.8 ohm, power: 75.84 W"
    assert measured("thesis-full-bridge", f"{at}, supply: 70 V").answer == "agrees"
    other = measured("thesis-full-bridge", f"{at}, supply: 50 V")
    assert (other.answer, other.explanations) == ("not compared", ())


@pytest.mark.parametrize(
    ("design", "supply", "loss"),
    [("split-half-bridge-35v", "35 V", 2.4), ("split-half-bridge-50v", "50 V", 3.5)],
)
def test_the_idle_loss_of_the_reference_boards_is_explained_by_what_is_not_published(
    design: str, supply: str, loss: float
) -> None:
    """IRAUDAMP7D rev 2.9: half of 4.85 W and of the 7 W that the manual gives for two channels.

    Its cause stands in ``measurements.yaml``: core loss, charges and the supply of the
    controller are not published; of the loss the gates explain 0.4 and 0.6 W.
    """
    found = measured(design, f"figure: p_idle, place: left, value: {loss} W, supply: {supply}")
    assert found.answer == "part only"
    first = {x.path.rpartition(".")[2] for x in found.explanations[:3]}
    assert first == {"p_core", "q_oss_swing", "p_auxiliary"}


def test_the_power_of_a_half_bridge_agrees_with_what_its_data_sheet_prints() -> None:
    """TPA3121D2, SLOS537A p. 4: 8 W at 1 % from 24 V into 8 ohm, behind 470 uF."""
    at = "figure: p_at_one_percent, place: left, supply: 24 V"
    found = measured("single-rail-half-bridge-8-ohm", f"{at}, load: 8 ohm, value: 8 W")
    assert found.answer == "agrees"
    light = measured("single-rail-half-bridge-8-ohm", f"{at}, load: 16 ohm, value: 8 W")
    assert light.answer == "not compared"


@pytest.mark.parametrize(
    ("design", "supply", "power"),
    [("split-half-bridge-35v", "35 V", 145), ("split-half-bridge-50v", "50 V", 289)],
)
def test_the_power_that_the_reference_boards_lack_is_in_the_path_that_is_not_published(
    design: str, supply: str, power: float
) -> None:
    """IRAUDAMP7D rev 2.9, distortion against power: 145 W and 289 W into 4 ohm at 1 %.

    The manual gives neither the resistance of the path nor the largest modulation; without
    them the model is 5 and 6 % high, and either is what a bench would look at first.
    """
    at = f"figure: p_at_one_percent, place: left, supply: {supply}, load: 4 ohm"
    found = measured(design, f"{at}, value: {power} W")
    assert found.answer == "differs"
    assert found.nominal is not None
    assert 1.0 < found.nominal / power < 1.08
    first = {x.path.rpartition(".")[2] for x in found.explanations[:2]}
    assert first == {"m_max", "r_series"}
