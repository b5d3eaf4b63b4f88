"""Which change of a stated promise promises less; the fields are those of the rules."""

import pytest

from ampreview.linter.declare import load_schema
from ampreview.linter.judging.promise import is_lowered
from ampreview.linter.quantities.quantity import parse

SCHEMA = load_schema()


@pytest.mark.parametrize(
    ("path", "old", "new", "lowered"),
    [
        ("claims.run_time", "10 h", "5 h", True),
        ("claims.run_time", "5 h", "10 h", False),
        ("claims.run_time", "10 h", "10 h ± 10 %", True),
        ("channels.a.rated_power", "50 W", "40 W", True),
        ("channels.a.rated_thd", "1 %", "10 %", True),
        ("channels.a.rated_thd", "10 %", "1 %", False),
        ("channels.a.rated_duration", "60 s", "10 s", True),
        ("channels.a.rated_duration", "10 s", "60 s", False),
        ("claims.sound_level", "105 dB", "103 dB", True),
        ("claims.sound_distance", "2 m", "1 m", True),
        ("claims.thd", "0.1 %", "0.2 %", True),
        ("claims.noise", "100 uV", "50 uV", False),
        ("channels.a.band", "50 Hz .. 20 kHz", "60 Hz .. 20 kHz", True),
        ("channels.a.band", "50 Hz .. 20 kHz", "40 Hz .. 21 kHz", False),
        ("environment.ambient", "-10 degC .. 40 degC", "0 degC .. 40 degC", True),
        ("supply.p_max", "100 W", "50 W", False),
        ("channels.a.modulator.carrier", "400 kHz", "200 kHz", False),
    ],
)
def test_which_way_a_number_promises_more(path: str, old: str, new: str, lowered: bool) -> None:
    field = SCHEMA.field_of(path)
    before, now = parse(old, field.unit), parse(new, field.unit)
    assert is_lowered(field, before, now) is lowered
    assert is_lowered(field, before, None) is bool(field.promise)


@pytest.mark.parametrize(
    ("path", "new", "lowered"),
    [
        ("channels.a.rated_duration", "10 ms", True),  # silent: for ever
        ("channels.a.rated_thd", "10 %", True),  # silent: 1 %
        ("channels.a.rated_thd", "0.5 %", False),
        ("channels.a.band", "60 Hz .. 20 kHz", True),  # silent: 20 Hz .. 20 kHz
        ("environment.ambient", "-10 degC .. 40 degC", False),  # silent: 0 degC .. 40 degC
        ("environment.ambient", "15 degC .. 25 degC", True),
        ("channels.a.rated_power", "10 W", False),
        ("claims.run_time", "5 h", False),
        ("supply.p_max", "100 W", False),
    ],
)
def test_a_first_statement_may_promise_less_than_silence(
    path: str, new: str, lowered: bool
) -> None:
    field = SCHEMA.field_of(path)
    assert is_lowered(field, None, parse(new, field.unit)) is lowered


@pytest.mark.parametrize(
    ("path", "old", "new", "lowered"),
    [
        ("claims.emission_class", "b", "a", True),
        ("claims.emission_class", "a", "b", False),
        ("claims.markets", ("eu", "uk"), ("uk",), True),
        ("claims.markets", ("uk",), ("eu", "uk"), False),
        ("claims.air_travel", "cabin", "cargo", False),
        ("claims.air_travel", "cabin", "none", True),
        ("channels.a.open_load", "yes", "no", True),
        ("channels.a.open_load", "no", "yes", False),
        ("environment.ip_code", "IP54", None, True),
    ],
)
def test_words_and_lists(path: str, old: object, new: object, lowered: bool) -> None:
    assert is_lowered(SCHEMA.field_of(path), old, new) is lowered


def test_everything_that_the_paperwork_claims_says_which_way_it_promises() -> None:
    """Of the claims only a transmitter, a fact and no merit, promises nothing."""
    claims = {path: x for path, x in SCHEMA.fields.items() if path.startswith("claims.")}
    assert {path for path, field in claims.items() if not field.promise} == {"claims.radio"}
