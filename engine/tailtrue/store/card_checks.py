"""What is held of the card: every line is a setting of its steps, and no label loses the words of a value."""

from collections.abc import Iterator, Mapping

from tailtrue.errors import Problem
from tailtrue.store.knowledge import CardText, StepText
from tailtrue.wording import Wording

_WHERE = "knowledge/page.toml"
_JOINS = frozenset({" to "})  # what may stand between the two figures of a band


def card_problems(card: CardText, steps: Mapping[str, StepText]) -> Iterator[Problem]:
    """The faults of the card."""
    for group in card.groups:
        for name in sorted(group.steps - steps.keys()):
            yield Problem(_WHERE, name, f"the group '{group.title}' of the card names a step that is not there", "mend it")
        values = [value for name in sorted(group.steps & steps.keys()) for value in _values(steps[name])]
        for line in group.lines:
            settings = [value for value, names in values if line.fact in names]
            if not settings:
                yield Problem(_WHERE, line.fact, f"no step of the group '{group.title}' sets this", "mend the card")
            if not line.label.parts and not all(_bare(value) for value in settings):
                yield Problem(_WHERE, line.fact, "its value has words that the card would lose", "give the line a label")


def _values(step: StepText) -> Iterator[tuple[Wording, frozenset[str]]]:
    """The values of a step's settings, with the facts in them."""
    for row in step.settings:
        yield row.value, frozenset(place.name for place in row.value.places())
    if step.settings_from is not None:
        records, value = step.settings_from.records, step.settings_from.value
        yield value, frozenset(f"{records}.{place.name.removeprefix('row.')}" for place in value.places())


def _bare(value: Wording) -> bool:
    return sum(1 for _ in value.places()) == 1 and all(not isinstance(part, str) or part in _JOINS for part in value.parts)
