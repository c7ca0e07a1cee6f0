"""What a refusal hangs on: what the user said, where, and of sizes that can be chosen the figure that would do.

A given fact belongs here when the refusal falls with another plausible value of this fact alone. That is tried, not
guessed: each is put into a case of its own. A figure is told only of what can be chosen or bought - job, stock, crib -
and only when nothing else refuses the job because of it. What the lathe is, is measured and not chosen; of people and
choices only what was said is told.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import islice
from types import MappingProxyType
from typing import Any

from tailtrue.case import Case
from tailtrue.errors import Said
from tailtrue.explaining.conditions_said import given_below
from tailtrue.facts import Fact, FactSpec
from tailtrue.given.entries import GivenFact
from tailtrue.given.own_units import Toward, size_said, typical_said, unit_in
from tailtrue.given.quoting import harmless
from tailtrue.given.relations import how_to_add
from tailtrue.quantities import System, read_quantity, system_of

Asks = Callable[[Case], bool]

# The files whose sizes may be chosen, in the order in which they are told; the lathe is as it is.
_CHOSEN = ("job", "stock", "crib")
_OURS = "knowledge/"
_SOLD = "materials/stock_sizes"
_MOST_WEIGHED = 5
_MOST_TOLD = 3
_MOST_TRIED = 60
_FEW = 3
_HALVINGS = 17
# How far from what was said a size is tried: shares of the way to the end of what is plausible.
_SHARES = (0.15, 0.35, 0.6, 1.0)
_SCALES = ((0.7, 0.3, 0.1), (1.5, 3.0, 10.0))  # a list of sizes, all of them so much smaller or larger
_FACTOR = 10.0
# How near the size that is told lies to the one that would just do: few digits on the safe side first.
_HANDY = 0.01
_NEAR = (0.001, 0.0001)
_WAYS: dict[Toward, tuple[Toward, ...]] = {"up": ("nearest", "up"), "down": ("nearest", "down")}
# A size so much farther off than another is no short way out.
_FAR = 0.7
_NOTHING = 0.005


@dataclass(frozen=True)
class _Spot:
    """One value in the user's files: of a fact, or of a field in an entry of a list."""

    name: str
    spec: FactSpec
    value: Any
    where: str
    said: str
    entry: int | None = None

    @property
    def key(self) -> str:
        key = self.spec.name.rsplit(".", 1)[-1]
        return key if self.entry is None else f"{self.name.split('.', 1)[1]}, entry {self.entry + 1}, {key}"

    @property
    def chosen(self) -> bool:
        return self.name.split(".", 1)[0] in _CHOSEN


def hangs_on(case: Case, names: tuple[str, ...], missing: Iterable[str], falls: Asks, no_worse: Asks) -> tuple[Said, ...]:
    """What was said behind these facts that a refusal hangs on, and what was not said and is missing.

    `falls` tells whether a case is free of the refusal, `no_worse` whether nothing refuses it that did not before.
    """
    own_names = dict.fromkeys(_own_name(case, name) for name in missing)
    lacking = tuple(_lacking(case, name, falls) for name in own_names if name in case.knowledge.given.facts)[:_FEW]
    behind = tuple(_behind(case, names))
    spots = tuple(islice((spot for spot in _spots(case, behind) if _field(case, spot).lever != "none"), _MOST_TRIED))
    turning = [(spot, value) for spot in spots if (value := _turned(case, spot, falls, names)) is not None]
    turning = [one for one in turning if not _of_the_machine(one[0], names)] or turning
    turning = [one for one in turning if not _owned(case, one[0], names)] or turning
    near = [one for one in turning if _far(*one) <= _FAR] or turning
    near.sort(key=lambda one: _order(one[0].name))
    told = [_told(case, spot, _needed(case, spot, value, falls, no_worse)) for spot, value in near[:_MOST_WEIGHED]]
    # What has a figure that would do is a way out; what has none is only true.
    told = sorted(told, key=lambda one: not one.needed)[:_MOST_TOLD]
    told += _of_wishes(case, behind, falls, no_worse)
    if not told and not lacking:
        # No one value frees the job. What moves a size that the refusal holds against another is nearer to it than the rest.
        own = [spot for spot in spots if not spot.where.startswith(_OURS) and _moves(case, spot, _sizes(case, names))]
        own = own or [spot for spot in _whole(case, behind) if not spot.where.startswith(_OURS)]
        # What the shop has on its lists is nearer than a size or a habit of the lathe.
        own = [spot for spot in own if spot.spec.kind == "records"] or own
        told = [_told(case, spot, "") for spot in sorted(own[:_FEW], key=lambda spot: _order(spot.name))]
    return (*lacking, *told)


