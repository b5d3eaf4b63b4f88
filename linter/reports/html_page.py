"""What every page for a browser and for paper is made of: one base, one style, its pictures.

A page loads nothing and runs nothing; whatever stands in a spec is escaped as text.
"""

from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from ..judging.drawn import Drawn
from ..judging.review import Review
from .groups import together
from .identity import text_hash
from .phrases import assumption, clean
from .picture_svg import svg_of
from .picture_words import answers, number_rows, row_words
from .verdict import DISCLAIMER

SHORT_HASH = 12


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture on a page, with its numbers as a table.

    answers: what the checks say, in pairs of the word and of those that it stands for.
    """

    number: int
    title: str
    about: str
    svg: Markup
    notes: tuple[str, ...]
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    answers: tuple[tuple[str, str], ...] = ()
    leans: tuple[str, ...] = ()


def html_page(template: str, **values: object) -> str:
    """The text of a page."""
    style = Markup(_file("page.css"))
    return _templates().get_template(template).render(
        style=style, disclaimer=DISCLAIMER, **values
    ) + "\n"  # fmt: skip


def figure_of(review: Review, drawn: Drawn, number: int) -> Figure:
    """A picture with its words and its numbers."""
    picture = drawn.picture
    several = len(review.spec.channels) > 1 and picture.each == "channel"
    heads, rows = number_rows(drawn)
    return Figure(
        number,
        picture.title,
        together(drawn.subjects) if several else "",
        Markup(svg_of(drawn, number, row_words(review, drawn))),
        tuple(note for note in (picture.note, *drawn.notes) if note),
        heads,
        rows,
        answers(review, drawn),
        tuple(dict.fromkeys(assumption(x) for x in drawn.assumed)),
    )


def which_file(file: str, text: str) -> str:
    """The file that a printed page is about, with the start of its hash."""
    return f"{file}, SHA-256 {text_hash(text)[:SHORT_HASH]}…"


@cache
def _templates() -> Environment:
    templates = Environment(
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        loader=FunctionLoader(_file),
    )
    templates.finalize = lambda x: clean(x) if type(x) is str else x
    return templates


def _file(name: str) -> str:
    return (files(__package__) / name).read_text(encoding="utf-8")
