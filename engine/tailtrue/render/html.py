"""A procedure as one HTML file that needs nothing beside it: no network, script, font or picture."""

import re
from functools import lru_cache

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template
from markupsafe import Markup

from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render import words
from tailtrue.render.compiled import Compiled
from tailtrue.render.drawing import bar_drawing
from tailtrue.render.move import move_drawing
from tailtrue.render.page import Page

_UNSAFE_IN_CSS = re.compile(r"[^ A-Za-z0-9.,:()/_-]")


def to_html(procedure: Procedure) -> str:
    """The whole page, ready to be read on a screen or printed."""
    title = procedure.title
    return _template().render(
        p=procedure,
        page=Page(procedure),
        words=words,
        bar=Markup(bar_drawing(procedure.drawing, title.dials)),
        move=Markup(move_drawing(procedure.look_up)),
        css=Markup(_style(title.paper)),
    )


def css_string(text: str) -> Markup:
    """A text as a CSS string: whatever could end the string or the style element is written as its code.

    >>> css_string('Lathe "2" </style>')
    Markup('"Lathe \\\\22 2\\\\22  \\\\3c /style\\\\3e "')
    """
    return Markup('"' + _UNSAFE_IN_CSS.sub(lambda match: f"\\{ord(match[0]):x} ", text) + '"')


@lru_cache(maxsize=1)
def _template() -> Template:
    environment = Environment(
        loader=FileSystemLoader(templates_folder()),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        optimized=False,
        bytecode_cache=Compiled(),
    )
    environment.filters["css_string"] = css_string
    environment.filters["sentence"] = words.sentence
    return environment.get_template("procedure.html.j2")


@lru_cache(maxsize=2)
def _style(paper: str) -> str:
    """The style sheet and the geometry of the paper."""
    names = ("sheet.css", f"paper_{paper.lower()}.css")
    return "\n".join((templates_folder() / name).read_text(encoding="utf-8") for name in names)