def _of_wishes(case: Case, behind: Iterable[str], falls: Asks, no_worse: Asks) -> list[Said]:
    """Sizes that the job may ask for and does not, each with the figure that would do; none where no figure does."""
    turning = ((spot, _turned(case, spot, falls, (spot.name,))) for spot in _wishes(case, set(behind)))
    told = (_told(case, spot, _needed(case, spot, value, falls, no_worse)) for spot, value in turning if value is not None)
    return [one for one in told if one.needed]


def _wishes(case: Case, behind: set[str]) -> Iterator[_Spot]:
    """What was chosen for want of a wish, as though that had been wished."""
    knowledge = case.knowledge
    settling = {one.settled_by: name for name, one in knowledge.computed.items() if one.settled_by}
    for name, decision in knowledge.decisions.items():
        for row in decision.rows:
            if not row.settles or row.gives not in behind or name not in settling:
                continue
            fact, chosen = knowledge.given.facts.get(row.gives), case.get(settling[name])
            if fact is None or fact.file != "job" or not isinstance(chosen, Fact) or isinstance(case.get(row.gives), Fact):
                continue
            spec = knowledge.catalogue[row.gives]
            said = size_said(chosen.value, spec.unit, unit_in(spec.unit, _dials(case)), "nearest", _NEAR[0])
            yield _Spot(row.gives, spec, chosen.value, f"{_OURS}{name}", said)


def _sizes(case: Case, names: Iterable[str]) -> tuple[str, ...]:
    """What a refusal reads that is worked out and has a size."""
    specs = ((name, case.knowledge.catalogue[name]) for name in names)
    return tuple(
        name for name, spec in specs if spec.kind == "quantity" and spec.comes == "computed" and name in case.known()
    )


def _moves(case: Case, spot: "_Spot", sizes: tuple[str, ...]) -> bool:
    """Whether another plausible value of this would make one of these sizes another."""
    return any(not _as_before(case, _with(case, spot, values[-1]), sizes) for values in _others(case, spot))


def _order(name: str) -> int:
    file = name.partition(".")[0]
    return _CHOSEN.index(file) if file in _CHOSEN else len(_CHOSEN)


def _of_the_machine(spot: "_Spot", read: tuple[str, ...]) -> bool:
    """Whether this is a choice of the lathe from which steps and tables follow, and not what the refusal asks after."""
    return spot.spec.kind == "choice" and not spot.chosen and spot.name not in read and spot.entry is None


def _owned(case: Case, spot: "_Spot", read: tuple[str, ...]) -> bool:
    """Whether this is the size of a thing that nobody changes for this, and not what the refusal itself asks after."""
    return _field(case, spot).owned and spot.name not in read


def _far(spot: "_Spot", turned: tuple[Any, Any]) -> float:
    """How far from what was said the last value that does not do is, as a share of the larger; nought without sizes."""
    if not isinstance(spot.value, float) or isinstance(turned[1], str):
        return 0.0
    largest = max(abs(spot.value), abs(turned[1]))
    return abs(spot.value - turned[1]) / largest if largest else 0.0


def _behind(case: Case, names: Iterable[str]) -> Iterator[str]:
    found: dict[str, None] = {}
    for name in names:
        if case.knowledge.catalogue[name].comes == "given":
            found[name] = None
        found.update(dict.fromkeys(given_below(case, name)))
    # What is said at the lathe stands in no file, unless the job says it under a name of its own.
    own = dict.fromkeys(_own_name(case, name) for name in found)
    yield from (name for name in own if name in case.knowledge.given.facts)


def _own_name(case: Case, name: str) -> str:
    """The name under which the files of a user say a fact: that of the fact that stands for it, where one does."""
    facts = case.knowledge.given.facts
    return next((own for own, fact in facts.items() if fact.stands_for == name), name)


