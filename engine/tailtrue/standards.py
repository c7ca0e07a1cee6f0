"""Tables of standards, read from the knowledge the first time they are asked for."""

from functools import cache

from tailtrue.calc.b41 import B41
from tailtrue.calc.iso286 import Iso286
from tailtrue.places import knowledge_folder
from tailtrue.tables import read_table


@cache
def iso286() -> Iso286:
    """Tolerance classes of ISO 286-1, sizes over 1 to 180 mm.

    >>> zone = iso286().limits("H7", 25.0)
    >>> zone.least_mm, zone.largest_mm
    (25.0, 25.021)
    >>> iso286().fit("H7/g6", 25.0)
    Fit(least_clearance_mm=0.007, largest_clearance_mm=0.041)
    """
    grades, shafts, holes, deltas, letters = (
        _rows(f"iso286_{name}") for name in ("grades", "shafts", "holes", "delta", "letters")
    )
    return Iso286.of(grades, shafts, holes, deltas, letters)


@cache
def b41() -> B41:
    """Classes of ANSI B4.1 from 0.40 to 3.15 in; the source says which limits are not confirmed.

    >>> hole, shaft, source = b41().limits("RC4", 25.4)
    >>> round(hole.largest_mm / 25.4, 4), round(shaft.largest_mm / 25.4, 4)
    (1.0012, 0.9992)
    >>> b41().limits("LC5", 25.4).source
    'asme-b4-1 [over_in, upto_incl_in, hole_lower_thou]; memory [*]'
    """
    return B41.of(_rows("b41"))


def _rows(name: str) -> list[dict[str, str]]:
    path = knowledge_folder() / "fits" / f"{name}.csv"
    return [dict(row.cells) for row in read_table(path, f"fits/{name}")]
