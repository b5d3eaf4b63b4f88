"""What the amplifier draws: power and how it swings with the music.

Powers of ONE rail carry ``rail`` in their name; those at the terminals of the source carry
``source``: with a converter the whole source, else ONE rail of it.
"""

from ...linter.check import COMMON_PRACTICE, Assumption, Derived, Input, Source, Way
from ..formulas.pumping import signs_of
from ..formulas.supply import (
    BRIDGE_CURRENT,
    SHARED_RIPPLE,
    half_bridge_swing,
    lowest,
    programme_share,
    source_share,
)
from .feed import constant, one_of
from .ways import left_out

NO_BULK = Assumption("0 F", "neutral", COMMON_PRACTICE)
NO_LOSS = left_out("0 W", "losses of the amplifier")


def rated_sum(rated_power: tuple[float, ...], p_auxiliary: float) -> float:
    """Output of all channels and the other loads, without any loss."""
    return sum(rated_power[1:], rated_power[0]) + p_auxiliary


def rated_through_converter(
    rated_power: tuple[float, ...], efficiency: float, p_auxiliary: float
) -> float:
    """The same at a source that feeds the other loads and a converter."""
    return sum(rated_power[1:], rated_power[0]) / efficiency + p_auxiliary


def input_power(
    rated_power: tuple[float, ...], loss: tuple[float, ...], p_auxiliary: float
) -> float:
    """Output, losses and other loads."""
    return rated_sum(rated_power, p_auxiliary) + sum(loss[1:], loss[0])


def input_power_programme(
    rated_power: tuple[float, ...], loss: tuple[float, ...], p_auxiliary: float, crest_factor: float
) -> float:
    """The same with the output at programme level; ``loss`` is already that of programme."""
    output = programme_share(crest_factor) * sum(rated_power[1:], rated_power[0])
    return output + sum(loss[1:], loss[0]) + p_auxiliary


def one_rail(p_in: float, rail_count: float) -> float:
    """The part of the input power that one rail carries."""
    return p_in / rail_count


def one_rail_without(p_in: float, p_auxiliary: float, rail_count: float) -> float:
    """The same behind a converter, which does not feed the other loads."""
    return (p_in - p_auxiliary) / rail_count


def swing_double(
    p_in: float, p_auxiliary: float, rail_count: float, r: float, c: float, f: tuple[float, ...]
) -> float:
    """Amplitude at twice the lowest frequency that the source, not the bulk, carries."""
    return (p_in - p_auxiliary) / rail_count * source_share(r, c, 2 * lowest(f))


def swing_signal(
    rated_power: tuple[float, ...],
    depth: tuple[float, ...],
    n_legs: tuple[float, ...],
    rail_count: float,
    r: float,
    c: float,
    f: tuple[float, ...],
    channel_phase: str,
) -> float:
    """Amplitude at the lowest frequency itself, from the half bridges alone."""
    swings = [
        sign * half_bridge_swing(p, m) if n == 1 else 0 * p
        for sign, p, m, n in zip(
            signs_of(n_legs, channel_phase), rated_power, depth, n_legs, strict=True
        )
    ]
    together = (sum(swings[1:], swings[0]) ** 2) ** 0.5
    return together / rail_count * source_share(r, c, lowest(f))


def through_converter(
    p_rail: float, rail_count: float, efficiency: float, p_auxiliary: float
) -> float:
    """Power at a source that feeds a converter and the other loads."""
    return p_rail * rail_count / efficiency + p_auxiliary


def swing_through_converter(p_rail: float, rail_count: float, efficiency: float) -> float:
    """Swing at the source of a converter that feeds all rails."""
    return p_rail * rail_count / efficiency


def crest_power(p_mean: float, p_double: float, p_signal: float) -> float:
    """Power at the crest of the lowest note, all channels at rated power."""
    return p_mean + p_double + p_signal


DIRECT = ("pack", "source")
_DIRECTLY = {"rail_feed": DIRECT}
_POWERS = Input("all rated_power")
_AUXILIARY = Input("supply.p_auxiliary")
_RAILS = Input("rail_count")
_R = Input("r_rail")
_C = Input("c_rail", default=NO_BULK)
_F = Input("all band_low")
_EFFICIENCY = Input("supply.converter_efficiency")
_P_IN = Input("p_in_rated")


def _product(
    name: str, unit: str, meaning: str, *ways: Way, sources: tuple[Source, ...] = ()
) -> Derived:
    return Derived(name, unit, "product", meaning, ways, sources=sources)


def _at_source(name: str, rail: str, meaning: str) -> Derived:
    """Mean power at the source: of one rail, or of the converter and the other loads."""
    return _product(
        name,
        "W",
        meaning,
        one_of(rail, feed=DIRECT),
        Way(
            through_converter,
            {
                "p_rail": Input(rail),
                "rail_count": _RAILS,
                "efficiency": _EFFICIENCY,
                "p_auxiliary": _AUXILIARY,
            },
            "p_rail * rail_count / efficiency + p_auxiliary",
            when={"rail_feed": "converter"},
        ),
    )


