"""Quantities back to text: for people, and as a spec file would hold them."""

import math

from .units import Unit, same_kind, unit_of
from .value import SIDES, Value

# What a field of that unit asks for, and a text that it would accept.
EXPECTED = {
    "1": ("a plain number without unit", "3"),
    "V": ("a voltage with its unit", "24 V"),
    "A": ("a current with its unit", "3.5 A"),
    "W": ("a power with its unit", "100 W"),
    "ohm": ("a resistance or impedance with its unit", "4.7 ohm"),
    "F": ("a capacitance with its unit", "680 nF"),
    "H": ("an inductance with its unit", "22 uH"),
    "s": ("a time with its unit", "45 ns"),
    "Hz": ("a frequency with its unit", "400 kHz"),
    "degC": ("a temperature with its unit", "85 degC"),
    "K": ("a temperature difference with its unit", "15 K"),
    "K/W": ("a thermal resistance with its unit", "1.2 K/W"),
    "J": ("an energy with its unit", "120 mJ"),
    "Wh": ("an energy with its unit", "90 Wh"),
    "C": ("a charge with its unit", "25 nC"),
    "Ah": ("a charge with its unit", "2.5 Ah"),
    "%": ("a share with its % sign", "90 %"),
    "dB": ("a level in dB", "6 dB"),
    "V/V": ("a gain in V/V or dB", "26 dB"),
    "m": ("a length with its unit", "12 mm"),
    "mm": ("a length with its unit", "12 mm"),
    "m2": ("an area with its unit", "1.5 mm2"),
    "mm2": ("an area with its unit", "1.5 mm2"),
    "cm2": ("an area with its unit", "210 cm2"),
    "m3": ("a volume with its unit", "25 L"),
    "L": ("a volume with its unit", "25 L"),
    "mm3": ("a volume with its unit", "1200 mm3"),
    "kg": ("a mass with its unit", "25 g"),
    "deg": ("an angle with its unit", "40 deg"),
    "rad": ("an angle with its unit", "40 deg"),
    "h": ("a time with its unit", "6 h"),
    "min": ("a time with its unit", "30 min"),
    "T": ("a flux density with its unit", "250 mT"),
    "V/s": ("a voltage slope with its unit", "50 V/ns"),
    "V/ns": ("a voltage slope with its unit", "50 V/ns"),
    "W/m3": ("a power loss density with its unit", "300 kW/m3"),
    "kW/m3": ("a power loss density with its unit", "300 kW/m3"),
    "W/m2": ("an irradiance with its unit", "1000 W/m2"),
    "N/A": ("a force factor with its unit", "7.5 T m"),
    "T m": ("a force factor with its unit", "7.5 T m"),
    "A2s": ("a melting integral with its unit", "40 A2s"),
}
_ANY = ("a number with its unit", "45 ns")

# Units shown with a prefix, and the smallest and largest power of ten of that prefix.
# Capacitors are sold in microfarad however large; times and lengths take no kilo.
_PREFIXES = {-12: "p", -9: "n", -6: "u", -3: "m", 0: "", 3: "k", 6: "M", 9: "G"}
_REACH = dict.fromkeys(("V", "A", "W", "ohm", "H", "Hz", "J", "C", "T", "N", "Pa"), (-12, 9))
_REACH |= {"s": (-12, 0), "m": (-6, 0), "F": (-12, -6), "S": (-9, 3), "V/K": (-3, 0)}
_PRINTED = (("ohm", "Ω"), ("degC", "°C"), ("m2", "m²"), ("m3", "m³"), ("A2", "A²"))
_DIGITS = 12


def expected(unit: str | None) -> tuple[str, str]:
    """What a field of that unit expects, and an example."""
    if unit is None:
        return _ANY
    return EXPECTED.get(unit, (f"a number in {unit}", f"2 {unit}"))


def noun(unit: Unit) -> str:
    """What a unit measures, or nothing where that has no name here."""
    for text, (phrase, _) in EXPECTED.items():
        known = unit_of(text)
        if same_kind(known, unit):
            return phrase.removesuffix(" with its unit")
    return ""


