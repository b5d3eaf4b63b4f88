"""Constants that several rules share, each with its value, meaning and source once.

>>> SINE_CREST.value, SINE_CREST.meaning
('3.0103 dB', 'peak over rms of a sine')
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    derivation,
    from_memory,
    quoted,
)
from .safety import ENERGY_CLASSES, IGNITION, SAFE_POWER

SINE_CREST = Constant("3.0103 dB", "peak over rms of a sine", derivation("20 log10(sqrt(2))"))
ONE_HOUR = Constant("1 h", "unit of the rules' times", derivation("definition"))
TEST_TONE = Constant(
    "1 kHz", "tone at which distortion is stated", derivation("the statement names it")
)
PRINTED_AT = Constant(
    "298.15 K", "25 degC, for which the value is printed", derivation("condition of the field")
)

COPPER_RESISTIVITY = Constant(
    "1.724e-8 ohm m", "resistivity of copper at 20 degC", from_memory("IEC 60028")
)
COPPER_COEFFICIENT = Constant(
    "0.00393 1/K",
    "rise of the resistance of copper, of its value at 20 degC",
    from_memory("IEC 60028"),
)

DC_CLASS_1 = Constant("60 V", "direct voltage of class 1", ENERGY_CLASSES)
DC_CLASS_2 = Constant("120 V", "direct voltage of class 2", ENERGY_CLASSES)
FIRE_POWER = Constant("15 W", "power below which a fault starts no fire", SAFE_POWER)
FIRE_SPREADS = Constant("100 W", "power above which a fault may start a fire at once", IGNITION)
BURNS_OUT = Constant("5", "multiple of its rating that burns a coil out at once", COMMON_PRACTICE)

LEAST_C_OSS = Constant("20 pF", "least output capacitance", COMMON_PRACTICE)

TRACE_CHART = quoted("IPC-2221, fit to its charts", "as quoted on several public pages")
CHART_OUTER = Constant("0.048 A", "chart current of an outer layer", TRACE_CHART)
CHART_INNER = Constant("0.024 A", "chart current, inner layer", TRACE_CHART)
CHART_AREA = Constant("6.4516e-10 m2", "one square mil", derivation("0.0254 mm squared"))
CHART_RISE = Constant("1 K", "unit of the rise in the charts", derivation("definition"))
CONTACT_RISE = Constant("30 K", "rise behind the rating of a contact", COMMON_PRACTICE)
LEAST_RISE = Constant("1 uK", "rise that stands for none", derivation("no rise carries no current"))
T_ROOM = Constant("25 degC", "room in which surfaces are judged", COMMON_PRACTICE)

_UNIT = derivation("unit of the table")
TABLE_VOLT = Constant("1 V", "unit of the table", _UNIT)
TABLE_METRE = Constant("1 m", "unit of the table", _UNIT)
TABLE_MILLIMETRE = Constant("1 mm", "unit of the table", _UNIT)
TABLE_KELVIN = Constant("1 K", "unit of the table", _UNIT)

NO_LIMITER = Assumption(
    float("inf"), "absent", derivation("without a limiter nothing holds the level")
)
"""What silence about a limiter means."""
