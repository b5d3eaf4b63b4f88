"""Proven changes: solved for a limit, rounded to stock, run again; the plan."""
