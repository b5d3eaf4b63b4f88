"""Blank house file, lists of deviations and of measurements, as YAML text with comments."""

from ..asking.form import deviation_form
from ..declare import Schema
from ..evaluation.catalogue import Catalogue
from ..judging.house_file import DEFAULT, LIMIT, OFF, RULES
from ..judging.measured import measurable_in, told_of
from ..judging.verified import RECORD
from ..reading.format import HOUSE_KEY, MEASURED_KEY, VERSION
from .form_text import commented, form_text

HOUSE = (
    "House rules of a team: house.ampreview.yaml, in the folder of the specs or in one above.",
    "Take away the # of what is wanted. Every entry has its reason; every report lists what it"
    " changes. What endangers people cannot be switched off, nor its limit loosened.",
)
SECTIONS = (
    ("verified", "- ", RECORD, "Limits that somebody looked up: where and when."),
    ("limits", "", LIMIT, "Limits of your own, by check: critical, major, minor."),
    ("checks_off", "", OFF, "Checks that do not concern your products."),
    ("defaults", "- ", DEFAULT, "What it means where a spec does not give a value."),
    ("rules", "- ", RULES, "Installed packages with checks of your own."),
)
DEVIATIONS = (
    "Permissions to depart from a limit, in a file of their own: ampreview assess --deviations"
    " FILE. The same list may be part of a spec.",
    "Take away the # before each name. Critical findings and open questions of safety cannot be"
    " permitted.",
)
MEASURED = (
    "Readings of the first boards, in a file of their own: ampreview assess --measured FILE. The"
    " same list may be part of a spec. What to expect, and where to stop: ampreview bringup.",
    "Take away the # of what was read, once for each board and channel. Write the value with its"
    " uncertainty, 2.4 W ± 5 %, and what it was read at: without these it is not compared.",
)
KEPT = "board: , date: , instrument: "
"""What every reading has beside its conditions."""


def house_form() -> str:
    """The blank house file."""
    lines = [line for text in HOUSE for line in commented(text, 0)]
    lines.append(f"{HOUSE_KEY}: {VERSION}")
    for name, dash, example, about in SECTIONS:
        entry = example if example.startswith("- ") else dash + example
        lines += ["", *commented(about, 0), f"#{name}:", f"#  {entry}"]
    return "\n".join(lines) + "\n"


def deviations_form(schema: Schema) -> str:
    """The blank list of deviations."""
    return form_text(deviation_form(schema), DEVIATIONS[0], DEVIATIONS[1:])


def measured_form(catalogue: Catalogue) -> str:
    """The blank list of measurements: every figure with the conditions on which it depends."""
    lines = [line for text in MEASURED for line in commented(text, 0)]
    lines += [f"{MEASURED_KEY}: {VERSION}", "", "measured:"]
    for item in measurable_in(catalogue.packages).values():
        each, unit, meaning = told_of(item.figure, catalogue)
        place = "place: , " if each == "channel" else ""
        conditions = "".join(f"{name}: , " for name in (*item.conditions, *item.none_unless_told))
        lines += commented(f"[{unit}] {meaning}.", 2)
        lines.append(f"  #- {{figure: {item.figure}, {place}value: , {conditions}{KEPT}}}")
    return "\n".join(lines) + "\n"
