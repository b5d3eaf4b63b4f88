"""Excursion of the cone over the band, and what the box adds to the cone."""

from collections.abc import Callable

from ...linter.check import (
    COMMON_PRACTICE,
    Arguments,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
)
from ..formulas.acoustics import (
    AIR_DENSITY,
    SOUND_SPEED,
)
from ..formulas.driver import (
    SMALL_CLOSED,
    SMALL_VENTED,
    compliance,
    free_excursion,
    largest_in_bass,
    sealed_shape,
    total_q,
    vented_shape,
    vented_volume_gain,
)
from .excursion_capacitor import (
    AT_LEAST_MEASURED,
    BEHIND,
    behind_open,
    behind_radiator,
    behind_sealed,
    behind_vented,
)
from .radiator import NO_SPRING, RADIATOR, excursion_radiator, excursion_radiator_least
from .ways import as_stated, no


def free_excursion_of(
    v_driver_rms: float,
    v_as: float,
    s_d: float,
    f_s: float,
    q_es: float,
    r_e: float,
    air_density: float,
    sound_speed: float,
) -> float:
    """Peak excursion [m] without box and high-pass, towards zero frequency."""
    c_ms = compliance(v_as, s_d, air_density, sound_speed)
    return free_excursion(v_driver_rms, c_ms, f_s, q_es, r_e)


def is_stated(travel: float) -> str:
    """A travel is stated, whatever its value."""
    return "yes"


def cone_alone() -> float:
    """Nothing but the cone moves air."""
    return 1.0


