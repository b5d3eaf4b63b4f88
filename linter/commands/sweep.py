"""``ampreview sweep``: many variants of one spec, a row of verdict and margins for each."""

import argparse
import sys
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from ..commands import HELD, NOT_ASSESSED, RELEASED, refused
from .criteria import term_arguments, terms_of

if TYPE_CHECKING:
    from ..judging.criteria import Criteria
    from ..reading.loading import Spec
    from ..sweeping.sweep import Sweep, Tally
    from ..sweeping.table import Kind

MOST = 100_000
TOGETHER = 16
SUFFIXES: "dict[str, Kind]" = {".csv": "csv", ".jsonl": "json-lines", ".parquet": "parquet"}
STATUS = {"released": RELEASED, "held": HELD, "not assessed": NOT_ASSESSED}


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    parser.add_argument(
        "--vary",
        action="append",
        required=True,
        metavar="PATH=VALUES",
        help="FROM..TO:STEP, FROM..TO:E12 (preferred numbers of IEC 60063), or A,B,C; repeatable:"
        " every combination. A path without a channel's name varies all channels alike",
    )
    parser.add_argument(
        "--margin",
        action="append",
        default=[],
        metavar="CHECK",
        help="figure, limit and margin of a check as columns; repeatable",
    )
    _draw_arguments(parser)
    parser.add_argument(
        "--at-most", type=int, default=MOST, metavar="COUNT", help=f"variants (default: {MOST})"
    )
    parser.add_argument(
        "-o",
        "--output",
        type=Path,
        metavar="TABLE",
        help="the table: .csv, .jsonl (JSON Lines) or .parquet; one that was begun is gone on with"
        " (default: print it as CSV)",
    )
    parser.add_argument("--overwrite", action="store_true", help="begin a table anew")
    parser.add_argument("--jobs", type=int, default=1, metavar="N", help="processes at a time")
    term_arguments(parser)


def _draw_arguments(parser: argparse.ArgumentParser) -> None:
    """The options on variants that are drawn."""
    parser.add_argument(
        "--draw",
        type=int,
        metavar="COUNT",
        help="draw so many variants from the intervals FROM..TO and lists, not all combinations",
    )
    parser.add_argument(
        "--pattern",
        choices=("random", "low-discrepancy"),
        default="random",
        help="how they are drawn (default: random; the other one needs scipy)",
    )
    parser.add_argument("--seed", type=int, default=1, help="seed of what is drawn")


def run(options: argparse.Namespace) -> int:
    """Review every variant, write the table, tell where the design is released."""
    from ..reading.writing import WritingError
    from ..sweeping.place import SweepError

    try:
        return _run(options)
    except (SweepError, WritingError) as error:
        return refused(str(error))


def _run(options: argparse.Namespace) -> int:
    from ..judging.criteria import criteria_for
    from ..reading.loading import load_file
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.sweep_text import print_summary

    _refuse_wrong_use(options)
    loaded = load_file(options.file, parts=options.parts)
    criteria = criteria_for(options.file, terms_of(options)) if loaded.spec else loaded.refusals
    if loaded.spec is None or isinstance(criteria, tuple):
        refusals = criteria if isinstance(criteria, tuple) else loaded.refusals
        print_refusals(str(options.file), refusals, console())
        return NOT_ASSESSED
    sweep = _sweep(options, criteria.applied(loaded.spec), criteria)
    tally = _table(options, sweep, criteria)
    told = console(sys.stdout if options.output else sys.stderr)
    print_summary(str(options.file), tally, told, str(options.output or ""))
    return max(STATUS[word] for word in set(tally.verdicts))


def _refuse_wrong_use(options: argparse.Namespace) -> None:
    from ..sweeping.place import SweepError

    for name in ("jobs", "at_most", "draw"):
        number = getattr(options, name)
        if number is not None and number < 1:
            raise SweepError(f"--{name.replace('_', '-')} {number}: at least 1")
    if options.seed < 0:
        raise SweepError(f"--seed {options.seed}: at least 0")
    if options.output and options.output.suffix not in SUFFIXES:
        raise SweepError(f"{options.output}: expected a name that ends in {', '.join(SUFFIXES)}")
    if options.output and options.output.exists() and not options.output.is_file():
        raise SweepError(f"{options.output} is no file")


