"""The register of computed facts: a function, the facts it needs, its formula in words, its source."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from tailtrue.facts import FactSpec, Kind


class Limited(NamedTuple):
    """A computed value, what limited it, and the bounds that were weighed for it, each in the unit of the fact.

    `how` tells the one way that was taken, where the fact has several: a sheet prints it, and not the others. `as_said`: by
    this way the value is what the user said.
    """

    value: Any
    by: str
    weighed: tuple[tuple[float, str], ...] = ()
    how: str = ""
    as_said: bool = False


def taken(value: Any, by: str, how: str = "", *, as_said: bool = False) -> Limited:
    """A value that one of several ways gave: what chose the way, and that way told alone, `by` itself where that tells it.

    >>> taken(2500.0, "the speed marked on the chuck").how
    'the speed marked on the chuck'
    """
    return Limited(value, by, how=how or by, as_said=as_said)


class Cut(NamedTuple):
    """The cut that a speed is looked up for: the fact of the metal, the operation, the fact of the tool or its name."""

    metal: str
    operation: str
    tool: str


class Computed(NamedTuple):
    """One computed fact: how it is made and from what."""

    spec: FactSpec
    function: Callable[..., Any]
    needs: tuple[str, ...]
    optional: frozenset[str]
    tables: tuple[str, ...]
    cut: Cut | None = None
    settled_by: str = ""


_REGISTER: dict[str, Computed] = {}


def field(name: str, unit: str = "", rounding: str = "ratio", kind: Kind = "quantity", bound: str = "nearest") -> FactSpec:
    """A field of a computed record."""
    return FactSpec(name, kind, name, "computed", unit, rounding, bound)


def computed(
    name: str,
    *,
    label: str,
    how: str,
    needs: tuple[str, ...] = (),
    tables: tuple[str, ...] = (),
    unit: str = "",
    rounding: str = "ratio",
    bound: str = "nearest",
    kind: Kind = "quantity",
    choices: tuple[str, ...] = (),
    fields: tuple[FactSpec, ...] = (),
    sources: tuple[str, ...] = (),
    cut: Cut | None = None,
    settled_by: str = "",
    as_said: bool = False,
) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Register a function as the way to a fact.

    `needs` are handed over in order; a name that ends in ``?`` may be unknown and is then None. After them come the
    `tables`. The function returns the value, a Limited value, or None when no value exists. `cut` says which speeds are
    looked up, for those who ask why. `settled_by` names the decision whose size this fact takes: the function gets that
    size first, as a Limited value with the row that gave it. `as_said`: the value is what was said of a thing picked.
    """
    needs = (settled_by, *needs) if settled_by else needs
    spec = FactSpec(
        name, kind, label, "computed", unit, rounding, bound, choices,
        fields={f.name: f for f in fields}, how=how, sources=sources, as_said=as_said,
    )  # fmt: skip
    plain = tuple(need.removesuffix("?") for need in needs)
    optional = frozenset(need[:-1] for need in needs if need.endswith("?"))

    def register(function: Callable[..., Any]) -> Callable[..., Any]:
        if name in _REGISTER:
            raise ValueError(f"two functions compute {name}")
        _REGISTER[name] = Computed(spec, function, plain, optional, tables, cut, settled_by)
        return function

    return register


def register() -> Mapping[str, Computed]:
    """Every computed fact by name."""
    from tailtrue import computed as rooms

    rooms.load()
    return _REGISTER


def names() -> Iterator[str]:
    """Names of all computed facts."""
    return iter(register())
