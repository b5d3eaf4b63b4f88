"""Small pieces of text that several reports share."""

import re
from collections.abc import Iterable
from dataclasses import replace

from ..check import Source
from ..declare import local_path
from ..evaluation.wording import assumed_in_words, in_words
from ..finding import Assumed, CornerValue, Evidence, Missing, Place
from ..quantities.quantity import show

# controls, separators of lines, format characters (direction, joiners, tags), surrogates, private
# use, fillers and variation selectors: what a reader cannot see, or what moves what he sees
INVISIBLE = re.compile(
    "[\x00-\x1f\x7f-\x9f\xad\u034f\u0600-\u0605\u061c\u06dd\u070f\u08e2\u115f\u1160\u17b4\u17b5"
    "\u180b-\u180f\u200b-\u200f\u2028-\u202e\u2060-\u206f\u2800\u3164\ud800-\udfff\ue000-\uf8ff"
    "\ufdd0-\ufdef\ufe00-\ufe0f\ufeff\uffa0\ufff0-\ufffc\ufffe\uffff\U000110bd\U000110cd\U0001bca0-\U0001bca3"
    "\U0001d173-\U0001d17a\U000e0000-\U000e0fff\U000f0000-\U0010ffff]"
)
MARKDOWN = re.compile(r"([\\`*_{}\[\]<>#|~&!$^])")
# what a viewer of Markdown turns into a link or calls somebody with, though it is plain text
LIVE = re.compile(
    r"(?i)(?:[a-z][a-z0-9+.-]*://|www\.|mailto:|xmpp:)[^\s`|]*"
    r"|[\w.+-]*@[\w./-]+|[\w./-]*#\d+|\bGH-\d+"
)
EIGHTHS = " ▏▎▍▌▋▊▉█"


def clean(text: str) -> str:
    r"""Text of a spec on one line, what cannot be seen as its escape: no terminal obeys it.

    >>> clean("a\x1b[31mb\nc\u202e")
    'a\\x1b[31mb\\nc\\u202e'
    """
    return INVISIBLE.sub(_as_escape, text.rstrip("\n"))


def _as_escape(found: re.Match[str]) -> str:
    return found[0].encode("unicode_escape", "surrogatepass").decode("ascii")


def escaped(text: str) -> str:
    r"""Text that Markdown shows as it is; links and names of people in it stay dead, as code.

    >>> escaped("a_b_c"), escaped("see www.example.org")
    ('a\\_b\\_c', 'see `www.example.org`')
    """
    shown, parts, end = clean(text), [], 0
    for found in LIVE.finditer(shown):
        parts += [MARKDOWN.sub(r"\\\1", shown[end : found.start()]), f"`{found[0]}`"]
        end = found.end()
    return "".join(parts) + MARKDOWN.sub(r"\\\1", shown[end:])


def cell_of_table(text: str) -> str:
    """A cell for a table of values that no spreadsheet takes for a formula.

    >>> cell_of_table("=1+1"), cell_of_table("10 V")
    ("'=1+1", '10 V')
    """
    shown = clean(text)
    return f"'{shown}" if shown.lstrip()[:1] in tuple("=+-@") else shown


def place_in_words(place: Place | None) -> str:
    """A place in words."""
    return f"line {place.line}, column {place.column}" if place else "not stated"


def against(found: Evidence) -> str:
    """The figure beside its limit: ``12 ns, at least 20 ns``."""
    if found.figure is None or found.limit is None:
        return ""
    side = "at least" if found.at_least else "at most"
    figure, limit = apart(found.figure, found.limit, found.unit)
    return f"{figure}, {side} {limit}"


def apart(x: float, y: float, unit: str) -> tuple[str, str]:
    """Two numbers as text, with as many digits as it takes to tell them apart.

    >>> apart(26.52, 26.5, "V"), apart(12.0, 12.0, "V")
    (('26.52 V', '26.5 V'), ('12 V', '12 V'))
    """
    for digits in (3, 4, 5, 6):
        texts = show(x, unit, digits), show(y, unit, digits)
        if texts[0] != texts[1]:
            return texts
    return show(x, unit), show(y, unit)