def _sweep(options: argparse.Namespace, spec: "Spec", criteria: "Criteria") -> "Sweep":
    """The sweep asked for, as far as it makes sense."""
    from ..batch.items import Text
    from ..batch.work import Order
    from ..finding import Severity
    from ..judging.criteria import Terms
    from ..judging.house import find_house
    from ..reports.identity import program_version, rules_hash
    from ..sweeping.axis import axis_of
    from ..sweeping.grid import Draw
    from ..sweeping.place import SweepError
    from ..sweeping.sweep import Sweep
    from .catalogue import unknown_check

    axes = tuple(axis_of(text, spec, options.draw is not None) for text in options.vary)
    paths = [path for axis in axes for path in axis.paths]
    twice = next((path for path in paths if paths.count(path) > 1), "")
    if twice:
        raise SweepError(f"`{twice}` is varied twice")
    known = [entry.name for entry in criteria.catalogue.entries]
    for name in options.margin:
        if name not in known:
            raise SweepError(unknown_check(name, known))
    draw = Draw(options.draw, options.pattern, options.seed) if options.draw else None
    house = None if options.no_house else options.house or find_house(options.file)
    parts = Path(spec.parts.file) if spec.parts else None
    files = (options.deviations, house, house is None, parts, options.measured)
    terms = Terms(criteria.day, *files)
    hold_at = Severity(options.hold_at) if options.hold_at else None
    order = Order(options.milestone, hold_at, terms, margins=tuple(options.margin))
    read = (criteria.house, criteria.permissions, criteria.measured, spec.parts)
    beside = [x.text for x in read if x]
    day = str(criteria.day) if spec.deviations or criteria.permissions else ""
    rules = [rules_hash(package) for package in criteria.catalogue.packages]
    written = (program_version(), *rules, *beside, day)
    sweep = Sweep(Text(str(options.file), spec.text), axes, draw, order, written)
    if sweep.size > options.at_most:
        raise SweepError(
            f"{sweep.size} variants; expected {options.at_most} at most: wider steps, --draw COUNT"
            " or a higher --at-most"
        )
    return sweep


def _table(options: argparse.Namespace, sweep: "Sweep", criteria: "Criteria") -> "Tally":
    """Write the rows that are not there yet; gives what all of them come to."""
    from ..reading.writing import refuse_target
    from ..sweeping.grid import combinations
    from ..sweeping.sweep import Tally
    from ..sweeping.table import SEPARATOR, open_rows, rows_beside, rows_in, to_parquet

    kind: Kind = SUFFIXES[options.output.suffix] if options.output else "csv"
    tally = Tally(sweep.axes)
    if options.output is None:
        _write_rows(options, sweep, criteria, kind, tally, sys.stdout)
        return tally
    path, size = rows_beside(options.output, kind), 0
    if path != options.output:
        refuse_target(options.output, options.overwrite or path.exists())
    if path.exists() and not options.overwrite:
        rows, size = rows_in(path, kind, sweep.mark)
        for row, combination in zip(rows, combinations(sweep.axes, sweep.draw), strict=False):
            held_by = str(row["held by"]).split(SEPARATOR) if row["held by"] else []
            tally.add(combination, row["verdict"], held_by)  # type: ignore[arg-type]
        if rows:
            print(f"{len(rows)} of {sweep.size} variants are in {path} already", file=sys.stderr)
    with open_rows(path, size) as stream:
        _write_rows(options, sweep, criteria, kind, tally, stream)
    if kind == "parquet":
        to_parquet(path, options.output)
    return tally


def _write_rows(
    options: argparse.Namespace,
    sweep: "Sweep",
    criteria: "Criteria",
    kind: "Kind",
    tally: "Tally",
    stream: TextIO,
) -> None:
    """Write the rows from where the tally stands."""
    from concurrent.futures import ProcessPoolExecutor
    from dataclasses import replace

    from ..reports.progress import progress
    from ..sweeping.table import head_of, line_of, row_of

    start, mark = len(tally.verdicts), sweep.mark
    entries = criteria.catalogue.entries
    units = {x.name: x.check.unit for x in entries if x.name in options.margin}
    with ExitStack() as stack:
        executor = None
        if options.jobs > 1:
            executor = stack.enter_context(ProcessPoolExecutor(options.jobs))
        advance = stack.enter_context(progress("variants", sweep.size, start))
        for combination, given in sweep.results(start, executor, TOGETHER):
            result = replace(given, number=start + given.number)
            row = row_of(combination, result, sweep.axes, units, mark)
            if result.number == 0:
                stream.write(head_of(row, kind))
            stream.write(line_of(row, kind))
            stream.flush()
            tally.add(combination, result.verdict, result.holding)
            advance()
