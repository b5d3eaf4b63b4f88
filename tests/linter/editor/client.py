"""A client of the language server: JSON-RPC over the pipes of a process, as LSP 3.17 frames it.

Written without the library that the server is made with.
"""

import json
import queue
import subprocess
import sys
import threading
from typing import Any

WAIT = 90


class Client:
    """One session; what the server tells of documents is kept in order."""

    def __init__(self, **workspace: Any) -> None:
        words = [sys.executable, "-m", "ampreview.linter", "editor", "--stdio"]
        self.process = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self._inbox: queue.Queue[dict[str, Any]] = queue.Queue()
        self._told: list[dict[str, Any]] = []
        self._number = 0
        threading.Thread(target=self._read, daemon=True).start()
        given = {"processId": None, "rootUri": None, "capabilities": {"workspace": workspace}}
        self.capabilities = self.ask("initialize", given)["capabilities"]
        self.tell("initialized", {})

    def tell(self, method: str, params: Any) -> None:
        self._send({"method": method, "params": params})

    def ask(self, method: str, params: Any) -> Any:
        """The result of a request; what is told meanwhile is kept."""
        self._number += 1
        number = self._number
        self._send({"id": number, "method": method, "params": params})
        while True:
            message = self._inbox.get(timeout=WAIT)
            if message.get("id") == number:
                assert "error" not in message, message
                return message["result"]
            self._told.append(message)

    def marks(self, uri: str, version: int) -> list[dict[str, Any]]:
        """The next diagnostics of a version of a document."""
        while True:
            told = self._told.pop(0) if self._told else self._inbox.get(timeout=WAIT)
            params = told.get("params", {})
            if params.get("uri") == uri and params.get("version") == version:
                found: list[dict[str, Any]] = params["diagnostics"]
                return found

    def open(self, uri: str, text: str, version: int = 1) -> list[dict[str, Any]]:
        document = {"uri": uri, "languageId": "yaml", "version": version, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        return self.marks(uri, version)

    def change(self, uri: str, text: str, version: int) -> list[dict[str, Any]]:
        document = {"uri": uri, "version": version}
        changes = [{"text": text}]
        self.tell("textDocument/didChange", {"textDocument": document, "contentChanges": changes})
        return self.marks(uri, version)

    def at(self, method: str, uri: str, line: int, character: int) -> Any:
        where = {"line": line, "character": character}
        return self.ask(f"textDocument/{method}", {"textDocument": {"uri": uri}, "position": where})

    def end(self) -> int:
        """The exit status after a proper end of the session."""
        self.ask("shutdown", None)
        self.tell("exit", None)
        return self.process.wait(timeout=WAIT)

    def _send(self, message: dict[str, Any]) -> None:
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        assert self.process.stdin is not None
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
        self.process.stdin.flush()

    def _read(self) -> None:
        assert self.process.stdout is not None
        while header := self.process.stdout.readline():
            name, _, size = header.partition(b":")
            assert name.lower() == b"content-length", header
            while self.process.stdout.readline() != b"\r\n":
                pass
            self._inbox.put(json.loads(self.process.stdout.read(int(size))))


def applied(text: str, edits: list[dict[str, Any]]) -> str:
    """A text with edits, whose positions count code units of UTF-16."""
    units = text.encode("utf-16-le")
    for edit in sorted(edits, key=lambda x: -_offset(text, x["range"]["start"])):
        start, end = (_offset(text, edit["range"][side]) for side in ("start", "end"))
        units = units[: 2 * start] + edit["newText"].encode("utf-16-le") + units[2 * end :]
    return units.decode("utf-16-le")


def _offset(text: str, position: dict[str, int]) -> int:
    lines = text.splitlines(keepends=True)
    before = "".join(lines[: position["line"]])
    return len(before.encode("utf-16-le")) // 2 + position["character"]


def under(text: str, range_: dict[str, Any]) -> str:
    """What a range of one line holds."""
    line = text.splitlines()[range_["start"]["line"]].encode("utf-16-le")
    ends = (2 * range_[side]["character"] for side in ("start", "end"))
    return line[slice(*ends)].decode("utf-16-le")
