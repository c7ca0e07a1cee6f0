"""Tools: everything used is on the list and in the shop, and everything on the list is used."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet


def listed_and_used(sheet: Sheet) -> Iterator[Fault]:
    """The list of needs and the tools of the steps say the same."""
    used: dict[str, set[str]] = {}
    for placed in sheet.steps:
        for tool in placed.step.tools:
            used.setdefault(tool, set()).add(placed.step.number)
    listed: set[str] = set()
    for need in sheet.procedure.needs:
        where = f"need {need.id}"
        if need.id in listed:
            yield Fault(where, "this need is listed twice")
        listed.add(need.id)
        at_steps = used.get(need.id, set())
        if not at_steps:
            yield Fault(where, "no step uses it")
        for number in sorted(set(need.used_at) - at_steps):
            yield Fault(where, f"it is said to be used at step {number}, which does not use it")
        for number in sorted(at_steps - set(need.used_at)):
            yield Fault(where, f"step {number} uses it and the list does not say so")
    for tool in sorted(set(used) - listed):
        for number in sorted(used[tool]):
            yield Fault(f"step {number}", f'"{tool}" is used here and stands on no list')


def in_shop(sheet: Sheet) -> Iterator[Fault]:
    """Everything needed is in the shop."""
    for need in sheet.procedure.needs:
        if not need.in_shop:
            yield Fault(f"need {need.id}", "the sheet itself says that the shop does not have it")
        elif need.id not in sheet.shop.tool_ids_in_shop:
            yield Fault(f"need {need.id}", "the shop does not have it")
