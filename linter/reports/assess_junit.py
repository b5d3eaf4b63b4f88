"""The review as JUnit XML, the form in which build servers show what passed and what did not.

A file is a suite, an answer a case.  What holds the design has failed, whatever its severity;
what could not be judged and does not hold, or is permitted, is skipped and not passed; a finding
that does not hold passes and tells itself as output.  A file that cannot be assessed is an
error.  What does not concern the design is left out.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from ..finding import Finding, Status
from ..judging.review import Outcome, Review
from ..reading.refusal import Refusal
from .cautions import cautions_of
from .identity import PROGRAM
from .phrases import against, clean, place_in_words
from .verdict import DISCLAIMER, demand, house_change, lacking, reason, rests_on

HEAD = f'<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="{PROGRAM}">\n'


def junit_pieces(outcomes: Iterable[tuple[str, Outcome]], dated: bool = False) -> Iterator[str]:
    """One document for all files, in the order given, piece by piece."""
    yield HEAD
    for name, outcome in outcomes:
        suite = _judged(outcome, dated) if isinstance(outcome, Review) else _refused(name, outcome)
        indent(suite, level=1)
        yield f"  {tostring(suite, encoding='unicode')}\n"
    yield "</testsuites>\n"


def _judged(review: Review, dated: bool) -> Element:
    """The suite of a file that was reviewed."""
    file = clean(review.spec.file)
    holding = {(x.check, x.subject, x.message) for x in review.verdict.holding}
    answers = [x for x in review.findings if x.status is not Status.NOT_APPLICABLE]
    suite, cases = Element("testsuite", {"name": file}), Counter[str]()
    properties = SubElement(suite, "properties")
    for name, value in _told(review, dated):
        SubElement(properties, "property", {"name": name, "value": clean(value)})
    for item, name in zip(answers, _names(answers), strict=True):
        case = SubElement(suite, "testcase", {"name": name, "classname": f"{file}.{item.domain}"})
        result = _result(item, (item.check, item.subject, item.message) in holding)
        cases[result] += 1
        if result in ("failure", "skipped"):
            told = SubElement(case, result, {"message": clean(_short(item))})
            if result == "failure":
                told.set("type", str(item.severity or item.status))
                told.text = "\n".join(map(clean, _lines(item)))
        elif item.severity:
            SubElement(case, "system-out").text = clean(f"{item.severity}: {_short(item)}")
    return _counted(suite, failures=cases["failure"], skipped=cases["skipped"])


def _refused(name: str, refusals: Sequence[Refusal]) -> Element:
    """The suite of a file that cannot be assessed."""
    suite = Element("testsuite", {"name": clean(name)})
    for number, item in enumerate(refusals, start=1):
        given = {"name": f"can be read ({number})", "classname": clean(name)}
        case = SubElement(suite, "testcase", given)
        expected = f"expected {item.expected}"
        lines = [item.problem, expected, f"{item.place.file}, {place_in_words(item.place)}"]
        error = SubElement(case, "error", {"message": clean(f"{item.problem}; {expected}")})
        error.set("type", "not assessed")
        error.text = "\n".join(map(clean, lines))
    return _counted(suite, errors=len(refusals))


def _counted(suite: Element, failures: int = 0, errors: int = 0, skipped: int = 0) -> Element:
    """The suite with its counts, which consumers do not always make themselves."""
    found = {"failures": failures, "errors": errors, "skipped": skipped}
    suite.attrib |= {name: str(number) for name, number in found.items()}
    suite.set("tests", str(len(suite.findall("testcase"))))
    return suite


def _told(review: Review, dated: bool) -> Iterator[tuple[str, str]]:
    """What stands above the cases: the verdict, and what it rests on."""
    verdict = review.verdict
    yield "verdict", "released" if verdict.released else "held"
    yield "milestone", verdict.milestone
    yield "why", reason(review)
    for what, name, digest in rests_on(review):
        yield what, f"{name} {digest}".rstrip()
    for change in review.criteria.house.changes if review.criteria.house else ():
        yield "house rule", house_change(change)
    if dated and review.criteria.day:
        yield "date of the review", review.criteria.day.isoformat()
    yield "note", DISCLAIMER


def _names(answers: Iterable[Finding]) -> Iterator[str]:
    """A name for each answer: check, subject, and where that is not enough its path or number."""
    met = Counter[str]()
    for item in answers:
        path = item.place.path if item.place and item.severity else ""
        name = f"{item.check} ({item.subject})"
        met[name] += 1
        yield clean(name if met[name] == 1 else f"{name} {path or met[name]}")


def _result(item: Finding, holds: bool) -> str:
    if holds:
        return "failure"
    return "skipped" if item.status is Status.OPEN or item.permitted else "passed"


def _short(item: Finding) -> str:
    """The answer in a sentence; what is open says what is missing."""
    text = (lacking(item) or item.message) if item.status is Status.OPEN else item.message
    text = text or against(item.evidence) or item.title
    return f"{text}; {item.permitted}" if item.permitted else text


def _lines(item: Finding) -> Iterator[str]:
    yield item.title
    yield from (x for x in (against(item.evidence), demand(item)) if x)
    if item.place:
        yield f"location: {item.place.file}, {place_in_words(item.place)}"
    for caution in cautions_of(item):
        yield f"{caution.signal}: {caution.text}"
