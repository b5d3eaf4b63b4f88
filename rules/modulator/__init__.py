"""Modulator: carrier, sampling, noise of the edges, feedback loop."""
