"""The program as its user calls it: exit status, output, refusals, terminals."""

import json
import os
import re
import shutil
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest
from rich.cells import cell_len

from ampreview.linter.cli import COMMANDS, main

SAMPLES = Path(__file__).parents[1] / "sample_specs"
SOUND = str(SAMPLES / "choir-portable.amp.yaml")
FAULTY = str(SAMPLES / "bird-call-pocket-faulty.amp.yaml")
SKETCH = str(SAMPLES / "classroom-sketch.amp.yaml")
PROGRAM = [sys.executable, "-m", "ampreview.linter"]
QUICK = ["--remedies", "none"]
ESCAPE = "\x1b"
# SGR codes 30..38, 40..48, 90..97, 100..107 set a colour (ECMA-48, 8.3.117).
COLOUR = re.compile(r"\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;\d+)*m")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder at hand."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*words: str | Path, **environment: str) -> subprocess.CompletedProcess[bytes]:
    """The program in a process of its own, its output in a pipe."""
    settings = {k: v for k, v in os.environ.items() if k not in ("COLUMNS", "FORCE_COLOR")}
    return subprocess.run(
        [*PROGRAM, *map(str, words)], capture_output=True, env=settings | environment, check=False
    )


def printed(capsys: pytest.CaptureFixture[str], status: int, *words: str | Path) -> str:
    """What a command prints; nothing may look like a crash."""
    assert main([*map(str, words)]) == status
    out, err = capsys.readouterr()
    assert "itself failed" not in out + err
    return out


# Exit status


@pytest.mark.parametrize(
    ("words", "status"),
    [
        (["assess", SOUND, *QUICK], 0),
        (["assess", FAULTY, *QUICK], 1),
        (["assess", SOUND, FAULTY, *QUICK], 1),
        (["assess", FAULTY, "absent.amp.yaml", SOUND, *QUICK], 2),
        (["assess", "absent.amp.yaml"], 2),
        (["assess", SOUND, "--hold-at", "minor", *QUICK], 1),
        (["assess", SOUND, "--builds", "0"], 2),
        (["assess", SOUND, "--seed", "-1"], 2),
        (["assess", SOUND, "--jobs", "0"], 2),
        (["assess", SOUND, "--tolerance", "monte-carlo", "--report", "json"], 2),
        (["assess", SOUND, "--check", "dead-time-margin", "--report", "json"], 2),
        (["assess", SOUND, "--house", "absent.yaml"], 2),
        (["assess", SOUND, "--deviations", "absent.yaml"], 2),
        (["assess", SOUND, "-o", "absent/report.txt", *QUICK], 2),
        (["worksheet", SOUND, "dead-time-margin"], 0),
        (["worksheet", SOUND, "dead-time-margn"], 2),
        (["worksheet", "absent.amp.yaml"], 2),
        (["questions", SKETCH], 0),
        (["questions", "absent.amp.yaml"], 2),
        (["amend", SOUND], 2),
        (["amend", SOUND, "--fix", "dead-time-margn"], 2),
        (["amend", "absent.amp.yaml", "--to-release"], 2),
        (["form"], 0),
        (["form", "--channels", "a b"], 2),
        (["form", "--channels", "left,left"], 2),
        (["schema"], 0),
        (["schema", "-o", "absent/schema.json"], 2),
        (["compare", SOUND, SOUND], 0),
        (["compare", SOUND, SOUND.replace("portable", "portable-faulty")], 1),
        (["compare", SOUND, "absent.amp.yaml"], 2),
        (["catalogue", "dead-time-margin"], 0),
        (["catalogue", "dead-time-margn"], 2),
    ],
    ids=lambda value: " ".join(Path(w).name for w in value) if isinstance(value, list) else "",
)
def test_exit_status(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str], status: int
) -> None:
    assert main(words) == status
    out, err = capsys.readouterr()
    assert "itself failed" not in out + err
    assert (status != 2) or out + err


