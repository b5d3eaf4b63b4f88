"""What the program reads, writes and runs at its edges, when files and folders are hostile."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from ampreview.linter.cli import main

ROOT = Path(__file__).parents[1]
SKETCH = (ROOT / "sample_specs" / "classroom-sketch.amp.yaml").read_text(encoding="utf-8")
RAIL = "supply.v_rail=20 V,24 V"
SPEC, HOUSE = "a.amp.yaml", "house.ampreview.yaml"
PIPES = pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no named pipes")
LINKS = pytest.mark.skipif(sys.platform == "win32", reason="links need a right of their own")
GIT = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder to be in, with a spec and a house file."""
    monkeypatch.chdir(tmp_path)
    Path(SPEC).write_text(SKETCH, encoding="utf-8")
    Path(HOUSE).write_text("amplifier_house: 1\n", encoding="utf-8")
    return tmp_path


def run(*words: str, **more: str) -> subprocess.CompletedProcess[str]:
    """The program in a process of its own."""
    code = "import sys; from ampreview.linter.cli import main; sys.exit(main())"
    return subprocess.run(
        [sys.executable, "-c", code, *words],
        capture_output=True,
        text=True,
        env=os.environ | more,
        timeout=60,
        check=False,
    )


def status_of(words: list[str]) -> object:
    """The exit status, also where the parser of the command line gives it."""
    try:
        return main(words)
    except SystemExit as stop:
        return stop.code


# Writing: every command that writes, to everything that is no place to write to

WRITERS = (
    ["assess", SPEC, "--remedies", "none", "-o"],
    ["form", "-o"],
    ["schema", "-o"],
    ["questions", SPEC, "--table"],
    ["questions", SPEC, "--blank"],
    ["questions", SPEC, "--limits"],
    ["bringup", SPEC, "-o"],
    ["amend", SPEC, "--to-release", "-o"],
)


