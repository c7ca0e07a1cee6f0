"""The whole tree: front of the sheet, phases, look-up table, reasons."""

import hashlib
from collections.abc import Callable, Iterator
from typing import Any

from tailtrue.assemble.by_hand import set_by_hand
from tailtrue.assemble.card import about, card, of_work
from tailtrue.assemble.cautions import applicable
from tailtrue.assemble.control import GENERATOR, changes_said, entries, inputs_of
from tailtrue.assemble.drawings import bar, drawings
from tailtrue.assemble.filling import Filler, words_of
from tailtrue.assemble.glossary import explained, explaining_sources
from tailtrue.assemble.on_sheet import on_sheet
from tailtrue.assemble.reasons import choices, derivations, figures, source_list
from tailtrue.assemble.safety_review import safety_review
from tailtrue.assemble.shop_rules import shop_rules
from tailtrue.assemble.signs import signs_of
from tailtrue.assemble.sop import limits_met, sop_sheet, sop_sources
from tailtrue.assemble.standing_lines import told
from tailtrue.assemble.steps import phases, settings
from tailtrue.assemble.supervising import who_may
from tailtrue.assemble.times import job_time
from tailtrue.assemble.unsaid import unsaid
from tailtrue.assemble.ways import can_move, ways
from tailtrue.assemble.work_record import work_record
from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.parts import Caution, Figure, Node
from tailtrue.plan import Plan
from tailtrue.procedure import Cut, Finding, LookUp, Move, Need, Phase, Procedure, TitleBlock
from tailtrue.record_sheet import RecordSheet
from tailtrue.review import NearMissLine
from tailtrue.store.knowledge import Route
from tailtrue.store.rule_files import SHOP_SOURCE
from tailtrue.truth import Truth


def assemble(case: Case, plan: Plan, record: Callable[[], RecordSheet], near: tuple[NearMissLine, ...]) -> Procedure:
    """The finished tree of a planned job, its checksum made over everything else in it.

    `record` makes the record of the test; it is asked last, so that what the work itself lacks is told first. `near`
    are the rules that nearly held; they are told in the safety review.
    """
    filler = Filler(case)
    page = case.knowledge.page
    route = plan.route
    parts = route.file.parts
    made, job_cautions = phases(filler, plan, applicable(filler))
    activities = {activity for phase in made for step in phase.steps for activity in step.activities}
    turns = any(step.machine == "turning" for phase in made for step in phase.steps)
    needs = _needs(filler, made)
    title = _title(filler, route)
    tree = Procedure(
        title=title,
        lead=filler.text(plan.route.lead),
        facts=settings(filler, about(route, page.facts)),
        drawing=bar(filler, made) if "drawing" in parts else None,
        drawings=drawings(filler, made),
        who_may=tuple(filler.text(text) for text in who_may(filler, title.owner)),
        do_not_start=tuple(filler.text(text) for text in of_work(page.do_not_start, made)),
        stop_at_once=tuple(filler.text(text) for text in of_work(page.stop_at_once, made)),
        after_a_stop=tuple(filler.text(text) for text in of_work(page.after_a_stop, made)),
        in_emergency=tuple(filler.text(text) for text in page.in_emergency),
        if_it_goes_wrong=tuple(
            (row.seen, filler.text(row.do), filler.text(row.never))
            for row in about(route, page.trouble)
            if turns or not row.turning
            if case.judge(row.when).truth is not Truth.NO  # not known: told, it does no harm
        ),
        limits=tuple(limits_met(filler, activities, turns=turns)),
        conventions=tuple(filler.text(text) for text in told(page.conventions, route, made)),
        job_cautions=job_cautions,
        needs=needs,
        cut_list=_cut_list(filler) if "cut-list" in parts else (),
        phases=made,
        time=job_time(filler, made, told(page.time_notes, route, made)),
        look_up=_look_up(filler) if "look-up" in parts else None,
        card=card(filler, made, route, job_cautions) if "card" in parts else None,
        safety_review=safety_review(filler, made, needs, job_cautions, near),
        # A record is of a test: what has no look-up table is none.
        record=record() if "look-up" in parts else None,
        work_record=work_record(filler, route, made),
        care=tuple(
            filler.text(text)
            for text in (
                *page.care,
                *(one.text for one in page.care_besides if case.judge(one.when).truth is Truth.YES),
            )
            if "care" in parts
        ),
        findings=_findings(filler, route),
        set_by_hand=set_by_hand(filler),
        shop_rules=shop_rules(filler),
        choices=choices(filler, route),
        derivations=(),
        sources=(),
    )
    tree = tree.model_copy(
        update={"signs": signs_of(case.knowledge, (code for one in _cautions(tree) for code in one.signs))}
    )
    if "sop" in parts:
        tree = tree.model_copy(update={"sop": sop_sheet(filler, tree, route)})
    tree = explained(tree, case.knowledge.glossary)
    tree = tree.model_copy(update={"derivations": derivations(filler, figures(tree), on_sheet(tree))})
    tree = tree.model_copy(update={"sources": source_list(filler, _used_sources(tree, case))})
    return tree.model_copy(update={"title": tree.title.model_copy(update={"checksum": checksum(tree)})})


