"""The standing procedure of a shared shop: whole, in force only when signed, and at one with the sheet it belongs to."""

import re
from collections import Counter
from collections.abc import Iterator
from datetime import date

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import sentences_in, words_of
from tailtrue.shop_sheet import LimitRow, Line, ShopSheet

_SOP, _LIMITS = "standing procedure", "limits"
_MOST_LINES, _MOST_WORDS, _LEAST_ROWS = 12, 20, 15
_PARTS = (
    "first", "scope", "training", "supervision", "local", "who", "hazards", "signs", "wear", "guards", "before", "during",
    "after", "forbidden", "limits", "upkeep", "isolation", "emergency", "waste", "records", "acknowledgement", "forms",
    "references",
)  # fmt: skip
_FOR_OTHERS = {"training", "supervision", "acknowledgement"}
_GLOVES, _NO_GLOVES = "M009", "P028"
_SIGN = re.compile(r"[EFMPW]\d{3}")
# A limit printed for people, and the cap of the shop it must not pass.
_CAPS = {
    "chuck.speed_limit": "chuck",
    "blank.chuck_speed_limit": "chuck of the blanks",
    "bar.hold_speed_limit": "what grips the bar",
    "rework.chuck_speed_limit": "chuck of the collar",
    "faceplate.speed_limit": "rim of the faceplate",
    "limit.between_centres_speed": "work on a dog",
    "skim.centre_speed_limit": "tailstock centre",
}
_SPARE = 1 + 1e-6  # what the way through floats may add


def complete(sheet: Sheet) -> Iterator[Fault]:
    """The paper is there, no part of it is empty, and what is read before a start is short."""
    sop = sheet.procedure.sop
    if sop is None:
        if "sop" in sheet.shop.parts:
            yield Fault(_SOP, "the sheet carries no standing procedure")
        return
    alone = sheet.shop.owner
    for name in _PARTS:
        if not getattr(sop, name) and not (alone and name in _FOR_OTHERS):
            yield Fault(_SOP, f'the part "{name}" is empty')
    if sop.first and not re.search(r"\bonly\b", words_of(sop.first[0].text, "X"), re.IGNORECASE):
        yield Fault(_SOP, "its first line does not say who alone may use the lathe")
    for name in ("before", "during", "after"):
        count = len(getattr(sop, name))
        if count > _MOST_LINES:
            yield Fault(_SOP, f'the part "{name}" has {count} lines, {_MOST_LINES} is the most')
    if sop.roster_rows < _LEAST_ROWS and not alone:
        yield Fault(_SOP, f"the roster has {sop.roster_rows} rows, {_LEAST_ROWS} is the least")
    block, title = sop.control, sheet.procedure.title
    for name, here, there in (
        ("revision", block.revision, title.revision), ("date", block.issued, title.date),
        ("version of the rules", block.rules, title.knowledge_version), ("validity", block.valid_for, title.valid_for),
    ):  # fmt: skip
        if here != there:
            yield Fault(_SOP, f'the {name} is "{here}", that of the sheet is "{there}"')


def in_force(sheet: Sheet) -> Iterator[Fault]:
    """Approved only with an author, an approver and a day; whatever is not in force says so on its first page."""
    for sop in _sop(sheet):
        block = sop.control
        if block.status == "approved":
            named = [one for one in block.signatories if one.name]
            if not any(one.day for one in named):
                yield Fault(_SOP, "it is called approved and no approver with a day of approval is named")
            if len(named) < 2 and not sheet.shop.owner:
                yield Fault(_SOP, "it is called approved and does not name both who wrote it and who approved it")
            for one in block.signatories:
                if one.day and _day(one.day) is None:
                    yield Fault(_SOP, f'the day "{one.day}" of {one.role} is no day written as year-month-day')
        if (block.status != "approved" or block.overdue) and not sop.banners:
            yield Fault(_SOP, "it is not in force, and nothing at its head says so")


def signed_by_who_is_there(sheet: Sheet) -> Iterator[Fault]:
    """An owner who works alone signs alone and has no roster; a shop with others has more than one to answer for it."""
    for sop in _sop(sheet):
        roles = len(sop.control.signatories)
        if sheet.shop.owner and (roles != 1 or sop.roster_rows):
            yield Fault(_SOP, "the owner works alone, and others are to sign or to be listed")
        if not sheet.shop.owner and roles < 2:
            yield Fault(_SOP, "others use this lathe, and one alone signs")


