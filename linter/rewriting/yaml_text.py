"""Values as a spec file would hold them: quoting, flow and block form, the file's own style.

Nothing here parses YAML; whoever writes with these texts reads the result back.
"""

import json
import re
from collections.abc import Mapping
from typing import Any

from ..quantities.quantity import QuantityError, parse
from ..quantities.value import SIDES

ONE_VALUE = frozenset({"value", "from", *SIDES})

_PLAIN = re.compile(r"[\w.+±°(/<][^\x00-\x1f]*|-[\w.+±][^\x00-\x1f]*")
_CODE = re.compile(r"([0-9]+)(?:\.([0-9]+))? (p|n|u|m|k|M|)(ohm|F)")
_CODED = re.compile(r"[0-9]+[RKkMpnumµμ][0-9]*")
_SPREAD = re.compile(r"( *)(±|\+/-|\+-)( *)")
_TIGHT = re.compile(r"(?<=[0-9]) (?=[^\W\d_]|[%°])")
_GAPLESS = re.compile(r"[0-9](?:[^\W\d_]|[%°])")


class Alias(str):
    """The name of an anchor, written as ``*name``."""

    __slots__ = ()


def scalar(text: str, flow: bool = False, quote: str = "") -> str:
    """A text as one YAML scalar, in quotes where it needs them or had them.

    >>> scalar("24 V"), scalar("a: b"), scalar("it's", quote="'")
    ('24 V', '"a: b"', "'it''s'")
    """
    if quote == "'" and text.isprintable():
        return "'" + text.replace("'", "''") + "'"
    clear = (
        bool(_PLAIN.fullmatch(text))
        and not re.search(r":(?:\s|$)|\s#|\s$", text)
        and not (flow and re.search(r"[,\[\]{}]", text))
    )
    return text if clear and not quote else json.dumps(text, ensure_ascii=False)


def flow(data: Any, inside: bool = False) -> str:
    """Plain data in one line; ``inside``: within brackets already.

    >>> flow({"min": "8 ns", "max": "12 ns"})
    '{min: 8 ns, max: 12 ns}'
    """
    if data is None:
        return ""
    if isinstance(data, Alias):
        return f"*{data}"
    if isinstance(data, Mapping):
        pairs = (f"{key}: {flow(value, True)}" for key, value in data.items())
        return "{" + ", ".join(pairs) + "}"
    if isinstance(data, list | tuple):
        return "[" + ", ".join(flow(item, True) for item in data) + "]"
    return scalar(str(data), inside)


def block(key: str, data: Any, indent: int, step: int) -> list[str]:
    """The lines of a key in block form; one value and the items of a list stay on a line."""
    margin = " " * indent
    if isinstance(data, Mapping) and data and not data.keys() <= ONE_VALUE:
        below = [line for k, v in data.items() for line in block(k, v, indent + step, step)]
        return [f"{margin}{key}:", *below]
    if isinstance(data, list | tuple) and any(isinstance(item, Mapping) for item in data):
        return [f"{margin}{key}:", *(f"{margin}{' ' * step}- {flow(item)}" for item in data)]
    return [f"{margin}{key}: {flow(data)}".rstrip()]


def in_style_of(old: Any, new: Any, unit: str) -> Any:
    """A new quantity written the way the old one was, where that means the same.

    >>> in_style_of("22µH ±20%", "33 uH ± 20 %", "H")
    '33µH ±20%'
    >>> in_style_of("4R7", "5.6 ohm", "ohm")
    '5R6'
    """
    if isinstance(new, Mapping):
        olds = old if isinstance(old, Mapping) else {}
        return {key: in_style_of(olds.get(key, old), text, unit) for key, text in new.items()}
    if isinstance(old, Mapping):
        old = next(iter(old.values()), None)
    if not isinstance(old, str) or not isinstance(new, str):
        return new
    styled = _styled(old, new)
    try:
        return styled if parse(styled, unit) == parse(new, unit) else new
    except QuantityError:
        return new


def _styled(old: str, new: str) -> str:
    before, after = _SPREAD.search(old), _SPREAD.search(new)
    if before and after:
        head = _styled(old[: before.start()], new[: after.start()])
        return head + before.group() + _styled(old[before.end() :], new[after.end() :])
    if _CODED.fullmatch(old) and (parts := _CODE.fullmatch(new)):
        whole, decimals, prefix, unit = parts.groups()
        return whole + (prefix or ("R" if unit == "ohm" else "F")) + (decimals or "")
    for sign in ("µ", "μ"):
        if sign in old:
            new = re.sub(r"(?<=[0-9 ])u(?=[^\W\d_])", sign, new)
    if "°C" in old:
        new = new.replace("degC", "°C")
    for sign in ("Ω", "Ω"):
        if sign in old:
            new = new.replace("ohm", sign)
    return _TIGHT.sub("", new) if _GAPLESS.search(old) else new
