"""Another carrier, with the dead time that its devices need.

The carrier is moved for the band, the ripple or a receiver.  Each cycle loses the dead time
twice: it is set to what the devices need and no more, ten nanoseconds above the slowest
turn-off.  Losses in switching go with the carrier; the whole review is run again with it.
"""

from ...linter.check import Constant, DesignChange, Follow, Input, Source, derivation

MARGIN = Constant(
    "10 ns",
    "effective dead time at least",
    Source("IRS20124S data sheet", "p. 20: at least 10 ns of effective dead time"),
)


def dead_time_needed(t_outlasts: float, mismatch: float, margin: float) -> float:
    """Turn-off beyond turn-on, the difference of the drivers, and the margin."""
    return t_outlasts + mismatch + margin


CHANGE = DesignChange(
    title="another carrier, with the dead time that the devices need",
    moves=("modulator.carrier",),
    kind="design",
    follows=(
        Follow(
            "gate_drive.dead_time",
            dead_time_needed,
            {
                "t_outlasts": Input("t_off_outlasts"),
                "mismatch": Input("gate_drive.delay_mismatch"),
                "margin": MARGIN,
            },
            "5 ns",
            "up",
        ),
    ),
    sources=(derivation("order of commands, delays and edges of a leg"),),
)
