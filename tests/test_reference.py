"""The reference page in the docs is the one that the knowledge makes."""

from pathlib import Path

from tailtrue.given.catalogue import load_catalogue
from tailtrue.places import knowledge_folder
from tailtrue.reference import facts_page

PAGE = Path(__file__).parents[1] / "docs" / "facts.md"


def test_the_page_is_not_stale() -> None:
    made = facts_page(load_catalogue(knowledge_folder()))
    assert PAGE.read_text(encoding="utf-8") == made, "run: tailtrue knowledge reference --out docs"


def test_every_given_fact_and_field_is_on_the_page() -> None:
    page = PAGE.read_text(encoding="utf-8")
    for fact in load_catalogue(knowledge_folder()).facts.values():
        for one in (fact, *fact.fields.values()):
            assert f"`{one.key}`" in page or f".{one.key}]]`" in page
