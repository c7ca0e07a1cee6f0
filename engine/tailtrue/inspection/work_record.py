"""The record of work that is no test of the tailstock: there, whole, its bands and sides those of the sheet."""

from collections.abc import Iterator, Mapping
from math import isclose, isfinite
from typing import NamedTuple

from tailtrue.inspection.record import FIXED
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Figure
from tailtrue.record_sheet import Block, Place
from tailtrue.work_record import WorkRecord

WORK = "work record"
SAME = 1e-6
_BORES = "bore."  # facts whose bands belong to the bar as it is made


class _Work(NamedTuple):
    """What goes with one kind of record. `sides`: what follows from words in what was read, where no number of the step
    tells it; then it must be said. `one_found`: one thing was found, and the sides of the others are not told."""

    step: str  # that only this work has, or this work alone without the one that is `beside` it elsewhere
    blocks: tuple[str, ...]
    sides: tuple[tuple[tuple[str, ...], str], ...]
    one_found: bool = False
    beside: str = ""  # a step of other work that has this one too


_EVERY = ("environment", "instruments", "rejected", "verdict", "signatures")
_RECORDS: Mapping[str, _Work] = {
    "re-certify": _Work(
        "compare-swap", ("bar-before", "rounds", "end-for-end", "computation", "as-left"),
        ((("larger",), "off the tool"), (("smaller",), "toward the tool")),
    ),
    "chucked-bar-test": _Work(
        "decide-bands", ("set-up", "passes", "readings", "readings-across", "computation", "correction", "statement"),
        ((("larger",), "foot under the tool"), (("smaller",), "other foot")),
    ),
    "height-and-droop": _Work(
        "judge-height", ("droop", "sweep", "slack", "height", "lie", "shims"),
        ((("top", "more"), "above"), (("top", "less"), "below"), (("front", "more"), "toward you"),
         (("front", "less"), "away from you")),
    ),
    "make-bar": _Work("certify-bar", ("seats", "joint", "as-left"), (), beside="compare-swap"),
    "rework": _Work("go-back", ("found", "way"), ((("small",), "open"), (("large",), "nothing")), one_found=True),
}  # fmt: skip
_UNKNOWN = _Work("", (), ())
_WORDS = {"above", "below", "toward you", "away from you", "front foot", "rear foot", "open", "nothing"}


def record_there(sheet: Sheet) -> Iterator[Fault]:
    """Work with readings of its own has its record, and a record has a place for all that such work writes down."""
    record = sheet.procedure.work_record
    there = {placed.step.id for placed in sheet.steps}
    due = {name for name, work in _RECORDS.items() if work.step in there and work.beside not in there}
    if record is None:
        yield from (Fault(WORK, f'the work is "{name}", and there is no record to write on') for name in sorted(due))
        return
    if due != {record.id}:
        yield Fault(WORK, f'the record is that of "{record.id}", and the steps are not')
    if not record.subject.strip():
        yield Fault(WORK, "the record does not name what it is of")
    blocks = {block.id for block in record.blocks}
    for name in (*_EVERY, *_RECORDS.get(record.id, _UNKNOWN).blocks):
        if name not in blocks:
            yield Fault(WORK, f'the record has no places for "{name}"')
    for block in record.blocks:
        if not block.columns or not block.entries:
            yield Fault(f"{WORK}, {block.id}", "there is nothing to write on here")
    for name, lines in (
        ("safety", record.safety), ("how it is read", record.told), ("writing", record.fill),
        ("checks before power", record.verify), ("keeping", record.keep), ("the log", record.log),
    ):  # fmt: skip
        if not lines:
            yield Fault(WORK, f"the record says nothing of {name}")


def judged_with(sheet: Sheet) -> Iterator[Fault]:
    """What is judged on a record has unit, band, instrument and how well it reads, and the band is wider than that."""
    for where, place in _places(sheet):
        limits = place.limits
        if limits is None:
            continue
        what = f'"{place.label}" is judged'
        if not place.unit or not place.read_with:
            yield Fault(where, f"{what}, and has no unit or no instrument")
        low, high = limits.low, limits.high
        if low is None and high is None:
            yield Fault(where, f"{what}, and has no limit")
            continue
        if low is not None and high is not None and not low.value < high.value:
            yield Fault(where, f"{what} from {low.value:g} to {high.value:g}, which is no band")
        doubt = place.uncertainty or place.resolution
        most = (high.value - low.value) / 2 if low and high else abs((low or high or doubt).value)  # type: ignore[union-attr]
        if doubt is None or not (isfinite(doubt.value) and 0 < doubt.value <= most):
            told = "nothing" if doubt is None else f"{doubt.value:g}"
            yield Fault(where, f"{what} within {most:g}, and is told to {told}")


