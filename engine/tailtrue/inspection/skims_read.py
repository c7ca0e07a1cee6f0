"""Fresh skims read with an indicator: on the side away from the tool, as the tool left them, in an honest doubt."""

from collections.abc import Iterator
from math import sqrt

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

_READ = "read-skims"
# What ends the bond between the collars and the path that cut them.
_DISTURBS = frozenset({"move-tailstock", "mount-between-centres", "re-clamp", "chuck-change", "deburr"})
_SAID = ("on the saddle", "cross slide")
# Two readings, each to a division, expanded twice: no budget can leave less.
_OF_THE_DIVISION = 2 * sqrt(2 / 12)
_MOST_OF_THE_LIMIT = 0.5
_SLACK = 1e-9


def _read(sheet: Sheet) -> list[Placed]:
    return [placed for placed in sheet.steps if _READ in placed.step.activities]


def away_from_the_tool(sheet: Sheet) -> Iterator[Fault]:
    """The plunger touches the side where the tool does not stand; the stand is on the saddle, the cross slide locked."""
    due, wrong = ("rear", "front") if sheet.shop.tool_side == "front" else ("front", "rear")
    for placed in _read(sheet):
        if not any(check.instrument == "indicator" for check in placed.step.checks):
            yield Fault(placed.where, "fresh skims are read along the bed and no indicator is named")
        sides = " ".join(words_of(line.value) for line in placed.step.settings).lower().replace(",", " ").split()
        if due not in sides or wrong in sides:
            what = f"with the tool at the {sheet.shop.tool_side} the plunger belongs at the {due}"
            yield Fault(placed.where, f"{what}, and the step does not say so")
        lines = " ".join(words_of(line) for line in placed.step.text).lower()
        for words in _SAID:
            if words not in lines:
                yield Fault(placed.where, f'fresh skims are read with an indicator and no line says "{words}"')


def as_the_tool_left_them(sheet: Sheet) -> Iterator[Fault]:
    """Between the skim and its reading nothing is cut, moved or mounted anew, and both stand in one phase."""
    for placed in _read(sheet):
        before = placed.phase.steps[: placed.place]
        skims = [place for place, step in enumerate(before) if "skim" in step.activities]
        if not skims:
            yield Fault(placed.where, "an indicator reads collars that were not skimmed in this phase")
            continue
        for step in before[skims[-1] + 1 :]:
            if step.machine == "turning" or _DISTURBS & set(step.activities):
                yield Fault(placed.where, f"step {step.number} stands between the skim and its reading by indicator")


def doubt_is_honest(sheet: Sheet) -> Iterator[Fault]:
    """The doubt is no less than the divisions alone leave, and a verdict needs a limit of twice the doubt."""
    reach = sheet.shop.instruments.get("indicator")
    for placed in _read(sheet):
        doubts = [one.value for _, figures in placed.set_there for one in figures if one.fact == "align.uncertainty"]
        if not doubts:
            yield Fault(placed.where, "nothing says how far the difference by indicator is in doubt")
            continue
        least = _OF_THE_DIVISION * reach[2] if reach else 0.0
        if min(doubts) < least * (1 - _SLACK):
            yield Fault(
                placed.where,
                f"the doubt is {min(doubts):g} mm, and the divisions of the indicator alone leave {least:.4g} mm",
            )
        limits = [found.figure.value for found in sheet.at_steps if found.figure.fact == "align.limit"]
        table = sheet.procedure.look_up
        if table is not None and table.verdict_possible and not (limits and max(doubts) <= _MOST_OF_THE_LIMIT * min(limits)):
            yield Fault(placed.where, "a verdict is promised, and the doubt of the indicator is more than half the limit")
