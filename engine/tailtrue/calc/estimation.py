"""Unknown causes from readings that each see several of them: weighted least squares that admits what it cannot tell.

A reading is a row of coefficients, one for each cause that it sees, with its value and its standard uncertainty.
Readings of one kind may leave causes inseparable; then only their combinations have a value, and no value is
made up for the rest.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot, isfinite, sqrt
from typing import NamedTuple

from tailtrue.calc.validity import OutOfRange, finite, positive

# In doubt a direction is not seen: lengths that differ by rounding alone must not tell causes apart.
_SEEN_SHARE = 1e-7  # of the largest singular value; up to it a direction is not seen at all
_LEAST_FACTOR = 1e-300  # below it a factor has no inverse that is a number
_CLOSE = 1e-6  # of the length of a combination; so near it must come to what is seen

Row = Mapping[str, float]
Matrix = tuple[tuple[float, ...], ...]


class Reading(NamedTuple):
    """One thing measured: what each unknown adds to it, its value, how sure it is."""

    row: Row
    value: float
    standard_uncertainty: float


class Estimate(NamedTuple):
    """A value and its standard uncertainty."""

    value: float
    standard_uncertainty: float


@dataclass(frozen=True)
class Fit:
    """Unknowns estimated from readings. Singular values are those of the weighed rows, each column brought to length 1."""

    readings: tuple[Reading, ...]
    unknowns: tuple[str, ...]
    singular_values: tuple[float, ...]
    rank: int
    chi_squared: float
    residuals: tuple[float, ...]
    combinations: tuple[Row, ...]
    blind: tuple[Row, ...]
    _scales: tuple[float, ...]
    _solution: tuple[float, ...]
    _covariance: Matrix
    _unseen: Matrix

    @classmethod
    def of(cls, readings: Sequence[Reading], against: Sequence[str] = ()) -> "Fit":
        """Fit all readings at once.

        x: sum ((value - row . x) / u)^2 is least, by singular values

        Parameters
        ----------
        readings : What was measured. [1]
        against : Unknowns that others are told against where they cannot be told apart: with the lean of the path
            among them, `combinations` reads "yaw less lean", and not the reverse. [1]

        Returns
        -------
        The fit. [1]

        Valid for
        ---------
        At least one reading, each seeing something, uncertainties more than 0; effects that add in a straight line.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> fit.rank
        2
        """
        import numpy as np

        unknowns = _unknowns(readings, against)
        rows = np.array([[reading.row.get(name, 0.0) for name in unknowns] for reading in readings])
        sure = np.array([reading.standard_uncertainty for reading in readings])
        weighed, values = rows / sure[:, None], np.array([reading.value for reading in readings]) / sure
        # Columns of unlike units are brought to one length, so that rank does not depend on mm or inches.
        largest = np.abs(weighed).max(axis=0)
        scales = largest * np.linalg.norm(weighed / largest, axis=0)
        left, singular, right = np.linalg.svd(weighed / scales, full_matrices=True)
        rank = int(np.sum(singular > _SEEN_SHARE * singular[0]))
        seen, unseen = right[:rank], right[rank:]
        pulled = left.T[:rank] @ values / singular[:rank]
        residuals = values - (weighed / scales) @ (seen.T @ pulled)
        return cls(
            readings=tuple(readings),
            unknowns=unknowns,
            singular_values=tuple(singular.tolist()),
            rank=rank,
            chi_squared=float(residuals @ residuals),
            residuals=tuple(residuals.tolist()),
            combinations=_named(_reduced(seen.tolist()), scales.tolist(), unknowns),
            blind=_named(_reduced(unseen.tolist()), (1 / scales).tolist(), unknowns),
            _scales=tuple(scales.tolist()),
            _solution=tuple((seen.T @ pulled).tolist()),
            _covariance=_matrix((seen.T / singular[:rank] ** 2 @ seen).tolist()),
            _unseen=_matrix(unseen.tolist()),
        )

    @property
    def degrees_of_freedom(self) -> int:
        """Readings more than were needed.

        f = readings - rank

        Returns
        -------
        Degrees of freedom f. [1]

        Valid for
        ---------
        Any fit.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> fit.degrees_of_freedom
        0
        """
        return len(self.readings) - self.rank

    @property
    def condition(self) -> float:
        """How poorly causes are told apart.

        c = largest singular value / smallest that is seen

        Returns
        -------
        Condition c, 1 at best. [1]

        Valid for
        ---------
        Any fit.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> round(fit.condition, 3)
        2.414
        """
        return self.singular_values[0] / self.singular_values[self.rank - 1]

    @property
    def not_told_apart(self) -> int:
        """Ways in which unknowns may change together without any reading seeing it.

        k = unknowns - rank

        Returns
        -------
        Number k of independent ways. [1]

        Valid for
        ---------
        Any fit.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> fit.not_told_apart
        0
        """
        return len(self.unknowns) - self.rank

    def chance_of_worse(self) -> float | None:
        """Chance of residuals as large as these if causes and uncertainties are right.

        p = P(chi squared of f degrees of freedom >= that of the residuals)

        Returns
        -------
        Chance p; None without spare readings. [1]

        Valid for
        ---------
        Errors spread normally.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> round(Fit.of([Reading({"lean": 1}, 0.02, 0.01), Reading({"lean": 1}, 0.02, 0.01)]).chance_of_worse() or 0, 9)
        1.0
        """
        from scipy.special import gammaincc

        if not self.degrees_of_freedom:
            return None
        return float(gammaincc(self.degrees_of_freedom / 2, self.chi_squared / 2))

    def sees(self, combination: Row) -> bool:
        """Whether the readings settle a combination of the unknowns.

        settled: no way that readings do not see changes it

        Parameters
        ----------
        combination : Factor of each unknown; one unknown alone is {name: 1}. [1]

        Returns
        -------
        Yes when they do. [1]

        Valid for
        ---------
        A combination that names an unknown with a factor other than 0.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> fit.sees({"yaw": 1}), fit.sees({"bow": 1})
        (True, False)
        """
        if not set(combination) <= set(self.unknowns):
            return False
        wanted = self._scaled(combination)
        length = hypot(*wanted)
        if not length:
            raise OutOfRange("combination is empty; it must name an unknown with a factor other than 0")
        return isfinite(length) and all(abs(_dot(wanted, way)) <= _CLOSE * length for way in self._unseen)

    def estimate(self, combination: Row) -> Estimate:
        """Value and standard uncertainty of a combination.

        value = w . x, u^2 = w . C w

        Parameters
        ----------
        combination : Factor of each unknown. [1]

        Returns
        -------
        Value and standard uncertainty, in the unit of the combination. [1]

        Valid for
        ---------
        A combination that the readings settle; another is refused.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> round(fit.estimate({"yaw": 1}).value, 6)
        0.05
        """
        wanted = self._settled(combination)
        return Estimate(_dot(wanted, self._solution), sqrt(max(0.0, self._product(wanted, wanted))))

    def covariance(self, first: Row, second: Row) -> float:
        """Covariance of two combinations.

        c = w1 . C w2

        Parameters
        ----------
        first : Factors of the one. [1]
        second : Factors of the other. [1]

        Returns
        -------
        Covariance, in the product of their units. [1]

        Valid for
        ---------
        Combinations that the readings settle; others are refused.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> round(fit.covariance({"yaw": 1}, {"lean": 1}), 6)
        0.0001
        """
        return self._product(self._settled(first), self._settled(second))

    def estimates(self) -> dict[str, Estimate | None]:
        """Every unknown by itself.

        `estimate` of {name: 1} for each name

        Returns
        -------
        Value and standard uncertainty of each; None where the readings do not settle it. [1]

        Valid for
        ---------
        Any fit.

        Source
        ------
        Weighted least squares, singular value decomposition (any text on numerical mathematics; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> sorted(fit.estimates())
        ['lean', 'yaw']
        """
        return {name: self.estimate({name: 1.0}) if self.sees({name: 1.0}) else None for name in self.unknowns}

    def _scaled(self, combination: Row) -> list[float]:
        for name, factor in combination.items():
            finite(factor, f"factor of {name}")
        return [combination.get(name, 0.0) / scale for name, scale in zip(self.unknowns, self._scales, strict=True)]

    def _settled(self, combination: Row) -> list[float]:
        unheard = sorted(set(combination) - set(self.unknowns))
        if unheard:
            raise OutOfRange(f"no reading sees {', '.join(unheard)}; the readings see {', '.join(self.unknowns)}")
        if not self.sees(combination):
            names = ", ".join(name for name, factor in combination.items() if factor)
            raise OutOfRange(f"the readings do not settle {names}; another kind of test is needed")
        return self._scaled(combination)

    def _product(self, first: Sequence[float], second: Sequence[float]) -> float:
        return _dot(first, [_dot(line, second) for line in self._covariance])


def _unknowns(readings: Sequence[Reading], against: Sequence[str]) -> tuple[str, ...]:
    if not readings:
        raise OutOfRange("there are no readings; an estimate needs at least one")
    names: dict[str, None] = {}
    for reading in readings:
        sure = reading.standard_uncertainty
        positive(sure, "standard uncertainty of a reading")
        finite(reading.value / sure, "reading")
        for name, factor in reading.row.items():
            finite(factor / sure, f"factor of {name}")
        # A name whose factor is nothing everywhere is not seen by any reading and so is no unknown of this fit.
        seen = [name for name, factor in reading.row.items() if abs(factor / sure) >= _LEAST_FACTOR]
        if not seen:
            raise OutOfRange("row of a reading is all 0; each reading must see something")
        names |= dict.fromkeys(seen)
    last = [name for name in dict.fromkeys(against) if name in names]
    return (*(name for name in names if name not in last), *last)


def _reduced(basis: Sequence[Sequence[float]]) -> list[list[float]]:
    """The same space as the orthonormal rows of `basis`, in reduced row echelon form."""
    rows = [list(row) for row in basis]
    done = 0
    for column in range(len(rows[0]) if rows else 0):
        pivot = max(range(done, len(rows)), key=lambda index: abs(rows[index][column]), default=None)
        if pivot is None or abs(rows[pivot][column]) <= _CLOSE:
            continue
        rows[done], rows[pivot] = rows[pivot], rows[done]
        rows[done] = [value / rows[done][column] for value in rows[done]]
        for index, row in enumerate(rows):
            if index != done:
                rows[index] = [value - row[column] * first for value, first in zip(row, rows[done], strict=True)]
        done += 1
    return rows


def _named(rows: Sequence[Sequence[float]], scales: Sequence[float], unknowns: Sequence[str]) -> tuple[Row, ...]:
    named = []
    for row in rows:
        largest = max(map(abs, row))
        raw = {
            name: value * scale
            for name, value, scale in zip(unknowns, row, scales, strict=True)
            if abs(value) > _CLOSE * largest
        }
        first = next(iter(raw.values()))
        named.append({name: value / first for name, value in raw.items()})
    return tuple(named)


def _matrix(rows: Sequence[Sequence[float]]) -> Matrix:
    return tuple(tuple(row) for row in rows)


def _dot(first: Sequence[float], second: Sequence[float]) -> float:
    return sum(one * other for one, other in zip(first, second, strict=True))
