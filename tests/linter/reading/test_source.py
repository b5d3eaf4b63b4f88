"""Reading YAML: plain data, places through anchors and merges, refusals, no traceback.

Lines and columns are counted by hand in the texts below.
"""

import textwrap

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from ampreview.linter.reading.flatten import MAX_DEPTH, MAX_VALUES
from ampreview.linter.reading.plain_text import MAX_BYTES
from ampreview.linter.reading.source import MAX_LENGTH, Document, read

SAMPLE = """\
amplifier_spec: 1
title: "Porch speaker: two ways"   # invented
supply:
  v_rail: 24 V ± 5 %
channels:
  woofer: &woofer
    rated_power: 30 W
    modulator: &modulator {type: natural-sampling, carrier: 400 kHz}
    output_stage:
      device:
        t_f: {min: 4 ns, typ: 6 ns}
        foster:
          - {r: 0.2 K/W, tau: 1 ms}
          - r: 0.9 K/W
            tau: 20 ms
  tweeter:
    <<: *woofer
    rated_power: 010
    modulator:
      <<: *modulator
      carrier: 500 kHz
  spare: *woofer
claims:
  markets: [eu, uk]
  radio: yes
  standards:
"""


def spots(document: Document, path: str) -> list[tuple[int, int]]:
    return [(place.line, place.column) for place in document.places[path]]


def problems(content: str | bytes) -> list[tuple[int, int, str]]:
    found = read(content, "f.amp.yaml").refusals
    return [(item.place.line, item.place.column, item.problem) for item in found]


def only_problem(content: str | bytes) -> tuple[int, int, str]:
    found = problems(content)
    assert len(found) == 1, found
    return found[0]


def test_scalars_stay_as_written():
    document = read(
        "a: 010\nb: yes\nc: 2024-01-02\nd: 1.50\ne: '1'\nf: null\ng: 1e3\nh: 4R7\n", "f"
    )
    assert document.refusals == ()
    assert document.data == {
        "a": "010",
        "b": "yes",
        "c": "2024-01-02",
        "d": "1.50",
        "e": "1",
        "f": "null",
        "g": "1e3",
        "h": "4R7",
    }


def test_a_key_without_value_is_none_and_quoted_emptiness_is_text():
    assert read("a:\nb: ''\nc: {}\nd: []\n", "f").data == {"a": None, "b": "", "c": {}, "d": []}


def test_data_follow_aliases_and_merges():
    document = read(SAMPLE, "f")
    assert document.refusals == ()
    channels = document.data["channels"]
    assert channels["spare"] == channels["woofer"]
    assert channels["tweeter"]["rated_power"] == "010"
    assert channels["tweeter"]["modulator"] == {"type": "natural-sampling", "carrier": "500 kHz"}
    assert channels["tweeter"]["output_stage"] == channels["woofer"]["output_stage"]
    assert document.data["claims"] == {"markets": ["eu", "uk"], "radio": "yes", "standards": None}


def at(line: int, text: str) -> tuple[int, int]:
    """Line and column, from 1, of ``text`` in that line of SAMPLE, where it stands once."""
    row = SAMPLE.splitlines()[line - 1]
    assert row.count(text) == 1
    return line, row.index(text) + 1


def test_places_of_values_keys_sections_and_list_items():
    document = read(SAMPLE, "f")
    assert spots(document, "") == [(1, 1)]
    assert spots(document, "title") == [at(2, '"Porch')]
    assert spots(document, "supply") == [(3, 1)]
    assert spots(document, "supply.v_rail") == [at(4, "24 V")]
    key = document.key_places["supply.v_rail"]
    assert (key.file, key.line, key.column, key.path) == ("f", 4, 3, "supply.v_rail")
    device = "channels.woofer.output_stage.device"
    assert spots(document, f"{device}.t_f") == [at(11, "t_f")]
    assert spots(document, f"{device}.t_f.typ") == [at(11, "6 ns")]
    assert spots(document, f"{device}.foster[0].tau") == [at(13, "1 ms")]
    assert spots(document, f"{device}.foster[1]") == [at(14, "r:")]
    assert spots(document, f"{device}.foster[1].r") == [at(14, "0.9")]
    assert spots(document, f"{device}.foster[1].tau") == [at(15, "20 ms")]
    assert spots(document, "claims.markets[1]") == [at(24, "uk")]
    assert spots(document, "claims.standards") == [at(26, "standards")]


