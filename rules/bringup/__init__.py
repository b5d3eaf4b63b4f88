"""The steps of a bring-up, one a file: what to do, what to read, where to stop."""

NOTES = (
    "Follow the order: each step relies on those before it. Discharge before touching, dummy load"
    " before loudspeaker, two persons where mains, packs or more than 60 V are about. Mains work"
    " is for licensed persons.",
)
"""What holds for the whole sheet, told at its head."""