def record_alone(case: Case, route: Route, record: RecordSheet) -> Procedure:
    """As much of a tree as the record of a test is judged against: whose it is, the bar as drawn, limit, doubt and table.

    It has no steps and no review, and is for the inspection of the record only, never for a page.
    """
    filler = Filler(case)
    title = _title(filler, route).model_copy(update={"checksum": _fingerprint(record)})
    parts: dict[str, Any] = {
        "title": title, "drawing": bar(filler), "look_up": _look_up(filler), "record": record, "phases": (),
        "lead": (filler.figure("align.limit"), filler.figure("align.uncertainty")),
    }  # fmt: skip
    return Procedure.model_construct(**parts)


def checksum(tree: Procedure) -> str:
    """A short fingerprint of a tree without its checksum: two prints with the same one say the same."""
    return _fingerprint(tree.model_copy(update={"title": tree.title.model_copy(update={"checksum": ""})}))


def _fingerprint(part: Node) -> str:
    digest = hashlib.sha256(part.model_dump_json().encode()).hexdigest()
    return f"{digest[:4]}-{digest[4:8]}"


def _cautions(tree: Procedure) -> Iterator[Caution]:
    yield from tree.job_cautions
    for phase in tree.phases:
        yield from phase.cautions
        for step in phase.steps:
            yield from step.cautions


def _used_sources(tree: Procedure, case: Case) -> list[str]:
    used = [key for made in tree.derivations for key in made.sources]
    used += [key for choice in tree.choices for key in choice.sources]
    used += [key for finding in tree.findings for key in finding.sources]
    used += [key for phase in tree.phases for step in phase.steps for key in case.knowledge.steps[step.id].file.sources]
    used += [key for caution in _cautions(tree) for key in caution.sources]
    used += [*tree.safety_review.sources, *(key for near in tree.safety_review.near_misses for key in near.sources)]
    used += [key for limit in tree.limits for key in limit.sources]
    used += [*sop_sources(tree), *explaining_sources(tree)]
    used += [SHOP_SOURCE] if tree.shop_rules else []
    return [key.split(":", 1)[0] for key in used]


def _said(filler: Filler, name: str) -> str:
    found = filler.case.get(name)
    return str(found.value) if isinstance(found, Fact) else ""


