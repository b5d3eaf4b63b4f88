"""Output devices of another voltage class, with the resistance that they then have.

A device for a higher voltage needs a thicker and less doped drift layer.  On the same area of
silicon the resistance of that layer rises with the power 2.5 of the breakdown voltage; below
some 200 V the channel and the package keep part of the resistance as it is, so the power 2.5
is the cautious end.  On the same area the charges stay about as they are.

What is written is a guess at a part that nobody has chosen yet, and marked as that: look up
a real one, and put its data sheet in.
"""

from ...linter.check import DesignChange, Follow, Input, derivation, quoted

SILICON = quoted(
    "B. J. Baliga, Power Semiconductor Devices (1996), as quoted beside a plot of commercial"
    " parts in an encyclopaedia's collection of files (Bv_rdson): 5.93e-9 Vbr^2.5"
)
CLASSES = ("40 V", "60 V", "80 V", "100 V", "150 V", "200 V", "250 V", "300 V", "500 V")
HEADROOM = 0.8
"""Share of its rating that a device is used to: the good practice that its check asks for."""


def same_area(r_was: float, v_was: float, v_now: float) -> float:
    """On-resistance of the same area of silicon for another breakdown voltage."""
    return r_was * (v_now / v_was) ** 2.5


def class_needed(v_node_peak: float) -> float:
    """Rating of a device that is used to four fifths."""
    return v_node_peak / HEADROOM


RESISTANCE = Follow(
    "output_stage.device.r_ds_on",
    same_area,
    {
        "r_was": Input("before output_stage.device.r_ds_on"),
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

CHANGE = DesignChange(
    title="output devices of the next voltage class",
    moves=("output_stage.device.v_dss",),
    kind="part",
    follows=(RESISTANCE,),
    sources=(SILICON, derivation("same area: charges about alike")),
)