def reviewed_in_time(sheet: Sheet) -> Iterator[Fault]:
    """The next review is due within a year of the date of the sheet, and a review that is overdue is called so."""
    for sop in _sop(sheet):
        block = sop.control
        issued, due = _day(block.issued), _day(block.review_due)
        if due is None:
            yield Fault(_SOP, f'the day of the review "{block.review_due}" is no day written as year-month-day')
        # A sheet without a proper date fails for that.
        if due is None or issued is None:
            continue
        # Of two days a year apart the later has the same month and day; only a leap day has no twin.
        if (due.year - issued.year, due.month, due.day) > (1, issued.month, issued.day):
            yield Fault(_SOP, f"the review is due on {due}, more than twelve months after {issued}")
        if block.overdue != (due < issued):
            yield Fault(_SOP, f"a review due on {due} is {'' if block.overdue else 'not '}called overdue on {issued}")


def limits_lead_back(sheet: Sheet) -> Iterator[Fault]:
    """Every limit says what happens beyond it, and the way back; where a tool meets turning work the sheet has limits."""
    for where, row in _limits(sheet):
        for name, text in (("value", row.limit), ("consequence", row.beyond), ("way back", row.back)):
            if not words_of(text, "X").strip():
                yield Fault(where, f'the limit "{row.label}" has no {name}')
    if not sheet.procedure.limits and _turns(sheet):
        yield Fault(_LIMITS, "the spindle turns and the sheet tells no limit")


def limits_hold(sheet: Sheet) -> Iterator[Fault]:
    """No limit for people lies above what the lathe, its chuck and its centres allow."""
    shop = sheet.shop
    caps = {cap.name: cap.limit_per_min for cap in shop.speed_caps}
    sizes = {"lathe.swing_over_slide": shop.swing_over_cross_slide_mm, "bar.length_limit": shop.between_centres_mm}
    for where, row in _limits(sheet):
        for figure in figures_in(row.limit):
            if figure.fact not in _CAPS and figure.fact not in sizes:
                continue
            most = sizes.get(figure.fact) or caps.get(_CAPS.get(figure.fact, ""))
            if most is None:
                yield Fault(where, f'nothing is known of the shop to hold the limit "{row.label}" against')
            elif not figure.value <= most * _SPARE:
                said = f"{figure.value:g} {figure.unit}"
                yield Fault(where, f'the limit "{row.label}" is {said}, the shop allows {most:g} {figure.unit}')


def who_may(sheet: Sheet) -> Iterator[Fault]:
    """Every step of the work stands once in the table of who may do it, under the word of the step."""
    for sop in _sop(sheet):
        told: Counter[tuple[str, str]] = Counter(
            (step.number, who)
            for row in sop.who
            for who, steps in (("any", row.any), ("supervised", row.supervised), ("staff", row.staff))
            for step in steps
        )
        due: Counter[tuple[str, str]] = Counter((placed.step.number, placed.step.who) for placed in sheet.steps)
        for number, who in due - told:
            yield Fault(_SOP, f'step {number} does not stand under "{who}" in the table of who may do it')
        for number, who in told - due:
            yield Fault(_SOP, f'step {number} stands under "{who}" in the table of who may do it, and does not belong there')


def no_gloves(sheet: Sheet) -> Iterator[Fault]:
    """Gloves are never to be worn where a spindle can turn, and the table says so."""
    for sop in _sop(sheet):
        if _turns(sheet) and not any(row.machine == "turning" for row in sop.wear):
            yield Fault(_SOP, "nothing says what is worn while the spindle turns")
        for row in sop.wear:
            if row.machine == "isolated":
                continue
            if _GLOVES in row.signs or _NO_GLOVES not in row.never_signs:
                yield Fault(_SOP, f'the signs of the state "{row.state}" do not forbid gloves, where a spindle can turn')
            if any("glove" in words_of(text, "X").lower() for text in row.required):
                yield Fault(_SOP, f'gloves are to be worn in the state "{row.state}", where a spindle can turn')
            if not any("glove" in words_of(text, "X").lower() for text in row.forbidden):
                yield Fault(_SOP, f'gloves are not forbidden in the state "{row.state}", where a spindle can turn')


