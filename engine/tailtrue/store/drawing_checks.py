"""What is held of the drawings of the making: they stand at a step, their numbers are facts, their words hold none."""

import re
from collections.abc import Iterator

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge, StepDrawing

_DIGIT = re.compile(r"\d")
_NUMBERS = frozenset({"quantity", "count"})
_WORDS = frozenset({"choice", "text", "texts"})


def drawing_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """The faults of the drawings."""
    seen: set[str] = set()
    for one in knowledge.drawings:
        if one.file.id in seen:
            yield Problem(one.where, one.file.id, "two drawings have this id", "rename one")
        seen.add(one.file.id)
        if one.file.step and one.file.step not in knowledge.steps:
            yield Problem(
                one.where, one.file.step, f"the drawing {one.file.id} stands at a step that is not there", "mend it"
            )
        yield from _dimensions(knowledge, one)
        yield from _words(knowledge, one)


def _dimensions(knowledge: Knowledge, one: StepDrawing) -> Iterator[Problem]:
    file = one.file
    for fact in (*file.dimensions.values(), *file.if_known.values()):
        spec = knowledge.catalogue.get(fact)
        if spec is None or spec.kind not in _NUMBERS:
            yield Problem(one.where, fact, "no fact that is a number has this name", f"mend the drawing {file.id}")
    for asked, kinds, what in ((file.lists, {"quantities"}, "a list of numbers"), (file.said, _WORDS, "words")):
        for fact in asked.values():
            spec = knowledge.catalogue.get(fact)
            if spec is None or spec.kind not in kinds:
                yield Problem(one.where, fact, f"no fact that is {what} has this name", f"mend the drawing {file.id}")
    if not (file.dimensions or file.if_known or file.lists or file.said):
        yield Problem(one.where, file.id, "the drawing shows nothing of the job", "give it dimensions, or what is said")
    if file.rows is not None:
        listed = knowledge.catalogue.get(file.rows.records)
        if listed is None or file.rows.field not in listed.fields:
            said = f"{file.rows.records}, {file.rows.field}"
            yield Problem(one.where, said, "no list of records has this field", f"mend the drawing {file.id}")


def _words(knowledge: Knowledge, one: StepDrawing) -> Iterator[Problem]:
    for text in (one.file.title, one.file.caption):
        if _DIGIT.search(text):
            yield Problem(one.where, text, "a number is typed into a drawing", "make it a dimension")
    for label in one.labels.values():
        if _DIGIT.search(label.words):
            yield Problem(one.where, label.words, "a number is typed into a drawing", "make it a dimension")
        for place in label.places():
            spec = knowledge.catalogue.get(place.name)
            if spec is None:
                yield Problem(one.where, place.name, f"no fact is named '{place.name}'", "mend the label")
            elif spec.kind in _NUMBERS and place.wants != "why":
                yield Problem(one.where, place.name, "a label would lose this number", "make it a dimension")
