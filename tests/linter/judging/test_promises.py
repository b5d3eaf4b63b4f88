"""Promises of the paperwork: impossible, unlikely, not shown, supported, with their numbers.

Each number is worked out by hand beside the case.
"""

from pathlib import Path

import pytest

from ampreview.linter.asking.letter import letter_of
from ampreview.linter.changes.causes import causes_of
from ampreview.linter.check import MILESTONES, Milestone
from ampreview.linter.judging.promised import Promised
from ampreview.linter.judging.review import Review, review, review_file
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.letter_text import letter_text
from ampreview.linter.reports.promise_words import allowed_in_words, promise_rows

SAMPLES = Path(__file__).parents[3] / "sample_specs"
SOUND = ("choir-portable", "bird-call-pocket", "market-day-trolley", "playhouse-subwoofer")

# 6 cells of 4.20 V: 25.2 V at most, 25.2^2 / (2 x 4 ohm) = 79.4 W of a clean sine.  6 x 2.6 Ah x
# 3.6 V = 56.2 Wh, of which an eighth of 86.5 W takes 10.8 W: 5.19 h before any loss.
OFFER = """amplifier_spec: 1
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 1, cell: {capacity: 2.6 Ah}}
channels:
  main: &main
    rated_power: 86.5 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated}
claims: {run_time: 12 h}
"""


def reviewed(text: str, milestone: Milestone = "prototype") -> Review:
    loaded = load_text(text, "offer")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, milestone)


def of_sample(name: str, milestone: Milestone | None = None) -> Review:
    found = review_file(SAMPLES / f"{name}.amp.yaml", milestone)
    assert isinstance(found, Review)
    return found


def promise(found: Review, name: str) -> Promised:
    return next(item for item in found.promises if item.name == name)


def outlooks(found: Review) -> dict[str, str]:
    return {item.name: item.outlook for item in found.promises}


def test_what_physics_forbids_is_impossible_and_told_at_its_best() -> None:
    found = reviewed(OFFER)
    power, run_time = promise(found, "power per channel"), promise(found, "run time")
    assert (power.outlook, run_time.outlook) == ("impossible", "impossible")
    assert power.allowed[0].value == pytest.approx(79.4, rel=1e-3)
    assert run_time.allowed[0].value == pytest.approx(5.19 * 3600, rel=2e-3)
    assert {x.at for x in (power.allowed[0], run_time.allowed[0])} == {"at best"}


def test_beside_the_number_at_best_stands_that_of_the_finding() -> None:
    """The claim of a supplier is answered by the best; the finding tells the worst."""
    run_time = promise(of_sample("market-day-trolley-faulty"), "run time")
    best = run_time.allowed[0]
    assert best.at_worst is not None
    assert best.at_worst / best.value == pytest.approx(18.0 / 20.0, rel=1e-6)  # capacity 18 .. 20
    told = allowed_in_words(run_time)
    assert told.startswith("42.2 h without any loss, at best (38 h at worst); ")


def test_within_the_bounds_and_open_it_is_not_shown() -> None:
    found = reviewed(OFFER.replace("86.5 W", "60 W").replace("12 h", "4 h"))
    assert set(outlooks(found).values()) == {"not shown"}
    assert all(item.missing or item.told for item in found.promises)


def test_the_proposal() -> None:
    """7 cells: (29.4 V)^2 / (2 x 4 ohm) = 108 W; less 2 x (15 + 60) mohm of path (4 / 4.15)^2 are
    100.4 W, and 4.8 % more at 1 % of distortion 105.2 W.  7 x 2.6 Ah x 3.6 V = 65.5 Wh at 2 x
    120 W / 8 = 30 W: 2.18 h.  The inductor of 22 mH is taken as the 22 uH that are likely: with
    1 uF they turn at 34 kHz and pass the band , level or not, and a short circuit leaves them
    22 uH (36 A)^2 / 2 = 14 mJ, against a rating that is not stated.  4 ohm of 4.15 ohm are 96.4 %.
    """
    found = of_sample("foyer-proposal")
    assert outlooks(found) == {
        "power per channel": "impossible",
        "efficiency": "impossible",
        "run time": "impossible",
        "sound level": "impossible",
        "distortion and noise": "not shown",
        "frequency range": "not shown",
        "ambient": "not shown",
        "over-current protection": "not shown",
        "standards": "not shown",
    }
    assert {path.rpartition(".")[2] for path in found.slips} == {"l"}
    assert not promise(found, "frequency range").allowed, "no deviation is claimed"
    assert promise(found, "power per channel").allowed[0].value == pytest.approx(105.2, rel=2e-3)
    assert promise(found, "run time").allowed[0].value == pytest.approx(2.18 * 3600, rel=3e-3)


@pytest.mark.parametrize("name", ["foyer-proposal", "choir-portable", "market-day-trolley-faulty"])
def test_the_milestone_changes_no_promise(name: str) -> None:
    told = {milestone: of_sample(name, milestone).promises for milestone in MILESTONES}
    assert told["concept"] == told["prototype"] == told["production"]


