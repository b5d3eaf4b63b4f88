"""Same hazard, same severity: the rule of severities, applied to the whole catalogue.

1. Critical: a person is hurt, or a part is destroyed or taken beyond its absolute rating,
   however that comes about: in normal use, or by one fault that has to be expected (a shorted
   switch, a shorted or reversed lead, a rail lost, a surge of the vehicle).
2. A protection counts only against the fault that it can act on.  Muting turns switches off
   and does nothing against a shorted one; a trip at a part that is not there senses nothing.
3. Major: a function or a rated limit fails within the stated range: a promise, a rating for a
   printed life, a recommended range, a guard that cannot guard while nothing has failed yet.
4. Minor: it works, with less margin than good practice asks for, or a paper is missing.
5. What rests on an estimate from above or on a placeholder proves no destruction: at most
   major, and open where a placeholder alone decides.

What nobody can permit, and no house file can switch off or loosen, follows from the hazard:

6. Safety: it hurts, it burns or it bursts (a conductor, a coil, a resistor, a cell, a capacitor,
   heat that feeds itself), or a protection against that is missing or is destroyed by what it
   is there for.  A critical finding is beyond permission, an open question must be answered.
7. Rating: it destroys no more than a part of the amplifier, a switch, a driver, a cone, behind
   protections that are judged by checks of their own.  It may be permitted, with a reason.

``HAZARDS`` holds each hazard with the gravest severity that its checks must be able to reach;
a check of no hazard must not be able to reach critical.
"""

from collections import Counter

import pytest

from ampreview.linter.check import Check
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Severity
from ampreview.linter.judging.house import untouchable

CATALOGUE = load()
CHECKS = {entry.name: entry.check for entry in CATALOGUE.entries}

