"""The operating point: quantities that follow from the leaves of the spec."""
