"""A protection circuit in a lithium pack.

Lithium cells have no overload that they survive by themselves: overcharge, deep discharge
and short circuit each end in gas and possibly in fire. A circuit that watches every cell
and can disconnect the pack is part of any lithium pack, built in by its maker or added. A
charger does not replace it, nor does a fuse, nor the amplifier's lockout.

None is critical. A pack whose protection sits inside a bought module counts as fitted:
state what is known of it. Lead-acid and nickel packs need a fuse, which is judged apart.
The figure is 1 where a protection is fitted, else 0.
"""

from ...linter.check import AtLeast, Case, Check, Input, from_memory
from ..hazards import CELLS, also


def figure(protection: str) -> float:
    return 1.0 if protection == "fitted" else 0.0


CHECK = Check(
    title="Protection circuit of a lithium pack",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 if protection is fitted, else 0",
    sentence="{protection:?No protection circuit in the lithium pack|Protection circuit of the"
    " lithium pack: fitted}.",
    inputs={"protection": Input("battery.protection")},
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtLeast(
        critical="1",
        basis={"critical": from_memory("IEC 62133-2", "tests of overcharge and short circuit")},
    ),
    sources=(from_memory("IEC 62133-2", "secondary lithium cells for portable use"),),
    cautions=(also(CELLS, "Do not charge or connect a pack without one."),),
    cases=(
        Case(
            {"protection": "none"},
            gives="0",
            origin="common practice: bare cells soldered to a pack without any circuit",
        ),
        Case(
            {"protection": "fitted"},
            gives="1",
            origin="common practice: pack with a protection circuit inside",
        ),
    ),
    topic=("battery",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, protection: none}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, protection: {i_trip: 20 A}}
channels:
  main: {rated_power: 40 W}
""",
)
