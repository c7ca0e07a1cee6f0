"""From a job file to an inspected procedure: the way through the house in one place."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from itertools import islice
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from tailtrue.assemble import assemble, record_alone
from tailtrue.assemble.filling import Filler
from tailtrue.assemble.unsaid import unsaid
from tailtrue.case import Case, Gap
from tailtrue.errors import InspectionFailed, Problem, Refused
from tailtrue.explaining.near import near_misses
from tailtrue.facts import Fact
from tailtrue.given.read import Given, read_job
from tailtrue.inspection import RECORD_RULES, RULES, Rule, Shop, inspect
from tailtrue.log.fields import fields_of_a_record
from tailtrue.overriding import beyond
from tailtrue.parts import Dials, Text
from tailtrue.places import knowledge_folder
from tailtrue.plan import LEFT, left_sheet, make_plan, numbered
from tailtrue.procedure import Procedure
from tailtrue.refusals import Refusal, impossible, passed_over, refusals, refused
from tailtrue.review import NearMissLine
from tailtrue.shop import shop_of
from tailtrue.store.keeping import kept
from tailtrue.store.knowledge import Knowledge, Route
from tailtrue.store.rule_files import rule_files
from tailtrue.truing.lookup import record_sheet
from tailtrue.truth import Truth

if TYPE_CHECKING:
    from tailtrue.store.layers import Layers


@dataclass(frozen=True)
class Advice:
    """What the engine says of a job: a case, why it refuses, what it noticed."""

    case: Case
    given: Given
    route: Route
    refused: tuple[Refusal, ...]
    noticed: tuple[tuple[str, Text], ...]

    @property
    def dials(self) -> Dials:
        """The system of the machine's dials."""
        return "inch" if self.case.value("lathe.dials") == "inch" else "metric"

    def refusal(self, reasons: tuple[Refusal, ...]) -> Refused:
        """The error for reasons not to print."""
        left = (self.case.knowledge.routes[str(self.case.value(LEFT))],) if self.route.leaves_another else ()
        return refused(reasons, self.case, (self.route, *left))


@cache
def knowledge() -> Knowledge:
    """The knowledge that ships with the engine, loaded and checked once for each content of it."""
    return kept("knowledge", knowledge_folder(), _loaded)


def _loaded(folder: Path, layers: "Layers | None" = None) -> Knowledge:
    # What reads and checks the files is not needed where all of it is kept.
    from tailtrue.store.load import load_knowledge

    return load_knowledge(folder, layers)


def advise(
    job: Path, known: Knowledge | None = None, instead: Mapping[str, Any] = MappingProxyType({})
) -> Advice:  # fmt: skip
    """Read a job and judge it: refusals and findings, no document yet. `instead` holds raw values in place of the files'.

    Raises FactsWrong when the files cannot be used, KnowledgeInvalid when the knowledge or the rules of the shop cannot,
    Refused when a number set by hand crosses what bounds it.
    """
    known = known or knowledge()
    given = read_job(job, known.given, instead)
    known = laid_over(known, job, given)
    said = _facts(given, known)
    route = known.routes[given.value("job.do")]
    case = Case(known, said, given.by_hand.values())
    if crossed := beyond(case):
        # Nothing is worked out from a number that is not taken, here or at the lathe.
        plain = Case(known, said)
        raise refused((*crossed, *refusals(plain, route)), plain, (route,))
    reasons = _refused(case, route)
    filler = Filler(case)
    noticed: list[tuple[str, Text]] = [(one.level, one.text) for one in unsaid(filler, route)]
    for note in known.notes:
        if route.has_to_do_with(note.file.concerns) and case.judge(note.when).truth is Truth.YES:
            try:
                noticed.append((note.file.level, filler.text(note.text)))
            except Gap as gap:
                # What a note cannot say is no loss beside a refusal; where nothing else refuses, it does.
                reasons = reasons or (impossible(case, gap.name, gap.found),)
    return Advice(case, given, route, reasons, tuple(noticed))


def _refused(case: Case, route: Route) -> tuple[Refusal, ...]:
    """What refuses this sheet; a sheet of rework is refused too where the sheet that was left would be."""
    own = refusals(case, route)
    if not route.leaves_another:
        return own
    left = refusals(case, case.knowledge.routes[str(case.value(LEFT))])
    return own + tuple(one for one in left if one not in own)


