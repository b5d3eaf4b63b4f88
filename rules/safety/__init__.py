"""Safety: shock, fire, stored charge, insulation, ingress."""
