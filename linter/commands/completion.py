"""``ampreview completion``: a script for a shell, made from the options of all commands."""

import argparse
import sys
from importlib.util import find_spec
from itertools import dropwhile
from pathlib import Path

from ..commands import RELEASED, refused
from .report_option import KINDS, install_command

NEEDS = "shtab"
WHERE = {
    "bash": "save it, and source it in ~/.bashrc",
    "zsh": "save as _ampreview in a folder of $fpath, before compinit runs",
    "fish": "save as ~/.config/fish/completions/ampreview.fish",
}
SHELLS = tuple(WHERE)
NAMES_OF_CHECKS, NAMES_OF_FILES = ("check", "margin", "fix"), ("files", "old", "new")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.epilog = 'To try it in a bash: eval "$(ampreview completion bash)"'
    parser.add_argument("shell", choices=SHELLS)


def run(options: argparse.Namespace) -> int:
    """Print the script."""
    if find_spec(NEEDS) is None:
        command = install_command(f"{NEEDS}>=1.13")
        return refused(f"the completion command needs {NEEDS}: {command}")
    import shtab

    parser: argparse.ArgumentParser = options.whole()
    _describe(parser, _names())
    sys.stdout.write(_headed(shtab.complete(parser, options.shell), options.shell) + "\n")
    return RELEASED


def _headed(script: str, shell: str) -> str:
    """The script with a head that says where it goes, in place of the one that it came with."""
    lines = script.splitlines()
    start = 1 if lines[0].startswith("#compdef") else 0
    rest = dropwhile(lambda line: not line or line.startswith("# "), lines[start:])
    head = [*lines[:start], f"# Completion of ampreview: {WHERE[shell]}."]
    return "\n".join([*head, *rest])


def _names() -> list[str]:
    from ..evaluation.catalogue import load

    return [entry.name for entry in load().entries]


def _describe(parser: argparse.ArgumentParser, names: list[str]) -> None:
    """Say of every argument whether it is a file, a kind of report or the name of a check."""
    import shtab

    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                _describe(command, names)
        elif action.type is Path or action.dest in NAMES_OF_FILES:
            action.complete = shtab.FILE  # type: ignore[attr-defined]
        elif action.dest in NAMES_OF_CHECKS:
            action.choices = names
        elif action.dest == "report" and not action.choices:
            action.choices = KINDS
