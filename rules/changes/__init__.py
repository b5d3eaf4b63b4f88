"""Changes of the design that no single value makes."""
