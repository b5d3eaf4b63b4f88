"""Life of the bulk capacitors against the life wanted.

Electrolytic capacitors dry out.  Their printed endurance holds at the rated temperature
with the rated ripple current; every 10 K less doubles it (an activation energy of about
0.75 eV).  This is the rule by which makers themselves answer, for liquid electrolytes.

The air is taken at its warmest all the time, which is careful; the ripple current is
taken as no more than rated, which another check looks after.  Seals age as well, so no
more than 15 years are counted.  For mixed use the life is the harmonic mean: a third of
the time each at 45, 55 and 65 degC counts as 57.2 degC.  First fixes: 105 degC parts, a
long-life series, a cooler place on the board.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Constant, Input, Lever, Source
from ..formulas.maths import smaller


def figure(
    life: float,
    t_rated: float,
    t_air_inside: float,
    doubling: float,
    seal: float,
    life_wanted: float,
) -> float:
    """Expected over wanted life."""
    return smaller(life * 2 ** ((t_rated - t_air_inside) / doubling), seal) / life_wanted


_BASE = """
supply: {bulk: {life: 2000 h, t_rated: RATED}}
environment: {ambient: 0 degC .. 40 degC}
thermal: {t_air_inside: 65 degC}
claims: {life: 12000 h}
"""

CHECK = Check(
    title="Bulk capacitor life vs. required life",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="smaller of life 2^((t_rated - t_air_inside)/doubling) and seal, over life_wanted",
    sentence="Bulk capacitors last {life_wanted:*figure} in air of {t_air_inside} ({life} at"
    " {t_rated}); required {life_wanted}.",
    inputs={
        "life": Input("supply.bulk.life"),
        "t_rated": Input("supply.bulk.t_rated"),
        "t_air_inside": Input("t_air_inside"),
        "doubling": Constant("10 K", "cooling that doubles the life",
                             Source("Cosel technical questions and answers a0057",
                                    "section 2: life at 45, 55 and 65 degC")),
        "seal": Constant("131400 h", "15 years, life of the seal", COMMON_PRACTICE),
        "life_wanted": Input("claims.life"),
    },
    limits=AtLeast(
        major="1",
        minor="2",
        basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("supply.bulk.life", ("2000 h", "3000 h", "5000 h", "8000 h", "10000 h")),
        Lever("supply.bulk.t_rated", ("85 degC", "105 degC", "125 degC")),
    ),
    sources=(Source("Cosel technical questions and answers a0057",
                    "section 2: life at 45, 55 and 65 degC"),),
    cases=(
        Case({"life": "1000 h", "t_rated": "105 degC", "t_air_inside": "45 degC",
              "doubling": "10 K", "seal": "131400 h", "life_wanted": "64000 h"}, gives="1",
             origin="published: Cosel a0057, 64 000 h at 45 degC"),
        Case({"life": "1000 h", "t_rated": "105 degC", "t_air_inside": "65 degC",
              "doubling": "10 K", "seal": "131400 h", "life_wanted": "16000 h"}, gives="1",
             origin="published: Cosel a0057, 16 000 h at 65 degC"),
        Case({"life": "5000 h", "t_rated": "105 degC", "t_air_inside": "72 degC",
              "doubling": "10 K", "seal": "131400 h", "life_wanted": "10000 h"}, gives="4.9246",
             origin="computed: exp of 3.3 ln 2 by hand, 49 246 h"),
    ),
    fails=_BASE.replace("RATED", "85 degC"),
    passes=_BASE.replace("RATED", "105 degC"),
    topic=("claims.life",),
)  # fmt: skip