# hazard: gravest severity of its checks, the checks
HAZARDS: dict[str, tuple[str, str]] = {
    "shock: a voltage that injures within reach": (
        "critical",
        """
    mains-barrier shock-class-outputs-two shock-class-rails stored-voltage-accessible
    """,
    ),
    "shock: a voltage that hurts and does not injure (class 2), bare or in a dead product": (
        "major",
        """
    shock-class-outputs stored-voltage-service
    """,
    ),
    "shock: a voltage that is felt, and arcs at service, told by a label": (
        "minor",
        """
    shock-class-outputs-plain stored-energy
    """,
    ),
    "burn: a surface that is touched": (
        "critical",
        """
    stopped-fan-touch touch-temperature-enclosure touch-temperature-heatsink
    """,
    ),
    "fire: cells charged, emptied, heated or loaded beyond what they bear": (
        "critical",
        """
    battery-ventilation cell-charge-voltage cell-discharge-end cell-temperature-window
    cell-type-named charge-current charge-in-cold charge-in-heat charge-temperature-sensor
    charge-voltage
    discharge-in-heat pack-collapse pack-current protection-present protection-trip-below-cells
    """,
    ),
    "fire: a conductor or contact heated, or a fault current that nothing ends": (
        "critical",
        """
    connector-air connector-current fuse-breaking-capacity fuse-protects-connector
    fuse-protects-lead fuse-protects-trace fuse-voltage lead-rating supply-lead-current
    trace-current unprotected-source-power
    """,
    ),
    "fire: a voice coil or a line on direct voltage, a coil on clipped music or on the carrier": (
        "critical",
        """
    blocking-capacitor-present carrier-heats-loudspeaker dc-detector-delay dc-fault-line
    dc-fault-power dc-power-without-capacitor dc-relay-breaking independent-disconnect
    loudspeaker-clipped-power one-rail-lost series-capacitor-voltage
    """,
    ),
    "fire: a second safeguard missing behind one that is stated, below the power that spreads it": (
        "minor",
        """
    dc-fault-one-safeguard
    """,
    ),
    "fire: a second safeguard missing behind a fuse that is judged": (
        "major",
        """
    fire-power-class
    """,
    ),
    "fire: a resistor that glows, or heat that feeds itself": (
        "critical",
        """
    bleeder-power inrush-energy snubber-dissipation thermal-runaway
    """,
    ),
    "burst: a capacitor beyond its voltage, against its polarity or beyond its temperature": (
        "critical",
        """
    blocking-capacitor-current blocking-capacitor-stress bulk-capacitor-voltage enclosure-air
    filter-capacitor-voltage series-capacitor-current
    filter-capacitor-voltage-to-ground pumping-against-capacitor reverse-polarity
    stage-capacitor-voltage
    """,
    ),
    "unguarded: a protection that is missing, or destroyed by what it is there for": (
        "critical",
        """
    inrush-current over-current-protection over-temperature-trip reverse-polarity-drain
    reverse-polarity-gate surge-current surge-standoff
    """,
    ),
    "hearing: years of the stated use": (
        "major",
        """
    hearing-exposure hearing-exposure-with-notice
    """,
    ),
    "destroyed: switches that conduct at once, or half": (
        "critical",
        """
    bootstrap-under-voltage dead-time-margin dead-time-margin-gallium-nitride gate-overdrive
    high-side-supply
    """,
    ),
    "destroyed: voltage beyond an absolute maximum": (
        "critical",
        """
    converter-input-limit device-voltage-margin device-voltage-ringing driver-slope-immunity
    gate-supply-from-rail gate-voltage-margin high-side-voltage pin-overshoot
    supply-above-part-limit surge-against-converter surge-against-stage
    """,
    ),
    "destroyed: current, pulse or steady power beyond an absolute maximum": (
        "critical",
        """
    drain-current-margin pulsed-drain-current trip-below-destruction
    """,
    ),
    "destroyed: temperature beyond an absolute maximum": (
        "critical",
        """
    burst-temperature gate-supply-regulator junction-at-rated-sine
    junction-temperature-margin reverse-polarity-junction short-circuit-heating
    stopped-fan-junction
    """,
    ),
    "destroyed: a loudspeaker beyond its travel or its voltage": (
        "critical",
        """
    excursion-destructive piezo-voltage
    """,
    ),
    "guard: set so that it cannot guard, while another check judges what it guards from": (
        "major",
        """
    dc-detector-threshold enclosure-relied-on lockout-above-plateau over-temperature-sensor
    over-temperature-trip-in-use rain-outdoors over-voltage-trip-ceiling over-voltage-trip-part
    """,
    ),
    "bound: an absolute maximum against an estimate from above, which cannot prove it": (
        "major",
        """
    bootstrap-overcharge covered-heatsink-junction miller-turn-on short-circuit-energy
    switch-node-undershoot
    """,
    ),
    "wear: beyond the rating for a printed life or rise of temperature": (
        "major",
        """
    bulk-ripple-current capacitor-life damper-power
    ferrite-bead-current filter-capacitor-heating filter-capacitor-heating-to-ground
    inductor-copper inductor-core-loss loudspeaker-power-match pack-pulse-current pack-rate
    supply-above-recommended zobel-power
    """,
    ),
}
NO_HAZARD = """
    filter-capacitor-present
    bass-response bass-response-unclaimed
    blocking-capacitor-corner blocking-capacitor-corner-unclaimed board-copper-cooling
    box-response
    bootstrap-capacitor bootstrap-diode-recovery bootstrap-hold-at-clipping bootstrap-reservoir
    bulk-ripple-at-rated-power bus-pumping capacity-at-high-rate carrier-above-hearing
    carrier-attenuation carrier-in-radio-bands carrier-residual carrier-slope-limit
    carrier-to-audio-ratio ceramic-capacitor-in-signal channel-beat charger-stated
    charging-while-playing clearance-and-creepage clipping-power common-mode-attenuation
    common-mode-resonance
    conductor-spacing cone-excursion cone-shift-by-offset cutoff-below-lockout damper-size
    charger-fills-cells dc-detector-bass dc-detector-offset dead-time-distortion dead-time-share
    dead-time-soft-switching
    discharge-in-cold driver-edge-current driver-strength edge-jitter-noise efficiency-of-class-d
    efficiency-beyond-resistance efficiency-curve
    efficiency-plausibility emission-at-30-mhz emission-class emission-standard-cited
    filter-corner filter-damping filterless-drive filterless-power fuse-current fuse-inrush
    gain-structure gate-charge-ratio gate-drive-level gate-lockout hearing-notice
    high-pass-in-band high-pass-response inductor-resistance inductor-ripple-current
    inductor-saturation
    ingress-and-vents input-capacitor-dielectric input-coupling-corner input-sensitivity
    input-stage-headroom inrush-limiter ip-code-format level-beyond-drivers
    limiter-below-rated-crest limiter-below-rated-power lithium-transport-cited local-decoupling
    loop-crossover-vs-carrier loop-phase-margin loudspeaker-lead-length loudspeaker-lead-loss
    loudspeaker-minimum-impedance loudspeaker-network low-frequency-output
    minimum-pulse-vs-modulation muting-time offset-pumping open-load-peaking output-power
    over-voltage-trip-recommended over-voltage-trip-window pack-cutoff-under-load
    pack-voltage-under-load part-bootstrap-capacitor part-least-inductance part-supply-limits
    port-air-speed port-tuning port-volume
    power-above-rail protection-trip-above-music pumping-against-trip
    radio-standard-cited rail-ripple rail-trough rated-figures-agree rated-power-basis
    residual-hiss  run-time run-time-best-case run-time-in-cold
    safety-standard-cited sampling-type-distortion self-oscillation-frequency-drop
    series-capacitor-corner shelf-time short-circuit-current-rise sink-behind-diode
    sink-of-mains-converter
    snubber-capacitor snubber-sizing source-below-rated-power source-capability source-crest
    start-against-protection stated-heat steady-dc-offset step-down-above-source
    step-up-below-source supply-below-part-limit supply-lead-drop supply-rejection surge-clamp
    sound-level-without-loudspeaker
    target-sound-level thermal-compression thermal-test-condition timer-resolution
    under-voltage-trip-window
    transport-watt-hours treble-response treble-response-loudspeaker trip-above-music
    trip-above-rated-power
    trip-against-saturation
    turn-on-pop vented-box-unloading voice-coil-zobel withdrawn-standards
    dead-time-distortion-unclaimed
    treble-response-loudspeaker-unclaimed
    treble-response-unclaimed
    bootstrap-start-up
    filter-damping-two-sections
    gate-supply-regulator-short
    line-saturation
    line-tapped-power
    line-voltage
    open-load-peaking-two-sections
    piezo-filter-peak
"""
OF_SAFETY = ("shock", "burn", "fire", "burst", "unguarded")
ROWS = {hazard: names.split() for hazard, (_, names) in HAZARDS.items()}
ROWS["no hazard"] = NO_HAZARD.split()
PLACES = [(name, hazard) for hazard, names in ROWS.items() for name in names]


