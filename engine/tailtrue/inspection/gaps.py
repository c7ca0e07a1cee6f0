"""Nothing left open: no placeholder, no empty text, no part of the sheet missing."""

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from itertools import accumulate

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import FoundWord, Sheet

# "None of them" is English; a lone None, nan or inf is a value that was never there.
_OPEN = re.compile(r"\{\{|\}\}|\{%|\bNone\b(?!\s+of\b)|\b(?:nan|NaN|TBD|TODO|FIXME)\b|(?<![\w-])-?inf\b|\?\?\?")
# No match without one of these letter by letter, and taking labels out makes none: most words need no closer look.
_SUSPECT = ("{{", "}}", "{%", "None", "nan", "NaN", "TBD", "TODO", "FIXME", "inf", "???")
_MAY_BE_EMPTY = frozenset(
    {
        "unit", "boxes", "edition", "approver", "walked_through", "safe", "shop_rule", "dated", "again", "stated",
        "technical_reviewer", "safety_reviewer", "sheet_number",
    }
)  # fmt: skip
_MAY_BE_EMPTY_TEXTS = frozenset(
    {
        "reason", "why", "purpose", "detail", "amount", "planned", "figures", "limited_by", "by_hand", "machine_detail",
        "shop_says", "read_with", "when",
    }
)  # fmt: skip
# Lists of other things; empty, they look like an empty text.
_LISTS = frozenset(
    {
        "cautions", "settings", "checks", "blanks", "job_cautions", "needs", "cut_list", "phases", "steps", "rows",
        "facts", "control", "who_may", "do_not_start", "stop_at_once", "after_a_stop", "in_emergency", "if_it_goes_wrong",
        "conventions", "care", "findings", "limits",
        "choices", "derivations", "alternatives", "avoid", "set_by_hand", "shop_rules", "at_least", "at_most",
        "notes", "groups", "lines", "messages", "answers", "drawings", "near_misses", "alone", "chemicals",
        "training", "supervision", "acknowledgement", "banners", "changes", "any", "supervised", "staff", "glossary",
        "ways", "tables", "besides", "places", "goes_on",
    }
)  # fmt: skip


def nothing_open(sheet: Sheet) -> Iterator[Fault]:
    """No placeholder is left unfilled, and nothing that must say something is empty."""
    labels = tuple(sorted(sheet.shop.labels, key=len, reverse=True))
    # Most words stand in many places: each is looked at once.
    words = {found[2] for found in sheet.words}.union(*{found[2] for found in sheet.names})
    to_look_at = {word for word in words if not word.strip()} | _suspect(words)
    listed = [
        FoundWord(where, name, word)
        for where, name, named in sheet.names if not to_look_at.isdisjoint(named) for word in named
    ]  # fmt: skip
    for where, name, word in [found for found in (*sheet.words, *listed) if found[2] in to_look_at]:
        if not word.strip() and name not in _MAY_BE_EMPTY:
            yield Fault(where, f'"{name.replace("_", " ")}" is empty')
        yield from _open(where, word, labels)
    suspect = _suspect(sheet.lines)
    for (where, name, text), typed in zip(sheet.texts, sheet.typed, strict=True):
        if not typed.strip() and (text or not (name in _LISTS or name in _MAY_BE_EMPTY_TEXTS)):
            yield Fault(where, f'the text "{name.replace("_", " ")}" is empty')
        if typed in suspect:
            yield from _open(where, "".join([piece if isinstance(piece, str) else "1" for piece in text]), labels)


def _suspect(words: Iterable[str]) -> frozenset[str]:
    """Those of many words that need a closer look, looked for in all of them at one go."""
    every = tuple(words)
    joined = "\n".join(every)
    places = [found.start() for mark in _SUSPECT if mark in joined for found in re.finditer(re.escape(mark), joined)]
    ends = tuple(accumulate(len(word) + 1 for word in every)) if places else ()
    return frozenset(every[bisect_right(ends, place)] for place in places)


def _without(words: str, labels: tuple[str, ...]) -> str:
    """Words without what the user calls things, the longest first: a lathe may be named as it likes."""
    for label in labels:
        words = words.replace(label, "thing")
    return words


def _open(where: str, said: str, labels: tuple[str, ...]) -> Iterator[Fault]:
    if not any(mark in said for mark in _SUSPECT):
        return
    words = _without(said, labels)
    found = _OPEN.search(words)
    if found:
        yield Fault(where, f'"{found[0]}" was left in the text: {words}')


def parts_present(sheet: Sheet) -> Iterator[Fault]:
    """Who may, when not to start, when to stop, what to do then: no sheet is without them."""
    procedure = sheet.procedure
    parts = {
        "who may do this": procedure.who_may,
        "when not to start": procedure.do_not_start,
        "when to stop at once": procedure.stop_at_once,
        "what to do after a stop": procedure.after_a_stop,
        "what to do in an emergency": procedure.in_emergency,
        "what to do when it goes wrong": procedure.if_it_goes_wrong,
        "how to read the sheet": procedure.conventions,
        "cautions for the whole job": procedure.job_cautions,
        "what is needed": procedure.needs,
        "the work itself": procedure.phases,
        "how the numbers came about": procedure.derivations,
        "the list of sources": procedure.sources,
    }
    for name, part in parts.items():
        if not part:
            yield Fault("whole sheet", f"the sheet lacks {name}")
    yield from _parts_of_its_kind(sheet)
    for phase in procedure.phases:
        if not phase.steps:
            yield Fault(f"phase {phase.number}", "this phase has no steps")
        for step in phase.steps:
            if not step.text:
                yield Fault(f"step {step.number}", "this step says nothing")
            if not step.boxes:
                yield Fault(f"step {step.number}", "this step has no box to tick")


def _parts_of_its_kind(sheet: Sheet) -> Iterator[Fault]:
    """The parts that not every sheet has are there just where they belong."""
    procedure = sheet.procedure
    found = {
        "drawing": procedure.drawing,
        "cut-list": procedure.cut_list,
        "look-up": procedure.look_up and procedure.look_up.rows,
        "card": procedure.card and procedure.card.steps,
        "care": procedure.care,
        "sop": procedure.sop,
    }
    for name, part in found.items():
        # A standing procedure that is missing is told by its own rule.
        if name in sheet.shop.parts and not part and name != "sop":
            yield Fault("whole sheet", f"the sheet lacks the {name.replace('-', ' ')}")
        elif name not in sheet.shop.parts and part:
            yield Fault("whole sheet", f"the sheet has a {name.replace('-', ' ')}, which has no place in this job")
