"""What the program prints is plain trade English: words that a reader would stumble over."""

import ast
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from ampreview.linter.check import Caution
from ampreview.linter.evaluation.bringup_steps import NamedStep, steps_of
from ampreview.linter.evaluation.catalogue import Catalogue, Entry, load

CATALOGUE: Catalogue = load()
ROOT = Path(__file__).parent.parent
PROGRAM = sorted((ROOT / "linter").rglob("*.py"))
LONGEST_TITLE = 70

# Not trade English, and what is said instead.
BANNED = {
    r"\b(is|are|was|were) asked of\b": "needs, must deliver",
    r"\bstands?\b(?!-off| in for\b)": "withstands, is rated",
    r"\bbears?\b": "withstands",
    r"\bbrings? up\b": "introduces, charges",
    r"\bcur(e|es|ed|ing)\b": "fixes",
    r"\bin favour\b": "favourable",
    r"\bsilent\b": "not given, default",
    r"\bheld off\b": "false turn-on",
    r"\bthere and back\b": "round trip",
    r"\b\d+ texts? (is|are)\b": "No safety standard cited",
    r"(?<![\d.,])0 (barriers?|texts?|faults?|digits?|kinds?)\b": "none",
    r"(?<![\d.,])1 times\b": "100 %",
}
# The page of a rule teaches at length, and may say that a pass stands for something.
OF_PROSE = {
    word: say for word, say in BANNED.items() if "stands" not in word and "times" not in word
}
# People ask for something, parts do not.
OF_A_PART = BANNED | {r"\bask(s|ed)? for\b": "needs, specifies"}


def stumbling(text: str, banned: Mapping[str, str] = BANNED) -> list[str]:
    """The banned phrases of a text, each with what may be said instead."""
    plain = re.sub(r"\s+", " ", text)
    return [
        f"{found[0]}: {say}" for word, say in banned.items() if (found := re.search(word, plain))
    ]


def literals(path: Path) -> Iterator[tuple[int, str]]:
    """The strings of a module that are more than a word, without its docstrings."""
    tree = ast.parse(path.read_text("utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            node.value.value = ""
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and " " in node.value:
            yield node.lineno, node.value


def test_checks_speak_plainly() -> None:
    for entry in CATALOGUE.entries:
        speaks_plainly(entry)


def speaks_plainly(entry: Entry) -> None:
    check = entry.check
    sources = [*check.sources, *check.limits.basis.values()]
    cited = (text for item in sources for text in (item.title, item.where))
    said = (check.title, check.sentence, check.otherwise, *(x.text for x in check.cautions))
    for text in (*said, *cited):
        assert not stumbling(text, OF_A_PART), text
    assert not stumbling(entry.prose, OF_PROSE), entry.name
    assert "against" not in check.title, f"{check.title}: the quantity vs. the limit"
    assert len(check.title) <= LONGEST_TITLE, check.title
    for item in check.cautions:
        assert item.text[:1].isupper(), item.text
        assert item.text.endswith("."), item.text


@pytest.mark.parametrize("item", steps_of(CATALOGUE), ids=lambda item: item.name)
def test_steps_of_the_bring_up_speak_plainly(item: NamedStep) -> None:
    step = item.step
    own = [x.caution.text for x in step.hazards if isinstance(x.caution, Caution)]
    lines = [line.text for line in step.lines]
    for text in (step.title, step.instrument, *own, *lines, *(x.title for x in step.readings)):
        assert not stumbling(text, OF_A_PART), text
        assert text[:1].isupper() or text == step.instrument or text.startswith("{"), text
    assert all(text.endswith(".") for text in (*own, *lines))


def test_fields_speak_plainly() -> None:
    for path, field in CATALOGUE.schema.fields.items():
        assert not stumbling(field.meaning, OF_A_PART), path


def test_derived_quantities_speak_plainly() -> None:
    for quantity in CATALOGUE.derived.values():
        for text in (quantity.meaning, *(item.title for item in quantity.sources)):
            assert not stumbling(text, OF_A_PART), f"{quantity.name}: {text}"


def test_refusals_remarks_and_headings_speak_plainly() -> None:
    for path in PROGRAM:
        for line, text in literals(path):
            assert not stumbling(text), f"{path}, line {line}: {text}"
