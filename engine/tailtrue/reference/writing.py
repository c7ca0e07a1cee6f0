"""How a reference page is written: headings, tables, conditions and texts in words, marks for what is not confirmed."""

from collections.abc import Iterable, Mapping, Sequence

from tailtrue.conditions import Atom, Condition
from tailtrue.facts import FactSpec
from tailtrue.store.values import origin_of
from tailtrue.tables import source_keys
from tailtrue.wording import Place, Pointer, Wording

LEGEND = "† no published source, common practice of the trade. ‡ from memory, not confirmed: treat it with doubt."
_MARKS = {"published": "", "common_practice": " †", "memory": " ‡"}
_MADE = "Made from the rule base with `tailtrue knowledge reference`; do not edit it by hand."


def head(title: str, lead: str) -> str:
    """The top of a page."""
    return f"# {title}\n\n{_MADE}\n\n{lead}\n\n{LEGEND}\n"


def table(columns: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table; a bar in a cell is kept from parting it."""
    lines = [_row(columns), _row(["---"] * len(columns)), *(_row(row) for row in rows)]
    return "\n".join(lines) + "\n"


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"


def sourced(written: Iterable[str]) -> str:
    """Sources as they are named, marked when nothing published stands behind all of it.

    >>> sourced(["handbook:p. 12", "memory"])
    'handbook:p. 12; memory ‡'
    """
    named = list(written)
    return "; ".join(named) + mark(named)


def mark(written: Iterable[str]) -> str:
    """The mark of the weakest source."""
    named = list(written)
    return _MARKS[origin_of(named)] if any(source_keys(one) for one in named) else ""


def condition(when: Condition) -> str:
    """A condition in the words of its file; what always holds is said so.

    >>> from tailtrue.conditions import Block
    >>> condition(Block("all", (Atom("a.b is yes", "a.b", "is", ()), Block("not", (Atom("a.c < 2", "a.c", "<", ()),)))))
    '`a.b is yes` and not `a.c < 2`'
    """
    return _said(when, outermost=True) or "always"


def _said(when: Condition, *, outermost: bool = False) -> str:
    if isinstance(when, Atom):
        return f"`{when.words}`"
    parts = [_said(part) for part in when.parts]
    if when.join == "not":
        return f"not {parts[0]}"
    joined = {"all": " and ", "any": " or "}[when.join].join(parts)
    return joined if outermost or len(parts) < 2 else f"({joined})"


def text(wording: Wording, catalogue: Mapping[str, FactSpec]) -> str:
    """A text with each place as the label of its fact, or as the step whose number stands there."""
    return "".join(part if isinstance(part, str) else f"*{_place(part, catalogue)}*" for part in wording.parts).strip()


def _place(part: Place | Pointer, catalogue: Mapping[str, FactSpec]) -> str:
    if isinstance(part, Pointer):
        return f"where {part.steps[0]} begins" if part.opens else part.steps[0]
    return catalogue[part.name].label if part.name in catalogue else part.name


def bullets(lines: Iterable[str]) -> str:
    """A list."""
    return "\n".join(f"- {line}" for line in lines) + "\n"