def from_si(x: float, unit: str) -> float:
    """The number in front of ``unit`` that stands for the SI value ``x``."""
    known = unit_of(unit)
    if known.reference is not None and known.kind != "level":
        return 20.0 * math.log10(x / known.reference) if x else -math.inf
    return (x - float(known.offset)) / float(known.factor)


def show(x: float, unit: str, digits: int = 3) -> str:
    """For people: ``22 µH``, ``4.7 mΩ``, ``85 °C``, ``1.5 mm²``; ``1`` is a plain number."""
    if math.isnan(x):
        return "undefined"
    if math.isinf(x):
        return "infinite" if x > 0.0 else "-infinite"
    number, name = _scaled(x, unit, digits)
    return f"{_rounded(number, digits)} {printed(name)}".rstrip()


def printed(unit: str) -> str:
    """A unit as print shows it.

    >>> printed("uH"), printed("mm2")
    ('µH', 'mm²')
    """
    name = "µ" + unit[1:] if unit.startswith("u") else unit
    for plain, sign in _PRINTED:
        name = name.replace(plain, sign)
    return name


def _scaled(x: float, unit: str, digits: int) -> tuple[float, str]:
    """Number and unit, with the prefix that puts 1 to 3 digits before the point."""
    if unit not in _REACH:
        return from_si(x, unit), "" if unit == "1" else unit
    least, most = _REACH[unit]
    if unit == "F" and abs(x) >= 1.0:
        least, most = 0, 0
    power = 0 if x == 0.0 else 3 * math.floor(float(f"{math.log10(abs(x)):.12g}") / 3)
    power = min(max(power, least), most)
    if abs(float(_rounded(x / 10.0**power, digits))) >= 1000.0 and power < most:
        power += 3
    return x / 10.0**power, _PREFIXES[power] + unit


def _rounded(number: float, digits: int) -> str:
    """Significant digits without exponent where it can be read; whole numbers stay whole."""
    if abs(number) >= 10.0**digits:
        text = f"{number:.0f}" if abs(number) < 1e9 else f"{number:.{digits}g}"
    else:
        text = f"{number:.{digits}g}"
        if "e+" in text:
            return f"{float(text):.0f}"
        if "e" in text and abs(number) >= 1e-6:
            text = f"{number:.{digits + 5}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def spell(value: Value, unit: str) -> str | dict[str, str]:
    """Canonical spec text of a value, ASCII but for ``±``; a mapping where one is due."""
    if value.form == "line":
        numbers = dict(zip(SIDES, (value.lo, value.nominal, value.hi), strict=True))
        text: str | dict[str, str] = {
            side: _plain(numbers[side], unit) for side in SIDES if side in value.sides
        }
    elif value.form == "range":
        text = f"{_plain(value.lo, unit)} .. {_plain(value.hi, unit)}"
    elif value.form == "tolerance":
        text = _plain(value.nominal, unit) + " " + _tolerance(value, unit)
    else:
        text = _plain(value.nominal, unit)
    if value.provenance is None:
        return text
    source = {"from": value.provenance}
    return {**text, **source} if isinstance(text, dict) else {"value": text, **source}


def _plain(x: float, unit: str) -> str:
    number, name = _scaled(x, unit, _DIGITS)
    return f"{number:.{_DIGITS}g} {name}".rstrip()


def _tolerance(value: Value, unit: str) -> str:
    """Percents where they are round, else differences in the unit itself."""
    steps = (value.hi - value.nominal, value.nominal - value.lo)
    percents = [100.0 * step / abs(value.nominal) if value.nominal else math.inf for step in steps]
    round_off = [abs(percent - round(percent, 3)) < 1e-9 * percent for percent in percents]
    if unit not in ("degC", "dB") and all(round_off) and percents[1] < 100.0:
        up, down = (f"{round(percent, 3):g} %" for percent in percents)
    else:
        up, down = (_plain(step, "K" if unit == "degC" else unit) for step in steps)
    return f"± {up}" if up == down else f"+{up} -{down}"
