"""Whether a spec states what every review starts from; while it does not, it is held.

A catalogue that has nothing to go by finds nothing, and a verdict would read as a pass.
"""

from collections.abc import Iterable, Iterator

from ..declare import PRODUCT, local_path
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..finding import Advice, Finding, Missing, Status
from .stated import DOMAIN

UNJUDGED = "nothing-to-judge-by"
A_CHANNEL = "main"
BUILT_IN = {
    UNJUDGED: "What every review starts from is not stated: what each channel is made for, and"
    " what feeds it. Without it most checks have nothing to say, so the spec is held at every"
    " milestone, and nobody can permit it.",
}


def on_silence(graph: Graph, judged_by: Iterable[str]) -> tuple[Finding, ...]:
    """An open answer of the product while something that every review starts from is missing."""
    missing = tuple(dict.fromkeys(_missing(graph, judged_by)))
    if not missing:
        return ()
    names = ", ".join(dict.fromkeys(local_path(item.path) for item in missing))
    return (
        Finding(
            check=UNJUDGED,
            domain=DOMAIN,
            title="What every review starts from",
            subject=PRODUCT,
            status=Status.OPEN,
            message=f"Every review starts from what is not stated here: {names}",
            stake="rating",
            advice=Advice(missing=missing),
            permissible=False,
            holds_always=True,
        ),
    )


def _missing(graph: Graph, judged_by: Iterable[str]) -> Iterator[Missing]:
    """What is missing, channel by channel; a spec without any is asked for one."""
    schema = graph.spec.schema
    for path in judged_by:
        quantity = graph.derived.get(path)
        of_channel = quantity.each == "channel" if quantity else schema.is_channel_path(path)
        for channel in (graph.spec.channels or (A_CHANNEL,)) if of_channel else (None,):
            found = graph.resolve(path, channel)
            if isinstance(found, Gap):
                yield from found.missing
