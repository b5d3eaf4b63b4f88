"""Text to SI numbers with tolerance, and back."""
