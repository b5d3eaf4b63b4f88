"""The review of a class-D amplifier's spec file: reading, evaluating, reporting."""
