"""What can be said of a spec before any check: prefix slips and contradictions.

These findings look at the stated values alone, so they need no rule file; their names
stand in ``BUILT_IN`` for the catalogue.
"""

from collections.abc import Hashable, Iterator, Mapping
from dataclasses import replace
from functools import partial

from ..check import Derived, Source, derivation
from ..declare import (
    PRODUCT,
    Field,
    field_path,
    is_of_another_kind,
    local_path,
    subject_of,
    usual_bounds,
)
from ..evaluation.graph import Graph
from ..evaluation.node import Computed, FigureError, Node
from ..evaluation.tolerance import worst_case
from ..finding import Advice, Finding, Severity
from ..quantities.quantity import Value, show, spell
from ..reading.loading import Spec
from .bounds import bounds_asked_of
from .stated import CONTRADICTS, UNUSUAL, Asked, stated_finding

SLIPS = (1e3, 1e-3, 1e6, 1e-6, 1e9, 1e-9)
NEAR = 3.0
READ_OFF = ("datasheet", "measured")
APART = 100.0
USUAL = Source("usual range of the field, common practice, no source", kind="common practice")
SIDES = Source("spread of data-sheet lines, common practice, no source", kind="common practice")
BUILT_IN = {
    UNUSUAL: "A value that is possible but far from what such parts have:"
    " mostly a slipped prefix (nF for µF), which spoils everything computed from it. Major"
    " when one slip of a prefix would bring it back into the usual range, else minor; minor too"
    " within a factor of three of that range, whose ends are not sharp, and where the value is"
    " stated as measured or from a data sheet: then the unit is asked for. The slip is one guess"
    " among others (a wrong digit, a wrong field), so it is put into a copy as an estimate only."
    " Major too where the sides of one data-sheet line are more than a factor of 100 apart.",
    CONTRADICTS: "A value that the spec states although it follows from other"
    " stated values, and that does not agree with them, by a factor of three where an"
    " assumption comes between (15 % for what a pack of known cells gives); a value far"
    " below the least that they give, where none of them is an estimate; or a"
    " value beyond another one that bounds it, such as a travel that is linear beyond the one"
    " that destroys. One of the two is wrong, and the checks use the stated one. What lies"
    " beyond a bound of physics cannot be permitted; two mere statements that differ can.",
}


def built_in_findings(spec: Spec, graph: Graph) -> tuple[Finding, ...]:
    """All findings on the stated values of a spec; of several bounds of one value the hardest."""
    told: dict[tuple[str, Hashable], Finding] = {}
    for asked in asked_of(spec, graph.derived):
        item = asked.answer(spec, graph)
        if item is None:
            continue
        about = (item.title, item.evidence.leaves)
        if about not in told or told[about].permissible > item.permissible:
            told[about] = item
    return tuple(told.values())


def asked_of(spec: Spec, derived: Mapping[str, Derived]) -> Iterator[Asked]:
    """Every question about the stated values of a spec."""
    for path, value in spec.values.items():
        if isinstance(value, Value):
            field = spec.schema.field_of(path)
            words = {word for kind in field.also_in.when for word in kind} if field.also_in else ()
            yield Asked(frozenset({field_path(path), *words}), partial(_unusual, path=path))
    yield from _asked_of_contradictions(spec, derived)
    yield from bounds_asked_of(spec, derived)


def _unusual(spec: Spec, graph: Graph, path: str) -> Finding | None:
    value = spec.values[path]
    assert isinstance(value, Value)
    field = spec.schema.field_of(path)
    bounds = usual_bounds(field)
    if value.form == "line" and 0.0 < APART * value.lo < value.hi:
        return _sides_apart(spec, path, value)
    if bounds is None or (field.zero and value.lo == 0.0):
        return None
    low, high = bounds
    if low <= value.hi and value.lo <= high:
        return None
    if _is_of_another_kind(graph, path, value, field):
        return None
    return _unusual_finding(spec, path, value, field, bounds)


def _is_of_another_kind(graph: Graph, path: str, value: Value, field: Field) -> bool:
    """Whether such a value is usual in another kind of design, and this may be one."""
    subject = subject_of(path)
    channel = None if subject == PRODUCT else subject
    kinds = field.also_in.when if field.also_in else ({},)
    may_be = any(graph.matches(words, channel) is True for words in kinds)
    return may_be and is_of_another_kind(field, value.lo, value.hi)


