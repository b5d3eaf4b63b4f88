"""``ampreview catalogue``: the checks by domain, or some of them in full."""

import argparse
import sys
from difflib import get_close_matches

from . import NOT_ASSESSED, RELEASED


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("check", nargs="*", help="names of checks to show in full")


def run(options: argparse.Namespace) -> int:
    """Print the list, or a page for each check named."""
    from ..catalogue import load
    from ..reports.console import console
    from ..reports.handbook import print_entry, print_list, print_standing

    page = console()
    catalogue = load()
    if not options.check:
        print_list(catalogue, page)
    for name in options.check:
        entry = catalogue.entry(name)
        if entry is None and print_standing(name, page):
            continue
        if entry is None:
            known = [item.name for item in catalogue.entries]
            print(f"ampreview: {unknown_check(name, known)}", file=sys.stderr)
            return NOT_ASSESSED
        print_entry(entry, catalogue, page)
    return RELEASED


def unknown_check(name: str, known: list[str]) -> str:
    """What to say about a check that does not exist."""
    near = get_close_matches(name, known, 3, 0.5)
    hint = f"did you mean {' or '.join(near)}?" if near else "`ampreview catalogue` lists them"
    return f"there is no check named {name}; {hint}"
