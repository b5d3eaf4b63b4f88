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
``Finding`` for each check and subject, and the verdict.

Nothing is imported before it is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .evaluation.catalogue import load as load_catalogue
    from .finding import Finding, Severity, Status
    from .judging.review import Review, review_file
    from .judging.review import review as review_spec
    from .reading.loading import Loaded, Spec, load_file, load_text
    from .reading.refusal import Refusal

__all__ = [
    "Finding",
    "Loaded",
    "Refusal",
    "Review",
    "Severity",
    "Spec",
    "Status",
    "load_catalogue",
    "load_file",
    "load_text",
    "review_file",
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
