"""Bar as it is bought: how far a piece of it may be out of straight."""

from typing import NamedTuple

from tailtrue.calc.validity import at_least, between, positive


class Bow(NamedTuple):
    """Bow of a piece cut from a bar: bent evenly all along, and bent in one place at the worst."""

    even_mm: float
    kink_mm: float


def bow_of_piece(bow_mm: float, gauge_length_mm: float, length_mm: float) -> Bow:
    """Bow of a piece, from the bow that the stock is allowed over a longer length.

    even = s (L / L0)^2, kink = s L / L0

    Parameters
    ----------
    bow_mm : Bow s that is allowed, largest distance from a straight edge. [mm]
    gauge_length_mm : Length L0 over which it is allowed. [mm]
    length_mm : Length L of the piece. [mm]

    Returns
    -------
    Bow when the bar is bent evenly, and at most when it is bent in one place. [mm, mm]

    Valid for
    ---------
    Bow 0 or more, lengths more than 0, piece not longer than L0. Run-out between centres is twice the bow;
    sawing and turning off one side of drawn bar change it.

    Source
    ------
    Geometry, derived; the even case as a trade association's note on the straightness of bar has it.

    >>> [round(bow, 4) for bow in bow_of_piece(1.0, 1000, 300)]
    [0.09, 0.3]
    """
    at_least(bow_mm, 0, "bow", "mm")
    positive(gauge_length_mm, "length of the straightness limit", "mm")
    positive(length_mm, "length of the piece", "mm")
    share = length_mm / gauge_length_mm
    between(share, 0, 1, "length of the piece as a share of the length of the limit")
    return Bow(bow_mm * share**2, bow_mm * share)
