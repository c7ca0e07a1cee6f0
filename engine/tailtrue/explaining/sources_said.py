"""Sources in words, with how sure they are."""

from collections.abc import Iterable
from typing import Any

from tailtrue.explaining.said import Line
from tailtrue.store.knowledge import Knowledge

_OPEN = {
    "common-practice": "common practice of the trade, without one text",
    "memory": "unconfirmed: written down from memory, to be treated with doubt",
}
_STATUS = {"read": "published, its text was read", "cited": "published, known by citation only", "open": "unconfirmed"}


def source_lines(knowledge: Knowledge, keys: Iterable[str]) -> tuple[Line, ...]:
    """One line for each source."""
    return tuple(Line((_said(knowledge, key),)) for key in _plain(keys))


def source_data(knowledge: Knowledge, keys: Iterable[str]) -> list[dict[str, Any]]:
    """The same for a program."""
    return [
        {"id": key, "title": knowledge.sources[key].title, "status": knowledge.sources[key].status} for key in _plain(keys)
    ]


def _plain(keys: Iterable[str]) -> list[str]:
    # Behind a colon stands the place in the text.
    return list(dict.fromkeys(key.split(":", 1)[0] for key in keys))


def _said(knowledge: Knowledge, key: str) -> str:
    if key in _OPEN:
        return _OPEN[key]
    source = knowledge.sources[key]
    return f"{source.title}{f', {source.edition}' if source.edition else ''}: {_STATUS[source.status]}"
