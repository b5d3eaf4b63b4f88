"""An output capacitor for a half bridge on a single supply that has none.

Its corner with the rated load lies an octave below the band, so that the lowest note loses 1 dB;
it stands the whole rail and carries the current of the rated power.  The part is a guess until
one is chosen.
"""

import math
from dataclasses import replace

from ...linter.check import Input, derivation
from ...linter.design_change import DesignChange, Follow
from .output_capacitor import CHANGE as ANOTHER


def an_octave_below(f_low: float, z_load: float) -> float:
    """Capacitance whose corner with the load is half the low end of the band."""
    return 1 / (2 * math.pi * f_low / 2 * z_load)


CHANGE = DesignChange(
    title="an output capacitor for the low end of the band",
    helps=("blocking-capacitor-present", "dc-power-without-capacitor"),
    applies={
        "output_stage.topology": "half-bridge",
        "supply.rails": "single",
        "filter.c_block": "none",
    },
    follows=(
        Follow(
            "filter.c_block.c",
            an_octave_below,
            {"f_low": Input("band:low"), "z_load": Input("z_load")},
            "E6",
            "up",
            guess=True,
            new=True,
        ),
        *(replace(x, guess=True, new=True) for x in ANOTHER.follows),
    ),
    sources=(derivation("first-order high-pass: 1 dB an octave above its corner"),),
)
