"""Follow one value of a spec through a review: which rooms and modules it meets.

    python tests/walk.py

A module is met when one of its functions is handed the value: its text, the number behind it,
the ``Value`` that carries both, or its path.  A move is a pair of functions in two modules of
which one hands it to the other.
"""

import io
import sys
import tempfile
from contextlib import redirect_stdout
from pathlib import Path
from types import FrameType
from typing import Any

from ampreview.linter.cli import main

TEXT, NUMBER, PATH = "31.7 V", 31.7, "supply.v_rail"
SPEC = f"""\
amplifier_spec: 1
milestone: prototype
supply: {{source: dc-source, rails: single, v_rail: {TEXT}, bulk: {{c: 1 mF, v_rated: 25 V}}}}
channels: {{main: {{rated_power: 20 W, rated_load: 8 ohm}}}}
"""
PACKAGE = "ampreview.linter."


class Walk:
    """Collects where the value has been."""

    def __init__(self) -> None:
        self.met: set[str] = set()
        self.moves: set[tuple[str, str]] = set()

    def look(self, frame: FrameType, event: str, _: Any) -> None:
        """A profile function: notes each call that is handed the value."""
        module = frame.f_globals.get("__name__", "")
        if event != "call" or not module.startswith(PACKAGE) or not self._carries(frame):
            return
        self.met.add(module)
        caller = frame.f_back
        before = caller.f_globals.get("__name__", "") if caller else ""
        if caller and before.startswith(PACKAGE) and before != module:
            names = (f"{before}:{caller.f_code.co_name}", f"{module}:{frame.f_code.co_name}")
            self.moves.add(names)

    def _carries(self, frame: FrameType) -> bool:
        names = frame.f_code.co_varnames[: frame.f_code.co_argcount]
        return any(_is_it(frame.f_locals.get(name)) for name in names)


def _is_it(thing: Any) -> bool:
    if isinstance(thing, str):
        return thing in (TEXT, PATH)
    if isinstance(thing, float):
        return thing == NUMBER
    return _has(thing, "text", TEXT) or _has(thing, "path", PATH)


def _has(thing: Any, name: str, wanted: str) -> bool:
    """Whether an object itself has an attribute; what it makes up on demand does not count."""
    try:
        return bool(object.__getattribute__(thing, name) == wanted)
    except AttributeError:
        return False


def walked() -> Walk:
    """The walk of the value from its spec to the printed report."""
    walk = Walk()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.amp.yaml"
        path.write_text(SPEC, "utf-8")
        with redirect_stdout(io.StringIO()):
            sys.setprofile(walk.look)
            try:
                main(["assess", str(path)])
            finally:
                sys.setprofile(None)
    return walk


def room(module: str) -> str:
    """The folder that a module stands in, or the module itself beside the folders."""
    return module.removeprefix(PACKAGE).split(".")[0].split(":")[0]


if __name__ == "__main__":
    found = walked()
    rooms = {room(name) for name in found.met}
    between = {(room(a), room(b)) for a, b in found.moves} - {(name, name) for name in rooms}
    print(f"{len(rooms)} rooms met, {len(between)} kinds of move between rooms")
    print(f"{len(found.met)} modules met, {len(found.moves)} moves between modules")
    for name in sorted(found.met):
        print(f"  {name.removeprefix(PACKAGE)}")
