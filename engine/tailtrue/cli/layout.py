"""Pages for the terminal: a lead, then headed lists, wrapped to a width that any window has."""

import textwrap
from collections.abc import Iterable, Sequence

WIDTH = 78


def wrapped(text: str, first: str) -> list[str]:
    """A text in lines; the first begins so, the others stand under its words."""
    return textwrap.wrap(text, WIDTH, initial_indent=first, subsequent_indent=" " * len(first), break_on_hyphens=False)


def sections(parts: Iterable[tuple[str, Sequence[str]]]) -> list[str]:
    """Headed lists, an empty line before each; entries are numbered where there are several, empty lists left out."""
    lines: list[str] = []
    for title, texts in parts:
        if texts:
            lines += ["", title]
            for number, text in enumerate(texts, 1):
                lines += wrapped(text, f"  {number}. " if len(texts) > 1 else "  ")
    return lines
