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

from ampreview.rules.derived.losses import idle

STEPS = 200


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
        return self.q_oss * (max(v, 0.0) / self.swing) ** 0.5 + self.c_snubber / 2 * v

    def half_period(self, i_start: float) -> tuple[float, float]:
        """Current at the end and energy from both rails, from a current at the turn-off."""
        swing, below = self.swing, -self.swing / 2
        fallen = np.linspace(0.0, swing, 1001)  # how far the node has fallen
        moved = np.array([self.charge(x) - self.charge(swing - x) for x in fallen])
        moved -= moved[0]
        charge, current, into_rail = 0.0, i_start, 0.0
        dt = self.dead_time / STEPS
        for _ in range(STEPS):
            if charge < moved[-1]:
                v = swing / 2 - float(np.interp(charge, moved, fallen))
                charge += current * dt
            else:
                v = below - self.v_sd
                into_rail -= current * dt  # through the lower diode, out of the lower rail
            current += v / self.l * dt
        down = float(np.interp(charge, moved, fallen))
        # capacitors: charge from the upper rail to the node, and from the lower rail to it
        from_above = self.charge(down)
        into_rail -= self.charge(swing) - self.charge(swing - down)
        closing = self.charge(swing) - self.charge(down)  # from rail to rail, at the closing
        rest = 0.5 / self.carrier - self.dead_time
        tau = self.l / self.r
        final = below / self.r
        into_rail -= final * rest + (current - final) * tau * (1 - np.exp(-rest / tau))
        end = final + (current - final) * np.exp(-rest / tau)
        energy = swing / 2 * (from_above + into_rail) + swing * closing
        return float(end), float(energy)

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
        (Leg(100.0, 22e-6, 400e3, 60e-9, 30e-9, 0.0, 0.07, 1.0), 0.20),
        (Leg(100.0, 22e-6, 400e3, 100e-9, 30e-9, 0.0, 0.07, 1.0), 0.20),
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
