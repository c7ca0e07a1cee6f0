"""What is held of the times of the steps: each has one, of a row of the table and of facts that are times."""

from collections.abc import Iterator

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge

_TABLE = "time/handling"
_WHERE = f"knowledge/{_TABLE}.csv"


def time_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """The faults of the times."""
    rows = knowledge.tables[_TABLE].rows
    kinds = [row.text("handling") for row in rows]
    used: set[str] = set()
    for step in knowledge.steps.values():
        time = step.file.time
        if time is None:
            do = 'give it time = { handling = "..." }, a row of the table of handling'
            yield Problem(step.where, step.file.id, "the step has no time", do)
            continue
        used.add(time.handling)
        if time.handling not in kinds:
            yield Problem(step.where, time.handling, f"is no row of {_WHERE}", "add the row, or mend the name")
        for name in (time.cutting, time.waiting):
            if name is not None and (name not in knowledge.catalogue or knowledge.catalogue[name].unit != "s"):
                yield Problem(step.where, name, "is no fact that is a time", "mend the name")
        if step.file.settings_from is None and step.file.machine != "turning" and time.cutting is not None:
            yield Problem(step.where, time.cutting, "nothing is cut while the spindle stands", "take the cutting out")
    for kind, row in zip(kinds, rows, strict=True):
        where = f"{_WHERE}:{row.line}"
        if kinds.count(kind) > 1:
            yield Problem(where, kind, "stands in the table more than once", "leave one")
        if kind not in used:
            yield Problem(where, kind, "no step takes this time", "take the row out, or use it")
        if not 0 < row.number("low_min") <= row.number("high_min"):
            yield Problem(where, kind, "the least minutes are not above nothing and up to the most", "mend the row")
