"""Tags and screws that are called by their names: which tag hangs and comes off, and how many screws the tailstock has."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_TAGS = {"tag": re.compile(r"\bdo-not-start tag\b"), "set-over-tag": re.compile(r"\bset-over tag\b")}
_ANY = re.compile(r"\bthe tag\b", re.IGNORECASE)
_ASKED = re.compile(r"\bscrews? where there (?:are two|is one)\b", re.IGNORECASE)
_BOTH = re.compile(r"\bboth set-over screws\b", re.IGNORECASE)


def tags_named(sheet: Sheet) -> Iterator[Fault]:
    """Where two tags are in use, each line says which; a tag that a step lists is hung, left or taken off in its lines."""
    used = {tool for placed in sheet.steps for tool in placed.step.tools}
    if not _TAGS.keys() <= used:
        return
    for placed in sheet.steps:
        step = placed.step
        words = " ".join(map(words_of, (*step.text, *((step.hold.text,) if step.hold else ()))))
        if _ANY.search(words):
            yield Fault(placed.where, 'two tags are in use on this sheet, and a line says only "the tag"')
        for tool, named in _TAGS.items():
            if tool in step.tools and not named.search(words):
                yield Fault(placed.where, f'"{tool}" is listed and no line says what is done with it')


def screws_counted(sheet: Sheet) -> Iterator[Fault]:
    """A tailstock with one screw across has no two screws to be brought up; what the lathe file tells is not asked again."""
    for found in sheet.said(_ASKED) if sheet.shop.set_over else ():
        yield Fault(found.where, "the lathe file says how many set-over screws there are, and the line asks")
    for found in sheet.said(_BOTH) if sheet.shop.set_over == "one-screw" else ():
        yield Fault(found.where, "this tailstock has one set-over screw, and two are spoken of")
