"""The order in which the collars are cut tells the wear of the tool from the error of the lathe."""

from typing import NamedTuple

from tailtrue.calc.validity import finite


class BothOrders(NamedTuple):
    """What two skims in opposite order say together."""

    difference_mm: float
    wear_on_diameter_mm: float


def from_both_orders(headstock_first_mm: float, tailstock_first_mm: float) -> BothOrders:
    """The difference of the collars without the wear of the tool, from a skim in each order.

    d = (d_1 + d_2) / 2, w = (d_1 - d_2) / 2

    Parameters
    ----------
    headstock_first_mm : Difference d_1, tailstock collar less headstock collar, headstock collar cut first. [mm]
    tailstock_first_mm : Difference d_2, tailstock collar less headstock collar, tailstock collar cut first. [mm]

    Returns
    -------
    Difference d that the lathe alone makes, and growth w of the diameter of the collar cut second. [mm]

    Valid for
    ---------
    The same edge, cut and collars in both skims, nothing moved between them.

    Source
    ------
    Arithmetic: the wear changes sign with the order, the lathe does not.

    >>> difference, wear = from_both_orders(0.026, 0.022)
    >>> round(difference, 6), round(wear, 6)
    (0.024, 0.002)
    """
    finite(headstock_first_mm, "difference with the headstock collar first", "mm")
    finite(tailstock_first_mm, "difference with the tailstock collar first", "mm")
    half_sum = (headstock_first_mm + tailstock_first_mm) / 2
    return BothOrders(half_sum, (headstock_first_mm - tailstock_first_mm) / 2)
