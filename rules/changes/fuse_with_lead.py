"""A fuse of another rating, with a lead that it protects.

A larger fuse that carries the music is no cure when the lead behind it then becomes the fuse.
The lead follows the current that the fuse lets through for long: after IEC 60127 that is up to
2.1 times its rating, after UL 248-14 1.35 times.
"""

from ...linter.check import derivation
from ...linter.design_change import DesignChange
from .supply_lead import LEAD

CHANGE = DesignChange(
    title="a fuse of another rating with the lead for it",
    moves=("protection.fuse.i_rated",),
    kind="part",
    follows=LEAD,
    sources=(derivation("the inverse of the wire table"),),
)
