"""The sample specs: sound designs without false alarms, faulty ones with every fault found.

The faults were planted by hand; each is marked by a comment in its file.  A row of a table
names the fault, the check that has to find it, where, and how grave it is: what an engineer
would say of it, not what the program printed.
"""

from pathlib import Path

import pytest

from ampreview.linter.check import Milestone
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import Review
from ampreview.linter.judging.unmeasured import is_to_measure

from . import reviews

FOLDER = Path(__file__).parent.parent / "sample_specs"
SOUND = ("bird-call-pocket", "choir-portable", "playhouse-subwoofer", "market-day-trolley",
         "bedside-lamp")  # fmt: skip
SISTERS = tuple(f"{name}-faulty" for name in SOUND)
BOTH = "left", "right"
HERE = "tests/test_samples.py"

Row = tuple[str, str, str | tuple[str, str], str]

# Minor findings of the sound designs, and why each is right.
JUSTIFIED = {
    ("choir-portable", "miller-turn-on"): (
        "With the lowest threshold, hot, and the largest gate-drain charge a fifth of the"
        " threshold is left: it works, and it is what to measure first on the board."
    ),
    ("choir-portable", "treble-response-loudspeaker"): (
        "The voice coil takes the load off the filter in the treble: 1.6 dB at 18 kHz. The"
        " claim of 3 dB holds; a network across the loudspeaker would halve it."
    ),
    ("choir-portable", "box-response"): (
        "The woofer in 9 L is 14 dB down at 60 Hz; the product lifts its bass ahead of the"
        " amplifier, which no field says, so the range is not shown by the spec alone."
    ),
    ("playhouse-subwoofer", "box-response"): (
        "The 90 L box and its high-pass take 17 dB at 28 Hz; a subwoofer of this size is lifted"
        " ahead of its amplifier, which no field says, so the range is not shown."
    ),
    ("playhouse-subwoofer", "dead-time-soft-switching"): (
        "On rails of 79 V half the idle ripple moves three quarters of the output charge: the"
        " rest is switched hard and heats the idle stage, which the idle loss contains."
    ),
}

