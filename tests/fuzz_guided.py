"""The reader of specs under a fuzzer that is led by what its inputs reach (atheris).

    pip install atheris
    python tests/fuzz_guided.py FOLDER -max_total_time=300 -max_len=4000 -timeout=20

FOLDER gathers the inputs that reach something new; where it is empty, two small specs are put
there first.  Any bytes whatever must give a spec, or refusals with their places.  What the fuzzer
is led by are the rooms ``linter/reading`` and ``linter/quantities``; figures are left to
``fuzz.py``, which knows what a field accepts.
"""

import sys
from pathlib import Path

import atheris

with atheris.instrument_imports(
    include=["ampreview.linter.reading", "ampreview.linter.quantities"]
):
    from ampreview.linter.reading.loading import load_text

FIRST = (
    "amplifier_spec: 1\nsupply: {v_rail: 24 V ± 5 %, bulk: {c: 4m7, v_rated: 20 V .. 35 V}}\n",
    "amplifier_spec: 1\nchannels:\n  main: &main\n    filter:\n      inductor:\n"
    "        l: {min: 8 uH, typ: 10 uH, from: datasheet}  # a line\n  other: {<<: *main}\n",
)


def one_input(content: bytes) -> None:
    """Read it; whatever is raised ends the run and leaves the input in a file."""
    loaded = load_text(content, "fuzz.amp.yaml")
    if loaded.spec is None:
        assert loaded.refusals
        for refusal in loaded.refusals:
            assert refusal.place.line >= 1 and refusal.place.column >= 1
            assert refusal.problem and refusal.expected


if __name__ == "__main__":
    folders = [Path(word) for word in sys.argv[1:] if not word.startswith("-")]
    for folder in folders:
        folder.mkdir(exist_ok=True)
        if not any(folder.iterdir()):
            for number, text in enumerate(FIRST):
                (folder / str(number)).write_text(text, encoding="utf-8")
    atheris.Setup(sys.argv, one_input)
    atheris.Fuzz()
