"""A review turned into text: one module per kind of report."""
