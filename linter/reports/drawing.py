"""Pictures as SVG with real text: how a scale, curves and lanes are drawn, whatever they tell.

Colours are names that the page gives a meaning, in light and in dark; what tells lines apart
is their dash and a label at the line, so that a print without colour loses nothing.
"""

import io
import re
from contextlib import AbstractContextManager
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure

from .phrases import clean

WIDTH = 380
TEXT = 11.0
SMALL = 10.0
COLOURS = {
    "#010101": "ink",
    "#020202": "muted",
    "#030303": "line",
    "#040404": "first",
    "#050505": "second",
    "#060606": "third",
    "#070707": "bad",
    "#080808": "good",
    "#090909": "paper",
}
INK, MUTED, LINE, FIRST, SECOND, THIRD, BAD, GOOD, PAPER = COLOURS
SERIES = ((FIRST, "-"), (SECOND, (0, (6, 2))), (THIRD, (0, (1.5, 1.5))))
FONT = re.compile(r"font: ([^;\"]*?)([\d.]+)px [^;\"]*")
STYLE: dict[Any, Any] = {
    "svg.fonttype": "none",
    "svg.hashsalt": "",
    "font.family": "sans-serif",
    "font.size": TEXT,
    "text.color": INK,
    "axes.edgecolor": LINE,
    "axes.labelcolor": MUTED,
    "xtick.color": LINE,
    "ytick.color": LINE,
    "xtick.labelcolor": MUTED,
    "ytick.labelcolor": MUTED,
    "text.parse_math": False,
    "axes.unicode_minus": True,
}


def in_style() -> AbstractContextManager[None]:
    """The settings of the library while a picture is drawn and written."""
    return mpl.rc_context(STYLE)


def canvas(height: float) -> Axes:
    """Empty axes of a picture, in the units of its SVG."""
    figure = Figure(figsize=(WIDTH / 72, height / 72), dpi=72)
    FigureCanvasSVG(figure)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.patch.set_visible(False)
    figure.patch.set_visible(False)
    return axes


def sheet(axes: Axes) -> Figure:
    """The figure that the axes stand in."""
    figure = axes.get_figure(root=True)
    assert isinstance(figure, Figure)
    return figure


def place(axes: Axes, left: float, top: float, right: float, bottom: float) -> None:
    """Leave margins round the axes, in the units of the SVG."""
    height = sheet(axes).get_figheight() * 72
    axes.set_position(
        (
            left / WIDTH,
            bottom / height,
            (WIDTH - left - right) / WIDTH,
            (height - top - bottom) / height,
        )
    )


def bare(axes: Axes) -> None:
    """Only the axis below."""
    for side in ("left", "right", "top"):
        axes.spines[side].set_visible(False)


def as_svg(axes: Axes, number: int) -> str:
    """The drawing as one element that can stand in a page beside others."""
    stream = io.StringIO()
    mpl.rcParams["svg.hashsalt"] = f"picture {number}"
    sheet(axes).savefig(stream, format="svg", metadata={"Date": None})
    text = stream.getvalue()
    text = text[text.index("<svg") :]
    text = re.sub(r"<metadata>.*?</metadata>", "", text, flags=re.DOTALL)
    text = re.sub(r"<!--.*?-->", "", text, flags=re.DOTALL)
    used = set(re.findall(r"(?:href=\"|url\()#([^\")]+)", text))
    text = re.sub(
        r' id="([^"]+)"',
        lambda found: f' id="p{number}-{found[1]}"' if found[1] in used else "",
        text,
    )
    text = re.sub(r'(href="|url\()#', rf"\1#p{number}-", text)
    text = FONT.sub(r"font: \1\2px var(--font)", text)
    for colour, name in COLOURS.items():
        text = text.replace(colour, f"var(--{name})")
    head = f'<svg role="img" aria-labelledby="picture-{number}" aria-describedby="numbers-{number}"'
    size = re.search(r'viewBox="([^"]+)"', text)
    box = size[1] if size else f"0 0 {WIDTH} {WIDTH}"
    body = text[text.index(">") + 1 :]
    return f'{head} viewBox="{box}" xmlns:xlink="http://www.w3.org/1999/xlink">{body}'


def write(
    axes: Axes,
    x: float,
    y: float,
    text: str,
    *,
    colour: str = INK,
    size: float = SMALL,
    where: tuple[str, str] = ("left", "center"),
    bold: bool = False,
) -> None:
    """A text in the units of the data; the page gives it a halo of the paper's colour."""
    axes.text(
        x,
        y,
        clean(text),
        color=colour,
        fontsize=size,
        ha=where[0],
        va=where[1],
        fontweight="bold" if bold else "normal",
        clip_on=False,
    )
