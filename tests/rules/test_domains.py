"""What a field can be at all, by physics: the rest is refused, with place and example.

Shares lie within 0 and 100 % by definition; 0 K is -273.15 degC (SI brochure, definition of the
degree Celsius); magnitudes are not negative; a passive impedance turns the phase by 90 degrees at
most; a sine beyond 191 dB in air would need less than a vacuum (1 atm peak, 101.325 kPa:
20 log10(101325 / sqrt(2) / 20e-6)), 194 dB is allowed; counts end at a thousand, a convention.
"""

import json
from typing import Any

from ampreview.linter.declare import Field, load_schema
from ampreview.linter.reading.loading import load_text

SCHEMA = load_schema()
QUANTITIES = {path: x for path, x in SCHEMA.fields.items() if x.kind in ("quantity", "count")}
# the fuse may carry more than its rating where it is colder than its data sheet assumes
ABOVE_WHOLE = {"protection.fuse.k_ambient": "201 %"}
BEYOND = {
    "%": ("-1 %", "101 %"),
    "degC": ("-274 degC", "1001 degC"),
    "K": ("-1 K", "1001 K"),
    "deg": ("-1 deg", "91 deg"),
    "dB": ("-201 dB", "301 dB"),
}


def refused(path: str, text: str) -> bool:
    """Whether a value is refused; a refusal names line, what is expected and an example."""
    data: Any = text
    full = f"channels.main.{path}" if SCHEMA.is_channel_path(path) else path
    for step in reversed(full.split(".")):
        data = {step.removesuffix("[]"): [data] if step.endswith("[]") else data}
    loaded = load_text(json.dumps({"amplifier_spec": "1"} | data), "a.amp.yaml")
    for item in loaded.refusals:
        assert item.place.line >= 1
        assert item.expected
        assert item.example
    return bool(loaded.refusals)


def beyond(path: str, known: Field) -> tuple[str, ...]:
    if path in ABOVE_WHOLE:
        return ("-1 %", ABOVE_WHOLE[path])
    if known.kind == "count":
        return ("-1", "1001", "1.5") if known.zero else ("-1", "0", "1001", "1.5")
    if known.unit in BEYOND:
        return BEYOND[known.unit]
    unit = "" if known.unit == "1" else f" {known.unit}"
    return (f"-1{unit}",) if known.zero else (f"-1{unit}", f"0{unit}")


def test_what_cannot_be_is_refused() -> None:
    for path in QUANTITIES.keys() - {"amplifier_spec"}:
        known = QUANTITIES[path]
        for text in beyond(path, known):
            assert refused(path, text), (path, text)
        if known.example and "[]" not in path and "{" not in known.example:
            assert not refused(path, known.example), path
