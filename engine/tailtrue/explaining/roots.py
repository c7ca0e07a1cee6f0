"""What a fact that is not known comes down to: the choice that found no way, or the formula that does not reach."""

from collections.abc import Iterator

from tailtrue.case import Case
from tailtrue.facts import NotKnown
from tailtrue.parts import Text
from tailtrue.truth import Truth


def root_of(case: Case, name: str) -> str | None:
    """The fact at which the trouble began that keeps another from being known; None where something was not said."""
    found = case.get(name)
    if not isinstance(found, NotKnown) or found.missing or not found.trouble:
        return None
    for read in found.read:
        behind = case.get(read)
        if isinstance(behind, NotKnown) and not behind.missing and behind.trouble == found.trouble:
            return root_of(case, read)
    return name


def ways_of(case: Case, root: str) -> Iterator[Text]:
    """What each alternative of a choice that found none lacks, and where all of it is told; nothing for a formula."""
    decision = case.knowledge.decisions.get(root)
    if decision is None:
        return
    for row in decision.rows:
        lacks = next((said for when, said in row.says if case.judge(when).truth is Truth.YES), "")
        if lacks and not row.never_taken:
            yield (f"Mend what keeps this way from holding: {row.name}: {lacks}.",)
    yield (f"Read what it hangs on: tailtrue why JOB {root}.",)
