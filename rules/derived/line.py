"""Loads that are no voice coil: a constant-voltage line, a piezo transducer."""

from ...linter.check import COMMON_PRACTICE, Assumption, Derived, Input, Way, derivation
from ..formulas.load import flux_share, line_impedance, network_impedance, piezo_impedance
from .load import PARALLEL, SERIES
from .ways import no

PIEZO = "loudspeaker.piezo"
V_LINE_MAX = Input("v_line_max")
UNSAID = Assumption("not given", "absent", COMMON_PRACTICE)
CORE = derivation("flux of a core is voltage over frequency; Butterworth high-pass")


def stepped_up(v_load_rms: float, ratio: float) -> float:
    """Voltage [V] of the line behind the transformer ahead of it."""
    return v_load_rms * ratio


def flux_behind(v_line_max: float, f: float, order: float) -> float:
    """Largest voltage over frequency [V s] behind a high-pass."""
    return v_line_max / f * flux_share(order)


def flux_of_band(v_line_max: float, band_low: float) -> float:
    """Largest voltage over frequency [V s] of a band that nothing cuts."""
    return v_line_max / band_low


def piezo_network(f: float, c: float, r_series: float, series: float, parallel: float) -> float:
    """Modulus [ohm] of equal piezo transducers at the top of the band."""
    return network_impedance(piezo_impedance(f, c, r_series), series, parallel)


def on_taps(p_tap: float) -> str:
    """Taps are stated, whatever their power."""
    return "yes"


def any_of(words: tuple[str, ...]) -> str:
    """Whether it is so in any channel."""
    return "yes" if "yes" in words else "no"


def any_without(piezo: tuple[str, ...]) -> str:
    """Whether the loudspeakers of any channel have voice coils."""
    return "yes" if "none" in piezo else "no"


def any_given(loudspeakers: tuple[str, ...]) -> str:
    """Whether any channel has a loudspeaker, or may have one."""
    return "no" if set(loudspeakers) == {"none"} else "yes"


def cut_off(action: str, independent: str) -> str:
    """Whether a shorted switch is cut off; muting leaves it where it is."""
    return "yes" if action != "mute" and independent == "yes" else "no"


DERIVED: tuple[Derived, ...] = (
    Derived(
        "dc_reaches_any",
        "word",
        "product",
        "whether a shorted switch puts direct voltage on the load of any channel",
        (Way(any_of, {"words": Input("all dc_reaches_load")}, "yes if among words"),),
    ),
    Derived(
        "coils_anywhere",
        "word",
        "product",
        "whether any channel has loudspeakers with voice coils",
        (Way(any_without, {"piezo": Input("all loudspeaker.piezo")}, "yes if any piezo is none"),),
    ),
    Derived(
        "loudspeaker_anywhere",
        "word",
        "product",
        "whether any channel has a loudspeaker; one of which nothing is said counts",
        (
            Way(
                any_given,
                {"loudspeakers": Input("all loudspeaker", default=UNSAID)},
                "no if all loudspeakers are none",
            ),
        ),
    ),
    Derived(
        "dc_cut_off",
        "word",
        "product",
        "whether a detector cuts a shorted switch off",
        (
            Way(no, {}, "no, since there is no detector", when={"protection.dc_detector": "none"}),
            Way(
                cut_off,
                {
                    "action": Input("protection.dc_detector.action"),
                    "independent": Input("detector_independent"),
                },
                "yes where action is not mute and independent is yes",
                when={"protection.dc_detector": "fitted"},
            ),
        ),
    ),
    Derived(
        "tapped",
        "word",
        "channel",
        "whether each loudspeaker takes the power of its tap on a line",
        (
            Way(no, {}, "no, since there is no line", when={"line": "none"}),
            Way(
                on_taps,
                {"p_tap": Input("line.p_tap")},
                "yes, since p_tap is stated",
                when={"line": "fitted"},
            ),
        ),
    ),
    Derived(
        "z_line",
        "ohm",
        "channel",
        "impedance of the constant-voltage line as the amplifier sees it",
        (
            Way(
                line_impedance,
                {
                    "v_line": Input("line.v_line"),
                    "p_tap": Input("line.p_tap"),
                    "ratio": Input("line.ratio"),
                },
                "v_line^2 / p_tap / ratio^2",
            ),
        ),
        sources=(derivation("every tap takes its power at the rated voltage of the line"),),
    ),
    Derived(
        "v_line_max",
        "V",
        "channel",
        "largest sine on the constant-voltage line, rms",
        (
            Way(
                stepped_up,
                {"v_load_rms": Input("v_load_rms"), "ratio": Input("line.ratio")},
                "v_load_rms ratio",
            ),
        ),
    ),
    Derived(
        "line_flux",
        "V s",
        "channel",
        "largest voltage over frequency on the constant-voltage line",
        (
            Way(
                flux_behind,
                {
                    "v_line_max": V_LINE_MAX,
                    "f": Input("line.high_pass.f"),
                    "order": Input(
                        "line.high_pass.order",
                        default=Assumption(1.0, "neutral", COMMON_PRACTICE),
                    ),
                },
                "v_line_max / f k, k = (n - 1)^((n - 1)/2n) / sqrt(n), n = order",
                when={"line.high_pass": "fitted"},
            ),
            Way(
                flux_of_band,
                {"v_line_max": V_LINE_MAX, "band_low": Input("band_low")},
                "v_line_max / band_low",
                when={"line.high_pass": "none"},
            ),
        ),
        sources=(CORE,),
    ),
    Derived(
        "z_piezo",
        "ohm",
        "channel",
        "modulus of the piezo transducers at the top of the band, where it is lowest",
        (
            Way(
                piezo_network,
                {
                    "f": Input("band_high"),
                    "c": Input(f"{PIEZO}.c"),
                    "r_series": Input(f"{PIEZO}.r_series"),
                    "series": SERIES,
                    "parallel": PARALLEL,
                },
                "sqrt(r_series^2 + 1/(2 pi f c)^2) series / parallel",
            ),
        ),
        sources=(derivation("a capacitor in series with a resistor"),),
    ),
)
