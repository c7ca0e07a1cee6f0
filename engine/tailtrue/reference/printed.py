"""What books print of speeds and forces, for the page of materials."""

from tailtrue.printed import FORCES, SPEEDS, chip_thickness
from tailtrue.reference.writing import sourced, table
from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import Row

_SPEEDS = "Printed surface speeds"
_SPEEDS_LEAD = (
    "In m/min, feeds and depths in mm. No advised speed is above the highest one printed here for its metal, operation "
    "and tool."
)
_FORCES = "Printed cutting forces"
_FORCES_LEAD = (
    "Force for each mm² of chip, in MPa, at the chip thickness named. The upper force of a metal is never below one "
    "printed here."
)


def printed_part(knowledge: Knowledge) -> str:
    """Both lists, each with what is held against it."""
    speeds = (
        (_metals(row), _cut(row), row.text("tool"), _range(row, "{}_m_min"), _range(row, "feed_{}_mm"),
         _range(row, "depth_{}_mm"), _from(row))
        for row in knowledge.tables[SPEEDS].rows
    )  # fmt: skip
    forces = (
        (_metals(row), _cut(row), f"{chip_thickness(knowledge.tables, row):g}", row.text("specific_force_mpa"),
         row.text("exponent"), _from(row))
        for row in knowledge.tables[FORCES].rows
    )  # fmt: skip
    return "\n".join((
        f"## {_SPEEDS}\n\n{_SPEEDS_LEAD}\n",
        table(("for", "printed for", "tool", "speed", "feed", "depth", "source"), speeds),
        f"## {_FORCES}\n\n{_FORCES_LEAD}\n",
        table(("for", "printed for", "chip, mm", "force", "exponent", "source"), forces),
    ))  # fmt: skip


def _metals(row: Row) -> str:
    return ", ".join(f"`{name}`" for name in row.listed("materials"))


def _cut(row: Row) -> str:
    hard = _range(row, "hardness_{}_hb")
    cut = row.listed("operations") if "operations" in row.cells else ()
    condition = row.cells.get("condition", "")
    return "; ".join(part for part in (row.text("printed_for"), condition, hard and f"{hard} HB", ", ".join(cut)) if part)


def _range(row: Row, column: str) -> str:
    low, high = (row.text(column.format(end)) for end in ("low", "high"))
    return low if low == high else f"{low} to {high}"


def _from(row: Row) -> str:
    note = row.text("note")
    return sourced([row.text("source")]) + (f" ({note})" if note else "")
