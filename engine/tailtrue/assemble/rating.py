"""Rating a hazard on the declared matrix, before its controls and after."""

from collections.abc import Iterable

from tailtrue.review import Band, Control, Level, Rating
from tailtrue.store.safety_models import MatrixFile

# From the strongest kind to the weakest.
HIERARCHY: tuple[Level, ...] = ("eliminate", "substitute", "guard", "instruct", "protect")
# They change what people do, not what the machine can do to them.
WEAK = frozenset({"instruct", "protect"})


def band_of(matrix: MatrixFile, severity: int, likelihood: int) -> Band:
    """The class of a cell; harm that kills is never called low."""
    score = severity * likelihood
    band = next(one.id for one in matrix.class_ if one.low <= score <= one.high)
    if band == "low" and severity >= matrix.never_low_from_severity:
        return "moderate"
    return band


def rating(matrix: MatrixFile, severity: int, likelihood: int) -> Rating:
    """A hazard on the matrix."""
    band = band_of(matrix, severity, likelihood)
    return Rating(severity=severity, likelihood=likelihood, score=severity * likelihood, band=band)


def rated_after(matrix: MatrixFile, before: Rating, controls: Iterable[Control]) -> Rating:
    """What is left: each kind of counted control lowers the likelihood once, none of them the severity."""
    kinds = {control.level for control in controls if control.state == "counted"}
    likelihood = max(1, before.likelihood - sum(matrix.lowers[kind] for kind in kinds))
    if kinds <= WEAK and before.severity >= matrix.weak_from_severity:
        likelihood = max(likelihood, min(matrix.weak_least_likelihood, before.likelihood))
    return rating(matrix, before.severity, likelihood)