@pytest.mark.parametrize(
    "words",
    [[], ["asses"], ["assess"], ["assess", SOUND, "--remedy"], ["form", "--rails", "triple"],
     ["assess", SOUND, "--date", "2030-13-01"], ["assess", SOUND, "--no-house", "--house", "x"]],
)  # fmt: skip
def test_wrong_use_is_refused_with_a_hint(
    capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(words)
    assert stopped.value.code == 2
    assert "usage: ampreview" in capsys.readouterr().err


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help(capsys: pytest.CaptureFixture[str], name: str) -> None:
    with pytest.raises(SystemExit) as stopped:
        main([name, "--help"])
    assert stopped.value.code == 0
    assert f"usage: ampreview {name}" in capsys.readouterr().out


def test_the_program_says_which_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as end:
        main(["--version"])
    assert end.value.code == 0
    assert re.fullmatch(r"ampreview (\d+\.\d+\.\d+|not installed)\n", capsys.readouterr().out)


def test_each_file_is_reported_even_when_one_cannot_be_read(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = printed(capsys, 2, "assess", "absent.amp.yaml", SOUND, FAULTY, *QUICK)
    places = [text.index(word) for word in ("NOT ASSESSED", " RELEASED ", " HELD ")]
    assert places == sorted(places)


def test_a_fault_of_the_program_is_not_a_verdict(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("made to fail")

    monkeypatch.setattr("ampreview.linter.batch.items.load_file", broken)
    assert main(["assess", SOUND]) == 2
    assert "made to fail" in capsys.readouterr().err


# Files that are no specs


UNFIT = {
    "empty": (b"", "the file is empty"),
    "blank": (b"\n  \n", "the file is empty"),
    "binary": (bytes(range(256)), "byte 0x80 is not UTF-8"),
    "zeros": (b"\0" * 100, "in the text"),
    "image": (b"\x89PNG\r\n\x1a\n" + b"\0" * 40, "is not UTF-8"),
    "utf-16": ("amplifier_spec: 1".encode("utf-16"), "stored as UTF-16"),
    "large": (b"#" * 1_000_001, "larger than 1000 kB"),
    "text": (b"Dear all, please find enclosed", "the file is not a spec"),
    "list": (b"- 1\n- 2\n", "the file is not a spec"),
    "other": (b"name: x\nversion: 3\n", ""),
}


@pytest.mark.parametrize("name", UNFIT)
def test_a_file_that_is_no_spec_is_refused_with_place(
    folder: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    content, problem = UNFIT[name]
    (folder / "a.amp.yaml").write_bytes(content)
    for words in (["assess"], ["worksheet"], ["questions"], ["compare", SOUND]):
        text = printed(capsys, 2, *words, "a.amp.yaml")
        assert "NOT ASSESSED" in text
        assert problem in text
        assert re.search(r"location +line \d+, column \d+", text)
        assert re.search(r"expected +\S", text)


def test_a_folder_and_a_missing_file_are_refused(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "b.amp.yaml").mkdir()
    assert main(["assess", "b.amp.yaml"]) == 2
    assert "no *.amp.yaml in the folder b.amp.yaml" in capsys.readouterr().err
    assert "No such file" in printed(capsys, 2, "assess", "c.amp.yaml")
    assert "cannot be opened" in printed(capsys, 2, "assess", "\0")


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root reads all")
def test_an_unreadable_file_is_refused(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    shutil.copy(SOUND, "a.amp.yaml")
    Path("a.amp.yaml").chmod(0)
    assert "Permission denied" in printed(capsys, 2, "assess", "a.amp.yaml")


def test_a_report_never_overwrites_what_it_is_about(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.copy(SOUND, "a.amp.yaml")
    assert main(["assess", "a.amp.yaml", "-o", "./a.amp.yaml"]) == 2
    assert Path("a.amp.yaml").read_bytes() == Path(SOUND).read_bytes()


# Pipes, encodings, terminals


def test_a_reader_that_leaves_early_is_no_fault() -> None:
    with subprocess.Popen(
        [*PROGRAM, "catalogue", "--fields"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as program:
        assert program.stdout is not None
        assert program.stderr is not None
        program.stdout.readline()
        program.stdout.close()
        assert program.stderr.read() == b""


def test_a_pipe_gets_plain_utf_8_whatever_the_locale() -> None:
    done = run(
        "assess", FAULTY, "--report", "markdown", *QUICK, LC_ALL="C", PYTHONIOENCODING="ascii"
    )
    assert (done.returncode, done.stderr) == (1, b"")
    text = done.stdout.decode("utf-8")
    assert "Ω" in text
    assert ESCAPE not in text


@pytest.mark.skipif(sys.platform != "linux", reason="names that are not UTF-8")
@pytest.mark.parametrize("kind", ["text", "json", "sarif", "markdown"])
def test_a_file_name_that_is_not_utf_8(
    folder: Path, capsys: pytest.CaptureFixture[str], kind: str
) -> None:
    name = os.fsdecode(b"a\xff.amp.yaml")
    shutil.copy(FAULTY, name)
    printed(capsys, 1, "assess", name, *QUICK, "--report", kind, "-o", "report")
    text = Path("report").read_text(encoding="utf-8")
    shown = {"sarif": "a%FF.amp.yaml", "markdown": r"a\\udcff.amp.yaml"}
    assert shown.get(kind, r"a\udcff.amp.yaml") in text


def on_terminal(*words: str, **environment: str) -> str:
    """What the program writes to a terminal of 100 columns; skipped where there is none."""
    pty = pytest.importorskip("pty", reason="this system has no pseudo-terminals")
    master, slave = pty.openpty()
    settings = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "FORCE_COLOR", "CI")}
    settings |= {"TERM": "xterm-256color", "COLUMNS": "100", "LINES": "30"} | environment
    with subprocess.Popen([*PROGRAM, *words], stdout=slave, stderr=slave, env=settings):
        os.close(slave)
        content = b""
        while True:
            try:
                part = os.read(master, 65536)
            except OSError:  # Linux: the other end is closed
                break
            if not part:
                break
            content += part
    os.close(master)
    return content.decode("utf-8")


def test_colour_on_a_terminal_only() -> None:
    assert COLOUR.search(on_terminal("assess", FAULTY, *QUICK))
    assert not COLOUR.search(on_terminal("assess", FAULTY, *QUICK, NO_COLOR="1"))
    assert ESCAPE not in on_terminal("assess", FAULTY, *QUICK, TERM="dumb", NO_COLOR="1")
    assert ESCAPE.encode() not in run("assess", FAULTY, *QUICK).stdout
    assert COLOUR.search(run("assess", FAULTY, *QUICK, FORCE_COLOR="1").stdout.decode("utf-8"))


def test_no_pager_is_started(tmp_path: Path) -> None:
    """One page or many lines: whether they are paged is the user's choice."""
    marker = tmp_path / "called"
    pager = tmp_path / "pager"
    pager.write_text(f"#!/bin/sh\ntouch {marker}\ncat\n", encoding="utf-8")
    pager.chmod(0o755)
    settings = {"PAGER": str(pager), "MANPAGER": str(pager), "LESS": "", "GIT_PAGER": str(pager)}
    assert "dead-time-margin" in on_terminal("catalogue", **settings)
    assert not marker.exists()


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        (["assess", SKETCH], 0, ""),
        (["assess", FAULTY], 1, ""),
        (["assess", SKETCH, FAULTY, "-q"], 1, ""),
        (["assess", SKETCH, "absent.amp.yaml"], 2, "cannot be opened"),
        (["compare", SKETCH, SKETCH], 0, ""),
        (["compare", SKETCH, "absent.amp.yaml"], 2, "cannot be opened"),
        (["assess", SKETCH, "--report", "json"], 2, "give the json report a file"),
    ],
)
def test_quiet_leaves_the_exit_status_and_errors(
    capsys: pytest.CaptureFixture[str], words: list[str], status: int, says: str
) -> None:
    assert main([*words, "--quiet"]) == status
    out, err = capsys.readouterr()
    assert out == ""
    assert says in err if says else err == ""


def test_quiet_writes_the_files_that_are_asked_for(folder: Path) -> None:
    assert main(["assess", SKETCH, "--quiet", "--report", "lines=r"]) == 0
    assert "released" in Path("r").read_text(encoding="utf-8")


PAGES = {
    "review": ["assess", FAULTY, "--full"],
    "sketch": ["assess", SKETCH, "--full", "--tolerance", "root-sum-square"],
    "check": ["assess", FAULTY, "--check", "dead-time-margin", "--check", "target-sound-level"],
    "files": ["assess", SOUND, SKETCH, *QUICK],
    "yield": ["assess", SKETCH, "--tolerance", "monte-carlo", "--builds", "50", *QUICK],
    "refusals": ["assess", __file__],
    "worksheets": ["worksheet", FAULTY],
    "questions": ["questions", SKETCH],
    "comparison": ["compare", SOUND, SOUND.replace("portable", "portable-faulty")],
    "list": ["catalogue"],
    "pages": [
        "catalogue",
        "dead-time-margin",
        "loudspeaker-clipped-power",
        "clearance-and-creepage",
    ],
}


ON_ONE_PAGE = ("yield", "files")


@pytest.mark.parametrize("width", [60, 80, 110, 200])
@pytest.mark.parametrize("page", PAGES)
def test_no_line_is_longer_than_the_terminal(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, page: str, width: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    main(PAGES[page])
    text = capsys.readouterr().out
    lines = text.splitlines()
    assert max(map(cell_len, lines)) <= width
    assert lines == [line.rstrip() for line in lines]
    assert page in ON_ONE_PAGE or "…" not in text, "something was cut away"


@pytest.mark.parametrize("page", ["review", "questions"])
def test_the_same_is_said_at_every_width(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, page: str
) -> None:
    said = []
    for width in ("60", "200"):
        monkeypatch.setenv("COLUMNS", width)
        main(PAGES[page])
        text = re.sub(r"[\s_▪]+", "", capsys.readouterr().out)
        said.append(sorted(text))
    narrow, wide = said
    extra = len(narrow) - len(wide)
    assert abs(extra) < 0.01 * len(wide), "at one width much is left out"


def test_a_table_set_below_each_other_still_says_all_of_it(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where a worksheet has no room for columns, its headings come back and nothing is lost."""
    said = []
    for width in ("60", "200"):
        monkeypatch.setenv("COLUMNS", width)
        main(PAGES["worksheets"])
        lines = capsys.readouterr().out.splitlines()
        rows = (line for line in lines if not line.startswith(" quantity "))
        said.append(Counter(re.sub(r"\s+", "", "".join(rows))))
    narrow, wide = said
    assert wide - narrow == Counter()


def test_messages_of_the_findings_are_printed_whole(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "60")
    main(["assess", FAULTY, "--report", "json", *QUICK])
    answers = json.loads(capsys.readouterr().out)["files"][0]["answers"]
    main(["assess", FAULTY, "--full", *QUICK])
    shown = "".join(capsys.readouterr().out.split())
    found = [item for item in answers if item["severity"]]
    assert found
    for item in found:
        assert "".join(item["message"].split()) in shown, item["check"]
        assert item["check"] in shown


# Texts of a spec that would like to be something else

HOSTILE = (
    "[bold red]x[/] [link=http://e.example]y[/link] :bomb: | a | b |"
    " <script>alert(1)</script> # [t](http://e.example) `c` **d** \u200bz"
)
MARKUP = re.compile(r"(?<!\\)<(?!br>)[a-z/]|(?<!\\)\[t\]\(|(?<!\\)\*\*d|(?<!\\)`c")


def hostile_spec(folder: Path, name: str) -> Path:
    text = Path(SKETCH).read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith(("title:", "revision:"))]
    quoted = json.dumps(HOSTILE, ensure_ascii=False)
    lines += [f"title: {quoted}", f"revision: {quoted}"]
    lines.append("deviations:")
    entry = {
        "check": "rail-ripple", "place": "product", "until": "production",
        "permitted_by": HOSTILE, "reason": HOSTILE,
    }  # fmt: skip
    lines.append(f"  - {json.dumps(entry, ensure_ascii=False)}")
    path = folder / name
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


@pytest.mark.skipif(sys.platform == "win32", reason="no such file names")
@pytest.mark.parametrize(
    "words",
    [
        ["assess"],
        ["assess", "--report", "markdown"],
        ["worksheet"],
        ["worksheet", "--report", "markdown"],
        ["questions"],
        ["questions", "--markdown"],
        ["compare", SOUND],
        ["compare", "--report", "markdown", SOUND],
        ["amend", "--all"],
    ],
    ids=" ".join,
)
def test_texts_and_names_stay_texts(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    path = hostile_spec(folder, "a\x1b[31m\x07\u202e.amp.yaml")
    main([*words, str(path)])
    text = "".join(capsys.readouterr())
    assert "itself failed" not in text
    assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b\u202e]", text)
    if "markdown" in " ".join(words):
        assert not MARKUP.search(text)
    elif words[0] != "amend":
        assert "[bold red]x[/]" in text
        assert ":bomb:" in text


def test_names_in_the_refusals_stay_texts(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spec = 'amplifier_spec: 1\n"a\\e[31mb[red]": 1\nchannels: {"x[red]\\u202e": {}}\n'
    (folder / "a.amp.yaml").write_text(spec, encoding="utf-8")
    text = printed(capsys, 2, "assess", "a.amp.yaml")
    assert not re.search("[\x1b\u202e]", text)
    assert "[red]" in text
