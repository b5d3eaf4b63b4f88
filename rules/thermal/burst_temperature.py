"""Junction temperature at the end of a loud passage.

Music is not steady.  The heatsink follows the average of half a minute, the small die
follows every loud passage.  The thermal ladder of the data sheet (Foster stages, junction
to case) tells by how much: here bursts of 20 ms at rated power, repeated so that their
average is the programme's, on a case at its programme temperature.

Neither of the two usual shortcuts is right: the average hides the peaks, and peak power
times the steady resistance can be many times too high.  The heat of one switch runs
through the ladder of one switch.  First fixes: a device with a larger die, less
resistance, a cooler case.  Where no ladder is known the steady checks must do.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    Source,
    derivation,
    from_memory,
)
from ..formulas.constants import SINE_CREST
from ..formulas.dissipation import programme_share, pulse_rise
from ..formulas.maths import smaller
from ..hazards import STAGE_LOST


def figure(
    t_j_max: float,
    t_case: float,
    p_switch: float,
    r: tuple[float, ...],
    tau: tuple[float, ...],
    burst: float,
    crest_factor: float,
    sine_crest: float,
) -> float:
    """Distance of the junction from its limit at the end of a burst."""
    share = smaller(programme_share(crest_factor, sine_crest), 1.0)
    return t_j_max - t_case - pulse_rise(p_switch, r, tau, burst, burst / share)


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
      device:
        t_j_max: 150 degC
        r_th_jc: 1 K/W
        r_th_cs: 0 K/W
        foster: [{r: 0.5 K/W, tau: 1 ms}, {r: LAST, tau: 5 ms}]
thermal:
  enclosure: none
  heatsink: {r_th_sa: 6 K/W, place: outside}
"""

CHECK = Check(
    title="Junction temperature after a loud passage vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - t_case - p_switch sum(r (1 - exp(-burst/tau)) / (1 - exp(-period/tau))),"
    " period = burst 10^((crest_factor - sine_crest)/10)",
    sentence="After 20 ms at rated power ({p_switch} per switch, case at {t_case}) the junction is"
    " {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_case": Input("t_case_programme"),
        "p_switch": Input("p_switch_rated"),
        "r": Input("output_stage.device.foster[].r"),
        "tau": Input("output_stage.device.foster[].tau"),
        "burst": Constant("20 ms", "length of a loud passage",
                          from_memory("IHF-A-202: bursts of 20 ms")),
        "crest_factor": Input("signal.crest_factor"),
        "sine_crest": SINE_CREST,
    },
    limits=AtLeast(
        critical="0 K",
        minor="25 K",
        basis={
            "critical": derivation("the absolute maximum that the part's data sheet states"
                                   " is the limit itself"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("rated_power", "1 W"),),
    sources=(
        Source("Fairchild FDS8958A_F085 data sheet, rev. A",
               "p. 7, fig. 23: junction less ambient = P Z(t), curves by duty cycle"),
        derivation("geometric series of the exponentials of each stage"),
    ),
    cautions=(STAGE_LOST,),
    cases=(
        Case({"t_j_max": "150 degC", "t_case": "60 degC", "p_switch": "12 W",
              "r": ("0.3 K/W", "0.7 K/W", "8 K/W", "30 K/W"),
              "tau": ("1 ms", "20 ms", "2 s", "60 s"), "burst": "20 ms",
              "crest_factor": "16.99 dB", "sine_crest": "3.0103 dB"}, gives="62.31 K",
             origin="computed: step simulation of 2000 periods of 0.5 s gives a rise of 27.69 K",
             tolerance=2e-3),
        Case({"t_j_max": "150 degC", "t_case": "60 degC", "p_switch": "10 W",
              "r": ("2 K/W",), "tau": ("1 us",), "burst": "20 ms",
              "crest_factor": "12 dB", "sine_crest": "3.0103 dB"}, gives="70 K",
             origin="computed: a stage much faster than the burst gives P R, 20 K"),
    ),
    fails=_BASE.replace("LAST", "25 K/W"),
    passes=_BASE.replace("LAST", "0.5 K/W"),
    applies={"output_stage.device.foster": "fitted"},
    topic=("output_stage.device.foster",),
)  # fmt: skip
