"""What the box of a loudspeaker takes at the low end of its band, high-pass included."""

from ...linter.check import Arguments, Derived, Input, Way
from ..formulas.acoustics import decibel
from ..formulas.driver import (
    SMALL_CLOSED,
    SMALL_VENTED,
    high_pass,
    sealed_response,
    vented_response,
)
from .excursion import BOX, HIGH_PASS_IF_ANY, VENT
from .ways import no

BAND_LOW = Input("band:low", meaning="low end of the band")
DRIVER: Arguments = {"f_s": Input("loudspeaker.f_s"), "q_ts": Input("q_ts"), **BOX}


def sealed_loss(
    band_low: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_high_pass: float,
    order: float,
) -> float:
    """Loss of driver, sealed box and high-pass."""
    box = sealed_response(band_low, f_s, q_ts, v_as / v_b)
    return -decibel(box * high_pass(band_low, f_high_pass, order))


def vented_loss(
    band_low: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    f_high_pass: float,
    order: float,
) -> float:
    """Loss of driver, vented box and high-pass."""
    box = vented_response(band_low, f_s, q_ts, v_as / v_b, f_b, q_l)
    return -decibel(box * high_pass(band_low, f_high_pass, order))


def computed(box_loss: float) -> str:
    """The loss can be computed, whatever it is."""
    return "yes"


DERIVED: tuple[Derived, ...] = (
    Derived(
        "box_loss",
        "dB",
        "channel",
        "what box and high-pass take at the low end of the band",
        (
            Way(
                sealed_loss,
                {"band_low": BAND_LOW, **DRIVER, **HIGH_PASS_IF_ANY},
                "-20 log10((f/f_s)^2 / abs(1 + alpha - (f/f_s)^2 + j f/(f_s q_ts)) high-pass),"
                " f = band_low, alpha = v_as / v_b, high-pass of f_high_pass and order",
                when={"loudspeaker.enclosure.type": "sealed"},
            ),
            Way(
                vented_loss,
                {"band_low": BAND_LOW, **DRIVER, **VENT, **HIGH_PASS_IF_ANY},
                "-20 log10((f/f_s)^2 (f/f_b)^2 / abs(D) high-pass), f = band_low, D ="
                " (1 + s Ts/q_ts + s^2 Ts^2)(1 + s Tb/q_l + s^2 Tb^2) + (v_as/v_b) s^2 Tb^2,"
                " high-pass of f_high_pass and order",
                when={"loudspeaker.enclosure.type": "vented"},
            ),
        ),
        sources=(SMALL_CLOSED, SMALL_VENTED),
    ),
    Derived(
        "box_known",
        "word",
        "channel",
        "whether driver and box are described so far that their response can be computed",
        (
            Way(computed, {"box_loss": Input("box_loss")}, "yes with a box_loss"),
            Way(no, {}, "no"),
        ),
    ),
)
