"""What ties given facts together: one way of several, smaller before larger, both or neither, named in another file."""

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from tailtrue.errors import Problem
from tailtrue.given.entries import DOES, Catalogue, GivenFact, Ways
from tailtrue.given.own_units import typical_said
from tailtrue.given.quoting import as_written, pair
from tailtrue.given.suggest import all_of, closest, one_of, some_of
from tailtrue.quantities import System

if TYPE_CHECKING:
    from tailtrue.given.reading import GivenValue

Place = Callable[..., str]

_OPEN = '"..."'  # an entry of a list that is still to be written


def how_to_add(fact: GivenFact, below: str, system: System) -> str:
    """What to write when a fact is missing: its key with a value, and how it is found out."""
    if fact.spec.kind == "records":
        return f"add a table [[{fact.spec.name}]] for each; {fact.spec.how}"
    return f"add {as_a_line(fact, system)} {below}; {fact.spec.how}"


def as_a_line(fact: GivenFact, system: System, said: str = "") -> str:
    """A fact as a line of a file, with a typical value or the words to choose from; of a list every entry has its place.

    `said` is the entry of a list that is there already.
    """
    if fact.spec.kind == "choice":
        value = one_of(f'"{choice}"' for choice in fact.spec.choices)
    elif fact.spec.kind == "count":
        value = one_of(fact.spec.choices) if fact.spec.choices else "a number"
    elif fact.spec.kind == "yes-no":
        value = "true or false"
    elif fact.spec.kind in ("quantities", "texts"):
        first = as_written(said) if said else _quoted(fact, system)
        value = f"[{', '.join((first, *[_OPEN] * (fact.fewest - 1)))}]" if fact.fewest > 1 or said else f"[{first}, ...]"
    else:
        value = _quoted(fact, system)
    words = f' or "{one_of(fact.words)}"' if fact.words else ""
    return f"{fact.key} = {value}{words}"


def _quoted(fact: GivenFact, system: System) -> str:
    if fact.read_from:
        return f'"..." with the figure of {fact.read_from}'
    unit = fact.spec.unit or fact.reads_as
    typical = (typical_said(fact, unit, system) if unit else fact.typical) or "..."
    return f"'{typical}'" if '"' in typical else f'"{typical}"'


def entry_problems(
    fact: GivenFact,
    raw: Mapping[str, Any],
    record: Mapping[str, Any],
    met: Collection[str],
    place: Place,
    path: tuple[str | int, ...],
    system: System,
) -> Iterator[Problem]:
    """What is missing in one entry of a list, or does not go together in it."""
    entry = f"entry {int(path[-1]) + 1} of {fact.key}"
    here = place(*path)
    for key, one in fact.fields.items():
        if one.ask == "must" and key not in met:
            yield Problem(here, f"{key} in {entry}", "not given", how_to_add(one, "to it", system))
    for ways in fact.one_way:
        yield from _one_way(ways, met, here, f"{ways.label} in {entry}")
    for limits in fact.ranges:
        low, high = record.get(limits.low), record.get(limits.high)
        if isinstance(low, float) and isinstance(high, float) and low >= high:
            said = pair(limits.low, raw[limits.low])
            yield _upside_down(place(*path, limits.low), said, limits.high, str(raw[limits.high]))


def _upside_down(where: str, said: str, high: str, high_said: str) -> Problem:
    return Problem(
        where, said, f"is not below {high}, {high_said}", "look whether the two are exchanged, or one is mistyped"
    )


def _one_way(ways: Ways, met: Collection[str], where: str, said: str) -> Iterator[Problem]:
    taken = [way for way in ways.ways if any(name in met for name in way)]
    if not taken:
        yield Problem(where, said, "not given", f"write {ways.in_words()}")
    elif ways.several:
        return
    elif len(taken) > 1:
        yield Problem(where, said, "is said in two ways", f"write {ways.in_words()}, not both")
    elif missing := [name for name in taken[0] if name not in met]:
        keys = [name.rsplit(".", 1)[-1] for name in missing]
        yield Problem(where, said, f"{one_of(keys)} is not given", f"write {ways.in_words()}")


