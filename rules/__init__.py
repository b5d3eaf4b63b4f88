"""The catalogue: one file per check, the physics in ``formulas``, the operating point."""
