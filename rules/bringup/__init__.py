"""The steps of a bring-up, one a file: what to do, what to read, where to stop."""
