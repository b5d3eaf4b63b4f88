"""What the capacitors in the way of the signal take at the low end of the band."""

from math import inf

from ...linter.check import Arguments, Assumption, Derived, Input, Way, derivation
from ..formulas.acoustics import power_decibel
from ..formulas.capacitor import high_pass_corner
from ..formulas.load import one_of_network
from ..formulas.maths import central, smaller
from .load import PARALLEL, SERIES
from .ways import as_stated, no, yes

# a coupling capacitor or an input resistance that is not stated is asked for by
# input-coupling-corner, a missing output capacitor by blocking-capacitor-present
NO_CAPACITOR = Assumption(inf, "absent", derivation("no capacitor there: nothing is taken"))
NO_CORNER = Assumption(inf, "absent", derivation("no resistance behind it: no corner"))


def loss_at(f: float, corner: float) -> float:
    """What a high-pass of first order takes at f [Hz], in dB."""
    return power_decibel(1 + (corner / f) ** 2)


def bass_loss(
    band_low: float,
    r_in: float,
    c_in: float,
    load_low: float,
    c_block: float,
    z_driver: float,
    c_series: float,
    series: float,
    parallel: float,
    input_told: str,
) -> float:
    """Losses ahead of the stage and behind it.

    An input that alone takes 3 dB is a finding of its own: here it counts as if it were right, with
    a corner at half the low end of the band. Behind the stage both capacitors are in series with
    one load, so that their corners add up; the capacitor of ONE loudspeaker meets that alone.
    """
    z_one = smaller(z_driver, one_of_network(load_low, series, parallel))
    behind = high_pass_corner(load_low, c_block) + high_pass_corner(z_one, c_series)
    corner_in = band_low / 2 if input_told == "yes" else high_pass_corner(r_in, c_in)
    return loss_at(band_low, corner_in) + loss_at(band_low, behind)


def cut_at_input(r_in: float, c_in: float, band_low: float) -> str:
    """Whether the input's corner lies at the low end of the band or above."""
    return "yes" if central(high_pass_corner(r_in, c_in)) >= central(band_low) else "no"


def ahead(c_series: float, c_block: float, series: float, parallel: float) -> float:
    """Capacitance [F] that ONE voice coil sees: its own, and its part of the output capacitor.

    The current of the output capacitor is that of all strings, its voltage lies ahead of all the
    coils of a string.
    """
    return 1 / (1 / c_series + parallel / (series * c_block))


def endless() -> float:
    """No capacitor, in farad: it would take nothing."""
    return inf


def above_resonance(band_low: float, f_s: float) -> str:
    """Whether the band begins half an octave or more above the resonance, as a tweeter's does."""
    return "yes" if band_low >= 1.5 * f_s else "no"


SECTION = "loudspeaker.c_series"
C_SERIES = Input(f"{SECTION}.c")
_ONE_LEG = {"output_stage.topology": "half-bridge", "supply.rails": "single"}
_BLOCK: Arguments = {"c_block": Input("filter.c_block.c"), "series": SERIES, "parallel": PARALLEL}
_AHEAD = "1 / (1/c_series + parallel/(series c_block))"
_COUPLING: Arguments = {
    "band_low": Input("band_low"),
    "r_in": Input("signal.r_in", default=NO_CORNER),
    "c_in": Input("signal.c_in", default=NO_CAPACITOR),
}
_STATED: Arguments = {
    **_COUPLING,
    "load_low": Input("load_low"),
    "c_block": Input("filter.c_block.c", default=NO_CAPACITOR),
    "z_driver": Input("z_driver"),
    "c_series": C_SERIES,
    "series": SERIES,
    "parallel": PARALLEL,
    "input_told": Input("input_told"),
}
_WITHOUT: Arguments = {**_STATED, "c_series": Input(f"{SECTION}.c", default=NO_CAPACITOR)}
_FORMULA = (
    "10 log10(1 + (f/band_low)^2) added up, f = 1/(2 pi r_in c_in), band_low/2 where input_told,"
    " and f = 1/(2 pi load_low c_block) + 1/(2 pi z c_series), z the smaller of z_driver and"
    " load_low parallel/series"
)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "resonance_kept_out",
        "word",
        "channel",
        "whether the band leaves the driver's resonance out; yes where no band is claimed",
        (
            Way(
                above_resonance,
                {"band_low": Input("band_low"), "f_s": Input("loudspeaker.f_s")},
                "band_low from 1.5 f_s up",
                when={"band_claimed": "yes"},
            ),
            Way(yes, {}, "yes"),
        ),
    ),
    Derived(
        "input_told",
        "word",
        "channel",
        "whether input-coupling-corner tells of the bass that the input takes, 3 dB or more",
        (Way(cut_at_input, _COUPLING, "1/(2 pi r_in c_in) from band_low up"),),
    ),
    Derived(
        "output_capacitor",
        "word",
        "channel",
        "whether an output capacitor is between stage and loudspeaker",
        (
            Way(yes, {}, "yes", when={**_ONE_LEG, "filter.c_block": "fitted"}),
            Way(no, {}, "no", when={**_ONE_LEG, "filter.c_block": "none"}),
            Way(no, {}, "no", when={"output_stage.topology": "full-bridge"}),
            Way(no, {}, "no", when={"supply.rails": "split"}),
        ),
    ),
    Derived(
        "c_ahead",
        "F",
        "channel",
        "capacitance ahead of ONE voice coil; endless without a capacitor",
        (
            Way(
                ahead,
                {"c_series": C_SERIES, **_BLOCK},
                _AHEAD,
                when={SECTION: "fitted", "output_capacitor": "yes"},
            ),
            Way(
                ahead,
                {"c_series": _WITHOUT["c_series"], **_BLOCK},
                _AHEAD,
                when={SECTION: "none", "output_capacitor": "yes"},
            ),
            Way(
                as_stated,
                {"value": C_SERIES},
                "value",
                when={SECTION: "fitted", "output_capacitor": "no"},
            ),
            Way(endless, {}, "endless", when={SECTION: "none", "output_capacitor": "no"}),
        ),
        sources=(derivation("Kirchhoff's laws: all strings in parallel behind one capacitor"),),
    ),
    Derived(
        "v_series_fault",
        "V",
        "channel",
        "direct voltage across the capacitor ahead of the loudspeaker with a switch shorted",
        (
            Way(
                as_stated,
                {"value": Input("v_swing")},
                "value",
                when={"supply.rails": "single", "output_capacitor": "no"},
            ),
            Way(as_stated, {"value": Input("v_ideal")}, "value", when={"supply.rails": "split"}),
            Way(as_stated, {"value": Input("v_ideal")}, "value", when={"output_capacitor": "yes"}),
        ),
        sources=(
            derivation("one leg stuck at a rail, the other at the opposite one or at ground"),
        ),
    ),
    Derived(
        "bass_loss",
        "dB",
        "channel",
        "loss at the low end of the band by the capacitors that are stated in the signal path",
        (
            Way(bass_loss, _STATED, _FORMULA, when={SECTION: "fitted"}),
            Way(bass_loss, _WITHOUT, _FORMULA, when={SECTION: "none"}),
        ),
        sources=(
            derivation("Kirchhoff's laws: capacitors in series with one resistance add corners"),
        ),
    ),
)
