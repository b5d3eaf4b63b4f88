"""The catalogue: walks a rules package and collects its checks and derived quantities.

Every module of a domain folder that holds a ``CHECK`` is a check; the module's name is
the check's name.  A faulty one is refused with its file and the field at fault.  An input
that gives no unit or meaning of its own gets those of what its path leads to.
"""

import importlib
import inspect
import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from types import ModuleType

from ..check import Arguments, Check, Constant, Derived, Input, Promise
from ..declare import Schema, load_schema
from ..design_change import DesignChange
from ..quantities.quantity import QuantityError, to_si
from .change_faults import change_faults
from .parameters import parameters, placeholders

NOT_DOMAINS = ("formulas", "derived", "spec", "changes", "bringup", "pictures")
BUILT_IN = {
    "channel_index": ("1", "number of the channel, from 0"),
    "channel_count": ("1", "channels of the product"),
}


class CatalogueError(Exception):
    """A rule file that cannot be taken, with its file and the field at fault."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A check with what its file says about it."""

    name: str
    domain: str
    prose: str
    check: Check
    file: str


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All checks in the order of their domains, and the derived quantities they use.

    schema: the spec that they speak of.  packages: the rule packages that were read.
    promises: what the paperwork promises, in the order in which it is told.
    changes: the changes of the design that no single value makes.  judged_by: the fields and
    quantities without which nothing is judged.
    """

    entries: tuple[Entry, ...]
    derived: Mapping[str, Derived]
    domains: Mapping[str, str]
    schema: Schema
    packages: tuple[str, ...] = ()
    promises: tuple[Promise, ...] = ()
    changes: tuple[DesignChange, ...] = ()
    judged_by: tuple[str, ...] = ()

    def parts_needed(self, check: Check) -> Iterator[str]:
        """The parts that may be absent and whose values a check cannot do without."""
        for item in check.inputs.values():
            if isinstance(item, Constant) or item.default:
                continue
            path = item.path.removeprefix("all ").partition(":")[0]
            known = self.schema.fields.get(path)
            if known is None or known.default:
                continue
            above = path.rpartition(".")[0].removesuffix("[]")
            while above:
                part = self.schema.fields[above]
                if part.can_be_none and part.default is None:
                    yield above
                above = above.rpartition(".")[0]

    def entry(self, name: str) -> Entry | None:
        """The check of this name, if there is one."""
        return next((entry for entry in self.entries if entry.name == name), None)


def without_checks(schema: Schema) -> Catalogue:
    """The catalogue that has no check yet."""
    return Catalogue((), {}, {}, schema)


@cache
def load(package: str = "ampreview.rules") -> Catalogue:
    """Read the catalogue of a rules package; CatalogueError for a bad rule file."""
    return extended(without_checks(load_schema(package)), package)


def extended(base: Catalogue, package: str) -> Catalogue:
    """A catalogue with the domains and derived quantities of one more rules package."""
    root = importlib.import_module(package)
    derived = dict(base.derived)
    folders = [info.name for info in pkgutil.iter_modules(root.__path__) if info.ispkg]
    for module in _modules(f"{package}.derived") if "derived" in folders else ():
        for quantity in getattr(module, "DERIVED", ()):
            if quantity.name in derived:
                raise CatalogueError(f"{module.__file__}: {quantity.name} is derived twice")
            derived[quantity.name] = quantity
    for name in derived.keys() - base.derived.keys():
        derived[name] = _with_full_ways(derived[name], derived, base.schema)
    entries: list[Entry] = []
    domains = dict(base.domains)
    for name in folders:
        if name not in NOT_DOMAINS:
            folder = importlib.import_module(f"{package}.{name}")
            domains.setdefault(name, (folder.__doc__ or name).strip().rstrip("."))
            entries += _entries(package, name)
    for entry in entries:
        if base.entry(entry.name):
            raise CatalogueError(f"{entry.file}: there is a check named {entry.name} already")
        for fault in faults(entry, derived, base.schema):
            raise CatalogueError(f"{entry.file}: {fault}")
    full = [_with_full_inputs(entry, derived, base.schema) for entry in entries]
    done = replace(
        base,
        entries=(*base.entries, *full),
        derived=derived,
        domains=domains,
        packages=(*base.packages, package),
        changes=(*base.changes, *_changes(package, folders, derived, base.schema)),
    )
    names = [info.name for info in pkgutil.iter_modules(root.__path__)]
    return _with_promises(done, f"{package}.promises") if "promises" in names else done


def _changes(
    package: str, folders: list[str], derived: Mapping[str, Derived], schema: Schema
) -> Iterator[DesignChange]:
    """The design changes of a package, one a file."""
    for module in _modules(f"{package}.changes") if "changes" in folders else ():
        change = getattr(module, "CHANGE", None)
        if not isinstance(change, DesignChange):
            raise CatalogueError(f"{module.__file__}: CHANGE: the file holds one DesignChange")
        for fault in change_faults(change, derived, schema):
            raise CatalogueError(f"{module.__file__}: {fault}")
        yield change


def _with_promises(catalogue: Catalogue, module: str) -> Catalogue:
    """The catalogue with the promises of a module; each names fields and checks that are there."""
    found = importlib.import_module(module)
    for promise in found.PROMISES:
        paths = (promise.path, *(path for path, _ in promise.told))
        unknown = [path for path in paths if path not in catalogue.schema.fields]
        unknown += [x.check for x in promise.checks if catalogue.entry(x.check) is None]
        if unknown:
            raise CatalogueError(f"{found.__file__}: {promise.name}: {unknown[0]} is unknown")
    told = (*catalogue.promises, *found.PROMISES)
    judged_by = (*catalogue.judged_by, *getattr(found, "JUDGED_BY", ()))
    return replace(catalogue, promises=told, judged_by=judged_by)


def _with_full_inputs(entry: Entry, derived: Mapping[str, Derived], schema: Schema) -> Entry:
    inputs = _full(entry.check.inputs, derived, schema)
    return replace(entry, check=replace(entry.check, inputs=inputs))


def _with_full_ways(quantity: Derived, derived: Mapping[str, Derived], schema: Schema) -> Derived:
    for way in quantity.ways:
        for fault in _path_faults(way.inputs, derived, schema):
            raise CatalogueError(f"derived quantity {quantity.name}: {fault}")
    ways = tuple(replace(way, inputs=_full(way.inputs, derived, schema)) for way in quantity.ways)
    return replace(quantity, ways=ways)


def _full(inputs: Arguments, derived: Mapping[str, Derived], schema: Schema) -> Arguments:
    """The arguments of a figure, each input with a unit and a meaning."""
    found: dict[str, Input | Constant] = dict(inputs)
    for name, item in inputs.items():
        if isinstance(item, Input) and not (item.unit and item.meaning):
            unit, meaning = _told(item.path, derived, schema)
            full = Input(item.path, item.unit or unit, item.meaning or meaning, item.default)
            found[name] = full
    return found


def _told(path: str, derived: Mapping[str, Derived], schema: Schema) -> tuple[str, str]:
    """Unit and meaning of what a path leads to, without what follows a semicolon."""
    name = _name(path)
    if name in BUILT_IN:
        return BUILT_IN[name]
    known = schema.fields.get(name) or derived[name]
    return known.unit, known.meaning.partition(";")[0].rstrip(".")


def faults(entry: Entry, derived: Mapping[str, Derived], schema: Schema) -> Iterator[str]:
    """What is wrong with a rule file, as ``field: what``."""
    check = entry.check
    if not entry.prose:
        yield "docstring: the file needs prose that explains the check"
    if not check.sources:
        yield "sources: at least one is needed"
    yield from _argument_faults(check.inputs, derived, schema)
    expected, given = set(parameters(check.figure)), set(check.inputs)
    for name in sorted(expected ^ given):
        side = "figure takes it, inputs lack it" if name in expected else "figure lacks it"
        yield f"inputs: {name}: {side}"
    for name in sorted(placeholders(check.sentence) - given - {"figure"}):
        yield f"sentence: {{{name}}} is not an input"
    yield from _limit_faults(check)
    yield from _lever_faults(check, derived, schema)
    for path in check.applies:
        if path not in schema.fields and path not in derived:
            yield f"applies: {path} is unknown"


def _lever_faults(check: Check, derived: Mapping[str, Derived], schema: Schema) -> Iterator[str]:
    for lever in check.levers:
        if lever.path not in schema.fields:
            yield f"levers: {lever.path} is not a field of the spec"
        for path in lever.when:
            if path not in schema.fields and path not in derived:
                yield f"levers: {path} is unknown"
            elif not schema.is_channel_path(lever.path) and _of_channel(path, derived, schema):
                yield f"levers: {path} belongs to a channel, {lever.path} to the product"


def _of_channel(path: str, derived: Mapping[str, Derived], schema: Schema) -> bool:
    return derived[path].each == "channel" if path in derived else schema.is_channel_path(path)


def _modules(package: str) -> Iterator[ModuleType]:
    folder = importlib.import_module(package)
    for info in pkgutil.iter_modules(folder.__path__):
        yield importlib.import_module(f"{package}.{info.name}")


def _entries(package: str, domain: str) -> Iterator[Entry]:
    for module in _modules(f"{package}.{domain}"):
        check = getattr(module, "CHECK", None)
        name = module.__name__.rpartition(".")[2].replace("_", "-")
        file = str(module.__file__)
        if not isinstance(check, Check):
            raise CatalogueError(f"{file}: CHECK: a rule file holds one Check")
        yield Entry(name, domain, inspect.cleandoc(module.__doc__ or ""), check, file)


def _argument_faults(
    inputs: Arguments, derived: Mapping[str, Derived], schema: Schema
) -> Iterator[str]:
    for name, item in inputs.items():
        if isinstance(item, Constant):
            try:
                to_si(item.value)
            except QuantityError as error:
                yield f"inputs: {name}: {item.value}: {error.problem}"
    yield from _path_faults(inputs, derived, schema)


def _path_faults(
    inputs: Arguments, derived: Mapping[str, Derived], schema: Schema
) -> Iterator[str]:
    for name, item in inputs.items():
        if isinstance(item, Input):
            path = _name(item.path)
            if path not in schema.fields and path not in derived and path not in BUILT_IN:
                yield f"inputs: {name}: {item.path} is neither a field nor a derived quantity"


def _name(path: str) -> str:
    """The field or the derived quantity that an input's path leads to.

    >>> _name("all power"), _name("range:low")
    ('power', 'range')
    """
    return path.removeprefix("all ").partition(":")[0]


def _limit_faults(check: Check) -> Iterator[str]:
    steps = ("critical", "major", "minor")
    numbers = []
    for step in steps:
        text = getattr(check.limits, step)
        if text is None:
            continue
        if step not in check.limits.basis:
            yield f"limits: {step} has no basis"
        try:
            numbers.append(to_si(text, check.unit))
        except QuantityError as error:
            yield f"limits: {step}: {text}: {error.problem}"
    if not numbers:
        yield "limits: at least one threshold is needed"
    rising = type(check.limits).__name__ == "AtLeast"
    if numbers != sorted(numbers, reverse=not rising):
        yield "limits: critical, major, minor must lie in this order"
