"""Traces, leads, connectors and spacing."""
