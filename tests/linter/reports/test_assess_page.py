"""The review on one page: it fits whatever the spec says, and says first what counts."""

import io
import json
import re
from dataclasses import replace
from pathlib import Path

import pytest
from rich.cells import cell_len

from ampreview.linter.changes.causes import causes_of
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.check import Assumption, AtLeast, Caution, Input, Lever, Promise, PromiseCheck
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue
from ampreview.linter.finding import Cause
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.assess_page import LINES, page_lines, print_page
from ampreview.linter.reports.assess_text import print_review
from ampreview.linter.reports.cause_words import cause_words, in_order
from ampreview.linter.reports.console import console

from ...reviews import FILES, name_of, reviewed
from ...sampling import some
from ..toys import BOOK, STRESS, entry

ROOT = Path(__file__).parents[3]
FOYER = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"
SOUND = ROOT / "sample_specs" / "choir-portable.amp.yaml"
FAULTY = ROOT / "sample_specs" / "bedside-lamp-faulty.amp.yaml"


def composed(text: str) -> Review:
    loaded = load_text(text, "offer.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec)


def fits(found: Review, columns: int) -> None:
    """At most a page with the verdict at its end, and no line beyond the screen."""
    lines = page_lines(found, columns - 1)
    assert len(lines) < LINES
    assert max(cell_len(line.plain) for line in lines) <= columns


@pytest.mark.parametrize("file", sorted({FOYER, *some(FILES, 8)}), ids=name_of)
def test_every_spec_fits_on_one_page(file: Path) -> None:
    for columns in (80, 100):
        fits(reviewed(file), columns)


def test_an_offer_of_many_channels_fits() -> None:
    """Each with a power of its own, so that no two are told as one."""
    text = FOYER.read_text(encoding="utf-8").replace("title: ", f"title: {'very ' * 60}")
    others = "".join(f"  c{n}: {{<<: *column, rated_power: {90 + n} W}}\n" for n in range(6))
    for columns in (80, 100):
        fits(composed(text.replace("  right: *column\n", others)), columns)


def shown(found: Review, columns: int = 80) -> list[str]:
    stream = io.StringIO()
    print_page(found, console(stream, columns))
    return stream.getvalue().splitlines()


def test_the_verdict_stands_first_and_where_the_page_is_long_last() -> None:
    long, short = shown(reviewed(FOYER), 100), shown(toy(SOUND_BOX))
    assert long[0] == long[-1]
    assert long[0].startswith("  HELD at prototype: ")
    assert [line for line in short if "RELEASED" in line] == short[:1]


def test_a_sound_design_is_told_in_short() -> None:
    lines = shown(reviewed(SOUND), 100)
    assert len(lines) < 36
    assert lines[0].startswith("  RELEASED at prototype: ")
    assert not [line for line in lines if "required" in line.lower() and "release" in line]


def test_what_does_not_fit_is_counted() -> None:
    """The causes that are printed and those that are counted are all of the grave ones."""
    found = replace(reviewed(FOYER), advised=True)
    told = [x for x in cause_words(found, causes_of(found)) if x.severity != "minor"]
    lines = shown(found, 100)
    printed = [line for line in lines if line[:3].strip().isdecimal()]
    (rest,) = [line for line in lines if "more cause" in line]
    assert len(printed) + int(rest.split()[1]) == len(told)
    assert [int(line[:3]) for line in printed] == [x.number for x in told[: len(printed)]]


def test_causes_have_no_number_where_no_changes_were_looked_for() -> None:
    """They are gathered by change, so without changes another one would be number 3."""
    lines = shown(reviewed(FOYER), 100)
    assert [line for line in lines if line.strip().startswith(("critical ", "major "))]
    assert not [line for line in lines if line[:3].strip().isdecimal()]
    assert not [line for line in lines if "--cause" in line]


def test_every_report_has_the_same_order(capsys: pytest.CaptureFixture[str]) -> None:
    found = reviewed(FAULTY)
    causes = cause_words(found, causes_of(found))
    ordered = [(item.check, item.subject, cause) for item, cause in in_order(found, causes)]
    assert len(ordered) == len(found.findings)
    for kind in ("json", "sarif"):
        main(["assess", str(FAULTY), "--report", kind, "--remedies", "none", "--full"])
        data = json.loads(capsys.readouterr().out)
        if kind == "json":
            answers = data["files"][0]["answers"]
            told = [(x["check"], x["subject"], x["cause"]) for x in answers]
            ranks = [x["rank"] for x in answers]
        else:
            results = data["runs"][0]["results"]
            given = [(x["ruleId"], x["properties"]) for x in results]
            told = [(name, x["subject"], x.get("cause")) for name, x in given]
            ranks = [x["rank"] for _, x in given]
        assert told == ordered
        assert ranks == list(range(1, len(ranks) + 1))


def test_json_gives_promises_and_causes(capsys: pytest.CaptureFixture[str]) -> None:
    main(["assess", str(FOYER), "--report", "json", "--remedies", "none"])
    data = json.loads(capsys.readouterr().out)["files"][0]
    power = data["promises"][0]
    assert (power["claim"], power["outlook"]) == ("120 W into 4 ohm at 1 %", "impossible")
    assert power["allowed"][0]["text"] == "105 W"
    numbers = {x["number"] for x in data["causes"]}
    assert {x["cause"] for x in data["answers"] if x["severity"]} == numbers


def test_a_check_asked_for_by_name_shows_alone(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["assess", str(SOUND), "--check", "dead-time-margin"]
    assert main(words) == 0
    text = capsys.readouterr().out
    assert text.count("check       ") == 1
    assert "dead-time-margin" in text
    assert "left and right" in text
    assert main([*words, "--check", "dead-time-margn"]) == 2
    assert "dead-time-margin" in capsys.readouterr().err


def test_several_files_come_as_a_table_first(capsys: pytest.CaptureFixture[str]) -> None:
    """The sound one is in the table alone."""
    files = [str(path) for path in (SOUND, FAULTY)]
    assert main(["assess", *files, "--remedies", "none"]) == 1
    text = capsys.readouterr().out
    table, _, pages = text.partition("2 files: 1 released, 1 held, 0 not assessed")
    assert [name in table for name in files] == [True, True]
    assert [name in pages for name in files] == [False, True]


# Golden screens, of an invented catalogue so that no rule moves them

RATING = replace(
    STRESS,
    title="Rail voltage vs. rating of the capacitor",
    each="product",
    inputs={
        "v_rail": Input("supply.v_rail", "V", "rail"),
        "v_dss": Input("supply.bulk.v_rated", "V", "rating", Assumption("25 V", "neutral", BOOK)),
    },
    sentence="Rail {v_rail}; capacitor rated {v_dss}",
    levers=(Lever("supply.bulk.v_rated", ("25 V", "35 V", "63 V")),),
    cautions=(Caution("WARNING", "Capacitors beyond their rating can burst."),),
)
TIME = replace(
    STRESS,
    title="Run time vs. the claim",
    figure=lambda energy, power, claim: 3600.0 * energy / power / claim,
    unit="1",
    each="product",
    stake="performance",
    inputs={
        "energy": Input("supply.v_rail", "V", "stands for an energy here"),
        "power": Input("supply.p_max", "W", "power"),
        "claim": Input("claims.run_time", "h", "claim"),
    },
    formula="one hour energy / power / claim",
    sentence="Run time {figure} of the claimed {claim}",
    limits=AtLeast(major="1", basis={"major": BOOK}),
)
PROMISE = Promise(
    "run time",
    "claims.run_time",
    (("claims.run_time", "{}"),),
    (PromiseCheck("run-time", lambda claim, figure: claim * figure, "of the energy", proves=True),),
)


def toy(supply: str, claims: str = "run_time: 2 h") -> Review:
    catalogue = Catalogue(
        (entry(RATING, "capacitor-rating"), entry(TIME, "run-time")),
        {},
        {},
        load_schema(),
        promises=(PROMISE,),
    )
    text = (
        "amplifier_spec: 1\ntitle: Invented box\nrevision: 1\nmilestone: prototype\n"
        f"supply: {{{supply}}}\nclaims: {{{claims}}}\nchannels: {{main: {{rated_power: 10 W}}}}\n"
    )
    loaded = load_text(text, "box.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return with_remedies(review(loaded.spec, catalogue=catalogue))


HEAD = """\
  HELD at prototype: 1 critical, 1 major
 Invented box · revision 1
 box.amp.yaml
"""
PROMISED = """
 Outlook   Promised      What the spec allows
 unlikely  run time 2 h  1.5 h of the energy
"""
FOOT = """
 spec box.amp.yaml # · program ampreview 0.1.0 · catalogue
 ampreview.rules #
 Engineering aid, not a certificate. For mains, batteries, hearing and fire,
 local codes and licensed practice come first. An open item is not a pass.
"""
PAGE = f"""\
{HEAD} Held by 2 findings from major up.
{PROMISED}
 Required before release
  1 critical Rail 30 V; capacitor rated 25 V
             change  supply.bulk.v_rated to 63 V (now 25 V)
             WARNING  Capacitors beyond their rating can burst.
  2 major    Run time 0.75 of the claimed 2 h
             change  no single change fixes this; it needs a different part or
                     topology

 more: --full for every finding, --check NAME for one; amend --cause N writes a
 change; questions for the supplier{FOOT}"""
FULL = f"""\
{HEAD} Held by 2 findings from major up: before boards are built, every function and
 rated limit must hold on paper, and no question of safety or destruction may be
 open.
{PROMISED}
 FINDINGS  2

 1  critical  required before release
 ▪ Rail voltage vs. rating of the capacitor · product
   figure      120 %, at most 100 %
               Rail 30 V; capacitor rated 25 V
   change      supply.bulk.v_rated to 63 V (now 25 V)
   location    line 5, column 53
   limit from  an invented handbook, p. 1
   check       capacitor-rating (invented)
   WARNING     Capacitors beyond their rating can burst.

 2  major  required before release
 ▪ Run time vs. the claim · product
   figure      0.75, at least 1
               Run time 0.75 of the claimed 2 h
   change      no single change fixes this; it needs a different part or
               topology
   location    line 5, column 18; see also line 6
   limit from  an invented handbook, p. 1
   check       run-time (invented)
{FOOT}  HELD at prototype: 1 critical, 1 major
"""
SOUND_BOX = "v_rail: 12 V, p_max: 5 W, bulk: {v_rated: 25 V}"
SPOILT = "v_rail: 30 V, p_max: 20 W, bulk: {v_rated: 25 V}"


def without_hashes(text: str) -> str:
    return re.sub(r"\b[0-9a-f]{16}\b", "#", text)


def test_the_page_and_the_full_report_of_a_held_design() -> None:
    found = toy(SPOILT)
    assert without_hashes("\n".join(shown(found)) + "\n") == PAGE
    stream = io.StringIO()
    print_review(found, console(stream, 80))
    assert without_hashes(stream.getvalue()) == FULL


def test_a_cause_of_several_findings_says_how_many_its_changes_fix(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Of the two findings the new rating cures one; the other one is left."""
    found = toy(SPOILT)
    first, second = found.failing()
    (remedy,) = first.advice.remedies
    cause = Cause("part", "Rail and pack do not fit", (first, second), (remedy,))
    (told,) = cause_words(found, [cause])
    rating = "supply.bulk.v_rated to 63 V"
    assert told.changes == (("change", f"{rating} (now 25 V); fixes 1 of 2"),)
    assert set(told.together) == {f"fixes 1 of 2: {rating}"}
    assert not told.is_plain
    name = "ampreview.linter.reports.{}.causes_of"
    for module in ("assess_page", "assess_text"):
        monkeypatch.setattr(name.format(module), lambda _: (cause,))
    assert "  1 critical Rail and pack do not fit (2 findings)" in shown(found)
    stream = io.StringIO()
    print_review(found, console(stream, 80))
    text = stream.getvalue()
    places = [text.index(x) for x in (cause.headline, first.title, second.title)]
    assert places == sorted(places)
