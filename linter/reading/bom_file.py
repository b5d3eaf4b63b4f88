"""A bill of materials in a table (CSV): its rows by reference designator.

Encoding, delimiter and the row of heads are found; the columns by the names that the trade
uses (common practice, no source), or as the user names them.
"""

import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from ..finding import Place
from .designators import designators
from .plain_text import MAX_BYTES, content_of
from .refusal import Refusal, shown

KIND = "a bill of materials as CSV"
DELIMITERS = ",;\t|"
MOST_HEADS = 40
MOST_SIGNS = 1000
MOST_NAMES = 100_000
COLUMNS: Mapping[str, tuple[str, ...]] = {
    "reference": (
        "reference",
        "references",
        "ref",
        "refs",
        "refdes",
        "designator",
        "designators",
        "referencedesignator",
        "referencedesignators",
        "partreference",
        "referenz",
    ),
    "value": ("value", "val", "values", "nominalvalue", "wert", "comment"),
    "tolerance": ("tolerance", "tol", "toleranz"),
    "voltage": ("voltage", "voltagerating", "ratedvoltage", "vrated", "volts", "workingvoltage"),
    "power": ("power", "powerrating", "ratedpower", "wattage", "watts"),
    "rating": ("rating", "ratings"),
    "description": ("description", "desc", "beschreibung"),
    "quantity": ("quantity", "qty", "qnty", "quantityperpcb", "count", "amount", "menge", "anzahl"),
    "left out": ("dnp", "dni", "dnf", "donotpopulate", "donotplace", "donotfit", "notfitted"),
    "fitted": ("fitted", "populate", "populated", "mounted", "placed", "fit"),
}
_NO = ("0", "no", "n", "false", "-")
_PLACED = ("", "fitted", "populate", *_NO)
_NOT_FITTED = re.compile(
    r"(?i)\s*(nf|n\.?m\.?)\b"  # at the start alone: 100 nF is a value
    r"|.*\b(dnp|dni|dnf|no[- ]?pop|(do )?not[- ](fit|populate|place|mount|install)(ted|d|ed)?)\b",
    re.DOTALL,
)
_SAYING = ("value", "description", "rating")
_BYTE_ORDERS = ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))


@dataclass(frozen=True, slots=True)
class BomRow:
    """A row: its line in the file, its designators, its cells by column."""

    line: int
    names: tuple[str, ...]
    cells: Mapping[str, str]

    @property
    def fitted(self) -> bool:
        """Whether its parts are placed on the board."""
        left_out = self.cells.get("left out", "").strip().lower() not in _PLACED
        placed = self.cells.get("fitted", "yes").strip().lower() not in _NO
        said = any(_NOT_FITTED.match(self.cells.get(column, "")) for column in _SAYING)
        return placed and not left_out and not said


@dataclass(frozen=True, slots=True)
class Bom:
    """The rows of a table, and the columns that were found in it by their heads.

    unread: what stands among the designators and is none, with its line.
    """

    file: str
    text: str
    columns: Mapping[str, str]
    rows: tuple[BomRow, ...]
    unread: tuple[tuple[int, str], ...] = ()

    def by_name(self) -> Mapping[str, tuple[BomRow, ...]]:
        """The rows of each designator, fitted or not."""
        found: dict[str, list[BomRow]] = {}
        for row in self.rows:
            for name in dict.fromkeys(row.names):
                found.setdefault(name, []).append(row)
        return {name: tuple(rows) for name, rows in found.items()}


@dataclass(frozen=True, slots=True)
class Layout:
    """What the user says of the table; empty where it is to be found."""

    delimiter: str = ""
    encoding: str = ""
    columns: Mapping[str, str] = field(default_factory=dict)


def read_bom(path: Path, layout: Layout) -> Bom | Refusal:
    """Read a bill of materials, or say why it is none."""
    content = content_of(path, KIND)
    if isinstance(content, Refusal):
        return content
    place = Place(str(path), 1, 1)
    if len(content) > MAX_BYTES:
        return Refusal(place, f"the file is larger than {MAX_BYTES // 1000} kB", KIND)
    try:
        text = decoded(content, layout.encoding)
    except (UnicodeError, LookupError) as error:
        return Refusal(place, f"the text cannot be read: {error}", "--encoding utf-8, cp1252, ...")
    return bom_of(text, str(path), layout)


