"""A language server (LSP 3.17): findings, meanings, names and changes while a spec is written."""