def excursion_sealed(
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band in a sealed box."""
    alpha = v_as / v_b

    def shape(f: float) -> float:
        return sealed_shape(f, f_s, q_ts, alpha)

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)


def excursion_open(
    x_free: float,
    f_s: float,
    q_ts: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band without a box."""

    def shape(f: float) -> float:
        return sealed_shape(f, f_s, q_ts, 0)

    return x_free * largest_in_bass(shape, f_s, 0, f_high_pass, order, band_low, band_high)


def excursion_vented(
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band in a vented box."""
    alpha = v_as / v_b

    def shape(f: float) -> float:
        return vented_shape(f, f_s, q_ts, alpha, f_b, q_l)

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)


BAND: Arguments = {
    "band_low": Input("band_low"),
    "band_high": Input("band_high"),
}
DRIVER: Arguments = {
    "x_free": Input("x_free"),
    "f_s": Input("loudspeaker.f_s"),
    "q_ts": Input("q_ts"),
}


def high_pass_inputs(corner: Assumption, order: Assumption) -> Arguments:
    """Corner and order of the high-pass, and what silence about them means."""
    return {
        "f_high_pass": Input("loudspeaker.high_pass.f", default=corner),
        "order": Input("loudspeaker.high_pass.order", default=order),
    }


FIRST_ORDER = Assumption(1.0, "adverse", COMMON_PRACTICE)
# a vented box without a word on its high-pass is judged as if it had none
HIGH_PASS = high_pass_inputs(Assumption("0 Hz", "adverse", COMMON_PRACTICE), FIRST_ORDER)
HIGH_PASS_IF_ANY = high_pass_inputs(Assumption("0 Hz", "absent", COMMON_PRACTICE), FIRST_ORDER)
# below its corner the first order takes more than the others, above it less
STATED_HIGH_PASS: Arguments = {
    "f_high_pass": Input("loudspeaker.high_pass.f"),
    "order": Input(
        "loudspeaker.high_pass.order", default=Assumption(1.0, "neutral", COMMON_PRACTICE)
    ),
}
BOX: Arguments = {
    "v_as": Input("loudspeaker.v_as"),
    "v_b": Input("loudspeaker.enclosure.v_b"),
}
VENT: Arguments = {
    "f_b": Input("loudspeaker.enclosure.f_b"),
    "q_l": Input("loudspeaker.enclosure.q_l"),
}
WITHOUT_SERIES = {"loudspeaker.c_series": "none"}
WITH_SERIES = {"loudspeaker.c_series": "fitted"}
AIR: dict[str, Constant] = {"air_density": AIR_DENSITY, "sound_speed": SOUND_SPEED}
BEHIND_CAPACITOR: tuple[tuple[str, Callable[..., float], Arguments, str], ...] = (
    ("sealed", behind_sealed, {**BOX, **HIGH_PASS_IF_ANY}, "sealed-box"),
    ("vented", behind_vented, {**BOX, **VENT, **HIGH_PASS}, "vented-box"),
    (
        "passive-radiator",
        behind_radiator,
        {**BOX, **VENT, "v_ap": RADIATOR, **HIGH_PASS},
        "radiator-box",
    ),
    ("open", behind_open, HIGH_PASS_IF_ANY, "free-air"),
)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "travel_stated",
        "word",
        "channel",
        "whether a travel of the cone is stated; without one no data of the cone are of use",
        (
            Way(is_stated, {"travel": Input("loudspeaker.x_max")}, "yes, since x_max is stated"),
            Way(is_stated, {"travel": Input("loudspeaker.x_mech")}, "yes, since x_mech is stated"),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        name="q_ts",
        unit="1",
        each="channel",
        meaning="total Q of the driver",
        ways=(
            Way(
                total_q,
                {"q_ms": Input("loudspeaker.q_ms"), "q_es": Input("loudspeaker.q_es")},
                "q_ms q_es / (q_ms + q_es)",
            ),
        ),
    ),
    Derived(
        name="x_free",
        unit="m",
        each="channel",
        meaning="excursion of one cone without box, towards zero frequency, peak",
        ways=(
            Way(
                free_excursion_of,
                {
                    "v_driver_rms": Input("v_driver_rms"),
                    "v_as": BOX["v_as"],
                    "s_d": Input("loudspeaker.s_d"),
                    "f_s": DRIVER["f_s"],
                    "q_es": Input("loudspeaker.q_es"),
                    "r_e": Input("r_e"),
                    **AIR,
                },
                "v_driver_rms (2 c_ms / (2 pi f_s q_es r_e))^0.5,"
                " c_ms = v_as / (air_density sound_speed^2 s_d^2)",
            ),
        ),
        sources=(SMALL_CLOSED,),
    ),
    Derived(
        name="x_peak",
        unit="m",
        each="channel",
        meaning="largest excursion of one cone over the band, one way, peak",
        ways=(
            Way(
                excursion_sealed,
                {**DRIVER, **BOX, **HIGH_PASS_IF_ANY, **BAND},
                "x_free times the largest of high-pass and sealed-box shape over the band",
                when={"loudspeaker.enclosure.type": "sealed", **WITHOUT_SERIES},
            ),
            Way(
                excursion_vented,
                {**DRIVER, **BOX, **VENT, **HIGH_PASS, **BAND},
                "x_free times the largest of high-pass and vented-box shape over the band",
                when={"loudspeaker.enclosure.type": "vented", **WITHOUT_SERIES},
            ),
            Way(
                excursion_radiator,
                {**DRIVER, **BOX, **VENT, "v_ap": RADIATOR, **HIGH_PASS, **BAND},
                "x_free times the largest of high-pass and radiator-box shape over the band",
                when={"loudspeaker.enclosure.type": "passive-radiator", **WITHOUT_SERIES},
            ),
            Way(
                excursion_radiator_least,
                {**DRIVER, **BOX, **VENT, "v_ap": NO_SPRING, **HIGH_PASS, **BAND},
                "x_free times the largest of high-pass and the smaller of sealed-box and"
                " vented-box shape over the band",
                when={"loudspeaker.enclosure.type": "passive-radiator", **WITHOUT_SERIES},
            ),
            Way(
                excursion_open,
                {**DRIVER, **HIGH_PASS_IF_ANY, **BAND},
                "x_free times the largest of high-pass and free-air shape over the band",
                when={"loudspeaker.enclosure.type": "open", **WITHOUT_SERIES},
            ),
            Way(
                as_stated,
                {"value": Input("loudspeaker.x_peak")},
                "value",
                when={"loudspeaker.enclosure.type": "horn"},
            ),
            *(
                Way(
                    figure,
                    {**BEHIND, **inputs, **BAND},
                    f"x_free times the largest of high-pass and {words} shape over the band, with"
                    " r_e + 1 / (2 pi j f c_series) in place of r_e",
                    when={"loudspeaker.enclosure.type": kind, **WITH_SERIES},
                )
                for kind, figure, inputs, words in BEHIND_CAPACITOR
            ),
            AT_LEAST_MEASURED,
        ),
        sources=(SMALL_CLOSED, SMALL_VENTED),
    ),
    Derived(
        name="box_gain",
        unit="1",
        each="channel",
        meaning="volume moved by the box over volume moved by the cone, at the band's low end",
        ways=(
            Way(cone_alone, {}, "1", when={"loudspeaker.enclosure.type": "sealed"}),
            Way(
                vented_volume_gain,
                {"f": BAND["band_low"], "f_b": VENT["f_b"], "q_l": VENT["q_l"]},
                "(f/f_b)^2 / abs(1 - (f/f_b)^2 + j f/(f_b q_l))",
                when={"loudspeaker.enclosure.type": "vented"},
            ),
        ),
        sources=(SMALL_VENTED,),
    ),
)
