"""Battery."""