def test_places_through_alias_and_merge_name_the_text_first():
    document = read(SAMPLE, "f")
    merge, alias = at(17, "*woofer"), at(22, "*woofer")
    assert spots(document, "channels.woofer.rated_power") == [at(7, "30 W")]
    assert spots(document, "channels.tweeter.rated_power") == [at(18, "010")]
    assert spots(document, "channels.tweeter.modulator.carrier") == [at(21, "500 kHz")]
    inner = at(20, "*modulator")
    assert spots(document, "channels.tweeter.modulator.type") == [at(8, "natural"), inner]
    fall_time = "channels.tweeter.output_stage.device.t_f.min"
    assert spots(document, fall_time) == [at(11, "4 ns"), merge]
    assert spots(document, "channels.spare.modulator.carrier") == [at(8, "400 kHz"), alias]
    place = document.places["channels.spare.modulator.carrier"][1]
    assert place.path == "channels.spare.modulator.carrier"


def test_a_merge_behind_an_alias_names_the_outer_use_first():
    text = "a: &a {x: 1}\nb: &b\n  <<: *a\nc: *b\n"
    assert spots(read(text, "f"), "c.x") == [(1, 11), (4, 4), (3, 7)]


def test_earlier_merges_win_over_later_ones_and_own_keys_over_both():
    text = "a: &a {x: 1, y: 1}\nb: &b {x: 2, y: 2, z: 2}\nc: {<<: [*a, *b], y: 3}\n"
    document = read(text, "f")
    assert document.data["c"] == {"x": "1", "y": "3", "z": "2"}
    assert spots(document, "c.z") == [(2, 23), (3, 14)]


def test_changing_one_copy_of_an_alias_leaves_the_other():
    channels = read(SAMPLE, "f").data["channels"]
    channels["spare"]["modulator"]["carrier"] = "1 MHz"
    assert channels["woofer"]["modulator"]["carrier"] == "400 kHz"


def test_byte_order_mark_and_windows_line_ends_are_accepted():
    document = read(b"\xef\xbb\xbfa: 1\r\nb:\r\n  c: 22 \xc2\xb5H\r\n", "f")
    assert document.data == {"a": "1", "b": {"c": "22 µH"}}
    assert spots(document, "a") == [(1, 4)]
    assert spots(document, "b.c") == [(3, 6)]


SLIPS = {
    "a: 1\n\tb: 2\n": (2, 1, "a tab"),
    "a:\n  b: 1\n \tc: 2\n": (3, 2, "a tab"),
    "a: 1\nb:2\nc: 3\n": (2, 2, "no space after the colon"),
    "s:\n  a:24 V\n  b: 2\n": (2, 4, "no space after the colon"),
    "a: {b: 1\nc: 2\n": (1, 4, "the {"),
    "a: {b: 1 c: 2}\n": (1, 4, "the {"),
    "a: [b, c\nd: 2\n": (1, 4, "the ["),
    "a: 'b\nc: 2\n": (1, 4, "the text in quotes"),
    'a: "\\q"\n': (1, 4, "a backslash"),
    "a:\n  b: 1\n c: 2\n": (3, 2, "this line does not line up"),
    "a: 'b' c\n": (1, 8, "this line does not line up"),
    "a: b: c\n": (1, 5, "a colon where no key can be"),
    "a: @x\n": (1, 4, "a value cannot begin with this"),
    "a: %x\n": (1, 4, "a value cannot begin with this"),
    "a: *\n": (1, 4, "a value cannot begin with * or &"),
    "a: - b\n": (1, 4, "a dash"),
    "a: 1\nb: ]\n": (2, 4, "a bracket"),
    "a: |x\n  b\n": (1, 5, "nothing may follow |"),
    "a: 1\nb\n": (2, 1, "this line is neither"),
    "%YAML 3.0\n---\na: 1\n": (1, 1, "a line that begins with %"),
}


@pytest.mark.parametrize("text", SLIPS)
@pytest.mark.parametrize("pure", [False, True])
def test_syntax_slips_are_told_in_plain_words_where_they_lie(text, pure):
    document = read(text, "f", pure)
    line, column, problem = SLIPS[text]
    assert document.data is None
    (refusal,) = document.refusals
    assert (refusal.place.line, refusal.place.column) == (line, column)
    assert refusal.problem.startswith(problem)
    assert refusal.expected


def test_example_for_a_missing_space_is_the_line_itself():
    (refusal,) = read("a: 1\nv_rail:24 V\nc: 3\n", "f").refusals
    assert refusal.example == "v_rail: 24 V"


