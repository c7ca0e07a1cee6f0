"""The small change of Markdown: literal text, tables, quotes, lists."""

import re
from collections.abc import Iterable, Sequence

_SPECIAL = str.maketrans({letter: f"\\{letter}" for letter in "\\`*_{}[]<>#|~&$!"})
_LIST_MARK = re.compile(r"^(\s*)([-+=])")
_NUMBERED = re.compile(r"^(\s*\d+)([.)])(?=\s|$)")
_LINE_ENDS = re.compile(r"\s*[\r\n]+\s*")


def literal(text: str) -> str:
    """A text that Markdown shows letter by letter.

    >>> print(literal("bar *2* <A>"), literal("1. Face"), literal("- 3"))
    bar \\*2\\* \\<A\\> 1\\. Face \\- 3
    """
    one_line = _LINE_ENDS.sub(" ", text) if "\n" in text or "\r" in text else text
    escaped = one_line.translate(_SPECIAL)
    # A mark can only be the first; matching finds that out at once, replacing would read on to the end.
    if mark := _LIST_MARK.match(escaped) or _NUMBERED.match(escaped):
        return f"{mark[1]}\\{escaped[mark.end(1) :]}"
    return escaped


def bold(text: str) -> str:
    """A literal text in bold; nothing for nothing."""
    inner = literal(text.strip())
    return f"**{inner}**" if inner else ""


def heading(level: int, text: str) -> str:
    """A heading line."""
    return f"{'#' * level} {literal(text)}"


def table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table; the cells are Markdown already.

    >>> print(table(("a", "b"), [("1", "2")]))
    | a | b |
    | --- | --- |
    | 1 | 2 |
    """
    lines = [head, ["---"] * len(head), *rows]
    return "\n".join(f"| {' | '.join(cells)} |" for cells in lines)


def quote(paragraphs: Iterable[str]) -> str:
    """A block quote of paragraphs."""
    return "\n>\n".join(f"> {paragraph}" for paragraph in paragraphs if paragraph)


def bullets(lines: Iterable[str]) -> str:
    """A list."""
    return "\n".join(f"- {line}" for line in lines)


def boxes(lines: Iterable[str]) -> str:
    """A list of boxes to tick."""
    return "\n".join(f"- [ ] {line}" for line in lines)
