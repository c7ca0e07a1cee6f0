"""What a job with a supervisor leaves to nobody else: holds, and the steps in which a learner is hurt."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_ALONE = re.compile(r"\balone\b|\bnobody else\b|\byou\b", re.IGNORECASE)
_NAMED = re.compile(r"\b(?:supervisor|instructor|founder|whoever (?:answers|signs))\b", re.IGNORECASE)
_SECOND = re.compile(r"\bsecond person\b", re.IGNORECASE)
_NEW_TO_A_LEARNER = frozenset({"spindle-start", "facing", "centre-drill", "drill", "bore", "dog-drive", "move-tailstock"})
_TRAINED = re.compile(r"^\W*Somebody trained\b", re.IGNORECASE)


def releases(sheet: Sheet) -> Iterator[Fault]:
    """Where somebody supervises, no hold offers a way for one who is alone; a learner or a minor releases none."""
    for placed in sheet.steps:
        hold = placed.step.hold
        if hold is None:
            continue
        if sheet.shop.supervised and (_ALONE.search(hold.releases) or _SECOND.search(hold.releases)):
            yield Fault(placed.where, f'the job is supervised, and its hold is released by "{hold.releases}"')
        elif sheet.shop.instructed and not _NAMED.search(hold.releases):
            yield Fault(placed.where, f'a learner or a minor works, and its hold is released by "{hold.releases}"')


def marked(sheet: Sheet) -> Iterator[Fault]:
    """A learner or a minor starts, faces, drills, bores, cuts between centres and moves a tailstock with a supervisor.

    Where its row gives the saw to an adult, the step is for staff.
    """
    if not sheet.shop.instructed:
        return
    for placed in sheet.steps:
        row = next((line for line in placed.step.settings if line.label == ("who saws",)), None)
        if row and placed.step.who != "staff" and any("adult" in piece for piece in row.value if isinstance(piece, str)):
            yield Fault(placed.where, "an adult saws by its row, and the step is not marked for staff")
        found = sorted(_NEW_TO_A_LEARNER.intersection(placed.step.activities))
        if found and placed.step.who == "any":
            yield Fault(placed.where, f'a learner or a minor does "{found[0]}", and it is not marked for a supervisor')


def cut_beside_somebody(sheet: Sheet) -> Iterator[Fault]:
    """A learner or a minor lets nothing turn alone, whatever the step is called: no cut, no skim, no proof of a stop."""
    for placed in sheet.steps if sheet.shop.instructed else ():
        if placed.step.machine == "turning" and placed.step.who == "any":
            yield Fault(placed.where, "a learner or a minor works while the spindle turns, and no supervisor is marked")


def told_who(sheet: Sheet) -> Iterator[Fault]:
    """Who may do the work names whoever does it: a sheet for a learner is not one for trained people only."""
    lines = [words_of(text) for text in sheet.procedure.who_may]
    if sheet.shop.instructed and (any(map(_TRAINED.search, lines)) or not any("supervisor" in line for line in lines)):
        yield Fault("who may do this", "a learner or a minor works, and only trained people may by this sheet")
