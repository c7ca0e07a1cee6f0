"""What kept an alternative from holding, in the words of the trade: what it wants, what is here, sizes as figures."""

from typing import Any, NamedTuple

from tailtrue.assemble.filling import Filler, pieces, words_of
from tailtrue.conditions import Atom, Condition, Judged, Leaf, leaves
from tailtrue.facts import Fact, FactSpec
from tailtrue.parts import Text
from tailtrue.truth import Truth

_SIZES = {">=": "at least", "<=": "at most", ">": "more than", "<": "less than"}
# What does not hold wants the other side.
_TURNED = {">=": "less than", "<=": "more than", ">": "at most", "<": "at least"}


class Wanted(NamedTuple):
    """What an alternative wants in words, and, where sizes are held against each other, the two sizes."""

    words: str
    sizes: Text = ()


def wanted(filler: Filler, condition: Condition, judged: Judged) -> Wanted:
    """The first comparison that kept a condition from holding."""
    open_one = judged.truth is Truth.UNKNOWN
    for leaf in leaves(condition, judged):
        kept = leaf.judged.truth is (Truth.UNKNOWN if open_one else Truth.of(not leaf.wanted))
        if kept:
            return _said(filler, leaf)
    return Wanted("")


def _said(filler: Filler, leaf: Leaf) -> Wanted:
    spec = filler.case.knowledge.catalogue[leaf.atom.fact]
    if leaf.atom.operator in _SIZES:
        return _size(filler, leaf, spec)
    if leaf.atom.operator in ("known", "unknown"):
        asked = (leaf.atom.operator == "known") is leaf.wanted
        return Wanted(f"wants {spec.label}, and it is not known" if asked else f"wants that {spec.label} is not known")
    if spec.is_number:  # between two sizes: as it was written
        return Wanted(f"wants {spec.label} {leaf.atom.words.removeprefix(leaf.atom.fact).strip()}", _here(filler, leaf.atom))
    found = filler.case.get(spec.name)
    if spec.kind == "yes-no" and isinstance(found, Fact):
        return Wanted(f"so it is here: {spec.label}" if found.value else f"not so here: {spec.label}")
    choices = " or ".join(words_of(pieces(spec, spec.name, one)) for one in leaf.atom.operands)
    nay = "not " if (leaf.atom.operator == "is not") is leaf.wanted else ""
    here = words_of(pieces(spec, spec.name, found.value)) if isinstance(found, Fact) else "not known"
    return Wanted(f"wants {spec.label}: {nay}{choices}; here {here}")


def _size(filler: Filler, leaf: Leaf, spec: FactSpec) -> Wanted:
    how = (_SIZES if leaf.wanted else _TURNED)[leaf.atom.operator]
    other = leaf.atom.other
    if other is None:
        against = _plain(spec, leaf.atom.operands[0]) or leaf.atom.words.rsplit(f"{leaf.atom.operator} ", 1)[1]
        return Wanted(f"wants {spec.label}: {how} {against}", _here(filler, leaf.atom))
    label = filler.case.knowledge.catalogue[other].label
    sizes = _here(filler, leaf.atom)
    if sizes and isinstance(filler.case.get(other), Fact):
        sizes = (*sizes[:-1], f"; wanted {how} ", *filler.told(other), ".")
    return Wanted(f"wants {spec.label}: {how} this: {label}", sizes)


def _plain(spec: FactSpec, value: Any) -> str:
    """A number that needs no unit."""
    return f"{value:g}" if spec.kind == "count" else "nothing" if value == 0 else ""


def _here(filler: Filler, atom: Atom) -> Text:
    found = filler.case.get(atom.fact)
    return ("Here ", *filler.told(atom.fact), ".") if isinstance(found, Fact) else ()
