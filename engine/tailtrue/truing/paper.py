"""What every paper for the lathe takes from a case: whose it is, lines of its parts, what must be mended first."""

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import Fact, NotKnown
from tailtrue.papers import Head
from tailtrue.parts import Text, status_of
from tailtrue.refusals import Refusal, refusals
from tailtrue.truth import Truth

_SAFETY = "knowledge/stops/safety.toml"


def head_of(case: Case) -> Head:
    """The lathe, the shop, the bar and the sheet."""
    return Head(
        machine=str(case.value("lathe.name")),
        shop=str(case.value("job.shop")),
        bar=str(case.value("truing.bar")),
        number=str(case.value("job.number")),
        revision=str(case.value("job.revision")),
        paper="Letter" if case.value("job.paper") == "Letter" else "A4",
        dials="inch" if case.value("lathe.dials") == "inch" else "metric",
        rules=case.knowledge.version,
        dated=str(case.value("job.date")),
        status=status_of(
            str(_known(case, "job.status") or ""),
            approved=bool(_known(case, "job.approver") and _known(case, "job.walked_through")),
        ),
    )


def _known(case: Case, name: str) -> object:
    found = case.get(name)
    return found.value if isinstance(found, Fact) else None


def lines_of(case: Case, part: str) -> tuple[Text, ...]:
    """The lines of one part that hold in this case, in the order of their file."""
    filler = Filler(case)
    return tuple(
        filler.text(one.text)
        for one in case.knowledge.says
        if one.file.part == part and case.judge(one.when).truth is Truth.YES
    )


def mend_first(case: Case) -> tuple[Text, ...]:
    """What must be mended on the lathe before it cuts again."""
    return tuple((f"{one.title}. ", *one.text) for one in refused_by(case, _SAFETY))


def refused_by(case: Case, file: str) -> tuple[Refusal, ...]:
    """What the stops of one file of the knowledge say against this case."""
    mine = {stop.file.id for stop in case.knowledge.stops if stop.where.startswith(file)}
    return tuple(one for one in refusals(case) if one.id in mine)


def needed(case: Case, *names: str) -> None:
    """Raise FactsWrong with every fact that is missing for these, or with what keeps one from being worked out."""
    faults: dict[str, Problem] = {}
    asked = list(names)
    while asked:
        name = asked.pop(0)
        found = case.get(name)
        if not isinstance(found, NotKnown) or name in faults:
            continue
        deeper = [one for one in found.missing if one != name]
        if deeper:
            asked += deeper
        elif found.missing:
            faults[name] = Problem(
                "", found.spec.label, "is not said", "write it into the files of the job, or give its option"
            )
        else:
            wrong = found.trouble or "cannot be worked out"
            faults[name] = Problem("", found.spec.label, wrong, "mend the facts it follows from")
    if faults:
        raise FactsWrong(faults.values())
