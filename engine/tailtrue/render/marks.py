"""What a mark on a paper means, said on every paper on which the mark stands."""

from tailtrue.parts import Figure, Node
from tailtrue.render.words import BY_HAND_MEANS

_PLAIN = frozenset({str, int, float, bool, type(None)})


def legend(*parts: object) -> str:
    """What the mark of a number set by hand means; empty where no such number stands in the parts of a paper."""
    return BY_HAND_MEANS if _set_by_hand(parts) else ""


def _set_by_hand(part: object) -> bool:
    """Whether a number set by hand stands in a part of a paper."""
    waiting: list[object] = [part]
    for one in waiting:
        if one.__class__ in _PLAIN:
            continue
        if isinstance(one, Figure):
            if one.set_by is not None:
                return True
        elif isinstance(one, tuple):
            waiting.extend(one)
        elif isinstance(one, Node):
            waiting.extend(vars(one).values())
        elif isinstance(one, dict):
            waiting.extend(one.values())
    return False
