"""What can be measured on a board and held against the model.

Each figure goes by the name of the derived quantity, the field or the check.  Beside it stand
the conditions on which it depends and without which a measurement is not comparable: the
voltage of ONE rail at the board, the load, the power of each channel, the frequency, the air
outside.  Where the spec gives a range or a tolerance, the model is computed at the condition.
Only what a bench reads directly may stand in for a value that is not given; a heatsink that is
measured while music plays says nothing of the one at rated power, so it does not.  The inside air
does, if it was read in the hottest ambient, closed, at the rated load and signal, and in the sun
and with the other loads of the source where the spec has them.
Where less is better, a reading below half of the least that the stated parts give is doubted, a
quarter of an estimate (common practice, no source): of an efficiency the loss counts, of a
temperature its rise over the ambient.  So is a power beyond that of the bare rail.

A reading takes the place of the figure in every check that hangs on it, at its conditions; a
temperature is carried to the hottest ambient by its rise.  A power is held against the rated one.

Some figures decide: before a series is made, a board must have shown them (common practice, no
source).  Each names the question that it answers.  The air inside says little of a junction, so
it answers only where nothing nearer to it is known.
"""

from ..linter.measurable import Measurable, Question
from .shown import (
    BARE,
    BARE_CLIPPED,
    PAST_THE_TRIP,
    TOO_HOT_A_COIL,
    TOO_LATE_A_TRIP,
    as_read,
    kept,
    onset,
    powers,
    share_of_onset,
    share_of_read,
    warms,
)

HIGH_RAIL = {"supply": ("supply.v_rail", "v_rail_high")}
LOW_RAIL = {"supply": ("supply.v_rail", "v_rail_low")}
LOAD = {"load": ("rated_load", "z_load")}
RATED = {**LOAD, "power": ("rated_power",)}
BASS = {**RATED, "frequency": ("band_low",)}
PROGRAMME = {**RATED, "crest_factor": ("signal.crest_factor",)}
AMBIENT = {"ambient": ("environment.ambient",)}
NOWHERE: dict[str, tuple[str, ...]] = {}
HALF = 0.5
POWER_ERROR = 0.1
"""Measured boards agree with the formula within 10 %: sources of the check ``output-power``."""

HEAT_ERROR = 0.25
"""Rise of a surface or of air in still air: so far a board may lie off (common practice)."""
TRIP_ERROR = 0.03
"""Of an absolute temperature, 13 K at 150 degC: so far a chip's trip may lie off its typical value
(common practice)."""
VOLTMETER = 0.005
"""A plain digital voltmeter (common practice): what a cell allows is less than 2 % wide."""


def lost(efficiency: float) -> float:
    """Loss over input."""
    return 1 - efficiency


QUESTIONS = {
    "power": Question("output power at clipping", "Power at 1 % distortion"),
    "idle": Question("idle loss", "Idle current"),
    "heat": Question("operating temperature", "Temperatures after the time constant"),
    "over-current-trip": Question("over-current trip", "Trip: over-current"),
    "over-voltage-trip": Question("over-voltage trip", "Trip: over-voltage"),
    "under-voltage-trip": Question("under-voltage trip", "Trip: under-voltage"),
    "over-temperature-trip": Question("over-temperature trip", "Trip: over-temperature", "safety"),
    "dc-trip": Question("DC protection", "Trip: direct voltage at the output", "safety"),
}

