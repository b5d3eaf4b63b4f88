"""What feeds the amplifier while the pack is charged.

A charger for lithium cells ends the charge when its current has fallen to a small value. If
the amplifier plays from the cells meanwhile, its current hides that value: the charger
never ends, holds the cells at full voltage for days and wears them, or a safety timer ends
the charge too early. A power path feeds the amplifier from the adapter first and leaves the
cells alone; the other clean way is to make playing impossible while charging.

Playing from the cells is major: the end of the charge no longer works as rated. The figure
is 1 where the amplifier hangs on the cells, else 0.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation, from_memory


def figure(playing: str) -> float:
    return 1.0 if playing == "from-the-cells" else 0.0


CHECK = Check(
    title="Amplifier supply during charging",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="1 if playing is from-the-cells, else 0",
    sentence="Amplifier supply during charging: {playing:words}.",
    inputs={"playing": Input("battery.charger.playing")},
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtMost(
        major="0",
        basis={"major": derivation("the charge ends by a current that the load hides")},
    ),
    levers=(Lever("battery.charger.playing", ("power-path", "impossible")),),
    sources=(
        derivation("the charger sees the sum of charge and load current"),
        from_memory("IEC 62368-1", "Annex M: charging safeguards"),
    ),
    cases=(
        Case(
            {"playing": "from-the-cells"},
            gives="1",
            origin="common practice: charger modules warn of a load on the cells",
        ),
        Case(
            {"playing": "power-path"},
            gives="0",
            origin="common practice: chargers with a power path feed the load first",
        ),
    ),
    topic=("battery.charger",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {playing: from-the-cells}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {playing: power-path}}
channels:
  main: {rated_power: 40 W}
""",
)
