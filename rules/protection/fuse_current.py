"""Current of the supply fuse with all channels at rated power.

A fuse is a resistor, so its heat follows the rms of the current, not the mean.  A bridge at
full sine draws its power in humps at twice the signal frequency: rms is the root of 1.5
times the mean, 22 % more, unless the bulk capacitors carry the humps.  Sized on the mean,
the fuse opens on loud music, and the owner's answer is a bigger one.

How much a rated ampere is worth depends on the standard behind it: after UL 248-14 a fuse
carries its rating, but ages above 75 % of it; after IEC 60127 it may run at its rating.
In hot air both lose a tenth or more, which ``k_ambient`` says.

The figure is the rated-sine current over the current that the fuse carries for hours.
Above 1 it ages: minor, as music draws far less.  Above 4/3 a UL fuse runs beyond its full
rating and need not hold for as long as the rated power does: major.  One limit serves both
standards, though IEC fuses hold 1.5 times for an hour.  First fix: the next size up, and
then the conductors behind it once more.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.fuse import FUSEOLOGY, IEC_FUSES, LOADING, STOCK, continuous_current
from ..hazards import FUSE


def figure(i_source_rms: float, i_rated: float, standard: str, k_ambient: float) -> float:
    return i_source_rms / continuous_current(i_rated, standard, k_ambient)


SUPPLY = """
supply: {source: dc-source, rails: single, v_rail: 24 V, r_source: 50 mohm, bulk: {c: 470 uF}}
channels:
  main:
    rated_power: 60 W
    rated_load: 4 ohm
    band: 60 Hz .. 16 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 88 %}
protection:
  fuse: {i_rated: 3.15 A, standard: ul-248-14, k_ambient: 90 %}
"""

CHECK = Check(
    title="Supply current vs. continuous fuse current",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="i_source_rms / (share of i_rated by standard * k_ambient); share: UL 0.75, IEC 1",
    sentence="Supply current {i_source_rms} rms at rated power; the {i_rated} fuse"
    " ({standard:upper})"
    " carries {i_source_rms:/figure} continuously (ambient derating {k_ambient}).",
    inputs={
        "i_source_rms": Input("i_source_rms"),
        "i_rated": Input("protection.fuse.i_rated"),
        "standard": Input("protection.fuse.standard"),
        "k_ambient": Input("protection.fuse.k_ambient"),
    },
    limits=AtMost(major="1.3333", minor="1", basis={"major": FUSEOLOGY, "minor": LOADING}),
    levers=(Lever("protection.fuse.i_rated", STOCK),),
    sources=(
        FUSEOLOGY,
        LOADING,
        IEC_FUSES,
        derivation("rms of 1 - cos 2x is the root of 1.5 times its mean"),
    ),
    cautions=(FUSE,),
    cases=(
        Case(
            {
                "i_source_rms": "5.722 A",
                "i_rated": "10 A",
                "standard": "ul-248-14",
                "k_ambient": "90 %",
            },
            gives="0.84770",
            origin="computed: rms over a period by quadrature 5.722 A; 75 % of 10 A, hot",
        ),
        Case(
            {"i_source_rms": "7.5 A", "i_rated": "10 A", "standard": "ul-248-14", "k_ambient": 1.0},
            gives="1",
            origin="published: Lundy, EDN 1996: 75 % of the rating of a UL fuse; of 10 A by hand",
        ),
    ),
    topic=("protection.fuse",),
    fails=SUPPLY,
    passes=SUPPLY.replace("3.15 A", "10 A"),
)