def laid_over(known: Knowledge, job: Path, given: Given) -> Knowledge:
    """The knowledge with the rules of the shop laid over it: those beside the job, and those that it names."""
    paths = rule_files(job, str(given.value("job.rules", "")))
    if not paths:
        return known
    from tailtrue.store.layers import read_layers

    return _loaded(known.folder, read_layers(paths, job.parent))


def _facts(given: Given, known: Knowledge) -> dict[str, Fact]:
    """What was said, under its own name and under that of the fact it stands for."""
    facts: dict[str, Fact] = {}
    for name, value in given.values.items():
        for known_as in filter(None, (name, known.given.facts[name].stands_for)):
            facts[known_as] = Fact(
                known.catalogue[known_as], value.value, said=value.said, where=value.where, inside=value.inside
            )  # fmt: skip
    return facts


def nearly_held(case: Case) -> tuple[NearMissLine, ...]:
    """The rules that one thing keeps from holding, the worst first, as many as a reader takes in."""
    # Looking round asks every question there is. It is done in a case of its own: the sheet tells only what it asked.
    found = (one for one in near_misses(case.aside()) if one.what_happens)
    return tuple(
        NearMissLine(
            id=one.id, title=one.title, short_by=one.short_by, what_happens=one.what_happens,
            sources=tuple(key.split(":", 1)[0] for key in one.sources),
        )
        for one in islice(found, case.knowledge.safety.review.near_misses_told)
    )  # fmt: skip


def make_procedure(job: Path, known: Knowledge | None = None) -> Procedure:
    """An inspected procedure for a job.

    Raises Refused with every reason, or InspectionFailed when the independent inspection finds fault.
    """
    return procedure_of(advise(job, known))


def procedure_of(advice: Advice) -> Procedure:
    """The inspected procedure of a job that was judged.

    Raises Refused with every reason, or InspectionFailed when the independent inspection finds fault.
    """
    return _inspected(tree_of(advice), advice)


def tree_of(advice: Advice) -> Procedure:
    """The procedure of a job that was judged, as it comes to the inspection; nothing of it is printed before that.

    Raises Refused with every reason.
    """
    if advice.refused:
        raise advice.refusal(advice.refused)
    case = advice.case
    try:
        return assemble(
            case, make_plan(case, advice.route), lambda: record_sheet(case, fields_of_a_record()), nearly_held(case)
        )
    except Gap as gap:
        raise advice.refusal((impossible(case, gap.name, gap.found),)) from gap


def record_of(advice: Advice) -> Procedure:
    """The inspected record of a job's bar, in as much of a tree as it is judged against; for refused jobs too.

    Raises FactsWrong when the job does not say what the table follows from, InspectionFailed when the independent
    inspection finds fault, Refused when it could not be inspected.
    """
    case = advice.case
    if advice.route.file.id in case.knowledge.records:
        # Its bands and settings are those of the steps, so it is made and judged with them.
        return procedure_of(advice)
    try:
        tree = record_alone(case, advice.route, record_sheet(case, fields_of_a_record()))
        return _inspected(tree, advice, RECORD_RULES)
    except Gap as gap:
        raise advice.refusal((impossible(case, gap.name, gap.found),)) from gap


def _inspected(tree: Procedure, advice: Advice, rules: tuple[Rule, ...] = RULES) -> Procedure:
    report = inspect(tree, shop_for(advice), rules)
    if not report.ok:
        problems = (Problem(f.where, f.rule, f.what, f.source) for f in report.failures)
        raise InspectionFailed(tuple(problems))
    return tree


def shop_for(advice: Advice) -> Shop:
    """The shop that the sheet of a job is held against."""
    case = advice.case
    chosen = {
        "route": advice.route.file.id,
        "chuck": case.value("chuck.label"),
        "blank_chuck": case.value("blank.chuck_label"),
        "rework_chuck": case.value("rework.chuck_label"),
        "bar_hold": case.value("bar.hold"),
        "collar_hold": case.value("collar.hold"),
        "bar_chuck": case.value("bar.chuck_label"),
        "bar_material": case.value("bar.material"),
        "gauge": case.value("bore.gauge"),
        "bar": case.value("bar.diameter"),
        "collar": case.value("collar.diameter"),
        "bar_family": case.value("bar.material_family"),
        "collar_family": case.value("collar.material_family"),
        "joint": case.value("joint.method"),
    }
    left = numbered(left_sheet(case)) if advice.route.leaves_another else {}
    return replace(shop_of(advice.given, case.knowledge, chosen, left), unsaid=passed_over(case, advice.route))
