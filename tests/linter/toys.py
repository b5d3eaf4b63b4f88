"""An invented check that several tests judge by hand: a rail on a switch."""

from typing import Any

from ampreview.linter.check import AtMost, Check, Input, Source
from ampreview.linter.evaluation.catalogue import Entry

BOOK = Source("an invented handbook", "p. 1")
STEPS = ("critical", "major", "minor")


def entry(check: Check, name: str = "invented-check") -> Entry:
    """The check as the catalogue would hold it."""
    return Entry(name, "invented", "Prose.", check, "invented.py")


def stress(v_rail: Any, v_dss: Any) -> Any:
    """The rail as a share of the rating."""
    return v_rail / v_dss


STRESS = Check(
    title="Rail against the rating of the switch",
    figure=stress,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_rail / v_dss",
    sentence="{v_rail} on a switch rated {v_dss}",
    inputs={
        "v_rail": Input("supply.v_rail", "V", "rail"),
        "v_dss": Input("output_stage.device.v_dss", "V", "rating"),
    },
    limits=AtMost("100 %", "90 %", "80 %", dict.fromkeys(STEPS, BOOK)),
    sources=(BOOK,),
    cases=(),
    fails="",
    passes="",
)
