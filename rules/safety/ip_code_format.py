"""Whether the claimed enclosure protection is a code of IEC 60529 at all.

The code is IP, a digit 0 to 6 for solids, a digit 0 to 9 for water, each of which may be X
where nothing is claimed, and letters after that.  ``IP 7``, ``IP540`` or ``waterproof`` say
nothing that could be tested.  X is no zero on a label, but it claims no more than zero.

The figure is 1 where the text cannot be read as a code: minor.  First fix: write the code
that a test would confirm, such as IP54, IPX4 or IP67.
"""

from ...linter.check import AtMost, Case, Check, Input
from ..formulas.safety import IP_CODE, ip_digits


def figure(ip_code: str) -> float:
    return float(min(ip_digits(ip_code)) < 0)


CHECK = Check(
    title="Enclosure protection code vs. IEC 60529",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="1 where ip_code is no code of IEC 60529",
    sentence="{ip_code} is {figure:?a|not a} valid IEC 60529 code.",
    inputs={"ip_code": Input("environment.ip_code")},
    applies={"ip_claim": "yes"},
    limits=AtMost(minor="0", basis={"minor": IP_CODE}),
    sources=(IP_CODE,),
    cases=(
        Case({"ip_code": "IP 7"}, gives="1", origin="from memory: IEC 60529 asks for two places"),
        Case({"ip_code": "IPX4"}, gives="0", origin="from memory: IEC 60529 allows X for a digit"),
    ),
    fails="""
environment: {ip_code: IP7}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
environment: {ip_code: IP67}
channels: {main: {rated_power: 50 W}}
""",
)
