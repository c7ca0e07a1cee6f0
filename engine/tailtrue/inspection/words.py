"""Terms of the trade: a paper explains the words that stand on it, each once, briefly, and by a source it lists."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Figure, Term

MOST_WORDS = 20
_NO_WORD = re.compile(r"[^\w-]+")
_WORDS = re.compile(r"[\w-]+")
_END = re.compile(r"(?<=[.!?])\s+")
_OWN = frozenset({"term", "seen_as", "meaning"})
_CODES = frozenset({"id", "fact", "unit", "kind", "activities", "sources", "tools", "answers", "signs", "read", "used_at"})
_UNREAD = _OWN | _CODES
_REVIEW, _SHEET = "safety review", "glossary"
_READ_BEFORE_REVIEW = ("do not start", "stop at once")


def explained(sheet: Sheet) -> Iterator[Fault]:
    """What is explained is used on that paper, in order, once, in short sentences without a typed number."""
    listed = {source.id for source in sheet.procedure.sources}
    for where, terms in _papers(sheet):
        said = _said(sheet, where)
        parted = f" {' '.join(_WORDS.findall(said))} "
        names = [term.term.lower() for term in terms]
        if names != sorted(set(names)):
            yield Fault(where, "the terms do not stand once each and in order of the alphabet")
        for term in terms:
            if not _stands(term.seen_as, said, parted):
                yield Fault(where, f'"{term.term}" is explained, and "{term.seen_as}" stands nowhere on this paper')
            yield from _meaning(where, term)
            if not term.sources or any(key.split(":", 1)[0] not in listed for key in term.sources):
                yield Fault(where, f'the source of "{term.term}" is not in the list of sources')


def _papers(sheet: Sheet) -> Iterator[tuple[str, tuple[Term, ...]]]:
    tree = sheet.procedure
    yield _SHEET, tree.glossary
    yield _REVIEW, tree.safety_review.glossary


def _meaning(where: str, term: Term) -> Iterator[Fault]:
    if any(isinstance(piece, Figure) or re.search(r"\d", piece) for piece in term.meaning):
        yield Fault(where, f'a number stands in what "{term.term}" means')
    for sentence in _END.split("".join(piece for piece in term.meaning if isinstance(piece, str))):
        if len(sentence.split()) > MOST_WORDS:
            yield Fault(where, f'"{term.term}" is explained in a sentence of more than {MOST_WORDS} words')


def _said(sheet: Sheet, paper: str) -> str:
    """The words of one paper, small, each text on a line of its own."""
    places = {word.where for word in sheet.words} | {text.where for text in sheet.texts}
    here = {where for where in places if _is_on(paper, where)}
    lines = [word.word for word in sheet.words if word.where in here and word.field not in _UNREAD]
    lines += [
        "".join([piece if isinstance(piece, str) else "\u25a1" for piece in text.text])
        for text in sheet.texts
        if text.where in here and text.field not in _OWN
    ]
    return "\n".join(lines).lower()


def _is_on(paper: str, where: str) -> bool:
    if where.startswith("sop"):
        return False
    if where.startswith(_REVIEW):
        return paper == _REVIEW
    if where.startswith(_READ_BEFORE_REVIEW):
        return paper in (_REVIEW, _SHEET)
    return paper == _SHEET and not where.startswith(("derivation of", "source ", "record"))


def _stands(form: str, said: str, parted: str) -> bool:
    """Whether a form stands as a word of its own, or in the plural; `parted` are the words alone, a space between."""
    words = form.lower()
    if words not in said:
        return False
    here = _NO_WORD.sub(" ", words)
    return any(f" {here}{ending} " in parted for ending in ("", "s", "es"))
