"""Which thing a name means: a fact, one answer of a decision, a step, a caution, a stop, a note."""

import difflib
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tailtrue.errors import Problem, UsageError
from tailtrue.explaining.materials import ROLES, materials
from tailtrue.explaining.said import Kind
from tailtrue.store.knowledge import Knowledge

_MOST_NEAR = 3
_ALIKE = 0.6
_LEAST_BEGUN = 4  # letters: fewer begin too many words
_MOST_MEANT = 12  # more are counted
_WORD = re.compile(r"[a-z0-9]+")


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
    # As a comparison prints a step: its phase before it.
    phase, stroke, step = name.rpartition("/")
    if phase and stroke and known.get(step) == "step":
        name = step
    if name not in known:
        name, equals, word = _meant(knowledge, known, name, equals, word)
    table, _, column = name.rpartition(".")
    if name not in known and column in _columns(knowledge, table):
        # A column of a table is explained with its table.
        name = table
    if name not in known:
        meant = list(_could_mean(knowledge, known, plain(name)))
        if len(meant) > 1:
            raise UsageError((choose(asked, meant),))
        raise UsageError((Problem(asked, "", "nothing has this name", _near(name, known, knowledge)),))
    if not equals:
        return Named(known[name], name)
    if name in ROLES:
        if word not in materials(knowledge):
            raise UsageError(
                (
                    Problem(
                        asked, "", f"'{word}' is no material here", f"the materials are {', '.join(materials(knowledge))}"
                    ),
                )
            )
        return Named("material", name, word)
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


def _meant(
    knowledge: Knowledge, known: Mapping[str, Kind], name: str, equals: str, word: str
) -> tuple[str, str, str]:  # fmt: skip
    """The name that is meant by a key of a file, by printed words, or by an answer alone; as asked where that is open."""
    asked = plain(name)
    whole = [one for one in known if plain(one) == asked]
    if len(whole) == 1:
        return whole[0], equals, word
    if not equals and len(answered := [one for one in knowledge.decisions if name in _answers(knowledge, one)]) == 1:
        return answered[0], "=", name
    said = [one for one in known if plain(one.rpartition(".")[2]) == asked or plain(_label(knowledge, one)) == asked]
    # A key of a file that stands for what it says, and what a decision asks: the wish comes behind what is decided.
    decided = [one for one in said if not equals or one in knowledge.decisions]
    said = decided or said
    given = [one for one in said if one in knowledge.given.facts]
    if equals and len(said) != 1:
        said = [one for one in knowledge.decisions if plain(one.partition(".")[0]) == asked or one in said]
        said = [one for one in said if word in _answers(knowledge, one)]
    if len(said) == 1:
        return said[0], equals, word
    if not equals and len(given) == 1:
        return given[0], equals, word
    if not equals and not said:
        answered = [one for one in knowledge.decisions if asked in map(plain, _answers(knowledge, one))]
        if len(answered) == 1:
            return answered[0], "=", next(one for one in _answers(knowledge, answered[0]) if plain(one) == asked)
        # What only one answer has in it, as a whole word or its beginning.
        begun = list(_begun(knowledge, asked))
        if len(begun) == 1:
            return begun[0][0], "=", begun[0][1]
    return name, equals, word


def _begun(knowledge: Knowledge, asked: str) -> Iterator[tuple[str, str]]:
    """Answers of which a word begins so."""
    for decision in knowledge.decisions:
        for answer in dict.fromkeys(_answers(knowledge, decision)):
            if len(asked) >= _LEAST_BEGUN and f" {plain(answer)}".find(f" {asked}") >= 0:
                yield decision, answer


def _could_mean(knowledge: Knowledge, known: Mapping[str, Kind], asked: str) -> Iterator[tuple[str, str]]:
    """What has the words asked for in its name or in what papers call it: answers first, then things; with their labels."""
    words = set(asked.split())
    if not words:
        return
    for decision in knowledge.decisions:
        names = {row.then: row.name for row in knowledge.decisions[decision].rows}
        yield from ((f"{decision}={one}", name) for one, name in names.items() if words <= set(plain(one).split()))
    for one in known:
        if words <= set(plain(f"{one} {_label(knowledge, one)}").split()):
            yield one, _label(knowledge, one)


def choose(asked: str, meant: Sequence[tuple[str, str]], rest: str = "--list prints all names") -> Problem:
    """The fault of a name that may mean several things: each as it is typed and what it is; how to find the `rest`."""
    lines = [f"{name}  {what}".rstrip() for name, what in meant[:_MOST_MEANT]]
    more = len(meant) - _MOST_MEANT
    lines += [f"and {more} more: {rest}"] if more > 0 else []
    return Problem(asked, "", "may mean one of several; type one of these instead", "\n  ".join(lines))


def _answers(knowledge: Knowledge, decision: str) -> tuple[str, ...]:
    return tuple(row.then for row in knowledge.decisions[decision].rows)


def _label(knowledge: Knowledge, name: str) -> str:
    """What the papers call it."""
    if name in knowledge.catalogue:
        return knowledge.catalogue[name].label
    if name in knowledge.steps:
        return knowledge.steps[name].file.title
    return ""


def plain(text: str) -> str:
    """The words of a name or of a printed text, so that two writings of it are alike.

    >>> plain("Feed by hand, about") == plain("feed by-hand about")
    True
    """
    return " ".join(_WORD.findall(text.casefold()))


def _near(name: str, known: Mapping[str, Kind], knowledge: Knowledge) -> str:
    head = name.partition(".")[0]
    # What is asked of a thing that exists leads to the thing; a word that is part of a name leads to the name.
    near = [head] if head != name and head in known else []
    near += [f"{decision}={answer}" for decision, answer in _begun(knowledge, plain(name))]
    near += difflib.get_close_matches(name[:80], list(known), n=_MOST_NEAR, cutoff=_ALIKE)
    near += [one for one in known if name and name in one]
    words = set(plain(name).split())
    shared = {one: len(words & set(plain(f"{one} {_label(knowledge, one)}").split())) for one in known}
    most = max(shared.values(), default=0)
    near += [one for one in known if most and shared[one] == most]
    near += [
        f"{one}={word}"
        for one in knowledge.decisions
        for word in _answers(knowledge, one)
        if words <= set(plain(word).split())
    ]
    near = list(dict.fromkeys(near))[:_MOST_NEAR]
    if near:
        return f"nearest: {', '.join(near)}"
    return "a name looks like skim.speed, collar.hold, bond or working-alone; tailtrue why JOB --list prints all"


def listed(knowledge: Knowledge) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Every name by its kind; of a decision with its answers."""
    by_kind: dict[str, list[str]] = {}
    for name, kind in names(knowledge).items():
        answers = f" = {', '.join(dict.fromkeys(_answers(knowledge, name)))}" if kind == "decision" else ""
        by_kind.setdefault(kind, []).append(f"{name}{answers}")
    yield from ((kind, tuple(sorted(found))) for kind, found in by_kind.items())
