"""Whether something ends an overload before the supply lead overheats.

The rating of a fuse is not the current at which it opens.  After UL 248-14 up to 1.35 times
the rating may flow for an hour, after IEC 60127 up to 2.1 times for 2 to 30 minutes, and
1.5 times for good.  The lead behind the fuse has to carry that, next to other wires and in
warm air, when a part fails or a loudspeaker lead is chafed.

Without a fuse the trip of the pack or the limit of the source takes its place, and without
those the short-circuit current itself: no fuse does not spare the lead.  The same holds for
a lead between the source and a fuse on the board.

The figure is the largest current that lasts over the rating of the lead.  Installation practice
lets it go up to 1.45: an overload of an hour that a sound insulation survives.  Above it
the fuse does not protect the lead: major.  Above 2.1 even an IEC fuse of the lead's own
rating lies below the one fitted, and the lead is the fuse: critical.

A rating counts up to the table of chassis wiring at the lead's area, which is generous for a
lead in a bundle: what a hotter insulation withstands, terminals and neighbours do not, and no
statement cools copper.  Silent on the rating the table is taken.  First fix: a thicker lead,
or the smallest fuse that still carries the music.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, from_memory
from ..formulas.conductors import LEAD_SIZES
from ..formulas.fuse import FUSEOLOGY, IEC_FUSES
from ..hazards import CONDUCTOR

OVERLOAD = from_memory("IEC 60364-4-43, 433.1", "sure opening current up to 1.45 of the rating")


def figure(i_lasting: float, i_lead_rated: float) -> float:
    return i_lasting / i_lead_rated


CHECK = Check(
    title="Lasting overload vs. supply lead rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_lasting / i_lead_rated; i_lasting of a fuse: 1.35 (UL) or 2.1 (IEC) its rating",
    sentence="{i_lasting} can flow until fuse, pack or source end it; the supply lead is rated"
    " {i_lead_rated} ({figure:%}).",
    inputs={
        "i_lasting": Input("i_lasting_lead"),
        "i_lead_rated": Input("i_lead_guarded"),
    },
    applies={"fuse_seen": "yes"},
    limits=AtMost(critical="2.1", major="1.45", basis={"critical": IEC_FUSES, "major": OVERLOAD}),
    levers=(Lever("wiring.supply_lead.area", LEAD_SIZES),),
    sources=(FUSEOLOGY, IEC_FUSES, OVERLOAD),
    cautions=(CONDUCTOR,),
    cases=(
        Case(
            {"i_lasting": "13.5 A", "i_lead_rated": "13.5 A"},
            gives="1",
            origin="published: Littelfuse Fuseology p. 12: opens at 135 %; fuse and lead assumed",
        ),
        Case(
            {"i_lasting": "21 A", "i_lead_rated": "22 A"},
            gives="0.954545",
            origin="from memory: 2.1 times the rating after IEC 60127, on AWG 16 chassis wire",
        ),
    ),
    topic=("protection.fuse", "wiring.supply_lead"),
    fails="""
protection: {fuse: {i_rated: 20 A, standard: iec-60127}}
wiring: {supply_lead: {length: 0.4 m, area: 0.75 mm2, i_rated: 9 A}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
protection: {fuse: {i_rated: 8 A, standard: ul-248-14}}
wiring: {supply_lead: {length: 0.4 m, area: 0.75 mm2, i_rated: 9 A}}
channels: {main: {rated_power: 50 W}}
""",
)
