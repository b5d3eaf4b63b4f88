"""A higher rating never makes a margin worse; more dead time never makes a shoot-through.

No figure is known here: two reviews of a spec are compared, of which one has a better part.
"""

import random
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from ampreview.linter.check import AtLeast
from ampreview.linter.declare import load_schema, local_path
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import CLEAR, Finding, Status
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_text

from .reviews import PUBLISHED, SAMPLES, name_of, spec_of
from .sampling import some
from .verdict.reruns import Judged, Rejudged
from .verdict.specs import house

PATHS = sorted(SAMPLES.glob("*.amp.yaml"))
DESIGNS = sorted((PUBLISHED / "designs").glob("*.amp.yaml"))
RATINGS = frozenset(
    (
        "battery.cell.i_charge",
        "battery.cell.i_cont",
        "battery.cell.i_pulse",
        "battery.protection.i_breaking",
        "filter.bead.i_rated",
        "filter.c_across.i_rated",
        "filter.c_across.v_rated",
        "filter.c_block.i_rated",
        "filter.c_block.v_rated",
        "filter.c_ground.i_rated",
        "filter.c_ground.v_rated",
        "filter.damper.p_rated",
        "filter.damper.v_rated",
        "filter.inductor.i_rms",
        "filter.inductor.i_sat",
        "gate_drive.bootstrap.v_r",
        "gate_drive.cmti",
        "gate_drive.regulator.t_j_max",
        "gate_drive.v_floating",
        "gate_drive.v_node_negative",
        "loudspeaker.c_series.i_rated",
        "loudspeaker.c_series.v_rated",
        "loudspeaker.zobel.p_rated",
        "output_stage.device.e_as",
        "output_stage.device.i_d",
        "output_stage.device.i_dm",
        "output_stage.device.t_j_max",
        "output_stage.device.v_dss",
        "output_stage.device.v_gss",
        "output_stage.device.v_supply_abs",
        "output_stage.snubber.p_rated",
        "output_stage.snubber.v_rated",
        "output_stage.v_c_local",
        "protection.bleeder.p_rated",
        "protection.dc_detector.i_break",
        "protection.dc_detector.v_break",
        "protection.fuse.i_breaking",
        "protection.fuse.v_dc",
        "protection.inrush.e_rated",
        "protection.inrush.i_surge",
        "protection.reverse_polarity.v_block",
        "protection.reverse_polarity.v_gss",
        "supply.bulk.i_ripple",
        "supply.bulk.life",
        "supply.bulk.t_rated",
        "supply.bulk.v_rated",
        "supply.v_source_abs",
        "wiring.connector.i_rated",
        "wiring.connector.i_surge",
        "wiring.connector.t_max",
        "wiring.supply_lead.i_rated",
    )
)
_AT_HALF = "the gate-drain charge is taken as printed at half of v_dss: less is left at this rail"
COUPLED = {
    ("output_stage.device.v_dss", "driver-slope-immunity"): _AT_HALF,
    ("output_stage.device.v_dss", "miller-turn-on"): _AT_HALF,
    ("wiring.supply_lead.i_rated", "lead-rating"): "the rating is compared with the area",
}
"""Rating and check where the rating tells something else as well, with the reason."""


def judged(spec: Spec) -> Judged:
    return Judged(spec, house(), spec.milestone)


@cache
def before(path: Path) -> Judged:
    return judged(spec_of(path))


def raised(value: Value, unit: str) -> object:
    """A rating that is 1.4 times as large, or 15 K higher."""

    def more(x: float) -> float:
        return x + 15.0 if unit == "degC" else 1.4 * x

    ends = (more(value.lo), more(value.nominal), more(value.hi))
    return spell(Value(*ends, value.form, sides=value.sides), unit)


def rank(item: Finding) -> int:
    return CLEAR if item.severity is None else item.severity.rank


def worse(old: Finding, new: Finding) -> bool:
    """Graver, no longer met, or a figure that moved towards its limit."""
    if rank(new) < rank(old) or (old.status is Status.MEETS and new.status is Status.OPEN):
        return True
    entry = load().entry(old.check)
    a, b = old.evidence.figure, new.evidence.figure
    if entry is None or a is None or b is None:
        return False
    sign = 1.0 if isinstance(entry.check.limits, AtLeast) else -1.0
    return sign * (b - a) < -1e-6 * (abs(a) + abs(b))


def rated(spec: Spec) -> Iterator[tuple[str, Value, str]]:
    fields = load_schema().field_of
    for path, value in sorted(spec.values.items()):
        if local_path(path) in RATINGS and isinstance(value, Value):
            yield path, value, fields(path).unit


def got_worse(old: Judged, share: float = 1.0, dice: random.Random | None = None) -> list[str]:
    """The checks that the ratings, or a share of them, make worse when they are raised together."""
    chosen = {
        name: raised(value, unit)
        for name, value, unit in rated(old.spec)
        if dice is None or dice.random() < share
    }
    return made_worse(old, chosen)


