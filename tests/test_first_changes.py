"""The first change proposed for each planted fault, against what the trade would do.

A row names a planted cause and every change that an engineer would sign as the first one, from
the trade and not from what the program prints, one alternative after another.  A clause is
``path``, or ``path >= value``, ``path <= value``, ``path = word``; all clauses of an alternative
must hold.  ``nothing`` allows that no change is offered, where what helps is no value of the
spec; the note must then say which kind of design would.
"""

from pathlib import Path

import pytest

from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.declare import local_path
from ampreview.linter.finding import Finding, Remedy
from ampreview.linter.judging.review import Review
from ampreview.linter.quantities.quantity import Value, parse, to_si

from . import reviews

FOLDER = Path(__file__).parent.parent / "sample_specs"
SHARE = 0.9
Row = tuple[str, str, tuple[str, ...]]

PACK = ("battery.parallel >= 4", "battery.series >= 9 & battery.parallel >= 2")
RAIL = ("battery.series >= 9", "supply.converter = step-up", "rated_power <= 100 W")
DETECTOR = (
    "protection.dc_detector.action = disconnect-load & protection.dc_detector.independent = yes",
    "protection.dc_detector.action = remove-supply & protection.dc_detector.independent = yes",
)
REVERSED = ("battery.connection = keyed", "battery.connection = fixed",
            "protection.reverse_polarity.method")  # fmt: skip

