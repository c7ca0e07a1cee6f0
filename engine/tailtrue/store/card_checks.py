"""What is held of the card: every line is a setting of its steps, and no label loses the words of a value."""

from collections.abc import Iterable, Iterator, Mapping

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Caution, StepText
from tailtrue.store.page_models import CardFile
from tailtrue.store.page_texts import CardText
from tailtrue.wording import Wording

_WHERE = "knowledge/page.toml"
_JOINS = frozenset({" to "})  # what may stand between the two figures of a band


def card_problems(card: CardText, steps: Mapping[str, StepText], cautions: Iterable[Caution]) -> Iterator[Problem]:
    """The faults of the card."""
    yield from _short(card.file, steps)
    yield from _messages(card.file, {caution.file.id for caution in cautions if caution.file.signal == "danger"})
    for group in card.groups:
        for name in sorted(group.steps - steps.keys()):
            yield Problem(_WHERE, name, f"the group '{group.title}' of the card names a step that is not there", "mend it")
        here = [steps[name] for name in sorted(group.steps & steps.keys())]
        values = [value for step in here for value in _values(step)]
        beside = {name for step in here for name in _beside(step)}
        accepted = {end for step in here for check in step.checks for end in (check.low, check.high)}
        blanks = {blank.label for step in here for check in step.checks for blank in check.blanks}
        for place in group.places:
            if place.of not in blanks:
                told = f"no step of the group '{group.title}' has a blank of this label"
                yield Problem(_WHERE, place.of, told, "mend the card")
        for line in group.lines:
            labelled = bool(line.label.parts)
            settings = [value for value, names in values if line.fact in names]
            if not settings and not (labelled and line.fact in accepted):
                yield Problem(_WHERE, line.fact, f"no step of the group '{group.title}' sets this", "mend the card")
            if line.beside and not (line.beside in beside and line.beside_label):
                yield Problem(
                    _WHERE, line.beside, f"no step of the group '{group.title}' tells this beside it", "mend the card"
                )
            if not labelled and not all(_bare(value) for value in settings):
                yield Problem(_WHERE, line.fact, "its value has words that the card would lose", "give the line a label")


def _short(card: CardFile, steps: Mapping[str, StepText]) -> Iterator[Problem]:
    """A step has one line at most, and each line is of steps that are there."""
    named = [name for line in card.short.line for name in line.steps]
    for name in dict.fromkeys(named):
        if name not in steps:
            yield Problem(_WHERE, name, "a line of the card is of a step that is not there", "mend it")
        if named.count(name) > 1:
            yield Problem(_WHERE, name, "this step stands in two lines of the card", "leave it in one")


def _messages(card: CardFile, dangers: set[str]) -> Iterator[Problem]:
    """What the card tells as a danger, in full or by a line of a list, is one."""
    answered = {name for one in (card.start, card.still) for line in one.line for name in line.answers}
    for name in sorted(answered - dangers | set(card.messages) - dangers):
        yield Problem(_WHERE, name, "the card tells it as a danger, and no caution of this name is one", "mend the card")


def _values(step: StepText) -> Iterator[tuple[Wording, frozenset[str]]]:
    """The values of a step's settings, with the facts in them."""
    for row in step.settings:
        yield row.value, frozenset(place.name for place in row.value.places())
    if step.settings_from is not None:
        records, value = step.settings_from.records, step.settings_from.value
        yield value, frozenset(f"{records}.{place.name.removeprefix('row.')}" for place in value.places())


def _beside(step: StepText) -> Iterator[str]:
    """The facts that stand in the reasons of what is set."""
    for row in step.settings:
        yield from (place.name for place in row.reason.places() if place.wants == "value")
    if step.settings_from is not None:
        records, reason = step.settings_from.records, step.settings_from.reason
        yield from (f"{records}.{place.name.removeprefix('row.')}" for place in reason.places())


def _bare(value: Wording) -> bool:
    return sum(1 for _ in value.places()) == 1 and all(not isinstance(part, str) or part in _JOINS for part in value.parts)
