"""Loss at a part of the power, from points of an efficiency curve and the idle loss.

The losses of a switching stage are a constant, a term that goes with the current and one
with its square: loss = p_idle + b sqrt(p) + c p, p the output power.
"""

from itertools import pairwise

from .dissipation import efficiency_loss
from .maths import central, choose, clip, larger

Knots = tuple[tuple[float, float], ...]


def knots_of(powers: tuple[float, ...], efficiencies: tuple[float, ...], p_idle: float) -> Knots:
    """Points of power and of loss above idle, by rising power; the loss never falls.

    powers [W], efficiencies [1], p_idle [W]; returns [bundle] of W and W.  A point that
    reads below one of less power is taken as equal to it.
    Source: what goes in and does not come out.
    Units: powers [W], efficiencies [1], p_idle [W]; returns [bundle].

    >>> knots_of((10.0, 2.0), (0.8, 0.5), 1.0)
    ((2.0, 1.0), (10.0, 1.5))
    """
    points = sorted(zip(powers, efficiencies, strict=True), key=lambda point: central(point[0]))
    knots: list[tuple[float, float]] = []
    for power, efficiency in points:
        above = efficiency_loss(power, efficiency) - p_idle
        knots.append((power, larger(above, knots[-1][1] if knots else 0.0 * power)))
    return tuple(knots)


def linear_share(knots: Knots) -> float:
    """How much of the loss above idle, at the lowest point, goes with the current itself.

    knots [bundle]: power [W] and loss above idle [W] by rising power; returns [1], 0 .. 1.
    From the lowest point and the highest one: with two losses b and c of the law follow.
    Of a single point nothing can be told: all of it, the adverse end.
    Source: two linear equations.  Units: knots [bundle]; returns [1].

    >>> round(linear_share(((1.0, 3.0), (4.0, 8.0))), 4)  # 2 sqrt(p) + p
    0.6667
    """
    (p_1, loss_1), (p_2, loss_2) = knots[0], knots[-1]
    ratio = (p_2 / p_1) ** 0.5
    if len(knots) < 2:
        return 1.0
    apart = larger(loss_1 * (ratio**2 - ratio), 1e-12)
    return choose(ratio > 1.0, clip((loss_1 * ratio**2 - loss_2) / apart, 0.0, 1.0), 1.0)


def loss_above_idle(p_out: float, knots: Knots) -> float:
    """Loss above idle at an output power, from points of a curve.

    p_out [W]; knots [bundle]: power [W] and loss above idle [W] by rising power; returns [W].
    Below the lowest point the law of the constant, the current and its square; between
    points and beyond the highest a straight line, which lies below that law between two
    points by 2 % at most where one has twice the power of the other, by 15 % where ten times.
    Source: derivation; published curves in the tests.
    Units: p_out [W], knots [bundle]; returns [W].

    >>> points = ((1.0, 3.0), (4.0, 8.0))  # 2 sqrt(p) + p
    >>> round(loss_above_idle(0.25, points), 4), loss_above_idle(4.0, points)
    (1.25, 8.0)
    """
    share = linear_share(knots)
    p_1, loss_1 = knots[0]
    part = p_out / p_1
    found = loss_1 * (share * part**0.5 + (1 - share) * part)
    for (p_low, low), (p_high, high) in pairwise(knots):
        slope = (high - low) / larger(p_high - p_low, 1e-9 * p_high)
        found = choose(p_out > p_low, low + slope * (p_out - p_low), found)
    return found


def largest_fall(
    powers: tuple[float, ...], efficiencies: tuple[float, ...], p_idle: float
) -> float:
    """The most by which a loss exceeds that of a point of more power, over the latter.

    powers [W], efficiencies [1] of the points of a curve, p_idle [W]; returns [1], 0 where
    the loss never falls.  Two efficiencies at one power count as a fall.
    Source: no term of the loss becomes smaller with load.
    Units: powers [W], efficiencies [1], p_idle [W]; returns [1].

    >>> round(largest_fall((10.0, 20.0, 40.0), (0.8, 0.9, 0.9), 1.0), 3)
    0.125
    """
    losses = [efficiency_loss(p, e) for p, e in zip(powers, efficiencies, strict=True)]
    fall = 0.0
    for p_high, loss in zip(powers, losses, strict=True):
        fall = larger(fall, p_idle / loss - 1)
        for p_low, before in zip(powers, losses, strict=True):
            fall = choose(p_low <= p_high, larger(fall, before / loss - 1), fall)
    return fall
