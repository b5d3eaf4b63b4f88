"""Zero is a claim: what is stated as nothing where no part is without it.

Resistances, charges, mismatches and currents that every real part has are bounded from below by
the least that data sheets print (common practice, no source).  A zero in the spec, or a value
that is nearly one, then contradicts the trade and is told, instead of clearing the checks that
it enters.
Zeros that say "none fitted" (a gate resistor, a diode's resistor, a load beside) are no claims
and stand nowhere here; nor does the recovery of gallium nitride, which has none.
"""

from collections.abc import Callable, Mapping

from ...linter.check import COMMON_PRACTICE, Arguments, Constant, Derived, Input, Scope, Way
from .bounds import DEVICE
from .gate_charge import THRESHOLD_FALL
from .ways import as_stated

DISCRETE = {"output_stage.devices": "discrete"}
DC_PASSES = {"dc_reaches_load": "yes"}


def recovery_of_silicon(least: float, v_gss: float, v_gss_gan: float) -> float:
    """Silicon stores charge; gallium nitride, told by its gate rating, stores none."""
    return 0.0 * least if v_gss < v_gss_gan else least


def share_of_drive(share: float, v_drv: float) -> float:
    """A share of the gate supply."""
    return share * v_drv


def _claim(
    name: str,
    unit: str,
    meaning: str,
    text: str,
    leaf: str,
    when: Mapping[str, str],
    each: Scope = "channel",
    figure: Callable[..., float] = as_stated,
    other: Arguments | None = None,
) -> Derived:
    """The least of a quantity that is never nothing: ``text``, the first argument of figure."""
    first = {as_stated: "value", share_of_drive: "share"}.get(figure, "least")
    inputs = {first: Constant(text, meaning, COMMON_PRACTICE), **(other or {})}
    return Derived(
        name,
        unit,
        each,
        meaning,
        (Way(figure, inputs, " ".join(inputs), when=when),),
        bounds_from_below=(leaf,),
        bounds_by="practice",
        sources=(COMMON_PRACTICE,),
    )


DERIVED: tuple[Derived, ...] = (
    _claim(
        "recovery_least",
        "C",
        "what the smallest silicon switch stores; gallium nitride alone stores nothing",
        "0.5 nC",
        f"{DEVICE}.q_rr",
        DISCRETE,
        figure=recovery_of_silicon,
        other={
            "v_gss": Input(f"{DEVICE}.v_gss"),
            "v_gss_gan": THRESHOLD_FALL["v_gss_gan"],
        },
    ),
    _claim(
        "joint_least",
        "K/W",
        "the best joint of a large package with a heatsink",
        "0.02 K/W",
        f"{DEVICE}.r_th_cs",
        {"thermal.heatsink": "fitted"},
    ),
    _claim(
        "gate_ringing_least",
        "V",
        "the calmest gate, a hundredth of the gate supply",
        "1 %",
        "gate_drive.v_gs_ringing",
        DISCRETE,
        figure=share_of_drive,
        other={"v_drv": Input("gate_drive.v_drv")},
    ),
    _claim(
        "mismatch_least",
        "s",
        "the best matched pair of drivers",
        "0.2 ns",
        "gate_drive.delay_mismatch",
        DISCRETE,
    ),
    _claim(
        "auxiliary_least",
        "W",
        "the thriftiest modulator with its drivers",
        "5 mW",
        "output_stage.p_auxiliary",
        DISCRETE,
    ),
    _claim(
        "offset_least",
        "V",
        "the best offset of any stage that passes direct voltage",
        "0.01 mV",
        "dc_offset",
        DC_PASSES,
    ),
    _claim(
        "step_least",
        "V",
        "the best offset of any stage, which is on the load once it is unmuted",
        "0.01 mV",
        "turn_on_step",
        DC_PASSES,
    ),
    _claim(
        "protection_resistance_least",
        "ohm",
        "the best switches of protection circuits with their shunt",
        "0.2 mohm",
        "battery.protection.r",
        {"battery.protection": "fitted"},
        "product",
    ),
    _claim(
        "blocking_part_least",
        "K/W",
        "the best packages on the largest heatsinks",
        "1 K/W",
        "protection.reverse_polarity.r_th_ja",
        {"protection.reverse_polarity": "fitted"},
        "product",
    ),
    _claim(
        "standby_least",
        "A",
        "the thriftiest protection circuits, which draw from the pack for good",
        "0.1 uA",
        "battery.i_standby",
        {"battery.protection": "fitted"},
        "product",
    ),
    _claim(
        "plastic_heatsink_least",
        "K/W",
        "the best heatsinks of plastic in still air",
        "5 K/W",
        "thermal.heatsink.r_th_sa",
        {"thermal.heatsink.material": "plastic"},
        "product",
    ),
)
