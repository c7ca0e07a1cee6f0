"""A collar on a stub: its bore known before the stub is turned, its seat judged only where its face is cut."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

_GAP = "limit.stub_gap"
# Of two kept bores: the stub under the smaller, and how much larger the other may be.
_UNDER, _DIFFER = "stub.gap_in_smaller", "limit.stub_bores_differ"
_SLACK_MM = 1e-6
_LIGHT = re.compile(r"\bno light between\b", re.IGNORECASE)


def gauged_before(sheet: Sheet) -> Iterator[Fault]:
    """The bore of every collar that is faced on the stub was gauged before the stub was turned to it."""
    gauged: set[str] = set()
    known: set[str] | None = None
    for placed in sheet.steps:
        done, pieces = set(placed.step.activities), placed.phase.each
        if "gauge-bore" in done:
            gauged.update(pieces)
        if _turning(placed, "turn-stub"):
            known = set(gauged)
        if _turning(placed, "face-on-stub") and known is not None:
            for piece in sorted(set(pieces) - known):
                yield Fault(placed.where, f"{piece} is faced on a stub that was turned before its bore was gauged")


def one_stub_for_both(sheet: Sheet) -> Iterator[Fault]:
    """A collar that is faced twice on the stub meets it as it is: both bores are held to one size of it, and told so."""
    most = sheet.shop.limits.get(_GAP, (0.0, ""))[0]
    faced = [(piece, placed) for placed in sheet.steps if _turning(placed, "face-on-stub") for piece in placed.phase.each]
    if len({piece for piece, _ in faced}) == len(faced):
        return
    told = {fact: value for placed in sheet.steps for fact, value in placed.told.items()}
    room = told.get(_UNDER, most) + told.get(_DIFFER, most)
    if room > most + _SLACK_MM:
        yield Fault(
            faced[0][1].where, f"the stub fits one kept bore and may be {room:g} mm under the other, {most:g} mm at most"
        )


def gap_told(sheet: Sheet) -> Iterator[Fault]:
    """Where a stub is turned, the step tells how far under the bores it may be, no more than a spreading stub bears."""
    most = sheet.shop.limits.get(_GAP, (0.0, ""))[0]
    for placed in sheet.steps:
        if _turning(placed, "turn-stub") and not 0 < placed.told.get(_GAP, 0.0) <= most:
            yield Fault(placed.where, f"the stub may be {most:g} mm under the bores, and the step does not say so")


def seat_looked_at(sheet: Sheet) -> Iterator[Fault]:
    """A cut face on the shoulder is looked at for light; a raw face never shuts it out, and is not judged by it."""
    faced = False
    for place, placed in enumerate(sheet.steps):
        if _turning(placed, "face-on-stub") or (_turning(placed, "facing") and "cut-collar" in placed.step.activities):
            faced = True
        after = sheet.steps[place + 1 :]
        put_on = "mount-on-stub" in placed.step.activities and any(
            one.phase is placed.phase and _turning(one, "face-on-stub") for one in after
        )
        asked = any(_LIGHT.search(words_of(check.text)) for check in placed.step.checks)
        if put_on and faced and not asked:
            yield Fault(placed.where, "the collar seats on the shoulder, and nobody looks for light behind it")
        if put_on and not faced and asked:
            yield Fault(placed.where, "a raw face lets light through at the shoulder: the check cannot pass")


def _turning(placed: Placed, activity: str) -> bool:
    return placed.step.machine == "turning" and activity in placed.step.activities
