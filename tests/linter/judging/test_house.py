"""The team's own file: limits, checks off, defaults, rules of its own, and its refusals.

Checks are picked from the catalogue by their properties, so a new limit breaks nothing.
"""

import importlib
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from ampreview.linter.check import AtLeast, AtMost
from ampreview.linter.cli import main
from ampreview.linter.evaluation.catalogue import Entry, load
from ampreview.linter.evaluation.gap import Gap
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.evaluation.node import LeafNode
from ampreview.linter.evaluation.recalled import UNSEEN
from ampreview.linter.finding import Finding, Status
from ampreview.linter.judging.criteria import Criteria, Terms, criteria_for
from ampreview.linter.judging.house import House, find_house, where_found
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import to_si
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reading.parts_file import find_upward
from ampreview.linter.reading.refusal import Refusal

FIRST = "amplifier_house: 1\n"
RULE = '''"""Rail of our own.

Our shops hold no parts for more than 48 V.
"""

from ampreview.linter.check import AtMost, Case, Check, Input, Source


def figure(v_rail):
    return v_rail


SOURCE = Source("house rule", kind="common practice")
CHECK = Check(
    title="Rail against our stock", figure=figure, unit="V", each="product", stake="rating",
    formula="v_rail", sentence="a rail of {v_rail}",
    inputs={"v_rail": Input("supply.v_rail", "V", "rail")},
    limits=AtMost(major="48 V", basis={"major": SOURCE}), sources=(SOURCE,),
    cases=(Case({"v_rail": "40 V"}, gives="40 V", origin="derived: the same"),),
    fails="supply: {v_rail: 50 V}", passes="supply: {v_rail: 40 V}",
)
'''


def house_of(folder: Path, text: str) -> House | tuple[Refusal, ...]:
    path = folder / "house.ampreview.yaml"
    path.write_text(FIRST + text, encoding="utf-8")
    return read_house(path)


def taken(folder: Path, text: str) -> House:
    house = house_of(folder, text)
    assert isinstance(house, House), house
    return house


def refused(folder: Path, text: str) -> Refusal:
    refusals = house_of(folder, text)
    assert isinstance(refusals, tuple)
    assert len(refusals) == 1, refusals
    return refusals[0]


def rising(stake: str, severity: str = "major") -> Entry:
    """A check of the catalogue whose figure may not rise above a limit, its outermost."""
    graver = {"major": ("critical",), "minor": ("critical", "major")}[severity]
    return next(
        entry
        for entry in load().entries
        if entry.check.stake == stake
        and isinstance(entry.check.limits, AtMost)
        and (limit := getattr(entry.check.limits, severity))
        and not any(getattr(entry.check.limits, name) for name in graver)
        and to_si(limit, entry.check.unit) > 0.0
        and entry.check.unit != "dB"
    )


def scaled(entry: Entry, factor: float, severity: str = "major") -> str:
    """A limit of a check times a factor, as text."""
    number, _, unit = str(getattr(entry.check.limits, severity)).partition(" ")
    return f"{float(number) * factor:g} {unit}".strip()


@pytest.mark.parametrize(
    ("factor", "effect"), [(1.5, "looser limit"), (0.9, "tighter limit"), (1.0, None)]
)
def test_a_limit_is_compared_with_the_published_one(
    tmp_path: Path, factor: float, effect: str | None
) -> None:
    entry = rising("rating")
    text = f"limits: {{{entry.name}: {{major: {scaled(entry, factor)}, reason: two returns}}}}\n"
    house = taken(tmp_path, text)
    assert [change.effect for change in house.changes] == ([effect] if effect else [])
    changed = house.catalogue.entry(entry.name)
    assert changed is not None
    limit = to_si(str(changed.check.limits.major), entry.check.unit)
    assert limit == pytest.approx(to_si(str(entry.check.limits.major), entry.check.unit) * factor)
    if effect:
        assert changed.check.limits.basis["major"].title.startswith("house limit")
        assert "two returns" in changed.check.limits.basis["major"].title


