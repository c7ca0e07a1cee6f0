"""Facts and comparisons as people say them: labels for names, figures for numbers."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from tailtrue.assemble.filling import pieces
from tailtrue.case import Case
from tailtrue.conditions import Atom, Leaf
from tailtrue.explaining.turning import bound_of, distance_of
from tailtrue.facts import Fact, FactSpec
from tailtrue.parts import Dials, Figure, Text
from tailtrue.render.words import say
from tailtrue.truth import Truth

NOT_KNOWN = "not known"

_SIDES = {">=": "at least", "<=": "at most", ">": "more than", "<": "less than"}
_OTHER_SIDE = {">=": "<", "<=": ">", ">": "<=", "<": ">="}

# Units whose nought is only a mark on the scale: a share of them says nothing.
_WITHOUT_SHARES = ("degC",)


def dials_of(case: Case) -> Dials:
    """The system of the machine's dials."""
    return "inch" if case.value("lathe.dials") == "inch" else "metric"


def figure_of(spec: FactSpec, value: float) -> Figure:
    """A size next to a fact, in its unit and rounding, rounded to the nearest: a comparison favours no side."""
    return Figure(fact=spec.name, value=float(value), unit=spec.unit or "1", rounding=spec.rounding)


def value_of(found: Fact) -> Text:
    """A value of any kind as text."""
    spec, value = found.spec, found.value
    if spec.kind == "records":
        return ("none",) if not value else (f"{len(value)} {'line' if len(value) == 1 else 'lines'}",)
    if spec.kind == "record":
        return record_of(spec, value)
    if spec.kind in ("quantities", "texts"):
        return _joined(_one(spec, one) for one in value) or ("none",)
    if spec.kind in ("quantity", "count") and isinstance(value, str):
        return (value,)
    return pieces(spec, spec.name, value)


def _one(spec: FactSpec, value: Any) -> Text:
    if spec.kind == "texts" or isinstance(value, str):
        return (str(value),)
    return (figure_of(spec, value),)


def record_of(spec: FactSpec, row: Mapping[str, Any]) -> Text:
    """One line of a list of records: each field with its label."""
    parts = []
    for name, value in row.items():
        field = spec.fields.get(name)
        if value is None or field is None:
            continue
        label = (field.label if field.label != name else name).replace("_", " ")
        parts.append((f"{label} ", *value_of(Fact(field, value))))
    return _joined(parts) or ("as listed",)


def _joined(parts: Iterable[Text]) -> Text:
    joined: list[str | Figure] = []
    for part in parts:
        if joined:
            joined.append(", ")
        joined.extend(part)
    return tuple(joined)


def met_of(case: Case, name: str) -> Text:
    """What a fact is in this case, or that it is not known."""
    found = case.get(name)
    return value_of(with_fields(case, found)) if isinstance(found, Fact) else (NOT_KNOWN,)


def with_fields(case: Case, found: Fact) -> Fact:
    """A record that was picked from a list, with the fields that the list declares."""
    if found.spec.kind != "record" or found.spec.fields:
        return found
    for name in found.read:
        listed = case.get(name)
        if isinstance(listed, Fact) and listed.spec.kind == "records" and found.value in listed.value:
            return replace(found, spec=replace(found.spec, fields=listed.spec.fields))
    return found


def leaf_said(case: Case, leaf: Leaf) -> Text:
    """A comparison and what it met: `bar length: at most 500 mm; here 480 mm`."""
    label = case.knowledge.catalogue[leaf.atom.fact].label
    here: Text = (leaf.judged.met,) if leaf.atom.operator in ("known", "unknown") else met_of(case, leaf.atom.fact)
    return (f"{label}: ", *bound_said(case, leaf.atom, leaf.wanted), "; here ", *here, *_apart(case, leaf))


def _apart(case: Case, leaf: Leaf) -> Text:
    """How far off a size is, where it is not as wanted; what print would round away is said in full."""
    distance = distance_of(case, leaf.atom)
    if leaf.met or leaf.judged.truth is Truth.UNKNOWN or distance is None:
        return ()
    if case.knowledge.catalogue[leaf.atom.fact].unit in _WITHOUT_SHARES:
        return ()
    bound = bound_of(case, leaf.atom)
    found = case.get(leaf.atom.fact)
    if bound is None or not isinstance(found, Fact) or distance > 1:
        return ()
    shown = say((figure_of(found.spec, bound),), dials_of(case))
    if shown != say(met_of(case, leaf.atom.fact), dials_of(case)):
        return (f" ({_share(distance)} off)",)
    if distance == 0:
        return (" (exactly that)",)
    return (f" ({_share(distance)} off, less than the digits show)",)


def _share(distance: float) -> str:
    if distance == 0:
        return "nothing"
    return "less than 1 %" if distance < 0.01 else f"{distance * 100:.0f} %"


def bound_said(case: Case, atom: Atom, wanted: bool) -> Text:
    """What a comparison asks for, or asks not to be."""
    spec = case.knowledge.catalogue[atom.fact]
    if atom.operator in ("known", "unknown"):
        return ("known" if (atom.operator == "known") is wanted else NOT_KNOWN,)
    if atom.operator in _SIDES:
        side = _SIDES[atom.operator if wanted else _OTHER_SIDE[atom.operator]]
        if atom.other is None:
            return (f"{side} ", figure_of(spec, atom.operands[0]))
        other = case.knowledge.catalogue[atom.other]
        return (f"{side} the {other.label}, ", *met_of(case, atom.other))
    if atom.operator == "between":
        low, high = (figure_of(spec, end) for end in atom.operands)
        return ("" if wanted else "outside ", low, " to ", high)
    asked = (atom.operator != "is not") is wanted
    words = [_word(spec, operand) for operand in atom.operands]
    return (("" if asked else "not ") + " or ".join(words),)


def _word(spec: FactSpec, operand: Any) -> str:
    if spec.kind == "yes-no":
        return "yes" if operand else "no"
    return str(operand).replace("-", " ")
