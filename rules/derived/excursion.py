"""Excursion of the cone over the band, and what the box adds to the cone."""

from math import inf

from ...linter.check import (
    COMMON_PRACTICE,
    Arguments,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
)
from ..formulas.acoustics import (
    AIR_DENSITY,
    SOUND_SPEED,
)
from ..formulas.driver import (
    SMALL_CLOSED,
    SMALL_VENTED,
    box_load,
    compliance,
    cone_shape,
    free_excursion,
    largest_in_bass,
    total_q,
    vented_volume_gain,
)
from ..formulas.maths import smaller
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


def excursion(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_ahead: float,
    v_as: float,
    v_b: float,
    f_b: float,
    v_ap: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band, in any box."""
    alpha, beta = v_as / v_b, v_b / v_ap

    def shape(f: float) -> float:
        load = box_load(f, alpha, f_b, beta, q_l)
        return cone_shape(f, f_s, q_ms, q_es, load, r_e, c_ahead)

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)


def excursion_least(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_ahead: float,
    v_as: float,
    v_b: float,
    f_b: float,
    v_ap: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """The same [m], not more than with the stiffest radiator, which is a wall."""
    alpha, beta = v_as / v_b, v_b / v_ap

    def shape(f: float) -> float:
        loads = box_load(f, alpha, f_b, beta, q_l), alpha
        open_to_air, walled = (cone_shape(f, f_s, q_ms, q_es, x, r_e, c_ahead) for x in loads)
        return smaller(open_to_air, walled)

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)


BAND: Arguments = {
    "band_low": Input("band_low"),
    "band_high": Input("band_high"),
}
DRIVER: Arguments = {
    "x_free": Input("x_free"),
    "f_s": Input("loudspeaker.f_s"),
}
MOTION: Arguments = {
    **DRIVER,
    "q_ms": Input("loudspeaker.q_ms"),
    "q_es": Input("loudspeaker.q_es"),
    "r_e": Input("r_e"),
    "c_ahead": Input("c_ahead"),
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
AIR: dict[str, Constant] = {"air_density": AIR_DENSITY, "sound_speed": SOUND_SPEED}
# a box without an opening is tuned to nothing, a port is a radiator without a spring
CLOSED: Arguments = {
    "f_b": Constant("0 Hz", "tuning of a box without an opening", SMALL_CLOSED),
    "q_l": Constant("1", "leakage Q of a box without an opening: of no account", SMALL_CLOSED),
}
NO_RADIATOR = {
    "v_ap": Constant("1e9 m3", "radiator without a spring: as good as endless", SMALL_CLOSED)
}
NO_BOX = {"v_b": Constant("1e9 m3", "no box: as good as endless", SMALL_CLOSED)}
V_AP = Input("loudspeaker.enclosure.v_ap")
RADIATOR: Arguments = {"v_ap": V_AP}
# without the spring of the radiator the cone moves between what a port and a wall would let it
NO_SPRING: Arguments = {
    "v_ap": Input(
        V_AP.path,
        default=Assumption(
            inf, "floor", derivation("bound: the load of a radiator lies between port and wall")
        ),
    )
}
BOXES: tuple[tuple[str, Arguments, str], ...] = (
    ("sealed", {**BOX, **CLOSED, **NO_RADIATOR, **HIGH_PASS_IF_ANY}, "sealed-box"),
    ("vented", {**BOX, **VENT, **NO_RADIATOR, **HIGH_PASS}, "vented-box"),
    ("passive-radiator", {**BOX, **VENT, **RADIATOR, **HIGH_PASS}, "radiator-box"),
    (
        "open",
        {"v_as": BOX["v_as"], **NO_BOX, **CLOSED, **NO_RADIATOR, **HIGH_PASS_IF_ANY},
        "free-air",
    ),
)
MEASURED = Input("loudspeaker.x_peak")
# nothing but the model says that the reading was taken at the worst frequency
AT_LEAST = Assumption(None, "floor", derivation("bound: the cone moves as far as was read"))
CAPACITORS = ("loudspeaker.c_series", "filter.c_block")


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
                {"q_ms": MOTION["q_ms"], "q_es": MOTION["q_es"]},
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
                    "q_es": MOTION["q_es"],
                    "r_e": MOTION["r_e"],
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
            *(
                Way(
                    excursion,
                    {**MOTION, **inputs, **BAND},
                    f"x_free times the largest of high-pass and {words} shape over the band, with"
                    " r_e + 1 / (2 pi j f c_ahead) in place of r_e",
                    when={"loudspeaker.enclosure.type": kind},
                )
                for kind, inputs, words in BOXES
            ),
            Way(
                excursion_least,
                {**MOTION, **BOX, **VENT, **NO_SPRING, **HIGH_PASS, **BAND},
                "x_free times the largest of high-pass and the smaller of sealed-box and"
                " vented-box shape over the band",
                when={"loudspeaker.enclosure.type": "passive-radiator"},
            ),
            Way(
                as_stated,
                {"value": MEASURED},
                "value",
                when={"loudspeaker.enclosure.type": "horn"},
            ),
            *(
                Way(
                    as_stated, {"value": MEASURED}, "value", when={part: "fitted"}, assumes=AT_LEAST
                )
                for part in CAPACITORS
            ),
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
