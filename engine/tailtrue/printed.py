"""What books print for a cut: surface speeds and cutting forces of a metal, each with its own source.

The advised speeds are for light lathes and stay below the printed ones; the forces that limits are made from stay above.
"""

from collections.abc import Iterator, Mapping

from tailtrue.calc.cutting import specific_force
from tailtrue.tables import Row, Table

SPEEDS, FORCES = "cutting/printed_speeds", "cutting/printed_forces"
_METALS, _ADVISED, _RATIOS = "materials/materials", "cutting/speeds", "cutting/speed_ratios"
_FACTORS = "cutting/force_factors"


def table_operations(tables: Mapping[str, Table], operation: str) -> tuple[str, ...]:
    """The operations of the table that a speed is made from: itself, or those that it is a share of."""
    shares = tables[_RATIOS].where(operation=operation)
    if not shares:
        return (operation,)
    return tuple(dict.fromkeys(shares[0].text(f"{end}_of") for end in ("low", "high")))


def advised_row(tables: Mapping[str, Table], material: str, operation: str, tool: str) -> Row | None:
    """The advised row for a metal, an operation of the table, and a tool."""
    found = tables[_ADVISED].where(material=material, operation=operation, tool=tool)
    return found[0] if found else None


def printed_speeds(tables: Mapping[str, Table], material: str, operation: str, tool: str) -> Iterator[Row]:
    """The printed rows for a metal of its hardness, an operation of the table, and a tool. Coated tools are another tool."""
    for row in _of_metal(tables, SPEEDS, material):
        if row.says("operations", operation) and tool == row.text("tool"):
            yield row


def printed_forces(tables: Mapping[str, Table], material: str) -> Iterator[Row]:
    """The printed specific forces for a metal of its hardness."""
    yield from _of_metal(tables, FORCES, material)


def chip_thickness(tables: Mapping[str, Table], row: Row) -> float:
    """The chip that a printed force is for; of a table of power, the one for which its feed factor is one. [mm]"""
    return row.number("chip_mm") if row.text("chip_mm") else tables[_FACTORS].value("power_table_chip")


def upper_force(metal: Row, chip_mm: float) -> float:
    """The force that limits are made from, for each mm² of a chip of this thickness. [MPa]"""
    return specific_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), chip_mm)


def _of_metal(tables: Mapping[str, Table], table: str, material: str) -> Iterator[Row]:
    metal = tables[_METALS].one(material=material)
    for row in tables[table].rows:
        if row.says("materials", material) and _as_hard(row, metal):
            yield row


def _as_hard(row: Row, metal: Row) -> bool:
    """Whether the printed hardness meets that of the metal; a hardness that is not said shuts nothing out."""
    if not all(one.text(f"hardness_{end}_hb") for one in (row, metal) for end in ("low", "high")):
        return True
    meets_below = row.number("hardness_low_hb") <= metal.number("hardness_high_hb")
    return meets_below and metal.number("hardness_low_hb") <= row.number("hardness_high_hb")