def corner(found: Evidence, most: int = 4) -> str:
    """The worst corner in the user's terms, the strongest leaves first."""
    return ", ".join(corner_value(item) for item in found.corner[:most])


def corner_value(item: CornerValue) -> str:
    """One value of a corner: its short name and the value.

    >>> corner_value(CornerValue("voltage", "feed.voltage", 29.2, "V"))
    'voltage 29.2 V'
    """
    return f"{item.name} {in_words(item.value, item.unit)}"


def cited(source: Source) -> str:
    """A source with its place and, where it is not a text that was read, its standing."""
    text = f"{source.title}, {source.where}" if source.where else source.title
    note = {"from memory": "from memory, not verified", "derived": "derived", "quoted": "as quoted"}
    standing = note.get(source.kind)
    return f"{text} ({standing})" if standing else text


def further(found: Evidence) -> str:
    """The sources of a finding beside the one that its limit comes from."""
    return "; ".join(cited(source) for source in found.sources if source != found.basis)


def assumption(item: Assumed) -> str:
    """An assumption in short: the value, which way it leans, how it is known.

    >>> assumption(Assumed("feed.band", "inf", "adverse", Source("Ohm's law", kind="derived")))
    'feed.band not given (adverse, bound)'
    """
    known = item.basis.kind if item.basis.kind in ("from memory", "derived") else item.basis.title
    known = "bound" if known == "derived" else known.removesuffix(", no source")
    assumed = assumed_in_words(replace(item, path=local_path(item.path)))
    return f"{assumed} ({item.leaning}, {known})"


def asked(item: Missing) -> str:
    """A missing leaf as a question's heading."""
    unit = "" if item.unit in ("1", "word") else f" [{item.unit}]"
    return f"{local_path(item.path)}{unit}"


def required(missing: Missing) -> str:
    """A missing leaf, with what it must be where it alone decides."""
    return ", ".join(text for text in (asked(missing), missing.border) if text)


def missing_in_words(missing: Iterable[Missing], most: int = 6) -> str:
    """Missing leaves in one line, each once, whichever channels lack it.

    >>> low = "at least 18 dB"
    >>> leaves = [Missing(f"channels.{x}.gain", "dB", "gain", "20 dB", low) for x in "ab"]
    >>> missing_in_words(leaves)
    'gain [dB], at least 18 dB'
    """
    names = list(dict.fromkeys(required(item) for item in missing))
    more = len(names) - most
    return ", ".join(names[:most]) + (f" and {more} more" if more > 0 else "")


def percent(share: float) -> str:
    """A signed share in percent, one decimal where that says more.

    >>> percent(-0.0123), percent(12.4)
    ('-1.2 %', '+1240 %')
    """
    return f"{100.0 * share:+.{0 if abs(share) >= 1.0 else 1}f} %"


def margin_of(found: Evidence) -> str:
    """The margin: a share of the limit, or the distance where a share means nothing."""
    if found.margin is not None:
        return percent(found.margin)
    return away(found.distance, found.unit)


def away(distance: float | None, unit: str) -> str:
    """A signed distance in its unit; that of two temperatures is a difference.

    >>> away(-34.8e-9, "ns"), away(5.0, "degC"), away(0.03, "%"), away(None, "V")
    ('-34.8 ns', '+5 K', '+3 points', '')
    """
    if distance is None or (unit == "1" and distance == 0.0):
        return ""
    text = show(distance, "K" if unit == "degC" else unit)
    text = text.replace(" %", " points") if unit == "%" else text
    return f"+{text}" if distance > 0.0 else text


def bar(share: float, width: int = 8) -> str:
    """A margin as a small bar; 100 % and more fill it.

    >>> bar(0.5, 4)
    '██  '
    """
    eighths = round(max(0.0, min(share, 1.0)) * width * 8)
    whole, part = divmod(eighths, 8)
    return ("█" * whole + (EIGHTHS[part] if part else "")).ljust(width)


def moves(changes: Iterable[tuple[str, str]]) -> list[tuple[str, str]]:
    """Changes with their paths as seen from the channel; those of twin channels are one.

    >>> moves([("channels.a.gain", "20 dB"), ("channels.b.gain", "20 dB")])
    [('gain', '20 dB')]
    """
    return list(dict.fromkeys((local_path(path), value) for path, value in changes))
