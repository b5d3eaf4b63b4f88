"""What is wrong with a file of design changes."""

from collections.abc import Iterator, Mapping

from ..check import Constant, Derived, Input
from ..declare import Schema
from ..design_change import DesignChange
from ..quantities.quantity import QuantityError, to_si
from .parameters import parameters

BEFORE = "before "


def change_faults(
    change: DesignChange, derived: Mapping[str, Derived], schema: Schema
) -> Iterator[str]:
    """What is wrong with a design change, as ``field: what``."""
    for path in (*change.moves, *(item.path for item in change.follows)):
        if path not in schema.fields:
            yield f"{path} is not a field of the spec"
    for item in change.follows:
        for source in item.inputs.values():
            for fault in _source_faults(source, derived, schema):
                yield f"follows: {item.path}: {fault}"
        if item.figure and set(parameters(item.figure)) != set(item.inputs):
            yield f"follows: {item.path}: figure and inputs differ"
    for path in change.applies:
        if path not in schema.fields and path not in derived:
            yield f"applies: {path} is unknown"


def _source_faults(
    source: Input | Constant, derived: Mapping[str, Derived], schema: Schema
) -> Iterator[str]:
    if isinstance(source, Constant):
        try:
            to_si(source.value)
        except QuantityError as error:
            yield f"{source.value}: {error.problem}"
        return
    path = source.path.removeprefix(BEFORE).removeprefix("all ").partition(":")[0]
    if path not in schema.fields and path not in derived:
        yield f"{source.path} is unknown"
