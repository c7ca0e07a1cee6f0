"""What was chosen and why: figures beside a choice agree with the steps, and reasons are told in words."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_SAME = 1e-9
_GAUGE, _READ = "bore.gauge", "bore.gauge_uncertainty"
_OWN = "_doubt"
_ORDER, _WAITS = "truing.order", "leave the tailstock"
_RAW = re.compile(r"[<>=]+|\b[a-z]\w*[._][a-z]\w*|-?\b[\d.]+ ?mm\b")


def gauge_doubt_agrees(sheet: Sheet) -> Iterator[Fault]:
    """The doubt that stands beside the chosen gauge is the one that its readings are judged with."""
    judged_with = {placed.told[_READ] for placed in sheet.steps if _READ in placed.told}
    for choice in sheet.procedure.choices:
        if choice.id != _GAUGE:
            continue
        for way in choice.alternatives:
            said = {one.value for one in figures_in(way) if one.fact.endswith(_OWN)} if way.verdict == "chosen" else set()
            if any(abs(here - there) > _SAME for here in said for there in judged_with):
                yield Fault(
                    f"choice {choice.id}", f'"{way.name}" is said to be good to another doubt than the steps read with'
                )


def weighed_size_binds(sheet: Sheet) -> Iterator[Fault]:
    """Of the sizes that were held against each other the least, or the greatest, is the one that was chosen."""
    for choice in sheet.procedure.choices:
        if choice.weighed is None:
            continue
        taken = next((way for way in choice.alternatives if way.verdict == "chosen"), None)
        if taken is None or taken.size is None:
            yield Fault(f"choice {choice.id}", f"the {choice.weighed} size binds, and what was chosen shows none")
            continue
        for way in choice.alternatives:
            if way.size is None or way.verdict != "no":
                continue
            over = taken.size.value - way.size.value
            if (over if choice.weighed == "least" else -over) > _SAME:
                yield Fault(f"choice {choice.id}", f'"{way.name}" binds before "{taken.name}", which was chosen')


def size_as_chosen(sheet: Sheet) -> Iterator[Fault]:
    """The number that a choice settles keeps the side that binds; one that was read or wished stands as it was said.

    A number that somebody set by hand is held against its own bounds elsewhere.
    """
    settled = {choice.settles: choice for choice in sheet.procedure.choices if choice.settles}
    for found in sheet.figures:
        printed = found.figure
        choice = settled.get(printed.fact)
        if choice is None or printed.set_by is not None:
            continue
        size = next((way.size for way in choice.alternatives if way.verdict == "chosen"), None)
        if size is None:
            continue
        over = printed.value - size.value
        wrong = {"least": over > _SAME, "greatest": over < -_SAME, None: abs(over) > _SAME}[choice.weighed]
        if wrong:
            yield Fault(f"choice {choice.id}", f"what was chosen does not give the {choice.settles} that is printed")


def reasons_in_words(sheet: Sheet) -> Iterator[Fault]:
    """No reason beside an alternative carries a sign of comparison, the name of a fact, or a size without its inches."""
    for choice in sheet.procedure.choices:
        for way in choice.alternatives:
            if found := _RAW.search(way.reason):
                yield Fault(
                    f"choice {choice.id}", f'the reason for "{way.name}" says "{found[0]}", which is no word of the trade'
                )


def bed_before_tailstock(sheet: Sheet) -> Iterator[Fault]:
    """Where bed or headstock are known to be out, no sheet that tests the tailstock puts the tailstock first."""
    found = sheet.shop.found_out
    asked = next((one for one in sheet.procedure.choices if one.id == _ORDER), None)
    if asked is None or not found:
        return
    out = f"{' and '.join(sorted(found))} found out"
    told = (piece for finding in sheet.procedure.findings for piece in finding.text if isinstance(piece, str))
    if not any(_WAITS in piece.lower() for piece in told):
        yield Fault(f"choice {_ORDER}", f"{out}, and nothing says that the tailstock waits")
    if "bed" not in asked.chosen and ("bed" in found or "headstock" not in asked.chosen):
        yield Fault(f"choice {_ORDER}", f'{out}, and what comes first is "{asked.chosen}"')
