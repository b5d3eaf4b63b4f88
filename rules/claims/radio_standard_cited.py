"""A radio standard among those that the paperwork cites, where a transmitter is inside.

With a transmitter, be it a bought module, the whole product becomes radio equipment: in the
European Union Directive 2014/53/EU takes over from those on safety and emission, with
EN 300 328 for 2.4 GHz or its sisters; in the United States 47 CFR 15 subpart C; in Canada an
RSS.  A module's own certificate helps, under its conditions on antenna and co-location.

The figure counts the citations of that family.  None is minor.  The amplifier's own noise
reaches the receiver as well, which no standard judges.  First fix: cite the module's
certificate and the standard behind it.
"""

from ...linter.check import AtLeast, Case, Check, Input
from ..formulas.paperwork import FAMILIES_BASIS, RADIO, cites


def figure(standards: tuple[str, ...]) -> float:
    return float(cites(standards, RADIO))


LISTED = """
claims: {radio: yes, standards: [IEC 62368-1, EN 55032]}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Radio standard cited",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of standards that are about radio transmitters",
    sentence="Transmitter fitted; {figure:?no radio standard cited|radio standard cited}"
    " ({standards}).",
    inputs={"standards": Input("claims.standards")},
    applies={"claims.radio": "yes"},
    limits=AtLeast(minor="1", basis={"minor": FAMILIES_BASIS}),
    otherwise="a radio standard among those cited, and the test behind it",
    sources=(FAMILIES_BASIS,),
    cases=(
        Case(
            {"standards": ("ETSI EN 300 328", "EN 55032")},
            gives="1",
            origin="from memory: EN 300 328 covers data transmission at 2.4 GHz",
        ),
        Case(
            {"standards": ("EN 55032", "UN 38.3")},
            gives="0",
            origin="from memory: neither is about transmitters",
        ),
    ),
    topic=("claims.standards", "claims.radio"),
    asked_from="production",
    fails=LISTED,
    passes=LISTED.replace("EN 55032", "EN 300 328"),
)
