"""The barrier between mains and everything that hands can reach.

This review does not compute mains insulation, clearances to the mains side, earthing or
fuses in the mains lead, whatever a spec may state about them.  It asks one thing: that the
converter that faces the mains is a complete product with a safety certificate of its own.
A supply that is not certified puts the question to local codes, licensed practice and a
test house, and not to a file.

Without the certificate: critical.  Silence is open.  First cure: a certified power supply
unit, used within its ratings and its conditions of acceptability.
"""

from ...linter.check import AtLeast, Case, Caution, Check, Input, from_memory

CODES = from_memory("IEC 62368-1, clauses 5.4 and 5.5", "mains needs double safeguards")


def figure(certified: str) -> float:
    return float(certified == "yes")


MAINS = """
supply: {source: mains-converter, rails: single, v_rail: 36 V, certified: no}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Mains barrier",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 if certified is yes, else 0",
    sentence="Safety certificate of the mains converter: {certified}. Mains insulation is outside"
    " this review: it is a matter of local codes and of licensed practice.",
    inputs={
        "certified": Input("supply.certified", "word", "safety certificate of the converter"),
    },
    applies={"supply.source": "mains-converter"},
    limits=AtLeast(critical="1", basis={"critical": CODES}),
    sources=(CODES,),
    cautions=(
        Caution(
            "WARNING",
            "Mains voltage kills. Use a certified supply, follow the local electrical code, and"
            " leave the work on mains parts to licensed persons.",
        ),
    ),
    cases=(
        Case(
            {"certified": "no"},
            gives="0",
            origin="from memory: IEC 62368-1 asks for tested insulation between mains and user",
        ),
        Case(
            {"certified": "yes"},
            gives="1",
            origin="common practice: a certified power supply unit as the only mains part",
        ),
    ),
    topic=("supply.source",),
    asked_from="prototype",
    fails=MAINS,
    passes=MAINS.replace("certified: no", "certified: yes"),
)
