"""Class of emission against where people listen.

CISPR 32 knows two classes.  Class B, 30 dB(uV/m) at ten metres from 30 to 230 MHz, is for
homes, where a radio is in the next room.  Class A allows ten decibels more, is for
places other than homes, and the manual has to warn of disturbed reception.

A product for sale to anyone ends up in homes, so class A is minor here, a reminder that the
market is then a smaller one; a stage amplifier or a ferry's announcer may well claim it,
with a deviation on record.  The figure is 1 for class A.  First fix: class B from the
start: edges, loop area and filter before shielding.
"""

from ...linter.check import AtMost, Case, Check, Input, from_memory, quoted

CISPR = quoted(
    "CISPR 32:2012, table A.4, as quoted on emc-pstc",
    "class B: 30 dB(uV/m) at 10 m from 30 to 230 MHz, 37 above",
)
CLASS_A = from_memory("CISPR 32: class A allows 10 dB more and is not for homes")


def figure(emission_class: str) -> float:
    return float(emission_class == "a")


CHECK = Check(
    title="Emission class vs. place of use",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="1 where emission_class is a",
    sentence="Claimed emission class: CISPR 32 class {emission_class:upper}.",
    inputs={
        "emission_class": Input("claims.emission_class"),
    },
    limits=AtMost(minor="0", basis={"minor": CLASS_A}),
    otherwise="a filter and a layout that meet class B, shown by measurement",
    sources=(CISPR, CLASS_A),
    cases=(
        Case({"emission_class": "a"}, gives="1", origin="from memory: class A is not for homes"),
        Case({"emission_class": "b"}, gives="0", origin="from memory: class B is for homes"),
    ),
    topic=("claims.emission_class",),
    asked_from="production",
    fails="""
claims: {emission_class: a}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
claims: {emission_class: b}
channels: {main: {rated_power: 50 W}}
""",
)
