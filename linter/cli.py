"""The program ``ampreview``: picks the command, imports it alone, gives its exit status."""

import argparse
import gc
import importlib
import io
import os
import sys
from collections.abc import Sequence

from .commands import NOT_ASSESSED

COMMANDS = {
    "assess": "review spec files: findings, open items, verdict",
    "worksheet": "show every number of a check with its formula and inputs",
    "questions": "list what to ask the supplier, the most useful first",
    "amend": "write remedies or answers into a copy of a spec file",
    "form": "print a blank spec with comments",
    "schema": "print a JSON Schema of the spec for editors",
    "compare": "compare two revisions of a spec: changes, findings, margins, verdict",
    "bom": "compare a bill of materials with a spec: missing, extra and different parts",
    "catalogue": "list the checks, or show one in full",
}

SELDOM = 200_000
"""New objects between two collections: a short run goes without, a long one stays in bounds."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; the exit status is 0 released, 1 held, 2 could not assess."""
    _make_writable()
    gc.set_threshold(SELDOM)
    words = list(sys.argv[1:] if arguments is None else arguments)
    options = _parser(next((word for word in words if word in COMMANDS), "")).parse_args(words)
    try:
        status: int = options.run(options)
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_ASSESSED
    except KeyboardInterrupt:
        return NOT_ASSESSED
    except Exception as error:  # a fault must not look like the status of a verdict
        text = f"{type(error).__name__}: {error}"
        print(f"ampreview: the program itself failed, nothing is judged: {text}", file=sys.stderr)
        return NOT_ASSESSED
    return status


def _make_writable() -> None:
    """Let every character through: UTF-8 to files and pipes, what a terminal can to it."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="replace")


def _parser(chosen: str) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="ampreview",
        description="Design review of class-D audio amplifiers, run from their spec files.",
        epilog="Exit status: 0 released, 1 held, 2 could not assess.",
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND", title="commands")
    for name, about in COMMANDS.items():
        command = commands.add_parser(
            name, help=about, description=f"{about[0].upper()}{about[1:]}."
        )
        if name == chosen:
            module = importlib.import_module(f".commands.{name}", __package__)
            module.arguments(command)
            command.set_defaults(run=module.run)
    return parser
