"""What may be promised at most, from what is promised and the figure of a check."""


def shared(claim: float, figure: float) -> float:
    """The figure is the promise as a share of what there is."""
    return claim / figure


def shared_in_square(claim: float, figure: float) -> float:
    """The same of a figure of voltages where power is promised."""
    return claim / figure**2


def filled(claim: float, figure: float) -> float:
    """The figure is what there is as a share of the promise."""
    return claim * figure


def filled_in_square(claim: float, figure: float) -> float:
    """The same of a figure of currents where power is promised."""
    return claim * figure**2


def above(claim: float, figure: float) -> float:
    """The figure says how far the design lies above the promise."""
    return claim + figure


def beyond(claim: float, figure: float) -> float:
    """The figure says how far the promise lies above the design."""
    return claim - figure
