"""``ampreview completion``: a script for a shell, made from the options of all commands."""

import argparse
import sys
from importlib.util import find_spec
from pathlib import Path

from ..commands import RELEASED, refused
from .report_option import install_command

NEEDS = "shtab"
SHELLS = ("bash", "zsh", "fish")
NAMES_OF_CHECKS = ("check", "margin", "fix")


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
    sys.stdout.write(shtab.complete(parser, options.shell) + "\n")
    return RELEASED


def _names() -> list[str]:
    from ..evaluation.catalogue import load

    return [entry.name for entry in load().entries]


def _describe(parser: argparse.ArgumentParser, names: list[str]) -> None:
    """Say of every argument whether it is a file or the name of a check."""
    import shtab

    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                _describe(command, names)
        elif action.type is Path:
            action.complete = shtab.FILE  # type: ignore[attr-defined]
        elif action.dest in NAMES_OF_CHECKS:
            action.choices = names
