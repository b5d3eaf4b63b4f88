"""``ampreview compare``: two revisions of a spec, what was changed and what it did."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import HELD, NOT_ASSESSED, RELEASED, refused
from .criteria import inputs_of, term_arguments, terms_of
from .report_option import document, document_arguments, page_missing

if TYPE_CHECKING:
    from rich.console import Console

    from ..judging.review import Review
    from ..reading.loading import Loaded


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.epilog = "Exit status: 0 better or neither, 1 worse, 2 could not compare."
    about = "a file, or REVISION:path of the git repository at hand (HEAD:board.amp.yaml)"
    parser.add_argument("old", metavar="OLD", help=about)
    parser.add_argument("new", metavar="NEW", help="the same")
    document_arguments(parser)
    term_arguments(parser)


def run(options: argparse.Namespace) -> int:
    """Compare the two; the exit status is 0 better or neither, 1 worse, 2 could not."""
    from ..judging.compare import compare
    from ..reports.compare_text import compare_markdown, print_comparison
    from ..reports.console import console

    if page_missing(options.report):
        return refused(page_missing(options.report))
    page = console()
    old = _review(options.old, options, page)
    new = _review(options.new, options, page)
    if old is None or new is None:
        return NOT_ASSESSED
    found = compare(old, new)

    def made() -> str:
        from ..reports.compare_html import compare_html

        return compare_html(found)

    files = [_place(name) for name in (options.old, options.new)]
    status = document(
        options,
        lambda screen: print_comparison(found, screen),
        lambda: compare_markdown(found),
        made,
        *files,
        *inputs_of(options, *files),
    )
    return max(status, HELD if found.outcome == "worse" else RELEASED)


def _review(name: str, options: argparse.Namespace, page: "Console") -> "Review | None":
    """The review of one side, or None after saying why there is none."""
    from ..finding import Severity
    from ..judging.criteria import criteria_for
    from ..judging.review import review
    from ..reading.revision import RevisionError
    from ..reports.assess_text import print_refusals

    try:
        path, loaded = _loaded(name, options.parts)
    except RevisionError as error:
        refused(str(error))
        return None
    if loaded.spec is None:
        print_refusals(name, loaded.refusals, page)
        return None
    criteria = criteria_for(path, terms_of(options))
    if isinstance(criteria, tuple):
        print_refusals(name, criteria, page)
        return None
    hold_at = Severity(options.hold_at) if options.hold_at else None
    return review(loaded.spec, options.milestone, hold_at, criteria=criteria)


def _loaded(name: str, parts: "Path | None") -> "tuple[Path, Loaded]":
    """Where a spec stands (for the house file), and the spec."""
    from ..reading.loading import load_file, load_text
    from ..reading.parts_file import parts_beside
    from ..reading.revision import content_at, parts_at, split

    at = split(name)
    if at is None:
        return Path(name), load_file(name, parts=parts)
    revision, path = at
    source = parts_beside(_on_disk(path), parts) if parts else parts_at(revision, path)
    return _on_disk(path), load_text(content_at(revision, path), name, parts=source)


def _place(name: str) -> Path:
    """Where one side stands in the working tree."""
    from ..reading.revision import split

    at = split(name)
    return Path(name) if at is None else _on_disk(at[1])


def _on_disk(path: str) -> Path:
    """Where a path of a revision stands in the working tree, as far as can be told."""
    from ..reading.revision import top_folder

    if path.startswith(("./", "../")):
        return Path(path)
    top = top_folder(Path.cwd())
    return top / path if top else Path(path)
