"""Reference pages made from the knowledge: what a user may say, and everything that the rules say back."""

from collections.abc import Mapping

from tailtrue.reference.facts import facts_page
from tailtrue.reference.rules import cautions_page, decisions_page, stops_page
from tailtrue.reference.things import glossary_page, limits_page, materials_page, sources_page
from tailtrue.reference.work import routes_page, steps_page
from tailtrue.store.knowledge import Knowledge

_PAGES = {
    "materials": materials_page,
    "decisions": decisions_page,
    "cautions": cautions_page,
    "stops": stops_page,
    "steps": steps_page,
    "routes": routes_page,
    "limits": limits_page,
    "glossary": glossary_page,
}


def pages(knowledge: Knowledge, uses: Mapping[str, int]) -> dict[str, str]:
    """Every page by its path below the docs; `uses` tells how often each source is named."""
    made = {f"reference/{name}.md": page(knowledge) for name, page in _PAGES.items()}
    return {
        "facts.md": facts_page(knowledge.given), **made, "reference/sources.md": sources_page(knowledge, uses)
    }  # fmt: skip
