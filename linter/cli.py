"""The program ``ampreview``: picks the command, imports it alone, gives its exit status."""

import argparse
import gc
import importlib
import io
import os
import sys
from collections.abc import Collection, Sequence
from contextlib import redirect_stderr, redirect_stdout
from typing import Any, NoReturn, TextIO, cast

from .commands import NOT_ASSESSED, refused

COMMANDS = {
    "assess": "review spec files: findings, open items, verdict",
    "worksheet": "show every number of a check with its formula and inputs",
    "bringup": "print the sheet for the first boards: steps, expected values, where to stop",
    "questions": "list what to ask the supplier, the most useful first",
    "amend": "write remedies or answers into a copy of a spec file",
    "form": "print a blank spec with comments",
    "schema": "print a JSON Schema of the spec for editors",
    "compare": "compare two revisions of a spec: changes, findings, margins, verdict",
    "bom": "compare a bill of materials with a spec: missing, extra and different parts",
    "sweep": "review many variants of one spec: verdicts, margins, where it is released",
    "catalogue": "list the checks, or show one in full",
    "editor": "serve findings, meanings and changes to an editor (language server)",
    "completion": "print what makes a shell complete the commands and options",
}

JUDGING = ("assess", "amend", "compare", "bom", "sweep")
"""The commands whose exit status is a verdict."""
WAY = (
    "From nothing to production: form, assess, questions, amend, bringup, form --measured,"
    " assess --measured, questions --limits."
)
"""The commands in the order in which a design needs them."""

SELDOM = 200_000
"""New objects between two collections: a short run goes without, a long one stays in bounds."""


class Outlet:
    """A stream that goes on quietly when its reader has left, so that the status stays true.

    lost: what is no failure of the program: no reader, or on standard error whatever it is.
    """

    def __init__(self, stream: TextIO, lost: type[OSError] = BrokenPipeError) -> None:
        self.stream = stream
        self.lost = lost

    def write(self, text: str) -> int:
        """Write a text, or let it go where nobody reads."""
        try:
            self.stream.write(text)
        except self.lost:
            self.let_go()
        return len(text)

    def flush(self) -> None:
        """The same for what is still held back."""
        try:
            self.stream.flush()
        except self.lost:
            self.let_go()

    def let_go(self) -> None:
        """Write what is held back, and all that follows, nowhere."""
        os.dup2(os.open(os.devnull, os.O_WRONLY), self.stream.fileno())

    def __getattr__(self, name: str) -> Any:
        return getattr(self.stream, name)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; the exit status is 0 released, 1 held, 2 could not assess."""
    _open_what_is_closed()
    _make_writable()
    gc.set_threshold(SELDOM)
    words = list(sys.argv[1:] if arguments is None else arguments)
    out, err = Outlet(sys.stdout), Outlet(sys.stderr, OSError)
    with redirect_stdout(cast(TextIO, out)), redirect_stderr(cast(TextIO, err)):
        doubtful = _file_like_an_option(words)
        if doubtful:
            return refused(f"{doubtful} is an option, and a file here; the file is ./{doubtful}")
        options = _parser([word for word in words if word in COMMANDS][:1]).parse_args(words)
        run = _run_quietly if getattr(options, "quiet", False) else _run
        try:
            status = run(options)
            out.flush()
        except OSError as error:  # the disk is full, say
            out.let_go()
            return refused(f"reading or writing failed, nothing is judged: {error}")
    return status


def _run_quietly(options: argparse.Namespace) -> int:
    """Run without output; what could not be assessed is told all the same, as an error."""
    with redirect_stdout(io.StringIO()) as told:
        status = _run(options)
    if status == NOT_ASSESSED:
        sys.stderr.write(told.getvalue())
    return status


def _run(options: argparse.Namespace) -> int:
    try:
        status: int = options.run(options)
    except KeyboardInterrupt:
        return NOT_ASSESSED
    except OSError:
        raise
    except Exception as error:  # a fault must not look like the status of a verdict
        text = f"{type(error).__name__}: {error}"
        return refused(f"the program itself failed, nothing is judged: {text}")
    return status


def program() -> int:
    """``main`` as a process of its own: what it leaves is not searched for garbage at the end."""
    status = main()
    gc.freeze()
    return status


def _file_like_an_option(words: Sequence[str]) -> str:
    """An option that is also the name of a file here: a list of files may hold such a one."""
    before = words[: words.index("--")] if "--" in words else words
    return next((x for x in before if len(x) > 1 and x[0] == "-" and os.path.lexists(x)), "")


def _open_what_is_closed() -> None:
    """Put a stream that goes nowhere in place of one that the caller has closed."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            from .reading.writing import nowhere  # seldom needed

            setattr(sys, name, nowhere())


def _make_writable() -> None:
    """Let every character through: UTF-8 to files and pipes, what a terminal can to it."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="replace")


class _Version(argparse.Action):
    """Print which program this is, looked up only when asked."""

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> NoReturn:
        from .reports.identity import program_version  # slow to import

        print(f"ampreview {program_version()}")
        parser.exit()


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints show what was typed as text."""

    def error(self, message: str) -> NoReturn:
        self.print_usage(sys.stderr)
        refused(message)
        raise SystemExit(NOT_ASSESSED)


def _parser(chosen: Collection[str]) -> argparse.ArgumentParser:
    """The parser of the program; of a command only what is chosen knows its options."""
    parser = _Parser(
        prog="ampreview",
        description="Design review of class-D audio amplifiers, run from their spec files.",
        epilog=f"{WAY} Exit status: 0 released, 1 held, 2 could not assess.",
    )
    told = "print the version of the program"
    parser.add_argument("--version", action=_Version, nargs=0, help=told)
    commands = parser.add_subparsers(required=True, metavar="COMMAND", title="commands")
    for name, about in COMMANDS.items():
        command = commands.add_parser(
            name, help=about, description=f"{about[0].upper()}{about[1:]}."
        )
        if name in chosen:
            module = importlib.import_module(f".commands.{name}", __package__)
            module.arguments(command)
            command.set_defaults(run=module.run)
            if name in JUDGING:
                told = "print nothing: the exit status tells; errors stay"
                command.add_argument("-q", "--quiet", action="store_true", help=told)
            if name == "completion":
                command.set_defaults(whole=lambda: _parser(COMMANDS))
    return parser
