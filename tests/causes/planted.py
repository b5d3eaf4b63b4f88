"""Faults planted in specs, and the causes that an engineer would name for each.

Written from the comments of the samples and from what the trade knows, not from what the
program printed.  A row names one cause: what was planted, and the checks that have to be told
under it.  What a fault brings with it stands in the row of the fault.
"""

from dataclasses import dataclass, field

BOTH = "channels.left", "channels.right"


@dataclass(frozen=True)
class Composed:
    """A sound sample with some of its values spoilt; ``*`` stands for both channels."""

    base: str
    spoilt: dict[str, object]
    causes: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def changes(self) -> dict[str, object]:
        """The values by their full paths."""
        found: dict[str, object] = {}
        for path, value in self.spoilt.items():
            paths = [f"{name}{path[1:]}" for name in BOTH] if path[0] == "*" else [path]
            found |= dict.fromkeys(paths, value)
        return found


SAMPLES: dict[str, dict[str, tuple[str, ...]]] = {
    # A pack for the rated power has more cells in series too, which ends power beyond the rail.
    "foyer-proposal": {
        "22 mH for 22 uH": (
            "value-outside-usual-range",
            "stated-value-contradicts",
            "treble-response-unclaimed",
        ),
        "one string for 2 x 120 W": (
            "pack-current",
            "pack-pulse-current",
            "pack-collapse",
            "pack-voltage-under-load",
        ),
        "12 h from one string": ("run-time-best-case",),
        "parts rated below the full pack": (
            "bulk-capacitor-voltage",
            "filter-capacitor-voltage",
            "fuse-voltage",
            "device-voltage-margin",
        ),
        "a bare, reversible pack and its charger": (
            "protection-present",
            "reverse-polarity",
            "charge-in-cold",
            "charge-in-heat",
            "charge-current",
            "charging-while-playing",
        ),
        "no DC detector, a fuse that breaks 35 A": ("dc-fault-power", "fuse-breaking-capacity"),
        "a thin lead": ("fuse-protects-lead", "supply-lead-current", "supply-lead-drop"),
        "nothing holds a fire in": ("fire-power-class",),
        "gate drive": ("dead-time-margin", "miller-turn-on", "bootstrap-hold-at-clipping"),
        "carrier close to the band": ("carrier-to-audio-ratio",),
        "inductor below the current": ("inductor-saturation",),
        "efficiency beyond physics": ("efficiency-beyond-resistance", "efficiency-plausibility"),
        "level beyond amplifier and loudspeakers": ("target-sound-level", "level-beyond-drivers"),
    },
    "bird-call-pocket-faulty": {
        "rail at the part's highest supply": ("supply-above-recommended", "pin-overshoot"),
        "15 ohm for 15 kohm": ("value-outside-usual-range", "input-coupling-corner"),
        "pack trips in the music": ("protection-trip-above-music",),
        "stage trips in the music": ("trip-above-music",),
        "charges frozen cells": ("charge-in-cold",),
        "two-level drive": ("filterless-drive",),
        "long lead": ("loudspeaker-lead-length",),
        "2 ohm": ("loudspeaker-network", "loudspeaker-minimum-impedance"),
        "claimed level": ("target-sound-level", "level-beyond-drivers"),
    },
    "choir-portable-faulty": {
        "charger for other cells": ("charge-voltage",),
        "switch of 40 V": ("device-voltage-ringing",),
        "gate resistors swapped": ("miller-turn-on",),
        "dead time": ("dead-time-margin",),
        "bootstrap not refreshed": ("bootstrap-hold-at-clipping",),
        "inductor saturates": ("inductor-saturation",),
        "thin lead": ("fuse-protects-lead",),
        "fuse for alternating voltage": ("fuse-voltage",),
        "lockout in the sag": ("pack-voltage-under-load",),
        "285 Wh as hand luggage": ("transport-watt-hours",),
    },
    "playhouse-subwoofer-faulty": {
        "converter without certificate": ("mains-barrier",),
        "bulk capacitors of 80 V": ("bulk-capacitor-voltage", "pumping-against-capacitor"),
        "over-voltage trip in the tolerance": ("over-voltage-trip-window",),
        "offset": ("steady-dc-offset",),
        "loudspeaker of 125 W without limiter": (
            "loudspeaker-clipped-power",
            "loudspeaker-power-match",
        ),
        "trip in the music": ("trip-above-music",),
        "no high-pass": ("vented-box-unloading",),
        "narrow port": ("port-air-speed",),
        "hot sink": ("touch-temperature-heatsink",),
        "no DC detector": ("dc-fault-power",),
        "bleeder overloaded": ("bleeder-power",),
    },
    "market-day-trolley-faulty": {
        "IP54 with vents": ("ingress-and-vents",),
        "module of 24 W": ("source-below-rated-power", "source-capability"),
        "clamps can be reversed": ("reverse-polarity",),
        "harmonic in the radio": ("carrier-in-radio-bands",),
        "bootstrap capacitor": ("part-bootstrap-capacitor",),
        "470 pF for 470 nF": ("value-outside-usual-range",),
        "detector only mutes, and late": ("independent-disconnect", "dc-detector-delay"),
        "glass fuse on a battery": ("fuse-breaking-capacity",),
        "beside the horn": ("hearing-exposure",),
        "claimed run time": ("run-time", "run-time-best-case", "capacity-at-high-rate"),
    },
    "bedside-lamp-faulty": {
        "output capacitor": (
            "blocking-capacitor-stress",
            "blocking-capacitor-corner",
            "blocking-capacitor-current",
        ),
        "5 W from 12 V": ("power-above-rail", "output-power", "rail-trough", "input-sensitivity"),
        "inductor saturates": ("part-least-inductance",),
        "input capacitor": ("input-coupling-corner",),
        "turn-on step": ("turn-on-pop",),
        "rail pumped by the bass": ("supply-above-recommended",),
        "filter of another load": (
            "treble-response",
            "treble-response-loudspeaker",
            "filter-damping",
        ),
        "trace of 0.2 mm": ("trace-current", "fuse-protects-trace"),
    },
}

