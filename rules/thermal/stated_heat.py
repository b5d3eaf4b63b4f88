"""Heat stated for the product against what goes in and does not come out.

Somebody will size a cabinet, a rack or a fan with the stated heat.  It is power drawn
less power delivered, at the signal that is stated with it: one eighth of the power or a
full sine, all channels together, auxiliary loads included.  Statements go wrong by
quoting one channel, by taking the efficiency at full power for the heat at one eighth
(idle loss then dominates), or by leaving out what else the supply feeds.

The loss model is rarely complete, so its sum is mostly a floor: stated heat below it is
wrong, stated heat above it is not proven right.  First fix: measure the power drawn.
The heat of a loudspeaker is not the amplifier's.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source


def figure(heat: float, p_heat: float) -> float:
    """Stated over computed heat."""
    return heat / p_heat


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, p_idle: 1 W, efficiency: 85 %}
thermal: {basis: one-eighth}
claims: {heat: CLAIM}
"""

CHECK = Check(
    title="Stated heat vs. computed losses",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="heat / p_heat",
    sentence="Stated heat {heat}; computed losses {p_heat} ({figure:%}).",
    inputs={
        "heat": Input("claims.heat"),
        "p_heat": Input("p_heat_basis"),
    },
    limits=AtLeast(major="0.9", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("claims.heat", "0.5 W"),),
    sources=(
        Source("Lab.gruppen fP 3400 manual",
               "p. 13: table 3, power drawn; below it 1440 W less 1000 W out are 440 W of heat"),
        Source("International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
               "figs. 14 to 19: efficiency against power"),
    ),
    cases=(
        Case({"heat": "440 W", "p_heat": "440 W"}, gives="1",
             origin="published: Lab.gruppen fP 3400, p. 13: 1440 W drawn, 2 x 500 W delivered"),
        Case({"heat": "310 W", "p_heat": "440 W"}, gives="0.70455",
             origin="published: Lab.gruppen fP 3400, table 3: 685 W at one eighth, less 375 W "
                    "by hand, told for one third"),
    ),
    fails=_BASE.replace("CLAIM", "2 W"),
    passes=_BASE.replace("CLAIM", "5 W"),
    topic=("claims.heat",),
)  # fmt: skip
