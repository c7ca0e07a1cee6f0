"""Which way is toward the tool, and which toward the operator.

Two ways of counting across the bed: toward the tool, wherever it is mounted, and toward the operator, who
stands in front. They agree for a tool in front and are opposite for one at the rear.
"""

from tailtrue.calc.validity import OutOfRange, finite

_SIGN = {"front": 1, "rear": -1}


def toward_operator(toward_tool_mm: float, tool_side: str) -> float:
    """A move or offset counted toward the tool, counted toward the operator instead.

    x = s m, s = 1 for a tool in front and -1 for one at the rear

    Parameters
    ----------
    toward_tool_mm : Move or offset m, more than 0 toward the tool. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    The same move or offset x, more than 0 toward the operator. [mm]

    Valid for
    ---------
    Tool in front or at the rear of the work; no direction is given when the side is not known.

    Source
    ------
    Definition of the two ways of counting.

    >>> toward_operator(0.015, "rear")
    -0.015
    """
    finite(toward_tool_mm, "distance toward the tool", "mm")
    return sign_of_side(tool_side) * toward_tool_mm


def toward_tool(toward_operator_mm: float, tool_side: str) -> float:
    """A move or offset counted toward the operator, counted toward the tool instead.

    m = s x, s = 1 for a tool in front and -1 for one at the rear

    Parameters
    ----------
    toward_operator_mm : Move or offset x, more than 0 toward the operator. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    The same move or offset m, more than 0 toward the tool. [mm]

    Valid for
    ---------
    Tool in front or at the rear of the work; no direction is given when the side is not known.

    Source
    ------
    Definition of the two ways of counting.

    >>> toward_tool(0.05, "rear")
    -0.05
    """
    finite(toward_operator_mm, "distance toward the operator", "mm")
    return sign_of_side(tool_side) * toward_operator_mm


def sign_of_side(tool_side: str) -> int:
    """Sign of the direction toward the tool when toward the operator counts as more than 0.

    s = 1 for a tool in front, s = -1 for one at the rear

    Parameters
    ----------
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    Sign s. [1]

    Valid for
    ---------
    The words front and rear, and no other.

    Source
    ------
    Definition of the two ways of counting.

    >>> sign_of_side("front"), sign_of_side("rear")
    (1, -1)
    """
    if tool_side not in _SIGN:
        raise OutOfRange(f"side of the tool is {tool_side!r}; it must be front or rear, or no direction can be given")
    return _SIGN[tool_side]
