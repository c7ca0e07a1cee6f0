"""Papers of an earlier run that lie where new ones go: they are never deleted, and never left without a word."""

import re
from collections.abc import Collection, Iterator
from pathlib import Path

from tailtrue.documents import FORMATS, Wanted

_CHECKSUM = re.compile(r"checksum\W{1,5}([0-9a-f]{4}-[0-9a-f]{4})")


def earlier_papers(out: Path, written: Collection[Path] = (), checksum: str = "") -> str:
    """What to say of papers in a folder that this run did not write; empty where there are none.

    A paper with the `checksum` of this run says the same as those that were written. One that shows none was made with
    those beside it: where they are all of this run, so is it.
    """
    found: dict[str, list[str]] = {}
    for path in _papers(out):
        if path not in written:
            found.setdefault(_checksum_of(path), []).append(path.name)
    if checksum and found.pop(checksum, []) and set(found) == {""}:
        return ""
    each = (f"checksum {said or 'not to be read'}: {', '.join(names)}" for said, names in found.items())
    return f"{out} still holds papers of an earlier run, {'; '.join(each)}. Do not use them." if found else ""


def _papers(out: Path) -> Iterator[Path]:
    names = (
        Wanted(large=large).file_name(name, kind) for large in (False, True) for name in FORMATS for kind in FORMATS[name]
    )
    yield from (out / name for name in dict.fromkeys(names) if (out / name).is_file())


def _checksum_of(path: Path) -> str:
    """The checksum that a paper shows; empty where it cannot be read, as in a PDF."""
    try:
        match = _CHECKSUM.search(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return ""
    return match[1] if match else ""
