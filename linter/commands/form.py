"""``ampreview form``: a blank spec with comments, of what decides something at a milestone."""

import argparse
from pathlib import Path

from ..asking.form import Design, FormEntry, asked_first, form
from ..commands import print_or_write, refused
from ..declare import load_schema
from ..declare.parts import part_kinds


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    schema = load_schema()
    for name, path in asked_first(schema).items():
        parser.add_argument(f"--{name}", choices=schema.fields[path].words, default="")
    parser.add_argument(
        "--channels", default="main", metavar="NAMES", help="names with commas between: left,right"
    )
    parser.add_argument(
        "--all", action="store_true", help="all that concerns the design, at every milestone"
    )
    kinds = tuple(part_kinds(schema))
    beside = parser.add_mutually_exclusive_group()
    beside.add_argument("--house", action="store_true", help="a blank house file instead")
    beside.add_argument(
        "--deviations", action="store_true", help="a blank list of deviations instead"
    )
    beside.add_argument(
        "--measured", action="store_true", help="a blank list of measurements instead"
    )
    beside.add_argument(
        "--part",
        choices=kinds,
        action="append",
        default=[],
        metavar="KIND",
        help=f"a blank parts file instead, with one part of this kind (repeatable):"
        f" {', '.join(kinds)}",
    )
    parser.add_argument("-o", "--output", type=Path, help="where to write it (default: print it)")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the form, or write it to a file."""
    from ..reading.loading import load_text
    from ..reports.form_text import HOW, NEXT, OPTIONAL, form_text
    from ..reports.verdict import DISCLAIMER

    schema = load_schema()
    asked = {name: path for name, path in asked_first(schema).items() if getattr(options, name)}
    words = {path: getattr(options, name) for name, path in asked.items()}
    if options.part or options.house or options.deviations or options.measured:
        text = _beside(options, Design(schema, words))
        return print_or_write(text, options.output, options.overwrite)
    names = tuple(name.strip() for name in options.channels.split(","))
    known = ", ".join(f"{name} {words[path]}" for name, path in asked.items())
    title = f"Blank {schema.title}{f': {known}' if known else ''}."
    brief = not options.all and options.milestone in ("", "concept")
    words |= {asked_first(schema)["milestone"]: "concept"} if brief else {}
    entries = _entries(Design(schema, words, names, silence_tells=brief), options)
    text = form_text(entries, title, (*HOW, *(() if brief else (OPTIONAL,)), NEXT, DISCLAIMER))
    refusals = load_text(text, "form").refusals
    if refusals or len(set(names)) < len(names):
        what = refusals[0].expected if refusals else "each channel named once"
        return refused(f"--channels {options.channels} cannot be; expected {what}")
    return print_or_write(text, options.output, options.overwrite)


def _beside(options: argparse.Namespace, design: Design) -> str:
    """The blank file of another kind that stands beside a spec."""
    from ..asking.form import part_form
    from ..evaluation.catalogue import load
    from ..reading.parts_file import NAME
    from ..reports.form_text import HOW, PARTS, form_text
    from ..reports.side_forms import deviations_form, house_form, measured_form

    if options.house:
        return house_form()
    if options.deviations:
        return deviations_form(design.schema)
    if options.measured:
        return measured_form(load())
    known = part_kinds(design.schema)
    named = ", ".join(design.schema.part_of(known[kind]) for kind in options.part)
    title = f"Blank parts file ({NAME}): {named}."
    return form_text(part_form(design, options.part), title, (*HOW, PARTS))


def _entries(design: Design, options: argparse.Namespace) -> tuple[FormEntry, ...]:
    """The fields of a design that decide something at the milestone; silent: at concept."""
    from ..asking.needed import needed_at, only_needed
    from ..evaluation.catalogue import load

    if options.all:
        return form(design)
    wanted = needed_at(options.milestone or "concept", load())
    return only_needed(form(design), wanted, shown=design.silence_tells)
