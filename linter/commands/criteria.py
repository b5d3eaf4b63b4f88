"""What several commands take alike: milestone, deviations, house file, day of the review."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import date

    from ..judging.criteria import Terms


def term_arguments(parser: argparse.ArgumentParser) -> None:
    """The options on what a spec is held against."""
    parser.add_argument(
        "--milestone",
        choices=("concept", "prototype", "production"),
        help="milestone of the verdict (default: what the spec says)",
    )
    parser.add_argument(
        "--hold-at",
        choices=("critical", "major", "minor"),
        help="mildest severity that holds (default: by milestone)",
    )
    parser.add_argument(
        "--deviations",
        type=Path,
        metavar="FILE",
        help="permissions beside those of the spec; the spec stays as it is",
    )
    parser.add_argument(
        "--date",
        type=_day,
        metavar="YYYY-MM-DD",
        help="day of the review, against which permissions run out (default: today)",
    )
    measured_argument(parser)
    house_arguments(parser)
    parts_argument(parser)


def measured_argument(parser: argparse.ArgumentParser) -> None:
    """The option on readings in a file of their own."""
    parser.add_argument(
        "--measured",
        type=Path,
        metavar="FILE",
        help="measurements beside those of the spec; the spec stays as it is",
    )


def parts_argument(parser: argparse.ArgumentParser) -> None:
    """The option on the parts file."""
    parser.add_argument(
        "--parts",
        type=Path,
        metavar="FILE",
        help="parts file (default: parts.ampreview.yaml in the spec's folder or above)",
    )


def house_arguments(parser: argparse.ArgumentParser) -> None:
    """The options on the house file."""
    house = parser.add_mutually_exclusive_group()
    house.add_argument(
        "--house",
        type=Path,
        metavar="FILE",
        help="house file (default: house.ampreview.yaml in the spec's folder or above)",
    )
    house.add_argument(
        "--no-house", action="store_true", help="no house file: advised for files from outside"
    )


def terms_of(options: argparse.Namespace) -> "Terms":
    """The terms that the options ask for."""
    from ..judging.criteria import Terms

    given = (options.house, options.no_house, options.parts, options.measured)
    return Terms(options.date, options.deviations, *given)


def inputs_of(options: argparse.Namespace, *specs: Path) -> "tuple[Path | None, ...]":
    """The files beside the specs that a command reads, so that none of them is written over."""
    from ..judging.house import find_house
    from ..reading.parts_file import NAME, find_upward

    houses = () if options.house or options.no_house else map(find_house, specs)
    parts = () if options.parts else (find_upward(spec, NAME) for spec in specs)
    named = (options.deviations, options.measured, options.house, options.parts)
    return (*named, *houses, *parts)


def _day(text: str) -> "date":
    from ..judging.days import day_of

    day = day_of(text)
    if day is None:
        raise argparse.ArgumentTypeError(f"{text!r} is not a day such as 2030-06-30")
    return day
