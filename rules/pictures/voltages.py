"""What the parts at the rail and at the switch node see, and what they are rated for."""

from ...linter.check import Input
from ...linter.picture import Amount, Row, Scale, Shown
from .parts import shown


def above(read: float, below: float) -> float:
    """What was read on top of something, together with it."""
    return below + read


PICTURE = Scale(
    title="Does any part see more voltage than its rating?",
    each="channel",
    axis="voltage",
    unit="V",
    rows=(
        Row("Bulk capacitors: rail, idle", (
            shown("highest", "v_rail_high"),
            shown("rated", "supply.bulk.v_rated", "limit"),
        ), ("bulk-capacitor-voltage",)),
        Row("Rail with pumping", (
            shown("highest", "v_rail_peak"),
            shown("trip", "protection.over_voltage.v_trip", "trip"),
            Shown("", (Amount({"below": Input("v_rail_high")}, above),), measures="v_pumping"),
        ), ("bus-pumping", "pumping-against-trip", "pumping-against-capacitor")),
        Row("Open switch", (
            shown("rail and pumping", "v_static_peak"),
            shown("with ringing", "v_node_peak", "second"),
            shown("rated", "v_leg_absolute", "limit"),
            Shown("", (Amount({"below": Input("v_static_peak")}, above),), measures="v_overshoot"),
        ), ("device-voltage-margin", "device-voltage-ringing", "supply-above-part-limit",
            "pin-overshoot")),
        Row("Local capacitor", (
            shown("across the leg", "v_static_peak"),
            shown("rated", "output_stage.v_c_local", "limit"),
        ), ("stage-capacitor-voltage",)),
        Row("Capacitor to ground", (
            Shown("highest", (Amount({"value": Input("v_rail_high")},
                              when={"filter.c_ground": "fitted"}),)),
            shown("rated", "filter.c_ground.v_rated", "limit"),
        ), ("filter-capacitor-voltage-to-ground",)),
        Row("Gate", (
            shown("gate supply", "gate_drive.v_drv"),
            shown("rated", "output_stage.device.v_gss", "limit"),
            Shown("", (Amount({"below": Input("gate_drive.v_drv")}, above),),
                  measures="v_gate_ringing"),
        ), ("gate-voltage-margin",)),
        Row("Fuse", (
            Shown("to break", (Amount({"value": Input("v_across_fuse")},
                               when={"fuse_seen": "yes"}),)),
            shown("rated for direct voltage", "protection.fuse.v_dc", "limit"),
        ), ("fuse-voltage",)),
    ),
    note="Ringing is an estimate until it is measured on the board.",
    value="without ringing",
    second="with ringing",
)  # fmt: skip
