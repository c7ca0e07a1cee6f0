"""Counting what the rule base holds, and where its values come from."""

from typing import Any

from tailtrue.store.knowledge import Knowledge
from tailtrue.store.values import by_origin, origin_of, unconfirmed, values

_MOST_PLACES = 12


def summary(knowledge: Knowledge) -> dict[str, Any]:
    """Counts by kind; rows of tables and single values by the weakest source each relies on."""
    rows = [row for table in knowledge.tables.values() for row in table.rows]
    origins = [origin_of(row.sources) for row in rows]
    conditioned = (knowledge.cautions, knowledge.stops, knowledge.notes, knowledge.remarks)
    decision_rows = sum(len(decision.rows) for decision in knowledge.decisions.values())
    examples = sum(len(rule.file.example) for kind in conditioned for rule in kind)
    found = by_origin(values(knowledge))
    return {
        "knowledge_version": knowledge.version,
        "facts": len(knowledge.catalogue),
        "materials": len(knowledge.tables["materials/materials"].rows),
        "decisions": len(knowledge.decisions),
        "decision_rows": decision_rows,
        "cautions": len(knowledge.cautions),
        "stops": len(knowledge.stops),
        "notes": len(knowledge.notes),
        "remarks": len(knowledge.remarks),
        "rules": decision_rows + sum(len(kind) for kind in conditioned),
        "examples": examples + sum(len(some) for some in knowledge.decision_examples.values()),
        "says": len(knowledge.says),
        "limits": len(knowledge.limits),
        "settable": len(knowledge.given.settable),
        "shop_changes": len(knowledge.shop.changes),
        "steps": len(knowledge.steps),
        "routes": len(knowledge.routes),
        "sources": len(knowledge.sources),
        "unreached_explained": len(knowledge.tables["sweep/unreached"].rows),
        "tables": len(knowledge.tables),
        "table_rows": len(rows),
        "table_rows_published": origins.count("published"),
        "table_rows_common_practice": origins.count("common_practice"),
        "table_rows_memory": origins.count("memory"),
        "values": sum(found.values()),
        **{f"values_{origin}": count for origin, count in found.items()},
    }


def percent_published(counts: dict[str, Any]) -> str:
    """The share of the values that a published source stands behind, rounded down: a goal barely missed is missed.

    >>> percent_published({"values": 6079, "values_published": 4237})
    '69.6 %'
    >>> percent_published({"values": 0, "values_published": 0})
    '0.0 %'
    """
    tenths = 1000 * counts["values_published"] // counts["values"] if counts["values"] else 0
    return f"{tenths // 10}.{tenths % 10} %"


def weighing_most(knowledge: Knowledge) -> list[tuple[str, int]]:
    """The places with the most values that no published source confirms."""
    return unconfirmed(values(knowledge))[:_MOST_PLACES]
