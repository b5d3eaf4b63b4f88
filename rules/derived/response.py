"""What the output filter does to the treble; the damper as the load sees it."""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from ..formulas.lc import deviation_db, frequency_of_deviation
from ..formulas.maths import choose, larger

NO_DAMPER = derivation("no damper fitted")
LADDER = derivation("Kirchhoff's laws along the ladder")
N_LEGS = Input("n_legs")
BAND_HIGH = Input("band_high")
FILTER: dict[str, Input] = {
    "l_total": Input("l_total"),
    "c_total": Input("c_total"),
    "n_legs": N_LEGS,
    "dcr": Input("filter.inductor.dcr"),
    "l_2": Input("l_second"),
    "c_2": Input("c_second"),
}
DAMPER: dict[str, Input] = {
    "r_damper": Input("r_damper"),
    "c_damper": Input("c_damper"),
}
CONNECTION = Input("filter.damper.connection", default=Assumption("across", "absent", NO_DAMPER))


def in_series(connection: str, n_legs: float) -> float:
    """Dampers that the load sees in series: one of EACH terminal, or one across it."""
    return n_legs if connection == "each-terminal" else 1


def resistance(r: float, connection: str, n_legs: float) -> float:
    """Resistors in series add up."""
    return r * in_series(connection, n_legs)


def capacitance(c: float, connection: str, n_legs: float) -> float:
    """Equal capacitors in series share one capacitance."""
    return c / in_series(connection, n_legs)


def frequency_of_larger(
    band_high: float,
    load_low: float,
    load_high: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Where the response deviates most with either end of the rated loads as a resistor."""
    far = (0 * l_total, n_legs * dcr, n_legs * l_2, c_2, r_damper, c_damper)
    f_low = frequency_of_deviation(band_high, l_total, c_total, load_low, *far)
    f_high = frequency_of_deviation(band_high, l_total, c_total, load_high, *far)
    low = abs(deviation_db(f_low, l_total, c_total, load_low, *far))
    high = abs(deviation_db(f_high, l_total, c_total, load_high, *far))
    return choose(low > high, f_low, f_high)


def larger_deviation(
    f: float,
    load_low: float,
    load_high: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """The larger of the deviations with the two ends of the rated loads as resistors."""
    far = (0 * l_total, n_legs * dcr, n_legs * l_2, c_2, r_damper, c_damper)
    low = deviation_db(f, l_total, c_total, load_low, *far)
    high = deviation_db(f, l_total, c_total, load_high, *far)
    return larger(abs(low), abs(high))


def frequency_with_coils(
    band_high: float,
    r_e: float,
    l_e: float,
    series: float,
    parallel: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Where the response deviates most with the network of voice coils."""
    coils = series / parallel
    far = (n_legs * dcr, n_legs * l_2, c_2, r_damper, c_damper)
    return frequency_of_deviation(band_high, l_total, c_total, r_e * coils, l_e * coils, *far)


def deviation_with_coils(
    f: float,
    r_e: float,
    l_e: float,
    series: float,
    parallel: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Deviation with the network of voice coils, whichever way it goes."""
    coils = series / parallel
    far = (n_legs * dcr, n_legs * l_2, c_2, r_damper, c_damper)
    return abs(deviation_db(f, l_total, c_total, r_e * coils, l_e * coils, *far))


R_DAMPER = Derived(
    "r_damper",
    "ohm",
    "channel",
    "resistance of the damper as the load sees it",
    (
        Way(
            resistance,
            {
                "r": Input("filter.damper.r", default=Assumption("1 ohm", "absent", NO_DAMPER)),
                "connection": CONNECTION,
                "n_legs": N_LEGS,
            },
            "r, of connection each-terminal n_legs r",
        ),
    ),
    sources=(derivation("one damper at each terminal of a bridge: two in series"),),
)


C_DAMPER = Derived(
    "c_damper",
    "F",
    "channel",
    "capacitance of the damper as the load sees it",
    (
        Way(
            capacitance,
            {
                "c": Input("filter.damper.c", default=Assumption("0 F", "absent", NO_DAMPER)),
                "connection": CONNECTION,
                "n_legs": N_LEGS,
            },
            "c, of connection each-terminal c / n_legs",
        ),
    ),
    sources=(derivation("one damper at each terminal of a bridge: two in series"),),
)


LOADS: dict[str, Input] = {
    "load_low": Input("load_low"),
    "load_high": Input("load_high"),
    **FILTER,
    **DAMPER,
}
COILS: dict[str, Input] = {
    "r_e": Input("r_e"),
    "l_e": Input("loudspeaker.l_e"),
    "series": Input("loudspeaker.series"),
    "parallel": Input("loudspeaker.parallel"),
    **FILTER,
    **DAMPER,
}
_BEHIND_LOADS = (
    "with load_low and load_high behind the ladder l_total with n_legs dcr, c_total, n_legs l_2,"
    " c_2 and beside the load r_damper in series with c_damper"
)
_BEHIND_COILS = (
    "with (r_e + 2 pi j f l_e) series/parallel behind the ladder l_total with n_legs dcr,"
    " c_total, n_legs l_2, c_2 and beside it r_damper in series with c_damper"
)

F_DEVIATION = Derived(
    "f_deviation",
    "Hz",
    "channel",
    "frequency of the band where the filter deviates most over the rated loads",
    (
        Way(
            frequency_of_larger,
            {"band_high": BAND_HIGH, **LOADS},
            f"f up to band_high of the largest deviation {_BEHIND_LOADS}",
        ),
    ),
    sources=(LADDER,),
)


TREBLE_DEVIATION = Derived(
    "treble_deviation",
    "dB",
    "channel",
    "largest deviation of the filter within the band over the rated loads, up or down",
    (
        Way(
            larger_deviation,
            {"f": Input("f_deviation"), **LOADS},
            f"larger of the deviations in dB at f {_BEHIND_LOADS}",
        ),
    ),
    sources=(LADDER,),
)


F_DEVIATION_COIL = Derived(
    "f_deviation_coil",
    "Hz",
    "channel",
    "frequency of the band where the filter deviates most with the voice coils as load",
    (
        Way(
            frequency_with_coils,
            {"band_high": BAND_HIGH, **COILS},
            f"f up to band_high of the largest deviation {_BEHIND_COILS}",
        ),
    ),
    sources=(LADDER,),
)


TREBLE_DEVIATION_COIL = Derived(
    "treble_deviation_coil",
    "dB",
    "channel",
    "largest deviation of the filter within the band with the voice coils as load, up or down",
    (
        Way(
            deviation_with_coils,
            {"f": Input("f_deviation_coil"), **COILS},
            f"abs of the deviation in dB at f {_BEHIND_COILS}",
        ),
    ),
    sources=(LADDER,),
)


DERIVED: tuple[Derived, ...] = (
    R_DAMPER,
    C_DAMPER,
    F_DEVIATION,
    TREBLE_DEVIATION,
    F_DEVIATION_COIL,
    TREBLE_DEVIATION_COIL,
)
