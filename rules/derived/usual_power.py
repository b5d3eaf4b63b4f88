"""Power at the onset of clipping with typical values where none are given.

`p_out_max` flatters: what is not stated takes nothing.  Here coils have the resistance that
coils of their inductance usually have, and pulses end as short as integrated stages print.
"""

from collections.abc import Mapping

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, Words, derivation
from ..formulas.maths import larger, smaller
from .output import (
    CLOCKED,
    NO_INDUCTOR,
    PATH,
    V_LOADED,
    Z_LOAD,
    clip_onset,
    path_resistance,
)
from .stage import CARRIER, depth_limit
from .ways import as_stated

SHORTEST = Source(
    "TDA8932B data sheet rev. 04; STA559BW data sheet Doc ID 18190; "
    "STA382BW data sheet Doc ID 022783; TAS5342LA data sheet SLAS624A; "
    "TDA8926 data sheet, 2002",
    "section 14.1: 80 ns, half of it by its formula of power; table 7: 40 "
    "ns; table 7: 30 ns; 30 ns; section 14.1: 220 ns, half of it in clipping",
)
DEEPEST = Source(
    "TDA8932B data sheet rev. 04; TDA8926 data sheet, 2002; STA382BW "
    "data sheet Doc ID 022783; STA559BW data sheet Doc ID 18190; "
    "TAS5342LA data sheet SLAS624A; TAS5755M data sheet SLOS982C; TAS5751M data sheet SLASEC1B",
    "sections 14.1, tables 7: shortest pulses at 320, 317 and three times 384 kHz leave, by hand,"
    " 97.4, 93, 97.7, 96.9 and 97.7 %; register 0x10: default duty of 97.7 and 98.4 %, depth 95.4"
    " and 96.8 %",
)
BONDS = Source(
    "Texas Instruments SLUAAF1, TPS62933 (2021); RF Cafe, bond wire properties",
    "section 2: copper or gold, typically 15 to 35 um, up to several mm; table: gold of 2 mil,"
    " 0.294 ohm an inch. Here 35 um, half copper, half gold, two of 2 mm at each of two pins",
)
COILS = Source(
    "TAS5825P data sheet SLASET9A; International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "table 10-3: 10 uH, 4.4 A: 30.4 mohm, 0.33 ms; pp. 28 and 33: "
    "specifies 20 mohm at 22 uH, 1.1 ms",
)
ONE_COIL = Source("TDA8932B data sheet rev. 04", "section 14.1: 50 mohm for one output inductor")


def of_known_source(v_ideal_loaded: float, r: float) -> float:
    """The resistance of the source is known and counted."""
    return v_ideal_loaded


def regulated(v_ideal_loaded: float, share: float) -> float:
    """What a converter's output lacks at full load."""
    return v_ideal_loaded * (1 - share)


def coil_resistance(l: float, time_constant: float) -> float:  # noqa: E741
    """Copper of a coil by the time constant that coils of its kind usually have."""
    return l / time_constant


def no_bonds() -> float:
    """The printed resistance has them."""
    return 0.0


def path_with_bonds(
    n_legs: float,
    r_ds_on_hot: float,
    parallel: float,
    dcr: float,
    r_series: float,
    r_lead: float,
    r_bonds: float,
) -> float:
    """Switch with its bonds and inductor of each leg, board and lead."""
    die = path_resistance(n_legs, r_ds_on_hot, parallel, dcr, r_series, r_lead)
    return die + n_legs * r_bonds / parallel


def usual_depth(t_pulse: float, carrier: float, least: float) -> float:
    """Depth that a shortest pulse leaves; parts for high carriers are made for shorter ones."""
    return larger(1 - 2 * t_pulse * carrier, least)


def trip_power(i_trip: float, z_load: float) -> float:
    """Sine whose peak is the trip current."""
    return i_trip**2 * z_load / 2


def below_trip(p_onset: float, p_trip: float) -> float:
    """Clipping or the trip, whichever comes first."""
    return smaller(p_onset, p_trip)


_FORMULA = "n_legs ((r_ds_on_hot + r_bonds)/parallel + dcr) + r_series + r_lead"
_PATH = {**PATH, "r_bonds": Input("r_bonds")}
CLOCKED_PART: dict[str, Words] = {**CLOCKED, "output_stage.devices": "integrated"}
NO_TRIP = Assumption(float("inf"), "absent", derivation("no trip current stated: none limits"))
TYPICAL_COIL = Assumption(None, "neutral", COILS)

REGULATION = Source(
    "Traco Power, TEL 10 data sheet",
    "p. 2, regulation from no load to full load: at most 1 %, of dual outputs 2 %",
)
TYPICAL_SAG = Assumption(None, "neutral", REGULATION)
_SAG: Mapping[str, Input | Constant] = {
    "v_ideal_loaded": V_LOADED,
    "share": Constant("1 %", "sag of a regulated output from no load to full load", REGULATION),
}
_SAGS = "v_ideal_loaded (1 - share)"

