"""Which thing a name means: a fact, one answer of a decision, a step, a caution, a stop, a note."""

import difflib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from tailtrue.errors import Problem, UsageError
from tailtrue.explaining.said import Kind
from tailtrue.store.knowledge import Knowledge

_MOST_NEAR = 3


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
    if name not in known and name.rpartition(".")[0] in known:
        # A column of a table is explained with its table.
        name = name.rpartition(".")[0]
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


def _near(name: str, known: Mapping[str, Kind]) -> str:
    near = difflib.get_close_matches(name[:80], list(known), n=_MOST_NEAR, cutoff=0.5)
    near += [one for one in known if name and name in one and one not in near][: _MOST_NEAR - len(near)]
    return f"nearest: {', '.join(near)}" if near else "a name looks like skim.speed, collar.hold, bond or working-alone"
