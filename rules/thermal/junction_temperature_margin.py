"""Junction temperature while the programme plays, in the hottest air.

Everything that shortens the life of a switch goes with its junction temperature, and at
the absolute maximum the maker no longer answers for it.  Music that just touches clipping
has about one eighth of the power of a full sine, and that is what an amplifier plays for
hours: this check takes the programme's power, the hottest ambient, the air inside the
box, and the one heatsink that carries the heat of ALL packages.

The usual mistakes make the result too low: the resistance at 25 degC, a heatsink counted
as if each device had it for itself, room temperature inside a closed box, or the junction
to ambient figure of the maker's large test board taken as one's own.  The sum of the
losses of an integrated stage cannot be made up from its on-resistance (measured losses
are three to five times that), so without a measured efficiency the check can fail but not
pass.  First fix: a larger heatsink, then outer air, then fewer losses.

An integrated stage goes no further than its own trip: that it gets there is the finding, and
the part is not destroyed by it. Of one that says nothing of a trip the same is assumed at its
limit.

The limits are the usual distances of derating tables.  A fixed 110 degC, found in tables
for space, would condemn published boards that work at 125 degC.
"""

from ...linter.check import (
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
    from_memory,
)
from ..formulas.maths import smaller
from ..hazards import HOT_SURFACE

NO_TRIP = Assumption(
    float("inf"), "absent", derivation("no trip at the junction: nothing ends its rise there")
)


def figure(t_j_max: float, t_junction: float, t_trip_own: float) -> float:
    """Distance of the junction from its absolute maximum, at most where it trips itself."""
    return t_j_max - smaller(t_junction, t_trip_own)


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 1 W
      efficiency: 85 %
      device: {t_j_max: 150 degC, r_th_jc: 1 K/W, r_th_cs: 0 K/W}
thermal:
  enclosure: none
  heatsink: {r_th_sa: SINK, place: outside}
"""

CHECK = Check(
    title="Junction temperature at programme level vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - smaller of t_junction and t_trip_own",
    sentence="Programme heats the hottest junction to {t_junction}; counting its own trip,"
    " {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_junction": Input("t_junction_programme"),
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_trip_own": Input("t_trip_own", default=NO_TRIP),
    },
    limits=AtLeast(
        critical="0 K",
        major="25 K",
        minor="40 K",
        basis={
            "critical": derivation("the absolute maximum that the part's data sheet states"
                                   " is the limit itself"),
            "major": from_memory("MIL-HDBK-338B, junction of power transistors, level III"),
            "minor": from_memory("ECSS-Q-ST-30-11C, junction 40 K below its maximum"),
        },
    ),
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W",
               "12 K/W", "16 K/W", "20 K/W")),
        Lever("rated_power", "1 W"),
    ),
    sources=(
        Source("International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
               "p. 5: case 54 degC at 2 x 15 W, 25 degC room"),
        from_memory("IEC 62368-1 Annex E: one eighth of the unclipped power"),
    ),
    cautions=(HOT_SURFACE,),
    cases=(
        Case({"t_j_max": "150 degC", "t_junction": "98.20 degC", "t_trip_own": "150 degC"},
             gives="51.80 K",
             origin="computed: nodal solution of 4 devices of 6 W, 1.7 K/W each, on one sink "
             "of 2 K/W in 40 degC"),
        Case({"t_j_max": "150 degC", "t_junction": "112.0 degC", "t_trip_own": "155 degC"},
             gives="38.0 K",
             origin="computed: by hand from TPA3221 data sheet, 33.6 W at a case of 75 degC "
             "and 1.1 K/W"),
    ),
    fails=_BASE.replace("SINK", "25 K/W"),
    passes=_BASE.replace("SINK", "6 K/W"),
    topic=("output_stage.device.t_j_max", "output_stage.device.r_th_jc",
           "output_stage.device.r_th_ja", "thermal.heatsink"),
    asked_from="prototype",
)  # fmt: skip