ROWS: dict[str, tuple[Row, ...]] = {
    "foyer-proposal": (
        ("value-outside-usual-range", "left", ("filter.inductor.l <= 22 uH",)),
        ("stated-value-contradicts", "left", ("filter.inductor.l <= 22 uH",)),
        ("bulk-capacitor-voltage", "product", ("supply.bulk.v_rated >= 35 V",)),
        ("filter-capacitor-voltage", "left", ("filter.c_across.v_rated >= 35 V",)),
        ("ceramic-capacitor-in-signal", "left", ("filter.c_across.dielectric",)),
        ("pack-current", "product", PACK),
        ("pack-collapse", "product", PACK),
        ("reverse-polarity", "product", REVERSED),
        ("protection-present", "product",
         ("battery.protection.i_trip & battery.protection.v_cutoff",)),
        ("charge-in-cold", "product", ("battery.charger.t_window",)),
        ("charge-current", "product", ("battery.charger.i <= 1.3 A", "battery.parallel >= 4")),
        ("charge-temperature-sensor", "product", ("battery.charger.sensor = cell",)),
        ("charging-while-playing", "product", ("battery.charger.playing",)),
        ("power-above-rail", "left", RAIL),
        ("device-voltage-margin", "left", ("output_stage.device.v_dss >= 40 V",)),
        ("gate-voltage-margin", "left",
         ("output_stage.device.v_gss >= 16 V", "gate_drive.v_drv <= 10 V")),
        ("dead-time-margin", "left", ("gate_drive.dead_time >= 70 ns",)),
        ("miller-turn-on", "left", ("gate_drive.r_g_off <= 2.2 ohm", "nothing")),
        ("bootstrap-hold-at-clipping", "left",
         ("gate_drive.bootstrap.c >= 1 uF", "gate_drive.bootstrap.refresh")),
        ("carrier-to-audio-ratio", "left", ("modulator.carrier >= 140 kHz",)),
        ("trip-against-saturation", "left",
         ("output_stage.over_current.i_trip <= 12 A", "filter.inductor.i_sat >= 10 A")),
        ("supply-lead-current", "product", ("wiring.supply_lead.area >= 1.5 mm2",)),
        ("fuse-protects-lead", "product", ("wiring.supply_lead.area >= 2.5 mm2",)),
        ("fuse-voltage", "product", ("protection.fuse.v_dc >= 32 V",)),
        ("fuse-breaking-capacity", "product", ("protection.fuse.i_breaking >= 100 A",)),
        ("dc-fault-power", "left", DETECTOR),
        ("pack-voltage-under-load", "product",
         (*PACK, "protection.under_voltage.v_trip <= 22 V", "protection.under_voltage.v_trip")),
        ("fire-power-class", "product", ("safety.fire_enclosure = yes",)),
        ("efficiency-plausibility", "product", ("claims.efficiency <= 95 %",)),
        ("run-time", "product", ("claims.run_time <= 11 h", "battery.parallel >= 5")),
        ("target-sound-level", "product", ("claims.sound_level <= 113 dB",)),
        ("level-beyond-drivers", "product",
         ("claims.sound_level <= 113 dB", "loudspeaker.p_rated >= 60 W")),
        ("withdrawn-standards", "product", ("nothing",)),
    ),
    "choir-portable-faulty": (
        ("charge-voltage", "product", ("battery.charger.v <= 33.6 V",)),
        ("device-voltage-ringing", "left", ("output_stage.device.v_dss >= 60 V",)),
        ("miller-turn-on", "left",
         ("gate_drive.r_g_on >= 10 ohm & gate_drive.r_g_off <= 2.2 ohm",)),
        ("dead-time-margin", "left",
         ("gate_drive.dead_time >= 50 ns", "gate_drive.r_g_off <= 2.2 ohm")),
        ("bootstrap-hold-at-clipping", "left",
         ("gate_drive.bootstrap.c >= 1 uF", "gate_drive.bootstrap.refresh")),
        ("inductor-saturation", "left", ("filter.inductor.i_sat >= 8 A",)),
        ("fuse-protects-lead", "product", ("wiring.supply_lead.area >= 1.5 mm2",)),
        ("pack-voltage-under-load", "product",
         ("protection.under_voltage.v_trip <= 24.5 V", "battery.parallel >= 3")),
        ("fuse-voltage", "product", ("protection.fuse.v_dc >= 58 V",)),
        ("transport-watt-hours", "product", ("battery.packs >= 2", "claims.air_travel")),
    ),
    "playhouse-subwoofer-faulty": (
        ("mains-barrier", "product", ("nothing",)),
        ("bulk-capacitor-voltage", "product", ("supply.bulk.v_rated >= 100 V",)),
        ("pumping-against-trip", "product",
         ("supply.bulk.c >= 4700 uF",
          "protection.over_voltage.v_trip >= 99 V & supply.bulk.v_rated >= 160 V")),
        ("steady-dc-offset", "sub", ("dc_offset <= 50 mV",)),
        ("loudspeaker-clipped-power", "sub",
         ("limiter.v_rms >= 44 V & loudspeaker.p_rated >= 400 W",)),
        ("trip-above-music", "sub", ("output_stage.over_current.i_trip >= 25 A",)),
        ("vented-box-unloading", "sub",
         ("loudspeaker.high_pass.f & loudspeaker.high_pass.order >= 2",)),
        ("port-air-speed", "sub", ("loudspeaker.enclosure.port_area >= 200 cm2",)),
        ("touch-temperature-heatsink", "product", ("thermal.heatsink.r_th_sa <= 3 K/W",)),
        ("dc-fault-power", "sub", DETECTOR),
        ("over-voltage-trip-window", "product",
         ("protection.over_voltage.v_trip >= 85 V & supply.bulk.v_rated >= 100 V",)),
        ("bleeder-power", "product",
         ("protection.bleeder.r >= 680 ohm", "protection.bleeder.p_rated >= 50 W")),
    ),
    "market-day-trolley-faulty": (
        ("ingress-and-vents", "product", ("thermal.enclosure.openings = sealed",)),
        ("source-below-rated-power", "product", ("supply.p_max >= 30 W & supply.i_max >= 1.5 A",)),
        ("reverse-polarity", "product", REVERSED),
        ("carrier-in-radio-bands", "horn", ("modulator.carrier_shift = yes",)),
        ("part-bootstrap-capacitor", "horn", ("gate_drive.bootstrap.c >= 220 nF",)),
        ("value-outside-usual-range", "horn", ("filter.c_across.c >= 470 nF",)),
        ("independent-disconnect", "horn", DETECTOR),
        ("dc-detector-delay", "product", ("protection.dc_detector.t_trip <= 500 ms",)),
        ("fuse-breaking-capacity", "product", ("protection.fuse.i_breaking >= 2000 A",)),
        ("hearing-exposure", "product", ("limiter.v_rms <= 4 V", "rated_power", "nothing")),
        ("capacity-at-high-rate", "product",
         ("battery.parallel >= 2", "claims.run_time <= 30 h")),
    ),
    "bedside-lamp-faulty": (
        ("blocking-capacitor-stress", "lamp", ("filter.c_block.v_rated >= 16 V",)),
        ("blocking-capacitor-corner", "lamp", ("filter.c_block.c >= 220 uF",)),
        ("blocking-capacitor-current", "lamp", ("filter.c_block.i_rated >= 0.9 A",)),
        ("power-above-rail", "lamp",
         ("rated_power <= 2.2 W", "supply.v_rail >= 18 V", "output_stage.topology = full-bridge")),
        ("part-least-inductance", "lamp", ("filter.inductor.i_sat >= 2.5 A",)),
        ("input-coupling-corner", "lamp", ("signal.c_in >= 100 nF",)),
        ("turn-on-pop", "lamp", ("nothing",)),
        ("supply-above-recommended", "lamp", ("supply.bulk.c >= 330 uF",)),
        ("treble-response", "lamp", ("filter.c_across.c <= 1 uF",)),
        ("trace-current", "product", ("wiring.trace.width >= 0.8 mm",)),
    ),
    "bird-call-pocket-faulty": (
        ("value-outside-usual-range", "product", ("signal.r_in >= 15 kohm",)),
        ("supply-above-recommended", "left", ("supply.v_rail <= 5.7 V",)),
        ("protection-trip-above-music", "product", ("battery.protection.i_trip >= 3.9 A",)),
        ("charge-in-cold", "product", ("battery.charger.t_window",)),
        ("filterless-drive", "left", ("modulator.levels = three-level",)),
        ("trip-above-music", "left", ("output_stage.over_current.i_trip >= 3 A",
                                      "loudspeaker.parallel <= 1")),
        ("loudspeaker-lead-length", "left", ("lead.length <= 100 mm",)),
        ("loudspeaker-network", "left", ("loudspeaker.parallel <= 1",)),
        ("target-sound-level", "product", ("claims.sound_level <= 92 dB",)),
    ),
}  # fmt: skip


