"""Every published source of the rules was seen, and ``sources_seen.csv`` tells what was seen there.

``date`` is the day on which the text was last read; ``earlier`` stands for a text that was read
when its rule was written and could not be reached again.  A source that names several texts
separates them by a semicolon.  Whoever cites a text adds a line, in his own words; whoever could
not see it uses ``quoted``, ``derivation``, ``from_memory`` or ``COMMON_PRACTICE``.
"""

import ast
import csv
import datetime
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from ampreview import rules
from ampreview.linter.check import Check
from ampreview.linter.evaluation.catalogue import load

with Path(__file__).with_name("sources_seen.csv").open(newline="") as file:
    SEEN = {row["title"]: row for row in csv.DictReader(file)}


QUOTES = re.compile(r"as .*(quot|told|reprint|listed|say|print|summar)|notices of")
"""How a source that was read only as another one quotes it names that other one."""


def _calls(kind: str = "published") -> Iterator[tuple[Path, ast.Call]]:
    """Every source of the rules that is of the kind, ``Source(...)`` or ``quoted(...)``."""
    for file in sorted(Path(rules.__path__[0]).rglob("*.py")):
        for call in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(call, ast.Call) and ast.unparse(call.func) in ("Source", "quoted"):
                kinds = [ast.literal_eval(x.value) for x in call.keywords if x.arg == "kind"]
                usual = "published" if ast.unparse(call.func) == "Source" else "quoted"
                if len(call.args) < 3 and (kinds or [usual]) == [kind]:
                    yield file, call


def test_every_published_source_is_in_the_table_and_no_other() -> None:
    cited = {
        text: file for file, call in _calls() for text in ast.literal_eval(call.args[0]).split("; ")
    }
    unseen = {f"{file.name}: {text}" for text, file in cited.items() if text not in SEEN}
    assert not unseen, f"not in tests/sources_seen.csv: {sorted(unseen)}"
    assert not SEEN.keys() - cited.keys(), "no rule cites it any more: take it out of the table"


def test_a_quoted_text_names_the_one_that_quotes_it() -> None:
    calls = [(file, " ".join(map(ast.literal_eval, call.args))) for file, call in _calls("quoted")]
    assert calls
    alone = [f"{file.name}: {text}" for file, text in calls if not QUOTES.search(text)]
    assert not alone, f"read itself it is published and stands in sources_seen.csv: {alone}"


@pytest.mark.parametrize("title", sorted(SEEN))
def test_a_row_says_what_was_seen_and_when(title: str) -> None:
    row = SEEN[title]
    assert len(row["seen"]) >= 12, "say what stands there"
    assert row["reached"], "say how the text was reached"
    assert row["date"] == "earlier" or datetime.date.fromisoformat(row["date"])


def _grave(check: Check) -> Iterator[str]:
    """Titles of the published limits of safety, and of critical ones."""
    for severity, source in check.limits.basis.items():
        if source.kind == "published" and (check.stake == "safety" or severity == "critical"):
            yield from source.title.split("; ")


def test_a_grave_limit_rests_on_a_text_that_could_be_read_again() -> None:
    titles = {title for entry in load().entries for title in _grave(entry.check)}
    assert titles
    late = sorted(title for title in titles if SEEN[title]["date"] == "earlier")
    assert not late, f"read it again or change the basis: {late}"
