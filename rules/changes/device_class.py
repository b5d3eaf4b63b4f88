"""Output devices of another voltage class, with the resistance and charges that they then have.

A device for a higher voltage needs a thicker and less doped drift layer.  The resistance of an
area of silicon rises with the power 2.5 of the breakdown voltage where that layer makes nearly
all of it; below some 200 V the channel keeps its part, and practice lies near the power two.
With an area that grows with the voltage, resistance and charges each rise in proportion to it;
the switching times go with the charges, and the dead time with the switching times.

What is written is a guess at a part that nobody has chosen yet, and marked as that: look up
a real one, and put its data sheet in.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Input, Source, quoted
from ...linter.design_change import DesignChange, Follow

SILICON = quoted(
    "B. J. Baliga, Power Semiconductor Devices (1996), as quoted beside a plot of commercial"
    " parts in an encyclopaedia's collection of files (Bv_rdson): 5.93e-9 Vbr^2.5"
)
CHANNEL = Source(
    "Limitation fondamentale dans les transistors MOS de puissance,"
    " Rev. Phys. Appl. 16, 1981, p. 509",
    "abstract: below 200 V the product does not depend on the voltage, above with the power 2.5",
)
CLASSES = ("40 V", "60 V", "80 V", "100 V", "150 V", "200 V", "250 V", "300 V", "500 V")
HEADROOM = 0.8
"""Share of its rating that a device is used to: the good practice that its check asks for."""


def in_proportion(was: float, v_was: float, v_now: float) -> float:
    """A resistance or a charge: an area in proportion to the voltage halves the square law."""
    return was * v_now / v_was


def class_needed(v_node_peak: float) -> float:
    """Rating of a device that is used to four fifths."""
    return v_node_peak / HEADROOM


def with_the_class(name: str) -> Follow:
    """A value of the device that goes with its voltage class."""
    path = f"output_stage.device.{name}"
    return Follow(
        path,
        in_proportion,
        {
            "was": Input(f"before {path}"),
            "v_was": Input("before output_stage.device.v_dss"),
            "v_now": Input("output_stage.device.v_dss"),
        },
        guess=True,
    )


VOLTAGE = Follow(
    "output_stage.device.v_dss",
    class_needed,
    {"v_node_peak": Input("v_node_peak")},
    stock=CLASSES,
    safe="up",
)

DEVICE = tuple(
    with_the_class(name)
    for name in (
        *("r_ds_on", "q_g", "q_gd", "q_sw", "q_g_th", "q_oss", "q_rr", "c_iss", "c_oss"),
        *("t_d_on", "t_r", "t_d_off", "t_f"),
    )
)
MARGIN = Constant(
    "10 ns",
    "effective dead time at least",
    Source(
        "IRS20124S data sheet PD60240, International Rectifier",
        "p. 20: at least 10 ns of effective dead time",
    ),
)


def dead_time_needed(t_outlasts: float, mismatch: float, margin: float) -> float:
    """Turn-off beyond turn-on, the difference of the drivers, and the margin."""
    return t_outlasts + mismatch + margin


DEAD_TIME = Follow(
    "gate_drive.dead_time",
    dead_time_needed,
    {
        "t_outlasts": Input("t_off_outlasts"),
        "mismatch": Input("gate_drive.delay_mismatch"),
        "margin": MARGIN,
    },
    "5 ns",
    "up",
)

CHANGE = DesignChange(
    title="output devices of another voltage class, with their dead time",
    moves=("output_stage.device.v_dss",),
    kind="part",
    follows=(*DEVICE, DEAD_TIME),
    sources=(SILICON, CHANNEL, COMMON_PRACTICE),
)
