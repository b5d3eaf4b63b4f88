"""Loudspeaker: load, power rating, excursion, port."""
