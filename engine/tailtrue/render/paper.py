"""What the papers for the lathe share: whose they are, sections of plain lines, the style, the making of a page."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Literal

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from tailtrue.places import templates_folder
from tailtrue.procedure import Text
from tailtrue.render.compiled import Compiled
from tailtrue.render.html import css_string
from tailtrue.render.numbers import Dials
from tailtrue.render.words import say, sentence

Paper = Literal["A4", "Letter"]
MEND = "DO NOT RUN THE LATHE before this is mended"


@dataclass(frozen=True)
class Head:
    """Whose paper it is: on every page of it."""

    machine: str
    shop: str
    bar: str
    number: str
    revision: str
    paper: Paper
    dials: Dials
    rules: str


@dataclass(frozen=True)
class Section:
    """A heading with lines under it; steps are numbered."""

    title: str
    lines: tuple[Text, ...]
    steps: bool = False


def page(template: str, head: Head, **values: Any) -> str:
    """A page from its template, with the style of its paper."""

    def told(text: Text) -> str:
        return say(text, head.dials)

    style = Markup(_style(head.paper))
    return _environment().get_template(template).render(head=head, css=style, told=told, mend_title=MEND, **values)


def sections_markdown(sections: Sequence[Section], dials: Dials) -> list[str]:
    """Sections as Markdown blocks."""
    from tailtrue.render.plain import bullets, heading, literal

    blocks = []
    for section in sections:
        lines = [literal(say(line, dials)) for line in section.lines]
        numbered = "\n".join(f"{place}. {line}" for place, line in enumerate(lines, 1))
        blocks += [heading(2, section.title), numbered if section.steps else bullets(lines)]
    return blocks


def unit_beside(unit: str, dials: Dials) -> str:
    """The unit to print beside a place to write in, in the system of the dials.

    >>> unit_beside("mm", "inch"), unit_beside("s", "metric"), unit_beside("", "metric")
    ('in', 'min', '')
    """
    here: Mapping[str, tuple[str, str]] = {
        "mm": ("mm", "in"), "mm/rev": ("mm/rev", "in/rev"), "degC": ("°C", "°F"), "s": ("min", "min"),
        "1/min": ("rev/min", "rev/min"),
    }  # fmt: skip
    return here.get(unit, (unit, unit))[dials == "inch"]


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
    environment.filters["css_string"] = css_string
    environment.filters["sentence"] = sentence
    return environment


@lru_cache(maxsize=2)
def _style(paper: str) -> str:
    names = ("sheet.css", "bench.css", f"paper_{paper.lower()}.css")
    return "\n".join((templates_folder() / name).read_text(encoding="utf-8") for name in names)
