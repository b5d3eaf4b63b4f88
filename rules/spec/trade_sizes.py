"""Sizes and words of the trade that mean one value or one word of the spec, and no other.

AWG sizes: diameter 0.127 mm x 92^((36 - n) / 39), as the gauge is defined in ASTM B258 (formula
as quoted on pages about it, standard not seen).  Copper of 1 oz is that of a square foot of foil;
board makers sell it as 35 um.  Capacitor dielectrics by the codes of EIA-198 and IEC 60384 (from
memory) and by the short names of plastic films (common practice, no source).
"""

from collections.abc import Mapping

THINNEST, THICKEST = 30, 4


def _area(gauge: int) -> str:
    diameter = 0.127 * 92 ** ((36 - gauge) / 39)
    return f"{3.141592653589793 / 4 * diameter**2:.3g} mm2"


AWG: Mapping[str, str] = {
    f"AWG {gauge}": _area(gauge) for gauge in range(THICKEST, THINNEST + 1)
} | {f"{gauge} AWG": _area(gauge) for gauge in range(THICKEST, THINNEST + 1)}

COPPER_WEIGHTS: Mapping[str, str] = {
    "0.5 oz": "17.5 um",
    "1/2 oz": "17.5 um",
    "1 oz": "35 um",
    "2 oz": "70 um",
    "3 oz": "105 um",
    "4 oz": "140 um",
}

FILMS: Mapping[str, str] = {
    "PP": "polypropylene",
    "MKP": "polypropylene",
    "PET": "polyester",
    "MKT": "polyester",
    "C0G": "ceramic-class-1",
    "NP0": "ceramic-class-1",
    "NPO": "ceramic-class-1",
    "X7R": "ceramic-class-2",
    "X7S": "ceramic-class-2",
    "X5R": "ceramic-class-2",
    "X6S": "ceramic-class-2",
    "Y5V": "ceramic-class-2",
}

TOPOLOGIES: Mapping[str, str] = {
    "BTL": "full-bridge",
    "bridge-tied load": "full-bridge",
    "H-bridge": "full-bridge",
    "SE": "half-bridge",
    "single-ended": "half-bridge",
}

DEVICES_CALLED: Mapping[str, str] = {
    "MOSFET": "discrete",
    "MOSFETs": "discrete",
    "GaN": "discrete",
    "IC": "integrated",
}

CHEMISTRIES_CALLED: Mapping[str, str] = {
    "LiFePO4": "lfp",
    "LiFePO": "lfp",
    "lithium-ion": "li-ion",
    "NMC": "li-ion",
    "NCA": "li-ion",
    "AGM": "lead-acid-agm",
    "Ni-MH": "nimh",
}

MARKETS: Mapping[str, str] = {
    "European Union": "eu",
    "United Kingdom": "uk",
    "GB": "uk",
    "USA": "us",
    "United States": "us",
    "Canada": "ca",
}
