"""The loudspeakers of a channel in series instead of in parallel.

The same loudspeakers with another wire: what were several strings becomes one, and the network
has the square of their number times the impedance.  It takes less power out of the same rail.
"""

from ...linter.check import Input, derivation
from ...linter.design_change import DesignChange, Follow


def all_of_them(series: float, parallel: float) -> float:
    """All loudspeakers of the channel in one string."""
    return series * parallel


def one_string(series: float, parallel: float) -> float:
    """A single string."""
    return parallel / parallel


_NETWORK = {
    "series": Input("before loudspeaker.series"),
    "parallel": Input("before loudspeaker.parallel"),
}

CHANGE = DesignChange(
    title="the loudspeakers in series instead of in parallel",
    helps=("loudspeaker-network", "loudspeaker-minimum-impedance"),
    follows=(
        Follow("loudspeaker.series", all_of_them, _NETWORK, new=True),
        Follow("loudspeaker.parallel", one_string, _NETWORK),
    ),
    sources=(derivation("Kirchhoff: series impedances add, parallel admittances add"),),
)
