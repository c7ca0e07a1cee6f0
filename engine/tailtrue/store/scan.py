"""Scanning a decision over every combination of what its conditions can tell apart."""

from collections.abc import Iterator, Mapping
from itertools import islice, product
from typing import Any

from tailtrue.conditions import Atom, atoms
from tailtrue.decisions import Decision
from tailtrue.errors import Problem
from tailtrue.facts import FactSpec
from tailtrue.store.examples import example_case
from tailtrue.truth import Truth

_MOST = 20_000


def unique_problems(decision: Decision, catalogue: Mapping[str, FactSpec]) -> Iterator[Problem]:
    """Gaps and overlaps of a `unique` decision: exactly one row must hold whatever is known."""
    for facts in islice(_combinations(decision, catalogue), _MOST):
        get = example_case(facts, catalogue)
        held = [row.then for row in decision.rows if row.when.judge(get).truth is Truth.YES]
        if len(held) != 1:
            said = ", ".join(f"{name} {value}" for name, value in facts.items())
            fault = f"rows {' and '.join(held)} both hold" if held else "no row holds"
            yield Problem(decision.where, decision.spec.name, f"{fault} for {said}", "close the gap or part the rows")
            return


def _combinations(decision: Decision, catalogue: Mapping[str, FactSpec]) -> Iterator[dict[str, Any]]:
    values: dict[str, set[Any]] = {}
    for row in decision.rows:
        for atom in atoms(row.when):
            for name in atom.names():
                values.setdefault(name, set()).update(_telling(atom, catalogue[name]))
    names = sorted(values)
    for combination in product(*(sorted(values[name], key=str) for name in names)):
        yield dict(zip(names, combination, strict=True))


def _telling(atom: Atom, spec: FactSpec) -> set[Any]:
    if spec.kind == "choice":
        return set(spec.choices)
    if spec.kind == "yes-no":
        return {True, False}
    if atom.other is not None:
        return {1.0, 2.0, 3.0}
    return {edge + shift for edge in atom.operands if isinstance(edge, float) for shift in (-1e-6, 0.0, 1e-6)}
