"""Pieces of text that reports share: what two channels have in common is said once."""

from ampreview.linter.check import COMMON_PRACTICE
from ampreview.linter.finding import Assumed, Evidence, Finding, Missing, Severity, Status
from ampreview.linter.reports.assumption_words import unsure_of
from ampreview.linter.reports.phrases import missing_in_words


def missing(*paths: str) -> list[Missing]:
    return [Missing(path, "K/W", "heat path", "1 K/W") for path in paths]


def test_a_leaf_that_two_channels_lack_is_asked_once() -> None:
    leaf = "output_stage.device.r_th_ja"
    both = missing(f"channels.a.{leaf}", "thermal.heatsink.r_th", f"channels.b.{leaf}")
    assert missing_in_words(both) == f"{leaf} [K/W], thermal.heatsink.r_th [K/W]"


def test_what_is_cut_off_is_counted_without_repeats() -> None:
    many = missing(*(f"channels.{name}.lead.x{n}" for n in range(8) for name in "ab"))
    assert missing_in_words(many, most=6).endswith("lead.x5 [K/W] and 2 more")


def test_equal_assumptions_are_said_once_and_absent_parts_not_at_all() -> None:
    leaned = [
        Assumed(f"channels.{name}.m_max", text, leaning, COMMON_PRACTICE)
        for name, text, leaning in (
            ("a", "95 %", "neutral"),
            ("b", "95 %", "neutral"),
            ("c", "90 %", "neutral"),
            ("d", "none", "absent"),
        )
    ]
    found = Finding(
        *("gain", "sound", "Gain", "a", Status.FINDING, "too high", Severity.MAJOR),
        evidence=Evidence(assumed=tuple(leaned)),
    )
    assert unsure_of(found) == [
        "m_max 95 % (neutral, common practice)",
        "m_max 90 % (neutral, common practice)",
    ]