def gravest(check: Check) -> Severity:
    """The gravest severity that a check can reach."""
    return next(x for x in Severity if getattr(check.limits, x.value) is not None)


def test_every_check_stands_in_one_row() -> None:
    placed = Counter(name for name, _ in PLACES)
    lines = [f"    {name}  (can reach {gravest(CHECKS[name])})" for name in CHECKS.keys() - placed]
    if lines:
        told = "add to the row of its hazard in HAZARDS, or to NO_HAZARD:"
        pytest.fail("\n".join((told, *sorted(lines))), pytrace=False)
    assert [name for name, count in placed.items() if count > 1] == []


def test_every_name_is_a_check() -> None:
    assert {name for name, _ in PLACES} <= set(CHECKS)


def test_same_hazard_same_severity() -> None:
    for name, hazard in PLACES:
        reached = gravest(CHECKS[name])
        if hazard == "no hazard":
            assert reached is not Severity.CRITICAL, f"{name} is critical: which hazard is it?"
        else:
            assert reached == HAZARDS[hazard][0], name


def test_what_hurts_burns_bursts_or_guards_is_of_safety() -> None:
    """The first word of a row decides; what has no critical limit can be permitted anyway."""
    for name, hazard in PLACES:
        kind, severity = hazard.partition(":")[0], gravest(CHECKS[name])
        if severity is Severity.CRITICAL:
            assert (CHECKS[name].stake == "safety") == (kind in OF_SAFETY), name
            assert untouchable(CHECKS[name]) or kind == "destroyed", name


def test_a_coil_on_direct_voltage_burns_at_the_same_limit_whatever_let_it() -> None:
    """Nothing detects it, something only mutes, or a rail is lost: the same heat."""
    limits = {
        CHECKS[name].limits.critical
        for name in ("dc-fault-power", "independent-disconnect", "one-rail-lost")
    }
    assert limits == {"5"}


def test_an_upper_gate_without_supply_cannot_be_permitted() -> None:
    """A switch whose gate nothing lifts above its source never turns on."""
    entry = load().entry("high-side-supply")
    assert entry is not None
    assert not entry.check.permissible