# File, then: fault, check, subject, severity.  "follows" marks what a planted fault brings
# with it.
PLANTED: dict[str, tuple[Row, ...]] = {
    "bird-call-pocket-faulty": (
        ("rail set to the part's highest supply", "supply-above-recommended", BOTH, "major"),
        ("input resistor, prefix slipped", "value-outside-usual-range", "product", "major"),
        ("pack's trip below the music", "protection-trip-above-music", "product", "major"),
        ("charges frozen lithium cells", "charge-in-cold", "product", "critical"),
        ("two-level drive without a filter", "filterless-drive", BOTH, "major"),
        ("stage's trip below the music", "trip-above-music", BOTH, "major"),
        ("unfiltered lead of 350 mm", "loudspeaker-lead-length", BOTH, "major"),
        ("two loudspeakers on one channel", "loudspeaker-network", BOTH, "major"),
        ("claimed level beyond physics", "target-sound-level", "product", "major"),
        ("follows: 15 ohm at the input", "input-coupling-corner", BOTH, "major"),
        ("follows: 2 ohm at the part", "loudspeaker-minimum-impedance", BOTH, "major"),
        ("follows: high rail and 2 ohm", "pin-overshoot", BOTH, "major"),
        ("follows: claimed level", "level-beyond-drivers", "product", "major"),
    ),
    "choir-portable-faulty": (
        ("charger for other cells, 4.3 V each", "charge-voltage", "product", "critical"),
        ("switch rated 40 V on 34 V", "device-voltage-ringing", BOTH, "critical"),
        ("logic level, gate resistors swapped", "miller-turn-on", BOTH, "major"),
        ("dead time below the turn-off", "dead-time-margin", BOTH, "critical"),
        ("bootstrap not refreshed", "bootstrap-hold-at-clipping", BOTH, "major"),
        ("inductor saturates in the music", "inductor-saturation", BOTH, "major"),
        ("0.5 mm2 behind 15 A", "fuse-protects-lead", "product", "critical"),
        ("lockout above the sagging pack", "pack-voltage-under-load", "product", "major"),
        ("fuse for alternating voltage", "fuse-voltage", "product", "critical"),
        ("285 Wh as hand luggage", "transport-watt-hours", "product", "major"),
    ),
    "playhouse-subwoofer-faulty": (
        ("converter without certificate", "mains-barrier", "product", "critical"),
        ("bulk capacitors of 80 V on 81 V", "bulk-capacitor-voltage", "product", "critical"),
        ("1000 uF a rail", "pumping-against-trip", "product", "major"),
        ("offset of 350 mV", "steady-dc-offset", "sub", "major"),
        ("programme rating, no limiter", "loudspeaker-clipped-power", "sub", "critical"),
        ("trip in the music", "trip-above-music", "sub", "major"),
        ("vented box without high-pass", "vented-box-unloading", "sub", "major"),
        ("port too narrow", "port-air-speed", "sub", "major"),
        ("sink too hot to touch", "touch-temperature-heatsink", "product", "major"),
        ("no protection against direct voltage", "dc-fault-power", "sub", "critical"),
        ("over-voltage trip within tolerance", "over-voltage-trip-window", "product", "major"),
        ("follows: over-voltage trip", "over-voltage-trip-ceiling", "product", "major"),
        ("discharge resistor overloaded", "bleeder-power", "product", "critical"),
        ("follows: pumping", "pumping-against-capacitor", "product", "critical"),
        ("follows: capacitors of 80 V", "over-voltage-trip-ceiling", "product", "major"),
        ("follows: no limiter", "loudspeaker-power-match", "sub", "major"),
    ),
    "market-day-trolley-faulty": (
        ("IP54 with open vents", "ingress-and-vents", "product", "major"),
        ("module of 24 W", "source-below-rated-power", "product", "major"),
        ("clamps that can be reversed", "reverse-polarity", "product", "critical"),
        ("carrier's harmonic in the radio", "carrier-in-radio-bands", "horn", "major"),
        ("bootstrap a tenth of the asked", "part-bootstrap-capacitor", "horn", "major"),
        ("filter capacitor, prefix slipped", "value-outside-usual-range", "horn", "major"),
        ("detector only mutes", "independent-disconnect", "horn", "major"),
        ("detector takes two seconds", "dc-detector-delay", "product", "major"),
        ("glass fuse on a battery", "fuse-breaking-capacity", "product", "critical"),
        ("hawker beside the horn", "hearing-exposure", "product", "major"),
        ("claimed run time", "capacity-at-high-rate", "product", "major"),
        ("follows: claimed run time", "run-time", "product", "major"),
        ("follows: claimed run time", "run-time-best-case", "product", "major"),
        ("follows: module of 24 W", "source-capability", "product", "major"),
    ),
    "bedside-lamp-faulty": (
        ("output capacitor of 6.3 V", "blocking-capacitor-stress", "lamp", "critical"),
        ("output capacitor too small", "blocking-capacitor-corner", "lamp", "major"),
        ("output capacitor's ripple rating", "blocking-capacitor-current", "lamp", "critical"),
        ("power beyond the rail", "power-above-rail", "lamp", "major"),
        ("inductor saturates below the trip", "part-least-inductance", "lamp", "major"),
        ("input capacitor too small", "input-coupling-corner", "lamp", "major"),
        ("capacitor charges through the load", "turn-on-pop", "lamp", "major"),
        ("rail pumped by the bass", "supply-above-recommended", "lamp", "major"),
        ("filter of another load", "treble-response", "lamp", "major"),
        ("trace of 0.2 mm", "trace-current", "product", "major"),
        ("follows: trace of 0.2 mm", "fuse-protects-trace", "product", "critical"),
        ("follows: output capacitor", "bass-response", "lamp", "major"),
        ("follows: filter", "treble-response-loudspeaker", "lamp", "major"),
        ("follows: filter", "filter-damping", "lamp", "major"),
        ("follows: power", "output-power", "lamp", "major"),
        ("follows: power", "rail-trough", "lamp", "major"),
        ("follows: power", "minimum-pulse-vs-modulation", "lamp", "major"),
        ("follows: power", "input-sensitivity", "lamp", "major"),
    ),
}

