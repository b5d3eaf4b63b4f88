"""YAML text to data with places, to a spec or to refusals; safe writing of files."""
