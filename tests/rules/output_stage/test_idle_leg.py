"""A half-bridge leg at idle, solved in time: what its rails deliver in one period.

The second method beside the formulas of the idle loss.  Rails of plus and minus half the swing,
the inductor to a capacitor so large that it stands at 0 V, two switches with the output
capacitance of a junction (C ~ v^-1/2), half of the snubber's capacitor to either rail.  The two
halves of a period mirror each other, so half of one is solved: the upper switch turns off, the
current of the inductor moves the node during the dead time, the lower switch closes on what is
left, the current falls to its opposite.  Nothing is stored at the end, so all that the rails
have delivered is lost.
"""

from dataclasses import dataclass

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from ampreview.rules.derived.idle import idle


@dataclass(frozen=True)
class Leg:
    """swing [V], l [H], carrier [Hz], dead_time [s], q_oss [C] of one switch at the swing,
    c_snubber [F], r [ohm] of switch and winding, v_sd [V]."""

    swing: float
    l: float  # noqa: E741
    carrier: float
    dead_time: float
    q_oss: float
    c_snubber: float
    r: float
    v_sd: float

    def charge(self, v: float) -> float:
        """Charge between the node and one rail that are v apart."""
        return self.q_oss * (v / self.swing) ** 0.5 + self.c_snubber / 2 * v

    def fall(self, i_start: float) -> tuple[float, float, float]:
        """How far the node falls in the dead time, the current then, charge of the diode.

        The fall is swing sin(x)^2, which makes both charges smooth in x.
        """
        swing, below = self.swing, -self.swing / 2

        def rates(_: float, state: tuple[float, float]) -> tuple[float, float]:
            sine, cosine = np.sin(state[0]), np.cos(state[0])
            per_x = self.q_oss * (sine + cosine) + 2 * self.c_snubber * swing * sine * cosine
            return state[1] / per_x, (swing / 2 - swing * sine**2) / self.l

        def is_down(_: float, state: tuple[float, float]) -> float:
            return float(state[0] - np.pi / 2)

        is_down.terminal = True  # type: ignore[attr-defined]
        way = solve_ivp(rates, (0, self.dead_time), (0.0, i_start), events=is_down, rtol=1e-8)
        x, current = way.y[:, -1]
        rest = self.dead_time - way.t[-1]
        slope = (below - self.v_sd) / self.l
        through = current * rest + slope * rest**2 / 2
        return float(swing * np.sin(x) ** 2), float(current + slope * rest), float(through)

    def half_period(self, i_start: float) -> tuple[float, float]:
        """Current at the end and energy from both rails, from a current at the turn-off."""
        swing, below = self.swing, -self.swing / 2
        down, current, through = self.fall(i_start)
        # capacitors: charge from the upper rail to the node, and from the lower rail to it
        from_above = self.charge(down)
        into_rail = self.charge(swing - down) - self.charge(swing) - through
        closing = self.charge(swing) - self.charge(down)  # from rail to rail, at the closing
        rest = 0.5 / self.carrier - self.dead_time
        tau, final = self.l / self.r, below / self.r
        fading = np.exp(-rest / tau)
        into_rail -= final * rest + (current - final) * tau * (1 - fading)
        end = final + (current - final) * fading
        return float(end), float(swing / 2 * (from_above + into_rail) + swing * closing)

    def power(self) -> float:
        """Power from both rails once the current at every turn-off is the same."""
        low, high = 0.0, self.swing / self.l / self.carrier
        for _ in range(30):
            start = (low + high) / 2
            end, _ = self.half_period(start)
            low, high = (start, high) if -end > start else (low, start)
        return 2 * self.carrier * self.half_period((low + high) / 2)[1]


@pytest.mark.parametrize(
    ("leg", "within"),
    [
        (Leg(100.0, 22e-6, 400e3, 1e-12, 30e-9, 0.0, 0.07, 1.0), 0.01),
        (Leg(100.0, 22e-6, 400e3, 10e-9, 30e-9, 0.0, 0.07, 1.0), 0.01),
        (Leg(100.0, 22e-6, 400e3, 25e-9, 30e-9, 0.0, 0.07, 1.0), 0.04),
        (Leg(158.0, 33e-6, 250e3, 80e-9, 101e-9, 820e-12, 0.14, 0.85), 0.02),
        (Leg(158.0, 33e-6, 250e3, 40e-9, 101e-9, 820e-12, 0.14, 0.85), 0.12),
        (Leg(100.0, 22e-6, 400e3, 25e-9, 30e-9, 600e-12, 0.07, 1.0), 0.12),
        (Leg(29.0, 10e-6, 384e3, 20e-9, 13.9e-9, 470e-12, 0.16, 0.85), 0.05),
        # soft: a fortieth of the hard loss is left, the ripple shrinks while the diode conducts
        (Leg(100.0, 22e-6, 400e3, 60e-9, 30e-9, 0.0, 0.07, 1.0), 0.12),
        (Leg(100.0, 22e-6, 400e3, 100e-9, 30e-9, 0.0, 0.07, 1.0), 0.12),
        (Leg(29.0, 10e-6, 384e3, 50e-9, 13.9e-9, 470e-12, 0.16, 0.85), 0.15),
    ],
)
def test_idle_loss_of_a_leg_solved_in_time(leg: Leg, within: float) -> None:
    """What the rails deliver in a period, against the sum of the terms."""
    found = idle(
        v_swing=leg.swing,
        carrier=leg.carrier,
        q_oss=leg.q_oss,
        dead_time=leg.dead_time,
        v_sd=leg.v_sd,
        ripple=leg.swing / (4 * leg.l * leg.carrier),
        r_ds_on=leg.r,
        c_snubber=leg.c_snubber,
        n_legs=1.0,
        parallel=1.0,
        q_g=0.0,
        v_drv=12.0,
        r_winding=0.0,
        p_core=0.0,
        levels="two-level",
        c_ground="none",
        q_least=1e-15,
        p_auxiliary=0.0,
    )
    assert found == pytest.approx(leg.power(), rel=within)
