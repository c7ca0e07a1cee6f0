"""The standing procedure of a shared shop, made from the finished steps of a tree and the texts of ``knowledge/sop``."""

from collections.abc import Iterable, Iterator
from contextlib import suppress
from typing import Any, Literal

from tailtrue.assemble.control import GENERATOR, changes_said, inputs_of, known
from tailtrue.assemble.filling import Filler
from tailtrue.assemble.signs import signs_of
from tailtrue.case import Gap
from tailtrue.parts import Caution
from tailtrue.procedure import Procedure, Step
from tailtrue.shop_sheet import (
    Control,
    EmergencyRow,
    Entry,
    Form,
    FormLine,
    GuardRow,
    HazardRow,
    LimitRow,
    Line,
    Reference,
    ShopSheet,
    Sign,
    Signatory,
    UpkeepRow,
    WearRow,
    WhoRow,
    WhoStep,
)
from tailtrue.store.knowledge import Route
from tailtrue.store.sop import Entry as EntryText
from tailtrue.store.sop import FormText, Paper, Rule, SopTexts, belonging
from tailtrue.store.sop_models import Part, SopControlFile, SopEmergencyFile, SopLimitFile, SopPageFile
from tailtrue.truth import Truth


def sop_sheet(filler: Filler, tree: Procedure, route: Route) -> ShopSheet:
    """The standing procedure that goes with a procedure whose phases and cautions are made."""
    done = {activity for phase in tree.phases for step in phase.steps for activity in step.activities}
    texts = belonging(filler.case.knowledge.sop, route.has_to_do_with, done)
    page = texts.page.file
    paper = texts.papers[route.file.id]
    scope = Line(id="scope", text=filler.text(paper.scope), sources=tuple(page.sources))
    hazards = tuple(_hazards(tree, page))
    worn = tuple(
        WearRow(
            state=rule.file.state,
            machine=rule.file.machine,
            required=tuple(filler.text(text) for text in rule.texts["required"]),
            forbidden=tuple(filler.text(text) for text in rule.texts["forbidden"]),
            signs=tuple(rule.file.signs),
            never_signs=tuple(rule.file.never_signs),
            sources=tuple(rule.file.sources),
        )
        for rule in texts.wear
        if _may_hold(filler, rule)
    )
    return ShopSheet(
        made_unasked=filler.case.judge(texts.page.when).truth is Truth.YES,
        control=_control(filler, texts, tree, paper),
        photo=filler.text(texts.page.text("photo")),
        first=_lines(filler, texts, "first"),
        banners=_lines(filler, texts, "banner"),
        scope=(scope, *_lines(filler, texts, "scope")),
        who=tuple(_who(tree)),
        training=_lines(filler, texts, "training"),
        supervision=_lines(filler, texts, "supervision"),
        local=_entries(filler, texts.places),
        hazards=hazards,
        hazard_note=_lines(filler, texts, "hazard-note"),
        signs=_signs(filler, hazards, worn),
        wear=worn,
        guards=tuple(_guards(filler, texts.controls)),
        before=_lines(filler, texts, "before"),
        during=_lines(filler, texts, "during"),
        after=_lines(filler, texts, "after"),
        forbidden=_lines(filler, texts, "forbidden"),
        limits=tuple(_told(filler, texts.limits)),
        shop_rules=tree.shop_rules,
        upkeep=tuple(
            UpkeepRow(
                every=rule.file.every,
                task=filler.text(rule.text("task")),
                who=(tree.title.owner and rule.file.owner) or rule.file.who,
                sources=tuple(rule.file.sources),
            )
            for rule in texts.upkeep
            if _may_hold(filler, rule)
        ),
        isolation=_lines(filler, texts, "isolation"),
        emergency=tuple(_emergencies(filler, texts.emergency, tree)),
        waste=_lines(filler, texts, "waste"),
        records=_lines(filler, texts, "records"),
        acknowledgement=_lines(filler, texts, "acknowledgement"),
        roster_rows=0 if _owner(filler) else page.roster_rows,
        forms=tuple(_form(filler, form, owner=tree.title.owner) for form in texts.forms),
        references=tuple(_references(filler)),
    )


