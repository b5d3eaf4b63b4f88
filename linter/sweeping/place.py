"""Which values of a spec a path stands for, and what one of them may be."""

from difflib import get_close_matches

from ..declare import CHANNELS, Field
from ..declare.paths import is_below_channel
from ..reading.loading import Spec
from ..reading.refusal import Refusal
from ..reading.source import Document, read
from ..reading.unknown_key import known_field
from ..reading.validation import Leaf, accepted

FILE = "--vary"
NO_DOCUMENT = Document({}, {}, {}, ())
VARIED = ("quantity", "count", "word", "flag")
MOST_NAMED = 3


class SweepError(Exception):
    """A sweep that cannot be made as asked, and why."""


def field_at(path: str, spec: Spec) -> Field:
    """The field at a path, with or without the name of a channel."""
    field = known_field(spec.schema, path)
    if field is None:
        raise SweepError(f"`{path}` is not known; {_hint(path, spec)}")
    if field.kind not in VARIED:
        kind = "a section; name one of its values" if field.model else f"a {field.kind}, not varied"
        raise SweepError(f"`{path}` is {kind}")
    return field


def paths_of(path: str, spec: Spec) -> tuple[str, ...]:
    """The full paths behind a path: without a channel's name that of every channel."""
    if is_below_channel(path):
        name = path.split(".")[1]
        if name not in spec.channels:
            raise SweepError(f"`{name}` is no channel of this spec; {', '.join(spec.channels)}")
        found: tuple[str, ...] = (path,)
    elif spec.schema.is_channel_path(path):
        found = tuple(f"{CHANNELS}.{name}.{path}" for name in spec.channels)
    else:
        found = (path,)
    if not found:
        raise SweepError(f"`{path}` belongs to a channel, and this spec has none")
    if "[" in path and any(full not in spec.values for full in found):
        raise SweepError(f"`{path}` is not stated in this spec")
    return found


def plain_data(text: str) -> object:
    """A value as a spec would hold it; what stands in braces is a mapping."""
    if not text.startswith("{"):
        return text
    document = read(f"value: {text}", FILE)
    if document.refusals or document.data is None or list(document.data) != ["value"]:
        why = document.refusals[0].problem if document.refusals else "not one value"
        raise SweepError(f"{text}: {why}")
    return document.data["value"]


def checked(path: str, data: object, spec: Spec) -> Leaf:
    """A value as the spec takes it."""
    found = accepted(spec.schema, NO_DOCUMENT, FILE, path, data)
    if isinstance(found, Refusal):
        example = f", for example {found.example}" if found.example else ""
        raise SweepError(f"{path}: {found.problem}; expected {found.expected}{example}")
    return found


def _hint(path: str, spec: Spec) -> str:
    """What may have been meant: a path alike, or one that ends alike."""
    fields = [name for name, field in spec.schema.fields.items() if field.kind in VARIED]
    local = path.split(".", 2)[2] if is_below_channel(path) else path
    last = local.rpartition(".")[2]
    ends = sorted((x for x in fields if x.rpartition(".")[2] == last), key=len)
    near = get_close_matches(local, fields, MOST_NAMED, cutoff=0.75)
    found = (ends or near)[:MOST_NAMED]
    if found:
        return f"perhaps {' or '.join(found)}"
    return "`ampreview catalogue --fields` lists every path"
