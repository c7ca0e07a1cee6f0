"""What nobody said and a stop would have read: the stop passes it over, so the sheet tells it."""

from collections.abc import Iterator

from tailtrue.assemble.filling import Filler
from tailtrue.parts import Text
from tailtrue.procedure import Finding
from tailtrue.store.knowledge import Knowledge, Route, Stop
from tailtrue.truth import Truth


def unsaid(filler: Filler, route: Route) -> Iterator[Finding]:
    """For each stop against a hazard that cannot be judged and refuses nothing for it: the facts that it asks for."""
    case = filler.case
    told: set[str] = set()
    for stop in case.knowledge.stops:
        if not stop.file.row or stop.file.if_unknown != "pass-over" or not route.has_to_do_with(stop.file.concerns):
            continue
        judged = case.judge(stop.when)
        given = [name for name in judged.missing if _may_be_said(case.knowledge, name)]
        if judged.truth is Truth.UNKNOWN and given and not told.issuperset(given):
            told.update(given)
            yield Finding(level="attention", text=_text(filler, stop, given), sources=tuple(stop.file.sources))


def _may_be_said(knowledge: Knowledge, name: str) -> bool:
    return name in knowledge.given.facts


def _text(filler: Filler, stop: Stop, names: list[str]) -> Text:
    catalogue = filler.case.knowledge.given
    labels = " and ".join(catalogue.facts[name].spec.label for name in names)
    keys = ", ".join(f"{catalogue.facts[name].key} in the {catalogue.facts[name].file} file" for name in names)
    check = next((one for one in filler.case.knowledge.safety.checks if one.file.id == stop.file.asked_by), None)
    if check is None:
        return (f"Not said: {labels}. Say it: {keys}.",)
    return (f"Not said: {labels}. Say it: {keys}. The safety review asks before work: ", *filler.text(check.item), ".")
