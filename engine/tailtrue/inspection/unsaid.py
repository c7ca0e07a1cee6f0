"""What nobody said and a protection hangs on is told on the sheet, not passed over."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of


def not_hidden(sheet: Sheet) -> Iterator[Fault]:
    """Each fact that a stop against a hazard lacked, and passed the job over for, is named where attention is asked."""
    told = [words_of(finding.text) for finding in sheet.procedure.findings if finding.level == "attention"]
    for label in sheet.shop.unsaid:
        if not any(words.startswith("Not said") and label in words for words in told):
            yield Fault("findings", f'nobody said "{label}", a stop against a hazard hangs on it, and nothing tells so')
