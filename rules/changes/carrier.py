"""Another carrier, with the dead time that its devices need.

The carrier is moved for the band, the ripple or a receiver.  Each cycle loses the dead time
twice: it is set to what the devices need and no more, ten nanoseconds above the slowest
turn-off.  Losses in switching go with the carrier; the whole review is run again with it.
"""

from ...linter.check import derivation
from ...linter.design_change import DesignChange
from .device_class import DEAD_TIME

CHANGE = DesignChange(
    title="another carrier, with the dead time that the devices need",
    moves=("modulator.carrier",),
    kind="part",
    follows=(DEAD_TIME,),
    sources=(derivation("order of commands, delays and edges of a leg"),),
)
