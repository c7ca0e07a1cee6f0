"""Few jobs in which every pair of values stands together at least once."""

import random
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from typing import Any

Factors = Mapping[str, Sequence[Any]]


def pairwise(factors: Factors, seed: int = 1) -> Iterator[dict[str, Any]]:
    """Rows with one value for each factor, until each value of one has met each value of every other.

    Greedy: each row begins with a pair that is still due and takes, factor by factor, the value that meets most that
    are due. The same factors and seed give the same rows.
    """
    names = sorted(factors)
    due = {
        (first, second): {(a, b) for a in range(len(factors[first])) for b in range(len(factors[second]))}
        for first, second in combinations(names, 2)
    }
    draw = random.Random(seed)
    while any(due.values()):
        row = _row(names, factors, due, draw)
        for first, second in due:
            due[first, second].discard((row[first], row[second]))
        yield {name: factors[name][place] for name, place in row.items()}


def _row(
    names: Sequence[str],
    factors: Factors,
    due: Mapping[tuple[str, str], set[tuple[int, int]]],
    draw: random.Random,
) -> dict[str, int]:
    first, second = max(due, key=lambda pair: len(due[pair]))
    start = min(due[first, second])
    row = {first: start[0], second: start[1]}
    rest = [name for name in names if name not in row]
    draw.shuffle(rest)
    for name in rest:
        met = [0] * len(factors[name])
        for other, place in row.items():
            pair = (other, name) if other < name else (name, other)
            for value in range(len(met)):
                met[value] += ((place, value) if other < name else (value, place)) in due[pair]
        row[name] = met.index(max(met))
    return row
