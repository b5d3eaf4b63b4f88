"""What a rating of power rests on: its distortion, and the most that the rails give."""

from ...linter.check import COMMON_PRACTICE, Assumption, Derived, Input, Way, derivation
from ..formulas.modulation import lossless_power

THD = Input("rated_thd")
THD_MOST = Input("rated_thd", default=Assumption("10 %", "favourable", COMMON_PRACTICE))
NO_LOSS = Assumption("0 ohm", "absent", derivation("best case: what is not known takes nothing"))

DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_sine_ideal",
        "W",
        "channel",
        "largest clean sine that the rails give, less only what known resistances take, cold",
        (
            Way(
                lossless_power,
                {
                    "v_ideal": Input("v_ideal"),
                    "z_load": Input("z_load"),
                    "n_legs": Input("n_legs"),
                    "r_ds_on": Input("output_stage.device.r_ds_on", default=NO_LOSS),
                    "parallel": Input("output_stage.parallel"),
                    "dcr": Input("filter.inductor.dcr", default=NO_LOSS),
                    "r_series": Input("output_stage.r_series", default=NO_LOSS),
                },
                "(v_ideal z_load / (z_load + n_legs (r_ds_on/parallel + dcr) + r_series))^2"
                " / (2 z_load)",
            ),
        ),
        sources=(derivation("divider of load and path; a sine that touches both rails"),),
    ),
)
