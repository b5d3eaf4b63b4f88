"""What ``ampreview assess`` is asked for and cannot do."""

import argparse

from .report_option import page_missing, reports_asked, wrong_reports

BOUNDS = {"jobs": (1, 60), "builds": (1, 1_000_000), "seed": (0, 2**32 - 1)}
"""What the numbers may be: minutes of builds, not days, and as many jobs as any system takes."""


def wrong_use(options: argparse.Namespace) -> str:
    """What cannot be done as asked, or nothing."""
    for name, (least, most) in BOUNDS.items():
        if not least <= getattr(options, name) <= most:
            return f"--{name} {getattr(options, name)}: from {least} to {most}"
    if wrong := wrong_reports(options.report, options.output):
        return wrong
    kinds = [report.kind for report in reports_asked(options.report, options.output)]
    return (
        _wrong_quiet(options, kinds[0])
        or _wrong_tolerance(options, kinds)
        or _wrong_parts(options, kinds)
        or _wrong_check(options, kinds)
        or (page_missing() if "page" in kinds else "")
    )


def _wrong_quiet(options: argparse.Namespace, first: str) -> str:
    """What ``--quiet`` would print nevertheless, or nothing."""
    shown = reports_asked(options.report, options.output)[0].target is None
    if options.quiet and shown and first != "text":
        return f"--quiet prints nothing: give the {first} report a file, --report KIND=FILE"
    return ""


def _wrong_tolerance(options: argparse.Namespace, kinds: list[str]) -> str:
    """A report that does not show what was asked of the tolerances, or nothing."""
    shown = ["text", "page"] if options.tolerance == "monte-carlo" else ["text"]
    if options.tolerance != "worst-case" and not {*shown} & {*kinds}:
        return (
            f"--tolerance {options.tolerance} goes with the {' or the '.join(shown)} report,"
            f" not {kinds[0]}"
        )
    return ""


def _wrong_parts(options: argparse.Namespace, kinds: list[str]) -> str:
    """What does not go with parts files, or nothing."""
    from ..reading.parts_file import is_parts_file
    from .parts_files import KINDS as PARTS_REPORTS

    parts = [path for path in options.files if is_parts_file(path)]
    if parts and not set(kinds) <= set(PARTS_REPORTS):
        return f"a parts file has the reports {', '.join(PARTS_REPORTS)}"
    if 0 < len(parts) < len(options.files) and (kinds != ["text"] or options.output):
        return "parts files and specs have reports of their own: name them apart"
    return ""


def _wrong_check(options: argparse.Namespace, kinds: list[str]) -> str:
    """What is wrong with the names of checks, or nothing."""
    from ..evaluation.catalogue import load
    from ..judging.consistency import BUILT_IN
    from ..judging.unjudged import BUILT_IN as ON_SILENCE
    from ..judging.unmeasured import on_readings
    from .catalogue import unknown_check

    if not options.check:
        return ""
    if kinds != ["text"]:
        return f"--check goes with the text report, not with {kinds[-1]}"
    catalogue = load()
    read = on_readings(catalogue.packages)
    known = [*(entry.name for entry in catalogue.entries), *BUILT_IN, *read, *ON_SILENCE]
    return next((unknown_check(x, known) for x in options.check if x not in known), "")