def limits_met(filler: Filler, activities: set[str], *, turns: bool) -> Iterator[LimitRow]:
    """The limits that steps with these activities meet; one whose value nobody told is no limit of this job."""
    limits = (one for one in filler.case.knowledge.sop.limits if turns or not one.file.turning)
    return _told(filler, (one for one in limits if activities.intersection(one.file.activities)))


def _told(filler: Filler, rules: Iterable[Rule[SopLimitFile]]) -> Iterator[LimitRow]:
    for rule in rules:
        if _may_hold(filler, rule):
            with suppress(Gap):
                yield _limit(filler, rule)


def _limit(filler: Filler, rule: Rule[SopLimitFile]) -> LimitRow:
    return LimitRow(
        label=rule.file.label,
        limit=filler.text(rule.text("value")),
        beyond=filler.text(rule.text("beyond")),
        back=filler.text(rule.text("back")),
        sources=tuple(rule.file.sources),
    )


def sop_sources(tree: Procedure) -> Iterator[str]:
    """Every source that the standing procedure of a tree names."""
    if (sop := tree.sop) is None:
        return
    lines = (
        sop.first, sop.banners, sop.scope, sop.training, sop.supervision, sop.hazard_note, sop.before,
        sop.during, sop.after, sop.forbidden, sop.isolation, sop.waste, sop.records, sop.acknowledgement,
    )  # fmt: skip
    for line in (line for part in lines for line in part):
        yield from line.sources
    for rows in (sop.wear, sop.guards, sop.limits, sop.upkeep, sop.emergency):
        for row in rows:
            yield from row.sources
    yield from (reference.source for reference in sop.references)


def _may_hold(filler: Filler, rule: Rule[Any]) -> bool:
    return filler.case.judge(rule.when).truth is not Truth.NO


def _owner(filler: Filler) -> bool:
    """Whether the shop is of one: nobody else is trained, supervised or signs."""
    return filler.case.judge(filler.case.knowledge.page.owner_when).truth is Truth.YES


def _lines(filler: Filler, texts: SopTexts, part: Part) -> tuple[Line, ...]:
    """The lines of a part that hold, and those that may hold and are shown then."""
    found = []
    for rule in texts.lines:
        if rule.file.part != part or (rule.file.others and _owner(filler)):
            continue
        truth = filler.case.judge(rule.when).truth
        if truth is Truth.YES or (truth is Truth.UNKNOWN and rule.file.if_unknown == "show"):
            found.append(Line(id=rule.file.id, text=filler.text(rule.text("text")), sources=tuple(rule.file.sources)))
    return tuple(found)


def _entries(filler: Filler, entries: Iterable[EntryText]) -> tuple[Entry, ...]:
    """The particulars that belong on this paper."""
    here = (one for one in entries if filler.case.judge(one.when).truth is Truth.YES)
    return tuple(Entry(label=one.label, value=known(filler, one.value)) for one in here)


def _said(filler: Filler, name: str | None) -> str | None:
    return str(filler.case.value(name) or "") or None if name else None


def _control(filler: Filler, texts: SopTexts, tree: Procedure, paper: Paper) -> Control:
    case, page = filler.case, texts.page.file
    return Control(
        id="".join(map(str, filler.text(texts.page.text("id")))),
        title="".join(map(str, filler.text(paper.title))),
        type=page.type_owner if tree.title.owner else page.type,
        revision=tree.title.revision,
        status=case.value("sop.status"),
        issued=tree.title.date,
        review_due=case.value("sop.review_due"),
        review_because=filler.fact("sop.review_due").limited_by,
        overdue=case.value("sop.review_overdue"),
        language=page.language,
        use_level=page.use_level,
        valid_for=tree.title.valid_for,
        generator=GENERATOR,
        rules=tree.title.knowledge_version,
        inputs=inputs_of(filler),
        entries=_entries(filler, texts.control),
        last_reviewed=known(filler, texts.page.text("last_reviewed")),
        changes=changes_said(filler),
        signatories=tuple(
            Signatory(role=role.role, name=_said(filler, role.name), day=_said(filler, role.day))
            for role in page.role
            if role.owner == tree.title.owner
        ),
    )


def _who(tree: Procedure) -> Iterator[WhoRow]:
    for phase in tree.phases:

        def by(who: Literal["any", "supervised", "staff"], steps: Iterable[Step] = phase.steps) -> tuple[WhoStep, ...]:
            return tuple(WhoStep(number=step.number, title=step.title) for step in steps if step.who == who)

        yield WhoRow(phase=phase.number, title=phase.title, any=by("any"), supervised=by("supervised"), staff=by("staff"))


