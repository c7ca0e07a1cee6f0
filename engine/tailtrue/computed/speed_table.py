"""Surface speeds of the table: an operation has rows of its own, or is a share of another one's."""

from tailtrue.tables import Table

SPEED_TABLES = ("cutting/speeds", "cutting/speed_ratios")


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
