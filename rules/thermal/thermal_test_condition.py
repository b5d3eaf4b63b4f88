"""Signal for which the cooling was sized, against the programme.

One eighth of the unclipped power is the usual test of heat and touch: music with a crest
factor of 12 dB has that power.  Cooling sized for it is honest as long as the programme
is that kind of music.  A speech processor, a party playlist at 8 dB or an alarm tone
asks for more, and then the cooling was sized for less heat than stated use makes.

A full sine is never less than the programme.  The check compares powers, not heat: idle
loss makes the difference in heat smaller.  First fixes: size the cooling for the true
programme, limit the long-term level, or state the crest factor that was meant.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    from_memory,
)
from ..formulas.constants import SINE_CREST
from ..formulas.dissipation import programme_share

SHARES = {"one-eighth": 1 / 8, "one-third": 1 / 3, "full-sine": 1.0}


def figure(basis: str, crest_factor: float, sine_crest: float) -> float:
    """Power that the cooling was sized for over that of the programme."""
    return SHARES[basis] / programme_share(crest_factor, sine_crest)


_BASE = """
signal: {crest_factor: CREST}
thermal: {basis: one-eighth}
"""

CHECK = Check(
    title="Power that the cooling is sized for vs. programme power",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="share of basis / 10^((sine_crest - crest_factor)/10)",
    sentence="Cooling is sized for {basis:words} of rated power, {figure:% of} a programme with"
    " {crest_factor} crest factor.",
    inputs={
        "basis": Input("thermal.basis"),
        "crest_factor": Input("signal.crest_factor"),
        "sine_crest": SINE_CREST,
    },
    limits=AtLeast(major="0.9", basis={"major": COMMON_PRACTICE}),
    otherwise="cooling sized for the true programme, or a limiter for the long-term level",
    sources=(from_memory("IEC 62368-1 Annex E: one eighth of the unclipped power"),),
    cases=(
        Case({"basis": "one-eighth", "crest_factor": "12.0412 dB", "sine_crest": "3.0103 dB"},
             gives="1", origin="computed: 10 log10(8) = 9.0309 dB below a sine"),
        Case({"basis": "one-eighth", "crest_factor": "12 dB", "sine_crest": "3.0103 dB"},
             gives="0.9905", origin="computed: 12 dB makes 1/7.92 of the power of a sine"),
        Case({"basis": "full-sine", "crest_factor": "6.0206 dB", "sine_crest": "3.0103 dB"},
             gives="2", origin="computed: two times 3.0103 dB is half the power of a sine"),
    ),
    fails=_BASE.replace("CREST", "8 dB"),
    passes=_BASE.replace("CREST", "12 dB .. 18 dB"),
    topic=("thermal.basis",),
)  # fmt: skip
