"""Load of the channel against the least load of its integrated power stage.

The data sheet of a power stage names the lowest RATED load of a connection; loudspeakers
of that rating may dip to 80 % of it, and the part's current limit is made for that.  So
rated is compared with rated.  A loudspeaker whose stated minimum lies deeper than 80 %
counts as the lower load that its minimum belongs to (many products break the 80 %).

Below the part's least load the current limit trips on loud passages and the heat grows;
the part survives by its protection, so this is major and not critical.  Not for discrete
stages: their trip window and devices are judged by their own checks.  The least load is
asked for as soon as the spec says anything of the output stage; where it does not say
whether the stage is integrated, that is asked first.
"""

from ...linter.check import Assumption, AtLeast, Case, Check, Input, derivation
from ..formulas.load import MINIMUM_IMPEDANCE
from ..formulas.maths import smaller

REGULAR = Assumption(float("inf"), "favourable", MINIMUM_IMPEDANCE)
ONE = Assumption(1.0, "absent", MINIMUM_IMPEDANCE)


def figure(load_low: float, z_min: float, series: float, parallel: float, load_min: float) -> float:
    return smaller(load_low, z_min * series / parallel / 0.8) / load_min


CHECK = Check(
    title="Lowest load vs. minimum load of the power stage",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="smaller of load_low and z_min series / (0.8 parallel), over load_min",
    sentence="Lowest load {load_min:*figure} ({load_low} rated); minimum load of the part"
    " {load_min} ({figure:%}).",
    inputs={
        "load_low": Input("load_low"),
        "z_min": Input("loudspeaker.z_min", default=REGULAR),
        "series": Input("loudspeaker.series", default=ONE),
        "parallel": Input("loudspeaker.parallel", default=ONE),
        "load_min": Input("output_stage.device.load_min"),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtLeast(
        major="1", basis={"major": derivation("the load is outside what the part is rated for")}
    ),
    sources=(MINIMUM_IMPEDANCE,),
    cases=(
        Case(
            {
                "load_low": "3 ohm",
                "z_min": "1000 ohm",
                "series": 1,
                "parallel": 1,
                "load_min": "2.7 ohm",
            },
            gives="1.1111",
            origin="computed: 3 ohm on a part for 2.7 ohm",
        ),
        Case(
            {
                "load_low": "8 ohm",
                "z_min": "6.4 ohm",
                "series": 1,
                "parallel": 2,
                "load_min": "4 ohm",
            },
            gives="1",
            origin="published: Visaton dictionary, impedance curve: not below 80 %; two of 8 ohm "
            "by hand",
        ),
        Case(
            {
                "load_low": "8 ohm",
                "z_min": "3.2 ohm",
                "series": 2,
                "parallel": 3,
                "load_min": "2 ohm",
            },
            gives="1.33333",
            origin="derived: strings of 6.4 ohm, three of them 2.1333 ohm, as rated 2.6667 ohm",
        ),
    ),
    topic=("output_stage.device",),
    fails="""
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {load_min: 6 ohm}}
    loudspeaker: {z_rated: 4 ohm}
""",
    passes="""
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {load_min: 6 ohm}}
    loudspeaker: {z_rated: 8 ohm}
""",
)
