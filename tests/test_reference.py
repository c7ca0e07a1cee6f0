"""The reference pages in the docs are those that the knowledge makes."""

from functools import cache
from pathlib import Path

import pytest

from tailtrue.advise import knowledge
from tailtrue.places import knowledge_folder
from tailtrue.reference import pages
from tailtrue.store.sources_named import sources_named

DOCS = Path(__file__).parents[1] / "docs"
NAMES = ("materials", "decisions", "cautions", "stops", "steps", "routes", "limits", "sources", "glossary")


@cache
def made() -> dict[str, str]:
    return pages(knowledge(), sources_named(knowledge_folder(), knowledge()))


@pytest.mark.parametrize("name", ["facts.md", *(f"reference/{name}.md" for name in NAMES)])
def test_a_page_is_not_stale(name: str) -> None:
    written = (DOCS / name).read_text(encoding="utf-8")
    assert written == made()[name], "run: tailtrue knowledge reference --out docs"


def test_every_given_fact_and_field_is_on_the_page() -> None:
    page = made()["facts.md"]
    for fact in knowledge().given.facts.values():
        for one in (fact, *fact.fields.values()):
            assert f"`{one.key}`" in page or f".{one.key}]]`" in page


def test_every_entry_is_on_its_page() -> None:
    known = knowledge()
    ids = {
        "decisions": known.decisions,
        "cautions": [one.file.id for one in known.cautions],
        "stops": [one.file.id for one in known.stops],
        "steps": known.steps,
        "routes": known.routes,
        "limits": known.limits,
        "sources": known.sources,
        "materials": [row.text("material") for row in known.tables["materials/materials"].rows],
    }
    for name, entries in ids.items():
        page = made()[f"reference/{name}.md"]
        assert all(f"`{one}`" in page for one in entries), name
    assert all(f"**{one.file.term}**" in made()["reference/glossary.md"] for one in known.glossary)


def test_what_nobody_confirms_is_marked() -> None:
    limits = made()["reference/limits.md"].splitlines()
    for name, limit in knowledge().limits.items():
        (line,) = (line for line in limits if line.startswith(f"| `{name}` |"))
        assert line.endswith("‡ |") == ("memory" in limit.sources)


def test_each_figure_of_a_material_has_the_mark_of_its_own_sources() -> None:
    (line,) = (
        line for line in made()["reference/materials.md"].splitlines() if line.startswith("| `aluminium-6061-t6` | al")
    )
    cells = [cell.strip() for cell in line.split("|")]
    assert {"2700", "69000", "90 ‡", "100 ‡"} <= set(cells), "density and modulus are printed, the hardness is from memory"


def test_every_source_is_named_somewhere() -> None:
    # What the user or the shop said has no entry that names it: the sheet does.
    assert set(knowledge().sources) - {"given", "shop-rule"} <= set(sources_named(knowledge_folder(), knowledge()))
