"""Sections of a paper for the lathe as lines for a terminal."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from tailtrue.cli.layout import wrapped

if TYPE_CHECKING:
    from tailtrue.papers import Section
    from tailtrue.parts import Dials, Text


def terminal_lines(sections: "Sequence[Section]", mend: "Sequence[Text]", dials: "Dials") -> Iterator[str]:
    """Headings and wrapped lines; what must be mended first stands last, where the eye rests."""
    from tailtrue.render.paper import MEND
    from tailtrue.render.words import say

    for place, section in enumerate(sections):
        if place:
            yield ""
        if section.title:
            yield section.title
        for number, line in enumerate(section.lines, 1):
            lead = f"  {number}. " if section.steps else "  - " if section.title and len(section.lines) > 1 else "  "
            yield from wrapped(say(line, dials), lead)
    if mend:
        yield from ("", MEND)
        for line in mend:
            yield from wrapped(say(line, dials), "  - ")
