"""Proven changes as edits of the text."""

from collections.abc import Iterator

from lsprotocol import types
from pygls.workspace import PositionCodec

from ..changes.effect import in_text
from ..finding import Finding, Remedy
from ..judging.review import Review
from ..reports.change_words import SHORTER, change_in_words
from ..reports.phrases import clean
from ..rewriting.amend import changes_of, stated_text
from ..rewriting.rewrite import Change, RewriteError, rewritten
from .desk import Seen
from .ranges import edits


def fixes(
    seen: Seen,
    found: tuple[Finding, ...],
    diagnostic: types.Diagnostic,
    uri: str,
    codec: PositionCodec,
    in_versions: bool,
) -> Iterator[types.CodeAction]:
    """The changes that are proven for findings of one check, the best first, each once.

    in_versions: whether the client takes edits of one version of a document and of no other.
    """
    told = set[str]()
    for item in found:
        for number, remedy in enumerate(item.advice.remedies):
            title = _title(seen, item, remedy)
            text = _changed(seen, item, remedy)
            if title in told or text is None:
                continue
            told.add(title)
            yield types.CodeAction(
                title=title,
                kind=types.CodeActionKind.QuickFix,
                diagnostics=[diagnostic],
                is_preferred=number == 0 and remedy.kind != "promise",
                edit=_edit(seen, text, uri, codec, in_versions),
            )


def _title(seen: Seen, item: Finding, remedy: Remedy) -> str:
    """What is changed and what that does; a promise that it lowers is said first."""
    assert seen.review is not None
    return clean(change_in_words(seen.review, (item,), remedy, SHORTER[1]))


def _changed(seen: Seen, item: Finding, remedy: Remedy) -> str | None:
    """The text with the change and its reason; None where the text cannot take it."""
    assert seen.spec is not None
    assert seen.review is not None
    changes = {
        path: Change(x.data, _reason(seen.review, path, x))
        for path, x in changes_of(seen.review, item, remedy).items()
    }
    try:
        return rewritten(seen.spec, changes)
    except RewriteError:
        return None


def _reason(review: Review, path: str, change: Change) -> str:
    was = stated_text(review, path)
    return f"was {was}, {change.why}" if was and was != in_text(change.data) else change.why


def _edit(
    seen: Seen, text: str, uri: str, codec: PositionCodec, in_versions: bool
) -> types.WorkspaceEdit:
    found = list(edits(seen.text, text, codec))
    if not in_versions:
        return types.WorkspaceEdit(changes={uri: found})
    document = types.OptionalVersionedTextDocumentIdentifier(uri=uri, version=seen.version)
    return types.WorkspaceEdit(document_changes=[types.TextDocumentEdit(document, [*found])])
