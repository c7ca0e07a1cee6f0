"""The record of the sample: every place a record must have, and a table that fits its bar."""

from typing import get_args

from tailtrue.parts import Figure
from tailtrue.record_sheet import Block, Part, Place, RecordSheet, Scales, TableRow

from .sample_pieces import figure, mm

SPAN, SPACING, STATION = 376.0, 260.0, 58.0
LIMIT, DOUBT = 0.026, 0.006
BLOCKS = (
    "environment", "instruments", "bar", "passes", "rim", "computation", "decision", "correction", "vertical", "rejected",
    "statement", "signatures",
)  # fmt: skip


def record() -> RecordSheet:
    """A record that every rule passes."""
    rows = (_row(0.005), _row(0.02), _row(0.025), _row(0.05), _row(0.1))
    places: dict[Part, tuple[Place, ...]] = {part: (Place(label=f"size of {part}", unit="mm"),) for part in get_args(Part)}
    return RecordSheet(
        bar="bar one",
        can_move=True,
        larger_at_tailstock="Tailstock end LARGER: move the tailstock toward you.",
        smaller_at_tailstock="Tailstock end SMALLER: move the tailstock away from you.",
        rows=rows,
        scales=Scales(
            least=_difference(0.005),
            most=_difference(0.1),
            factor=figure("lookup.factor", SPAN / SPACING / 2, "1", "ratio"),
            leave=mm("lookup.inside", 0.02, "difference"),
            again=mm("lookup.again_up_to", LIMIT + DOUBT, "difference"),
        ),
        safety=(("Isolate the lathe.",),),
        read=(
            ("In limits up to ", mm("align.inside", 0.02, "difference"), "."),
            ("The limit is ", mm("align.limit", LIMIT, "difference"), "."),
            ("The limit of this bar is ", mm("truing.limit", LIMIT, "difference"), "."),
            ("The doubt of a reading is ", mm("align.uncertainty", DOUBT, "difference"), "."),
        ),
        scales_read=(("Lay a straight edge.",),),
        cannot=(("It says nothing of drilling.",),),
        fill=(("Write with a pen.",),),
        known=(
            ("distance between the points", (mm("truing.span", SPAN),)),
            ("headstock collar", (mm("truing.head_station", STATION),)),
            ("tailstock collar", (mm("truing.tail_station", STATION + SPACING),)),
        ),
        places=places,
        verify=(("Both clamps tight.",),),
        blocks=tuple(
            Block(
                id=name,
                title=name,
                columns=("written",),
                entries=(
                    Place(label="speed", unit="1/min", planned=(figure("record.speed", 500, "1/min", "speed"),)),
                    Place(label="seen", choices=("yes", "no")),
                    Place(label="remarks", words=True),
                ),
            )
            for name in BLOCKS
        ),
        keep=(("Keep it with the lathe.",),),
    )


def _difference(value: float) -> Figure:
    return mm("lookup.table.difference", value, "difference")


def _row(value: float) -> TableRow:
    if value <= 0.02:
        return TableRow(difference=_difference(value), do="leave", move=None)
    move = mm("lookup.table.move", value / 2 * SPAN / SPACING, "difference")
    if value <= LIMIT + DOUBT:
        return TableRow(difference=_difference(value), do="again", move=None)
    return TableRow(difference=_difference(value), do="move", move=move)
