"""Calendar days in records and permissions, against the day of a review."""

import re
from datetime import date, timedelta

ELSEWHERE = timedelta(days=1)
"""East of the computer that reviews, the next day may have begun."""
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def day_of(text: str) -> date | None:
    """A calendar day written as ``2030-06-30`` (ISO 8601), or None."""
    if not _DAY.fullmatch(text):
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def still_to_come(text: str, today: date) -> str:
    """What to say of a day on which something is said to have been done, empty where it may be."""
    day = day_of(text)
    if day is None or day <= today or day - today <= ELSEWHERE:
        return ""
    return f"{text} is still to come; the day of the review is {today}"
