"""A derived quantity of a small spec, as the engine finds it."""

from collections.abc import Callable
from typing import Any

import pytest

from ampreview.linter.catalogue import load
from ampreview.linter.graph import Graph
from ampreview.linter.loading import load_text
from ampreview.linter.node import Node


def value_of(name: str, text: str) -> Any:
    """The nominal value for the first channel of the spec, or for the product."""
    loaded = load_text("amplifier_spec: 1\n" + text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    channel = next(iter(loaded.spec.channels), None)
    found = Graph(loaded.spec, load().derived).resolve(name, channel)
    assert isinstance(found, Node), f"{name}: {found}"
    return found.value()


@pytest.fixture
def derived() -> Callable[[str, str], Any]:
    """The function that finds a derived quantity by name in the text of a spec."""
    return value_of
