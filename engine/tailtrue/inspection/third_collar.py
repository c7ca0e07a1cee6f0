"""The collar in the middle: asked for and on every paper, or on none; where it sits, and when it is read."""

import re
from collections.abc import Iterator

from tailtrue.inspection.drawing import size
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import FIGURE, Placed, Sheet
from tailtrue.inspection.spelt import words_of

_CLOSE_MM = 0.01
_MIDDLE, _APART = "third.station", "third.apart"
_COLLAR = re.compile(r"\bcollar\b", re.IGNORECASE)
_BLANK, _FRONT = "collar blank", "Collars"
_IN_A_WORD = {2: "two", 3: "three"}
_ORDER = ("headstock", "middle", "tailstock", "tailstock", "middle", "headstock")
_OF_TWO, _OF_THREE = "head, tail, tail, head", "head, middle, tail"
_MIDDLE_ALONE, _WIPED = re.compile(r"\bmiddle seat alone\b"), re.compile(r"\bWipe the seat at end B\b")
_END_SEATS = re.compile(r"\bseat at each end\b")
_ENDS = ("headstock", "tailstock")
_NAMES = ("headstock", "middle", "tailstock")


def _due(sheet: Sheet) -> int:
    return 3 if sheet.shop.third_collar else 2


def counted(sheet: Sheet) -> Iterator[Fault]:
    """As many collars are sawn, and go through each phase that is done collar by collar, as the job asks for."""
    due = _due(sheet)
    for cut in sheet.procedure.cut_list:
        if cut.piece.startswith(_BLANK) and cut.count != due:
            yield Fault(f"cut list, {cut.piece}", f"the job asks for {due} collars, the list has {cut.count}")
    for line in sheet.procedure.facts:
        said = words_of(line.value).split(",")[0].strip()
        if words_of(line.label) == _FRONT and said != _IN_A_WORD[due]:
            yield Fault(f"this job, {_FRONT}", f'the job asks for {due} collars, the front says "{said}"')
    for phase in sheet.procedure.phases:
        named = [piece for piece in phase.each if _COLLAR.search(piece)]
        if named and len(named) != due:
            yield Fault(f"phase {phase.number}", f"the job asks for {due} collars, the phase is done for {len(named)}")


def in_the_middle(sheet: Sheet) -> Iterator[Fault]:
    """The third collar sits half-way, clear of its neighbours; a bar without one shows none."""
    drawing = sheet.procedure.drawing
    if drawing is None:
        return  # whether the sheet must have one is judged with its parts
    there = [name for name in (_MIDDLE, _APART) if name in drawing.dimensions]
    if not sheet.shop.third_collar:
        yield from (Fault("drawing", f"the job asks for two collars, and {name} is drawn") for name in there)
        return
    names = (_MIDDLE, _APART, "bar.length", "collar.station", "collar.width")
    middle, apart, length, station, width = (size(sheet, name) for name in names)
    if middle is None or apart is None:
        yield Fault("drawing", "the job asks for a third collar, and it is not drawn")
        return
    if length is None or station is None or width is None:
        return  # told by the rule on missing dimensions
    if not abs(2 * middle - length) <= _CLOSE_MM:
        yield Fault("drawing", f"the third collar sits at {middle:g} mm, the middle of {length:g} mm is {length / 2:g} mm")
    if not abs(middle - station - apart) <= _CLOSE_MM:
        yield Fault("drawing", f"from {station:g} mm to {middle:g} mm it is not {apart:g} mm")
    if not apart > width:
        yield Fault("drawing", f"collars {width:g} mm wide, {apart:g} mm from middle to middle, touch each other")