def test_a_figure_that_may_not_fall_is_loosened_downwards(tmp_path: Path) -> None:
    entry = next(
        x
        for x in load().entries
        if isinstance(x.check.limits, AtLeast) and x.check.limits.minor and x.check.unit == "1"
        and not x.check.limits.major and not x.check.limits.critical
    )  # fmt: skip
    lower = float(str(entry.check.limits.minor)) * 0.5
    text = f"limits: {{{entry.name}: {{minor: {lower:g}, reason: enough}}}}\n"
    assert [x.effect for x in taken(tmp_path, text).changes] == ["looser limit"]


def test_only_a_weaker_limit_of_safety_comes_first(tmp_path: Path) -> None:
    entry = rising("safety", "minor")
    for factor, count in ((1.05, 1), (0.9, 0)):
        limit = scaled(entry, factor, "minor")
        house = taken(tmp_path, f"limits: {{{entry.name}: {{minor: {limit}, reason: x}}}}\n")
        assert len(house.weakened) == count
    other = rising("rating")
    text = f"limits: {{{other.name}: {{major: {scaled(other, 1.5)}, reason: x}}}}\n"
    assert not taken(tmp_path, text).weakened


@pytest.mark.parametrize("kind", UNSEEN)
def test_a_limit_against_one_that_nobody_saw_stays_unverified(tmp_path: Path, kind: str) -> None:
    entry = next(
        x
        for x in load().entries
        if isinstance(x.check.limits, AtMost)
        and x.check.limits.major and x.check.limits.basis["major"].kind == kind
        and x.check.unit not in ("dB", "degC") and not x.check.limits.critical
        and not x.check.limits.minor and float(x.check.limits.major.split()[0]) > 0
    )  # fmt: skip
    text = f"limits: {{{entry.name}: {{major: {scaled(entry, 0.9)}, reason: x}}}}\n"
    changed = taken(tmp_path, text).catalogue.entry(entry.name)
    assert changed is not None
    assert changed.check.limits.basis["major"].kind == kind


def test_a_check_that_is_off_is_gone_and_listed(tmp_path: Path) -> None:
    entry = rising("rating")
    house = taken(tmp_path, f"checks_off: {{{entry.name}: no such part here}}\n")
    assert house.catalogue.entry(entry.name) is None
    assert [(x.effect, x.safety, x.reason) for x in house.changes] == [
        ("check off", False, "no such part here")
    ]


UNTOUCHABLE = [
    x
    for x in load().entries
    if x.check.limits.critical or not x.check.permissible or x.check.stake == "safety"
]


@pytest.mark.parametrize("entry", UNTOUCHABLE, ids=lambda entry: entry.name)
def test_what_hurts_destroys_or_cannot_be_is_not_switched_off(tmp_path: Path, entry: Entry) -> None:
    found = refused(tmp_path, f"checks_off:\n  {entry.name}: we know better\n")
    assert found.problem.startswith(f"{entry.name} cannot be switched off")
    assert (found.place.line, bool(found.expected), bool(found.example)) == (3, True, True)


def looser(entry: Entry, severity: str) -> str:
    """A limit of a check, three units further out than published."""
    text = str(getattr(entry.check.limits, severity))
    number, _, unit = text.partition(" ")
    step = -3.0 if isinstance(entry.check.limits, AtLeast) else 3.0
    return f"{float(number) + step:g} {unit}".strip()


GRAVE = [x for x in UNTOUCHABLE if x.check.limits.critical or x.check.limits.major]


