"""The bench supply of a first power-up: its voltages, and what the product draws from it.

With a converter the bench supply stands in for the source; without one for ONE rail.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Way, derivation
from ..formulas.bench import charging_current, dummy_power, just_above
from .feed import one_of

DIRECT = ("pack", "source")
POWERS = Input("all p_idle")
AUXILIARY = Input("supply.p_auxiliary")
V_BENCH = Input("v_bench")
THD = Constant("1 %", "distortion of the measurement", COMMON_PRACTICE)
T_CHARGE = Constant("5 s", "time in which the rails are charged", COMMON_PRACTICE)
BALANCE = derivation("power of all channels and other loads, at the terminals")


def from_rails(p_idle: tuple[float, ...], p_auxiliary: float, v: float, rails: float) -> float:
    """Current of one rail without signal; both rails carry the same."""
    return (sum(p_idle[1:], p_idle[0]) + p_auxiliary) / (v * rails)


def from_source(
    p_idle: tuple[float, ...], p_auxiliary: float, v: float, efficiency: float
) -> float:
    """The same ahead of a converter, which does not feed the other loads."""
    return (sum(p_idle[1:], p_idle[0]) / efficiency + p_auxiliary) / v


def efficiency_of(p_out: float, p_loss: float) -> float:
    """What goes out over what goes into the channel."""
    return p_out / (p_out + p_loss)


def _above(path: str, when: dict[str, str | tuple[str, ...]]) -> Way:
    inputs = {"v_trip": Input(path), "v_most": V_BENCH}
    return Way(just_above, inputs, "1.05 v_trip, at most v_most", when)


DERIVED = (
    Derived(
        "v_bench",
        "V",
        "product",
        "bench supply in place of the source, or of ONE rail: the highest voltage at rest",
        (
            one_of("v_source_high", feed="converter"),
            one_of("v_rail_high", feed=DIRECT),
        ),
    ),
    Derived(
        "v_bench_first",
        "V",
        "product",
        "the same at the first power-up: the lowest at which the stage surely runs",
        (
            _above("supply.v_lockout:high", {"rail_feed": "converter"}),
            one_of("supply.v_source:low", feed="converter"),
            one_of("v_source_low", feed="converter"),
            _above("protection.under_voltage.v_trip:high", {"rail_feed": DIRECT}),
            one_of("supply.v_rail:low", feed=DIRECT),
            one_of("v_rail_low", feed=DIRECT),
        ),
        sources=(COMMON_PRACTICE,),
    ),
    Derived(
        "p_at_one_percent",
        "W",
        "channel",
        "sine power into the load at 1 % distortion, or at the trip",
        (
            Way(
                dummy_power,
                {
                    "p_onset": Input("p_out_usual"),
                    "thd": THD,
                    "reserve": Constant("1", "the power itself", COMMON_PRACTICE),
                },
                "p_onset clipped to thd, reserve 1",
            ),
        ),
    ),
    Derived(
        "efficiency_by_losses",
        "%",
        "channel",
        "efficiency of ONE channel with its filter at rated power; at most, where loss is left out",
        (
            Way(
                efficiency_of,
                {"p_out": Input("rated_power"), "p_loss": Input("p_loss_rated")},
                "p_out / (p_out + p_loss)",
            ),
        ),
        stated_at="output_stage.efficiency",
        agree=0.0,
    ),
    Derived(
        "i_idle",
        "A",
        "product",
        "current of the source, or of ONE rail, without signal at the bench voltage",
        (
            Way(
                from_source,
                {
                    "p_idle": POWERS,
                    "p_auxiliary": AUXILIARY,
                    "v": V_BENCH,
                    "efficiency": Input("supply.converter_efficiency"),
                },
                "(sum of p_idle / efficiency + p_auxiliary) / v",
                when={"rail_feed": "converter"},
            ),
            Way(
                from_rails,
                {
                    "p_idle": POWERS,
                    "p_auxiliary": AUXILIARY,
                    "v": V_BENCH,
                    "rails": Input("rail_count"),
                },
                "(sum of p_idle + p_auxiliary) / (v rails)",
                when={"rail_feed": DIRECT},
            ),
        ),
        sources=(BALANCE,),
    ),
    Derived(
        "i_charge",
        "A",
        "product",
        "current of the bench supply that charges the bulk capacitors",
        (
            Way(
                charging_current,
                {
                    "c": Input("supply.bulk.c"),
                    "v_rail": Input("v_rail_high"),
                    "v_supply": V_BENCH,
                    "t": T_CHARGE,
                },
                "c v_rail / t v_rail / v_supply",
            ),
        ),
        sources=(derivation("charge and energy of a capacitor"),),
    ),
)
