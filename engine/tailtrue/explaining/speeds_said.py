"""The speed that a cut is advised for a light lathe, beside what books print for the same metal, operation and tool."""

from collections.abc import Iterator

from tailtrue.case import Case
from tailtrue.computed.registry import Computed, Cut
from tailtrue.explaining.said import Line, Side
from tailtrue.parts import Figure, Text
from tailtrue.printed import advised_row, printed_speeds, table_operations
from tailtrue.tables import Row


def speed_lines(side: Side, way: Computed | None) -> tuple[Line, ...]:
    """A line for the advised band of each operation it is made from, and below it one for each printed row."""
    if way is None or way.cut is None:
        return ()
    metal, tool = side.case.value(way.cut.metal), _tool(side.case, way.cut)
    if metal is None or tool is None:
        return ()
    return tuple(_lines(side, metal, way.cut.operation, tool))


def _tool(case: Case, cut: Cut) -> str | None:
    return case.value(cut.tool) if cut.tool in case.knowledge.catalogue else cut.tool


def _lines(side: Side, metal: str, cut: str, tool: str) -> Iterator[Line]:
    tables = side.case.knowledge.tables
    for operation in table_operations(tables, cut):
        advised = advised_row(tables, metal, operation, tool)
        if advised is None:
            continue
        share = "" if operation == cut else f", of which {cut} takes its share"
        yield Line((f"advised here for {operation}, {tool}: ", *_band(advised), share))
        for row in printed_speeds(tables, metal, operation, tool):
            yield Line((f"{_named(row)}: ", *_band(row), f" ({_by(side, row)})"), 1)


def _band(row: Row) -> Text:
    low, high = (
        Figure(fact="surface speed", value=row.number(f"{end}_m_min"), unit="m/min", rounding="surface-speed")
        for end in ("low", "high")
    )
    return (low,) if low.value == high.value else (low, " to ", high)


def _named(row: Row) -> str:
    hard = f"{row.text('hardness_low_hb')} to {row.text('hardness_high_hb')} HB" if row.text("hardness_low_hb") else ""
    return ", ".join(part for part in (row.text("printed_for"), row.text("condition"), hard) if part)


def _by(side: Side, row: Row) -> str:
    note = row.text("note")
    titles = ", ".join(side.case.knowledge.sources[key].title for key in row.sources)
    return f"{titles}; {note}" if note else titles
