"""Departures from a limit that somebody permitted beforehand."""

from ...linter.declare import Section, text


class Deviation(Section):
    """Permission to depart from the limit of one check at one place, ISO 9000 3.12.6.

    An open item is accepted in the same way, without ``up_to``.
    """

    check: str = text(
        "name of the check that is departed from", example="rail-ripple", required=True
    )
    place: str = text("name of the channel, or the word product", example="product", required=True)
    permitted_by: str = text("who gave the permission", example="head of hardware", required=True)
    reason: str = text(
        "why the departure does no harm",
        example="the pack is changed in revision D",
        required=True,
    )
    until: str = text(
        "last day of the permission, or the milestone at which it ends",
        example="2030-06-30",
        required=True,
    )
    up_to: str | None = text(
        "figure up to which the departure is permitted, with its unit; default: any figure that"
        " is not critical",
        example="1.2 V",
    )
