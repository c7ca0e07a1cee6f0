"""Making a given fact from its entry in a catalogue file; what is wrong with the entry is found here."""

from dataclasses import replace

from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import FactSpec
from tailtrue.given.entries import GivenFact, Range, Refers, Ways
from tailtrue.given.references import References
from tailtrue.given.shapes import FactShape, FieldShape, PairShape, WaysShape
from tailtrue.quantities import FAST, read_quantity
from tailtrue.tables import source_keys

CLASSES_FOLDER = "machines"
CLASSES = Refers(CLASSES_FOLDER, "id")


def ways_of(shape: WaysShape) -> Ways:
    """Ways to say one thing, as written."""
    return Ways(shape.label, tuple(tuple(way) for way in shape.ways), shape.several)


def range_of(shape: PairShape) -> Range:
    """Two quantities that go together, as written."""
    return Range(shape.low, shape.high)


class FactMaker:
    """Makes facts from one entry, noting what is wrong with it."""

    def __init__(self, where: str, references: References, classes: tuple[str, ...], problems: list[Problem]) -> None:
        self.where, self.references, self.classes, self.problems = where, references, classes, problems

    def fact(self, row: FactShape) -> GivenFact:
        """A fact with the fields it has when it is a list of records."""
        if bool(row.field) != (row.type == "records"):
            self._wrong(row.name, "records have fields, and nothing else has", "mend the type or the fields")
        fields = {one.name: self.one(one) for one in row.field}
        made = self.one(row)
        specs = {name: one.spec for name, one in fields.items()}
        return replace(
            made,
            spec=replace(made.spec, fields=specs),
            never_from_class=row.never_from_class,
            most_words=row.most_words,
            changes=row.changes,
            stands_for=row.stands_for,
            fields=fields,
            one_way=tuple(ways_of(one) for one in row.one_way),
            ranges=tuple(range_of(one) for one in row.range),
        )

    def one(self, row: FieldShape) -> GivenFact:
        """A fact without fields, or a field of a record."""
        sources = source_keys(row.source)
        refers = self._refers(row)
        choices = self.classes if refers == CLASSES else tuple(row.choices)
        unit = row.unit or row.reads_as
        if row.type in ("quantity", "quantities") and row.unit not in FAST:
            self._wrong(row.name, f"'{row.unit}' is no canonical unit", f"use one of {', '.join(FAST)}")
        if row.type == "choice" and not choices:
            self._wrong(row.name, "a choice without choices", "add choices")
        if not sources:
            self._wrong(row.name, "names no source", "name one, or say memory")
        if (row.ask == "default") != (row.default is not None):
            self._wrong(row.name, "ask and default do not agree", "give a default, or do not ask for one")
        spec = FactSpec(
            row.name, row.type, row.label, "given", row.unit, row.rounding, row.bound, choices,
            self._size(row, row.least, unit), self._size(row, row.most, unit),
            where=self.where, how=row.how, sources=sources,
        )  # fmt: skip
        if spec.least is not None and spec.most is not None and spec.least >= spec.most:
            self._wrong(row.name, "least is not below most", "mend the range")
        return GivenFact(
            spec, row.ask, row.typical, row.if_missing, row.default, row.least, row.most, tuple(row.words), row.reads_as,
            None if refers == CLASSES else refers, row.fewest, row.unique,
            words_if=row.words_if, owned=row.owned, lever=row.lever, read_from=row.read_from, typical_inch=row.typical_inch,
        )  # fmt: skip

    def _size(self, row: FieldShape, written: str, unit: str) -> float | None:
        if not written:
            return None
        try:
            return float(written) if row.type == "count" else read_quantity(written, unit)
        except (FactsWrong, ValueError, KeyError) as wrong:
            self._wrong(f"{row.name}: {written}", str(wrong), "mend the range")
            return None

    def _refers(self, row: FieldShape) -> Refers | None:
        if not row.refers:
            return None
        table, _, column = row.refers.partition(":")
        refers = Refers(table, column, row.role, row.also)
        if refers != CLASSES and not refers.in_own_files and not self.references.exists(table, column):
            self._wrong(f"{row.name}: {row.refers}", "there is no such table, or it has no such column", "mend refers")
        return refers

    def _wrong(self, said: str, wrong: str, do: str) -> None:
        self.problems.append(Problem(self.where, said, wrong, do))
