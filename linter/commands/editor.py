"""``ampreview editor``: a language server for any editor that speaks LSP."""

import argparse
from importlib.util import find_spec

from ..commands import RELEASED, refused
from .report_option import install_command

NEEDS = "pygls"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.epilog = "Started by the editor: it speaks LSP on standard input and output."
    told = "what many editors say; there is no other way"
    parser.add_argument("--stdio", action="store_true", help=told)


def run(options: argparse.Namespace) -> int:
    """Serve until the editor ends it."""
    if find_spec(NEEDS) is None:
        return refused(f"the editor command needs {NEEDS}: {install_command(f'{NEEDS}>=2')}")
    from ..editor.server import serve

    serve()
    return RELEASED
