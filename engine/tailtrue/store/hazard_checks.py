"""Every row of the list of hazards is a caution, or it is said why no step meets it."""

from collections.abc import Collection, Iterator, Sequence

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Caution, Stop
from tailtrue.store.safety_models import NotMetFile
from tailtrue.tables import Table

TABLE = "safety/hazard_groups"
NAMED = "safety/hazards"


def hazard_problems(
    groups: Table,
    cautions: Sequence[Caution],
    stops: Sequence[Stop],
    not_met: Sequence[tuple[NotMetFile, str]],
    checks: Collection[str],
    named: Table,
) -> Iterator[Problem]:
    """Rows in neither place, in both, or unknown to the list; stops that name no line of the `checks` of the lathe."""
    listed = {
        f"{row.text('group')}-{number:02}": f"knowledge/{TABLE}.csv:{row.line}"
        for row in groups
        for number in range(1, int(row.number("rows")) + 1)
    }
    met = {caution.file.row: caution.where for caution in cautions}
    left_out = {file.row: where for file, where in not_met}
    kept_away = {stop.file.row: stop.where for stop in stops if stop.file.row}
    for row, where in (*met.items(), *left_out.items(), *kept_away.items()):
        if row not in listed:
            yield Problem(where, row, "is no row of the list of hazards", f"mend the row, or the count in {TABLE}.csv")
    for row, where in left_out.items():
        if row in met:
            yield Problem(where, row, "is said not to be met, and a caution answers it", "take it out here")
    for row, where in listed.items():
        if row not in met and row not in left_out:
            yield Problem(where, row, "no caution answers this hazard", "add one, or say in safety/not_met.toml why not")
    yield from _named_problems(named, listed, cautions, left_out)
    for stop in stops:
        if stop.file.asked_by and stop.file.asked_by not in checks:
            yield Problem(stop.where, stop.file.asked_by, "is no check of the lathe", "name one of safety/checks.toml")


def _named_problems(
    named: Table, listed: Collection[str], cautions: Sequence[Caution], left_out: Collection[str]
) -> Iterator[Problem]:
    """Hazards that the list does not name once, and those beside which it names other cautions than answer them."""
    answers: dict[str, set[str]] = {}
    for caution in cautions:
        answers.setdefault(caution.file.row, set()).add(caution.file.id)
    lines = {row.text("row"): row for row in named}
    for row in listed:
        if row not in lines:
            yield Problem(f"knowledge/{NAMED}.csv", row, "is not in the list of hazards", "add a line that names it")
    for line in named:
        row, where = line.text("row"), f"knowledge/{NAMED}.csv:{line.line}"
        due = set() if row in left_out else answers.get(row, set())
        if row not in listed:
            yield Problem(where, row, "is no row of a group of hazards", f"mend the row, or the count in {TABLE}.csv")
        elif lines[row] is not line:
            yield Problem(where, row, "is named before", "keep one of the lines")
        elif set(filter(None, line.listed("cautions"))) != due:
            do = f"write {'; '.join(sorted(due)) or 'nothing'}"
            yield Problem(where, row, "names other cautions than those that answer this row", do)