def bands_of_the_sheet(sheet: Sheet) -> Iterator[Fault]:
    """Every band of the steps stands on the record, on that of a test the bands of bores; a fact has one number on both."""
    record = sheet.procedure.work_record
    if record is None:
        yield from _bores_of_a_test(sheet)
        return
    for where, band in _not_on(record.blocks, sheet):
        yield Fault(WORK, f"{where} judges {' to '.join(filter(None, band))}, and no place here does")
    told: dict[str, set[float]] = {}
    for one in sheet.at_steps:
        told.setdefault(one.figure.fact, set()).add(one.figure.value)
    for figure in figures_in(record):
        known = () if "table." in figure.fact or "cuts." in figure.fact else told.get(figure.fact, ())
        for other in known:
            if not isclose(figure.value, other, rel_tol=SAME, abs_tol=SAME):
                yield Fault(WORK, f"{figure.fact} is {figure.value:g} here and {other:g} at the steps")


def _bores_of_a_test(sheet: Sheet) -> Iterator[Fault]:
    """Where the collars are fixed too. That a fact has one number is told by the rule on the limits of a test."""
    test = sheet.procedure.record
    if test is None or FIXED not in {placed.step.id for placed in sheet.steps}:
        return
    for where, band in _not_on(test.blocks, sheet):
        if any(name.startswith(_BORES) for name in band):
            yield Fault("record", f"{where} judges {' to '.join(filter(None, band))}, and no place here does")


def _not_on(blocks: tuple[Block, ...], sheet: Sheet) -> Iterator[tuple[str, tuple[str, str]]]:
    """Each step that judges with a band that no place of the blocks has, and the band."""
    bands = {_band(place) for block in blocks for place in block.entries}
    for placed in sheet.steps:
        for check in placed.step.checks:
            if check.limits is not None:
                band = _named(check.limits.low), _named(check.limits.high)
                if band not in bands:
                    yield placed.where, band


def sides_right(sheet: Sheet) -> Iterator[Fault]:
    """What a reading says of a side is what the machine makes of it, in words, and in one of them."""
    record = sheet.procedure.work_record
    if record is None:
        return
    work = _RECORDS.get(record.id, _UNKNOWN)
    told = [(words_of(way.case).lower(), words_of(way.side).lower()) for way in record.ways]
    for case, side in told:
        due = next((way for words, way in work.sides if all(_has(case, word) for word in words)), None)
        if due is None:
            yield Fault(WORK, f'nobody knows what follows from "{case}"')
            continue
        wanted = _in_words(due, front=sheet.shop.tool_side == "front")
        if [word for word in sorted(_WORDS) if _has(side.replace("towards", "toward"), word)] != [wanted]:
            yield Fault(WORK, f'for "{case}" the word is "{wanted}", the record says "{side}"')
    for words, _ in () if work.one_found else work.sides:
        if not any(all(_has(case, word) for word in words) for case, _ in told):
            yield Fault(WORK, f'the record tells no side for "{" ".join(words)}"')


def _in_words(way: str, *, front: bool) -> str:
    return {
        "off the tool": "away from you" if front else "toward you",
        "toward the tool": "toward you" if front else "away from you",
        "foot under the tool": "front foot" if front else "rear foot",
        "other foot": "rear foot" if front else "front foot",
    }.get(way, way)


def _has(text: str, words: str) -> bool:
    return f" {words} " in f" {text.replace(',', ' ').replace(':', ' ').replace('.', ' ')} "


def _places(sheet: Sheet) -> Iterator[tuple[str, Place]]:
    tree = sheet.procedure
    records: tuple[tuple[str, WorkRecord | None], ...] = ((WORK, tree.work_record),)
    for name, record in (("record", tree.record), *records):
        for block in record.blocks if record is not None else ():
            yield from ((f"{name}, {block.id}", place) for place in block.entries)


def _band(place: Place) -> tuple[str, str]:
    return ("", "") if place.limits is None else (_named(place.limits.low), _named(place.limits.high))


def _named(figure: Figure | None) -> str:
    return "" if figure is None else figure.fact
