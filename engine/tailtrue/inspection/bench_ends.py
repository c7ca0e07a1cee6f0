"""Ends of a bar centred at the bench: punched before they are drilled, stood firmly, looked at after; and metal for it."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.procedure import Phase, Step

_PUNCH, _DRILL, _UPRIGHT = "centre-punch", "centre-on-press", "upright-bar"
_VEE, _PRESS = "upright-vee", "drill-press"
_WALL, _RUN_OUT, _CLEAN_UP = "limit.bench_wall", "limit.bench_run_out", "limit.clean_up"
_SAWN, _FINISHED = "sawn_diameter", "diameter"
_LENGTH, _HEIGHT = "bar.sawn_length", "crib.upright_height"
_BOLTED = re.compile(r"\bbolt the angle plate\b", re.IGNORECASE)
_TWICE = re.compile(r"\bclamp the bar\b[^.]*\btwo heights\b", re.IGNORECASE)
_UNPLUGGED = re.compile(r"\bpull the plug\b", re.IGNORECASE)


def centred_at_the_bench(sheet: Sheet) -> Iterator[Fault]:
    """An end drilled under the press is punched first, stands bolted and clamped, and is found true after, in its phase."""
    for phase in sheet.procedure.phases:
        for place, step in enumerate(phase.steps):
            if _DRILL not in step.activities:
                continue
            where = f"step {step.number}"
            if not any(_PUNCH in one.activities for one in phase.steps[:place]):
                yield Fault(where, "the end is drilled and no step has marked and punched its middle")
            yield from (Fault(where, what) for what in _loose(step))
            if not _looked_at(sheet, phase, place):
                yield Fault(where, "nobody writes down how far the hole lies beside the middle, against its limit")
            if any("facing" in one.activities for one in phase.steps):
                yield Fault(where, "the end is faced in the lathe and drilled at the bench")


def _loose(step: Step) -> Iterator[str]:
    words = " ".join(words_of(text, "#") for text in step.text)
    if not {_VEE, _PRESS} <= set(step.tools) or _UPRIGHT not in step.activities:
        yield "the bar stands under the press and nothing at hand holds it there"
    for pattern, what in ((_BOLTED, "its plate is not bolted down"), (_TWICE, "it is not clamped at two heights"),
                          (_UNPLUGGED, "the press is not unplugged while it is set")):  # fmt: skip
        if not pattern.search(words):
            yield f"the bar stands under the press and {what}"
    told = {figure.fact: figure.value for line in step.settings for text in (line.value, line.reason)
            for figure in text if not isinstance(figure, str)}  # fmt: skip
    if not told.get(_LENGTH, float("inf")) < told.get(_HEIGHT, 0.0):
        yield "nothing tells that the bar is shorter than the room under the drill"


def _looked_at(sheet: Sheet, phase: Phase, place: int) -> bool:
    most = sheet.shop.limits.get(_WALL, (0.0, ""))[0]
    highs = [
        check.limits.high for step in phase.steps[place + 1 :] for check in step.checks if check.limits and check.blanks
    ]
    return any(high is not None and high.unit == "mm" and 0 < high.value <= most for high in highs)


def metal_for_it(sheet: Sheet) -> Iterator[Fault]:
    """On a bar centred at the bench the collars lose what it runs out, besides what cleans any collar up."""
    if not any(_DRILL in placed.step.activities for placed in sheet.steps):
        return
    least = sum(sheet.shop.limits.get(name, (0.0, ""))[0] for name in (_CLEAN_UP, _RUN_OUT))
    for drawing in sheet.procedure.drawings:
        sizes = {name: figure.value for name, figure in drawing.dimensions.items()}
        if not {_SAWN, _FINISHED, "sawn_width"} <= sizes.keys():
            continue
        left = sizes[_SAWN] - sizes[_FINISHED]
        if left < least - 1e-6:
            what = f"{left:.3g} mm come off a collar on diameter; centred at the bench it needs {least:.3g} mm"
            yield Fault(f"drawing {drawing.id}", what)
