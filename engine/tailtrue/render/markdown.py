"""A procedure as Markdown: complete, in the order of the page, every word of the user's taken literally."""

from collections.abc import Iterable

from tailtrue.parts import Text
from tailtrue.procedure import Alternative, Derivation, Need, Phase, Procedure
from tailtrue.render.glossary import terms
from tailtrue.render.look_up import look_up_columns
from tailtrue.render.markdown_step import StepWriter
from tailtrue.render.page import Index
from tailtrue.render.plain import bold, boxes, bullets, heading, literal, table
from tailtrue.render.shop_rules import shop_rule_cells
from tailtrue.render.times import attended, phase_clause, waiting
from tailtrue.render.words import (
    APPROVED,
    APPROVED_BY_OWNER,
    BY_HAND,
    BY_HAND_MEANS,
    CHANGED,
    CHANGED_BLANK,
    CHECKSUM,
    CUTS,
    GET_IT,
    HEADINGS,
    HERE,
    KINDS,
    LEAVE,
    LEVELS,
    LIMITS,
    MADE_BY,
    MISSING,
    OPERATOR,
    ORIGINS,
    OVERDUE,
    REVIEW_DUE,
    SAFETY_REVIEW,
    SHOP_RULE,
    SHOP_RULES,
    SHOP_RULES_MEAN,
    STATUS,
    TECHNICAL_REVIEW,
    TIME,
    TROUBLE,
    USE,
    VERDICTS,
    WALKED,
    WALKED_BY_OWNER,
    also_read,
    directions,
    listed,
    look_up_heading,
    may_be,
    say,
    second_column,
    sentence,
    when_to_leave,
)
from tailtrue.review import ReviewLine


def to_markdown(procedure: Procedure) -> str:
    """The whole sheet as one Markdown text."""
    writer = _Writer(procedure)
    return "\n\n".join(block for block in writer.blocks() if block) + "\n"