def _hazards(tree: Procedure, page: SopPageFile) -> Iterator[HazardRow]:
    """Every danger, the worst of the likely hazards and those that the shop speaks of, each once, dangers first.

    Where few are as bad as that, the worst of the others fill the table: work with little to fear has its own worst.
    """
    every: dict[str, Caution] = {caution.id: caution for caution in tree.job_cautions}
    for phase in tree.phases:
        every.update({caution.id: caution for caution in phase.cautions})
        every.update({caution.id: caution for step in phase.steps for caution in step.cautions})

    def bad(one: Caution) -> bool:
        likely = one.severity >= page.hazards_at_least and one.likelihood >= page.likely_at_least
        return one.signal == "danger" or bool(one.shop_rule) or likely

    def rank(one: Caution) -> tuple[bool, int, int, str]:
        return one.signal != "danger", -one.severity, -one.likelihood, one.id

    worst = [one for one in every.values() if bad(one)]
    others = sorted((one for one in every.values() if not bad(one)), key=rank)
    worst += others[: max(page.hazards_fewest - len(worst), 0)]
    for caution in sorted(worst, key=rank):
        yield HazardRow(
            caution=caution.id,
            signal=caution.signal,
            signs=caution.signs,
            hazard=caution.hazard,
            harm=caution.harm,
            avoid=caution.avoid[0],
            shop_rule=caution.shop_rule,
            shop_says=caution.avoid[-caution.of_shop] if caution.of_shop else (),
        )


def _signs(filler: Filler, hazards: Iterable[HazardRow], worn: Iterable[WearRow]) -> tuple[Sign, ...]:
    codes = [code for hazard in hazards for code in hazard.signs]
    codes += [code for row in worn for code in (*row.signs, *row.never_signs)]
    return signs_of(filler.case.knowledge, codes)


def _guards(filler: Filler, rules: Iterable[Rule[SopControlFile]]) -> Iterator[GuardRow]:
    """One row for each thing that protects: the state that holds, or the worst that may; the worst stands last."""
    by_name: dict[str, list[tuple[Truth, Rule[SopControlFile]]]] = {}
    for rule in rules:
        by_name.setdefault(rule.file.name, []).append((filler.case.judge(rule.when).truth, rule))
    for name, judged in by_name.items():
        holds = [rule for truth, rule in judged if truth is Truth.YES]
        may = [rule for truth, rule in judged if truth is Truth.UNKNOWN]
        for rule in holds[:1] or may[-1:]:
            yield GuardRow(
                name=name,
                state=filler.text(rule.text("state")),
                means=filler.text(rule.text("means")),
                sources=tuple(rule.file.sources),
            )


def _emergencies(filler: Filler, rules: Iterable[Rule[SopEmergencyFile]], tree: Procedure) -> Iterator[EmergencyRow]:
    """What is said here, and what the sheet says; what its own table leaves out has no place in this work."""
    on_sheet = {seen: (do, never) for seen, do, never in tree.if_it_goes_wrong}
    for rule in rules:
        seen, sources = rule.file.seen, tuple(rule.file.sources)
        if not _may_hold(filler, rule):
            continue
        if rule.file.do:
            do, never = filler.text(rule.text("do")), filler.text(rule.text("never"))
        elif seen in on_sheet:
            do, never = on_sheet[seen]
        else:
            continue
        yield EmergencyRow(seen=seen, do=do, never=never, sources=sources)


def _form(filler: Filler, form: FormText, *, owner: bool) -> Form:
    places = (label for label in form.file.blanks if not (owner and label in form.file.others))
    return Form(
        id=form.file.id,
        title=form.file.title,
        lead=filler.text(form.lead_owner if owner else form.lead),
        at_lathe=form.file.at_lathe,
        places=tuple(
            FormLine(
                label=label,
                high=label in form.file.high,
                value=known(filler, form.given[label]) if label in form.given else None,
            )
            for label in places
        ),
    )


def _references(filler: Filler) -> Iterator[Reference]:
    knowledge = filler.case.knowledge
    for reference in knowledge.sop.page.file.reference:
        source = knowledge.sources[reference.source]
        yield Reference(source=reference.source, title=source.title, edition=source.edition, idea=reference.idea)
