"""Promises of the paperwork: which change of a stated value promises less than before."""

from ..declare import Field
from ..quantities.quantity import Value, parse


def is_lowered(field: Field, old: object, new: object) -> bool:
    """Whether a promise is withdrawn or made smaller; False for a field that promises nothing.

    The end of a tolerance that can be relied on counts.  Where silence promises something, the
    usual value or that there is no limit, a first statement may promise less.
    """
    if old is None and new is not None and field.promise == "limit":
        return True
    old = _in_silence(field) if old is None else old
    if not field.promise or old is None or old == "none":
        return False
    if new is None or new == "none":
        return True
    if isinstance(old, Value) and isinstance(new, Value):
        return _less(field, old, new)
    if isinstance(old, tuple) and isinstance(new, tuple):
        return bool(set(old) - set(new))
    if field.promise in ("higher", "lower") and {old, new} <= set(field.words):
        step = field.words.index(str(new)) - field.words.index(str(old))
        return step < 0 if field.promise == "higher" else step > 0
    return False


def _in_silence(field: Field) -> object:
    """What a field promises where it is silent; None where that is nothing."""
    usual = field.default.value if field.default else None
    if field.kind == "quantity" and isinstance(usual, str):
        return parse(usual, field.unit)
    return None


def _less(field: Field, old: Value, new: Value) -> bool:
    if field.promise in ("higher", "limit"):
        return new.lo < old.lo
    if field.promise == "lower":
        return new.hi > old.hi
    return field.promise == "wider" and (new.lo > old.lo or new.hi < old.hi)
