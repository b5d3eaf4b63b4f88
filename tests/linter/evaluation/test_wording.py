"""Words that a sentence chooses by its values."""

import pytest

from ampreview.linter.evaluation.wording import Said, in_words


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
