"""How much has been computed: a measure of work that comes out alike on every machine."""

REVISION = 50


class Computations:
    """Work in computations of one quantity or figure; 1000 take about 12 ms on a small machine.

    To load a changed spec and plan it costs as much as some of them.
    """

    def __init__(self) -> None:
        self.number = 0

    def computed(self) -> None:
        """A quantity or a figure has been computed at one corner."""
        self.number += 1

    def revised(self) -> None:
        """A changed spec has been loaded and planned."""
        self.number += REVISION
