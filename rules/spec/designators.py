"""What a part with a reference designator bears, by the class letter of the designator.

The letters are those of schematics: common practice, no source.  A part of another letter is
looked for, and nothing of it compared.
"""

from ...linter.declare import Borne

BORNE = {
    "C": Borne("c", {"V": "v_rated"}),
    "R": Borne("r", {"W": "p_rated"}),
    "L": Borne("l"),
    "F": Borne("i_rated", {"V": "v_dc"}),
    "c_local": Borne("c_local", {"V": "v_c_local"}),
}
