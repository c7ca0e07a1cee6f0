"""Loaded knowledge, kept between runs.

Loading reads some hundred files and holds every rule against its examples. What passed once passes again as long as
neither a file of the knowledge nor the engine is another, so it is kept as plain data under a seal over both. A kept
file that is missing, damaged or of another content is no loss: the knowledge is loaded and checked as ever.
"""

import marshal
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from tailtrue import conditions, decisions, facts, tables, wording
from tailtrue.computed.registry import register
from tailtrue.given import entries, locate, references, toml_file
from tailtrue.kept import keep, own_folder, take
from tailtrue.store import (
    knowledge,
    models,
    page_models,
    page_texts,
    record_models,
    records,
    route_models,
    safety,
    safety_models,
    sop,
    sop_models,
)
from tailtrue.store.packing import Unpackable, outside_of, pack, packed_classes, unpack
from tailtrue.store.version import made_from

Loaded = TypeVar("Loaded")

_MODULES = (
    conditions, decisions, entries, facts, knowledge, locate, models, page_models, page_texts, record_models, records,
    references, route_models, safety, safety_models, sop, sop_models, tables, toml_file, wording,
)  # fmt: skip


def kept(name: str, folder: Path, load: Callable[[Path], Loaded]) -> Loaded:
    """What `load` makes of a knowledge folder, from what is kept under this name where that was made from the same."""
    path = _path(name)
    if path is None:
        return load(folder)
    same = f"{name} {made_from(folder)}"
    content = take(path, same)
    if content is not None:
        return unpacked(content, folder)  # type: ignore[no-any-return]
    made = load(folder)
    try:
        keep(path, same, packed(made, folder))
    except (Unpackable, ValueError):
        return made
    return made


def packed(value: Any, folder: Path) -> bytes:
    """A value as the bytes that are kept. Raises Unpackable for what cannot be kept."""
    return marshal.dumps(pack(value, _classes(), _outside(), folder))


def unpacked(content: bytes, folder: Path) -> Any:
    """The value that was kept."""
    return unpack(marshal.loads(content), _classes(), _outside(), folder)


def _path(name: str) -> Path | None:
    folder = own_folder()
    return folder / f"{name}.{sys.implementation.cache_tag}" if folder else None


def _classes() -> Sequence[type]:
    return packed_classes(_MODULES)


def _outside() -> Sequence[Any]:
    return outside_of(register())