def no_abrasive(sheet: Sheet) -> Iterator[Fault]:
    """Abrasive held by hand is among what is never done, wherever work turns."""
    for sop in _sop(sheet) if _turns(sheet) else ():
        never = [words_of(line.text, "X").lower() for line in sop.forbidden]
        if not any("abrasive" in line and "hand" in line and line.startswith("never") for line in never):
            yield Fault(_SOP, "abrasive held by hand is not among what is never done")


def signs_in_words(sheet: Sheet) -> Iterator[Fault]:
    """A hazard is told as on the sheet, every danger stands there, and no sign code stands without its words."""
    cautions = {caution.id: caution for _, caution in sheet.cautions}
    for sop in _sop(sheet):
        words = {sign.code: sign.words.strip() for sign in sop.signs}
        for code, meaning in words.items():
            if not _SIGN.fullmatch(code) or not meaning or _SIGN.search(meaning):
                yield Fault(_SOP, f'the sign "{code}" has no words of its own')
        for worn in sop.wear:
            for code in (*worn.signs, *worn.never_signs):
                if code not in words:
                    yield Fault(_SOP, f'the sign "{code}" in the state "{worn.state}" has no words')
        for row in sop.hazards:
            for code in row.signs:
                if code not in words:
                    yield Fault(_SOP, f'the sign "{code}" at "{row.hazard}" has no words')
            found = cautions.get(row.caution)
            if found is None or (found.signal, found.hazard, found.harm) != (row.signal, row.hazard, row.harm):
                yield Fault(_SOP, f'the hazard "{row.hazard}" is not told as on the sheet')
            elif row.avoid not in found.avoid or (row.shop_says and row.shop_says not in found.avoid):
                yield Fault(_SOP, f'what answers the hazard "{row.hazard}" is not what the sheet says')
        listed = {row.caution for row in sop.hazards}
        for caution in cautions.values():
            if caution.signal == "danger" and caution.id not in listed:
                yield Fault(_SOP, f'the danger "{caution.hazard}" is not among the hazards')


def lines_sound(sheet: Sheet) -> Iterator[Fault]:
    """A line is short, carries no typed number, and names a source that is listed."""
    listed = {source.id for source in sheet.procedure.sources}
    for sop in _sop(sheet):
        for line in _lines(sop):
            words = words_of(line.text, "X")
            if any(len(sentence.split()) > _MOST_WORDS for sentence in sentences_in(words)):
                yield Fault(_SOP, f'the line "{line.id}" has a sentence of more than {_MOST_WORDS} words')
        for name, sources in _cited(sop):
            for key in sources or ("",):
                if key.partition(":")[0] not in listed:
                    yield Fault(_SOP, f'"{name}" rests on "{key}", which is not in the list of sources')


def _sop(sheet: Sheet) -> Iterator[ShopSheet]:
    if sheet.procedure.sop is not None:
        yield sheet.procedure.sop


def _turns(sheet: Sheet) -> bool:
    return any(placed.step.machine == "turning" for placed in sheet.steps)


def _limits(sheet: Sheet) -> Iterator[tuple[str, LimitRow]]:
    """The limits of the sheet and of its standing procedure, with where they stand."""
    yield from ((_LIMITS, row) for row in sheet.procedure.limits)
    for sop in _sop(sheet):
        yield from ((_SOP, row) for row in sop.limits)


def _day(written: str) -> date | None:
    try:
        return date.fromisoformat(written)
    except ValueError:
        return None


def _lines(sop: ShopSheet) -> Iterator[Line]:
    for part in (sop.first, sop.banners, sop.scope, sop.training, sop.supervision, sop.before, sop.during, sop.after,
                 sop.forbidden, sop.isolation, sop.waste, sop.records, sop.acknowledgement):  # fmt: skip
        yield from part


def _cited(sop: ShopSheet) -> Iterator[tuple[str, tuple[str, ...]]]:
    yield from ((line.id, line.sources) for line in _lines(sop))
    yield from ((row.label, row.sources) for row in sop.limits)
    yield from ((row.state, row.sources) for row in sop.wear)
    yield from ((row.name, row.sources) for row in sop.guards)
    yield from ((row.every, row.sources) for row in sop.upkeep)
    yield from ((row.seen, row.sources) for row in sop.emergency)
    yield from ((one.title, (one.source,)) for one in sop.references)
