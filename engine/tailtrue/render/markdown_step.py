"""Steps and safety messages in Markdown."""

from collections.abc import Iterable

from tailtrue.parts import Caution, Check, Dials, Setting, Text
from tailtrue.procedure import Drawing, Hold, Step
from tailtrue.render.figures.speed_plate import lever_of, plate_rows, settings_of
from tailtrue.render.numbers import show_limits, show_one, unit_name
from tailtrue.render.page import Index
from tailtrue.render.plain import bold, boxes, bullets, heading, literal, quote, table
from tailtrue.render.times import step_clause
from tailtrue.render.words import PLATE, SET_AT, SHOP_RULE, STATES, WHO, dimension, goes_on_words, say, sentence, void_words

_BLANK = "____________"


class StepWriter:
    """Writes the steps of one procedure."""

    def __init__(self, dials: Dials, index: Index, drawings: tuple[Drawing, ...] = ()) -> None:
        self._dials = dials
        self._drawings = drawings
        self._levers = settings_of(drawings)
        self._index = index

    def caution(self, caution: Caution) -> str:
        """A safety message as a block quote: the word, the hazard and its harm, how it is avoided."""
        first = f"**{caution.signal.upper()}** {bold(sentence(caution.hazard))} {literal(sentence(caution.harm))}"
        shipped = len(caution.avoid) - caution.of_shop
        avoid = " ".join(self._text(line) for line in caution.avoid[:shipped])
        if caution.protective_equipment:
            avoid += f" **Wear:** {literal(', '.join(caution.protective_equipment))}."
        because = f"Shown because {literal(sentence(caution.shown_because))}" if caution.shown_because else ""
        if caution.shop_rule:
            ours = (self._text(line) for line in caution.avoid[shipped:])
            avoid += " ".join(("", bold(SHOP_RULE), *ours, literal(sentence(caution.shop_rule))))
        signs = f"Signs {literal(', '.join(caution.signs))}. " if caution.signs else ""
        return quote((first, avoid, because, f"{signs}Source: {literal('; '.join(caution.sources))}"))

    def step(self, step: Step) -> Iterable[str]:
        """A step: cautions under its heading and before what is done."""
        yield heading(3, f"{step.number} {step.title}")
        tags = (STATES[step.machine], WHO[step.who], step_clause(step, self._dials))
        yield f"({', '.join(tag for tag in tags if tag)})"
        for caution in step.cautions:
            yield self.caution(caution)
        shipped = len(step.text) - step.of_shop
        for place, line in enumerate(step.text):
            yield f"{bold(SHOP_RULE)} {self._text(line)}" if place >= shipped else self._text(line)
        if step.settings:
            rows = ((self._label(one), bold(say(one.value, self._dials)), self._text(one.reason)) for one in step.settings)
            yield table(("Set", "To", "Because"), rows)
        yield from self.drawings_at(step.number)
        for check in step.checks:
            yield self._check(check)
        if step.shop_rule:
            yield f"{bold(SHOP_RULE)} {literal(sentence(step.shop_rule))}"
        if step.why:
            yield f"Why: {self._text(step.why)}"
        if step.tools:
            names = ", ".join(self._text(self._index.need_name(need)) for need in step.tools)
            yield f"Tools: {names}"
        yield boxes(f"**{literal(step.number)}** {literal(label) or 'done'}" for label in step.boxes)
        if step.hold is not None:
            yield self._hold(step, step.hold)

    def drawings_at(self, place: str) -> Iterable[str]:
        """The drawings that stand at a place."""
        for drawing in self._drawings:
            if drawing.place == place:
                yield from self.drawing(drawing)

    def drawing(self, drawing: Drawing) -> Iterable[str]:
        """A drawing told: its dimensions by name, its labels, what it shows."""
        yield bold(drawing.title)
        if plate := plate_rows(drawing):
            told = [(bold(say((speed,), self._dials)), literal(at), literal(uses)) for speed, at, uses in plate]
            said = [at for at in range(len(PLATE)) if at != 1 or any(row[at] for row in told)]  # levers only where known
            yield table([PLATE[at] for at in said], ([row[at] for at in said] for row in told))
            yield literal(drawing.caption)
            return
        sizes = ((literal(dimension(key)), self._text((size,))) for key, size in drawing.dimensions.items())
        if drawing.dimensions:
            yield table(("Dimension", "Size"), sizes)
        yield bullets(f"{literal(dimension(key))}: {literal(word)}" for key, word in drawing.said.items())
        yield bullets(literal(label) for label in drawing.labels.values() if label)
        yield literal(drawing.caption)

    def _text(self, text: Text) -> str:
        return literal(say(text, self._dials))

    def _label(self, setting: Setting) -> str:
        lever = lever_of(setting.value, self._levers)
        return f"{self._text(setting.label)}, {SET_AT} {bold(lever)}" if lever else self._text(setting.label)

    def _check(self, check: Check) -> str:
        parts = [f"**Check:** {self._text(check.text)}"]
        if check.limits is not None:
            parts.append(f"Accept: {bold(show_limits(check.limits, self._dials))}.")
        if check.instrument is not None:
            parts.append(f"With: {self._instrument(check)}.")
        pieces = check.blanks[0].each if check.blanks else ()
        for piece, blank in ((piece, blank) for piece in pieces or ("",) for blank in check.blanks):
            unit = f" {literal(unit_name(blank.unit))}" if blank.unit else ""
            place = f"{literal(_BLANK)}{unit}"
            if blank.abreast > 1:
                # A line for each place that is read, so that none is passed over.
                row = " ".join([place] * blank.abreast)
                rows = (f"{number + 1}: {row}" for number in range(blank.count // blank.abreast))
                parts += [literal(blank.label), *rows]
                continue
            said = ", ".join(filter(None, (piece, blank.label)))
            parts.append(f"{literal(said)} {' '.join([place] * blank.count)}")
        return "  \n".join(parts)

    def _instrument(self, check: Check) -> str:
        words = [self._text(self._index.need_name(check.instrument or ""))]
        if check.resolution is not None:
            words.append(f"reads to {show_one(check.resolution, self._dials)}")
        if check.uncertainty is not None:
            words.append(f"sure to {show_one(check.uncertainty, self._dials)}")
        return ", ".join(words)

    def _hold(self, step: Step, hold: Hold) -> str:
        blank = literal(_BLANK)
        released = f"Released by {literal(hold.releases)} {blank} at {blank}"
        back = ""
        if hold.go_back_to:
            back = f"Not released: go back to step {literal(self._index.back_from(step))}."
        on = [f"{self._text(one.when) or 'Released:'} {literal(goes_on_words(one))}" for one in hold.goes_on]
        if hold.void:
            on.append(f"**{literal(void_words(hold.void))}** {self._text(hold.void.text)}")
        return quote((f"**HOLD** {self._text(hold.text)}", released, *on, back))
