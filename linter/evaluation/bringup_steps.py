"""The steps of a bring-up: walks the rules packages, refuses a faulty step with its file."""

import importlib
import inspect
import pkgutil
import string
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import ModuleType

from ..bringup_step import Amount, Bench, Line, Reading, Step
from ..check import Input, Words
from .catalogue import BUILT_IN, Catalogue, CatalogueError

FOLDER = "bringup"


@dataclass(frozen=True, slots=True)
class NamedStep:
    """A step with the name of its file."""

    name: str
    file: str
    step: Step


def steps_of(catalogue: Catalogue) -> tuple[NamedStep, ...]:
    """The steps of the packages of a catalogue, in the order in which they are made.

    A module without a ``STEP`` holds what several steps share.
    """
    found = [item for package in catalogue.packages for item in _steps(package)]
    for item in found:
        for fault in step_faults(item.step, catalogue):
            raise CatalogueError(f"{item.file}: {fault}")
    return tuple(sorted(found, key=lambda item: item.step.order))


def notes_of(catalogue: Catalogue) -> tuple[str, ...]:
    """What holds for the whole sheet: the ``NOTES`` of the folders."""
    folders = [x for package in catalogue.packages for x in _folder(package)]
    return tuple(note for folder in folders for note in getattr(folder, "NOTES", ()))


def _folder(package: str) -> Iterator[ModuleType]:
    """The folder of steps of a package, if it has one."""
    root = importlib.import_module(package)
    if FOLDER in [info.name for info in pkgutil.iter_modules(root.__path__)]:
        yield importlib.import_module(f"{package}.{FOLDER}")


def _steps(package: str) -> Iterator[NamedStep]:
    found = [info for folder in _folder(package) for info in pkgutil.iter_modules(folder.__path__)]
    for info in found:
        module = importlib.import_module(f"{package}.{FOLDER}.{info.name}")
        step = getattr(module, "STEP", None)
        if isinstance(step, Step):
            yield NamedStep(info.name.replace("_", "-"), str(module.__file__), step)


def step_faults(step: Step, catalogue: Catalogue) -> Iterator[str]:
    """What is wrong with a step, as ``field: what``."""
    if not step.hazards:
        yield "hazards: each step tells at least one caution"
    paths = {path for words in _conditions(step) for path in words}
    yield from (f"{path} is unknown" for path in sorted(paths) if not _known(path, catalogue))
    for item in _benches(step):
        if item.path not in catalogue.schema.fields:
            yield f"bench: {item.path} is not a field of the spec"
    for name in _checks(step):
        if catalogue.entry(name) is None:
            yield f"there is no check named {name}"
    for line in step.lines:
        if _placeholders(line) != set(line.amounts):
            yield f"lines: {line.text}: its names are not those of its amounts"
    for amount in amounts(step):
        yield from _amount_faults(amount, catalogue)


def _checks(step: Step) -> Iterator[str]:
    yield from (reading.check for reading in step.readings if reading.check)
    yield from (item.caution for item in step.hazards if isinstance(item.caution, str))


def _conditions(step: Step) -> Iterator[Mapping[str, Words]]:
    yield step.applies
    yield from (line.applies for line in step.lines)
    yield from (reading.applies for reading in step.readings)
    yield from (hazard.when for hazard in step.hazards)
    yield from (item.when for item in _benches(step))


def _benches(step: Step) -> tuple[Bench, ...]:
    return (*step.bench, *(item for reading in step.readings for item in reading.bench))


def amounts(step: Step) -> Iterator[Amount]:
    """Every number of a step."""
    yield from (amount for line in step.lines for amount in line.amounts.values())
    for reading in step.readings:
        yield from _of_reading(reading)
    yield from (item.value for item in _benches(step) if isinstance(item.value, Amount))


def _of_reading(reading: Reading) -> Iterator[Amount]:
    yield from (x for x in (reading.amount, reading.spread, reading.limit) if x is not None)


def _amount_faults(amount: Amount, catalogue: Catalogue) -> Iterator[str]:
    name = getattr(amount.figure, "__name__", "figure")
    if set(inspect.signature(amount.figure).parameters) != set(amount.inputs):
        yield f"{name}: figure and inputs differ"
    for item in amount.inputs.values():
        if isinstance(item, Input) and not _known(item.path, catalogue):
            yield f"{name}: {item.path} is neither a field nor a derived quantity"


def _known(path: str, catalogue: Catalogue) -> bool:
    name = path.removeprefix("all ").partition(":")[0]
    return name in catalogue.schema.fields or name in catalogue.derived or name in BUILT_IN


def _placeholders(line: Line) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(line.text) if name}