MEASURABLE = (
    # without signal
    Measurable("p_idle", HIGH_RAIL, stands_in=True, doubted_below=HALF, decides="idle"),
    Measurable("ripple_idle", HIGH_RAIL),
    Measurable("carrier-residual", HIGH_RAIL),
    Measurable("modulator.carrier", NOWHERE, stands_in=True),
    Measurable("gate_drive.dead_time", NOWHERE, stands_in=True),
    Measurable("f_corner", NOWHERE),
    Measurable("dc_offset", NOWHERE),
    Measurable("turn_on_step", NOWHERE),
    Measurable("i_inrush", HIGH_RAIL),
    # at rated power
    Measurable("v_overshoot", {**HIGH_RAIL, **RATED}, stands_in=True, doubted_below=HALF),
    Measurable("v_gate_ringing", {**HIGH_RAIL, **RATED}, stands_in=True, doubted_below=HALF),
    Measurable("t_edge", {**HIGH_RAIL, **RATED}, stands_in=True),
    Measurable("p_in_rated", {**HIGH_RAIL, **RATED}),
    Measurable(
        "efficiency_by_losses",
        {**HIGH_RAIL, **RATED},
        stands_in=True,
        doubted_below=HALF,
        amount=lost,
    ),
    Measurable("p_loss_rated", {**HIGH_RAIL, **RATED}),
    Measurable("v_rail_ripple", {**LOW_RAIL, **BASS}),
    Measurable("v_rail_loaded", {**LOW_RAIL, **BASS}),
    Measurable("v_pumping", {**HIGH_RAIL, **BASS}),
    Measurable("i_source_peak", {**LOW_RAIL, **BASS}),
    Measurable("i_source_rms", {**LOW_RAIL, **RATED}),
    Measurable(
        "t_heatsink_rated",
        {**HIGH_RAIL, **RATED, **AMBIENT},
        doubted_below=HALF,
        rises_over="ambient",
        error=HEAT_ERROR,
        follows=warms("t_junction_rated", "t_heatsink_rated"),
        shows=PAST_THE_TRIP,
        decides="heat",
    ),
    Measurable(
        "t_inductor",
        {**RATED, **AMBIENT},
        doubted_below=HALF,
        rises_over="ambient",
        error=HEAT_ERROR,
        shows=TOO_HOT_A_COIL,
    ),
    # at the onset of clipping, and a little beyond: the power is what is measured
    Measurable(
        "p_at_one_percent",
        {**LOW_RAIL, **LOAD},
        most=BARE_CLIPPED,
        follows=powers(onset, "read / 1.048"),
        shows=kept(share_of_read),
        error=POWER_ERROR,
        decides="power",
    ),
    *(
        Measurable(
            name,
            {**LOW_RAIL, **LOAD},
            most=BARE,
            follows=powers(as_read, "read"),
            shows=kept(share_of_onset),
            error=POWER_ERROR,
            decides="power",
        )
        for name in ("p_out_max", "p_out_usual")
    ),
    # while the programme plays: the power is that of a sine of the same peaks
    Measurable(
        "t_heatsink",
        {**HIGH_RAIL, **PROGRAMME, **AMBIENT},
        doubted_below=HALF,
        rises_over="ambient",
        error=HEAT_ERROR,
        follows=warms("t_junction_programme", "t_heatsink"),
        shows=PAST_THE_TRIP,
        decides="heat",
    ),
    Measurable(
        "t_case_programme",
        {**HIGH_RAIL, **PROGRAMME, **AMBIENT},
        doubted_below=HALF,
        rises_over="ambient",
        error=HEAT_ERROR,
        follows=warms("t_junction_programme", "t_case_programme"),
        decides="heat",
    ),
    Measurable(
        "t_air_inside",
        {**HIGH_RAIL, **PROGRAMME, **AMBIENT},
        stands_in=True,
        high_is_enough=("ambient",),
        doubted_below=HALF,
        rises_over="ambient",
        error=HEAT_ERROR,
        decides="heat",
        last_resort=True,
        none_unless_told={
            "sun": ("environment.solar", "sun"),
            "other_loads": ("supply.p_auxiliary", "supply.p_auxiliary"),
        },
    ),
    # trips
    Measurable(
        "output_stage.over_current.i_trip", NOWHERE, stands_in=True, decides="over-current-trip"
    ),
    Measurable(
        "protection.over_temperature.t_trip",
        NOWHERE,
        stands_in=True,
        error=TRIP_ERROR,
        shows=TOO_LATE_A_TRIP,
        decides="over-temperature-trip",
    ),
    Measurable("protection.dc_detector.v_trip", NOWHERE, stands_in=True, decides="dc-trip"),
    Measurable("protection.dc_detector.t_trip", NOWHERE, stands_in=True, decides="dc-trip"),
    Measurable(
        "protection.over_voltage.v_trip", NOWHERE, stands_in=True, decides="over-voltage-trip"
    ),
    Measurable(
        "protection.under_voltage.v_trip", NOWHERE, stands_in=True, decides="under-voltage-trip"
    ),
    # the pack: what its charger gives, and where its own circuit opens
    Measurable("battery.charger.v", NOWHERE, meter=VOLTMETER),
    Measurable("battery.charger.i", NOWHERE),
    Measurable("battery.protection.v_cutoff", NOWHERE),
    Measurable("battery.protection.i_trip", NOWHERE),
)
