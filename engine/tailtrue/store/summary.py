"""Counting what the rule base holds."""

from collections import Counter
from typing import Any

from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import source_keys

_OPEN = ("memory", "common-practice")


def summary(knowledge: Knowledge) -> dict[str, Any]:
    """Counts by kind, and of the table rows by the weakest source each relies on."""
    origins: Counter[str] = Counter()
    for table in knowledge.tables.values():
        for row in table.rows:
            keys = source_keys(row.cells.get("source", ""))
            origins[next((key for key in _OPEN if key in keys), "published")] += 1
    return {
        "knowledge_version": knowledge.version,
        "facts": len(knowledge.catalogue),
        "materials": len(knowledge.tables["materials/materials"].rows),
        "decisions": len(knowledge.decisions),
        "cautions": len(knowledge.cautions),
        "stops": len(knowledge.stops),
        "notes": len(knowledge.notes),
        "remarks": len(knowledge.remarks),
        "says": len(knowledge.says),
        "limits": len(knowledge.limits),
        "settable": len(knowledge.given.settable),
        "shop_changes": len(knowledge.shop.changes),
        "steps": len(knowledge.steps),
        "routes": len(knowledge.routes),
        "tables": len(knowledge.tables),
        "table_rows_published": origins["published"],
        "table_rows_common_practice": origins["common-practice"],
        "table_rows_memory": origins["memory"],
    }