FOYER: tuple[Row, ...] = (
    ("capacitors below the full pack", "bulk-capacitor-voltage", "product", "critical"),
    ("filter capacitors below it too", "filter-capacitor-voltage", BOTH, "critical"),
    ("class-2 ceramic in the filter", "ceramic-capacitor-in-signal", BOTH, "minor"),
    ("cells overloaded", "pack-current", "product", "critical"),
    ("power that the pack cannot give", "pack-collapse", "product", "critical"),
    ("pack can be reversed", "reverse-polarity", "product", "critical"),
    ("bare lithium pack", "protection-present", "product", "critical"),
    ("charges frozen cells", "charge-in-cold", "product", "critical"),
    ("charges with 1.5 C", "charge-current", "product", "major"),
    ("senses the board, not the cells", "charge-temperature-sensor", "product", "minor"),
    ("plays from cells that charge", "charging-while-playing", "product", "major"),
    ("power beyond the rail", "power-above-rail", BOTH, "major"),
    ("switch of 30 V on 29.4 V", "device-voltage-margin", BOTH, "major"),
    ("12 V on a gate of 12 V", "gate-voltage-margin", BOTH, "major"),
    ("dead time below the turn-off", "dead-time-margin", BOTH, "critical"),
    ("gate lifted through 4.7 ohm", "miller-turn-on", BOTH, "major"),
    ("bootstrap not refreshed", "bootstrap-hold-at-clipping", BOTH, "major"),
    ("carrier close to the band", "carrier-to-audio-ratio", BOTH, "major"),
    ("inductor, prefix slipped", "value-outside-usual-range", BOTH, "major"),
    ("corner that does not follow", "stated-value-contradicts", BOTH, "major"),
    ("trip far above saturation", "trip-against-saturation", BOTH, "minor"),
    ("lead carries 24 A", "supply-lead-current", "product", "critical"),
    ("fuse does not guard the lead", "fuse-protects-lead", "product", "critical"),
    ("fuse of 20 V", "fuse-voltage", "product", "critical"),
    ("fuse breaks 35 A", "fuse-breaking-capacity", "product", "critical"),
    ("no protection against direct voltage", "dc-fault-power", BOTH, "critical"),
    ("lockout above the loaded pack", "pack-voltage-under-load", "product", "major"),
    ("nothing holds a fire in", "fire-power-class", "product", "major"),
    ("efficiency beyond physics", "efficiency-beyond-resistance", "product", "major"),
    ("efficiency beyond the known losses", "efficiency-plausibility", "product", "major"),
    ("run time beyond the pack", "run-time", "product", "major"),
    ("run time beyond the energy of the pack", "run-time-best-case", "product", "major"),
    ("level beyond the amplifier", "target-sound-level", "product", "major"),
    ("level beyond the loudspeakers", "level-beyond-drivers", "product", "major"),
    ("withdrawn standard", "withdrawn-standards", "product", "minor"),
)  # fmt: skip

ROWS = [
    pytest.param(name, row, id=f"{name}: {row[0]}")
    for name, rows in {**PLANTED, "foyer-proposal": FOYER}.items()
    for row in rows
]


def reviewed(name: str, milestone: Milestone | None = None) -> Review:
    return reviews.reviewed(FOLDER / f"{name}.amp.yaml", milestone)


def found(name: str, check: str, subject: str) -> Finding | None:
    for item in reviewed(name).failing():
        if (item.check, item.subject) == (check, subject):
            return item
    return None


def subjects(row: Row) -> tuple[str, ...]:
    return (row[2],) if isinstance(row[2], str) else row[2]


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_every_planted_fault_is_found(name: str, row: Row) -> None:
    for subject in subjects(row):
        item = found(name, row[1], subject)
        assert item is not None, f"{row[1]} found nothing on {subject}"
        assert item.severity == Severity(row[3]), item.message


@pytest.mark.parametrize("name", SISTERS)
def test_nothing_grave_is_said_that_was_not_planted(name: str) -> None:
    graver = {Severity.CRITICAL, Severity.MAJOR}
    said = {(x.check, x.subject): x for x in reviewed(name).failing() if x.severity in graver}
    planted = {(row[1], subject) for row in PLANTED[name] for subject in subjects(row)}
    lines = [
        f'("follows: ...", "{check}", "{subject}", "{item.severity}"),  # {item.message}'
        for (check, subject), item in said.items()
        if (check, subject) not in planted
    ]
    if lines:
        told = f"a false alarm (mend the rule), or to be added to PLANTED[{name!r}] in {HERE}:"
        pytest.fail("\n".join((told, *lines)), pytrace=False)


def test_planted_faults_reach_over_all_domains() -> None:
    checks = {row[1] for rows in PLANTED.values() for row in rows if "follows" not in row[0]}
    assert len(checks) >= 30
    domains = {x.domain for name in SISTERS for x in reviewed(name).failing() if x.check in checks}
    assert len(domains) >= 10, sorted(domains)


