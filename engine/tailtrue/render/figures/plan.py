"""What the views from above share: which side the tool is on, a tool, an indicator. The operator is below."""

from tailtrue.procedure import Drawing
from tailtrue.render.ink import Ink

_SIGN = {"front": 1, "rear": -1}
_DIAL = 3.0  # radius


def side_sign(drawing: Drawing) -> int:
    """1 where the tool stands below, on the operator's side; -1 where it stands above. ValueError for any other side."""
    side = drawing.said.get("tool_side", "")
    if side not in _SIGN:
        raise ValueError(f"the drawing {drawing.id} does not say on which side the tool stands")
    return _SIGN[side]


def nib(ink: Ink, x: float, tip: float, sign: int, length: float) -> None:
    """A tool whose tip is at x, tip and whose shank leads down (1) or up (-1)."""
    shoulder, end = tip + sign * 2.5, tip + sign * length
    ink.outline(((x, tip), (x + 1.7, shoulder), (x + 1.7, end), (x - 1.7, end), (x - 1.7, shoulder)))


def indicator(ink: Ink, x: float, touch: float, sign: int, kind: str = "edge") -> float:
    """A dial whose plunger touches at x, touch and whose body lies below (1) or above (-1); its far edge."""
    middle = touch + sign * (3.5 + _DIAL)
    ink.line(x, touch, x, middle - sign * _DIAL, "outline" if kind == "edge" else kind)
    ink.circle(x, middle, _DIAL, kind)
    ink.line(x, middle, x + 1.4, middle - 1.6, "outline" if kind == "edge" else kind)
    return middle + sign * _DIAL