def advised(name: str) -> Review:
    return reviews.advised(FOLDER / f"{name}.amp.yaml")


def finding(name: str, check: str, subject: str) -> Finding:
    return next(x for x in advised(name).failing() if (x.check, x.subject) == (check, subject))


def holds(clause: str, changes: dict[str, object], name: str) -> bool:
    path, _, rest = clause.partition(" ")
    if path not in changes:
        return False
    if not rest:
        return True
    sign, _, wanted = rest.partition(" ")
    if sign == "=":
        return changes[path] == wanted
    unit = advised(name).spec.schema.fields[path].unit
    found = parse(changes[path], unit)
    assert isinstance(found, Value)
    limit = to_si(wanted, unit if unit != "1" else None)
    slack = 1e-9 * abs(limit)
    return found.nominal >= limit - slack if sign == ">=" else found.nominal <= limit + slack


def accepted(row: Row, name: str) -> bool:
    check, subject, alternatives = row
    item = finding(name, check, subject)
    first: Remedy | None = next(iter(item.advice.remedies), None)
    if first is None:
        return "nothing" in alternatives and "it needs " in item.advice.remedy_note
    changes = {local_path(path): data for path, data in first.values}
    return any(
        all(holds(clause.strip(), changes, name) for clause in alternative.split("&"))
        for alternative in alternatives
        if alternative != "nothing"
    )


ALL = [(name, row) for name, rows in ROWS.items() for row in rows]


def test_nine_first_changes_of_ten_are_what_the_trade_would_do() -> None:
    missed = [f"{name}: {row[0]} ({row[1]})" for name, row in ALL if not accepted(row, name)]
    assert len(missed) <= (1 - SHARE) * len(ALL), missed


def test_what_the_full_promise_forbids_is_fitted_with_less_promised() -> None:
    """At 7 A for cells of 8 A a circuit cuts off the music of 2 x 120 W, not that of 9 W."""
    start = reviews.reviewed(FOLDER / "foyer-proposal.amp.yaml")
    found = {x.check: x for x in with_remedies(start, only_holding=True).failing()}
    (less,) = found["pack-current"].advice.remedies
    assert less.kind == "promise"
    assert less.lowers == ("rated power",)
    (circuit,) = found["protection-present"].advice.remedies
    assert circuit.title == "a protection circuit in the pack"