@pytest.mark.parametrize("name", SOUND)
def test_what_a_sound_design_promises_it_can_keep(name: str) -> None:
    """What only a measurement or a test shows stays not shown, and bass that an equaliser lifts."""
    for item in of_sample(name).promises:
        lifted = item.checks == ("box-response",) and item.outlook == "not shown"
        assert item.outlook == "supported" or item.told.startswith("needs ") or lifted, item


def test_a_permission_keeps_no_promise() -> None:
    permitted = OFFER + (
        "deviations:\n  - {check: run-time-best-case, place: product, permitted_by: sales,"
        " reason: the brochure is printed, until: production}\n"
    )
    assert promise(reviewed(permitted), "run time").outlook == "impossible"


def test_what_is_not_promised_is_not_judged() -> None:
    silent = OFFER.replace("claims: {run_time: 12 h}\n", "").replace(
        "    rated_power: 86.5 W\n", ""
    )
    assert outlooks(reviewed(silent)) == {}


def test_equal_channels_are_told_once_and_others_by_name() -> None:
    twin = OFFER.replace("claims:", "  other: *main\nclaims:")
    assert [row.channels for row in promise_rows(reviewed(twin).promises)] == ["", ""]
    other = OFFER.replace("claims:", "  other: {<<: *main, rated_power: 10 W}\nclaims:")
    rows = promise_rows(reviewed(other).promises)
    power = [row.channels for row in rows if row.name == "power per channel"]
    assert power == [" (main)", " (other)"]


def test_the_least_likely_comes_first() -> None:
    rows = promise_rows(of_sample("foyer-proposal").promises)
    told = [row.outlook for row in rows]
    order = ("impossible", "unlikely", "not shown", "supported")
    assert told == sorted(told, key=order.index)


def test_a_check_that_the_house_switches_off_supports_nothing(tmp_path: Path) -> None:
    for name, text in (
        ("choir.amp.yaml", (SAMPLES / "choir-portable.amp.yaml").read_text(encoding="utf-8")),
        ("house.ampreview.yaml", "amplifier_house: 1\nchecks_off: {power-above-rail: a trial}\n"),
    ):
        (tmp_path / name).write_text(text, encoding="utf-8")
    found = review_file(tmp_path / "choir.amp.yaml")
    assert isinstance(found, Review)
    power = promise(found, "power per channel")
    assert power.outlook == "not shown"
    assert "power-above-rail" in power.told


def test_what_ends_the_music_or_bursts_a_capacitor_supports_no_promise() -> None:
    """84 V and 81.4 V on capacitors of 80 V, a trip at 80 V on that rail, a trip of 16 A under
    music of 22.2 A, and mains without a certificate: one check of each would support it."""
    found = of_sample("playhouse-subwoofer-faulty")
    spoiled = {x.name: x.told_by for x in found.promises if x.outlook == "unlikely"}
    assert spoiled == {
        "power per channel": "over-voltage-trip-window",
        "life": "bulk-capacitor-voltage",
        "over-current protection": "trip-above-music",
        "standards": "mains-barrier",
    }
    text = letter_text(found, letter_of(found, causes_of(found)))
    for told in ("rail up to 81.4 v", "over-current trip 16 a hot", "certificate of the mains"):
        assert " ".join(text.lower().split()).count(told) == 1


def test_a_trip_within_the_rated_sine_takes_its_power() -> None:
    """2 W into 6 ohm are 0.816 A peak; 0.7 A let 1.47 W through."""
    lamp = (SAMPLES / "bedside-lamp.amp.yaml").read_text(encoding="utf-8")
    power = promise(
        reviewed(lamp.replace("{min: 2.2 A, typ: 2.7 A}", "0.7 A")), "power per channel"
    )
    (allowed,) = (x.value for x in power.allowed if x.check == "trip-above-rated-power")
    assert (power.outlook, allowed) == ("unlikely", pytest.approx(0.7**2 * 6 / 2))


def test_a_deviation_a_hundredth_of_the_promised_is_told_as_below_that() -> None:
    """3 dB / 100: the subwoofer deviates by 0.000119 dB over its rated loads, its box left out."""
    text = (SAMPLES / "playhouse-subwoofer.amp.yaml").read_text("utf-8")
    open_baffle = reviewed(text.replace("{type: sealed, v_b: 90 L}", "{type: open}"))
    told = {x.name: x.allowed for x in promise_rows(open_baffle.promises)}
    assert told["frequency range"].startswith("below 0.03 dB")


def test_one_promise_with_two_corners_is_told_once_in_the_letter() -> None:
    """48 h are claimed of 42.2 h without loss; 33.3 h by another exponent stay out of part 2."""
    found = of_sample("market-day-trolley-faulty")
    text = letter_text(found, letter_of(found, causes_of(found)), whole=True)
    assert text.count("un time") == 1
