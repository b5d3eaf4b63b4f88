"""The server itself: what the protocol asks, handed on to the modules beside this one.

Nothing is opened but the documents' own parts and house files, found upward from a document that
is a file of this machine; no process is started, no connection made.
"""

import asyncio
import gc
import os
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import redirect_stdout
from functools import partial
from typing import TextIO, TypeVar, cast

from lsprotocol import types
from pygls.lsp.server import LanguageServer

from ..declare import load_schema
from ..evaluation.catalogue import load
from ..reading.parts_file import PartsFile, parts_beside
from ..reports.identity import PROGRAM, program_version
from .address import address_of, kind_of, path_of
from .completion import Offer, offers, offers_in_parts
from .definition import part_place
from .desk import Desk, Seen
from .diagnostics import Marked, marked
from .fixes import fixes
from .hover import told_of
from .lookup import as_in_spec, field_at
from .ranges import Ranges
from .spot import Spot, keys_in, spot_at, spot_of

IDLE = 0.4
"""Seconds without a keystroke after which causes are worked out."""
LONG_IDLE = 10.0
"""Seconds without a keystroke after which memory is tidied."""
MOST_FIXED = 5
"""Checks at one place for which changes are looked for."""
KINDS = {
    "field": types.CompletionItemKind.Field,
    "word": types.CompletionItemKind.EnumMember,
    "unit": types.CompletionItemKind.Unit,
    "part": types.CompletionItemKind.Reference,
}
T = TypeVar("T")
Positioned = types.HoverParams | types.CompletionParams | types.DefinitionParams


class Server(LanguageServer):
    """A language server with its open documents and the thread that reviews them."""

    def __init__(self) -> None:
        super().__init__(
            PROGRAM, program_version(), text_document_sync_kind=types.TextDocumentSyncKind.Full
        )
        self.desk = Desk()
        self.marks: dict[str, list[Marked]] = {}
        self.asked = 0
        self._worker = ThreadPoolExecutor(1)

    async def work(self, job: Callable[[], T]) -> T:
        """Do something in the thread of the reviews."""
        return await asyncio.get_running_loop().run_in_executor(self._worker, job)

    async def follow(self, uri: str) -> None:
        """Review a document as it is now, tell what was found, and later what it comes from."""
        document = self.workspace.get_text_document(uri)
        version = document.version or 0
        if kind_of(uri) is None:
            return
        self.desk.latest[uri] = version
        seen = await self.work(partial(self.desk.look, uri, version, document.source))
        if seen is None:
            return
        self.publish(uri, seen)
        await asyncio.sleep(IDLE)
        explained = await self.work(partial(self.desk.explained, uri, version))
        if explained is not None:
            self.publish(uri, explained)
        await asyncio.sleep(LONG_IDLE)
        if self.desk.latest.get(uri) == version:
            await self.work(gc.collect)  # what earlier versions have left, while nobody waits

    def publish(self, uri: str, seen: Seen) -> None:
        """Send what there is to say of a version, unless there is a newer one."""
        if self.desk.latest.get(uri) != seen.version:
            return
        self.marks[uri] = marked(seen, uri, self.workspace.position_codec)
        found = [item.diagnostic for item in self.marks[uri]]
        self.text_document_publish_diagnostics(
            types.PublishDiagnosticsParams(uri=uri, diagnostics=found, version=seen.version)
        )

    def pointed_at(self, params: Positioned, writing: bool = False) -> tuple[Spot | None, Ranges]:
        """What a position is in; of a spec or a parts file alone."""
        uri = params.text_document.uri
        ranges = Ranges(self.workspace.get_text_document(uri).source, self.workspace.position_codec)
        if kind_of(uri) not in ("spec", "parts"):
            return None, ranges
        at = ranges.column(params.position)
        return (spot_at if writing else spot_of)(ranges.lines, *at), ranges

    def parts_of(self, uri: str) -> PartsFile | None:
        """The parts file of a document."""
        path = path_of(uri)
        found = parts_beside(path)() if path else None
        return found if isinstance(found, PartsFile) else None

    def meaning(self, params: types.HoverParams) -> types.Hover | None:
        """What the field is that is pointed at."""
        spot, _ = self.pointed_at(params)
        path: str | None = spot.path if spot and spot.what == "value" else None
        if path and kind_of(params.text_document.uri) == "parts":
            path = as_in_spec(load_schema(), path)
        found = field_at(load_schema(), path) if path else None
        if found is None:
            return None
        return types.Hover(types.MarkupContent(types.MarkupKind.Markdown, told_of(found)))

    def names(self, params: types.CompletionParams) -> list[types.CompletionItem]:
        """What may be written at a position."""
        spot, ranges = self.pointed_at(params, writing=True)
        if spot is None:
            return []
        uri = params.text_document.uri
        if kind_of(uri) == "parts":
            found = offers_in_parts(load_schema(), spot)
        else:
            found = offers(load_schema(), spot, self.parts_of(uri), keys_in(ranges.lines))
        line, column = ranges.column(params.position)
        start, end = ranges.position(line, spot.start), ranges.position(line, column)
        return [_completion(n, x, types.Range(start, end)) for n, x in enumerate(found)]

    def part(self, params: types.DefinitionParams) -> types.Location | None:
        """Where the part that is pointed at stands in the parts file."""
        spot, ranges = self.pointed_at(params)
        parts = self.parts_of(params.text_document.uri)
        if spot is None or parts is None:
            return None
        line = ranges.lines[ranges.column(params.position)[0]]
        place = part_place(load_schema(), line, spot, parts)
        if place is None:
            return None
        there = Ranges(parts.text, self.workspace.position_codec).of(place)
        return types.Location(address_of(place.file), there)

    async def changes(self, params: types.CodeActionParams) -> list[types.CodeAction]:
        """The proven changes for what is marked in a range; a newer request ends this one."""
        uri, self.asked = params.text_document.uri, self.asked + 1
        asked, seen = self.asked, self.desk.seen.get(uri)
        if seen is None or not _asks_for_fixes(params) or self.desk.latest.get(uri) != seen.version:
            return []

        def wanted() -> bool:
            return self.asked == asked and self.desk.latest.get(uri) == seen.version

        found: list[types.CodeAction] = []
        for item in [x for x in self.marks.get(uri, []) if _touches(x, params.range)][:MOST_FIXED]:
            found += await self.work(partial(self._fixes, item, seen, uri, wanted))
        return found if wanted() else []

    def _fixes(
        self, item: Marked, seen: Seen, uri: str, wanted: Callable[[], bool]
    ) -> list[types.CodeAction]:
        assert item.finding is not None
        answers = self.desk.proven(uri, item.finding.check, wanted)
        about = tuple(x for x in answers if x.subject in item.subjects)
        versioned = self.client_capabilities.workspace
        edits = versioned.workspace_edit if versioned else None
        codec = self.workspace.position_codec
        in_versions = bool(edits and edits.document_changes)
        return list(fixes(seen, about, item.diagnostic, uri, codec, in_versions))


