"""What a standing procedure owes to people: who may, what changed, where to write, one command at a time, fit words."""

import re
from collections.abc import Iterable, Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import sentences_in, words_of
from tailtrue.parts import Text
from tailtrue.shop_sheet import ShopSheet

_SOP, _TITLE = "standing procedure", "title block"
# Verbs that a line to be done may begin with; each has one meaning in a shop.
_COMMANDS = (
    "Answer|Ask|Brush|Clamp|Clear|Close|Do|Find|Fit|Follow|Give|Hang|Hold|Isolate|Keep|Keeps|Lay|Leave|Let|Look|Name|Never|Open|Press"
    "|Pull|Put|Read|Report|Reserve|Roll|Set|Show|Shut|Sign|Soak|Stand|Start|Stay|Stop|Sweep|Switch|Take|Test|Tick|Tie|Touch"
    "|Tug|Turn|Use|Wait|Wash|Wear|Wipe|Write"
)
_COMMAND = re.compile(rf"(?:{_COMMANDS})\b")
_CONDITION = re.compile(r"IF [^,]+, THEN [a-z]|WHEN [^,]+, [a-z]")
# A state that must be found behind the command that looks for it.
_STATE = re.compile(r"(?:Nothing|Neither|The \w+)\b.*\b(?:moves|stops|stands|stays|turns)\b")
_TWO = re.compile(rf"(?:\b(?:and|then)|,|;) (?:{_COMMANDS.lower()}) (?:it|the|them|a|an|both|all|out|up|back|off)\b")
# Of what lies beyond a limit nothing is ordered there; the way back stands beside it.
_ORDER = re.compile(rf"(?:{_COMMANDS}|Back|Cool|Cut|Drill|Grease|Grip|Loosen|Mount|Move|Skim|Tighten)\b(?!-)")
_OTHERS = re.compile(
    r"\b(?:staff|trainer|trainers|supervisor|roster|area lead|members?|whoever keeps|reports go to|reported by)\b",
    re.IGNORECASE,
)
# What the paper asks for in a place to write or as told, each by a word of its label.
_ASKED = ("last reviewed", "newest copy", "takes the place", "kept at", "number of the machine")
_ASKED_OF_OTHERS = ("sign in", "prior approval", "reports go to")


def permitted_first(sheet: Sheet) -> Iterator[Fault]:
    """The first line is the gate: only who was instructed and is permitted; an owner alone lets nobody else."""
    for sop in _sop(sheet):
        said = words_of(sop.first[0].text, "X").lower() if sop.first else ""
        # An empty part is told by the rule for parts.
        if said and not sheet.shop.owner and not all(word in said for word in ("only if", "instructed", "permitted by")):
            yield Fault(_SOP, "its first line does not shut out who was not instructed and permitted by a named role")
        if sheet.procedure.title.machine not in words_of(sop.photo, "X"):
            yield Fault(_SOP, "the place for the photo does not name the lathe, so that the paper serves the neighbour too")


def places_to_write(sheet: Sheet) -> Iterator[Fault]:
    """What a shop must say has its place, and comments come back to somebody."""
    for sop in _sop(sheet):
        others = not sheet.shop.owner
        labels = [entry.label.lower() for entry in (*sop.control.entries, *sop.local)]
        for asked in (*_ASKED, *(_ASKED_OF_OTHERS if others else ())):
            if not any(asked in label for label in labels):
                yield Fault(_SOP, f'nothing on it says or asks "{asked}"')
        comments = [form for form in sop.forms if "comment" in form.title.lower()]
        if not any(place.high for form in comments for place in form.places):
            yield Fault(_SOP, "it has no place for comments")
        back = [place for form in comments for place in form.places if "back to" in place.label.lower()]
        if others and not back:
            yield Fault(_SOP, "nothing says to whom comments go back")
        if not any(re.search(r"\bnot (?:all|every)\b", words_of(line.text, "X"), re.IGNORECASE) for line in sop.hazard_note):
            yield Fault(_SOP, "nothing says that its list of hazards is not the whole")


def changes_told(sheet: Sheet) -> Iterator[Fault]:
    """Each change has its reason; sheet and standing procedure tell the same of their making."""
    title = sheet.procedure.title
    for name in ("generator", "inputs"):
        if not getattr(title, name).strip():
            yield Fault(_TITLE, f'"{name}" is empty')
    for where, changes in ((_TITLE, title.changes), *((_SOP, sop.control.changes) for sop in _sop(sheet))):
        for one in changes:
            if not one.what.strip() or not one.why.strip():
                yield Fault(where, "a change stands without what changed, or without why")
    for sop in _sop(sheet):
        block = sop.control
        for name, here, there in (
            ("changes", block.changes, title.changes), ("generator", block.generator, title.generator),
            ("files", block.inputs, title.inputs),
        ):  # fmt: skip
            if here != there:
                yield Fault(_SOP, f"its {name} are not those of the sheet")


def words_for_an_owner(sheet: Sheet) -> Iterator[Fault]:
    """Nobody is sent to staff, trainer or roster in a shop of one."""
    if not sheet.shop.owner:
        return
    for sop in _sop(sheet):
        for words in _said(sop):
            if found := _OTHERS.search(words):
                yield Fault(_SOP, f'the owner works alone, and the paper speaks of "{found[0]}": {words}')


def commands_single(sheet: Sheet) -> Iterator[Fault]:
    """What is done before, during and after, and never: one command a sentence, and the sentence begins with it."""
    for sop in _sop(sheet):
        for line in (*sop.before, *sop.during, *sop.after, *sop.forbidden):
            for sentence in sentences_in(words_of(line.text, "X")):
                if not (_COMMAND.match(sentence) or _CONDITION.match(sentence) or _STATE.match(sentence)):
                    yield Fault(_SOP, f'a sentence of "{line.id}" begins with neither command nor condition: {sentence}')
                if _TWO.search(sentence):
                    yield Fault(_SOP, f'a sentence of "{line.id}" holds two commands: {sentence}')


def consequences_command_nothing(sheet: Sheet) -> Iterator[Fault]:
    """What happens beyond a limit is told; what is done about it stands under the way back."""
    limits = [row for sop in _sop(sheet) for row in sop.limits]
    for row in (*sheet.procedure.limits, *limits):
        for sentence in sentences_in(words_of(row.beyond, "X")):
            if _ORDER.match(sentence):
                yield Fault("limits", f'a command hides in what happens beyond "{row.label}": {sentence}')


def _sop(sheet: Sheet) -> Iterator[ShopSheet]:
    if sheet.procedure.sop is not None:
        yield sheet.procedure.sop


def _said(sop: ShopSheet) -> Iterator[str]:
    lines = (
        sop.first, sop.scope, sop.training, sop.supervision, sop.hazard_note, sop.before, sop.during, sop.after,
        sop.forbidden, sop.isolation, sop.waste, sop.records, sop.acknowledgement,
    )  # fmt: skip
    yield from (words_of(line.text, "X") for part in lines for line in part)
    yield from (entry.label for entry in (*sop.control.entries, *sop.local))
    for form in sop.forms:
        yield from (form.title, words_of(form.lead, "X"), *(place.label for place in form.places))
    yield from _cells((row.task, (row.who,)) for row in sop.upkeep)
    yield from _cells((row.beyond, row.back) for row in sop.limits)
    yield from _cells((row.do, row.never) for row in sop.emergency)


def _cells(rows: Iterable[tuple[Text, ...]]) -> Iterator[str]:
    yield from (words_of(cell, "X") for row in rows for cell in row)
