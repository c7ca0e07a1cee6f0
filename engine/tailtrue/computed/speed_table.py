"""Surface speeds of the table: an operation has rows of its own, or is a share of another one's."""

from tailtrue.printed import SPEEDS, printed_speeds, table_operations
from tailtrue.tables import Table

_METALS, _RATIOS = "materials/materials", "cutting/speed_ratios"
SPEED_TABLES = ("cutting/speeds", _RATIOS)
# Those, and what books print: asked only where the lathe has no speed as slow as is advised.
BORNE_TABLES = (*SPEED_TABLES, SPEEDS, _METALS)


def surface_band(material: str, operation: str, cutter: str, speeds: Table, ratios: Table) -> tuple[float, float]:
    """Lower and upper surface speed for a material, an operation and a tool. [m/min]"""
    shares = ratios.where(operation=operation)
    if not shares:
        row = speeds.one(material=material, operation=operation, tool=cutter)
        return row.number("low_m_min"), row.number("high_m_min")
    share = ratios.take(shares[0])
    low, high = (
        speeds.one(material=material, operation=share.text(f"{end}_of"), tool=cutter).number(f"{end}_m_min")
        * share.number(f"{end}_ratio")
        for end in ("low", "high")
    )
    return low, high


def most_printed(
    material: str, operation: str, cutter: str, ratios: Table, printed: Table, materials: Table
) -> float | None:
    """Highest surface speed that books print for a metal, an operation and a tool; none where they print none. [m/min]"""
    tables = {_RATIOS: ratios, SPEEDS: printed, _METALS: materials}
    found = [
        row.number("high_m_min")
        for one in table_operations(tables, operation)
        for row in printed_speeds(tables, material, one, cutter)
    ]
    return max(found, default=None)
