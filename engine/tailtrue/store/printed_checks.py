"""What is held of the speeds and forces that books print.

Each row can be looked up; no advised speed is above all printed ones; no force that limits are made from is below a
printed one.
"""

from collections.abc import Iterator

from tailtrue.errors import Problem
from tailtrue.printed import FORCES, SPEEDS, chip_thickness, printed_forces, printed_speeds, upper_force
from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import Row

_ADVISED, _METALS = "cutting/speeds", "materials/materials"
_PAIRS = (
    ("hardness_low_hb", "hardness_high_hb"),
    ("low_m_min", "high_m_min"),
    ("feed_low_mm", "feed_high_mm"),
    ("depth_low_mm", "depth_high_mm"),
)


def printed_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """The faults of the printed rows, and of our own against them."""
    advised = knowledge.tables[_ADVISED].rows
    metals = [row for row in knowledge.tables[_METALS].rows if row.text("kc11_high_mpa")]
    materials = {row.text("material") for row in advised}
    operations = {row.text("operation") for row in advised}
    for row in knowledge.tables[SPEEDS].rows:
        yield from _met(row, "materials", materials, "has no advised speeds")
        yield from _met(row, "operations", operations, "has no advised speeds")
        yield from _pairs(row)
    for row in knowledge.tables[FORCES].rows:
        yield from _met(row, "materials", {metal.text("material") for metal in metals}, "has no cutting force")
        yield from _pairs(row)
    for row in advised:
        yield from _too_fast(knowledge, row)
    for metal in metals:
        yield from _too_weak(knowledge, metal)


def _met(row: Row, column: str, names: set[str], lacks: str) -> Iterator[Problem]:
    for name in row.listed(column):
        if name not in names:
            yield Problem(_where(row), name, f"{lacks}, so nothing meets it in {column}", "mend the name, or take it out")


def _pairs(row: Row) -> Iterator[Problem]:
    for low, high in _PAIRS:
        if low not in row.cells:
            continue
        if bool(row.text(low)) != bool(row.text(high)):
            yield Problem(_where(row), low, f"one of {low} and {high} is empty", "fill both, or leave both empty")
        elif row.text(low) and not 0 < row.number(low) <= row.number(high):
            yield Problem(_where(row), row.text(low), f"{low} is not above nothing and up to {high}", "mend the row")


def _too_fast(knowledge: Knowledge, row: Row) -> Iterator[Problem]:
    names = (row.text("material"), row.text("operation"), row.text("tool"))
    printed = [one.number("high_m_min") for one in printed_speeds(knowledge.tables, *names)]
    for column in ("low_m_min", "high_m_min"):
        if printed and row.number(column) > max(printed):
            yield Problem(
                _where(row),
                row.text(column),
                f"is faster than every printed speed for {', '.join(names)}: the highest is {max(printed):g} m/min",
                f"lower it, or add what prints it to {SPEEDS}.csv",
            )


def _too_weak(knowledge: Knowledge, metal: Row) -> Iterator[Problem]:
    for row in printed_forces(knowledge.tables, metal.text("material")):
        ours = upper_force(metal, chip_thickness(knowledge.tables, row))
        if ours < row.number("specific_force_mpa"):
            yield Problem(
                _where(metal),
                metal.text("kc11_high_mpa"),
                f"gives {ours:.0f} MPa where {row.text('specific_force_mpa')} are printed ({_where(row)})",
                "raise kc11_high_mpa: limits are made from it",
            )


def _where(row: Row) -> str:
    return f"knowledge/{row.table}.csv:{row.line}"
