"""A bill of materials against a spec: what is missing, what differs, what could not be compared.

A part of the table agrees where its value is the spec's, its tolerance no wider and its ratings
no lower.  What the table does not hold is counted, never taken as agreement.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from ..declare import Borne, Field, field_path, local_path
from ..finding import Place
from ..quantities.board_value import board_value, number, tolerance_of
from ..quantities.quantity import Value, show
from ..reading.bom_file import Bom, BomRow
from ..reading.loading import Spec
from ..reading.unfold import Reference

Kind = Literal["missing", "different", "not readable", "twice", "quantity"]
SAME = 1e-3
COMPARABLE = ("F", "H", "ohm", "A")
COLUMN_OF = {"V": "voltage", "W": "power"}


@dataclass(frozen=True, slots=True)
class BomFinding:
    """One disagreement: of which parts, what it is, and both places.

    place: in the spec, None where only the table is at fault; lines: of the table.
    """

    kind: Kind
    names: tuple[str, ...]
    message: str
    place: Place | None
    lines: tuple[int, ...]


@dataclass(slots=True)
class BomComparison:
    """The outcome: findings, how many values agree, what the table does not tell.

    rows: those of each designator, fitted or not.
    """

    bom: Bom
    spec: Spec
    rows: Mapping[str, tuple[BomRow, ...]]
    findings: list[BomFinding] = field(default_factory=list)
    named: int = 0
    agreed: set[tuple[str, str]] = field(default_factory=set)
    untold: dict[str, set[str]] = field(default_factory=dict)
    extra: tuple[str, ...] = ()

    def agrees(self, name: str, rows: list[BomRow]) -> None:
        """Note that a value agrees, once for each row."""
        self.agreed.update((name, str(row.line)) for row in rows)

    def tells_not(self, what: str, group: Iterable[str]) -> None:
        """Note what the table does not tell of some parts."""
        self.untold.setdefault(what, set()).update(group)


def compare_bom(spec: Spec, bom: Bom) -> BomComparison:
    """Compare every part that the spec names with its row."""
    found = BomComparison(bom, spec, bom.by_name())
    seen: set[str] = set()
    for reference in spec.references:
        for group in reference.groups:
            seen.update(group)
            _compare(found, reference, group)
    found.named = len(seen)
    found.findings = [*_joined(found.findings), *_faults(bom)]
    placed = dict.fromkeys(name for row in bom.rows if row.fitted for name in row.names)
    found.extra = tuple(name for name in placed if name not in seen)
    return found


def _joined(findings: list[BomFinding]) -> Iterator[BomFinding]:
    """The same disagreement of several parts told once."""
    alike: dict[tuple[object, ...], list[BomFinding]] = {}
    for item in findings:
        at = (item.place.file, item.place.line) if item.place else ()
        alike.setdefault((item.kind, item.message, at, item.lines), []).append(item)
    for items in alike.values():
        names = tuple(dict.fromkeys(name for item in items for name in item.names))
        yield replace(items[0], names=names)


def _compare(found: BomComparison, reference: Reference, group: tuple[str, ...]) -> None:
    rows = {name: [x for x in found.rows.get(name, ()) if x.fitted] for name in group}
    absent = tuple(name for name, of_name in rows.items() if not of_name)
    part = local_path(reference.section)
    if absent:
        left_out = [row for name in absent for row in found.rows.get(name, ())]
        lines = tuple(sorted({row.line for row in left_out}))
        told = "listed as not fitted" if left_out else "not listed"
        message = f"part of {part}, {told}"
        found.findings.append(BomFinding("missing", absent, message, reference.place, lines))
        return
    borne = _borne(found.spec, reference, group)
    if borne is None:
        found.tells_not("no value goes with the letter of these", group)
        return
    rows_of = [of_name[0] for of_name in rows.values()]
    for message, kind, path in _differences(found, reference, borne, rows_of):
        place = found.spec.place(path) or reference.place
        lines = tuple(dict.fromkeys(row.line for row in rows_of))
        found.findings.append(BomFinding(kind, group, message, place, lines))


def _borne(spec: Spec, reference: Reference, group: tuple[str, ...]) -> Borne | None:
    """The fields that tell of a group: those named, or those of its class letter."""
    letters = {_letter(name) for name in group}
    letter = letters.pop() if len(letters) == 1 else ""
    usual = spec.schema.borne.get(letter)
    if reference.value and not (usual and usual.value == reference.value):
        usual = spec.schema.borne.get(reference.value, Borne(reference.value))
    if usual is None or _field(spec, reference.section, usual.value) is None:
        return None
    return usual


def _letter(name: str) -> str:
    """The class letters of a designator.

    >>> _letter("C12"), _letter("FB3A")
    ('C', 'FB')
    """
    return name[: next(n for n, sign in enumerate(name) if sign.isdigit())]


def _field(spec: Spec, section: str, name: str) -> Field | None:
    return spec.schema.fields.get(f"{field_path(section)}.{name}")


Difference = tuple[str, Kind, str]


def _differences(
    found: BomComparison, reference: Reference, borne: Borne, rows: list[BomRow]
) -> Iterator[Difference]:
    """What differs between the stated values of a group and its rows."""
    spec, names = found.spec, [name for row in rows for name in row.names]
    path = f"{reference.section}.{borne.value}"
    known = _field(spec, reference.section, borne.value)
    assert known is not None
    stated = spec.values.get(path)
    if known.unit not in COMPARABLE:
        found.tells_not("no value to compare", names)
    elif not isinstance(stated, Value):
        found.tells_not("value not stated in the spec", names)
    else:
        yield from _value(found, reference, (path, stated, known.unit), rows)
        yield from _tolerance(found, path, stated, known.unit, rows)
    for unit, name in borne.ratings.items():
        rated = spec.values.get(f"{reference.section}.{name}")
        if isinstance(rated, Value):
            yield from _rating(
                found, f"{reference.section}.{name}", (rated, unit, known.unit), rows
            )


def _value(
    found: BomComparison, reference: Reference, asked: tuple[str, Value, str], rows: list[BomRow]
) -> Iterator[Difference]:
    """The value of a group: of several parts together the sum."""
    path, stated, unit = asked
    if "value" not in found.bom.columns:
        found.tells_not("no column of values", (x for row in rows for x in row.names))
        return
    texts = [row.cells.get("value", "") for row in rows]
    values = [x for x in (board_value(text, unit).value for text in texts) if x is not None]
    told = " + ".join(text or "nothing" for text in texts)
    if len(values) < len(rows):
        message = f"{local_path(path)} {stated.text}; {told} is not clearly a value"
        yield message, "not readable", path
        return
    total, wide = sum(values), stated.form == "range"
    low, high = (stated.lo, stated.hi) if wide else (stated.nominal, stated.nominal)
    if low * (1 - SAME) <= total <= high * (1 + SAME):
        found.agrees(path, rows)
        return
    message = f"{local_path(path)} {stated.text} in the spec, {told} in the table"
    yield message + _shared(reference, total, low), "different", path


def _shared(reference: Reference, one: float, all_of_them: float) -> str:
    """A hint where the parts of a list would together bear what each is said to bear."""
    number = round(all_of_them / one) if one else 0
    if 2 <= number <= len(reference.groups) and abs(number * one / all_of_them - 1) < SAME:
        first = " + ".join(name for group in reference.groups[:number] for name in group)
        return f"; if {number} of them share it, the spec says {first}"
    return ""


def _tolerance(
    found: BomComparison, path: str, stated: Value, unit: str, rows: list[BomRow]
) -> Iterator[Difference]:
    """A tolerance wider than that of the spec: the review was made with less."""
    if stated.form != "tolerance" or stated.nominal == 0.0:
        return
    mine = max(stated.hi / stated.nominal - 1, 1 - stated.lo / stated.nominal)
    for row in _once(rows):
        cell = tolerance_of(row.cells.get("tolerance", ""))
        share = cell if cell is not None else _told_beside(row, unit)
        if share is None:
            found.tells_not("tolerance not in the table", row.names)
        elif share > mine * (1 + SAME):
            theirs = f"± {share * 100:g} %"
            yield (
                f"{local_path(path)} {stated.text} in the spec, {theirs} in the table",
                "different",
                path,
            )
        else:
            found.agrees(path, [row])


def _told_beside(row: BomRow, unit: str) -> float | None:
    """The tolerance that stands in another cell."""
    cells = (row.cells.get(name, "") for name in ("value", "rating", "description"))
    found = (board_value(text, unit).tolerance for text in cells)
    return next((share for share in found if share is not None), None)


def _rating(
    found: BomComparison, path: str, asked: tuple[Value, str, str], rows: list[BomRow]
) -> Iterator[Difference]:
    """A rating lower than that of the spec."""
    stated, unit, of_value = asked
    for row in _once(rows):
        cell = number(row.cells.get(COLUMN_OF[unit], ""), unit, bare=True)
        others = (row.cells.get(name, "") for name in ("value", "rating", "description"))
        beside = (board_value(text, of_value).ratings.get(unit) for text in others)
        rated = cell if cell is not None else next((x for x in beside if x is not None), None)
        if rated is None:
            found.tells_not(f"{COLUMN_OF[unit]} rating not in the table", row.names)
        elif rated < stated.nominal * (1 - SAME):
            theirs = show(rated, unit)
            yield (
                f"{local_path(path)} {stated.text} in the spec, {theirs} in the table",
                "different",
                path,
            )
        else:
            found.agrees(path, [row])


def _once(rows: Iterable[BomRow]) -> list[BomRow]:
    """Each row once, however many of its parts are in a group."""
    return list({row.line: row for row in rows}.values())


def _faults(bom: Bom) -> Iterator[BomFinding]:
    """What is wrong in the table alone: quantities, and designators that occur twice."""
    lines: dict[str, list[int]] = {}
    for row in (item for item in bom.rows if item.fitted):
        for name in row.names:
            lines.setdefault(name, []).append(row.line)
        counted = number(row.cells.get("quantity", ""), "1", bare=True)
        if counted is not None and counted != len(row.names):
            message = f"quantity {counted:g}, but {len(row.names)} designators"
            yield BomFinding("quantity", row.names, message, None, (row.line,))
    for name, where in lines.items():
        if len(where) > 1:
            message = f"{name} is listed {len(where)} times"
            yield BomFinding("twice", (name,), message, None, tuple(where))