def made_worse(old: Judged, changes: dict[str, object]) -> list[str]:
    """The checks that a change makes worse, but for those that are coupled with it."""
    spec = old.spec.with_values(changes).spec
    assert spec is not None, changes
    new = Rejudged(old, spec)
    pairs = ((key[0], item, new.answer(key)) for key, item in old.answers.items())
    return [
        check
        for check, was, now in pairs
        if load().entry(check) is not None
        and now is not None
        and worse(was, now)
        and not any((local_path(name), check) in COUPLED for name in changes)
    ]


def test_every_rating_is_a_field() -> None:
    assert not RATINGS - set(load_schema().fields)


@pytest.mark.parametrize("path", [*PATHS, *some(DESIGNS, 4)], ids=name_of)
def test_higher_ratings_never_make_a_margin_worse(path: Path) -> None:
    assert got_worse(before(path)) == []


@pytest.mark.parametrize("path", PATHS, ids=name_of)
def test_some_higher_ratings_never_make_a_margin_worse(path: Path) -> None:
    """One rating in five, so that none hides what another one does."""
    for seed in some(range(6), 3):
        assert got_worse(before(path), 0.2, random.Random(f"{path.name} {seed}")) == [], seed


# Designs made up at random: a discrete leg with its data sheet

LEG = """amplifier_spec: 1
milestone: prototype
supply: {{source: dc-source, rails: split, v_rail: {v_rail:.1f} V, sinks_current: yes}}
channels:
  main:
    rated_power: {power:.1f} W
    rated_load: 8 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {{v_dss: {v_dss:.0f} V, v_gss: 20 V, t_d_on: {t_d_on:.1f} ns,
        t_d_off: {t_d_off:.1f} ns, t_f: {t_f:.1f} ns, q_g: {q_g:.1f} nC, q_gd: {q_gd:.1f} nC,
        v_gs_th: {{min: {v_th:.2f} V}}, r_g_int: 2 ohm, v_gs_pl: {v_pl:.2f} V,
        i_d: 30 A, i_dm: 100 A, t_j_max: 150 degC}}
    gate_drive: {{v_drv: 12 V, r_g_on: {r_on:.1f} ohm, r_g_off: {r_off:.1f} ohm, i_source: 2 A,
      i_sink: 4 A, delay_mismatch: 5 ns, dead_time: {dead:.1f} ns}}
    modulator: {{type: natural-sampling, carrier: {carrier:.0f} kHz, feedback: none}}
    filter: {{type: lc, inductor: {{l: 22 uH, i_sat: 15 A, i_rms: 8 A}}, c_across: {{c: 470 nF,
      dielectric: polypropylene, v_rated: 100 V}}}}
"""


def drawn(seed: int) -> dict[str, float]:
    dice = random.Random(seed)
    v_rail, q_g, v_th = dice.uniform(20, 60), dice.uniform(10, 80), dice.uniform(1.2, 4)
    return {
        "v_rail": v_rail,
        "power": dice.uniform(0.1, 0.6) * v_rail**2 / 16,
        "v_dss": dice.uniform(2.1, 4) * v_rail,
        "t_d_on": dice.uniform(5, 20),
        "t_d_off": dice.uniform(10, 60),
        "t_f": dice.uniform(5, 30),
        "q_g": q_g,
        "q_gd": dice.uniform(0.15, 0.4) * q_g,
        "v_th": v_th,
        "v_pl": v_th + dice.uniform(0.5, 2),
        "r_on": dice.uniform(3, 20),
        "r_off": dice.uniform(2, 10),
        "dead": dice.uniform(5, 80),
        "carrier": dice.uniform(200, 600),
    }


def design(values: dict[str, float]) -> Spec:
    spec = load_text(LEG.format(**values), "drawn").spec
    assert spec is not None
    return spec


@pytest.mark.parametrize("seed", some(range(8), 4))
def test_more_dead_time_never_more_shoot_through(seed: int) -> None:
    """And never less distortion: both by steps from 1 to 130 ns."""
    values = drawn(seed)
    steps = (1.0, 20.0, 45.0, 80.0, 130.0)
    run = [judged(design({**values, "dead": dead})) for dead in steps]
    margins = [answer(item, "dead-time-margin") for item in run]
    figures = [item.evidence.figure or 0.0 for item in margins]
    assert figures == sorted(figures)
    ranks = [rank(item) for item in margins]
    assert ranks == sorted(ranks)  # the gravest rank is the lowest
    for check in ("dead-time-distortion-unclaimed", "dead-time-share"):
        figures = [answer(item, check).evidence.figure or 0.0 for item in run]
        assert figures == sorted(figures)
        assert figures[-1] > figures[0]


def answer(run: Judged, check: str) -> Finding:
    found = run.answer((check, "main"))
    assert found is not None
    return found


@pytest.mark.parametrize("seed", some(range(8), 4, first=1))
def test_a_higher_rating_of_a_design_at_random(seed: int) -> None:
    """Each rating alone, none with another."""
    old = judged(design(drawn(seed + 100)))
    for name, value, unit in rated(old.spec):
        assert made_worse(old, {name: raised(value, unit)}) == [], name
