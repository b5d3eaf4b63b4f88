"""Claims: what the paperwork says against what follows from the design."""
