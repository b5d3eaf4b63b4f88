"""Protection: fuses, reversed and surging supplies, direct voltage at the loudspeaker."""