def _lacking(case: Case, name: str, falls: Asks) -> Said:
    fact, system = case.knowledge.given.facts[name], _dials(case)
    if fact.spec.kind == "quantity" and fact.typical and not (fact.file == "crib" and falls(_typically(case, fact, system))):
        # What is measured is not copied, and a usual size that would be refused as well is no advice.
        open_size = f"... {unit_in(case.knowledge.catalogue[fact.spec.name].unit, system)}"
        fact = replace(fact, typical=open_size, typical_inch=open_size)
    return Said(name, _file(case, fact), fact.key, "not given", how_to_add(fact, f"below [{fact.file}]", system))


def _typically(case: Case, fact: GivenFact, system: System) -> Case:
    spec = case.knowledge.catalogue[fact.spec.name]
    said = typical_said(fact, spec.unit, system)
    size = read_quantity(said, spec.unit)
    names = filter(None, (spec.name, fact.stands_for))
    return case.with_other({name: Fact(case.knowledge.catalogue[name], size, said=said) for name in names})


def _file(case: Case, fact: GivenFact) -> str:
    if fact.file == "job":
        said = case.get("job.lathe")
        return said.where.partition(":")[0] if isinstance(said, Fact) else "job file"
    return str(case.value(f"job.{fact.file}") or f"{fact.file} file")


def _dials(case: Case) -> Any:
    return "inch" if case.value("lathe.dials") == "inch" else "metric"


def _whole(case: Case, names: Iterable[str]) -> Iterator[_Spot]:
    """Facts as they were said, lists as a whole."""
    for name in names:
        found = case.get(name)
        if isinstance(found, Fact) and found.where:
            yield _Spot(name, found.spec, found.value, found.where, found.said)


def _spots(case: Case, names: Iterable[str]) -> Iterator[_Spot]:
    for whole in _whole(case, names):
        if whole.spec.kind != "records":
            yield whole
            continue
        found = case.get(whole.name)
        for (entry, key), (where, said) in found.inside.items() if isinstance(found, Fact) else ():
            field = whole.spec.fields.get(key)
            if field is not None and entry < len(whole.value) and key in whole.value[entry]:
                yield _Spot(whole.name, field, whole.value[entry][key], where, said, entry)


def _with(case: Case, spot: _Spot, value: Any) -> Case:
    found = case.get(spot.name)
    if not isinstance(found, Fact):
        return case.with_other({spot.name: Fact(spot.spec, value, said=spot.said, where=spot.where)})
    if spot.entry is not None:
        rows = list(found.value)
        rows[spot.entry] = MappingProxyType({**rows[spot.entry], spot.spec.name: value})
        value = tuple(rows)
    given = case.knowledge.given.facts[spot.name]
    names = filter(None, (spot.name, given.stands_for))
    return case.with_other({name: replace(found, spec=case.knowledge.catalogue[name], value=value) for name in names})


def _turned(case: Case, spot: _Spot, falls: Asks, read: tuple[str, ...]) -> tuple[Any, Any] | None:
    """A value with which the refusal falls, and the last one tried before with which it does not."""
    for values in _others(case, spot):
        before = spot.value
        if len(values) > 1 and _as_before(case, _with(case, spot, values[-1]), read):
            # What changes nothing at its end is not tried on the way there.
            continue
        for value in values:
            if falls(_with(case, spot, value)):
                return value, before
            before = value
    return None


def _as_before(case: Case, other: Case, read: tuple[str, ...]) -> bool:
    return all(case.value(name) == other.value(name) for name in read)


def _others(case: Case, spot: _Spot) -> Iterator[list[Any]]:
    """Other plausible values, in rows that lead away from what was said."""
    spec, value = spot.spec, spot.value
    if spec.kind == "yes-no":
        yield [not value]
    elif spec.kind == "choice":
        yield from ([one] for one in spec.choices if one != value)
    elif spec.kind == "count" and spec.choices:
        yield from ([int(one)] for one in spec.choices if int(one) != value)
    elif spec.kind == "quantity" and isinstance(value, float):
        lever = _field(case, spot).lever
        for end in sorted(_ends(spec, value), reverse=True):
            if lever == ("less" if end > value else "more"):
                continue
            yield [value + share * (end - value) for share in _SHARES]
    elif spec.kind == "quantities":
        for scales in _SCALES:
            yield [tuple(one * scale for one in value) for scale in scales]
    elif spec.kind == "texts" and (refers := _field(case, spot).refers) and not refers.in_own_files:
        yield [case.knowledge.given.references.words(refers.table, refers.column, refers.role)]