def decoded(content: bytes, encoding: str = "") -> str:
    """The text of a table: UTF-8, UTF-16 by its mark, else the code page of the west."""
    if encoding:
        return content.decode(encoding)
    for mark, name in _BYTE_ORDERS:
        if content.startswith(mark):
            return content.decode(name)
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252")


def bom_of(text: str, file: str, layout: Layout) -> Bom | Refusal:
    """The bill of materials in a text."""
    for delimiter in layout.delimiter or DELIMITERS:
        try:
            lines = list(_lines(text, delimiter))
        except csv.Error as error:
            return Refusal(Place(file, 1, 1), f"the table cannot be read: {error}", KIND)
        for number, (_, cells) in enumerate(lines[:MOST_HEADS]):
            found = _columns(cells, layout.columns)
            if "reference" in found and len(cells) > 1:
                return _table(text, file, lines[number:], found)
    wanted = layout.columns.get("reference")
    expected = f"a column {shown(wanted)}" if wanted else "a column such as Reference or Designator"
    problem = "no row of heads names the column of the reference designators"
    return Refusal(Place(file, 1, 1), problem, f"{expected}, or --reference NAME")


def _table(
    text: str, file: str, lines: list[tuple[int, list[str]]], columns: Mapping[str, int]
) -> Bom | Refusal:
    """The table below a row of heads, unless it is larger than any board."""
    heads = {column: lines[0][1][at].strip() for column, at in columns.items()}
    rows: list[BomRow] = []
    unread: list[tuple[int, str]] = []
    count = 0
    for line, row in lines[1:]:
        cells = {name: row[at].strip() for name, at in columns.items() if at < len(row)}
        long = next((x for x, cell in cells.items() if len(cell) > _most_signs(x)), None)
        if long:
            problem = f"the {long} has {len(cells[long])} characters"
            return Refusal(Place(file, line, 1), problem, f"{_most_signs(long)} at most")
        names, strange = _names(cells.get("reference", ""))
        unread += [(line, piece) for piece in strange]
        count += len(names)
        if count > MOST_NAMES:
            problem = f"more than {MOST_NAMES} reference designators"
            return Refusal(Place(file, line, 1), problem, "those of one board")
        if names:
            rows.append(BomRow(line, names, cells))
    return Bom(file, text, heads, tuple(rows), tuple(unread))


def _most_signs(column: str) -> int:
    """The longest cell of a column: a list of designators may be long."""
    return 10 * MOST_SIGNS if column == "reference" else MOST_SIGNS


def _lines(text: str, delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """The rows with the number of the line in which each begins."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, skipinitialspace=True)
    before = 0
    for cells in reader:
        yield before + 1, cells
        before = reader.line_num


def _columns(cells: list[str], named: Mapping[str, str]) -> dict[str, int]:
    """The columns in a row of heads: those that are named, then those of usual names."""
    heads = [_spelled(cell) for cell in cells]
    found: dict[str, int] = {}
    for column, usual in COLUMNS.items():
        names = (_spelled(named[column]),) if named.get(column) else usual
        at = next((heads.index(name) for name in names if name in heads), None)
        if at is not None:
            found[column] = at
    missing = [column for column, name in named.items() if name and column not in found]
    return {} if missing else found


def _spelled(head: str) -> str:
    """A head without capitals, blanks and what stands in brackets: ``Voltage (V)``.

    >>> _spelled("Voltage (V)"), _spelled("Ref. Des.")
    ('voltage', 'refdes')
    """
    return re.sub(r"[^a-z0-9]", "", re.sub(r"[(\[].*", "", head.casefold()))


def _names(text: str) -> tuple[tuple[str, ...], list[str]]:
    """The designators of a cell, whatever stands between them, and what is none."""
    spaced = re.sub(r"\s*(-|–|\.\.+)\s*", r"\1", text)
    names: list[str] = []
    strange = []
    for piece in (item for item in re.split(r"[\s,;]+", spaced) if item):
        groups = designators(piece)
        names += [name for group in groups or () for name in group]
        strange += [] if groups else [piece]
    return tuple(names), strange