COMPOSED: dict[str, Composed] = {
    "prefix slip of the inductor": Composed(
        "choir-portable",
        {"*.filter.inductor.l": "10 mH ± 20 %"},
        {"10 mH for 10 uH": ("value-outside-usual-range", "treble-response")},
    ),
    "pack of one string": Composed(
        "choir-portable",
        # 100 W out of 29 V are 4 A of the 8 A that one cell gives; but 9.5 Ah are 3.2 Ah now,
        # and a circuit that trips at 36 A at most does not guard a string of 16 A.
        {"battery.parallel": "1", "battery.charger.i": "1.2 A ± 5 %"},
        {"one string": ("run-time", "protection-trip-below-cells")},
    ),
    "pack of one string of weak cells": Composed(
        "choir-portable",
        {
            "battery.parallel": "1",
            "battery.charger.i": "1.2 A ± 5 %",
            "battery.cell.i_cont": "3 A",
            "battery.cell.i_pulse": "6 A",
        },
        {"one string": ("pack-current", "pack-pulse-current", "run-time")},
    ),
    "devices of 40 V and a thin lead": Composed(
        "choir-portable",
        {
            "*.output_stage.device.v_dss": "40 V",
            "wiring.supply_lead.area": "0.25 mm2",
            "wiring.supply_lead.i_rated": "4 A",
        },
        {
            "devices": ("device-voltage-ringing",),
            "lead": ("fuse-protects-lead", "supply-lead-current"),
        },
    ),
    "dead time and no DC detector": Composed(
        "choir-portable",
        {"*.gate_drive.dead_time": "12 ns ± 2 ns", "protection.dc_detector": "none"},
        {"dead time": ("dead-time-margin",), "no detector": ("dc-fault-power",)},
    ),
    "four faults in one product": Composed(
        "choir-portable",
        {
            "*.filter.inductor.i_sat": "4.5 A",
            "supply.bulk.v_rated": "25 V",
            "*.limiter.v_rms": "7 V",
            "battery.charger.t_window": "-10 degC .. 43 degC",
        },
        {
            "wrong inductor": ("inductor-saturation",),
            "capacitor rating": ("bulk-capacitor-voltage",),
            "tight limiter": ("limiter-below-rated-power",),
            "charges frozen cells": ("charge-in-cold",),
        },
    ),
    "swapped gate resistors": Composed(
        "playhouse-subwoofer",
        {
            "channels.sub.gate_drive.r_g_on": "2R2 ± 5 %",
            "channels.sub.gate_drive.r_g_off": "10 ohm ± 5 %",
        },
        {"swapped": ("miller-turn-on",)},
    ),
    "capacitor rating, bleeder and offset": Composed(
        "playhouse-subwoofer",
        {
            "supply.bulk.v_rated": "63 V",
            "channels.sub.dc_offset": "400 mV",
            "protection.dc_detector": "none",
        },
        {
            "capacitors": ("bulk-capacitor-voltage",),
            "offset": ("steady-dc-offset",),
            "no detector": ("dc-fault-power",),
        },
    ),
    "a rail of ten times as much": Composed(
        "playhouse-subwoofer",
        {"supply.v_rail": "790 V ± 3 %"},
        {
            "790 V for 79 V": (
                "value-outside-usual-range",
                "bulk-capacitor-voltage",
                "device-voltage-margin",
                "fuse-voltage",
            )
        },
    ),
    "slip, fuse and run time": Composed(
        "market-day-trolley",
        {
            "channels.horn.filter.c_across.c": "470 pF ± 5 %",
            "protection.fuse.i_breaking": "100 A",
            "claims.run_time": "60 h",
        },
        {
            "slip": ("value-outside-usual-range",),
            "fuse": ("fuse-breaking-capacity",),
            "run time": ("run-time", "run-time-best-case"),
        },
    ),
    "output capacitor and power": Composed(
        "bedside-lamp",
        {"channels.lamp.filter.c_block.v_rated": "6.3 V", "channels.lamp.rated_power": "5 W"},
        {
            "capacitor": ("blocking-capacitor-stress",),
            "power": ("power-above-rail", "output-power"),
        },
    ),
    "slip at the input, trip in the music, frozen cells": Composed(
        "bird-call-pocket",
        {
            "signal.r_in": "15 ohm",
            # 3 W into 4 ohm have a crest of (2 * 3 / 4) ** 0.5 = 1.2 A
            "*.output_stage.over_current.i_trip": {"min": "0.9 A", "typ": "1.1 A"},
            "battery.charger.t_window": "-8 degC .. 43 degC",
        },
        {
            "slip": ("value-outside-usual-range", "input-coupling-corner"),
            "trip": ("trip-above-music",),
            "cold": ("charge-in-cold",),
        },
    ),
    "wrong inductor, bootstrap and source": Composed(
        "market-day-trolley",
        {
            "channels.horn.filter.inductor.i_sat": "2 A",
            "channels.horn.gate_drive.bootstrap.c": "33 nF ± 10 %",
            "supply.i_max": "1 A",
            "supply.p_max": "24 W",
        },
        {
            "inductor": ("inductor-saturation",),
            "bootstrap": ("part-bootstrap-capacitor",),
            "source": ("source-below-rated-power",),
        },
    ),
    "small sink, narrow port, no high-pass": Composed(
        "playhouse-subwoofer",
        {
            "thermal.heatsink.r_th_sa": "6 K/W",
            "channels.sub.loudspeaker.enclosure.type": "vented",
            "channels.sub.loudspeaker.enclosure.f_b": "32 Hz",
            "channels.sub.loudspeaker.enclosure.port_area": "80 cm2",
            "channels.sub.loudspeaker.high_pass": "none",
        },
        {
            "sink": ("touch-temperature-heatsink",),
            "port": ("port-air-speed",),
            "high-pass": ("vented-box-unloading",),
        },
    ),
    "two loudspeakers and two levels": Composed(
        "bird-call-pocket",
        {"*.loudspeaker.parallel": "2", "*.modulator.levels": "two-level"},
        {
            "2 ohm": ("loudspeaker-network", "loudspeaker-minimum-impedance"),
            "two-level drive": ("filterless-drive",),
        },
    ),
    "trace, input capacitor and turn-on step": Composed(
        "bedside-lamp",
        {
            "wiring.trace.width": "0.2 mm",
            "wiring.trace.layer": "inner",
            "signal.c_in": "22 nF ± 10 %",
            "channels.lamp.turn_on_step": "1.5 V",
        },
        {
            "trace": ("fuse-protects-trace", "trace-current"),
            "input capacitor": ("input-coupling-corner",),
            "step": ("turn-on-pop",),
        },
    ),
    "charger for other cells, lockout in the sag, fuse of 32 V": Composed(
        "choir-portable",
        {
            "battery.charger.v": "34.4 V ± 1 %",
            "protection.under_voltage.v_trip": {"min": "26 V", "typ": "26.6 V", "max": "27.2 V"},
            "protection.fuse.v_dc": "32 V",
        },
        {
            "charger": ("charge-voltage",),
            "lockout": ("pack-voltage-under-load",),
            "fuse": ("fuse-voltage",),
        },
    ),
}
