"""A record as one row of cells and back: ``readings.1.said`` is the text of the first reading.

A text that a spreadsheet would run as a formula gets an apostrophe before it, as one would type it there; the
apostrophe goes when the row is read back, and a text that begins with one gets a second.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

Path = tuple[str | int, ...]

_RUNS = ("=", "+", "-", "@", "\t", "\r", "\n", "'")


def cell(value: Any) -> str:
    """One value as the text of a cell.

    >>> cell("=1+1"), cell(-0.015), cell(True), cell(None)
    ("'=1+1", '-0.015', 'yes', '')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return f"'{value}" if value.startswith(_RUNS) else value
    return repr(value)


def value_of(text: str) -> str:
    """The text in a cell without the apostrophe that guards it.

    >>> value_of("'=1+1"), value_of("''tis"), value_of("-0.015")
    ('=1+1', "'tis", '-0.015')
    """
    return text[1:] if text.startswith("'") else text


def columns_of(contents: Sequence[Any], prefix: str = "") -> Iterator[str]:
    """Every column that contents of one shape need, in the order of their fields."""
    present = [one for one in contents if one is not None]
    if not present:
        return
    if isinstance(present[0], Mapping):
        for key in present[0]:
            yield from columns_of([one[key] for one in present], f"{prefix}{key}.")
    elif isinstance(present[0], list):
        for place in range(max(map(len, present))):
            yield from columns_of([one[place] for one in present if len(one) > place], f"{prefix}{place + 1}.")
    else:
        yield prefix.removesuffix(".")


def cells_of(content: Any, prefix: str = "") -> Iterator[tuple[str, str]]:
    """Column and cell of every value in a content."""
    if isinstance(content, Mapping):
        for key, one in content.items():
            yield from cells_of(one, f"{prefix}{key}.")
    elif isinstance(content, list):
        for place, one in enumerate(content, start=1):
            yield from cells_of(one, f"{prefix}{place}.")
    else:
        yield prefix.removesuffix("."), cell(content)


def content_of(cells: Mapping[str, str]) -> tuple[dict[str, Any], dict[Path, str]]:
    """Nested content of the cells that hold something, and the column of each place in it."""
    tree: dict[str, Any] = {}
    for column, text in cells.items():
        if text.strip():
            _put(tree, column, value_of(text))
    places: dict[Path, str] = {}
    content = _listed(tree, (), "", places)
    return content if isinstance(content, dict) else {}, places


def _put(tree: dict[str, Any], column: str, value: str) -> None:
    node: dict[str, Any] = tree
    *above, last = column.split(".")
    for key in above:
        below = node.setdefault(key, {})
        if not isinstance(below, dict):
            # The column above holds a plain value: this one belongs nowhere, and is said so under its whole name.
            tree[column] = value
            return
        node = below
    if last in node:
        tree[column] = value
        return
    node[last] = value


def _listed(node: Any, path: Path, column: str, places: dict[Path, str]) -> Any:
    places[path] = column
    if not isinstance(node, dict):
        return node
    below = f"{column}." if column else ""
    if path and all(key.isdecimal() for key in node):
        ordered = sorted(node, key=int)
        return [_listed(node[key], (*path, place), f"{below}{key}", places) for place, key in enumerate(ordered)]
    return {key: _listed(one, (*path, key), f"{below}{key}", places) for key, one in node.items()}
