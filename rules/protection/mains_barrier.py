"""The barrier between mains and everything that hands can reach.

This review does not compute mains insulation, clearances to the mains side, earthing or
fuses in the mains lead, whatever a spec may state about them.  It asks one thing: that the
converter that faces the mains is a complete product with a safety certificate of its own.
A supply that is not certified puts the question to local codes, licensed practice and a
test house, and not to a file.

The voltage decides, not the name: a direct source above 60 V, the end of class 1, faces the
same question, as 280 to 375 V are rectified mains in all but name.

Without the certificate: critical at a mains converter and above 120 V, the end of class 2;
major between 60 and 120 V.  Silence is open.  First fix: a certified power supply
unit, used within its ratings and its conditions of acceptability.
"""

from ...linter.check import (
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    derivation,
    from_memory,
)
from ..formulas.constants import DC_CLASS_2
from ..formulas.maths import choose
from ..formulas.safety import ENERGY_CLASSES
from ..hazards import MAINS

CODES = from_memory("IEC 62368-1, clauses 5.4 and 5.5", "mains needs double safeguards")


UNKNOWN = Assumption("0 V", "favourable", derivation("a mains converter needs no voltage here"))


def figure(certified: str, source: str, v_source: float, v_class_2: float) -> float:
    if certified == "yes":
        return 1.0
    return 0.0 if source == "mains-converter" else choose(v_source > v_class_2, 0.0, 0.5)


UNCERTIFIED = """
supply: {source: mains-converter, rails: single, v_rail: 36 V, certified: no}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Mains barrier and sources above 60 V",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 if certified is yes; else 0.5 if source is dc-source and v_source up to v_class_2;"
    " else 0",
    sentence="Safety certificate of the {source}: {certified}. Mains insulation is outside this"
    " review; local codes and licensed practice apply.",
    inputs={
        "certified": Input("supply.certified"),
        "source": Input("supply.source"),
        "v_source": Input("v_touch", default=UNKNOWN),
        "v_class_2": DC_CLASS_2,
    },
    applies={"mains_side": "yes"},
    limits=AtLeast(critical="0.5", major="1", basis={"critical": CODES, "major": CODES}),
    otherwise="a certified converter between mains and the rail, bought in; see the local code",
    sources=(CODES, ENERGY_CLASSES),
    cautions=(MAINS,),
    cases=(
        Case(
            {"certified": "no", "source": "mains-converter", "v_source": "36 V"},
            gives="0",
            origin="from memory: IEC 62368-1 asks for tested insulation between mains and user",
        ),
        Case(
            {"certified": "yes", "source": "mains-converter", "v_source": "36 V"},
            gives="1",
            origin="common practice: a certified power supply unit as the only mains part",
        ),
        Case(
            {"certified": "no", "source": "dc-source", "v_source": "325 V"},
            gives="0",
            origin="computed: peak of 230 V rms, rectified: 325 V",
        ),
        Case(
            {"certified": "no", "source": "dc-source", "v_source": "100 V"},
            gives="0.5",
            origin="from memory: IEC 62368-1, table 4: between 60 and 120 V direct",
        ),
    ),
    topic=("supply.source",),
    asked_from="prototype",
    permissible=False,
    fails=UNCERTIFIED,
    passes=UNCERTIFIED.replace("certified: no", "certified: yes"),
)
