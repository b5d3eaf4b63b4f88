"""A high-pass ahead of the loudspeaker, with its order.

Below the tuning of a vented box nothing but the suspension holds the cone: it takes a slope of
12 dB per octave at least, which is a corner and an order together.
"""

from ...linter.check import COMMON_PRACTICE, Constant
from ...linter.design_change import DesignChange, Follow


def as_usual(order: float) -> float:
    """The usual order."""
    return order


ORDER = Constant("2", "order of the high-pass", COMMON_PRACTICE)

CHANGE = DesignChange(
    title="a high-pass ahead of the loudspeaker, 12 dB per octave",
    moves=("loudspeaker.high_pass.f",),
    kind="part",
    follows=(
        Follow(
            "loudspeaker.high_pass.order",
            as_usual,
            {"order": ORDER},
            "1",
            "up",
            new=True,
        ),
    ),
    sources=(COMMON_PRACTICE,),
)