class _Writer:
    def __init__(self, procedure: Procedure) -> None:
        self._p = procedure
        self._dials = procedure.title.dials
        self._index = Index(procedure)
        self._steps = StepWriter(self._dials, self._index, procedure.drawings)

    def blocks(self) -> Iterable[str]:
        yield from self._title()
        yield from self._drawing()
        yield from self._before()
        yield from self._gathering()
        for phase in self._p.phases:
            yield from self._phase(phase)
        yield from self._look_up()
        yield from self._after()
        yield from self._cut_list()
        yield from self._times()
        yield from self._steps.drawings_at("front")
        yield from self._cautions("also_read", at_back=True)
        yield from self._signs()
        yield from terms(HEADINGS["glossary"], self._p.glossary, self._dials)
        yield from self._reasons()
        yield from self._control()

    def _text(self, text: Text) -> str:
        return literal(say(text, self._dials))

    def _bulleted(self, key: str, lines: tuple[Text, ...]) -> Iterable[str]:
        yield heading(2, HEADINGS[key])
        yield bullets(self._text(line) for line in lines)

    def _title(self) -> Iterable[str]:
        title = self._p.title
        yield heading(1, title.title)
        yield f"{bold(title.machine)} {self._text(title.machine_detail)}"
        stock = "; ".join(say(need.name, self._dials) for need in self._p.needs if need.kind == "stock")
        rows = (
            ("Sheet", f"{title.number} rev {title.revision}"),
            ("Date", title.date),
            (STATUS, title.status),
            (OPERATOR, title.operator),
            (CHECKSUM, title.checksum),
            ("Shop", title.shop),
            *(((KINDS["stock"], stock),) if stock else ()),
            ("Valid for", title.valid_for),
        )
        if title.overdue:
            yield bold(OVERDUE)
        yield table(("Sheet", "Identity"), ((bold(name), literal(value)) for name, value in rows))
        yield self._text(self._p.lead)

    def _control(self) -> Iterable[str]:
        title = self._p.title
        reviewers = ((TECHNICAL_REVIEW, title.technical_reviewer), (SAFETY_REVIEW, title.safety_reviewer))
        reviewed = () if title.owner else tuple((role, name or "____________") for role, name in reviewers)
        rows = (
            ("Written by", title.author or "-"),
            (USE, title.use_level),
            *((line.label, "____________" if line.value is None else self._text(line.value)) for line in title.control),
            *((CHANGED, f"{sentence(one.what)} {sentence(one.why)}") for one in title.changes),
            *(() if title.changes else ((CHANGED_BLANK, "____________"),)),
            *reviewed,
            (WALKED_BY_OWNER if title.owner else WALKED, title.walked_through or "____________"),
            (APPROVED_BY_OWNER if title.owner else APPROVED, title.approver or "____________"),
            ("Done by, on", "____________"),
            (MADE_BY, f"{title.generator}, rules {title.knowledge_version}, from files {title.inputs}"),
            (REVIEW_DUE, title.review_due),
        )
        yield heading(2, HEADINGS["control"])
        yield table(("Line", "Said"), ((bold(name), literal(value)) for name, value in rows))

    def _drawing(self) -> Iterable[str]:
        if self._p.drawing is not None:
            yield from self._steps.drawing(self._p.drawing)

    def _before(self) -> Iterable[str]:
        p = self._p
        yield heading(2, HEADINGS["facts"])
        rows = ((bold(say(fact.label, self._dials)), self._text(fact.value), self._text(fact.reason)) for fact in p.facts)
        yield table(("Fact", "Value", "Note"), rows)
        if p.findings:
            yield heading(2, HEADINGS["findings"])
            yield bullets(
                f"{bold(LEVELS[finding.level] + '.')} {self._text(finding.text)}"
                + (f" {bold(SHOP_RULE)} {literal(finding.shop_rule)}." if finding.shop_rule else "")
                + (f" ({literal('; '.join(finding.sources))})" if finding.sources else "")
                for finding in p.findings
            )
        if p.shop_rules:
            yield heading(2, HEADINGS["shop_rules"])
            yield literal(SHOP_RULES_MEAN)
            yield table(SHOP_RULES, shop_rule_cells(p.shop_rules, p.title.dials))
        if p.set_by_hand:
            yield heading(2, HEADINGS["set_by_hand"])
            yield literal(BY_HAND_MEANS)
            hand_set = (
                (
                    bold(one.label),
                    bold(say((one.value,), self._dials)),
                    self._text((one.worked_out,)),
                    self._text(may_be(one)),
                    literal(one.reason),
                    literal(one.initials),
                )
                for one in p.set_by_hand
            )
            yield table(BY_HAND, hand_set)
        yield from self._bulleted("who_may", p.who_may)
        yield from self._bulleted("do_not_start", p.do_not_start)
        yield from self._bulleted("stop_at_once", p.stop_at_once)
        yield from self._bulleted("after_a_stop", p.after_a_stop)
        yield from self._bulleted("emergency", p.in_emergency)
        yield bullets(self._emergency(line) for line in p.safety_review.emergency)
        yield from self._cautions("job_cautions", at_back=False)
        named = " ".join(literal(sentence(caution.hazard)) for caution in p.job_cautions if caution.at_back)
        if named:
            yield f"{bold(also_read(p.title.number, p.phases[0].steps[0].number))} {named}"

    def _cautions(self, key: str, *, at_back: bool) -> Iterable[str]:
        cautions = [caution for caution in self._p.job_cautions if caution.at_back is at_back]
        if cautions:
            yield heading(2, HEADINGS[key])
        for caution in cautions:
            yield self._steps.caution(caution)

    def _signs(self) -> Iterable[str]:
        if self._p.signs:
            yield heading(2, HEADINGS["signs"])
            signs = sorted(self._p.signs, key=lambda one: one.code)
            yield bullets(f"{bold(sign.code)} {literal(sign.words)}" for sign in signs)

    def _gathering(self) -> Iterable[str]:
        p = self._p
        yield heading(2, HEADINGS["needs"])
        yield literal(HERE)
        for kind, name in KINDS.items():
            needs = [need for need in p.needs if need.kind == kind]
            if needs:
                yield heading(3, name)
                yield boxes(self._need(need) for need in needs)
        yield from self._bulleted("conventions", p.conventions)

    def _cut_list(self) -> Iterable[str]:
        p = self._p
        if not p.cut_list:
            return
        yield heading(2, HEADINGS["cut_list"])
        rows = (
            (
                literal(cut.piece),
                str(cut.count),
                literal(cut.material),
                self._text(cut.size),
                self._text(cut.saw_to),
                *(self._text((one,)) if one else "" for one in (cut.buy, cut.mass_to_buy, cut.mass_finished)),
            )
            for cut in p.cut_list
        )
        yield table(("Piece", "How many", "Material", "Stock", "Saw to", *CUTS.values()), rows)

    def _times(self) -> Iterable[str]:
        plan = self._p.time
        if plan is None:
            return
        rows = [(f"{phase.number} {phase.title}", phase.time) for phase in self._p.phases if phase.time]
        lines = (
            (literal(name), literal(attended(span, self._dials)), literal(waiting(span, self._dials)))
            for name, span in (*rows, (TIME["total"], plan.total))
        )
        yield heading(2, HEADINGS["time"])
        yield table((TIME["work"], TIME["attended"], TIME["waiting"]), lines)
        yield bullets(self._text(line) for line in plan.notes)

    def _need(self, need: Need) -> str:
        parts = [bold(say(need.name, self._dials))]
        if need.amount:
            parts.append(self._text(need.amount))
        if need.detail:
            parts.append(self._text(need.detail))
        if not need.in_shop:
            parts.insert(0, bold(GET_IT))
        used = self._index.step_numbers(need.used_at)
        return ", ".join([*parts, f"steps {literal(used)}"] if used else parts)

    def _phase(self, phase: Phase) -> Iterable[str]:
        yield heading(2, f"{phase.number} {phase.title}")
        if phase.each:
            yield f"For {literal(listed(phase.each))}, one after the other."
        yield self._text(phase.purpose)
        if phase.time:
            yield bold(phase_clause(phase, self._dials))
        for caution in phase.cautions:
            yield self._steps.caution(caution)
        for step in phase.steps:
            yield from self._steps.step(step)

    def _look_up(self) -> Iterable[str]:
        look_up = self._p.look_up
        if look_up is None:
            return
        yield heading(2, look_up_heading(look_up))
        differences, moves = look_up_columns(look_up, self._dials)
        head = [
            f"{words}, {column.unit}" if column.unit else words
            for words, column in (("Collars differ by", differences), (second_column(look_up)[0], moves))
        ]
        pairs = zip(differences.numbers, moves.numbers, strict=True)
        rows = ((literal(difference or ""), bold(move) if move else LEAVE) for difference, move in pairs)
        yield table(head, rows)
        yield bullets(f"**{case}:** {bold(direction)}" for case, direction in directions(look_up))
        for leave in when_to_leave(look_up):
            yield self._text(leave)
        if look_up.lines:
            yield " ".join(map(self._text, look_up.lines))

    def _after(self) -> Iterable[str]:
        if self._p.limits:
            yield heading(2, HEADINGS["limits"])
            limits = (
                (f"{bold(row.label)}: {self._text(row.limit)}", self._text(row.beyond), self._text(row.back))
                for row in self._p.limits
            )
            yield table(LIMITS, limits)
        yield heading(2, HEADINGS["trouble"])
        rows = ((bold(seen), self._text(do), self._text(never)) for seen, do, never in self._p.if_it_goes_wrong)
        yield table(TROUBLE, rows)
        if self._p.care:
            yield from self._bulleted("care", self._p.care)

    def _emergency(self, line: ReviewLine) -> str:
        places = " ".join(f"{literal(blank.label)} {literal('____________')}" for blank in line.blanks)
        said = self._text(line.answer) if line.answer is not None else f"{bold(MISSING)} {places}"
        return f"{bold(say(line.text, self._dials))}: {said}"

    def _because(self, way: Alternative) -> str:
        return f"{literal(way.reason)}. {self._text(way.figures)}" if way.figures else literal(way.reason)

    def _reasons(self) -> Iterable[str]:
        if self._p.choices:
            yield heading(2, HEADINGS["choices"])
        for choice in self._p.choices:
            yield heading(3, f"{choice.question} {choice.chosen}")
            ways = (
                (literal(way.name), bold(VERDICTS[way.verdict]), self._because(way), literal(way.why))
                for way in choice.alternatives
            )
            yield table(("Way", "Verdict", "Because", "Otherwise"), ways)
            yield f"Source: {literal('; '.join(choice.sources))}"
        yield heading(2, HEADINGS["derivations"])
        yield table(
            ("Number", "Value", "How", "From", "Source", "Weakest source"),
            map(self._derivation, self._p.derivations),
        )
        yield heading(2, HEADINGS["sources"])
        sources = (
            (
                literal(source.id),
                literal(source.kind),
                literal(source.title),
                literal(source.edition),
                literal(source.status),
            )
            for source in self._p.sources
        )
        yield table(("Key", "Kind", "Title", "Edition", "Status"), sources)

    def _derivation(self, one: Derivation) -> tuple[str, ...]:
        how = literal(one.how)
        if one.by_hand:
            how += f" **{self._text(one.by_hand)}**"
        if one.limited_by:
            how += f" **Limited by:** {self._text(one.limited_by)}"
        read = ", ".join(self._index.label_of(fact) for fact in one.read)
        value = bold(say(one.value, self._dials))
        return (
            literal(one.label),
            value,
            how,
            literal(read),
            literal("; ".join(one.sources)),
            ORIGINS[one.weakest],
        )
