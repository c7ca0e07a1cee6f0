"""Reference pages of things and words: materials, limits, sources, the glossary."""

from collections.abc import Mapping

from tailtrue.reference.printed import printed_part
from tailtrue.reference.writing import head, mark, sourced, table
from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import Row

_OF_MATERIALS = (
    ("hardness_low_hb", "hardness from, HB"),
    ("hardness_high_hb", "to, HB"),
    ("density_kg_m3", "density, kg/m³"),
    ("modulus_mpa", "modulus, MPa"),
    ("expansion_per_k", "expansion, 1/K"),
    ("kc11_low_mpa", "cutting force kc1.1 from, MPa"),
    ("kc11_high_mpa", "to, MPa"),
)


def materials_page(knowledge: Knowledge) -> str:
    """Every material with its figures, and the surface speeds."""
    rows = knowledge.tables["materials/materials"].rows
    lead = "Metals of bars and collars, and what is refused. An empty cell is not known."
    return "\n".join((
        head("Materials", lead),
        table(
            ("material", "name", "used for", "family", "chips", *(words for _, words in _OF_MATERIALS), "source"),
            (
                (f"`{row.text('material')}`", row.text("name"), row.text("roles"), row.text("family"), row.text("chips"),
                 *(_figure(row, column) for column, _ in _OF_MATERIALS), row.text("source"))
                for row in rows
            ),
        ),
        "## Surface speeds\n\nIn m/min; from the lower end for a light lathe to the upper end for a stiff one.\n",
        table(
            ("material", "operation", "tool", "from", "to", "source"),
            (
                (f"`{row.text('material')}`", row.text("operation"), row.text("tool"), _figure(row, "low_m_min"),
                 _figure(row, "high_m_min"), row.text("source"))
                for row in knowledge.tables["cutting/speeds"].rows
            ),
        ),
        "Other operations take a share of these.\n",
        table(
            ("operation", "from", "to", "source"),
            (
                (row.text("operation"), _share(row, "low"), _share(row, "high"), row.text("source"))
                for row in knowledge.tables["cutting/speed_ratios"].rows
            ),
        ),
        printed_part(knowledge),
    ))  # fmt: skip


def _figure(row: Row, column: str) -> str:
    """A figure with the mark of its own sources, whatever the rest of the row hangs on."""
    return row.text(column) + mark(row.source_cell.keys_of(column)) if row.text(column) else ""


def _share(row: Row, end: str) -> str:
    return f"{_figure(row, f'{end}_ratio')} of {row.text(f'{end}_of')}"


def limits_page(knowledge: Knowledge) -> str:
    """Every named limit with its value and its safe direction."""
    lead = "Named limits and allowances. A shop may move one the safe way."
    safe = {"most": "lower", "least": "higher"}
    rows = (
        (
            f"`{name}`",
            limit.spec.label,
            f"{limit.value:g}{'' if limit.spec.unit in ('', '1') else f' {limit.spec.unit}'}",
            safe[limit.spec.bound],
            limit.spec.how,
            sourced(limit.sources),
        )
        for name, limit in knowledge.limits.items()
    )
    return head("Limits", lead) + "\n" + table(("limit", "what it is", "value", "safe way", "why", "source"), rows)


def sources_page(knowledge: Knowledge, uses: Mapping[str, int]) -> str:
    """Every source with how often it is named."""
    lead = "Where the knowledge comes from. Read: its text was seen. Cited: by citation only. Open: not confirmed."
    rows = (
        (f"`{key}`", one.kind, one.title, one.edition, one.status, str(uses.get(key, 0)), one.note)
        for key, one in knowledge.sources.items()
    )
    return head("Sources", lead) + "\n" + table(("key", "kind", "title", "edition", "status", "named", "note"), rows)


def glossary_page(knowledge: Knowledge) -> str:
    """Every term with its other forms and its meaning."""
    lead = "Terms of the trade as our pages use them. A page explains those that stand on it."
    rows = (
        (f"**{one.file.term}**", ", ".join(one.file.also), one.file.meaning, sourced(one.file.sources))
        for one in knowledge.glossary
    )
    return head("Words of the trade", lead) + "\n" + table(("term", "also", "meaning", "source"), rows)
