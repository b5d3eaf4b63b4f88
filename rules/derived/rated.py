"""What a rating of power rests on: its distortion, and the most that the rails give."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
)
from ..formulas.maths import smaller
from ..formulas.modulation import lossless_power
from .ways import as_stated

THD = Input("rated_thd")
THD_MOST = Input("rated_thd", default=Assumption("10 %", "favourable", COMMON_PRACTICE))
FULL_DEPTH = Assumption("100 %", "absent", derivation("best case: no stated limit of the depth"))
NO_LOSS = Assumption("0 ohm", "absent", derivation("best case: what is not known takes nothing"))


def most_power(
    v_ideal: float,
    m_max: float,
    z_load: float,
    n_legs: float,
    r_ds_on: float,
    parallel: float,
    dcr: float,
    r_series: float,
) -> float:
    """The power of a sine whose crest is the deepest modulation of the rails."""
    return lossless_power(m_max * v_ideal, z_load, n_legs, r_ds_on, parallel, dcr, r_series)


def within_practice(rated_thd: float, usual: float) -> float:
    """A rating at more is made by clipping; below it the stage plays music."""
    return smaller(rated_thd, usual)


def thd_claimed(claim: float, rated_thd: float, usual: float) -> str:
    """Whether a distortion is promised; a power rated beyond the usual one is a clipped one."""
    return "yes" if claim > 0 or rated_thd <= usual else "no"


def crest(rated_power: float, z_load: float) -> float:
    """Crest of a sine of a power."""
    return (2 * rated_power * z_load) ** 0.5


def unrated() -> float:
    """No rating limits what the output needs."""
    return float("inf")


UNRATED = Assumption(None, "absent", derivation("without a rating the rail or a limiter decides"))
NO_CLAIM = Assumption("0 %", "absent", derivation("no distortion is claimed"))
NOT_RATED = Assumption("100 %", "absent", derivation("the power is not rated at a distortion"))
USUAL_THD = Constant("1 %", "distortion at which powers are rated", COMMON_PRACTICE)

MOST: dict[str, Input | Constant] = {
    "m_max": Input("modulator.m_max", default=FULL_DEPTH),
    "z_load": Input("z_load"),
    "n_legs": Input("n_legs"),
    "r_ds_on": Input("output_stage.device.r_ds_on", default=NO_LOSS),
    "parallel": Input("output_stage.parallel"),
    "dcr": Input("filter.inductor.dcr", default=NO_LOSS),
    "r_series": Input("output_stage.r_series", default=NO_LOSS),
}
MOST_TEXT = (
    "(m_max v_ideal z_load / (z_load + n_legs (r_ds_on/parallel + dcr) + r_series))^2 / (2 z_load)"
)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "rated_thd_stated",
        "%",
        "channel",
        "distortion of the rating where it is stated",
        ways=(),
        stated_at="rated_thd",
    ),
    Derived(
        "thd_allowed",
        "%",
        "channel",
        "distortion allowed at 1 kHz: the claim, else the rating's own, at most 1 %",
        (
            Way(as_stated, {"value": Input("claims.thd")}, "value"),
            Way(
                within_practice,
                {"rated_thd": Input("rated_thd_stated"), "usual": USUAL_THD},
                "smaller of rated_thd and usual",
            ),
            Way(as_stated, {"value": USUAL_THD}, "value: nothing is claimed"),
        ),
        sources=(COMMON_PRACTICE,),
    ),
    Derived(
        "thd_claimed",
        "word",
        "channel",
        "whether a distortion is promised, of the product or of its rated power",
        (
            Way(
                thd_claimed,
                {
                    "claim": Input("claims.thd", default=NO_CLAIM),
                    "rated_thd": Input("rated_thd", default=NOT_RATED),
                    "usual": USUAL_THD,
                },
                "yes where claim is stated or rated_thd is at most usual",
            ),
        ),
    ),
    Derived(
        "p_sine_ideal",
        "W",
        "channel",
        "largest clean sine at the stated depth, less only what known resistances take, cold",
        (
            Way(
                most_power,
                {**MOST, "v_ideal": Input("v_ideal")},
                MOST_TEXT,
            ),
        ),
        sources=(derivation("divider of load and path; a sine that touches both rails"),),
    ),
    Derived(
        "v_rated_crest",
        "V",
        "channel",
        "crest of the sine at rated power; without a rating any",
        (
            Way(
                crest,
                {"rated_power": Input("rated_power"), "z_load": Input("z_load")},
                "root(2 rated_power z_load)",
            ),
            Way(unrated, {}, "any", assumes=UNRATED),
        ),
    ),
)
