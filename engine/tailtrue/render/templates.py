"""Page templates and style sheets: strict about names, everything escaped, kept compiled."""

import re
from functools import lru_cache
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template
from markupsafe import Markup, escape

from tailtrue.parts import Paper
from tailtrue.places import templates_folder
from tailtrue.render.compiled import Compiled
from tailtrue.render.large import enlarged
from tailtrue.render.plain_code import PLAIN_NAMES, PlainCode
from tailtrue.render.words import sentence

_TO_ESCAPE = re.compile("[&<>\"']")


class _Template(Template):
    """A template that escapes a text once, however often it stands on the pages, and finds its plain names."""

    @classmethod
    def from_code(cls, environment: Environment, code: Any, globals: Any, uptodate: Any = None) -> Template:  # noqa: A002
        """The template of compiled code."""
        made = super().from_code(environment, code, globals, uptodate)
        made.root_render_func.__globals__.update(PLAIN_NAMES, escape=_written)
        return made


@lru_cache(maxsize=8192)  # the same words stand on every sheet; a text and the markup of its letters are kept apart
def _written(value: Any) -> str:
    kind = value.__class__
    if kind is str:
        return escaped(value)
    return value if kind is Markup else escape(value)


@lru_cache(maxsize=8192)  # the same words stand on every sheet
def escaped(text: str) -> str:
    """A text that is to stand in markup, for what joins markup by itself."""
    return str(escape(text)) if _TO_ESCAPE.search(text) else text


_UNSAFE_IN_CSS = re.compile(r"[^ A-Za-z0-9.,:()/_-]")


def template(name: str) -> Template:
    """A page template by its file."""
    return _environment().get_template(name)


@lru_cache
def style(paper: Paper, *further: str, large: bool = False) -> str:
    """The style sheet of the pages, `further` ones, and the geometry of the paper; in large print if asked."""

    def read(name: str) -> str:
        return (templates_folder() / name).read_text(encoding="utf-8")

    parts = [read(name) for name in ("sheet.css", *further)]
    if large:
        parts = [*map(enlarged, parts), read("large.css")]
    return "\n".join([*parts, read(f"paper_{paper.lower()}.css")])


def css_string(text: str) -> Markup:
    """A text as a CSS string: whatever could end the string or the style element is written as its code.

    >>> css_string('Lathe "2" </style>')
    Markup('"Lathe \\\\22 2\\\\22  \\\\3c /style\\\\3e "')
    """
    return Markup('"' + _UNSAFE_IN_CSS.sub(lambda match: f"\\{ord(match[0]):x} ", text) + '"')


@lru_cache(maxsize=1)
def _environment() -> Environment:
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
    environment.code_generator_class = PlainCode
    environment.template_class = _Template
    environment.filters["css_string"] = css_string
    environment.filters["sentence"] = sentence
    return environment