@pytest.mark.parametrize("name", [*SISTERS, "foyer-proposal"])
def test_faulty_designs_are_held(name: str) -> None:
    assert not reviewed(name).verdict.released


@pytest.mark.parametrize("name", SISTERS)
def test_planted_faults_are_marked_in_the_file(name: str) -> None:
    planted = [row for row in PLANTED[name] if "follows" not in row[0]]
    header, _, body = (FOLDER / f"{name}.amp.yaml").read_text(encoding="utf-8").partition("title:")
    own = (FOLDER / f"{name.removesuffix('-faulty')}.amp.yaml").read_text(encoding="utf-8")
    changed = [line for line in body.splitlines() if line not in own.splitlines()]
    assert sum("#" in line for line in changed) + 3 >= len(planted) >= 6
    assert "Faulty on purpose" in header


@pytest.mark.parametrize("name", [*SOUND, *SISTERS, "foyer-proposal", "classroom-sketch"])
def test_samples_say_that_they_are_invented(name: str) -> None:
    assert "# Invented demo data" in (FOLDER / f"{name}.amp.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", SOUND)
def test_sound_designs_are_released_without_false_alarm(name: str) -> None:
    result = reviewed(name, "prototype")
    lines = [
        f'("{name}", "{item.check}"): "...",  # {item.severity}: {item.message}'
        for item in {item.check: item for item in result.failing()}.values()
        if item.severity is not Severity.MINOR or (name, item.check) not in JUSTIFIED
    ]
    if lines:
        told = (
            f"a false alarm (mend the rule), or, if minor and right, a line of JUSTIFIED in {HERE}:"
        )
        pytest.fail("\n".join((told, *lines)), pytrace=False)
    assert result.verdict.released


@pytest.mark.parametrize("name", SOUND)
def test_sound_designs_leave_nothing_open(name: str) -> None:
    lines = [
        f"{item.check} ({item.subject}): {', '.join(gap.path for gap in item.advice.missing)}"
        for item in reviewed(name, "prototype").of_status(Status.OPEN)
    ]
    if lines:
        told = f"state what is missing in sample_specs/{name}.amp.yaml and its faulty sister:"
        pytest.fail("\n".join((told, *lines)), pytrace=False)


@pytest.mark.parametrize(("name", "check"), JUSTIFIED)
def test_every_justification_is_of_a_finding(name: str, check: str) -> None:
    gone = f"{name} has no finding {check}: take its line out of JUSTIFIED in {HERE}"
    assert check in {item.check for item in reviewed(name, "prototype").failing()}, gone


@pytest.mark.parametrize("name", SOUND)
def test_sound_designs_at_production_only_lack_texts_of_standards_and_readings(name: str) -> None:
    """What holds them besides readings: safety limits to look up, and no small print."""
    holding = reviewed(name, "production").verdict.holding
    unread = [item for item in holding if is_to_measure(item)]
    assert 4 <= len(unread) <= 8, "power, idle loss, heat, and the trips that it has"
    looked_up = [item for item in holding if item not in unread]
    assert 0 < len(looked_up) <= 15
    for item in looked_up:
        told = f"{item.check} holds at production: {item.message}"
        assert item.status is Status.OPEN, told
        assert item.stake == "safety", told
        assert "not verified against the standard" in item.message, told


def test_the_foyer_is_asked_what_its_loudspeakers_must_bear() -> None:
    """Three times the rating is a remark; more of the circuit known, it may be a hazard."""
    for subject in BOTH:
        asked = next(
            item
            for item in reviewed("foyer-proposal").of_status(Status.OPEN)
            if (item.check, item.subject) == ("loudspeaker-clipped-power", subject)
        )
        assert asked in reviewed("foyer-proposal").verdict.holding


def test_the_sketch_is_released_and_asks() -> None:
    result = reviewed("classroom-sketch")
    assert result.verdict.released
    assert not result.failing()
    asked = {gap.path for item in result.of_status(Status.OPEN) for gap in item.advice.missing}
    for path in (
        "channels.main.filter.c_across.v_rated",
        "channels.main.filter.inductor.i_sat",
        "channels.main.output_stage.device.r_ds_on",
    ):
        assert path in asked
    nothing_touched = ("battery.", "claims.", "safety.", "protection.", "wiring.", "environment.")
    assert not [path for path in asked if path.startswith(nothing_touched)]
