"""``ampreview amend``: remedies or answers written into a copy of a spec file."""

import argparse
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import HELD, NOT_ASSESSED, RELEASED, refused
from .criteria import inputs_of, term_arguments, terms_of

if TYPE_CHECKING:
    from rich.console import Console

    from ..judging.review import Review
    from ..rewriting.amend import Amendment
    from ..rewriting.rewrite import Change


WISHES = ("cause", "fix", "to_release", "all", "answers")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    _wishes(parser)
    parser.add_argument("-o", "--output", type=Path, help="where to write the amended copy")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")
    parser.add_argument("--dry", action="store_true", help="show the difference, write nothing")
    term_arguments(parser)


def _wishes(parser: argparse.ArgumentParser) -> None:
    """What is to be changed."""
    parser.add_argument(
        "--fix",
        action="append",
        default=[],
        metavar="CHECK[@SUBJECT]",
        help="the first proven change for a finding; SUBJECT is a channel or product",
    )
    parser.add_argument(
        "--cause",
        action="append",
        default=[],
        type=int,
        metavar="N",
        help="what the report of assess shows as the change for its cause N; repeatable",
    )
    parser.add_argument(
        "--remedies",
        choices=("all", "holding"),
        default="holding",
        help="those of the report whose causes are counted (default: holding)",
    )
    whole = parser.add_mutually_exclusive_group()
    whole.add_argument(
        "--to-release",
        action="store_true",
        help="the changes that lead to a release, gravest first",
    )
    whole.add_argument(
        "--all", action="store_true", help="the first proven change of every finding, minor too"
    )
    parser.add_argument(
        "--answers",
        type=Path,
        metavar="ANSWERS",
        help="values to take in: the form or the table (.csv) that `ampreview questions` writes",
    )


def run(options: argparse.Namespace) -> int:
    """Amend, show the difference, write the copy; the status is the copy's verdict."""
    from ..reading.writing import WritingError, refuse_target
    from ..rewriting.amend import AmendmentError
    from ..rewriting.rewrite import RewriteError

    if options.cause and options.answers:
        return refused("answers may change the causes: take them in first, then assess the copy")
    if not any(getattr(options, name) for name in WISHES):
        return refused("say what to change: --cause, --fix, --to-release, --all or --answers")
    try:
        if options.output and not options.dry:
            refuse_target(options.output, options.overwrite, *_inputs(options))
        return _amend(options)
    except (AmendmentError, RewriteError, WritingError) as error:
        return refused(str(error))


def _inputs(options: argparse.Namespace) -> "tuple[Path | None, ...]":
    """The files that the command reads."""
    return options.file, options.answers, *inputs_of(options, options.file)


def _amend(options: argparse.Namespace) -> int:
    from ..finding import Severity
    from ..judging.review import Review, review_file
    from ..reports.amend_text import print_amendment
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..rewriting.amend import copy_of

    page = console()
    hold_at = Severity(options.hold_at) if options.hold_at else None
    start = review_file(options.file, options.milestone, hold_at, terms_of(options))
    if not isinstance(start, Review):
        print_refusals(str(options.file), start, page)
        return NOT_ASSESSED
    amendment = _amendment(options, start, page)
    if amendment is None:
        return NOT_ASSESSED
    text = copy_of(amendment)
    print_amendment(amendment, text, page)
    _write(options, text, text != start.spec.text, page)
    return RELEASED if amendment.after.verdict.released else HELD


def _amendment(options: argparse.Namespace, start: "Review", page: "Console") -> "Amendment | None":
    """Answers or causes, then the cures asked for, then all that is left; None if refused."""
    from ..judging.consistency import BUILT_IN
    from ..reports.progress import progress
    from ..rewriting.amend import (
        AmendmentError,
        begin,
        caused,
        cured,
        cured_all,
        planned,
        with_changes,
    )
    from .catalogue import unknown_check

    amendment = begin(start)
    if options.answers:
        changes = _answers(options.answers, start, page)
        if changes is None:
            return None
        amendment = with_changes(amendment, changes)
    if options.cause:
        amendment = caused(amendment, options.cause, options.remedies == "holding")
    for wish in options.fix:
        check, _, subject = wish.partition("@")
        known = sorted({item.check for item in start.findings} | {*BUILT_IN})
        if check not in known:
            raise AmendmentError(unknown_check(check, known))
        amendment = cured(amendment, check, subject)
    with progress("looking for changes"):
        if options.to_release:
            return planned(amendment)
        return cured_all(amendment) if options.all else amendment


def _answers(path: Path, start: "Review", page: "Console") -> "Mapping[str, Change] | None":
    """What a file of answers adds, or None when it cannot be read or contradicts the spec."""
    from ..reading.loading import load_file
    from ..reports.assess_text import print_refusals
    from ..rewriting.answers_file import merger
    from ..rewriting.answers_table import load_table

    loaded = load_table(path) if path.suffix.lower() == ".csv" else load_file(path)
    if loaded.spec is None:
        print_refusals(str(path), loaded.refusals, page)
        return None
    found = merger(start.spec.as_stated(), loaded.spec)
    if found.conflicts:
        print_refusals(str(path), found.conflicts, page)
        return None
    return found.changes


def _write(options: argparse.Namespace, text: str, changed: bool, page: "Console") -> None:
    from ..reading.writing import write_text
    from ..reports.phrases import clean

    if options.dry or not options.output or not changed:
        why = "no change" if not changed else "--dry" if options.dry else "no -o FILE given"
        page.print(f"\n Nothing written: {why}.", markup=False)
        return
    write_text(options.output, text, options.overwrite, *_inputs(options))
    page.print(f"\n Written to {clean(str(options.output))}", markup=False, soft_wrap=True)