REFUSED = {
    "a: 1\n---\nb: 2\n": (2, 1, "a second document"),
    "a: 1\nb: 2\na: 3\n": (3, 1, "the key `a` is given twice, first in line 1"),
    "a: {b: 1, b: 2}\n": (1, 11, "the key `b` is given twice"),
    "? [a]\n: 1\n": (1, 3, "a key that is not a word"),
    "? {a: 1}\n: 1\n": (1, 3, "a key that is not a word"),
    "a: &x b\n*x : 1\n": (2, 1, "a key that is not a word"),
    "'': 1\n": (1, 1, "a value without a key"),
    "supply.v_rail: 1 V\n": (1, 1, "the key `supply.v_rail` contains a dot"),
    "a: !!python/object/apply:os.system [ls]\n": (1, 4, "the tag `!!python/object/apply"),
    "a: !!str 1\n": (1, 4, "the tag `!!str`"),
    "a: ! 1\n": (1, 4, "the tag `!`"),
    "a: !mine {b: 1}\n": (1, 4, "the tag `!mine`"),
    "%YAML 1.2\n---\na: 1\n": (1, 1, "an instruction to the parser"),
    "<<: 3\n": (1, 5, "<< merges what is not a section"),
    "a: &a [1]\nb: {<<: *a}\n": (1, 8, "<< merges what is not a section"),
    "a: &a {b: 1}\nc: {<<: *a, <<: *a, <<: x}\n": (2, 25, "<< merges what is not a section"),
    "a: *b\n": (1, 4, "no anchor `b` above"),
    "a: &x [*x]\n": (1, 8, "`x` is used inside itself"),
    "a: &x {<<: *x}\n": (1, 12, "`x` is used inside itself"),
    'a: "\\0"\n': (1, 4, "character U+0000 written as an escape"),
    'a: "\\u202e"\n': (1, 4, "character U+202E written as an escape"),
    "a: \0\n": (1, 4, "character U+0000"),
    "a: 1\nb: \x1b[31m\n": (2, 4, "character U+001B"),
    "a: \u202eb\n": (1, 4, "character U+202E"),
    "a: \ud800\n": (1, 4, "character U+D800"),
    "- a\n": (1, 1, "the file is not a spec"),
    "abc\n": (1, 1, "the file is not a spec"),
    "---\n": (1, 4, "the file is not a spec"),
    "": (1, 1, "the file is empty"),
    "# only a comment\n": (1, 1, "the file is empty"),
}


@pytest.mark.parametrize("text", REFUSED)
def test_what_is_no_plain_spec_is_refused_with_its_place(text):
    line, column, problem = only_problem(text)
    assert problem.startswith(REFUSED[text][2])
    if text != "---\n":  # an empty document has no place of its own
        assert (line, column) == REFUSED[text][:2]


def test_all_refusals_of_a_readable_text_come_at_once_in_order():
    text = "a: !x 1\na: 2\n? [b]\n: 3\n<<: 4\nc: *q\nd.e: 5\n"
    assert [line for line, _, _ in problems(text)] == [1, 2, 3, 5, 6, 7]


def test_refusals_before_a_syntax_slip_are_kept():
    assert [line for line, _, _ in problems("a: !x 1\nb: [c\n")] == [1, 2]


def test_a_shared_section_is_refused_once():
    text = "a: &a {b: 1, b: 2}\nc: *a\nd: {<<: *a}\n"
    assert only_problem(text)[:2] == (1, 14)


def test_other_encodings_are_named():
    assert only_problem(b"a: 1\nl: 22 \xb5H\n") == (
        2,
        7,
        "byte 0xB5 is not UTF-8, µ in Latin-1",
    )
    assert only_problem("a: 1\n".encode("utf-16")) == (1, 1, "the file is stored as UTF-16")


def test_many_control_characters_are_summed_up():
    found = problems("a: " + "\x01" * 50 + "\n")
    assert len(found) == 6
    assert found[-1][2] == "45 more such characters from here on"


