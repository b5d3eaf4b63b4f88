"""The stored screens: what the program prints of a few specs, to be read by eye at each change.

    python tests/screens/stored.py

writes them anew; ``git diff tests/screens`` then shows what a user sees differently.
"""

import io
import os
import re
import sys
from contextlib import chdir, redirect_stderr, redirect_stdout, suppress
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

from ampreview.linter.cli import COMMANDS, main

HERE = Path(__file__).parent
SAMPLES = HERE.parents[1] / "sample_specs"
WIDTH = "80"
HEAD = 70
SOUND, FAULTY = "bedside-lamp.amp.yaml", "bird-call-pocket-faulty.amp.yaml"
SPARSE = "classroom-sketch.amp.yaml"


@dataclass(frozen=True, slots=True)
class Screen:
    """A command, called in the folder of the samples, and how many of its lines are stored."""

    name: str
    words: tuple[str, ...]
    lines: int | None = None


SCREENS = (
    Screen("page-sound", ("assess", SOUND)),
    Screen("page-faulty", ("assess", FAULTY)),
    Screen("page-sparse", ("assess", SPARSE)),
    Screen("full", ("assess", "--full", "--remedies", "none", FAULTY), HEAD),
    Screen("compare", ("compare", SOUND, "bedside-lamp-faulty.amp.yaml"), HEAD),
    Screen("letter", ("questions", SPARSE)),
    Screen("requirements", ("questions", "--requirements", SPARSE)),
    Screen("form", ("form", "--source", "battery", "--topology", "full-bridge")),
    Screen("amend", ("amend", "--to-release", FAULTY), HEAD),
    Screen("worksheet", ("worksheet", SOUND), HEAD),
    Screen("worksheet-check", ("worksheet", SOUND, "output-power")),
    Screen("catalogue", ("catalogue",), HEAD),
    Screen("catalogue-check", ("catalogue", "bus-pumping")),
    Screen("refused", ("assess", str(HERE / "refused.amp.yaml"))),
    Screen("help", ("--help",)),
    *(Screen(f"help-{command}", (command, "--help")) for command in COMMANDS),
)


def printed(screen: Screen) -> str:
    """What a command prints, without what is other in each revision of the rules."""
    stream = io.StringIO()
    with (
        chdir(SAMPLES),
        patch.dict(os.environ, {"COLUMNS": WIDTH}),
        redirect_stdout(stream),
        redirect_stderr(stream),
        suppress(SystemExit),  # what --help ends with
    ):
        main(list(screen.words))
    text = stream.getvalue().replace(f"{HERE}{os.sep}", "")
    text = re.sub(r"\b(?=\w*\d)[0-9a-f]{16}(?:[0-9a-f]{48})?\b", lambda x: "0" * len(x[0]), text)
    return "".join(text.splitlines(keepends=True)[: screen.lines])


def stored(screen: Screen) -> Path:
    """The file of a screen."""
    return HERE / f"{screen.name}.txt"


if __name__ == "__main__":
    for item in SCREENS:
        stored(item).write_text(printed(item), encoding="utf-8")
    sys.stdout.write(f"{len(SCREENS)} screens written to {HERE}\n")
