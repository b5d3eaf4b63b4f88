"""Many variants of one spec: which values are tried, what becomes of each, where it is released."""
