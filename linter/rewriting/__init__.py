"""Amended copies of a spec file."""