@pytest.mark.parametrize("entry", GRAVE, ids=lambda entry: entry.name)
def test_their_gravest_limit_cannot_be_looser(tmp_path: Path, entry: Entry) -> None:
    """The refusal shows the published limit, which a house file may state or tighten."""
    severity = "critical" if entry.check.limits.critical is not None else "major"
    limit = looser(entry, severity)
    found = refused(tmp_path, f"limits:\n  {entry.name}: {{{severity}: {limit}, reason: x}}\n")
    assert "cannot be looser" in found.problem
    assert str(getattr(entry.check.limits, severity)) in found.expected
    assert found.example.startswith(f"{entry.name}: {{{severity}: ")
    assert found.place.line == 3
    limits = entry.check.limits
    permit = entry.check.permissible and not (entry.check.stake == "safety" and limits.critical)
    assert ("a deviation with up_to" in found.expected) is permit
    taken(tmp_path, f"limits: {{{found.example.replace('as published', 'x')}}}\n")


# beyond 100 % a switch is beyond its absolute maximum (common practice, no source: derate to 90 %)
@pytest.mark.parametrize(
    ("limits", "says"),
    [
        ("{major: 100 %, minor: 95 %, reason: x}", ""),
        ("{critical: 98 %, reason: x}", ""),
        ("{major: 101 %, reason: x}", "must lie in this order"),
        ("{critical: 200 %, major: 190 %, reason: x}", "parts can be destroyed"),
    ],
)
def test_a_team_may_derate_less_but_never_beyond_an_absolute_maximum(
    tmp_path: Path, limits: str, says: str
) -> None:
    text = f"limits: {{device-voltage-margin: {limits}}}\n"
    if says:
        found = refused(tmp_path, text)
        assert says in found.problem
        assert "100 %" in found.expected
    else:
        taken(tmp_path, text)


def test_of_a_barrier_no_limit_can_be_looser(tmp_path: Path) -> None:
    """Uncertified at 60 to 120 V is major; the limit of 1 asks for a certificate."""
    assert "mains-barrier" in {entry.name for entry in UNTOUCHABLE}
    text = "limits: {mains-barrier: {major: 0.5, reason: our own test house}}\n"
    assert "the major limit of mains-barrier cannot be looser" in refused(tmp_path, text).problem
    text = "limits: {dead-time-margin: {major: 5 ns, reason: measured}}\n"
    assert [x.effect for x in taken(tmp_path, text).changes] == ["looser limit"]


def test_a_house_default_acquits_no_grave_check(tmp_path: Path) -> None:
    """What a house usually buys is no statement on this product."""
    house = taken(
        tmp_path,
        "defaults:\n  - {path: supply.certified, value: 'yes', reason: we buy certified units}\n",
    )
    spec = SPEC.replace("dc-source", "mains-converter")
    answers = {x.check: x for x in findings(house, spec)}
    assert answers["mains-barrier"].status is Status.OPEN
    stated = spec.replace("v_rail", "certified: yes, v_rail")
    answers = {x.check: x for x in findings(house, stated)}
    assert answers["mains-barrier"].status is Status.MEETS


