"""The comparison with a bill of materials as a Markdown document."""

from collections.abc import Iterator

from ..judging.bom import BomComparison
from .bom_text import TITLES, in_order, told_of, where
from .identity import text_hash
from .markdown import markdown_table
from .phrases import escaped
from .verdict import DISCLAIMER


def bom_markdown(found: BomComparison) -> str:
    """The document: verdict, disagreements with both places, what was not compared."""
    return "\n\n".join([*_parts(found), f"*{DISCLAIMER}*"]) + "\n"


def _parts(found: BomComparison) -> Iterator[str]:
    yield "# Bill of materials"
    yield f"**{'HELD' if found.findings else 'AGREES'}** {escaped(told_of(found))}."
    if found.findings:
        kinds = [*TITLES]
        rows = (
            (TITLES[x.kind].capitalize(), ", ".join(x.names), x.message, where(x, found))
            for x in sorted(found.findings, key=lambda x: kinds.index(x.kind))
        )
        yield markdown_table(("what", "parts", "how", "where"), rows)
    if found.untold:
        yield "## Not compared"
        untold = ((what, ", ".join(in_order(parts))) for what, parts in found.untold.items())
        yield markdown_table(("why", "parts"), untold)
    if found.bom.unread:
        yield "## No designators"
        yield markdown_table(("text", "line"), ((text, str(n)) for n, text in found.bom.unread))
    if found.extra:
        yield f"Only in the table: {escaped(', '.join(found.extra))}."
    yield "## What the comparison rests on"
    files = (("spec", found.spec.file, found.spec.text), ("table", found.bom.file, found.bom.text))
    rest = ((what, name, text_hash(text)) for what, name, text in files)
    yield markdown_table(("item", "", "SHA-256"), rest)
