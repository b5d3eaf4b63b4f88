"""Worksheets as pages to print, follow with a pencil and sign; the blocks are those of the text."""

from collections.abc import Iterable

from ..reading.loading import Spec
from .html_page import html_page, which_file
from .identity import text_hash
from .worksheet_text import SIGNATURE, Block

SIGNATORIES = ("Calculated by", "Checked by")


def worksheet_html(spec: Spec, blocks: Iterable[Block]) -> str:
    """The worksheets as one page for a browser and for paper."""
    return html_page(
        "worksheet.html",
        title=spec.title or spec.file,
        revision=spec.revision,
        file=spec.file,
        digest=text_hash(spec.text),
        which=which_file(spec.file, spec.text),
        blocks=[(number, block, block.texts is SIGNATURE) for number, block in enumerate(blocks)],
        signatories=SIGNATORIES,
    )