def test_compare_questions_and_amend_show_what_the_house_weakens(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    entry = rising("safety", "minor")
    limit = scaled(entry, 1.05, "minor")
    house = f"limits: {{{entry.name}: {{minor: {limit}, reason: no such part here}}}}\n"
    taken(tmp_path, house)
    file = tmp_path / "x.amp.yaml"
    file.write_text(SPEC.lstrip(), encoding="utf-8")
    for words in (
        ["compare", str(file), str(file)],
        ["compare", str(file), str(file), "--report", "markdown"],
        ["questions", str(file)],
        ["questions", str(file), "--markdown"],
        ["amend", str(file), "--all", "--dry"],
    ):
        main(words)
        told = " ".join(capsys.readouterr().out.split())
        assert "weakened by the house file" in told.lower(), words
        assert told.count("no such part here") == 1, words


SPEC = """
amplifier_spec: 1
supply: {rails: single, source: dc-source, v_rail: 24 V}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
"""


def findings(house: House | None, text: str = SPEC) -> tuple[Finding, ...]:
    loaded = load_text(text, "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, "prototype", criteria=Criteria(None, None, house)).findings


DCR = "defaults:\n  - {path: filter.inductor.dcr, value: 77 mohm, reason: our stock}\n"
PEAK = "defaults:\n  - {path: limiter.v_peak, value: 20 V, reason: our limiter}\n"
FILTER = "    filter: {type: lc, inductor: {l: 10 uH}, c_ground: {c: 680 nF}}\n"


def leaned(house: House, text: str, path: str) -> set[str]:
    """What the answers assume of a path of the channel."""
    full = f"channels.main.{path}"
    return {
        x.text for item in findings(house, text) for x in item.evidence.assumed if x.path == full
    }


def test_a_default_counts_where_the_spec_is_silent_and_only_there(tmp_path: Path) -> None:
    house = taken(tmp_path, DCR)
    assert leaned(house, SPEC + FILTER, "filter.inductor.dcr") == {"77 mohm"}
    stated = SPEC + FILTER.replace("10 uH", "10 uH, dcr: 20 mohm")
    assert leaned(house, stated, "filter.inductor.dcr") == set()


def test_a_default_names_its_reason_and_leans_neither_way(tmp_path: Path) -> None:
    found = findings(taken(tmp_path, DCR), SPEC + FILTER)
    items = {x for item in found for x in item.evidence.assumed if x.path.endswith("inductor.dcr")}
    assert {(x.leaning, x.basis.title) for x in items} == {("neutral", "house default: our stock")}


def test_a_default_does_not_bring_back_a_section_that_is_not_fitted(tmp_path: Path) -> None:
    house = taken(tmp_path, PEAK)
    fitted, none = "    limiter: {v_rms: 8 V}\n", "    limiter: none\n"
    for text, kind in ((SPEC + fitted, LeafNode), (SPEC, Gap), (SPEC + none, Gap)):
        loaded = load_text(text, "toy.amp.yaml")
        assert loaded.spec is not None
        found = Graph(house.applied(loaded.spec), {}).resolve("limiter.v_peak", "main")
        assert isinstance(found, kind)


def test_a_default_survives_a_change_of_the_spec(tmp_path: Path) -> None:
    """Remedies are tried on changed copies of the spec."""
    loaded = load_text(SPEC, "toy.amp.yaml")
    assert loaded.spec is not None
    changed = taken(tmp_path, PEAK).applied(loaded.spec).with_values({"supply.v_rail": "20 V"})
    assert changed.spec is not None
    assert set(changed.spec.defaults) == {"limiter.v_peak"}


@pytest.mark.parametrize(
    ("text", "problem", "line"),
    [
        ("limitz: {}\n", "`limitz` is not known", 2),
        ("limits: 3\n", "not a section", 2),
        ("limits:\n  no-such-check: {major: 1, reason: x}\n", "no check named `no-such-check`", 3),
        ("limits:\n  rail-rippel: {major: 1, reason: x}\n", "did you mean rail-ripple", 3),
        ("limits:\n  rail-ripple: 3 V\n", "not a section", 3),
        ("limits:\n  rail-ripple: {reason: x}\n", "no limit is stated", 3),
        ("limits:\n  rail-ripple: {major: 3 kg, reason: x}\n", "kg", 3),
        ("checks_off:\n  rail-ripple:\n", "no reason is given", 3),
        ("checks_off: [rail-ripple]\n", "not a section", 2),
        ("defaults:\n  - {path: ambient, value: 3 V, reason: x}\n", "no field `ambient`", 3),
        ("defaults:\n  - {path: environment.ambient, value: 3 V, reason: x}\n", "voltage", 3),
        ("defaults:\n  - {path: environment, value: 3 V, reason: x}\n", "not a single value", 3),
        ("defaults: {a: b}\n", "not a list", 2),
        ("defaults:\n  - x\n", "not a section", 3),
        ("rules:\n  - our_rules\n", "no installed package offers house rules our_rules", 3),
        ("rules: our_rules\n", "not a list", 2),
        ("limits: [\n", "", 2),
        ("limits: !!python/object:os.system {}\n", "tag", 2),
    ],
)
def test_a_bad_house_file_is_refused_with_its_place(
    tmp_path: Path, text: str, problem: str, line: int
) -> None:
    refusals = house_of(tmp_path, text)
    assert isinstance(refusals, tuple)
    assert any(problem in item.problem for item in refusals), refusals
    assert all(item.place.line >= line for item in refusals)
    assert all(item.expected for item in refusals)
    assert not any("amplifier_spec" in item.example for item in refusals)


def test_a_limit_without_reason_is_refused(tmp_path: Path) -> None:
    entry = rising("rating")
    text = f"limits: {{{entry.name}: {{major: {scaled(entry, 0.9)}}}}}\n"
    assert refused(tmp_path, text).problem == "no reason is given"


def test_limits_out_of_order_are_refused(tmp_path: Path) -> None:
    entry = rising("rating")
    text = f"limits: {{{entry.name}: {{minor: {scaled(entry, 2.0)}, reason: x}}}}\n"
    assert "must lie in this order" in refused(tmp_path, text).problem


def test_a_default_for_what_follows_from_others_is_refused(tmp_path: Path) -> None:
    path = next(x.stated_at for x in load().derived.values() if x.stated_at)
    text = f"defaults:\n  - {{path: {path}, value: 3 V, reason: x}}\n"
    assert "follows from other values" in refused(tmp_path, text).problem


@pytest.fixture
def site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A folder on the path with a distribution that offers house rules ``our_rules``."""
    folder = tmp_path / "site"
    info = folder / "rules_of_ours-1.0.dist-info"
    info.mkdir(parents=True)
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: our-rules\nVersion: 1.0\n")
    (info / "entry_points.txt").write_text("[ampreview.house_rules]\nour_rules = rules_of_ours\n")
    package = folder / "rules_of_ours"
    (package / "stock").mkdir(parents=True)
    (package / "__init__.py").write_text('"""Rules of our own."""\n')
    (package / "stock" / "__init__.py").write_text('"""What our stock holds."""\n')
    (package / "stock" / "rail_of_our_own.py").write_text(RULE)
    monkeypatch.syspath_prepend(str(folder))
    yield folder
    for name in [name for name in sys.modules if name.startswith("rules_of_ours")]:
        del sys.modules[name]
    importlib.invalidate_caches()


def test_house_rules_are_loaded_when_the_house_file_names_them(tmp_path: Path, site: Path) -> None:
    house = taken(tmp_path, "rules: [our_rules]\n")
    entry = house.catalogue.entry("rail-of-our-own")
    assert entry is not None
    assert entry.domain == "stock"
    assert house.catalogue.domains["stock"] == "What our stock holds"
    found = findings(house, SPEC.replace("24 V", "50 V"))
    item = next(x for x in found if x.check == "rail-of-our-own")
    assert (item.status, item.evidence.figure) == (Status.FINDING, 50.0)


def test_the_catalogue_shows_house_checks_and_limits(
    tmp_path: Path, site: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """From the folder of the house file on, or with the file named; not with --no-house."""
    file = tmp_path / "house.ampreview.yaml"
    file.write_text(FIRST + "rules: [our_rules]\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["catalogue"]) == 0
    listed = capsys.readouterr().out
    assert "What our stock holds" in listed
    assert "rail-of-our-own" in listed
    assert "HOUSE RULES  house.ampreview.yaml" in listed
    assert main(["catalogue", "rail-of-our-own", "--house", str(file)]) == 0
    assert "rail-of-our-own" in capsys.readouterr().out
    assert main(["catalogue", "rail-of-our-own", "--no-house"]) == 2
    file.write_text(FIRST + "ruls: [our_rules]\n", encoding="utf-8")
    assert main(["catalogue"]) == 2


def test_house_rules_are_not_loaded_unnamed(tmp_path: Path, site: Path) -> None:
    assert taken(tmp_path, "").catalogue.entry("rail-of-our-own") is None
    assert "rules_of_ours" not in sys.modules


def test_a_limit_may_speak_of_a_house_check(tmp_path: Path, site: Path) -> None:
    text = "rules: [our_rules]\nlimits: {rail-of-our-own: {major: 60 V, reason: new shelf}}\n"
    assert [x.effect for x in taken(tmp_path, text).changes] == ["checks added", "looser limit"]


@pytest.mark.parametrize(
    ("broken", "problem"),
    [
        (RULE.replace("formula=", "frmula="), "frmula"),
        (RULE.replace('"major": SOURCE', '"minor": SOURCE'), "major has no basis"),
        (RULE.replace("supply.v_rail", "supply.v_rial"), "v_rial is neither a field"),
        ("raise SystemError('no')\n", "SystemError"),
        ("def (\n", "SyntaxError"),
    ],
)
def test_a_faulty_house_rule_is_refused_with_file_or_reason(
    tmp_path: Path, site: Path, broken: str, problem: str
) -> None:
    (site / "rules_of_ours" / "stock" / "rail_of_our_own.py").write_text(broken)
    refusal = refused(tmp_path, "rules: [our_rules]\n")
    assert problem in refusal.problem
    assert refusal.place.line == 2


def test_a_house_rule_may_not_take_the_name_of_another(tmp_path: Path, site: Path) -> None:
    taken_name = load().entries[0].name.replace("-", "_")
    file = site / "rules_of_ours" / "stock" / "rail_of_our_own.py"
    file.rename(file.with_name(f"{taken_name}.py"))
    assert "already" in refused(tmp_path, "rules: [our_rules]\n").problem


def test_the_nearest_house_file_is_found_upwards(tmp_path: Path) -> None:
    inner = tmp_path / "boards" / "main"
    inner.mkdir(parents=True)
    (tmp_path / "house.ampreview.yaml").write_text(FIRST)
    found = find_house(inner / "x.amp.yaml")
    assert found is not None
    assert found.resolve() == (tmp_path / "house.ampreview.yaml").resolve()
    (inner / "house.ampreview.yaml").write_text(FIRST)
    assert find_house(inner / "x.amp.yaml") == inner / "house.ampreview.yaml"


def test_terms_choose_the_house_file(tmp_path: Path) -> None:
    spec = tmp_path / "x.amp.yaml"
    (tmp_path / "house.ampreview.yaml").write_text(FIRST)
    other = tmp_path / "other.yaml"
    other.write_text(FIRST)
    for terms, expected in (
        (Terms(), "house.ampreview.yaml"),
        (Terms(house=other), "other.yaml"),
        (Terms(no_house=True), None),
    ):
        criteria = criteria_for(spec, terms)
        assert isinstance(criteria, Criteria)
        name = Path(criteria.house.file).name if criteria.house else None
        assert name == expected


def test_a_changed_house_file_is_read_again(tmp_path: Path) -> None:
    entry = rising("rating")
    assert taken(tmp_path, "").catalogue.entry(entry.name)
    assert not taken(tmp_path, f"checks_off: {{{entry.name}: x}}\n").catalogue.entry(entry.name)


def test_what_lies_in_the_working_folder_is_not_above_a_spec_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """``../offer/x.amp.yaml`` of a folder with a house file: that file is not the offer's."""
    for folder in ("ours", "offer"):
        (tmp_path / folder).mkdir()
    for name in ("house", "parts"):
        (tmp_path / "ours" / f"{name}.ampreview.yaml").write_text(f"amplifier_{name}: 1\n")
    monkeypatch.chdir(tmp_path / "ours")
    spec = Path("../offer/x.amp.yaml")
    assert (find_house(spec), find_upward(spec, "parts.ampreview.yaml")) == (None, None)
    (tmp_path / "house.ampreview.yaml").write_text("amplifier_house: 1\n")
    house = find_house(spec)
    assert house == Path("../house.ampreview.yaml")
    assert where_found(spec, house).startswith("found 1 folder above the spec")
