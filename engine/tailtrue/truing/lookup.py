"""The paper of one bar for the lathe: table and scales from the bar as it was made, and places to write in."""

from collections.abc import Mapping

from tailtrue.assemble.filling import Filler, fact_pieces, figure
from tailtrue.case import Case
from tailtrue.facts import Fact, FactSpec
from tailtrue.papers import Part, Place, RecordSheet, Scales, TableRow
from tailtrue.parts import Figure
from tailtrue.procedure import LookUp, Move
from tailtrue.truing.paper import head_of, lines_of, mend_first, needed

FIELDS = "record/fields"
KNOWN = "known"
RULE = "rule"


def record_sheet(case: Case, fields: Mapping[str, FactSpec]) -> RecordSheet:
    """The paper of a case; `fields` are those of a record of the log, by name.

    Raises FactsWrong when the job does not say what the table follows from.
    """
    needed(case, "lookup.table", "lookup.factor", "truing.limit", "align.when_tailstock_larger")
    filler = Filler(case)
    rows = _rows(case)
    leave = filler.figure("lookup.inside" if isinstance(case.get("lookup.inside"), Fact) else "align.uncertainty")
    again = filler.figure("lookup.again_up_to") if isinstance(case.get("lookup.again_up_to"), Fact) else None
    return RecordSheet(
        head=head_of(case),
        safety=lines_of(case, "record-safety"),
        mend=mend_first(case),
        can_move=_can_move(case),
        look_up=_look_up(case, rows),
        rows=rows,
        scales=Scales(rows[0].difference, rows[-1].difference, filler.figure("lookup.factor"), leave, again),
        read=lines_of(case, "record-read"),
        scales_read=lines_of(case, "record-scales"),
        cannot=lines_of(case, "record-cannot"),
        fill=lines_of(case, "record-fill"),
        verify=lines_of(case, "record-verify"),
        known=tuple(
            (fields[row.text("name")].label, fact_pieces(found, found.name))
            for row in case.knowledge.tables[FIELDS].where(kind=KNOWN)
            if isinstance(found := case.get(row.text("designation")), Fact)
        ),
        places=_places(case, fields),
    )


def _can_move(case: Case) -> bool:
    return bool(case.value("lathe.set_over") != "none")


def _rows(case: Case) -> tuple[TableRow, ...]:
    found = case.get("lookup.table")
    assert isinstance(found, Fact)

    def cell(name: str, value: float | None) -> Figure | None:
        return None if value is None else figure(found.spec.fields[name], f"lookup.table.{name}", value)

    made = ((cell("difference", row["difference"]), row["do"], cell("move", row["move"])) for row in found.value)
    return tuple(TableRow(difference, do, move) for difference, do, move in made if difference is not None)


def _look_up(case: Case, rows: tuple[TableRow, ...]) -> LookUp:
    def chosen(name: str) -> str:
        return next(row.row.name for row in case.outcome(name).rows if row.chosen)

    # A way to go is no help, and a danger, where nothing can be moved.
    larger, smaller = (
        ("align.when_tailstock_larger", "align.when_tailstock_smaller")
        if _can_move(case)
        else ("lookup.stands_when_larger", "lookup.stands_when_smaller")
    )
    return LookUp(
        rows=tuple(Move(difference=row.difference, move=row.move) for row in rows),
        larger_at_tailstock=chosen(larger),
        smaller_at_tailstock=chosen(smaller),
        inside=None,
        leave=None,
        verdict_possible=isinstance(case.get("lookup.inside"), Fact),
    )


def _places(case: Case, fields: Mapping[str, FactSpec]) -> Mapping[Part, tuple[Place, ...]]:
    places: dict[Part, list[Place]] = {}
    for row in case.knowledge.tables[FIELDS].rows:
        kind = row.text("kind")
        if kind in (KNOWN, RULE) or (row.text("of_a_move") == "yes" and not _can_move(case)):
            continue
        spec = fields[row.text("name")]
        choices = ("yes", "no") if spec.kind == "yes-no" else spec.choices
        planned = case.get(row.text("designation")) if row.text("designation") else None
        said = fact_pieces(planned, planned.name) if isinstance(planned, Fact) else ()
        unit = "mm" if kind in ("readings", "moves") else spec.unit
        part: Part = row.text("set")  # type: ignore[assignment]  # both are held against their choices by the static check
        places.setdefault(part, []).append(Place(spec.label, unit, choices, said, kind))  # type: ignore[arg-type]
    return {name: tuple(found) for name, found in places.items()}
