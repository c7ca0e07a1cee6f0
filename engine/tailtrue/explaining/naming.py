"""Which thing a name means: a fact, one answer of a decision, a step, a caution, a stop, a note."""

import difflib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from tailtrue.errors import Problem, UsageError
from tailtrue.explaining.said import Kind
from tailtrue.store.knowledge import Knowledge

_MOST_NEAR = 3
_ALIKE = 0.6


@dataclass(frozen=True)
class Named:
    """A thing of the knowledge by its kind and name; of a decision perhaps one of its answers."""

    kind: Kind
    name: str
    word: str = ""


def names(knowledge: Knowledge) -> Mapping[str, Kind]:
    """Every name that can be asked for."""
    return dict(_names(knowledge))


def _names(knowledge: Knowledge) -> Iterator[tuple[str, Kind]]:
    for name in knowledge.catalogue:
        yield name, "decision" if name in knowledge.decisions else "limit" if name in knowledge.limits else "fact"
    yield from ((name, "step") for name in knowledge.steps)
    yield from ((caution.file.id, "caution") for caution in knowledge.cautions)
    yield from ((stop.file.id, "stop") for stop in knowledge.stops)
    yield from ((note.file.id, "note") for note in knowledge.notes)


def find(knowledge: Knowledge, asked: str) -> Named:
    """The thing that `asked` names: `skim.speed`, `collar.hold=jaws`, `align.table.move`, `bond`.

    Raises UsageError with the nearest names.
    """
    known = names(knowledge)
    name, equals, word = (part.strip() for part in asked.partition("="))
    table, _, column = name.rpartition(".")
    if name not in known and column in _columns(knowledge, table):
        # A column of a table is explained with its table.
        name = table
    if name not in known:
        raise UsageError((Problem(asked, "", "nothing has this name", _near(name, known)),))
    if not equals:
        return Named(known[name], name)
    if name not in knowledge.decisions:
        do = f"ask for '{name}' alone; only what is decided by rule has answers to choose from"
        raise UsageError((Problem(asked, "", f"'{name}' is not decided by rule", do),))
    answers = tuple(row.then for row in knowledge.decisions[name].rows)
    if word not in answers:
        raise UsageError((Problem(asked, "", f"'{word}' is no answer here", f"the answers are {', '.join(answers)}"),))
    return Named("choice", name, word)


def _columns(knowledge: Knowledge, name: str) -> Iterator[str]:
    """The columns of a table; of a line that is picked from a table, those of that table."""
    spec = knowledge.catalogue.get(name)
    if spec is None or spec.kind not in ("records", "record"):
        return
    yield from spec.fields
    if not spec.fields and name in knowledge.computed:
        for need in knowledge.computed[name].needs:
            yield from _columns(knowledge, need)


def _near(name: str, known: Mapping[str, Kind]) -> str:
    head = name.partition(".")[0]
    # What is asked of a thing that exists leads to the thing; a word that is part of a name leads to the name.
    near = [head] if head != name and head in known else []
    near += difflib.get_close_matches(name[:80], list(known), n=_MOST_NEAR, cutoff=_ALIKE)
    near += [one for one in known if name and name in one]
    near = list(dict.fromkeys(near))[:_MOST_NEAR]
    return f"nearest: {', '.join(near)}" if near else "a name looks like skim.speed, collar.hold, bond or working-alone"
