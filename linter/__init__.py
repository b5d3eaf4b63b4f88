"""The review of a class-D amplifier's spec file: reading, evaluating, reporting.

For programs that want the answers and not the reports:

>>> from ampreview.linter import Status, load_text, review_spec
>>> loaded = load_text('''
... amplifier_spec: 1
... supply: {source: dc-source, rails: single, v_rail: 36 V ± 5 %}
... channels:
...   main:
...     output_stage: {topology: full-bridge, devices: discrete, device: {v_dss: 40 V}}
...     protection: no such key
... ''', "board.amp.yaml")
>>> loaded.spec is None, [(item.problem, item.place.line) for item in loaded.refusals]
(True, [('`protection` is not known in channels.main', 7)])

A spec that can be read is reviewed against the catalogue:

>>> loaded = load_text('''
... amplifier_spec: 1
... supply: {source: battery}
... battery: {charger: {v: 25.6 V}, series: 6, chemistry: li-ion, cell: {v_charge: 4.2 V}}
... ''', "board.amp.yaml")
>>> found = review_spec(loaded.spec)
>>> answer = next(item for item in found.findings if item.check == "charge-voltage")
>>> answer.status is Status.FINDING, str(answer.severity), round(answer.figure, 4)
(True, 'critical', 1.0159)

Nothing is imported before it is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .catalogue import load as load_catalogue
    from .finding import Finding, Severity, Status
    from .loading import Loaded, Spec, load_file, load_text
    from .refusal import Refusal
    from .review import Review, review_file
    from .review import review as review_spec

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
    "Loaded": ("loading", "Loaded"),
    "Spec": ("loading", "Spec"),
    "load_file": ("loading", "load_file"),
    "load_text": ("loading", "load_text"),
    "Refusal": ("refusal", "Refusal"),
    "Review": ("review", "Review"),
    "review_file": ("review", "review_file"),
    "review_spec": ("review", "review"),
    "load_catalogue": ("catalogue", "load"),
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