def does(catalogue: Catalogue, values: Mapping[str, "GivenValue"]) -> str:
    """What the job does, as it says or as is taken where it does not; nothing where the files are of no job."""
    said, fact = values.get(DOES), catalogue.facts.get(DOES)
    return str(said.value if said else fact.default if fact else "")


def file_problems(
    catalogue: Catalogue, kind: str, met: Collection[str], values: Mapping[str, "GivenValue"], shown: str,
    system: System = "",
) -> Iterator[Problem]:  # fmt: skip
    """What is missing in a whole file, or does not go together in it."""
    spared = catalogue.spared_in(does(catalogue, values), values)
    for fact in catalogue.of_file(kind).values():
        if fact.ask == "must" and fact.spec.name not in met and fact.spec.name not in spared:
            yield Problem(shown, fact.key, "not given", how_to_add(fact, f"below [{kind}]", system))
    for ways in catalogue.ways_of(kind):
        # Where the whole table is missing, that alone is said.
        if set(ways.names()) <= spared:
            continue
        if ways.several or not set(ways.names()) <= set(met):
            yield from _one_way(ways, met, shown, ways.label)
    for limits in catalogue.ranges:
        low, high = values.get(limits.low), values.get(limits.high)
        if limits.low.startswith(f"{kind}.") and low and high and low.value >= high.value:
            said = pair(limits.low.split(".", 1)[1], low.said)
            yield _upside_down(low.where, said, limits.high.split(".", 1)[1], high.said)
    for names in catalogue.together:
        if names[0].startswith(f"{kind}."):
            yield from _half(catalogue, names, met, values, shown, system)
    yield from _entry_for_entry(catalogue, kind, met, values)


def _half(
    catalogue: Catalogue, names: Collection[str], met: Collection[str], values: Mapping[str, "GivenValue"], shown: str,
    system: System,
) -> Iterator[Problem]:  # fmt: skip
    """Facts that say one thing together, some of them given: each that is missing as a line to add."""
    given = [catalogue.facts[name] for name in names if name in met]
    missing = [catalogue.facts[name] for name in names if name not in met]
    if not given or not missing:
        return
    first = values.get(given[0].spec.name)
    said, lacking = (all_of([fact.key for fact in facts]) for facts in (given, missing))
    stand = "stands" if len(given) == 1 else "stand"
    lines = "; ".join(as_a_line(fact, system) for fact in missing)
    yield Problem(
        first.where if first else shown, said, f"{stand} without {lacking}", f"add {lines}; or take {said} out"
    )  # fmt: skip


def _entry_for_entry(
    catalogue: Catalogue, kind: str, met: Collection[str], values: Mapping[str, "GivenValue"]
) -> Iterator[Problem]:
    """A list that says something of each entry of another is as long as that one."""
    for first, second in catalogue.entry_for_entry:
        said = values.get(second)
        if said is None or not first.startswith(f"{kind}."):
            continue
        key, of = second.split(".", 1)[1], first.split(".", 1)[1]
        if first not in met:
            yield Problem(said.where, key, f"stands without {of}", f"give {of} too, or take {key} out")
        elif first in values and len(said.value) != len(values[first].value):
            what = f"has {len(said.value)} entries, {of} has {len(values[first].value)}"
            yield Problem(said.where, key, what, f"write one entry for each of {of}, in the same order")


def named_elsewhere(catalogue: Catalogue, values: Mapping[str, "GivenValue"]) -> Iterator[Problem]:
    """Words that must name an entry of a list in another of the user's files."""
    for fact in catalogue.facts.values():
        said = values.get(fact.spec.name)
        if fact.refers is None or not fact.refers.in_own_files or said is None:
            continue
        listed = values.get(fact.refers.table)
        if listed is None:
            continue
        labels = [str(record[fact.refers.column]) for record in listed.value]
        if said.value not in labels:
            close = closest(str(said.value), labels)
            near = f"'{close}' comes nearest; " if close else ""
            list_name = fact.refers.table.replace(".", " list, ")
            yield Problem(
                said.where, pair(fact.key, said.value), f"names nothing of the {list_name}",
                f"{near}use one of {some_of(labels)}",
            )  # fmt: skip
