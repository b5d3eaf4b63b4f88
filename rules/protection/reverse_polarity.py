"""What lies between a battery put in the wrong way round and the amplifier.

Turned round, a pack drives its whole short-circuit current through the body diodes of the
power stage and through electrolytic capacitors that then vent.  Where the contacts let a
user do that, something has to block it: a diode, a transistor, or a shunt diode that opens
the fuse.  A connector that fits one way round only, or a built-in pack, is such a barrier
too, as long as nobody rewires it.

The figure counts the barriers: one for a keyed or fixed connection, one for a blocking
part.  A shunt diode without its fuse is none: it burns.  The supply of a vehicle counts as
reversible, as batteries are changed and jumped there.  None at all is critical.  One is
enough here; a field-wired terminal deserves both.  First fix: a p-channel transistor in
the lead with its gate to the other pole.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..hazards import CAPACITOR, also

BARRIER = derivation("a reversed pack lies across the body diodes of the stage: a short circuit")
KEYED = ("fixed", "keyed")


def figure(connection: str, blocking: str) -> float:
    return float(connection in KEYED) + float(blocking == "fitted")


REVERSIBLE = """
supply: {source: battery}
battery: {chemistry: li-ion, series: 4, connection: reversible}
protection: {reverse_polarity: none}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Reverse-polarity protection",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 if connection is keyed or fixed, and 1 if blocking is fitted",
    sentence="{figure:?No reverse-polarity protection|Protected from reverse polarity} (connection"
    " {connection}, {blocking:?no blocking part|blocking part #}).",
    inputs={
        "connection": Input("source_connection"),
        "blocking": Input("polarity_block"),
    },
    limits=AtLeast(critical="1", basis={"critical": BARRIER}),
    levers=(
        Lever("battery.connection", ("keyed", "fixed")),
        Lever("protection.reverse_polarity.method", ("p-channel", "n-channel")),
    ),
    sources=(BARRIER, COMMON_PRACTICE),
    cautions=(also(CAPACITOR, "A reversed pack burns: work on packs with insulated tools only."),),
    cases=(
        Case(
            {"connection": "reversible", "blocking": "none"},
            gives="0",
            origin="derived: body diodes of a leg conduct when the rail is reversed",
        ),
        Case(
            {"connection": "keyed", "blocking": "fitted"},
            gives="2",
            origin="common practice: keyed connector and a transistor behind it",
        ),
    ),
    topic=("battery.connection", "protection.reverse_polarity"),
    asked_from="production",
    fails=REVERSIBLE,
    passes=REVERSIBLE.replace(
        "reverse_polarity: none", "reverse_polarity: {method: p-channel, r_on: 6 mohm}"
    ),
)
