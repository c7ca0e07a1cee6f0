"""Each paper explains the terms of the trade that stand on it, and no others; in every format the same."""

import re

import pytest

from tailtrue.advise import knowledge
from tailtrue.render.words import HEADINGS

from .made import SHIPPED, Job, job

FORMS = {term.file.term: (term.file.term, *term.file.also) for term in knowledge().glossary}
KNOWN = {term.file.term for term in knowledge().glossary if term.file.known_at_lathe}
LAST = re.compile(rf"## {HEADINGS['glossary']}\n(.*?)(?=\n## |\n\*\*Emergency|\Z)", re.DOTALL)


def explained(markdown: str) -> list[str]:
    """The terms that a paper explains, in its order."""
    return [term for part in LAST.findall(markdown) for term in re.findall(r"^- \*\*(.+?)\*\*", part, re.MULTILINE)]


def stands(term: str, words: str) -> bool:
    """Whether a term or another form of it stands among words, alone or in the plural."""
    return any(re.search(rf"(?<![\w-]){re.escape(form)}(?:s|es)?(?![\w-])", words, re.IGNORECASE) for form in FORMS[term])


def test_the_card_explains_what_not_every_lathe_has_and_nothing_else(made: Job) -> None:
    if made.tree.card is None:
        return
    markdown = made.markdown("card")
    told = explained(markdown)
    rest = LAST.sub("", markdown)
    assert told == [term for term in FORMS if term not in KNOWN and stands(term, rest)], made.name
    # The same words on the page that hangs at the lathe; a card whose one side is full leaves them all to the sheet.
    page = " ".join(made.page("card").words.split())
    shown = [f"{term} {meaning}" in page for term, meaning in _meanings(told)]
    assert len(set(shown)) <= 1, made.name


def test_most_cards_have_room_for_their_words() -> None:
    full = [
        name
        for name in SHIPPED
        if (card := job(name).tree.card)
        and card.glossary
        and f"{card.glossary[0].term} " not in job(name).page("card").words
    ]
    assert len(full) < len(SHIPPED) / 5, full


def _meanings(told: list[str]) -> list[tuple[str, str]]:
    return [(term.file.term, term.file.meaning) for term in knowledge().glossary if term.file.term in told]


@pytest.mark.parametrize("name", ["fernhill/job", "quarry-road/job", "fernhill/height-and-droop"])
@pytest.mark.parametrize("kind", ["procedure", "safety", "record", "sop"])
def test_every_other_paper_explains_each_term_that_it_uses(name: str, kind: str) -> None:
    one = job(name)
    if kind not in one.kinds:
        return
    told = explained(one.markdown(kind))
    assert told
    assert set(told) <= set(FORMS)
    page = " ".join(one.page(kind).words.split())
    for term, meaning in _meanings(told):
        assert meaning in page, (kind, term)
        assert stands(term, page.replace(meaning, "").replace(HEADINGS["glossary"], "")), (kind, term)


def test_how_far_a_reading_may_be_off_has_one_name_on_every_paper(made: Job) -> None:
    """Simplified technical English: one word for one thing. The term of metrology stands where the word is explained."""
    for kind in made.kinds:
        paper = made.markdown(kind).lower()
        assert paper.count("uncertaint") == paper.count("metrology calls it expanded uncertainty"), (made.name, kind)
