"""Paths of a spec: of the whole file, of a channel, and as a schema lists them.

A channel is one of the named sections under ``channels``.  A schema lists its fields
without ``channels.<name>.``, and items of a list under ``[]``: ``stage.rungs[].r``.
"""

import re
from functools import lru_cache

CHANNELS = "channels"
PRODUCT = "product"
_CHANNEL = re.compile(rf"{CHANNELS}\.[^.]+\.")
_NUMBER = re.compile(r"\[\d+\]")


@lru_cache(maxsize=4096)
def field_path(path: str) -> str:
    """A path as a schema has it: without the channel's name, item numbers, the end of a range.

    >>> field_path("channels.left.stage.rungs[0].r"), field_path("feed.v:low")
    ('stage.rungs[].r', 'feed.v')
    """
    return _NUMBER.sub("[]", _CHANNEL.sub("", path, count=1)).partition(":")[0]


def local_path(path: str) -> str:
    """A path as seen from its channel.

    >>> local_path("channels.left.stage.coil.l")
    'stage.coil.l'
    """
    return _CHANNEL.sub("", path, count=1)


def subject_of(path: str) -> str:
    """The channel that a path of a spec belongs to, else ``product``.

    >>> subject_of("channels.left.stage.coil.l"), subject_of("feed.v")
    ('left', 'product')
    """
    return path.split(".")[1] if _CHANNEL.match(path) else PRODUCT


def sections_above(path: str) -> list[str]:
    """The sections and lists that hold a path, the outermost first.

    >>> sections_above("stage.rungs[0].r")
    ['stage', 'stage.rungs', 'stage.rungs[0]']
    """
    return [path[: match.start()] for match in re.finditer(r"[.\[]", path)]


def without_channel(text: str, subject: str) -> str:
    """A text with its paths as seen from one channel.

    >>> without_channel("channels.left.coil.l is 22 mH", "left")
    'coil.l is 22 mH'
    """
    return text.replace(f"{CHANNELS}.{subject}.", "")


def is_below_channel(path: str) -> bool:
    """Whether a path of a spec stands below the name of a channel."""
    return bool(_CHANNEL.match(path))
