"""Lines that several papers print: none points up or down the page, for each paper has its own order."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_POINTS = re.compile(r"\b(?:list|table|box|line)s? (?:below|above)\b", re.IGNORECASE)


def points_nowhere(sheet: Sheet) -> Iterator[Fault]:
    """What keeps work from starting, or stops it, stands on sheet, review and standing procedure alike."""
    tree = sheet.procedure
    for text in (*tree.do_not_start, *tree.stop_at_once, *tree.after_a_stop, *tree.in_emergency):
        said = words_of(text)
        if _POINTS.search(said):
            yield Fault("front", f'this stands on papers of another order, and points to a place of the page: "{said}"')
