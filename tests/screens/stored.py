"""The stored screens: what the program prints of a few specs, to be read by eye at each change.

    python tests/screens/stored.py

writes them anew, and the page that README.md shows; ``git diff`` then shows what a user sees
differently.
"""

import io
import os
import re
import sys
import textwrap
from collections.abc import Sequence
from contextlib import chdir, redirect_stderr, redirect_stdout, suppress
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

from ampreview.linter.cli import COMMANDS, main

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
SAMPLES = ROOT / "sample_specs"
README_SPEC = "sample_specs/foyer-proposal.amp.yaml"
WIDTH, README_WIDTH = "80", "92"
LAST = r"^ +and \d+ more causes: --full\n"
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


def output(words: Sequence[str], folder: Path, width: str) -> str:
    """All that a command prints when it is called in a folder."""
    stream = io.StringIO()
    with (
        chdir(folder),
        patch.dict(os.environ, {"COLUMNS": width}),
        redirect_stdout(stream),
        redirect_stderr(stream),
        suppress(SystemExit),  # what --help ends with
    ):
        main(list(words))
    return stream.getvalue()


def printed(screen: Screen) -> str:
    """What a command prints, without what is other in each revision of the rules."""
    text = output(screen.words, SAMPLES, WIDTH).replace(f"{HERE}{os.sep}", "")
    text = re.sub(r"\b(?=\w*\d)[0-9a-f]{16}(?:[0-9a-f]{48})?\b", lambda x: "0" * len(x[0]), text)
    return "".join(text.splitlines(keepends=True)[: screen.lines])


def stored(screen: Screen) -> Path:
    """The file of a screen."""
    return HERE / f"{screen.name}.txt"


def page_of_the_readme() -> str:
    """What README.md shows of a page, as it is printed now: down to the causes that follow."""
    page = output(("assess", README_SPEC), ROOT, README_WIDTH)
    return re.match(rf"(?ms).*?{LAST}", page)[0]


def renewed(readme: str) -> str:
    """The README with its page printed anew."""
    page = textwrap.indent(page_of_the_readme(), "    ")
    return re.sub(rf"(?ms)^      HELD\b.*?{LAST}", lambda _: page, readme, count=1)


if __name__ == "__main__":
    for item in SCREENS:
        stored(item).write_text(printed(item), encoding="utf-8")
    shown = ROOT / "README.md"
    shown.write_text(renewed(shown.read_text("utf-8")), encoding="utf-8")
    sys.stdout.write(f"{len(SCREENS)} screens written to {HERE}\n")
