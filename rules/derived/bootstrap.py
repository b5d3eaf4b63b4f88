"""Bootstrap supply of the upper switch: its lowest voltage in steady state."""

from ...linter.check import (
    COMMON_PRACTICE,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.gate import bootstrap_charge, bootstrap_minimum, period_at
from ..formulas.maths import smaller
from .ways import as_stated, left_out

GATE_CHARGE_ALONE = left_out("0 A", "current of the floating supply")
NO_RESISTANCE = left_out("0 ohm", "resistance of the refill path")


def bootstrapped() -> str:
    """A bootstrap capacitor is fitted."""
    return "bootstrap"


def lowest(
    v_drv: float,
    v_f: float,
    q_g: float,
    parallel: float,
    i_q: float,
    carrier: float,
    modulator: str,
    c: float,
    r: float,
    m_max: float,
    m_most: float,
    v_clamp: float,
) -> float:
    """Balance of charge and refill at the largest modulation depth, below the clamp."""
    depth = smaller(m_max, m_most)
    period = period_at(modulator, depth, carrier)
    charge = bootstrap_charge(parallel * q_g, i_q, 1 / period)
    t_refill = (1 - depth) / 2 * period
    return bootstrap_minimum(smaller(v_drv, v_clamp + v_f), v_f, charge, c, r, t_refill)


V_BOOTSTRAP_MIN = Derived(
    "v_bootstrap_min",
    "V",
    "channel",
    "lowest voltage of the bootstrap supply, at the largest modulation depth",
    (
        Way(
            lowest,
            {
                "v_drv": Input("gate_drive.v_drv"),
                "v_f": Input("gate_drive.bootstrap.v_f"),
                "q_g": Input("output_stage.device.q_g"),
                "parallel": Input("output_stage.parallel"),
                "i_q": Input("gate_drive.bootstrap.i_q", default=GATE_CHARGE_ALONE),
                "carrier": Input("modulator.carrier"),
                "modulator": Input("modulator.type"),
                "c": Input("gate_drive.bootstrap.c"),
                "r": Input("gate_drive.bootstrap.r", default=NO_RESISTANCE),
                "m_max": Input("m_max"),
                "m_most": Constant(
                    "0.95",
                    "depth that a balance is taken at, where nothing limits it",
                    COMMON_PRACTICE,
                ),
                "v_clamp": Input("gate_drive.bootstrap.v_clamp"),
            },
            "smaller of v_drv - v_f and v_clamp, less q / c / (1 - exp(-t / (r c))),"
            " q = parallel q_g + i_q / f, t = (1 - m) / (2 f), m = m_max but at most m_most,"
            " f = carrier, of a self-oscillating modulator carrier (1 - m^2)",
        ),
    ),
    sources=(
        derivation("exponential refill and equal charge in every period"),
        Source("ST L6387 data sheet", "p. 5: drop of the refill path"),
    ),
)


HIGH_SIDE_SUPPLY = Derived(
    "high_side_supply",
    "word",
    "channel",
    "what supplies the gate of the upper switch",
    (
        Way(bootstrapped, {}, "bootstrap", when={"gate_drive.bootstrap": "fitted"}),
        Way(
            as_stated,
            {"value": Input("gate_drive.floating_supply")},
            "value",
        ),
    ),
)


DERIVED: tuple[Derived, ...] = (V_BOOTSTRAP_MIN, HIGH_SIDE_SUPPLY)
