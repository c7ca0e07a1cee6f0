"""Which causes explain the readings, and how well: every set of a few causes weighed against every other.

Each cause is expected to be nought give or take its usual size. A set that fits no better for having one more cause
weighs less, so the readings must pay for every cause. Settings of cross slide, level and indicator are left free.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import erfc, exp, log, sqrt

from tailtrue.calc.estimation import Reading
from tailtrue.diagnosis.model import SETTING

_BLIND = 1e-9  # of the length of a column; what is left of it below this was all setting


@dataclass(frozen=True)
class Expected:
    """What is thought of a cause before any reading: its usual size, how often it is met, whether it has one sign."""

    usual: float
    chance: float
    positive: bool = False


@dataclass(frozen=True)
class Scatter:
    """Repeats of one thing by themselves: the sum of squares, how many are free, and the doubt of each."""

    cause: str
    squares: float
    freedom: int
    doubt: float


@dataclass(frozen=True)
class Explanation:
    """A set of causes: how likely it is, the size of each cause in it, what it leaves over."""

    causes: tuple[str, ...]
    weight: float
    sizes: Mapping[str, float]
    chi_squared: float
    freedom: int

    @property
    def chance_of_worse(self) -> float | None:
        """Chance of a rest as large as this by the doubt of the readings alone; None without spare readings."""
        from scipy.special import gammaincc

        return float(gammaincc(self.freedom / 2, self.chi_squared / 2)) if self.freedom > 0 else None


def weigh(
    readings: Sequence[Reading], expected: Mapping[str, Expected], most: int, scatter: Scatter | None = None
) -> tuple[Explanation, ...]:
    """Every explanation with at most so many causes at once, the likeliest first; weights add up to one."""
    table = _Table(readings, expected)
    seen = [name for name in expected if name in table.names or (scatter and name == scatter.cause)]
    sets = (causes for count in range(most + 1) for causes in combinations(seen, count))
    found = [table.explanation(causes, scatter) for causes in sets]
    top = max(merit for merit, _, _, _ in found)
    total = sum(exp(merit - top) for merit, _, _, _ in found)
    explanations = [
        Explanation(causes, exp(merit - top) / total, sizes, rest, table.freedom - len(sizes))
        for (merit, causes, sizes, rest) in found
    ]
    return tuple(sorted(explanations, key=lambda one: -one.weight))


def shares(explanations: Sequence[Explanation]) -> dict[str, float]:
    """The weight of each cause over all explanations that have it, the heaviest first."""
    found: dict[str, float] = {}
    for one in explanations:
        for cause in one.causes:
            found[cause] = found.get(cause, 0.0) + one.weight
    return dict(sorted(found.items(), key=lambda item: -item[1]))


def separation(
    readings: Sequence[Reading], expected: Mapping[str, Expected], true: Explanation, other: Explanation
) -> float:
    """How far readings, as one explanation has them, would weigh against another: twice the logarithm of the odds."""
    foretold = [
        Reading(one.row, sum(one.row.get(name, 0.0) * size for name, size in true.sizes.items()), one.standard_uncertainty)
        for one in readings
    ]
    table = _Table(foretold, expected)
    return 2 * (table.explanation(true.causes, None)[0] - table.explanation(other.causes, None)[0])


class _Table:
    """Readings over their doubts, settings taken out; causes in units of their usual size."""

    def __init__(self, readings: Sequence[Reading], expected: Mapping[str, Expected]) -> None:
        import numpy as np

        self.expected = expected
        rows = [one.row for one in readings]
        sure = np.array([one.standard_uncertainty for one in readings])
        free = sorted({name for row in rows for name in row if name.startswith(SETTING)})
        causes = [name for name in expected if any(row.get(name) for row in rows)]
        settings = np.array([[row.get(name, 0.0) for name in free] for row in rows]).reshape(len(rows), len(free))
        columns = np.array([[row.get(name, 0.0) * expected[name].usual for name in causes] for row in rows])
        columns = columns.reshape(len(rows), len(causes)) / sure[:, None]
        values = np.array([one.value for one in readings]) / sure
        base = np.linalg.qr(settings / sure[:, None])[0]
        whole = np.linalg.norm(columns, axis=0)
        columns, values = columns - base @ (base.T @ columns), values - base @ (base.T @ values)
        left = np.linalg.norm(columns, axis=0) > _BLIND * whole
        self.names = {name: number for number, name in enumerate(n for n, seen in zip(causes, left, strict=True) if seen)}
        columns = columns[:, left]
        self.gram: list[list[float]] = (columns.T @ columns).tolist()
        self.pull: list[float] = (columns.T @ values).tolist()
        self.rest = float(values @ values)
        self.freedom = len(rows) - len(free)

    def explanation(
        self, causes: tuple[str, ...], scatter: Scatter | None
    ) -> tuple[float, tuple[str, ...], dict[str, float], float]:
        """Logarithm of the weight, causes, their sizes, and the rest of a set of causes."""
        merit = sum(log(self.expected[name].chance / (1 - self.expected[name].chance)) for name in causes)
        if scatter is not None:
            merit += _scattered(scatter, self.expected[scatter.cause].usual) if scatter.cause in causes else 0.0
        names = [name for name in causes if name in self.names]
        places = [self.names[name] for name in names]
        pull = [self.pull[place] for place in places]
        root = _root([[self.gram[a][b] + (a == b) for b in places] for a in places])
        half = _forward(root, pull)
        sizes = _backward(root, half)
        merit += sum(one * one for one in half) / 2 - sum(log(root[n][n]) for n in range(len(root)))
        for number, name in enumerate(names):
            if self.expected[name].positive:
                unit = [float(n == number) for n in range(len(names))]
                spread = sqrt(sum(one * one for one in _forward(root, unit)))
                merit += log(max(erfc(-sizes[number] / spread / sqrt(2)), 1e-300))
        bent = sum(sizes[i] * self.gram[a][b] * sizes[j] for i, a in enumerate(places) for j, b in enumerate(places))
        rest = self.rest - 2 * sum(size * one for size, one in zip(sizes, pull, strict=True)) + bent
        real = {name: size * self.expected[name].usual for name, size in zip(names, sizes, strict=True)}
        return merit, causes, real, max(rest, 0.0)


def _scattered(scatter: Scatter, usual: float) -> float:
    """Logarithm of how much likelier the repeats are with scatter of the usual size than with their doubt alone."""
    alone, both = scatter.doubt**2, scatter.doubt**2 + usual**2
    return scatter.freedom / 2 * log(alone / both) + scatter.squares / 2 * (1 / alone - 1 / both)


def _root(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    """Lower triangle whose product with its mirror is the matrix."""
    root: list[list[float]] = [[0.0] * len(matrix) for _ in matrix]
    for row in range(len(matrix)):
        for column in range(row + 1):
            left = matrix[row][column] - sum(root[row][n] * root[column][n] for n in range(column))
            root[row][column] = sqrt(left) if row == column else left / root[column][column]
    return root


def _forward(root: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    found: list[float] = []
    for row, value in enumerate(right):
        found.append((value - sum(root[row][n] * found[n] for n in range(row))) / root[row][row])
    return found


def _backward(root: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    found = [0.0] * len(right)
    for row in reversed(range(len(right))):
        later = sum(root[n][row] * found[n] for n in range(row + 1, len(right)))
        found[row] = (right[row] - later) / root[row][row]
    return found
