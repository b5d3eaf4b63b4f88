"""Design review from a spec file: reading, evaluating, judging, changing, reporting.

For programs that want the answers and not the reports:

>>> from ampreview.linter import load_text
>>> loaded = load_text('''
... amplifier_spec: 1
... channels:
...   main:
...     nothing: of the kind
... ''', "board.amp.yaml")
>>> loaded.spec is None, [(item.problem, item.place.line) for item in loaded.refusals]
(True, [('`nothing` is not known in channels.main', 5)])

``review_spec(loaded.spec)`` reviews a spec that can be read against the catalogue: one
``Finding`` for each check and subject, and the verdict.  ``review_many(items, executor)`` reviews
files, texts and variants of a base and gives a small ``Result`` for each.

Nothing is imported before it is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .batch.items import Text, Variant, from_data
    from .batch.many import review_many
    from .batch.result import Result
    from .batch.work import Order
    from .evaluation.catalogue import load as load_catalogue
    from .finding import Finding, Severity, Status
    from .judging.review import Review, review_file
    from .judging.review import review as review_spec
    from .reading.loading import Loaded, Spec, load_file, load_text
    from .reading.refusal import Refusal

__all__ = [
    "Finding",
    "Loaded",
    "Order",
    "Refusal",
    "Result",
    "Review",
    "Severity",
    "Spec",
    "Status",
    "Text",
    "Variant",
    "from_data",
    "load_catalogue",
    "load_file",
    "load_text",
    "review_file",
    "review_many",
    "review_spec",
]

# Where each name stands.  A function may not be called like its module here: importing the
# module would hide the function.
_PLACES = {
    "Finding": ("finding", "Finding"),
    "Severity": ("finding", "Severity"),
    "Status": ("finding", "Status"),
    "Loaded": ("reading.loading", "Loaded"),
    "Spec": ("reading.loading", "Spec"),
    "load_file": ("reading.loading", "load_file"),
    "load_text": ("reading.loading", "load_text"),
    "Refusal": ("reading.refusal", "Refusal"),
    "Review": ("judging.review", "Review"),
    "review_file": ("judging.review", "review_file"),
    "review_spec": ("judging.review", "review"),
    "Order": ("batch.work", "Order"),
    "Result": ("batch.result", "Result"),
    "Text": ("batch.items", "Text"),
    "Variant": ("batch.items", "Variant"),
    "from_data": ("batch.items", "from_data"),
    "review_many": ("batch.many", "review_many"),
    "load_catalogue": ("evaluation.catalogue", "load"),
}


def __getattr__(name: str) -> Any:
    """The name from the module that defines it, imported now."""
    if name not in _PLACES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    module, attribute = _PLACES[name]
    return getattr(import_module(f".{module}", __name__), attribute)


def __dir__() -> list[str]:
    """What a user of the library may use."""
    return sorted({*globals(), *_PLACES})
