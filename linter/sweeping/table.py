"""The table of a sweep: a row for each variant, as CSV, JSON Lines or Parquet.

Rows are written in their order as they come, so that a sweep that was stopped goes on from its
file: whole rows of the same sweep are kept, half a row at the end is cut off.
"""

import csv
import io
import json
import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Literal, TextIO

from ..batch.result import Margin, Result
from ..quantities.quantity import from_si
from ..reading.writing import WritingError, refuse_target, taking_its_place
from .axis import Axis
from .grid import Combination
from .place import SweepError

Kind = Literal["csv", "json-lines", "parquet"]
Cell = str | float | int | None
Row = dict[str, Cell]

COUNTS = ("critical", "major", "minor", "open")
VERDICTS = ("released", "held", "not assessed")
SEPARATOR = "; "
NEEDS_PYARROW = (
    "Parquet is written with pyarrow, which is not installed;"
    " install it with: pip install 'ampreview[parquet]'"
)


def row_of(
    combination: Combination,
    result: Result,
    axes: Sequence[Axis],
    units: Mapping[str, str],
    mark: str,
) -> Row:
    """The row of a variant; units: of the checks whose margins are wanted."""
    row: Row = {"variant": result.number + 1}
    for axis, choice in zip(axes, combination.choices, strict=True):
        row[axis.title] = choice.shown if choice.number is None else float(choice.shown)
    row["verdict"] = result.verdict
    row |= {name: result.counts.get(name) for name in COUNTS}
    row["held by"] = SEPARATOR.join(result.holding)
    for check, unit in units.items():
        row |= _margin_cells(check, unit, [x for x in result.margins if x.check == check])
    row["problem"] = SEPARATOR.join(result.problems)
    row["sweep"] = mark
    return row


def _margin_cells(check: str, unit: str, found: Iterable[Margin]) -> Row:
    """Figure, limit and margin where the margin is least of all channels."""
    known = [item for item in found if item.distance is not None]
    least = min(known, key=lambda item: item.distance or 0.0, default=None)
    head = f" [{unit}]" if unit != "1" else ""
    return {
        f"{check} figure{head}": _number(least.figure, unit) if least else None,
        f"{check} limit{head}": _number(least.limit, unit) if least else None,
        f"{check} margin [%]": _number(least.share, "%") if least else None,
    }


def _number(x: float | None, unit: str) -> float | None:
    if x is None or not abs(x) < float("inf"):
        return None
    return float(f"{from_si(x, unit):.9g}")


def line_of(row: Row, kind: Kind) -> str:
    """A row as a line of text; that of CSV without its head."""
    if kind == "csv":
        return _csv_line(map(_cell, row.values()))
    return json.dumps(row, ensure_ascii=True, allow_nan=False) + "\n"


def head_of(row: Row, kind: Kind) -> str:
    """What stands above the first row."""
    return _csv_line(row) if kind == "csv" else ""


def _cell(cell: Cell) -> str:
    return "" if cell is None else f"{cell:.12g}" if isinstance(cell, float) else str(cell)


def _csv_line(cells: Iterable[object]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(cells)
    return text.getvalue()


def rows_in(path: Path, kind: Kind, mark: str) -> tuple[list[Row], int]:
    """The whole rows of a sweep that a file holds, and how many bytes they take.

    What holds anything else is refused: it is not to be lost.
    """
    with path.open("rb") as stream:
        text = stream.read()
    whole = text[: text.rfind(b"\n") + 1]
    try:
        rows = list(_read(whole.decode("utf-8"), kind))
        fits = all(row["sweep"] == mark for row in rows)
        fits = fits and [int(row["variant"] or 0) for row in rows] == [*range(1, len(rows) + 1)]
        fits = fits and all(row["verdict"] in VERDICTS and "held by" in row for row in rows)
    except (KeyError, TypeError, ValueError):
        fits = False
    if not fits or (text and not rows and not _is_cut_head(text, kind)):
        raise SweepError(f"{path} is there and holds something else; --overwrite replaces it")
    return rows, len(whole) if rows else 0


def _is_cut_head(text: bytes, kind: Kind) -> bool:
    head = b"variant," if kind == "csv" else b'{"variant": 1,'
    return text.startswith(head[: len(text)])


def _read(text: str, kind: Kind) -> Iterator[Row]:
    if kind == "csv":
        yield from csv.DictReader(io.StringIO(text, newline=""))
        return
    yield from map(json.loads, text.splitlines())


def open_rows(path: Path, size: int) -> TextIO:
    """A plain file to which rows are added behind its first so many bytes."""
    refuse_target(path, overwrite=True)
    try:
        handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
    except OSError as error:
        raise WritingError(f"{path} cannot be written: {error.strerror}") from None
    os.ftruncate(handle, size)
    os.lseek(handle, size, os.SEEK_SET)
    return os.fdopen(handle, "w", encoding="utf-8", newline="")


def rows_beside(path: Path, kind: Kind) -> Path:
    """Where the rows are gathered: in the file itself, for Parquet in one beside it."""
    return path.with_name(f"{path.name}.rows") if kind == "parquet" else path


def to_parquet(rows: Path, path: Path) -> None:
    """Turn the rows gathered as JSON Lines into Parquet, which takes the place of the rows."""
    try:
        from pyarrow import json as arrow_json
        from pyarrow import parquet
    except ImportError as error:
        raise SweepError(NEEDS_PYARROW) from error
    with taking_its_place(path) as fresh:
        parquet.write_table(arrow_json.read_json(rows), fresh)
    rows.unlink()
