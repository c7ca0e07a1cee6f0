"""Terms of the trade as Markdown."""

from collections.abc import Iterator, Sequence

from tailtrue.parts import Dials, Term
from tailtrue.render.plain import bold, bullets, heading, literal
from tailtrue.render.words import say


def terms(title: str, used: Sequence[Term], dials: Dials) -> Iterator[str]:
    """A heading and a line for each term; nothing where no term is used."""
    if used:
        yield heading(2, title)
        yield bullets(f"{bold(term.term)} {literal(say(term.meaning, dials))}" for term in used)
