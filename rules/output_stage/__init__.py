"""Output stage: voltage, current, dead time, losses and over-current protection."""