def _one_rail(name: str, p_in: str, meaning: str) -> Derived:
    power = Input(p_in)
    return _product(
        name,
        "W",
        meaning,
        Way(one_rail, {"p_in": power, "rail_count": _RAILS}, "p_in / rail_count", _DIRECTLY),
        Way(
            one_rail_without,
            {"p_in": power, "p_auxiliary": _AUXILIARY, "rail_count": _RAILS},
            "(p_in - p_auxiliary) / rail_count",
            when={"rail_feed": "converter"},
        ),
    )


def _swing_at_source(name: str, rail: str, meaning: str, *before: Way) -> Derived:
    return _product(
        name,
        "W",
        meaning,
        one_of(rail, feed=DIRECT),
        *before,
        Way(
            swing_through_converter,
            {"p_rail": Input(rail), "rail_count": _RAILS, "efficiency": _EFFICIENCY},
            "p_rail * rail_count / efficiency",
            when={"rail_feed": "converter"},
        ),
    )


def crest_inputs(where: str) -> dict[str, Input]:
    return {
        "p_mean": Input(f"p_{where}_rated"),
        "p_double": Input(f"p_{where}_double"),
        "p_signal": Input(f"p_{where}_signal"),
    }


def _crest_power(where: str, meaning: str) -> Derived:
    way = Way(crest_power, crest_inputs(where), "p_mean + p_double + p_signal")
    return _product(f"p_{where}_crest", "W", meaning, way)


DERIVED = (
    _product(
        "p_rated_sum",
        "W",
        "output of all channels and the other loads",
        Way(
            rated_sum,
            {"rated_power": _POWERS, "p_auxiliary": _AUXILIARY},
            "sum of rated_power + p_auxiliary",
        ),
    ),
    _product(
        "p_source_least",
        "W",
        "rated output and other loads at the source, with the loss of a converter but none of"
        " the amplifier",
        Way(
            rated_through_converter,
            {"rated_power": _POWERS, "efficiency": _EFFICIENCY, "p_auxiliary": _AUXILIARY},
            "sum of rated_power / efficiency + p_auxiliary",
            when={"rail_feed": "converter"},
        ),
        one_of("p_rated_sum", feed=DIRECT),
    ),
    _product(
        "p_in_rated",
        "W",
        "input power with all channels at rated power",
        Way(
            input_power,
            {
                "rated_power": _POWERS,
                "loss": Input("all p_loss_rated", default=NO_LOSS),
                "p_auxiliary": _AUXILIARY,
            },
            "sum of rated_power and loss + p_auxiliary",
        ),
    ),
    _product(
        "p_in_programme",
        "W",
        "input power at programme level",
        Way(
            input_power_programme,
            {
                "rated_power": _POWERS,
                "loss": Input("all p_loss_programme"),
                "p_auxiliary": _AUXILIARY,
                "crest_factor": Input("signal.crest_factor"),
            },
            "sum of rated_power by crest_factor and loss + p_auxiliary",
        ),
    ),
    _one_rail("p_rail_rated", "p_in_rated", "mean power of ONE rail at rated power"),
    _one_rail("p_rail_programme", "p_in_programme", "mean power of ONE rail at programme"),
    _product(
        "p_rail_double",
        "W",
        "swing of ONE rail's power at twice the lowest frequency, carried by the source",
        Way(
            swing_double,
            {
                "p_in": _P_IN,
                "p_auxiliary": _AUXILIARY,
                "rail_count": _RAILS,
                "r": _R,
                "c": _C,
                "f": _F,
            },
            "(p_in - p_auxiliary) / rail_count * source_share(r, c, 2 f)",
        ),
        sources=(BRIDGE_CURRENT, SHARED_RIPPLE),
    ),
    _product(
        "p_rail_signal",
        "W",
        "swing of ONE rail's power at the lowest frequency itself, carried by the source",
        constant("0 W", {"rail_topologies": "full-bridge"}),
        Way(
            swing_signal,
            {
                "rated_power": _POWERS,
                "depth": Input("all depth_rated"),
                "n_legs": Input("all n_legs"),
                "rail_count": _RAILS,
                "r": _R,
                "c": _C,
                "f": _F,
                "channel_phase": Input("signal.channel_phase"),
            },
            "sum over half bridges (n_legs 1) of 2 rated_power / depth, by channel_phase,"
            " / rail_count * source_share(r, c, f)",
            when={"rail_topologies": "half-bridge"},
        ),
        sources=(BRIDGE_CURRENT, SHARED_RIPPLE),
    ),
    _at_source("p_source_rated", "p_rail_rated", "mean power at the source, rated power"),
    _at_source("p_source_programme", "p_rail_programme", "mean power at the source, programme"),
    _swing_at_source(
        "p_source_double", "p_rail_double", "swing at the source at twice the frequency"
    ),
    _swing_at_source(
        "p_source_signal",
        "p_rail_signal",
        "swing at the source at the frequency itself; two rails take turns and cancel it",
        constant("0 W", {"rail_feed": "converter", "supply.rails": "split"}),
    ),
    _crest_power("rail", "power of ONE rail at the crest of the lowest note"),
    _crest_power("source", "power at the source at the crest of the lowest note"),
)
