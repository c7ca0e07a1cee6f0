"""Filling texts: a fact becomes a figure or a word, never a number typed into a sentence."""

from collections.abc import Iterable, Mapping
from typing import Any

from tailtrue.case import Case, Gap
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.parts import Blank, Figure, Text
from tailtrue.quantities import IN_INCHES
from tailtrue.wording import Place, Pointer, Wording


def figure(spec: FactSpec, name: str, value: Any, set_by: str | None = None) -> Figure:
    """A number as the tree carries it; `set_by` are the initials of whoever put it in place of the computed one."""
    marked = None
    if isinstance(value, tuple):
        value, marked = value
    return Figure(
        fact=name, value=float(value), unit=spec.unit or "1", rounding=spec.rounding, bound=spec.bound, marked=marked,
        set_by=set_by,
    )  # fmt: skip


def set_by(found: Fact) -> str | None:
    """The initials of whoever set a fact by hand."""
    return found.by_hand.initials if found.by_hand else None


def fact_pieces(found: Fact, name: str) -> Text:
    """A fact as text, with the mark of a number that was set by hand."""
    return pieces(found.spec, name, found.value, set_by(found))


def pieces(spec: FactSpec, name: str, value: Any, set_by: str | None = None) -> Text:
    """A value as text: numbers as figures, choices as words."""
    if spec.kind in ("quantity", "count"):
        return (figure(spec, name, value, set_by),)
    if spec.kind == "quantities":
        found = [figure(spec, name, one, set_by) for one in value]
        return tuple(piece for place, one in enumerate(found) for piece in ((", ", one) if place else (one,)))
    if spec.kind == "yes-no":
        return ("yes" if value else "no",)
    return (spec.names.get(str(value), str(value).replace("-", " ")) if spec.kind == "choice" else str(value),)


def words_of(text: Text) -> str:
    """The words of a text whose places are all words."""
    return "".join(piece for piece in text if isinstance(piece, str))


class Filler:
    """Fills wordings from a case, and from one record where a text stands for a row."""

    def __init__(self, case: Case, *, tells_trouble: bool = False) -> None:
        self.case = case
        self._tells_trouble = tells_trouble
        # A fact of a case does not change: it is put into words once, wherever it stands.
        self._told: dict[str, Text] = {}
        self._numbers: Mapping[str, str] = {}
        self._here = ""

    def at(self, numbers: Mapping[str, str], here: str) -> "Filler":
        """The same for the texts of one step: the numbers of all steps of the sheet with their names, and its own."""
        other = Filler(self.case, tells_trouble=self._tells_trouble)
        other._told, other._numbers, other._here = self._told, numbers, here
        return other

    def _number(self, pointer: Pointer) -> str:
        """Of a step that comes several times the last one before this step, or the one it leads to; else the first."""
        order = list(self._numbers)
        before = order.index(self._here) if self._here else 0
        if pointer.before:
            before = order.index(self._number(Pointer((pointer.before,), opens=False)))
        places = [at for at, number in enumerate(order) if self._numbers[number] in pointer.steps]
        if not places:
            raise LookupError(f"step {self._here} points to {' or '.join(pointer.steps)}, and the sheet has none of them")
        at = max((place for place in places if place < before), default=places[0])
        return f"{order[at].partition('.')[0]}.1" if pointer.opens else order[at]

    def blanks(self, places: Iterable[Any], each: tuple[str, ...] = ()) -> tuple[Blank, ...]:
        """Places to write in, each with the unit of the machine's dials beside it, for `each` piece of repeated work."""
        dials = self.case.get("lathe.dials")
        inch = isinstance(dials, Fact) and dials.value == "inch"
        return tuple(
            Blank(
                label=one.label,
                unit=IN_INCHES.get(one.unit, one.unit) if inch else one.unit,
                count=one.count,
                abreast=one.abreast,
                each=each,
            )
            for one in places
        )

    def figure(self, name: str) -> Figure:
        """The figure of a fact; Gap when it is not known."""
        found = self.fact(name)
        return figure(found.spec, name, found.value, set_by(found))

    def fact(self, name: str) -> Fact:
        """The fact; Gap when it is not known."""
        found = self.case.get(name)
        if isinstance(found, NotKnown):
            raise Gap(name, found)
        return found

    def text(self, wording: Wording, row: Mapping[str, Any] | None = None, records: str = "") -> Text:
        """A wording with every place filled."""

        def value(place: Place) -> Text:
            if row is not None and place.name.startswith("row."):
                name = place.name.removeprefix("row.")
                return pieces(self.case.knowledge.catalogue[records].fields[name], f"{records}.{name}", row[name])
            if place.wants == "why":
                return (self._why(place.name),)
            return self.told(place.name)

        return wording.fill(value, self._number)

    def _why(self, name: str) -> str:
        """What limited a fact; of one that is not known, where troubles are told, what kept it from being known."""
        found = self.case.get(name)
        if self._tells_trouble and isinstance(found, NotKnown):
            labels = (self.case.knowledge.catalogue[need].label for need in found.missing)
            trouble = f"the tables give {found.unlisted}" if found.unlisted else found.trouble
            return (trouble or f"not known: {', '.join(labels)}").rstrip(".")
        return self.fact(name).limited_by or "as reckoned"

    def told(self, name: str) -> Text:
        """A fact as text; Gap when it is not known."""
        if name not in self._told:
            self._told[name] = fact_pieces(self.fact(name), name)
        return self._told[name]
