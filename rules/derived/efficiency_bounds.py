"""What is drawn and does not come out at least: bounds on stated efficiency and heat.

Cold conduction is certain; of the other losses that are known half is counted.
"""

from ...linter.check import Constant, Derived, Input, Way
from ..formulas.maths import smaller
from .heat import DEVICE
from .loss_bounds import DISCRETE, HALF, SUMMED
from .part_load import EFFICIENCIES, POWERS
from .ways import as_stated, left_out


def efficiency_of_part(
    rated_power: float,
    share: float,
    idle: float,
    switching: float,
    n_legs: float,
    r_ds_on: float,
    parallel: float,
    i_rated_peak: float,
    p_inductor: float,
) -> float:
    """Efficiency with all of the cold conduction, which is certain, and a share of the rest."""
    conduction = n_legs * r_ds_on / parallel * i_rated_peak**2 / 2
    rest = idle + switching + p_inductor
    return rated_power / (rated_power + conduction + share * rest)


def efficiencies_of_part(
    powers: tuple[float, ...],
    rated_power: float,
    share: float,
    idle: float,
    switching: float,
    n_legs: float,
    r_ds_on: float,
    parallel: float,
    i_rated_peak: float,
    p_inductor: float,
) -> tuple[float, ...]:
    """The same at each power of a curve.

    Conduction goes with the power; switching grows with it or with its root, the smaller counts.
    """
    conduction = n_legs * r_ds_on / parallel * i_rated_peak**2 / 2
    found = []
    for power in powers:
        part = power / rated_power
        rest = idle + switching * smaller(part, part**0.5) + p_inductor * part
        found.append(power / (power + conduction * part + share * rest))
    return tuple(found)


def least_heat(
    part: float,
    rated_power: tuple[float, ...],
    efficiency: tuple[float, ...],
    idle: tuple[float, ...],
    share: float,
) -> float:
    """Heat of a product at a part of its rated power, of which conduction goes with the power."""
    heat = 0.0 * idle[0]
    for number, power in enumerate(rated_power):
        heat = heat + part * power * (1 / efficiency[number] - 1) + share * idle[number]
    return heat


_KNOWN: dict[str, Input | Constant] = {
    "rated_power": Input("rated_power"),
    "share": HALF,
    "idle": Input("p_idle_summed", default=left_out("0 W", "idle loss")),
    "switching": Input("p_switching", default=left_out("0 W", "switching loss")),
    "n_legs": Input("n_legs"),
    "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "conduction")),
    "parallel": Input("output_stage.parallel"),
    "i_rated_peak": Input("i_rated_peak"),
    "p_inductor": Input("p_inductor", default=left_out("0 W", "copper")),
}

DERIVED: tuple[Derived, ...] = (
    Derived(
        "heat_part",
        "1",
        "product",
        "power of the signal of the statement of heat over the rated power",
        tuple(
            Way(
                as_stated,
                {"value": Constant(part, f"power of {word} over rated", SUMMED)},
                "value",
                when={"heat_basis": word},
            )
            for word, part in (
                ("one-eighth", "0.125"),
                ("one-third", "0.33333"),
                ("full-sine", "1"),
            )
        ),
    ),
    Derived(
        "heat_least",
        "W",
        "product",
        "the cold conduction of all channels and half of their idle loss",
        (
            Way(
                least_heat,
                {
                    "part": Input("heat_part"),
                    "rated_power": Input("all rated_power"),
                    "efficiency": Input("all efficiency_possible"),
                    "idle": Input("all p_idle_known", default=left_out("0 W", "idle loss")),
                    "share": HALF,
                },
                "sum of part rated_power (1 / efficiency - 1) + share idle",
            ),
        ),
        bounds_from_below=("claims.heat",),
        bounds_always=True,
        sources=(SUMMED,),
    ),
    Derived(
        "efficiencies_of_losses",
        "1",
        "channel",
        "the efficiency at that power with cold conduction and half of the other known losses",
        (
            Way(
                efficiencies_of_part,
                {"powers": Input(POWERS), **_KNOWN},
                "power / (power + part n_legs r_ds_on / parallel i_rated_peak^2 / 2 + share (idle"
                " + smaller of part and sqrt(part) switching + part p_inductor)) for each of"
                " powers, part = power / rated_power",
                when=DISCRETE,
            ),
        ),
        bounds_from_above=(EFFICIENCIES,),
        bounds_always=True,
        sources=(SUMMED,),
    ),
    Derived(
        "efficiency_of_losses",
        "1",
        "channel",
        "the efficiency with cold conduction and half of the other known losses",
        (
            Way(
                efficiency_of_part,
                _KNOWN,
                "rated_power / (rated_power + n_legs r_ds_on / parallel i_rated_peak^2 / 2"
                " + share (idle + switching + p_inductor))",
                when=DISCRETE,
            ),
        ),
        bounds_from_above=("output_stage.efficiency",),
        bounds_always=True,
        sources=(SUMMED,),
    ),
)
