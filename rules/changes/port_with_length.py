"""A port of another area, with the length that keeps the tuning of the box.

The tuning goes with the area over the length: the port is longer in nearly the same proportion.
"""

from ...linter.design_change import DesignChange, Follow
from ..derived.port import HELMHOLTZ, LENGTH_NEEDED
from ..formulas.acoustics import PORT_ENDS, port_length

CHANGE = DesignChange(
    title="a port of another area, and of the length that keeps the tuning",
    moves=("loudspeaker.enclosure.port_area",),
    kind="part",
    follows=(
        Follow(
            "loudspeaker.enclosure.port_length",
            port_length,
            LENGTH_NEEDED,
            "1 mm",
            new=True,
        ),
    ),
    sources=(HELMHOLTZ, PORT_ENDS.basis),
)