@pytest.mark.parametrize("words", WRITERS, ids=lambda words: " ".join(words[::2]))
@LINKS
@PIPES
def test_nothing_is_written_over_that_should_not_be(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    Path("precious").write_text("mine", encoding="utf-8")
    Path("link").symlink_to("precious")
    Path("hanging").symlink_to("nowhere")
    Path("folder").mkdir()
    os.mkfifo("pipe")
    for target in ("link", "hanging", "folder", "pipe", os.devnull):
        assert main([*words, target, "--overwrite"]) == 2, target
    assert main([*words, "precious"]) == 2
    assert "--overwrite" in capsys.readouterr().err
    if SPEC in words:
        assert main([*words, SPEC, "--overwrite"]) == 2
        assert main([*words, HOUSE, "--overwrite"]) == 2
        assert main([*words, f"folder/../{SPEC}", "--overwrite"]) == 2
    assert Path("precious").read_text(encoding="utf-8") == "mine"
    assert Path("link").is_symlink()
    assert not Path("nowhere").exists()
    assert Path("pipe").is_fifo()
    assert Path(SPEC).read_text(encoding="utf-8") == SKETCH
    assert main([*words, "precious", "--overwrite"]) < 2
    changed = Path("precious").read_text(encoding="utf-8") != "mine"
    assert changed or "Nothing written: no change" in capsys.readouterr().out
    assert not [name for name in os.listdir() if name.startswith(".precious")]


def test_writing_stands_in_one_place() -> None:
    for path in (ROOT / "linter").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        found = re.findall(r"\.write_(?:text|bytes)\(|\bopen\([^)]*[\"'][wax]", text)
        assert not found or path.name == "writing.py", path


# Reading


@PIPES
@pytest.mark.parametrize(
    "words",
    [
        ["assess", "pipe.amp.yaml"],
        ["compare", SPEC, "pipe.amp.yaml"],
        ["assess", SPEC, "--house", "pipe.amp.yaml"],
        ["assess", SPEC, "--deviations", "pipe.amp.yaml"],
        ["assess", SPEC, "--measured", "pipe.amp.yaml"],
        ["amend", SPEC, "--answers", "pipe.csv"],
        ["worksheet", "/dev/zero"],
    ],
    ids=" ".join,
)
def test_a_pipe_or_a_device_is_not_waited_for(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    os.mkfifo("pipe.amp.yaml")
    os.mkfifo("pipe.csv")
    assert main(words) == 2
    assert "no file" in " ".join("".join(capsys.readouterr()).split())


def test_assessing_opens_nothing_but_what_is_named(folder: Path) -> None:
    """An audit hook sees every file that is opened, every process and every connection."""
    code = f"""
import sys
seen = []
def look(event, given):
    if event == "open" and isinstance(given[0], (str, bytes)):
        seen.append(("open", str(given[0]), given[1]))
    if event.startswith(("subprocess", "os.exec", "os.system", "socket.", "os.re")):
        seen.append((event, str(given), ""))
from ampreview.linter.cli import main
sys.addaudithook(look)
main(["assess", "{SPEC}"])
sys.stderr.write(repr(seen))
"""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    seen = eval(done.stderr, {"__builtins__": {}})
    ours = (str(ROOT), sys.prefix, sys.base_prefix, str(Path(json.__file__).parents[1]))
    others = {name for event, name, _ in seen if event == "open" and not name.startswith(ours)}
    others = {name for name in others if not name.startswith("__editable__")}  # no file
    assert others <= {SPEC, HOUSE}, others
    assert all(mode in ("r", "rb", None) for event, name, mode in seen if name in others)
    assert [event for event, *_ in seen if event != "open"] == []


@pytest.mark.parametrize(
    ("words", "wrong"),
    [
        (["assess", SPEC, "--builds", "1000001"], "--builds"),
        (["assess", ""], "an empty file name"),
        (["assess", SPEC, "--builds", "0"], "--builds"),
        (["assess", SPEC, "--jobs", "1000"], "--jobs"),
        (["assess", SPEC, "--seed", "-1"], "--seed"),
    ],
)
def test_numbers_of_options_have_limits(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str], wrong: str
) -> None:
    assert status_of(words) == 2
    assert wrong in capsys.readouterr().err


@pytest.mark.parametrize("name", ["--output=precious", "--house=x", "-o", "--no-house"])
def test_a_file_with_the_name_of_an_option_is_refused_or_read(
    folder: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    Path(name).write_text(SKETCH, encoding="utf-8")
    assert main(["assess", SPEC, name]) == 2
    assert f"./{name}" in capsys.readouterr().err
    assert main(["assess", "--remedies", "none", "--", name]) < 2
    assert not Path("precious").exists()


# Output that nobody reads to its end


@pytest.mark.skipif(sys.platform == "win32", reason="pipes of another kind")
@pytest.mark.parametrize(
    ("words", "expected"),
    [(["assess", SPEC], 0), (["compare", SPEC, SPEC], 0), (["assess", "none.amp.yaml"], 2)],
    ids=str,
)
def test_a_reader_that_leaves_does_not_change_the_status(
    folder: Path, words: list[str], expected: int
) -> None:
    code = "import sys; from ampreview.linter.cli import main; sys.exit(main())"
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "wb") as out:
        done = subprocess.run(
            [sys.executable, "-c", code, *words],
            stdout=out,
            stderr=subprocess.PIPE,
            check=False,
            timeout=60,
        )
    assert done.returncode == expected, done.stderr
    assert b"Traceback" not in done.stderr


# Git


@GIT
def test_no_program_of_a_hostile_repository_runs(folder: Path) -> None:
    """A promisor remote, a watcher, a pager, a text conversion and a hook that leave a mark."""
    mark = folder / "mark"
    evil = folder / "evil.sh"
    evil.write_text(f"#!/bin/sh\necho run >> '{mark}'\n", encoding="utf-8")
    evil.chmod(0o755)

    def git(*words: str) -> str:
        who = ("-c", "user.name=a", "-c", "user.email=a@example.org")
        done = subprocess.run(["git", *who, *words], capture_output=True, text=True, check=True)
        return done.stdout.strip()

    git("init", "--quiet")
    git("add", SPEC)
    git("commit", "--quiet", "--message", "start")
    blob = git("rev-parse", f"HEAD:{SPEC}")
    for key, value in {
        "core.fsmonitor": evil,
        "core.pager": evil,
        "pager.show": evil,
        "core.sshCommand": evil,
        "diff.x.textconv": evil,
        "core.hooksPath": folder,
        "log.showSignature": "true",
        "gpg.program": evil,
    }.items():
        git("config", key, str(value))
    Path(".gitattributes").write_text("*.yaml diff=x\n", encoding="utf-8")
    assert main(["compare", f"HEAD:{SPEC}", SPEC]) == 0
    git("config", "core.repositoryFormatVersion", "1")
    git("config", "extensions.partialClone", "origin")
    git("config", "remote.origin.promisor", "true")
    for url in (f"ext::sh {evil}", "ssh://nobody@localhost/x", f"file://{folder}/gone"):
        git("config", "remote.origin.url", url)
        git("config", "remote.origin.uploadpack", str(evil))
        (Path(".git") / "objects" / blob[:2] / blob[2:]).unlink(missing_ok=True)
        mark.unlink(missing_ok=True)
        assert main(["compare", f"HEAD:{SPEC}", SPEC]) == 2
        assert not mark.exists()


# House rules

RULES = 'from pathlib import Path\nPath({!r}).write_text("run")\n'


@pytest.mark.parametrize("by", ["the folder", "PYTHONPATH"])
def test_house_rules_are_never_taken_from_a_folder_at_hand(folder: Path, by: str) -> None:
    place = folder if by == "the folder" else folder / "elsewhere"
    info = place / "evil-1.0.dist-info"
    info.mkdir(parents=True)
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: evil\nVersion: 1\n")
    (info / "entry_points.txt").write_text("[ampreview.house_rules]\nevil = evil_rules\n")
    mark = folder / "mark"
    (place / "evil_rules.py").write_text(RULES.format(str(mark)), encoding="utf-8")
    Path(HOUSE).write_text("amplifier_house: 1\nrules: [evil]\n", encoding="utf-8")
    done = run("assess", SPEC, PYTHONPATH=str(place) if by == "PYTHONPATH" else "")
    assert done.returncode == 2, done.stdout
    assert "no installed package offers house rules evil" in " ".join(done.stdout.split())
    assert not mark.exists()


def test_a_report_says_how_far_away_the_house_file_was(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path(HOUSE).write_text(
        "amplifier_house: 1\nchecks_off: {emission-class: for stages}\n", encoding="utf-8"
    )
    Path("one/two").mkdir(parents=True)
    Path(f"one/two/{SPEC}").write_text(SKETCH, encoding="utf-8")
    for words in ([], ["--full"], ["--report", "markdown"]):
        main(["assess", f"one/two/{SPEC}", "--remedies", "none", *words])
        told = " ".join(capsys.readouterr().out.replace("\\", "").split())
        assert "found 2 folders above the spec; for files from outside: --no-house" in told
    main(["assess", SPEC, "--remedies", "none"])
    assert "found beside the spec" in " ".join(capsys.readouterr().out.split())


# Texts that would like to be something else

FORGED = (
    "x\n RELEASED  at production: 99 met\n=cmd|'/c calc'!A1\u200b\u2060\xad\ufe0f\u3164"
    " @someone www.e.example http://e.example me@e.example #123"
)
REFUSED = "\x1b[31m\x07\u061c\u202e\u2066\u2028\U000e0041\n RELEASED  at production: 99 met\n"
UNSEEN = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\xad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufe00-\ufe0f"
    "\U000e0000-\U000e0fff]"
)
LIVE = re.compile(r"(?<![`\w/])(?:@someone|www\.e|http://e|me@e|#123)")
REPORTS = (
    ["assess"],
    ["assess", "--full"],
    ["assess", "--report", "markdown"],
    ["assess", "--report", "json"],
    ["assess", "--report", "sarif"],
    ["assess", "--report", "page"],
    ["assess", "--report", "junit"],
    ["assess", "--report", "lines"],
    ["assess", "--report", "json-lines"],
    ["bringup"],
    ["bringup", "--report", "markdown"],
    ["worksheet"],
    ["worksheet", "--report", "markdown"],
    ["questions"],
    ["questions", "--markdown"],
    ["questions", "--requirements"],
    ["questions", "--requirements", "--markdown"],
    ["questions", "--table", "table.csv"],
    ["compare", SPEC],
    ["compare", "--report", "markdown", SPEC],
    ["compare", "--report", "page", SPEC],
    ["sweep", "--vary", RAIL],
    ["amend", "--to-release"],
)


@pytest.mark.parametrize("words", REPORTS, ids=" ".join)
def test_no_text_of_a_spec_forges_a_report(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    quoted = json.dumps(FORGED)
    lines = [x for x in SKETCH.splitlines() if not x.startswith(("title:", "revision:"))]
    entry = {"check": FORGED, "place": FORGED, "until": "production"}
    entry |= {"permitted_by": FORGED, "reason": FORGED}
    lines += [f"title: {quoted}", f"revision: {quoted}", f"deviations: [{json.dumps(entry)}]"]
    text = "\n".join(lines)
    name = "b.amp.yaml" if sys.platform == "win32" else f"{REFUSED}.amp.yaml"
    Path(name).write_text(text, encoding="utf-8")
    status = main([*words, name])
    told = capsys.readouterr()
    said = told.out + told.err
    if Path("table.csv").exists():
        said += Path("table.csv").read_text(encoding="utf-8")
    assert not UNSEEN.search(said), UNSEEN.search(said)
    assert not re.search(r"(?m)^[\s|>#*-]*RELEASED\s+at production: 99", said)
    assert not re.search(r"(?m)(^|,)\"?=cmd", said)
    assert status in (0, 1), said
    if "markdown" in " ".join(words):
        assert not LIVE.search(said), LIVE.search(said)


@pytest.mark.parametrize("sign", [*"\u061c\u202e\u2066\u2028\U000e0041\u200e"])
def test_what_moves_or_hides_text_is_refused_in_a_spec(
    folder: Path, capsys: pytest.CaptureFixture[str], sign: str
) -> None:
    for written in (sign, json.dumps(sign)[1:-1]):
        Path(SPEC).write_text(f'amplifier_spec: 1\ntitle: "a{written}b"\n', encoding="utf-8")
        assert main(["assess", SPEC]) == 2, ascii(sign)
        assert not UNSEEN.search(capsys.readouterr().out)


@pytest.mark.parametrize(
    "words",
    [
        ["assess", f"{REFUSED}.amp.yaml"],
        ["assess", SPEC, "--check", REFUSED],
        ["assess", SPEC, REFUSED, "--report", REFUSED],
        ["worksheet", SPEC, REFUSED],
        ["catalogue", REFUSED],
        ["compare", f"HEAD:{REFUSED}", SPEC],
        ["form", "--channels", REFUSED],
        ["form", "-o", f"gone/{REFUSED}"],
        ["amend", SPEC, "--fix", REFUSED],
        ["amend", SPEC, "--all", "--answers", REFUSED],
        ["assess", SPEC, "--house", REFUSED],
        ["assess", SPEC, "--date", REFUSED],
        ["assess", SPEC, "--measured", REFUSED],
        ["bom", SPEC, REFUSED],
        ["bringup", REFUSED],
        ["sweep", SPEC, "--vary", REFUSED],
        ["sweep", SPEC, "--vary", f"supply.v_rail={REFUSED}"],
        ["sweep", SPEC, "--vary", RAIL, "--margin", REFUSED],
        [REFUSED],
    ],
    ids=ascii,
)
def test_no_word_of_the_command_line_forges_a_report(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    assert status_of(words) == 2
    said = "".join(capsys.readouterr())
    assert not UNSEEN.search(said), UNSEEN.search(said)
    assert not re.search(r"(?m)^\s*RELEASED", said)
