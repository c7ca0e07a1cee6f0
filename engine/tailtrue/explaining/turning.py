"""What would have to be otherwise for a condition to come out another way: the fewest single comparisons."""

from tailtrue.case import Case
from tailtrue.conditions import Atom, Condition, Judged, Leaf
from tailtrue.facts import Fact

# How far a comparison without sizes counts to be off when two ways are weighed: as far as a size can be.
_NO_DISTANCE = 1.0


def needed(case: Case, condition: Condition, judged: Judged, wanted: bool = True) -> tuple[Leaf, ...] | None:
    """The fewest comparisons that must change; none where it is so already, None where nothing can make it so.

    Of two ways with as many changes the nearer one is taken.
    """
    if isinstance(condition, Atom):
        leaf = Leaf(condition, judged, wanted)
        return () if leaf.met else (leaf,)
    if condition.join == "not":
        return needed(case, condition.parts[0], judged.parts[0], not wanted)
    ways = [needed(case, part, below, wanted) for part, below in zip(condition.parts, judged.parts, strict=True)]
    if (condition.join == "all") is wanted:
        every: tuple[Leaf, ...] = ()
        for way in ways:
            if way is None:
                return None
            every += way
        return every
    open_ways = [way for way in ways if way is not None]
    return min(open_ways, key=lambda way: (len(way), sum(_far(case, leaf) for leaf in way)), default=None)


def _far(case: Case, leaf: Leaf) -> float:
    distance = distance_of(case, leaf.atom)
    return _NO_DISTANCE if distance is None else distance


def bound_of(case: Case, atom: Atom) -> float | None:
    """The size that a comparison holds a fact against: of a band its nearer end; None without sizes."""
    if atom.other is not None:
        against = case.value(atom.other)
        return None if against is None else float(against)
    if not case.knowledge.catalogue[atom.fact].is_number or not atom.operands:
        return None
    value = case.value(atom.fact)
    if value is None:
        return float(atom.operands[0])
    return float(min(atom.operands, key=lambda end: abs(end - plain(value))))


def plain(value: object) -> float:
    """The size of a quantity; one that is sold by a mark carries the mark beside it."""
    return float(value[0] if isinstance(value, tuple) else value)  # type: ignore[arg-type]


def distance_of(case: Case, atom: Atom) -> float | None:
    """How far a fact is from the bound, as a share of the larger of the two; None without sizes."""
    found, bound = case.get(atom.fact), bound_of(case, atom)
    if not isinstance(found, Fact) or bound is None:
        return None
    value = plain(found.value)
    largest = max(abs(value), abs(bound))
    return abs(value - bound) / largest if largest else 0.0
