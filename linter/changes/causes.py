"""What the failing answers of a review come from, told in the order in which one would act."""

from ..finding import Cause
from ..judging.review import Review


def causes_of(review: Review) -> tuple[Cause, ...]:
    """The causes of what fails in a review with remedies; each failing answer in one of them."""
    return tuple(
        Cause(
            "part",
            item.message,
            (item,),
            item.advice.remedies[:1],
            item.advice.remedy_note,
            item.advice.remedies[1:],
        )
        for item in review.failing()
    )
