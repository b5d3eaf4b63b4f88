"""A picture as an SVG element, by its kind."""

from collections.abc import Sequence

from ..judging.drawn import Drawn
from ..picture import Scale
from .drawing import as_svg, canvas, in_style
from .drawing_curves import draw_curves
from .drawing_lanes import draw_lanes, lanes_height
from .drawing_scale import draw_scale, scale_height

HEIGHT = 250


def svg_of(drawn: Drawn, number: int, words: Sequence[str]) -> str:
    """The element.  number: of the picture on the page; words: what is said of each row."""
    picture = drawn.picture
    with in_style():
        if isinstance(picture, Scale):
            axes = canvas(scale_height(drawn))
            draw_scale(axes, drawn, picture, words)
        elif picture.lanes:
            axes = canvas(lanes_height(drawn))
            draw_lanes(axes, drawn, picture)
        else:
            axes = canvas(HEIGHT)
            draw_curves(axes, drawn, picture)
        return as_svg(axes, number)
