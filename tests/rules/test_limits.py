"""The limits of all checks, written down a second time: a change must be a conscious one.

A changed limit changes people's verdicts.  ``limits.csv`` holds every threshold with the
text that it was taken from; whoever changes a limit changes it in both places and looks
the source up again.  The table cannot tell whether a limit is right.  Where a limit follows
from a published number by a line of arithmetic, that line is worked out here.
"""

import csv
import io
from pathlib import Path

import pytest

from ampreview.linter.check import AtLeast, Limits
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.quantities.quantity import to_si

with Path(__file__).with_name("limits.csv").open(newline="") as file:
    ROWS = {row["check"]: row for row in csv.DictReader(file)}
SEVERITIES = ("critical", "major", "minor")
CATALOGUE = load()


def limits(name: str) -> Limits:
    """The limits of a check."""
    entry = CATALOGUE.entry(name)
    assert entry is not None, f"{name} is no check"
    return entry.check.limits


def row_of(name: str) -> dict[str, str]:
    """The row that a check's own file asks for; of the sources the title and the place."""
    found = limits(name)
    sources = {f"{x.title}, {x.where}" if x.where else x.title: 1 for x in found.basis.values()}
    row = {"check": name, "figure": "at least" if isinstance(found, AtLeast) else "at most"}
    row |= {severity: getattr(found, severity) or "" for severity in SEVERITIES}
    return row | {"source": " / ".join(sources)}


def line(row: dict[str, str]) -> str:
    """A row as it stands in the file."""
    text = io.StringIO()
    csv.writer(text, lineterminator="").writerow(row.values())
    return text.getvalue()


def test_limits_stand_in_the_table() -> None:
    missing = [line(row_of(x.name)) for x in CATALOGUE.entries if x.name not in ROWS]
    if missing:
        told = "look the sources up, then add to tests/rules/limits.csv"
        pytest.fail("\n".join((told, *missing)), pytrace=False)
    for entry in CATALOGUE.entries:
        stands_in_the_table(entry.name)


def stands_in_the_table(name: str) -> None:
    due, row = row_of(name), ROWS[name]
    if any(due[key] != row[key] for key in ("figure", *SEVERITIES)):
        due["source"] = row["source"]
        pytest.fail(
            f"a limit changed: look the source up, then in tests/rules/limits.csv replace\n"
            f"{line(row)}\nby\n{line(due)}\nand tell it in README.md, Limits changed",
            pytrace=False,
        )
    assert len(row["source"]) >= 8, f"tests/rules/limits.csv, {name}: say where its limits are from"


def test_every_row_is_of_a_check() -> None:
    gone = [name for name in ROWS if CATALOGUE.entry(name) is None]
    assert gone == [], "no checks: take their lines out of tests/rules/limits.csv"


# check, severity, the published number (in SI) and the arithmetic
FOLLOWS = [
    ("charge-voltage", "critical", (4.20 + 0.05) / 4.20),  # 4.20 V, 50 mV of tolerance
    ("charge-in-cold", "critical", 0.0),  # SLUSD89B: none below 0 degC
    ("charge-in-heat", "major", 0.0),  # SLUSD89B: full charge ends at 45
    ("cell-charge-voltage", "critical", (4.20 + 0.05) / 4.20),
    ("mains-barrier", "critical", 0.5),  # half a point: class 2, IEC 62368-1, table 4
    ("transport-watt-hours", "minor", 100.0 * 3600),
    ("transport-watt-hours", "major", 160.0 * 3600),
    ("run-time", "minor", 1 / 0.8),  # end of life at 80 % of the capacity
    ("loudspeaker-power-match", "minor", 10 ** (3.0103 / 10)),  # programme 3 dB above noise
    ("loudspeaker-power-match", "major", 10 ** (6.0206 / 10)),  # peak 6 dB above noise
    ("loudspeaker-clipped-power", "major", 4.0),
    ("loudspeaker-clipped-power", "critical", 4.0 * 1.25),  # clipped at twice, rail high
    ("port-air-speed", "minor", 0.05 * 343.0),
    ("port-air-speed", "major", 0.10 * 343.0),
    ("zobel-power", "major", 8.0),  # an eighth of the power is normal operation
    ("blocking-capacitor-current", "major", 8**0.5),
    ("series-capacitor-current", "major", 8**0.5),
    ("fuse-current", "major", 1 / 0.75),  # 75 % of the rating at 25 degC
    ("fuse-inrush", "minor", 0.22),  # Littelfuse: 100 000 pulses at 22 % of the melting I2t
    ("fuse-inrush", "major", 0.29),  # Littelfuse: 10 000 pulses at 29 %
    ("fuse-protects-lead", "major", 1.45),  # IEC 60364-4-43, 433.1
    ("fuse-protects-lead", "critical", 2.1),  # IEC 60127-2
    ("connector-current", "critical", 1 / 0.8),  # IEC 60512-5-2: 0.8 of the base curve
    ("device-voltage-margin", "minor", 0.80),  # Renesas: within 80 % of the rating
    ("dead-time-margin", "major", 10e-9),  # IRS20124S, p. 20
    ("steady-dc-offset", "major", 0.2),  # diyclassd.com: above 200 mV may pump
    ("hearing-notice", "minor", 85.0),  # 2003/10/EC, article 3
    ("hearing-exposure", "major", 0.0),  # NIOSH 98-126: the allowed time is used up
    ("level-beyond-drivers", "minor", -3.1),  # 2 times: 3.01 dB, rounded up
    ("level-beyond-drivers", "major", -6.1),  # 4 times: 6.02 dB, rounded up
    ("stored-voltage-accessible", "critical", 60.0),  # IEC 62368-1, table 4
    ("stored-voltage-service", "major", 120.0),  # IEC 62368-1, table 4
    ("unprotected-source-power", "critical", 100.0),  # IEC 62368-1, 6.2.2
    ("fire-power-class", "major", 100.0),
    ("junction-temperature-margin", "minor", 40.0),  # ECSS-Q-ST-30-11C
    ("junction-temperature-margin", "major", 25.0),  # MIL-HDBK-338B, level III
    ("enclosure-air", "minor", 20.0),  # aluminium electrolytics: maximum less 20 K
    ("loudspeaker-lead-loss", "minor", 0.05),  # 5 % of the lowest rated load
]


@pytest.mark.parametrize(("name", "severity", "expected"), FOLLOWS)
def test_limit_follows_from_a_published_number(name: str, severity: str, expected: float) -> None:
    text = getattr(limits(name), severity)
    entry = CATALOGUE.entry(name)
    assert entry is not None
    assert to_si(text, entry.check.unit) == pytest.approx(expected, rel=0.01, abs=1e-6)
