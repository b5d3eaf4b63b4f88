"""A derived quantity of a small spec, as the engine finds it."""

from collections.abc import Callable
from typing import Any

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.gap import Gap
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.evaluation.node import Node
from ampreview.linter.reading.loading import load_text


def resolved(name: str, text: str) -> Node | Gap:
    """A quantity of the first channel of the spec, or of the product."""
    loaded = load_text("amplifier_spec: 1\n" + text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    channel = next(iter(loaded.spec.channels), None)
    return Graph(loaded.spec, load().derived).resolve(name, channel)


def value_of(name: str, text: str) -> Any:
    """Its nominal value."""
    found = resolved(name, text)
    assert isinstance(found, Node), f"{name}: {found}"
    return found.value()


@pytest.fixture
def derived() -> Callable[[str, str], Any]:
    """The function that finds a derived quantity by name in the text of a spec."""
    return value_of


def gap_of(name: str, text: str) -> list[str]:
    """The leaves that it lacks."""
    found = resolved(name, text)
    assert isinstance(found, Gap), f"{name}: {found}"
    return [item.path for item in found.missing]


@pytest.fixture
def gap() -> Callable[[str, str], list[str]]:
    """The function that finds what a derived quantity lacks in the text of a spec."""
    return gap_of
