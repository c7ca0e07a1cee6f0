"""A drawn job made to agree with itself: what goes together is said together, a smaller size stays below its larger."""

from collections.abc import Iterator, Mapping
from itertools import product
from typing import Any

from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.quantities import read_quantity

Raw = Mapping[str, Any]


def agreeing(catalogue: Catalogue, shop: Raw, start: Raw, drawn: Raw) -> dict[str, Any] | None:
    """The start with what was drawn, and what must be said, left out or changed beside it; None where no value agrees.

    What was drawn stays. `shop` is what the files of the shop say; None as a value takes a key out of them.
    """
    job = {**start, **drawn}

    def said(name: str) -> Any:
        return job.get(name, shop.get(name))

    open_names = set(_one_way(catalogue, job, drawn, said)) | set(_half(catalogue, said))
    for tie in catalogue.ranges:
        both = (tie.low, tie.high)
        if all(said(name) is not None for name in both) and not _below(catalogue, said(tie.low), said(tie.high), tie.low):
            open_names |= set(both) - set(drawn)
    names = sorted(open_names)
    for row in product(*(_offered(catalogue.facts[name], said) for name in names)):
        tried = {**job, **dict(zip(names, row, strict=True))}
        if _in_order(catalogue, {**shop, **tried}):
            return tried
    return None


def _one_way(catalogue: Catalogue, job: dict[str, Any], drawn: Raw, said: Any) -> Iterator[str]:
    """Take out the other ways to say what was drawn; what its own way still lacks."""
    for ways in catalogue.one_way:
        way = next((one for one in ways.ways if set(one) & set(drawn)), None)
        if way is None or ways.several:
            continue
        job.update({name: None for name in ways.names() if name not in way and said(name) is not None})
        yield from (name for name in way if said(name) is None)


def _half(catalogue: Catalogue, said: Any) -> Iterator[str]:
    """What is not said of groups of which a part is."""
    for group in catalogue.together:
        missing = [name for name in group if said(name) is None]
        if len(missing) < len(group):
            yield from missing


def _offered(fact: GivenFact, said: Any) -> tuple[Any, ...]:
    """What the fact may be, the usual first: a label of the list that it names, or what the sweep tries of it."""
    if fact.refers is not None and fact.refers.in_own_files:
        return tuple(record[fact.refers.column] for record in said(fact.refers.table) or ())
    if fact.spec.choices:
        return fact.spec.choices
    return tuple(dict.fromkeys(fact.as_written(one) for one in (fact.typical, fact.least_said, fact.most_said) if one))


def _in_order(catalogue: Catalogue, job: Raw) -> bool:
    return all(
        _below(catalogue, job[tie.low], job[tie.high], tie.low)
        for tie in catalogue.ranges
        if job.get(tie.low) is not None and job.get(tie.high) is not None
    )


def _below(catalogue: Catalogue, low: str, high: str, name: str) -> bool:
    unit = str(catalogue.facts[name].spec.unit)
    return read_quantity(low, unit) < read_quantity(high, unit)
