"""Heat set free in each channel, sine at rated power and programme."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, derivation
from ..formulas.dissipation import efficiency_loss, hot_exponent
from ..formulas.heat import ChannelHeat
from ..formulas.maths import smaller
from .part_load import EFFICIENCY, IDLE, ONE_EIGHTH, POWER
from .ways import left_out, yes

DEVICE = "output_stage.device"
DISCRETE = {"output_stage.devices": "discrete"}
INTEGRATED = {"output_stage.devices": "integrated"}


CURVES = Source(
    "TPA3221 data sheet SLASEE9B",
    "fig. 9, 4 ohm, two channels: 21.0 W lost at 100 W, 33.7 W at 200 W; p. 7: 70 mohm a switch,"
    " by hand 3.5 and 7 W cold: most of the loss follows from no printed resistance",
)
WITH_SWITCHES = Assumption(
    "0 W", "absent", derivation("heat of the inductors counts with the switches while unknown")
)

FACTOR = Input(f"{DEVICE}.r_ds_on_hot_factor")
CORE = Input("p_core", default=WITH_SWITCHES)
COPPER = Input("p_inductor", default=left_out("0 W", "inductor copper"))
SWITCHING = left_out("0 W", "switching loss")

_STATED: dict[str, Input | Constant] = {
    "rated_power": POWER,
    "p_inductor": Input("p_inductor", default=WITH_SWITCHES),
    "p_core": CORE,
}
_PARTS = {"switches": "W", "conduction": "W", "elsewhere": "W", "p_out": "W"}
_SUM: dict[str, Input | Constant] = {
    "rated_power": POWER,
    "p_idle": IDLE,
    "p_inductor": COPPER,
    "p_core": CORE,
    "n_legs": Input("n_legs"),
    "parallel": Input("output_stage.parallel"),
    "i_rated_peak": Input("i_rated_peak"),
    "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "conduction")),
    "factor": FACTOR,
}
_INTEGRATED_SUM: dict[str, Input | Constant] = _SUM | {
    "efficiency": Input("output_stage.efficiency", default=Assumption("100 %", "floor", CURVES))
}


def some(loss: float) -> str:
    """A loss is known, whatever its value."""
    return "yes"


def _divided(
    total: float, conduction: float, exponent: float, in_inductors: float, p_out: float
) -> ChannelHeat:
    """Heat without conduction, divided between switches and inductors."""
    elsewhere = smaller(in_inductors, total)
    return ChannelHeat(total - elsewhere, conduction, exponent, elsewhere, p_out)


def stated_rated(
    rated_power: float, p_inductor: float, p_core: float, efficiency: float
) -> ChannelHeat:
    """A measured efficiency holds all heat, conduction at working temperature included."""
    loss = efficiency_loss(rated_power, efficiency)
    return _divided(loss, 0.0, 1.0, p_core + p_inductor, rated_power)


def stated_programme(
    rated_power: float,
    p_inductor: float,
    p_core: float,
    p_idle: float,
    p_above: float,
    part: float,
) -> ChannelHeat:
    """The measured heat brought down to programme power."""
    elsewhere = p_core + part * p_inductor
    return _divided(p_idle + p_above, 0.0, 1.0, elsewhere, part * rated_power)


def summed_rated(
    rated_power: float,
    p_idle: float,
    p_switching: float,
    p_inductor: float,
    p_core: float,
    n_legs: float,
    parallel: float,
    i_rated_peak: float,
    r_ds_on: float,
    factor: float,
    efficiency: float = 1.0,
) -> ChannelHeat:
    """The loss terms added; conduction as if the switches were at 25 degC.

    Each leg carries the load current through one switch at a time; its mean square is
    half the square of the peak.  The efficiency only marks, at 100 %, that an integrated
    part has losses that nobody outside can compute.
    """
    conduction = n_legs * r_ds_on / parallel * i_rated_peak**2 / 2
    total = p_idle + p_switching + p_inductor + efficiency_loss(rated_power, efficiency)
    return _divided(total, conduction, hot_exponent(factor), p_core + p_inductor, rated_power)


def summed_programme(
    rated_power: float,
    p_idle: float,
    p_switching: float,
    p_inductor: float,
    p_core: float,
    n_legs: float,
    parallel: float,
    i_rated_peak: float,
    r_ds_on: float,
    factor: float,
    part: float,
    efficiency: float = 1.0,
) -> ChannelHeat:
    """Idle loss in full, switching at the current of the programme, conduction with its square."""
    conduction = part * n_legs * r_ds_on / parallel * i_rated_peak**2 / 2
    copper = part * p_inductor
    rest = part * efficiency_loss(rated_power, efficiency)
    total = p_idle + p_switching + copper + rest
    return _divided(total, conduction, hot_exponent(factor), p_core + copper, part * rated_power)


_SUM_TEXT = (
    "p_idle + p_switching + p_inductor (p_core and p_inductor outside the switches),"
    " n_legs r_ds_on / parallel i_rated_peak^2 / 2 rising with factor; rated_power"
)
_SUM_PROGRAMME = (
    "p_idle + p_switching + part p_inductor (p_core and part p_inductor outside the switches),"
    " part n_legs r_ds_on / parallel i_rated_peak^2 / 2 rising with factor; part rated_power"
)
_REST = ", and rated_power (1/efficiency - 1)"


def _at_programme(which: str) -> tuple[Way, ...]:
    """The ways to the heat at a crest factor, ``programme`` or ``tested``."""
    part = {"part": Input(f"part_{which}")}
    switching = {"p_switching": Input(f"p_switching_{which}", default=SWITCHING)}
    above = {"p_idle": IDLE, "p_above": Input(f"p_above_idle_{which}")}
    return (
        Way(
            stated_programme,
            {**_STATED, **above, **part},
            "p_idle + p_above, of it part p_inductor and p_core outside the switches;"
            " part rated_power",
        ),
        Way(summed_programme, {**_SUM, **switching, **part}, _SUM_PROGRAMME, when=DISCRETE),
        Way(
            summed_programme,
            {**_INTEGRATED_SUM, **switching, **part},
            _SUM_PROGRAMME + _REST,
            when=INTEGRATED,
        ),
    )


_RATED_SWITCHING = {"p_switching": Input("p_switching", default=SWITCHING)}
DERIVED: tuple[Derived, ...] = (
    Derived(
        "heat_known",
        "word",
        "channel",
        "that some loss is known: of an integrated part nothing can be summed without any",
        (
            Way(some, {"loss": EFFICIENCY}, "yes where loss is stated"),
            Way(yes, {}, "yes", when=DISCRETE),
            Way(some, {"loss": Input("p_idle")}, "yes with a loss"),
            Way(
                some,
                {"loss": Input(f"{DEVICE}.r_ds_on")},
                "yes with a loss",
            ),
        ),
    ),
    Derived(
        "heat_rated",
        "set",
        "channel",
        "heat of the channel, sine at rated power",
        (
            Way(
                stated_rated,
                {**_STATED, "efficiency": EFFICIENCY},
                "rated_power (1/efficiency - 1), of it p_inductor and p_core outside the switches",
            ),
            Way(summed_rated, _SUM | _RATED_SWITCHING, _SUM_TEXT, when=DISCRETE),
            Way(
                summed_rated,
                _INTEGRATED_SUM | _RATED_SWITCHING,
                _SUM_TEXT + _REST,
                when=INTEGRATED,
            ),
        ),
        sources=(derivation("heat is what goes in and does not come out"), CURVES),
        parts=_PARTS,
    ),
    Derived(
        "heat_programme",
        "set",
        "channel",
        "heat of the channel while the programme plays",
        _at_programme("programme"),
        sources=(derivation("mean square of the current goes with the power"),),
        parts=_PARTS,
    ),
    Derived(
        "heat_tested",
        "set",
        "channel",
        "heat of the channel while the programme plays, or at one eighth of its power if more",
        _at_programme("tested"),
        sources=(ONE_EIGHTH,),
        parts=_PARTS,
    ),
)
