"""Terms of the trade: a paper explains the words that stand on it, each once, briefly, and by a source it lists."""

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from itertools import chain

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import sentences_in, words_of
from tailtrue.parts import Figure, Term

MOST_WORDS = 20
_DIGIT = re.compile(r"\d")
_NO_WORD = re.compile(r"[^\w-]+")
_WORDS = re.compile(r"[\w-]+")
_IN_A_WORD = re.compile(r"[\w-]")
_ENDS = re.compile(r"(?:s|es)?(?![\w-])")
_OWN = frozenset({"term", "seen_as", "meaning"})
_CODES = frozenset({"id", "fact", "unit", "kind", "activities", "sources", "tools", "answers", "signs", "read", "used_at"})
_UNREAD = _OWN | _CODES
_REVIEW, _SHEET, _RECORD, _WORK = "safety review", "glossary", "record", "work record"
_STANDING, _CARD = "standing procedure", "card"
_OF_PAPERS = (_SHEET, _REVIEW, _RECORD, _WORK, _STANDING, _CARD)
_READ_BEFORE_REVIEW = ("do not start", "stop at once")


def explained(sheet: Sheet) -> Iterator[Fault]:
    """What is explained is used on that paper, in order, once, in short sentences without a typed number."""
    listed = {source.id for source in sheet.procedure.sources}
    papers = _said(sheet)
    for where, terms in _papers(sheet):
        said = papers[where]
        names = [term.term.lower() for term in terms]
        if names != sorted(set(names)):
            yield Fault(where, "the terms do not stand once each and in order of the alphabet")
        for term in terms:
            if not _stands(term.seen_as, said):
                yield Fault(where, f'"{term.term}" is explained, and "{term.seen_as}" stands nowhere on this paper')
            yield from _meaning(where, term)
            if not term.sources or any(key.split(":", 1)[0] not in listed for key in term.sources):
                yield Fault(where, f'the source of "{term.term}" is not in the list of sources')


def _papers(sheet: Sheet) -> Iterator[tuple[str, tuple[Term, ...]]]:
    tree = sheet.procedure
    yield _SHEET, tree.glossary
    yield _REVIEW, tree.safety_review.glossary
    if tree.card is not None:
        yield _CARD, tree.card.glossary
    if tree.record is not None:
        yield _RECORD, tree.record.glossary
    if tree.sop is not None:
        yield _STANDING, tree.sop.glossary
    if tree.work_record is not None:
        yield _WORK, tree.work_record.glossary


def _meaning(where: str, term: Term) -> Iterator[Fault]:
    if any(isinstance(piece, Figure) or _DIGIT.search(piece) for piece in term.meaning):
        yield Fault(where, f'a number stands in what "{term.term}" means')
    for sentence in sentences_in(words_of(term.meaning)):
        if len(sentence.split()) > MOST_WORDS:
            yield Fault(where, f'"{term.term}" is explained in a sentence of more than {MOST_WORDS} words')


def _said(sheet: Sheet) -> Mapping[str, str]:
    """The words of each paper, small, each text on a line of its own."""
    # What stands on the same papers is gathered together; a line that stands there twice is read once.
    said: dict[tuple[str, ...], dict[str, None]] = {}
    at: dict[str, dict[str, None]] = {}
    for where in {found[0] for found in chain(sheet.words, sheet.names, sheet.texts)}:
        at[where] = said.setdefault(_papers_with(where), {})
    for where, field, word in sheet.words:
        if field not in _UNREAD:
            at[where][word] = None
    for where, field, names in sheet.names:
        if field not in _UNREAD:
            at[where].update(dict.fromkeys(names))
    for (where, field, _), typed in zip(sheet.texts, sheet.typed, strict=True):
        if field not in _OWN:
            at[where][typed] = None
    return {
        paper: "\n".join(line for papers, lines in said.items() if paper in papers for line in lines).lower()
        for paper in _OF_PAPERS
    }


@lru_cache(maxsize=8192)
def _papers_with(where: str) -> tuple[str, ...]:
    return tuple(paper for paper in _OF_PAPERS if _is_on(paper, where))


def _is_on(paper: str, where: str) -> bool:
    if where.startswith("sop"):
        return paper == _STANDING
    if where.startswith(_REVIEW):
        return paper == _REVIEW
    if where == _CARD:
        return paper == _CARD
    if where.startswith(_READ_BEFORE_REVIEW):
        return paper in (_REVIEW, _SHEET) or (paper == _CARD and where.startswith(_READ_BEFORE_REVIEW[1]))
    for record in (_RECORD, _WORK):
        if where.startswith(record):
            return paper == record
    return paper == _SHEET and not where.startswith(("derivation of", "source "))


def _stands(form: str, said: str) -> bool:
    """Whether a form stands as a word of its own, or in the plural."""
    words = form.lower()
    at = said.find(words)
    while at >= 0:
        if not (at and _IN_A_WORD.match(said, at - 1)) and _ENDS.match(said, at + len(words)):
            return True
        at = said.find(words, at + 1)
    return words in said and _parted(words, said)


def _parted(words: str, said: str) -> bool:
    """Whether words stand one after the other, whatever parts them."""
    here, there = _NO_WORD.sub(" ", words), f" {' '.join(_WORDS.findall(said))} "
    return any(f" {here}{ending} " in there for ending in ("", "s", "es"))
