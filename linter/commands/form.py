"""``ampreview form``: a blank spec with comments, for a design or for all of them."""

import argparse
import sys
from pathlib import Path

from . import NOT_ASSESSED, RELEASED

CHOICES = {
    "topology": ("half-bridge", "full-bridge"),
    "rails": ("single", "split"),
    "devices": ("discrete", "integrated"),
    "source": ("battery", "dc-source", "mains-converter"),
    "filter": ("lc", "bead", "filterless"),
    "milestone": ("concept", "prototype", "production"),
}


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    for name, words in CHOICES.items():
        parser.add_argument(f"--{name}", choices=words, default="")
    parser.add_argument(
        "--channels", default="main", metavar="NAMES", help="names with commas between: left,right"
    )
    parser.add_argument("-o", "--output", type=Path, help="where to write it (default: print it)")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the form, or write it to a file."""
    from ..form import Design, form
    from ..loading import load_text
    from ..reports.forms import WORDS, form_text
    from ..writing import WritingError, write_text

    names = tuple(name.strip() for name in options.channels.split(","))
    words = {name: getattr(options, name) for name in CHOICES}
    known = [WORDS.get(word, word) for name, word in words.items() if word and name != "milestone"]
    title = "Blank spec of a class-D amplifier" + (f": {', '.join(known)}." if known else ".")
    text = form_text(form(Design(**words, channels=names)), title)
    refusals = load_text(text, "form").refusals
    if refusals or len(set(names)) < len(names):
        what = refusals[0].expected if refusals else "each channel named once"
        print(
            f"ampreview: --channels {options.channels} cannot be; expected {what}", file=sys.stderr
        )
        return NOT_ASSESSED
    if options.output is None:
        sys.stdout.write(text)
        return RELEASED
    try:
        write_text(options.output, text, options.overwrite)
    except WritingError as error:
        print(f"ampreview: {error}", file=sys.stderr)
        return NOT_ASSESSED
    print(f"Written to {options.output}")
    return RELEASED