def every_remedy() -> list[tuple[str, Finding, Remedy]]:
    return [
        (name, item, remedy)
        for name in ROWS
        for item in advised(name).failing()
        for remedy in item.advice.remedies
    ]


def test_no_remedy_changes_a_use_or_an_outcome_alone() -> None:
    """A tolerance, a distance or a figure that is measured is not what a designer turns."""
    for name, item, remedy in every_remedy():
        schema = advised(name).spec.schema
        natures = {schema.nature_of(path) for path, _ in remedy.changes}
        if remedy.kind != "slip":
            assert not natures <= {"use", "outcome"}, (name, item.check, remedy.changes)


def test_a_promise_is_lowered_last_and_called_that() -> None:
    for name, item, remedy in every_remedy():
        schema = advised(name).spec.schema
        claims = [path for path, _ in remedy.changes if schema.nature_of(path) == "claim"]
        if claims:
            assert remedy.kind == "promise", (name, item.check, remedy.changes)
            assert remedy.title.startswith(("lowers the promised", "does not keep the promised"))
    for name in ROWS:
        for item in advised(name).failing():
            kinds = [remedy.kind for remedy in item.advice.remedies]
            assert kinds == sorted(kinds, key=lambda kind: kind == "promise"), (name, item.check)


@pytest.mark.parametrize(
    ("path", "least"), [("limiter.v_peak", 3.0), ("limiter.v_rms", 2.0), ("gate_drive.r_g_on", 0.0)]
)
def test_no_value_is_moved_out_of_all_proportion(path: str, least: float) -> None:
    """A limiter of a volt, and a gate resistor of 2.2 ohm that becomes 120 ohm."""
    for name, item, remedy in every_remedy():
        if remedy.kind == "promise":
            continue
        for full, data in remedy.values:
            if local_path(full) == path:
                unit = advised(name).spec.schema.fields[path].unit
                number = parse(data, unit).nominal
                was = advised(name).spec.values.get(full)
                assert number >= least, (name, item.check, remedy.changes)
                if path.endswith("r_g_on") and isinstance(was, Value):
                    assert number <= 6 * was.nominal, (name, item.check, remedy.changes)


def test_an_over_voltage_trip_never_lies_above_the_capacitors_that_it_guards() -> None:
    for name, item, remedy in every_remedy():
        told = {local_path(path): data for path, data in remedy.values}
        if "protection.over_voltage.v_trip" in told:
            stated = advised(name).spec.values["supply.bulk.v_rated"]
            assert isinstance(stated, Value)
            rated = told.get("supply.bulk.v_rated", stated.text)
            trip = parse(told["protection.over_voltage.v_trip"], "V")
            assert trip.hi <= parse(rated, "V").nominal, (name, item.check, remedy.changes)


def test_guesses_at_parts_are_marked() -> None:
    """A resistance or a charge of a device that nobody has chosen is an estimate."""
    for _, item, remedy in every_remedy():
        named = {
            local_path(path).removeprefix("output_stage.device."): x for path, x in remedy.values
        }
        for name in ("r_ds_on", "q_g", "q_gd", "q_rr") if "v_dss" in named else ():
            data = named.get(name, {"from": "estimate"})
            assert isinstance(data, dict), item.check
            assert data["from"] == "estimate", item.check


def test_one_value_is_not_proposed_three_times_over() -> None:
    """A capacitor across the load of 680 nF, 1 uF and 560 nF as three single changes is one."""
    two_ends = {"battery.charger.t_window"}
    for name in ROWS:
        told: dict[str, set[str]] = {}
        for item in advised(name).failing():
            for remedy in item.advice.remedies[:1]:
                paths = {local_path(path) for path, _ in remedy.changes}
                if len(paths) == 1 and remedy.kind in ("value", "part"):
                    told.setdefault(paths.pop(), set()).add(remedy.changes[0][1])
        apart = {path: values for path, values in told.items() if len(values) > 1}
        assert apart.keys() <= two_ends, (name, apart)
