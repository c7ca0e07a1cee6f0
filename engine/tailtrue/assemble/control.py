"""What a paper is, which edition, and from what it was made: alike on the sheet and on its standing procedure."""

import hashlib
import json
from collections.abc import Iterable

import tailtrue
from tailtrue.assemble.filling import Filler, words_of
from tailtrue.case import Gap
from tailtrue.parts import Text
from tailtrue.shop_sheet import Change, Entry
from tailtrue.store.page_texts import PageLine
from tailtrue.truth import Truth
from tailtrue.wording import Wording

GENERATOR = f"tailtrue {tailtrue.__version__}"


def known(filler: Filler, wording: Wording) -> Text | None:
    """The text, or None when it is empty or hangs on something that was not said: there is a place to write then."""
    try:
        return filler.text(wording) or None
    except Gap:
        return None


def entries(filler: Filler, lines: Iterable[PageLine]) -> tuple[Entry, ...]:
    """Further lines of a title block, each with its value or a place to write."""
    return tuple(
        Entry(label=words_of(filler.text(line.label)), value=known(filler, line.value))
        for line in lines
        if filler.case.judge(line.when).truth is Truth.YES
    )


def changes_said(filler: Filler) -> tuple[Change, ...]:
    """What changed since the last revision, and why, as the job file has it."""
    return tuple(Change(what=row["what"], why=row["why"]) for row in filler.case.value("job.changes") or ())


def inputs_of(filler: Filler) -> str:
    """A short fingerprint of what was said: two papers with the same one were made from the same files."""
    said = {name: fact.value for name, fact in filler.case.known().items() if fact.spec.comes == "given"}
    digest = hashlib.sha256(json.dumps(said, sort_keys=True, default=str).encode()).hexdigest()
    return f"{digest[:4]}-{digest[4:8]}"
