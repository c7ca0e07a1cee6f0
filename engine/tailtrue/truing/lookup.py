"""The paper of one bar for the lathe: table and scales from the bar as it was made, and places to write in."""

from collections.abc import Mapping

from tailtrue.assemble.filling import Filler, fact_pieces, figure
from tailtrue.assemble.glossary import glossary
from tailtrue.assemble.ways import can_move, ways
from tailtrue.assemble.work_record import block_of
from tailtrue.case import Case
from tailtrue.facts import Fact, FactSpec
from tailtrue.parts import Figure
from tailtrue.record_sheet import Part, Place, RecordSheet, Scales, TableRow
from tailtrue.truing.paper import lines_of, needed
from tailtrue.truth import Truth

FIELDS = "record/fields"
KNOWN = "known"
RULE = "rule"


def record_sheet(case: Case, fields: Mapping[str, FactSpec]) -> RecordSheet:
    """The paper of a case; `fields` are those of a record of the log, by name.

    Raises FactsWrong when the job does not say what the table follows from.
    """
    needed(case, "lookup.table", "lookup.factor", "truing.limit", "lathe.tool_side")
    filler = Filler(case)
    rows = _rows(case)
    leave = filler.figure("lookup.inside" if isinstance(case.get("lookup.inside"), Fact) else "align.uncertainty")
    again = filler.figure("lookup.again_up_to") if isinstance(case.get("lookup.again_up_to"), Fact) else None
    larger, smaller = ways(case)
    sheet = RecordSheet(
        bar=str(case.value("truing.bar")),
        can_move=can_move(case),
        larger_at_tailstock=larger,
        smaller_at_tailstock=smaller,
        safety=lines_of(case, "record-safety"),
        rows=rows,
        scales=Scales(
            least=rows[0].difference,
            most=rows[-1].difference,
            factor=filler.figure("lookup.factor"),
            leave=leave,
            again=again,
        ),
        read=(*lines_of(case, "record-read"), *lines_of(case, "record-table")),
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
        blocks=tuple(block_of(filler, one) for one in case.knowledge.blocks if case.judge(one.when).truth is Truth.YES),
        keep=lines_of(case, "record-keep"),
    )
    return sheet.model_copy(update={"glossary": glossary(case.knowledge.glossary, sheet)})


def _rows(case: Case) -> tuple[TableRow, ...]:
    found = case.get("lookup.table")
    assert isinstance(found, Fact)

    def cell(name: str, value: float | None) -> Figure | None:
        return None if value is None else figure(found.spec.fields[name], f"lookup.table.{name}", value)

    # A difference too close to say has no move: a number that is printed is used.
    made = (
        (cell("difference", row["difference"]), row["do"], None if row["do"] == "again" else cell("move", row["move"]))
        for row in found.value
    )
    return tuple(
        TableRow(difference=difference, do=do, move=move) for difference, do, move in made if difference is not None
    )


def _places(case: Case, fields: Mapping[str, FactSpec]) -> dict[Part, tuple[Place, ...]]:
    places: dict[Part, list[Place]] = {}
    for row in case.knowledge.tables[FIELDS].rows:
        kind = row.text("kind")
        if kind in (KNOWN, RULE) or (row.text("of_a_move") == "yes" and not can_move(case)):
            continue
        spec = fields[row.text("name")]
        choices = ("yes", "no") if spec.kind == "yes-no" else spec.choices
        planned = case.get(row.text("designation")) if row.text("designation") else None
        said = fact_pieces(planned, planned.name) if isinstance(planned, Fact) else ()
        unit = "mm" if kind in ("readings", "moves") else spec.unit or ("1" if spec.kind == "count" else "")
        part: Part = row.text("set")  # type: ignore[assignment]  # both are held against their choices by the static check
        place = Place(
            label=spec.label,
            unit=unit,
            choices=choices,
            planned=said,
            words=not unit and not choices,
            kind=kind,
        )
        places.setdefault(part, []).append(place)
    return {name: tuple(found) for name, found in places.items()}