def test_limits_hold_and_what_is_just_below_passes():
    nested = "{a: " * (MAX_DEPTH - 1) + "1" + "}" * (MAX_DEPTH - 1)
    assert read(f"a: {nested}\n", "f").refusals == ()
    assert "deep" in only_problem(f"a: {{a: {nested}}}\n")[2]
    assert read(f"a: {'x' * MAX_LENGTH}\n", "f").refusals == ()
    assert str(MAX_LENGTH + 1) in only_problem(f"a: {'x' * (MAX_LENGTH + 1)}\n")[2]
    assert read(f"a: [{'x,' * (MAX_VALUES - 1)}]\n", "f").refusals == ()
    assert str(MAX_VALUES) in only_problem(f"a: [{'x,' * MAX_VALUES}]\n")[2]
    comment = "a: 1\n#" + "x" * (MAX_BYTES - 6)
    assert read(comment, "f").refusals == ()
    assert "1000 kB" in only_problem(comment + "x")[2]


CHAIN = f"values merged through more than {MAX_DEPTH} sections"


def test_aliases_that_unfold_into_more_than_the_limit_are_given_up():
    rows = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    rows += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 12)]
    assert "values" in only_problem("\n".join(rows))[2]
    rows = ["a0: &a0 {k0: 1}"]
    rows += [f"a{n}: &a{n} {{<<: *a{n - 1}, k{n}: 1}}" for n in range(1, 1000)]
    assert "values" in only_problem("\n".join(rows))[2]
    keys = ", ".join(f"k{n}: 1" for n in range(1000))
    assert "values" in only_problem(f"a: &a {{{keys}}}\nb: {{<<: [{'*a,' * 500}]}}")[2]


def test_a_long_chain_of_merges_is_given_up_early():
    """Each link would be a further place of every value: the square of the length."""
    rows = "".join(f"a{n}: &a{n} {{<<: *a{n - 1}}}\n" for n in range(1, 5_000))
    line, _, problem = only_problem("a0: &a0 {k: 1}\n" + rows)
    assert (line, problem) == (MAX_DEPTH + 2, CHAIN)


@pytest.mark.parametrize("bracket", ["[", "{a: ", "- ", "? ", "[{"])
@pytest.mark.parametrize("pure", [False, True])
def test_deep_nesting_is_given_up_early(bracket, pure):
    document = read(bracket * 20_000, "f", pure)
    assert document.data is None
    assert document.refusals


@pytest.mark.parametrize("text", [SAMPLE, *REFUSED])
def test_the_pure_parser_reads_the_same(text):
    fast, slow = read(text, "f"), read(text, "f", pure=True)
    assert fast.data == slow.data
    assert {path: fast.places[path] for path in fast.places if path} == {
        path: slow.places[path] for path in slow.places if path
    }
    assert [item.problem for item in fast.refusals] == [item.problem for item in slow.refusals]


def survives(content: str | bytes) -> None:
    """Data or refusals, never both missing; places that lie in the text."""
    document = read(content, "f")
    assert document.data is not None or document.refusals
    lines = content.count(b"\n" if isinstance(content, bytes) else "\n")
    lines += content.count(b"\r" if isinstance(content, bytes) else "\r")
    for refusal in document.refusals:
        assert 1 <= refusal.place.line <= lines + 2
        assert refusal.place.column >= 1
        assert refusal.problem
        assert refusal.expected


@given(st.binary(max_size=300))
@example(b'a: "\\UFFFFFFFF"')
@example(b"\xef\xbb\xbf")
@example(b"%TAG ! tag:x,2000:\n--- !a\nb: 1")
def test_any_bytes_give_data_or_refusals(content):
    survives(content)


@given(st.text(alphabet=" \n\t-:?[]{},&*#|>'\"%@`!<~a1.\\µ\r", max_size=80))
def test_any_yaml_like_text_gives_data_or_refusals(text):
    survives(text)
    document = read(text, "f", pure=True)
    assert document.data is not None or document.refusals


@settings(max_examples=200)
@given(
    st.lists(
        st.tuples(
            st.integers(0, len(SAMPLE)),
            st.integers(0, 12),
            st.text(alphabet="\n\t :-{}[]&*<>!'\"#x\x00µ", max_size=4),
        ),
        min_size=1,
        max_size=4,
    )
)
def test_a_mutilated_spec_gives_data_or_refusals(cuts):
    text = SAMPLE
    for start, length, put in cuts:
        text = text[:start] + put + text[start + length :]
    survives(text)
    survives(text.encode())


def test_a_text_over_several_lines_keeps_its_breaks():
    text = textwrap.dedent("""\
        a: |
          one
          two
        b: >
          three
          four
    """)
    assert read(text, "f").data == {"a": "one\ntwo\n", "b": "three four\n"}
