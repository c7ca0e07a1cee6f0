"""How often each source is named, anywhere in the knowledge."""

import tomllib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tailtrue.store.knowledge import Knowledge
from tailtrue.store.reading import head_of
from tailtrue.tables import source_keys

# A cell or list of sources; a reference names one source by its key.
_NAMES = frozenset({"source", "sources"})


def sources_named(folder: Path, knowledge: Knowledge) -> Counter[str]:
    """Sources by how many entries, rows and computed facts name them."""
    written = [key for table in knowledge.tables.values() for row in table.rows for key in row.sources]
    written += [text for way in knowledge.computed.values() for text in way.spec.sources]
    for path in sorted(folder.rglob("*.toml")):
        written += _named(tomllib.loads(path.read_text(encoding="utf-8")))
    for path in sorted(folder.rglob("*.md")):
        written += _named(tomllib.loads(head_of(path.read_text(encoding="utf-8"))))
    return Counter(key for text in written for key in source_keys(text))


def _named(part: Any) -> Iterator[str]:
    if isinstance(part, list):
        for one in part:
            yield from _named(one)
    elif isinstance(part, dict):
        for name, value in part.items():
            if name in _NAMES and isinstance(value, str):
                yield value
            elif name in _NAMES and isinstance(value, list):
                yield from (one for one in value if isinstance(one, str))
            else:
                yield from _named(value)
