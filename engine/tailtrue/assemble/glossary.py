"""Terms of the trade that a document uses, found by their words."""

import re
from collections.abc import Iterable, Iterator

from tailtrue.parts import Figure, Node
from tailtrue.parts import Term as Entry
from tailtrue.procedure import Procedure
from tailtrue.store.knowledge import Term

# Names, codes and places: they stand in the tree and are not read as words.
_NOT_READ = frozenset(
    {
        "id", "fact", "unit", "rounding", "bound", "kind", "place", "sources", "activities", "answers", "signs", "read",
        "used_at", "caution", "safety_review", "sop", "card", "record", "work_record", "derivations", "glossary", "checksum",
        "dimensions", "machine", "tools", "protective_equipment", "instrument", "go_back_to", "parts", "shop", "author",
        "approver", "machine_detail", "walked_through",
        "technical_reviewer", "safety_reviewer", "operator", "stated", "never_signs",
    }
)  # fmt: skip

_PIECES = frozenset({str, Figure})
_NUMBERS = frozenset({int, float, bool, type(None)})
_OF_A_WORD = re.compile(r"[\w-]")
_WORD_ENDS = re.compile(r"(?:s|es)?(?![\w-])")


def explained(tree: Procedure, terms: Iterable[Term]) -> Procedure:
    """The tree with the terms that sheet, card, review and standing procedure use, each its own; the record has them."""
    terms, review, card = tuple(terms), tree.safety_review, tree.card
    hidden = [term for term in terms if not term.file.known_at_lathe]
    told = review.model_copy(update={"glossary": glossary(terms, review, tree.do_not_start, tree.stop_at_once)})
    sop = tree.sop
    return tree.model_copy(
        update={
            "safety_review": told,
            "glossary": glossary(terms, tree),
            "card": card and card.model_copy(update={"glossary": glossary(hidden, card, tree.stop_at_once)}),
            # The titles of steps are explained where the steps are.
            "sop": sop and sop.model_copy(update={"glossary": glossary(terms, sop.model_copy(update={"who": ()}))}),
        }
    )


def explaining_sources(tree: Procedure) -> Iterator[str]:
    """Every source that the terms of a tree name."""
    others = (one.glossary for one in (tree.card, tree.record, tree.work_record, tree.sop) if one is not None)
    for terms in (tree.glossary, tree.safety_review.glossary, *others):
        for term in terms:
            yield from term.sources


def glossary(terms: Iterable[Term], *parts: object) -> tuple[Entry, ...]:
    """The terms that stand in these parts of a document, in the order of the glossary."""
    words: list[str] = []
    for part in parts:
        _gather(part, words)
    # What stands there twice is read once.
    said = "\n".join(dict.fromkeys(words)).lower()
    return tuple(
        Entry(
            id=term.file.id,
            term=term.file.term,
            seen_as=form,
            meaning=(term.file.meaning,),
            sources=tuple(term.file.sources),
        )
        for term in terms
        if (form := next((form for form in term.forms if _stands(form.lower(), said)), None))
    )


def _stands(form: str, said: str) -> bool:
    """Whether a form stands as a word of its own, or in the plural."""
    at = said.find(form)
    while at >= 0:
        if not (at and _OF_A_WORD.match(said, at - 1)) and _WORD_ENDS.match(said, at + len(form)):
            return True
        at = said.find(form, at + 1)
    return False


def _gather(part: object, words: list[str]) -> None:
    kind = part.__class__
    if kind is str:
        words.append(part)  # type: ignore[arg-type]
    elif isinstance(part, tuple):
        if _PIECES.issuperset(map(type, part)):
            # A figure parts words and stands for none.
            words.append("".join([piece if piece.__class__ is str else "0" for piece in part]))
            return
        for piece in part:
            _gather(piece, words)
    elif kind is not Figure and Node in kind.__mro__:
        for name, value in vars(part).items():
            if value.__class__ is str:
                if name not in _NOT_READ:
                    words.append(value)
            elif value.__class__ not in _NUMBERS and name not in _NOT_READ:
                _gather(value, words)
