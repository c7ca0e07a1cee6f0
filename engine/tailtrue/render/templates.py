"""Page templates and style sheets: strict about names, everything escaped, kept compiled."""

import re
from collections.abc import Callable
from functools import lru_cache, partial
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template
from jinja2.runtime import Context, Macro
from markupsafe import Markup, escape

from tailtrue.parts import Paper
from tailtrue.places import templates_folder
from tailtrue.render.compiled import Compiled
from tailtrue.render.large import enlarged
from tailtrue.render.plain_code import PlainCode
from tailtrue.render.words import sentence

# Names a text markup without asking first whether it is markup already.
marked: Callable[[str], Markup] = partial(str.__new__, Markup)


class _Calls(Context):
    """Calls without asking first what the called thing wants handed over: only macros want something, how to escape."""

    def call(self, called: Any, /, *given: Any, **named: Any) -> Any:
        """What a call in a template comes to."""
        if named:
            # What a loop or a block has set is for things that ask for the context; nothing here does.
            named.pop("_loop_vars", None)
            named.pop("_block_vars", None)
        if called.__class__ is not Macro:
            return called(*given, **named)
        # A macro with all that it takes, in order, needs nothing put in order first.
        if not named and len(given) == len(called.arguments):
            return marked(called._func(*given))
        return called(self.eval_ctx, *given, **named)


class _Template(Template):
    """A template that escapes a text once, however often it stands on the pages."""

    @classmethod
    def from_code(cls, environment: Environment, code: Any, globals: Any, uptodate: Any = None) -> Template:  # noqa: A002
        """The template of compiled code."""
        made = super().from_code(environment, code, globals, uptodate)
        made.root_render_func.__globals__["escape"] = _escaped
        return made


def _escaped(value: Any) -> Markup:
    kind = value.__class__
    if kind is str:
        return _once(value)
    return value if kind is Markup else escape(value)


@lru_cache(maxsize=8192)
def _once(text: str) -> Markup:
    return escape(text)


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
    environment.context_class = _Calls
    environment.template_class = _Template
    environment.filters["css_string"] = css_string
    environment.filters["sentence"] = sentence
    return environment