def _field(case: Case, spot: _Spot) -> GivenFact:
    fact = case.knowledge.given.facts[spot.name]
    return fact if spot.entry is None else fact.fields[spot.spec.name]


def _ends(spec: FactSpec, value: float) -> Iterator[float]:
    yield value / _FACTOR if spec.least is None else spec.least
    yield value * _FACTOR if spec.most is None else spec.most


def _needed(case: Case, spot: _Spot, turned: tuple[Any, Any], falls: Asks, no_worse: Asks) -> str:
    """The size that would do, with few digits in the user's own unit; empty where none is told."""
    good, bad = turned
    if spot.spec.kind != "quantity" or not spot.chosen:
        return ""
    for _ in range(_HALVINGS):
        middle = (good + bad) / 2
        good, bad = (middle, bad) if falls(_with(case, spot, middle)) else (good, middle)
    more = good > bad
    # What was not said stands in our unit, and not in the user's.
    own = "" if spot.where.startswith(_OURS) else system_of(spot.said)
    spelling = unit_in(spot.spec.unit, own or _dials(case))
    away: Toward = "up" if more else "down"
    ways: list[tuple[float, Toward]] = [
        (_NEAR[0], "nearest"), (_HANDY, away), *((one, way) for one in _NEAR for way in _WAYS[away])
    ]  # fmt: skip
    near_it = sorted((size_said(good, spot.spec.unit, spelling, toward, near) for near, toward in ways), key=len)
    for said in (*_sold(case, spot, own or _dials(case), good, more), *near_it):
        size = read_quantity(said, spot.spec.unit)
        there = _with(case, spot, size)
        if abs(size - spot.value) < _NOTHING * abs(spot.value):
            # So small a step lies in the rounding of sizes; nobody can buy or set it.
            continue
        if _plausible(spot.spec, size) and falls(there) and no_worse(there):
            return f"{said}{_onwards(case, spot, size, more, falls)}"
    return ""


def _sold(case: Case, spot: _Spot, system: str, good: float, more: bool) -> list[str]:
    """The sizes that are sold of such a thing, from the one that would just do onwards; none where no table tells."""
    rows = case.knowledge.tables[_SOLD].where(fact=f"{spot.name}.{spot.spec.name}", system=system)
    sizes = {said: read_quantity(said, spot.spec.unit) for said in (row.text("sold_as") for row in rows)}
    fitting = sorted(
        (said for said, size in sizes.items() if (size >= good if more else size <= good)), key=sizes.__getitem__
    )
    return fitting if more else fitting[::-1]


def _plausible(spec: FactSpec, size: float) -> bool:
    return (spec.least is None or size >= spec.least) and (spec.most is None or size <= spec.most)


def _onwards(case: Case, spot: _Spot, size: float, more: bool, falls: Asks) -> str:
    """Whether all beyond does too, as far as sizes are plausible."""
    least, most = _ends(spot.spec, spot.value)
    end = most if more else least
    beyond = (size + share * (end - size) for share in _SHARES)
    if not all(falls(_with(case, spot, one)) for one in beyond):
        return ""
    return " or more" if more else " or less"


def _told(case: Case, spot: _Spot, needed: str) -> Said:
    # A wish is said otherwise; a thing keeps its size, and another is needed.
    another = "" if spot.name.startswith("job.") else "one of "
    do = f"{another}{needed} would do" if needed else ""
    if spot.where.startswith(_OURS):
        # A default, or what the class of the lathe fills in: there is no line of the user's to point to.
        given = case.knowledge.given.facts[spot.name]
        return Said(spot.name, _file(case, given), spot.key, f"not said, so {harmless(spot.said)} is taken", do)
    return Said(spot.name, spot.where, spot.key, f'"{harmless(spot.said)}"', do)