def _unusual_finding(
    spec: Spec, path: str, value: Value, field: Field, bounds: tuple[float, float]
) -> Finding:
    low, high = bounds
    near = low / NEAR <= value.nominal <= high * NEAR or value.provenance in READ_OFF
    slip = None if near else next((f for f in SLIPS if low <= value.nominal * f <= high), None)
    unit = field.unit
    message = (
        f"{value.text} for {local_path(path)}; usual range {show(low, unit)} .. {show(high, unit)}"
    )
    if slip is not None and unit not in ("degC", "%", "1"):
        message += (
            f"; perhaps a slipped prefix ({show(value.nominal * slip, unit)}):"
            " check the drawing or the data sheet"
        )
    else:
        slip = None
        message += "; is the unit right?"
    place = spec.place(path)
    found = stated_finding(
        UNUSUAL,
        "Value vs. usual range of its field",
        path,
        Severity.MINOR if slip is None else Severity.MAJOR,
        message,
        (place,) if place else (),
        USUAL,
    )
    if slip is None:
        return found
    guess = {"value": spell(_scaled(value, slip), unit), "from": "estimate"}
    return replace(found, advice=Advice(follows=guess))


def _sides_apart(spec: Spec, path: str, value: Value) -> Finding:
    """A data-sheet line of which one side has slipped, while the others look usual."""
    message = (
        f"{value.text} for {local_path(path)}; the sides of a data-sheet line are rarely a"
        f" factor of {value.hi / value.lo:.0f} apart: has a prefix slipped in one of them?"
    )
    place = spec.place(path)
    title = "Sides of a data-sheet line far apart"
    places = (place,) if place else ()
    return stated_finding(UNUSUAL, title, path, Severity.MAJOR, message, places, SIDES)


def _scaled(value: Value, factor: float) -> Value:
    lo, nominal, hi = (float(f"{x * factor:.12g}") for x in (value.lo, value.nominal, value.hi))
    return replace(value, lo=lo, nominal=nominal, hi=hi)


def _asked_of_contradictions(spec: Spec, derived: Mapping[str, Derived]) -> Iterator[Asked]:
    for quantity in derived.values():
        path = quantity.stated_at
        compared = 0.0 < quantity.agree < float("inf") or quantity.least_share
        if path is None or not compared or quantity.unit in ("word", "set"):
            continue
        for channel in spec.channels if quantity.each == "channel" else (None,):
            reads = frozenset({path, quantity.name})
            yield Asked(reads, partial(_followed, quantity=quantity, path=path, channel=channel))


def _followed(
    spec: Spec, graph: Graph, quantity: Derived, path: str, channel: str | None
) -> Finding | None:
    full = graph.full(path, channel)
    stated = spec.values.get(full)
    if not isinstance(stated, Value):
        return None
    node = graph.follows(quantity.name, channel)
    if not isinstance(node, Node) or full in node.used:
        return None
    if quantity.least_share and not _believable(spec, full, stated, node, quantity):
        return _contradicts(spec, full, stated, float(node.value()), node)
    if not _computed(node) or quantity.agree == float("inf"):
        return None
    return _contradiction(spec, full, stated, node, quantity)


def _believable(spec: Spec, path: str, stated: Value, node: Node, quantity: Derived) -> bool:
    """Whether a statement is not far below what others give: no estimates, no rule of thumb."""
    way = node.way if isinstance(node, Computed) else None
    thumb = way is None or (way.assumes and way.assumes.basis.kind == "common practice")
    if thumb or any(item.path in spec.values.keys() - {path} for item in node.assumed):
        return True
    try:
        return stated.hi >= quantity.least_share * worst_case(node, -1).figure
    except FigureError:
        return True


def _computed(node: Node) -> bool:
    """Whether a value follows from stated ones; small print may be assumed, not its way."""
    assumed = isinstance(node, Computed) and node.way is not None and node.way.assumes
    return bool(node.used) and not assumed


def _contradiction(
    spec: Spec, path: str, stated: Value, node: Node, quantity: Derived
) -> Finding | None:
    try:
        low, high = worst_case(node, -1).figure, worst_case(node, 1).figure
        nominal = float(node.value())
    except FigureError:
        return None
    spread = quantity.agree * abs(nominal)
    below, above = low - spread, high + spread
    if node.assumed:
        below, above = low / quantity.assumed_within, high * quantity.assumed_within
    if stated.hi >= below and stated.lo <= above:
        return None
    return _contradicts(spec, path, stated, nominal, node)


def _contradicts(spec: Spec, path: str, stated: Value, nominal: float, node: Node) -> Finding:
    unit = spec.schema.field_of(path).unit
    places = [spec.place(item) for item in (path, *sorted(node.used))]
    found = stated_finding(
        CONTRADICTS,
        "Stated value vs. value computed from the others",
        path,
        Severity.MAJOR,
        f"{local_path(path)} is stated as {stated.text}, but {show(nominal, unit)} follows from "
        + ", ".join(local_path(item) for item in sorted(node.used)),
        tuple(place for place in places if place),
        derivation("recomputed from the values named"),
    )
    right = float(f"{nominal:.3g}")
    return replace(found, advice=Advice(follows=spell(Value(right, right, right), unit)))
