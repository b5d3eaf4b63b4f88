"""The load of a channel: network, lowest modulus, coil resistance, usable power rating."""

from ...linter.check import COMMON_PRACTICE, Assumption, Derived, Input, Source, Way, derivation
from ..formulas.load import (
    MINIMUM_IMPEDANCE,
    PEAKS_OF_NOISE,
    RATING_KINDS,
    line_impedance,
    network_impedance,
    one_of_network,
)
from ..formulas.maths import smaller
from .ways import as_stated

ONE = Assumption(1.0, "absent", derivation("no loudspeaker of its own: one load counts as one"))
SERIES = Input("loudspeaker.series", default=ONE)
PARALLEL = Input("loudspeaker.parallel", default=ONE)
P_RATED = Input("loudspeaker.p_rated")

LOWEST_SHARE = Assumption(None, "adverse", MINIMUM_IMPEDANCE)
COIL_SHARE = Assumption(
    None,
    "neutral",
    Source(
        "common practice: coil resistance 80 % of the rated impedance",
        kind="common practice",
    ),
)
RATING_AS_PRINTED = Assumption(
    None, "floor", derivation("taken as a noise rating, the highest that the print can mean")
)

NO_LOUDSPEAKER = {"loudspeaker": "none"}
STRONGER = Assumption(None, "floor", COMMON_PRACTICE)
NOISE_METHODS = ("aes2-1984", "aes2-2012", "iec-60268-5-noise", "eia-426-b")


def four_fifths(z: float) -> float:
    """80 % of a rated impedance [ohm]."""
    return 0.8 * z


def lowest_load(
    z_min: float, series: float, parallel: float, z_driver: float, load_low: float
) -> float:
    """Lowest modulus [ohm] that the channel meets.

    The network's own minimum; where a lower rated load is allowed, that load is taken to
    dip in the same ratio.
    """
    z_rated = network_impedance(z_driver, series, parallel)
    return network_impedance(z_min, series, parallel) * smaller(load_low / z_rated, 1)


def half(p_rated: float) -> float:
    """Noise rating [W] behind a programme rating [W]."""
    return p_rated / 2


def twice(rated_power: float) -> float:
    """Highest usual noise rating [W] of what hangs on a channel of that power."""
    return 2 * rated_power


def quarter(p_rated: float) -> float:
    """Noise rating [W] behind a peak rating [W]."""
    return p_rated / 4


DERIVED: tuple[Derived, ...] = (
    Derived(
        name="z_driver",
        unit="ohm",
        each="channel",
        meaning="rated impedance of one loudspeaker",
        ways=(
            Way(
                as_stated,
                {"value": Input("loudspeaker.z_rated")},
                "value",
            ),
            Way(
                one_of_network,
                {"z_all": Input("rated_load"), "series": SERIES, "parallel": PARALLEL},
                "z_all parallel / series",
            ),
        ),
    ),
    Derived(
        name="z_network",
        unit="ohm",
        each="channel",
        meaning="rated impedance of the loudspeakers of the channel together",
        ways=(
            Way(
                network_impedance,
                {"z_one": Input("z_driver"), "series": SERIES, "parallel": PARALLEL},
                "z_one series / parallel",
            ),
        ),
    ),
    Derived(
        name="z_load",
        unit="ohm",
        each="channel",
        meaning="rated load of the channel; else its line or its loudspeaker network",
        ways=(
            # not stated_at: check loudspeaker-network compares the two, with its own limits
            Way(
                as_stated,
                {"value": Input("rated_load")},
                "value",
            ),
            # a line that is not fully tapped leaves the amplifier rated for its own power
            Way(
                line_impedance,
                {
                    "v_line": Input("line.v_line"),
                    "p_tap": Input("rated_power"),
                    "ratio": Input("line.ratio"),
                },
                "v_line^2 / p_tap / ratio^2, p_tap the rated power",
                when={"line": "fitted"},
            ),
            Way(as_stated, {"value": Input("z_line")}, "value", when={"line": "fitted"}),
            Way(
                as_stated,
                {"value": Input("z_network")},
                "value",
            ),
        ),
    ),
    Derived(
        name="z_load_min",
        unit="ohm",
        each="channel",
        meaning="lowest modulus of the load in the band",
        ways=(
            Way(
                as_stated,
                {"value": Input("z_piezo")},
                "value",
                when={"loudspeaker.piezo": "fitted"},
            ),
            Way(
                lowest_load,
                {
                    "z_min": Input("loudspeaker.z_min"),
                    "series": SERIES,
                    "parallel": PARALLEL,
                    "z_driver": Input("z_driver"),
                    "load_low": Input("load_low"),
                },
                "z_min series / parallel, times load_low parallel / (z_driver series) below 1",
            ),
            Way(
                four_fifths,
                {"z": Input("load_low")},
                "0.8 z",
                assumes=LOWEST_SHARE,
            ),
        ),
        sources=(MINIMUM_IMPEDANCE,),
    ),
    Derived(
        name="r_e",
        unit="ohm",
        each="channel",
        meaning="cold resistance of one voice coil",
        ways=(
            Way(
                as_stated,
                {"value": Input("loudspeaker.r_e")},
                "value",
            ),
            Way(
                four_fifths,
                {"z": Input("z_driver")},
                "0.8 z",
                assumes=COIL_SHARE,
            ),
        ),
    ),
    Derived(
        name="p_driver_noise",
        unit="W",
        each="channel",
        meaning="rating of one loudspeaker as a noise rating, whatever kind is printed",
        ways=(
            Way(
                as_stated,
                {"value": P_RATED},
                "value",
                when={"loudspeaker.rating_method": NOISE_METHODS},
            ),
            Way(
                half,
                {"p_rated": P_RATED},
                "p_rated / 2",
                when={"loudspeaker.rating_method": "programme"},
            ),
            Way(
                quarter,
                {"p_rated": P_RATED},
                "p_rated / 4",
                when={"loudspeaker.rating_method": "peak"},
            ),
            Way(
                as_stated,
                {"value": Input("loudspeaker_rating")},
                "value",
                when=NO_LOUDSPEAKER,
            ),
            Way(
                twice,
                {"rated_power": Input("rated_power")},
                "2 rated_power",
                when=NO_LOUDSPEAKER,
                assumes=STRONGER,
            ),
            # short-term, long-term, unstated or silent: never less favourable than this
            Way(as_stated, {"value": P_RATED}, "value", assumes=RATING_AS_PRINTED),
        ),
        sources=(RATING_KINDS, PEAKS_OF_NOISE),
    ),
)
