"""The friendly ways to type a record: readings collar by collar with their order, initials, dates without quotes."""

import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime
from typing import Any

from tailtrue.errors import Problem
from tailtrue.given.locate import Lines
from tailtrue.given.quoting import pair
from tailtrue.given.toml_file import TomlFile

_COLLARS = {"head": "H", "middle": "M", "tail": "T"}
_ALSO = {"initials": "operator"}
_ORDER = "order"
_ONE = "readings"


def tidied(file: TomlFile, table: str) -> tuple[TomlFile, bool, list[Problem]]:
    """The file in the plain form of a record, whether its readings stand in order, and what is wrong with them."""
    found = file.tables.get(table)
    if not isinstance(found, Mapping):
        return file, True, []
    values = {key: one.isoformat() if isinstance(one, date | datetime) else one for key, one in found.items()}
    lines = dict(file.lines.by_path)
    for other, key in _ALSO.items():
        if other in values and key not in values:
            values[key] = values.pop(other)
            lines[table, key] = lines.get((table, other), 1)
    faults: list[Problem] = []
    listed = [key for key in _COLLARS if key in values]
    in_order = True
    if listed or _ORDER in values:
        in_order = _to_one_list(values, lines, table, file, faults)
    return replace(file, tables={**file.tables, table: values}, lines=Lines(lines)), in_order, faults


def _to_one_list(
    values: dict[str, Any], lines: dict[tuple[str | int, ...], int], table: str, file: TomlFile, faults: list[Problem]
) -> bool:
    """Put the readings of the collars into one list, in their order where it was said."""

    def wrong(key: str, what: str, do: str) -> None:
        faults.append(Problem(file.place(table, key), pair(key, said[key]), what, do))

    said = {key: values.pop(key) for key in (*_COLLARS, _ORDER) if key in values}
    if _ONE in values:
        first = next(iter(said))
        wrong(first, "and readings say the same thing in two ways", "write readings, or head, tail and order")
        return True
    queues: dict[str, list[tuple[str, int]]] = {}
    for key, letter in _COLLARS.items():
        texts = said.get(key, [])
        if isinstance(texts, str):
            texts = [piece for piece in re.split(r"\s*[,;]\s+", texts.strip()) if piece]
        if not isinstance(texts, list) or not all(isinstance(one, str) for one in texts):
            wrong(key, "is not a list of readings in quotes", f'write {key} = ["69.842 mm", "69.843 mm"]')
            texts = []
        queues[letter] = [(f"{letter} {one}", lines.get((table, key, n), lines.get((table, key), 1)))
                          for n, one in enumerate(texts)]  # fmt: skip
    taken = "".join(letter * len(queue) for letter, queue in queues.items())
    order = said.get(_ORDER)
    plain = re.sub(r"[\s,;-]", "", order).upper() if isinstance(order, str) else None
    if order is not None and (plain is None or sorted(plain) != sorted(taken)):
        counts = ", ".join(f"{len(queue)} {letter}" for letter, queue in queues.items() if queue)
        wrong(_ORDER, "does not fit the readings", f"write one letter for each reading, {counts}, as they were read")
        plain = None
    if faults:
        return True
    rows = [queues[letter].pop(0) for letter in plain or taken]
    values[_ONE] = [text for text, _ in rows]
    lines[table, _ONE] = rows[0][1] if rows else 1
    lines.update({(table, _ONE, n): line for n, (_, line) in enumerate(rows)})
    return plain is not None
