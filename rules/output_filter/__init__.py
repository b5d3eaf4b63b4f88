"""Output filter: corner and carrier, inductors, capacitors, dampers, leads."""
