"""Words that a sentence chooses by its values."""

from math import inf

import pytest

from ampreview.linter.evaluation.wording import IN_BRACKETS, Said, in_words, known


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (2.5, "2.5 dB above the limit"),
        (-2.5, "2.5 dB below the limit"),
        (0.0, "0 dB above the limit"),
    ],
)
def test_above_or_below(value: float, text: str) -> None:
    assert f"{Said(value, 'dB'):+above|below} the limit" == text


@pytest.mark.parametrize(("value", "text"), [(0.0, "no cells"), (1.0, "1 cell"), (3.0, "3 cells")])
def test_one_or_many(value: float, text: str) -> None:
    assert f"{Said(value, '1'):cell|cells}" == text


def test_without_a_choice_the_value_alone() -> None:
    assert f"{Said(-2.5, 'dB')}" == "-2.5 dB"


def test_channels_alike_are_said_once() -> None:
    assert in_words((50.0, 50.0), "W") == "50 W each"
    assert in_words((50.0, 30.0), "W") == "50 W, 30 W"
    assert in_words((50.0,), "W") == "50 W"


def test_what_nobody_knows_is_said_instead() -> None:
    assert f"{Said(0.0, 'ohm', 'unknown')}" == "unknown"
    assert f"{Said(0.0, '1', 'unknown'):cell|cells}" == "unknown cell"


def test_a_word_of_the_spec_is_said_without_hyphens_and_an_abbreviation_in_capitals() -> None:
    assert f"touched {Said('over-1-min', 'word'):words}" == "touched over 1 min"
    assert f"{Said('ul-248-14', 'word'):upper}" == "UL 248-14"


def test_a_part_that_is_not_there_is_told_as_none() -> None:
    """A bleeder of infinite resistance is none."""
    assert f"{Said(inf, 'ohm', 'none'):?no bleeder|bleeder #}" == "no bleeder"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("9 W (crest 12 dB, carrier unknown)", "9 W (crest 12 dB)"),
        ("9 W (carrier unknown; rated 1 W)", "9 W (rated 1 W)"),
        ("9 W (carrier unknown)", "9 W"),
        ("9 W (crest 12 dB; rated 1 W)", "9 W (crest 12 dB; rated 1 W)"),
    ],
)
def test_a_remark_leaves_out_what_nobody_knows(text: str, said: str) -> None:
    assert IN_BRACKETS.sub(known, text) == said
