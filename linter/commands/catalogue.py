"""``ampreview catalogue``: the checks, the fields of the spec, the derived quantities."""

import argparse
import sys
from collections.abc import Iterable
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import NOT_ASSESSED, RELEASED, refused
from .criteria import house_arguments

if TYPE_CHECKING:
    from ..judging.criteria import Criteria
    from ..reading.refusal import Refusal


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("check", nargs="*", help="names of checks to show in full")
    instead = parser.add_mutually_exclusive_group()
    instead.add_argument(
        "--fields",
        nargs="*",
        metavar="PATH",
        help="the fields of the spec file, all or those below a path, of the file or of a channel",
    )
    instead.add_argument(
        "--quantities",
        nargs="*",
        metavar="NAME",
        help="the quantities that follow from the fields, all or those named",
    )
    parser.add_argument("--markdown", action="store_true", help="fields or quantities as Markdown")
    house_arguments(parser)


def run(options: argparse.Namespace) -> int:
    """Print the list, a page for each check named, or the glossary."""
    if options.fields is not None or options.quantities is not None:
        if options.check:
            return refused("name checks, or ask for --fields or --quantities, not both")
        return _print_fields(options) if options.fields is not None else _print_quantities(options)
    if options.markdown:
        return refused("--markdown goes with --fields or --quantities")
    return _print_checks(options)


def _criteria(options: argparse.Namespace) -> "Criteria | tuple[Refusal, ...]":
    """The house file named, or the one nearest to the current folder."""
    from ..judging.criteria import Terms, criteria_for

    return criteria_for(Path("spec"), Terms(house=options.house, no_house=options.no_house))


def _print_checks(options: argparse.Namespace) -> int:
    from ..reports.assess_head import print_house
    from ..reports.catalogue_text import print_built_in, print_entry, print_list
    from ..reports.console import console

    page = console()
    criteria = _criteria(options)
    if isinstance(criteria, tuple):
        from ..reports.assess_text import print_refusals

        print_refusals(str(options.house or "house file"), criteria, page)
        return NOT_ASSESSED
    catalogue = criteria.catalogue
    if not options.check:
        print_list(catalogue, page)
        print_house(criteria.house, page)
    for name in options.check:
        entry = catalogue.entry(name)
        if entry is None and print_built_in(name, catalogue, page):
            continue
        if entry is None:
            return refused(unknown_check(name, [item.name for item in catalogue.entries]))
        print_entry(entry, catalogue, page)
    return RELEASED


def _print_fields(options: argparse.Namespace) -> int:
    from ..declare import load_schema, local_path
    from ..reports.catalogue_fields import (
        HOW,
        field_groups,
        field_markdown,
        is_field_path,
        print_fields,
    )
    from ..reports.console import console

    paths = [local_path(path).removeprefix("channels.") for path in options.fields]
    schema = load_schema()
    for path in paths:
        if not is_field_path(schema, path):
            return refused(_unknown("field or section at", path, schema.fields))
    groups = field_groups(schema, paths)
    page = console()
    if options.markdown:
        sys.stdout.write(field_markdown(groups))
    else:
        if not paths:
            page.print(f"{HOW}\n")
        print_fields(groups, page)
    return RELEASED


def _print_quantities(options: argparse.Namespace) -> int:
    from ..evaluation.catalogue import load
    from ..reports.catalogue_fields import print_fields, quantity_groups, quantity_markdown
    from ..reports.console import console

    catalogue = load()
    for name in options.quantities:
        if name not in catalogue.derived:
            return refused(_unknown("derived quantity named", name, catalogue.derived))
    groups = quantity_groups(catalogue, options.quantities)
    if options.markdown:
        sys.stdout.write(quantity_markdown(groups))
    else:
        print_fields(groups, console())
    return RELEASED


def unknown_check(name: str, known: list[str]) -> str:
    """What to say about a check that does not exist."""
    return _unknown("check named", name, known, "`ampreview catalogue` lists them")


def _unknown(kind: str, name: str, known: Iterable[str], otherwise: str = "") -> str:
    near = get_close_matches(name, list(known), 3, 0.5)
    hint = f"did you mean {' or '.join(near)}?" if near else otherwise
    return f"there is no {kind} {name}; {hint}" if hint else f"there is no {kind} {name}"
