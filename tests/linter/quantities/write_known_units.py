"""Writes ``known_units.csv``: what pint says of the usual spellings of units.

    python tests/linter/quantities/write_known_units.py

Usual is every symbol with every prefix, the areas and volumes, and every unit of a field or
in a rule with other prefixes of one of its symbols.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import ampreview.linter.quantities
from ampreview.linter.check import Constant
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.quantities.units import by_pint, known_symbols, unit_of

TABLE = Path(ampreview.linter.quantities.__path__[0]) / "known_units.csv"
LENGTHS = ("um", "mm", "cm", "m")
PREFIXES = ("", "p", "n", "u", "m", "k", "M", "G")
SYMBOL = re.compile(r"[A-Za-z]+")
WORDS = ("", "1", "%", "dB", "degC", "V/V", "word", "set")


def table() -> str:
    """The text of the file."""
    names = {unit_of(text).name: None for text in sorted(usual_texts())}
    rows = ((name, *by_pint(name)) for name in sorted(names) if name != "dimensionless")
    lines = (f"{name},{factor},{dimension}" for name, factor, dimension in rows)
    return "\n".join(["name,factor,dimension", *lines, ""])


def usual_texts() -> set[str]:
    """The unit texts whose factor and dimension are kept."""
    texts = set(known_symbols())
    texts |= {f"{length}{power}" for length in LENGTHS for power in (2, 3)}
    for text in set(_units()).difference(WORDS):
        texts |= set(_prefixed(text))
    return texts.difference(WORDS)


def _units() -> Iterator[str]:
    """Those of the fields, of the derived quantities and of the constants in the rules."""
    catalogue = load()
    checks = [entry.check for entry in catalogue.entries]
    ways = [way for quantity in catalogue.derived.values() for way in quantity.ways]
    for field in catalogue.schema.fields.values():
        yield field.unit
    for quantity in catalogue.derived.values():
        yield quantity.unit
    for owner in (*checks, *ways):
        for item in owner.inputs.values():
            if isinstance(item, Constant):
                yield item.value.partition(" ")[2]


def _prefixed(text: str) -> Iterator[str]:
    """A compound unit as it is, and with other prefixes of one of its symbols."""
    yield text
    for found in SYMBOL.finditer(text):
        bare = found[0] if len(found[0]) == 1 else found[0].lstrip("pnumkMG")
        for other in (prefix + bare for prefix in PREFIXES):
            if other in known_symbols():
                yield text[: found.start()] + other + text[found.end() :]


if __name__ == "__main__":
    TABLE.write_text(table(), encoding="utf-8", newline="\n")
