"""What the papers for the lathe share: the making of a page with the style of its paper, units beside places to write."""

from collections.abc import Mapping
from typing import Any

from markupsafe import Markup

from tailtrue.papers import Head
from tailtrue.parts import Dials, Text
from tailtrue.procedure import TitleBlock
from tailtrue.render.templates import style, template
from tailtrue.render.words import say

MEND = "DO NOT RUN THE LATHE before this is mended"


def page(name: str, head: Head, *, large: bool = False, **values: Any) -> str:
    """A page from its template, with the style of its paper; in large print if asked."""

    def told(text: Text) -> str:
        return say(text, head.dials)

    css = Markup(style(head.paper, "bench.css", large=large))
    return template(name).render(head=head, css=css, told=told, mend_title=MEND, large=large, **values)


def head_of(title: TitleBlock, bar: str) -> Head:
    """Whose a paper of this sheet is."""
    return Head(
        machine=title.machine,
        shop=title.shop,
        bar=bar,
        number=title.number,
        revision=title.revision,
        paper=title.paper,
        dials=title.dials,
        rules=title.knowledge_version,
        dated=title.date,
        status=title.status,
        checksum=title.checksum,
    )


def unit_beside(unit: str, dials: Dials) -> str:
    """The unit to print beside a place to write in, in the system of the dials.

    >>> unit_beside("mm", "inch"), unit_beside("s", "metric"), unit_beside("", "metric")
    ('in', 'min', '')
    """
    here: Mapping[str, tuple[str, str]] = {
        "mm": ("mm", "in"), "mm/rev": ("mm/rev", "in/rev"), "degC": ("°C", "°F"), "s": ("min", "min"),
        "1/min": ("rev/min", "rev/min"), "1": ("", ""),
    }  # fmt: skip
    return here.get(unit, (unit, unit))[dials == "inch"]