def _asks_for_fixes(params: types.CodeActionParams) -> bool:
    only = params.context.only
    return only is None or types.CodeActionKind.QuickFix in only


def _touches(item: Marked, wanted: types.Range) -> bool:
    """Whether a finding that fails stands in a range."""
    own = item.diagnostic.range
    fails = item.finding is not None and item.finding.severity is not None
    return fails and own.start <= wanted.end and wanted.start <= own.end


def _completion(number: int, offer: Offer, range_: types.Range) -> types.CompletionItem:
    return types.CompletionItem(
        label=offer.label or offer.text,
        kind=KINDS[offer.what],
        detail=offer.told,
        sort_text=f"{number:04}",
        filter_text=offer.text,
        text_edit=types.TextEdit(range_, offer.text),
    )


def made() -> Server:
    """A server that knows what to do."""
    server = Server()
    _follow_documents(server)
    _answer_questions(server)
    return server


def _follow_documents(server: Server) -> None:
    """What is found in a document follows its changes."""

    @server.feature(types.TEXT_DOCUMENT_DID_OPEN)
    async def opened(params: types.DidOpenTextDocumentParams) -> None:
        await server.follow(params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_CHANGE)
    async def changed(params: types.DidChangeTextDocumentParams) -> None:
        await server.follow(params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_SAVE)
    async def saved(params: types.DidSaveTextDocumentParams) -> None:
        await asyncio.gather(*(server.follow(uri) for uri in list(server.desk.latest)))

    @server.feature(types.TEXT_DOCUMENT_DID_CLOSE)
    def closed(params: types.DidCloseTextDocumentParams) -> None:
        uri = params.text_document.uri
        if kind_of(uri):
            server.desk.forget(uri)
            server.marks.pop(uri, None)
            server.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, []))


def _answer_questions(server: Server) -> None:
    """Meanings, names, places and changes, when they are asked for."""

    @server.feature(types.TEXT_DOCUMENT_HOVER)
    def hover(params: types.HoverParams) -> types.Hover | None:
        return server.meaning(params)

    @server.feature(
        types.TEXT_DOCUMENT_COMPLETION, types.CompletionOptions(trigger_characters=[":", " "])
    )
    def completion(params: types.CompletionParams) -> list[types.CompletionItem]:
        return server.names(params)

    @server.feature(types.TEXT_DOCUMENT_DEFINITION)
    def definition(params: types.DefinitionParams) -> types.Location | None:
        return server.part(params)

    @server.feature(
        types.TEXT_DOCUMENT_CODE_ACTION,
        types.CodeActionOptions(code_action_kinds=[types.CodeActionKind.QuickFix]),
    )
    async def actions(params: types.CodeActionParams) -> list[types.CodeAction]:
        return await server.changes(params)


def serve() -> None:
    """Answer on standard input and output until the client says that it is enough."""
    load()  # the first keystroke finds the checks ready
    inward, outward = cast(TextIO, sys.__stdin__), cast(TextIO, sys.__stdout__)
    closed_by_the_library = os.fdopen(os.dup(outward.fileno()), "wb")
    with redirect_stdout(sys.stderr):
        made().start_io(inward.buffer, closed_by_the_library)