DERIVED: tuple[Derived, ...] = (
    Derived(
        "dcr_usual",
        "mohm",
        "channel",
        "resistance of one inductor; typical of its inductance where it is not stated",
        (
            Way(as_stated, {"value": Input("dcr_stated")}, "value"),
            Way(
                coil_resistance,
                {
                    "l": Input("filter.inductor.l"),
                    "time_constant": Constant("0.4 ms", "inductance over resistance", COILS),
                },
                "l / time_constant",
                assumes=TYPICAL_COIL,
            ),
            Way(
                as_stated,
                {"value": Constant("50 mohm", "resistance of an output inductor", ONE_COIL)},
                "value",
                assumes=Assumption(None, "neutral", ONE_COIL),
            ),
        ),
    ),
    Derived(
        "r_bonds",
        "mohm",
        "channel",
        "bonds of ONE switch, where its printed resistance is that of the die",
        (
            Way(
                as_stated,
                {"value": Constant("42 mohm", "bonds of a switch", BONDS)},
                "value",
                when={"output_stage.device.r_ds_on_at": "die"},
                assumes=Assumption(None, "neutral", BONDS),
            ),
            Way(no_bonds, {}, "0: the resistance is printed pin to pin"),
        ),
    ),
    Derived(
        "r_drop",
        "ohm",
        "channel",
        "all resistance in line with the load, typical where it is not stated",
        (
            Way(
                path_with_bonds,
                {**_PATH, "dcr": NO_INDUCTOR},
                _FORMULA,
                when={"filter_kind": ("bead", "filterless")},
            ),
            Way(path_with_bonds, {**_PATH, "dcr": Input("dcr_usual")}, _FORMULA),
        ),
        sources=(derivation("one switch of each leg carries the load current at any time"),),
    ),
    Derived(
        "depth_usual",
        "1",
        "channel",
        "largest modulation depth, typical where neither depth nor shortest pulse is stated",
        (
            Way(as_stated, {"value": Input("modulator.m_max")}, "value"),
            Way(
                depth_limit,
                {"t_pulse_min": Input("gate_drive.t_pulse_min"), "carrier": CARRIER},
                "1 - 2 t_pulse_min carrier",
                when=CLOCKED,
            ),
            Way(
                usual_depth,
                {
                    "t_pulse": Constant("40 ns", "shortest pulse of a part", SHORTEST),
                    "carrier": CARRIER,
                    "least": Constant("97 %", "least of the depths at high carriers", DEEPEST),
                },
                "larger of 1 - 2 t_pulse carrier and least",
                when=CLOCKED_PART,
                assumes=Assumption(None, "neutral", SHORTEST),
            ),
            Way(
                as_stated,
                {"value": Constant("97 %", "largest modulation depth of a part", DEEPEST)},
                "value",
                when=CLOCKED_PART,
                assumes=Assumption(None, "neutral", DEEPEST),
            ),
            Way(as_stated, {"value": Input("m_max")}, "value"),
        ),
    ),
    Derived(
        "p_trip",
        "W",
        "channel",
        "sine into the load at the trip current",
        (
            Way(
                trip_power,
                {"i_trip": Input("output_stage.over_current.i_trip"), "z_load": Z_LOAD},
                "i_trip^2 z_load / 2",
            ),
        ),
    ),
    Derived(
        "v_ideal_usual",
        "V",
        "channel",
        "load peak that the loaded rail allows, with a typical sag of a converter's output",
        (
            Way(
                of_known_source,
                {"v_ideal_loaded": V_LOADED, "r": Input("r_rail_known")},
                "v_ideal_loaded: r is in it",
            ),
            Way(regulated, _SAG, _SAGS, when={"rail_feed": "converter"}, assumes=TYPICAL_SAG),
            Way(
                regulated,
                _SAG,
                _SAGS,
                when={"supply.source": "mains-converter"},
                assumes=TYPICAL_SAG,
            ),
            Way(as_stated, {"value": V_LOADED}, "value: a direct source is held at the rail"),
        ),
        sources=(REGULATION,),
    ),
    Derived(
        "p_onset_usual",
        "W",
        "channel",
        "sine power at the onset of clipping, typical values where none are given",
        clip_onset(Input("depth_usual"), Input("r_drop"), Input("v_ideal_usual")),
        sources=(derivation("divider of load and path; dead time as a square wave"),),
    ),
    Derived(
        "p_out_usual",
        "W",
        "channel",
        "sine power at the onset of clipping or at the trip, typical where none are given",
        (
            Way(
                below_trip,
                {"p_onset": Input("p_onset_usual"), "p_trip": Input("p_trip", default=NO_TRIP)},
                "smaller of p_onset and p_trip",
            ),
        ),
    ),
)
