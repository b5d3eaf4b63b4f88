"""Supply and rails."""
