"""Gate drive: levels, strength, false turn-on, bootstrap and gate supply."""