def read_in_order(sheet: Sheet) -> Iterator[Fault]:
    """Three collars are read there and back, so that drift falls out of the middle too; two are not read as three."""
    if not any("skim" in placed.step.activities for placed in sheet.steps):
        return
    read = [placed for placed in sheet.steps if _places(placed)]
    if not sheet.shop.third_collar:
        for placed in read:
            if "middle" in _places(placed):
                yield Fault(placed.where, "the job asks for two collars, and a third is read")
        return
    order = [placed for placed in read if set(_ENDS) <= set(_places(placed)) and len(_places(placed)) > 3]
    if sheet.procedure.look_up is not None and "decide" in {placed.step.id for placed in sheet.steps} and not order:
        yield Fault("steps", "no step reads three collars")
    for placed in order:
        if _places(placed) != _ORDER:
            said, due = ", ".join(_places(placed)), ", ".join(_ORDER)
            yield Fault(placed.where, f"three collars are read {due}; the places say {said}")
        if not any(check.text and "mean of both ends" in words_of(check.text) for check in placed.step.checks):
            yield Fault(placed.where, "no place takes the middle less the mean of both ends")
        told = [figure for _, figures in placed.set_there for figure in figures if figure.fact == "third.allowance"]
        if not told or not all(figure.unit == "mm" and figure.value > 0 for figure in told):
            yield Fault(placed.where, "nothing says up to which deviation the middle tells nothing")
    record = sheet.procedure.record
    if record is not None and "middle" not in {block.id for block in record.blocks}:
        yield Fault("record", "the job asks for a third collar, and the record has no places for it")


def order_told(sheet: Sheet) -> Iterator[Fault]:
    """Where words tell the order of reading, they tell that of the collars that there are."""
    wrong = _OF_TWO if sheet.shop.third_collar else _OF_THREE
    telling = {typed for typed in sheet.lines if wrong in typed.replace(FIGURE, "").lower()}
    for found, typed in zip(sheet.texts, sheet.typed, strict=True):
        if typed in telling:
            yield Fault(found.where, f'the job asks for {_due(sheet)} collars, and the words say "{wrong}"')


def honest_allowance(sheet: Sheet) -> Iterator[Fault]:
    """What the middle may be off without a finding is no less than doubt and bending together."""
    for placed in sheet.steps:
        told = {figure.fact: figure.value for _, figures in placed.set_there for figure in figures}
        parts = [told[name] for name in ("third.doubt", "third.bow_from_cut") if name in told]
        if "third.allowance" in told and len(parts) == 2 and not told["third.allowance"] >= sum(parts) * (1 - 1e-6):
            yield Fault(
                placed.where,
                f"{parts[0]:g} mm of doubt and {parts[1]:g} mm of bending explain more than {told['third.allowance']:g} mm",
            )


def middle_first(sheet: Sheet) -> Iterator[Fault]:
    """The middle seat alone gets compound first, its collar goes on, and the seat it passed is wiped; then the ends."""
    bonds = [placed for placed in sheet.steps if "bond" in placed.step.activities]
    if not sheet.shop.third_collar or not bonds:
        return
    said = [" ".join(map(words_of, placed.step.text)) for placed in bonds]
    if not (_MIDDLE_ALONE.search(said[0]) and _WIPED.search(said[0])):
        yield Fault(
            bonds[0].where, "three collars, and this bond does not begin with the middle seat alone and wipe its way"
        )
    for placed, words in zip(bonds[1:], said[1:], strict=True):
        if not _END_SEATS.search(words):
            yield Fault(
                placed.where, "three collars, and after the middle one this bond does not name the seats at the ends"
            )
    if len(bonds) == 1:
        yield Fault(bonds[0].where, "three collars are bonded in one step: the middle one wipes off what is on the end seat")


def bores_told(sheet: Sheet) -> Iterator[Fault]:
    """A bored collar in the middle slides over the seat at end B, and its bore clears the largest bar on that way."""
    measured = sheet.shop.measured
    if not sheet.shop.third_collar or "middle" not in measured:
        return
    low = [found.figure.value for found in sheet.at_steps if found.figure.fact == "bore.middle_low"]
    bored = any("gauge-bore" in placed.step.activities for placed in sheet.steps)
    if bored and not low:
        yield Fault("bore, middle", "the bar was measured there, and no size is told for the collar in the middle")
    largest = max((*measured["middle"], *measured.get("tail", ())))
    least = sheet.shop.fit_mm[0]
    for value in low:
        if not value >= largest + least - 1e-6:
            what = f"a bore of {value:g} mm does not pass {largest:g} mm of bar with {least:g} mm of clearance"
            yield Fault("bore, middle", what)


def _places(placed: Placed) -> tuple[str, ...]:
    """Which collars a check of this step reads, in the order of its places to write in."""
    for check in placed.step.checks:
        if check.instrument == "micrometer-collars" and len(check.blanks) > 3:
            return tuple(next((name for name in _NAMES if name in blank.label.lower()), "") for blank in check.blanks)
    return ()
