"""The thermal ladder of a switch, as data sheets print it."""

from ...linter.declare import Section, Value, quantity


class FosterStage(Section):
    """One stage of the thermal ladder of ONE switch, junction to case."""

    r: Value | None = quantity(
        "K/W", "thermal resistance of this stage of the ladder", given="typ", example="0.2 K/W"
    )
    tau: Value | None = quantity(
        "s", "time constant of this stage of the ladder", given="typ", example="4 ms"
    )
