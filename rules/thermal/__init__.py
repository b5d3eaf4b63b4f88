"""Heat: junctions, heatsink, inside air, surfaces."""
