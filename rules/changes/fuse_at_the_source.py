"""A fuse at the source, where nothing else ends a short circuit.

It carries the music for hours at three quarters of its rating in warm air, breaks the direct
voltage and the short circuit of the source, and sits before any wiring.  Lead, connector and trace
behind it are judged against it afterwards.  The part is a guess until one is chosen.
"""

from dataclasses import replace

from ...linter.check import Input
from ...linter.design_change import DesignChange, Follow
from ..formulas.fuse import LOADING, STOCK
from .cells_in_series import FUSE_VOLTAGE, SHORT_CIRCUIT

LOADED = 0.75 * 0.9


def carrying(i_source_rms: float) -> float:
    """Rating that carries a current at three quarters, with a tenth off for warm air."""
    return i_source_rms / LOADED


CHANGE = DesignChange(
    title="a fuse at the source",
    helps=(
        *("unprotected-source-power", "fuse-protects-lead", "fuse-protects-connector"),
        "fuse-protects-trace",
    ),
    applies={"protection.fuse": "none"},
    follows=(
        Follow(
            "protection.fuse.i_rated",
            carrying,
            {"i_source_rms": Input("i_source_rms")},
            STOCK,
            "up",
            guess=True,
            new=True,
        ),
        Follow("protection.fuse.place", word="source", new=True),
        Follow("protection.fuse.standard", word="ul-248-14", new=True),
        *(replace(x, guess=True, new=True) for x in (FUSE_VOLTAGE, SHORT_CIRCUIT)),
    ),
    sources=(LOADING,),
)
