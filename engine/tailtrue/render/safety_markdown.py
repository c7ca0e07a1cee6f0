"""The safety review as Markdown: everything the page says, in its order."""

from collections.abc import Iterable

from tailtrue.parts import Blank, Text
from tailtrue.procedure import Procedure
from tailtrue.render import safety_words as safety
from tailtrue.render.glossary import terms
from tailtrue.render.plain import bold, bullets, heading, literal, table
from tailtrue.render.safety_page import ReviewPage, figures_of, legend_of
from tailtrue.render.words import HEADINGS, OVERDUE, REVIEW_DUE, SHOP_RULE, say, sentence
from tailtrue.review import Control, Rating, ReviewedHazard, ReviewLine, Signature

_BLANK = "____________"


def to_safety_markdown(procedure: Procedure) -> str:
    """The review as Markdown."""
    writer = _Writer(procedure, ReviewPage(procedure))
    return "\n\n".join(block for block in writer.blocks() if block) + "\n"


class _Writer:
    """Writes the review of one procedure."""

    def __init__(self, procedure: Procedure, view: ReviewPage) -> None:
        self._p = procedure
        self._r = procedure.safety_review
        self._view = view

    def blocks(self) -> Iterable[str]:
        """Every block of the text, in order."""
        yield from self._head()
        yield from self._rated()
        yield from self._hazards()
        yield from self._high()
        yield from self._ways()
        yield from self._people()
        yield from self._worst()
        yield from self._stops()
        yield literal(legend_of(self._p))
        yield from terms(HEADINGS["glossary"], self._r.glossary, self._p.title.dials)
        yield heading(2, safety.HEADINGS["signatures"])
        yield bullets(self._signature(one) for one in self._r.signatures)

    def _text(self, text: Text) -> str:
        return literal(say(text, self._p.title.dials))

    def _head(self) -> Iterable[str]:
        title = self._p.title
        yield heading(1, self._r.title)
        yield f"{bold(title.machine)} {self._text(title.machine_detail)}"
        sheet = f"{title.shop}, sheet {title.number} rev {title.revision} of {title.date}, {title.standing}"
        due = bold(f"{REVIEW_DUE} {title.review_due}.")
        yield f"{bold(title.title)} {literal(f'{sheet}, checksum {title.checksum}, rules {title.knowledge_version}')}. {due}"
        if title.overdue:
            yield bold(OVERDUE)
        yield self._lines(self._r.head)
        yield " ".join(self._text(line) for line in self._r.lead)

    def _rated(self) -> Iterable[str]:
        matrix = self._r.matrix
        yield heading(2, safety.HEADINGS["matrix"])
        severities = (f"{place} {self._text(words)}" for place, words in enumerate(matrix.severities, start=1))
        rows = (
            (f"{bold(str(number))} {literal(words)}", *(f"{bold(str(score))} {band}" for score, band in cells))
            for number, words, cells in self._view.matrix_rows()
        )
        yield table((safety.MATRIX, *severities), rows)
        weak = safety.WEAK.format(severity=matrix.weak_from_severity, likelihood=matrix.weak_least_likelihood)
        yield bullets(
            (
                *(
                    f"{bold(one.band)}, {one.low} to {one.high}: {sentence(self._text(one.action))}"
                    for one in matrix.classes
                ),
                *(self._text(rule) for rule in matrix.rules),
                f"{literal(safety.LOWERS)}: {literal(self._view.lowers())}. {literal(weak)}",
            )
        )

    def _hazards(self) -> Iterable[str]:
        yield heading(2, safety.HEADINGS["hazards"])
        yield f"{literal(safety.USUAL.format(who=self._r.usual_person))} {literal(safety.NOT_COUNTED)}"
        for part, hazards in self._view.groups():
            yield heading(3, f"{part.id} {part.title}")
            where = safety.WHERE.format(steps=self._view.runs(part.used_at), machine=", ".join(part.machine))
            yield literal(where if hazards else f"{where} {safety.ABOVE}")
            if hazards:
                yield table(safety.HAZARDS, (self._hazard(hazard) for hazard in hazards))

    def _hazard(self, hazard: ReviewedHazard) -> tuple[str, ...]:
        said = [bold(hazard.signal.upper()), bold(sentence(hazard.hazard)), literal(sentence(hazard.harm))]
        if hazard.shop_rule:
            said.append(bold(SHOP_RULE))
        if who := self._view.named(hazard):
            said.append(literal(sentence(who.capitalize())))
        if also := self._view.also(hazard):
            said.append(literal(f"{safety.ALSO} {also}"))
        controls = " ".join(self._control(control) for control in self._view.controls(hazard))
        return bold(hazard.number), " ".join(said), _rating(hazard.before), _rating(hazard.after), controls

    def _control(self, control: Control) -> str:
        state = f" ({safety.STATES[control.state]})" if control.state != "counted" else ""
        return f"**{safety.LEVELS[control.level]}{state}:** {literal(sentence(control.text))}"

    def _high(self) -> Iterable[str]:
        yield heading(2, safety.HEADINGS["high"])
        high = self._view.high()
        if not high:
            yield literal(safety.NO_HIGH)
            return
        yield table(safety.HIGH, (self._held(hazard) for hazard in high))
        yield bullets([self._signature(self._r.accepts)])

    def _held(self, hazard: ReviewedHazard) -> tuple[str, ...]:
        held = ""
        if hazard.held is not None:
            step = f", {safety.STEP.format(step=hazard.held.hold_step)}" if hazard.held.hold_step else ""
            held = bold(sentence(f"{safety.HELD[hazard.held.by]}{step}".capitalize()))
        wanting = "; ".join(literal(control.text) for control in self._view.wanting(hazard))
        would = f" {safety.WOULD}: {wanting}." if wanting else ""
        return bold(hazard.number), literal(sentence(hazard.hazard)), _rating(hazard.after), held + would, literal(_BLANK)

    def _ways(self) -> Iterable[str]:
        yield heading(2, safety.HEADINGS["ways"])
        rows = (
            (
                bold(way.hazard.capitalize()),
                literal(sentence(way.way)),
                bold(safety.VERDICTS[way.verdict]),
                sentence(self._text(way.because)),
            )
            for way in self._r.eliminations
        )
        yield table(safety.WAYS, rows)
        if self._r.near_misses:
            yield heading(2, safety.HEADINGS["near"])
            yield table(
                safety.NEAR,
                (
                    (bold(sentence(near.title)), literal(sentence(near.short_by)), literal(sentence(near.what_happens)))
                    for near in self._r.near_misses
                ),
            )

    def _people(self) -> Iterable[str]:
        yield heading(2, safety.HEADINGS["people"])
        yield self._lines(self._r.people)
        yield heading(3, safety.HEADINGS["alone"])
        yield self._lines(self._r.alone)
        yield heading(2, safety.HEADINGS["wear"])
        rows = (
            (
                bold(state.title),
                sentence(", ".join(self._text(one) for one in state.wear)),
                " ".join(bold(say(one, self._p.title.dials)) for one in state.never),
            )
            for state in self._r.wear
        )
        yield table(safety.WEAR, rows)

    def _worst(self) -> Iterable[str]:
        yield heading(2, safety.HEADINGS["isolation"])
        yield self._lines(self._r.isolation)
        if self._r.chemicals:
            yield heading(2, safety.HEADINGS["chemicals"])
            labels = [blank.label.capitalize() for blank in self._r.chemicals[0].blanks]
            rows = ((self._text(one.name), *(literal(_BLANK) for _ in one.blanks)) for one in self._r.chemicals)
            yield table((*safety.CHEMICALS, *labels), rows)
        yield heading(2, safety.HEADINGS["checks"])
        yield literal(safety.KILLER)
        for checks in self._r.checks:
            yield heading(3, checks.title)
            yield table(
                safety.CHECKS,
                (
                    (
                        bold("\u25a0") if line.killer else "",
                        bold(say(line.item, self._p.title.dials)),
                        self._text(line.passes),
                        self._text(line.otherwise),
                        self._blanks(line.blanks) + (f" {safety.NOT_APPLICABLE} ☐" if line.not_applicable else ""),
                    )
                    for line in checks.lines
                ),
            )
            yield f"- [ ] {bold(checks.ends_with)}"
        yield heading(2, safety.HEADINGS["emergency"])
        yield literal(safety.BOXED)
        yield bullets(
            f"{bold(say(line.text, self._p.title.dials))}: {self._text(line.answer)}"
            if line.answer is not None
            else f"{bold(say(line.text, self._p.title.dials))}: {bold(safety.MISSING)} {self._blanks(line.blanks)}"
            for line in self._r.emergency
        )

    def _stops(self) -> Iterable[str]:
        for key, lines in (("do_not_start", self._p.do_not_start), ("stop_at_once", self._p.stop_at_once)):
            yield heading(2, HEADINGS[key])
            yield bullets(self._text(line) for line in lines)

    def _lines(self, lines: tuple[ReviewLine, ...]) -> str:
        return bullets(f"{self._text(line.text)} {self._answer(line)}" for line in lines)

    def _answer(self, line: ReviewLine) -> str:
        return self._blanks(line.blanks) if line.answer is None else bold(say(line.answer, self._p.title.dials))

    def _blanks(self, blanks: tuple[Blank, ...]) -> str:
        parts = []
        for blank in blanks:
            unit = f" {literal(self._view.unit(blank))}" if blank.unit else ""
            parts.append(f"{literal(blank.label)} " + " ".join([f"{literal(_BLANK)}{unit}"] * blank.count))
        return " ".join(parts)

    def _signature(self, one: Signature) -> str:
        places = " ".join(f"{literal(name)} {literal(_BLANK)}" for name in safety.NAME_DATE)
        return f"{bold(sentence(one.role.capitalize()))} {self._text(one.text)} {places}"


def _rating(rating: Rating) -> str:
    return f"{literal(figures_of(rating))} {bold(rating.band)}"