def _title(filler: Filler, route: Route) -> TitleBlock:
    knowledge = filler.case.knowledge
    where = _said(filler, "lathe.location")
    machine = _said(filler, "lathe.name")
    return TitleBlock(
        title=route.file.title,
        shop=_said(filler, "job.shop"),
        machine=machine,
        machine_detail=(where,) if where else (),
        number=_said(filler, "job.number"),
        revision=_said(filler, "job.revision"),
        date=_said(filler, "job.date"),
        author=_said(filler, "job.author") or "not named",
        approver=_said(filler, "job.approver"),
        owner=filler.case.judge(knowledge.page.owner_when).truth is Truth.YES,
        use_level=knowledge.page.use_level,
        operator=_said(filler, "job.operator"),
        technical_reviewer=_said(filler, "job.technical_reviewer"),
        safety_reviewer=_said(filler, "job.safety_reviewer"),
        stated=_said(filler, "job.status"),
        control=entries(filler, about(route, knowledge.page.control)),
        changes=changes_said(filler),
        generator=GENERATOR,
        inputs=inputs_of(filler),
        walked_through=_said(filler, "job.walked_through"),
        review_due=_said(filler, "sop.review_due"),
        overdue=bool(filler.case.value("sop.review_overdue")),
        paper=_said(filler, "job.paper"),
        knowledge_version=knowledge.version,
        checksum="",
        dials=_said(filler, "lathe.dials"),
        valid_for=f"Only for {machine}, with the stock and tools named here. Void when any of them changes.",
    )


def _needs(filler: Filler, made: tuple[Phase, ...]) -> tuple[Need, ...]:
    used: dict[str, list[str]] = {}
    for phase in made:
        for step in phase.steps:
            for tool in step.tools:
                used.setdefault(tool, []).append(step.number)
    listed = filler.case.knowledge.needs
    return tuple(
        Need(
            id=name,
            kind=listed[name].file.kind,
            name=filler.text(listed[name].name),
            detail=filler.text(listed[name].detail),
            amount=filler.text(listed[name].amount),
            in_shop=filler.case.judge(listed[name].have).truth is Truth.YES,
            used_at=tuple(used[name]),
        )
        for name in listed
        if name in used
    )


def _cut_list(filler: Filler) -> tuple[Cut, ...]:
    return tuple(
        Cut(
            piece=cut.file.piece,
            count=cut.file.count,
            material=words_of(filler.text(cut.material)),
            size=filler.text(cut.size),
            saw_to=filler.text(cut.saw_to),
            buy=_figure_or_none(filler, cut.file.buy),
            mass_to_buy=_figure_or_none(filler, cut.file.mass_to_buy),
            mass_finished=_figure_or_none(filler, cut.file.mass_finished),
        )
        for cut in filler.case.knowledge.page.cuts
        if filler.case.judge(cut.when).truth is Truth.YES
    )


def _figure_or_none(filler: Filler, fact: str | None) -> Figure | None:
    return filler.figure(fact) if fact else None


def _look_up(filler: Filler) -> LookUp:
    table = filler.fact("align.table")

    def cell(name: str, value: float | None) -> Figure | None:
        if value is None:
            return None
        spec = table.spec.fields[name]
        return Figure(fact=f"align.table.{name}", value=value, unit=spec.unit, rounding="difference")

    def known(name: str) -> Figure | None:
        return filler.figure(name) if isinstance(filler.case.get(name), Fact) else None

    verdict = bool(filler.case.value("align.verdict_possible"))
    rows = [(cell("difference", row["difference"]), cell("move", row["move"])) for row in table.value]
    larger, smaller = ways(filler.case)
    return LookUp(
        can_move=can_move(filler.case),
        rows=tuple(Move(difference=difference, move=move) for difference, move in rows if difference is not None),
        larger_at_tailstock=larger,
        smaller_at_tailstock=smaller,
        inside=known("align.inside") if verdict else None,
        outside=known("align.outside") if verdict else None,
        leave=known("align.leave_up_to"),
        verdict_possible=verdict,
        lines=tuple(
            filler.text(one.text)
            for one in filler.case.knowledge.says
            if one.file.part == "record-table" and filler.case.judge(one.when).truth is Truth.YES
        ),
    )


def _findings(filler: Filler, route: Route) -> tuple[Finding, ...]:
    said = (
        Finding(
            level=note.file.level,
            text=filler.text(note.text),
            sources=tuple(note.file.sources),
            shop_rule=filler.case.knowledge.shop.mark("note", note.file.id),
        )
        for note in filler.case.knowledge.notes
        if route.has_to_do_with(note.file.concerns) and filler.case.judge(note.when).truth is Truth.YES
    )
    return (*unsaid(filler, route), *said)
