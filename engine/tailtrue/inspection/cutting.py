"""Speeds, feeds, depths and drills: those this machine and this shop have, within every limit."""

import re
from collections.abc import Iterable, Iterator
from math import isclose, isfinite

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import FIGURE, LINE, SetFigure, Sheet, figures_in
from tailtrue.inspection.shop import Shop
from tailtrue.inspection.top_slide import steps_of
from tailtrue.parts import Figure, Rounding, Setting
from tailtrue.procedure import Phase, Step

_NEAR = 0.01  # a slide is set over to a quarter of a degree
_SAME = 1e-6  # relative: what converting between inches and millimetres may leave behind
_HAND = re.compile(r"\bby hand\b|\bhand feed\b|\bno power feed\b", re.IGNORECASE)
_PER_SIDE = re.compile(r"\bper side\b", re.IGNORECASE)
_READS = re.compile(r"\breads\s+(?:the\s+)?(radius|diameter)\b", re.IGNORECASE)


def _figures(sheet: Sheet, rounding: Rounding) -> Iterator[SetFigure]:
    return (found for found in sheet.at_steps if found.figure.rounding == rounding)


def _one_of(value: float, known: Iterable[float]) -> bool:
    return any(isclose(value, one, rel_tol=_SAME) for one in known)


def speeds_exist(sheet: Sheet) -> Iterator[Fault]:
    """Every speed is one the spindle has. A limit need not be, unless it is to be set while the spindle turns."""
    for placed, line, figure in _figures(sheet, "speed"):
        to_set = placed.step.machine == "turning" and line is not None and figure in line.value
        if (to_set or not _is_limit(figure)) and not _has_speed(sheet.shop, figure.value):
            yield Fault(placed.where, f"the lathe has no speed of {figure.value:g} 1/min ({figure.fact})")


def learner_cuts_light(sheet: Sheet) -> Iterator[Fault]:
    """A learner or a minor is given no deeper cut and no faster feed than the limit of this shop."""
    if (most := sheet.shop.learner_cut) is None:
        return
    for placed, line, figure in sheet.at_steps:
        if line is None or figure not in line.value or placed.step.machine != "turning":
            continue
        deep = figure.rounding == "depth" and _PER_SIDE.search("".join(map(str, line.label))) is not None
        limit = most[0] if deep else most[1] if figure.rounding == "feed" else None
        if limit is not None and figure.value > limit * (1 + _SAME):
            yield Fault(
                placed.where, f"{figure.value:g} {figure.unit} ({figure.fact}): a learner goes no further than {limit:g}"
            )


def _is_limit(figure: Figure) -> bool:
    return figure.fact.startswith("limit.") or figure.fact.endswith("speed_limit")


def _has_speed(shop: Shop, speed: float) -> bool:
    if _one_of(speed, shop.speeds):
        return True
    low, high = shop.speed_from, shop.speed_to
    return low is not None and high is not None and low * (1 - _SAME) <= speed <= high * (1 + _SAME)


def speeds_within_caps(sheet: Sheet) -> Iterator[Fault]:
    """No speed passes a limit that holds in its phase."""
    for placed, _, figure in _figures(sheet, "speed"):
        yield from _over(sheet.shop, placed.phase, placed.where, figure)


def _over(shop: Shop, phase: Phase, where: str, figure: Figure) -> Iterator[Fault]:
    for cap in shop.speed_caps:
        if cap.holds_in(phase.id) and not figure.value <= cap.limit_per_min * (1 + _SAME):
            what = f"{figure.value:g} 1/min ({figure.fact}) is above the {cap.limit_per_min:g} 1/min of {cap.name}"
            yield Fault(where, what)


def turning_is_capped(sheet: Sheet) -> Iterator[Fault]:
    """Where the spindle turns, a limit of speed is known that holds there."""
    for placed in sheet.steps:
        caps = sheet.shop.speed_caps
        if placed.step.machine == "turning" and not any(cap.holds_in(placed.phase.id) for cap in caps):
            yield Fault(placed.where, "the spindle turns and no limit of its speed is known for this phase")


def feeds_exist(sheet: Sheet) -> Iterator[Fault]:
    """Every feed is on the plate of the lathe, unless it is fed by hand."""
    for placed, line, figure in _figures(sheet, "feed"):
        by_hand = figure.fact.endswith(".hand_feed") or (line is not None and _fed_by_hand(line))
        if not by_hand and not _one_of(figure.value, sheet.shop.feeds):
            yield Fault(placed.where, f"the lathe has no feed of {figure.value:g} mm/rev ({figure.fact})")


def _fed_by_hand(line: Setting) -> bool:
    return any(_HAND.search(piece) for piece in (*line.label, *line.reason) if isinstance(piece, str))


def drills_in_shop(sheet: Sheet) -> Iterator[Fault]:
    """Every drill named is one that lies in the shop."""
    for placed, _, figure in _figures(sheet, "tool"):
        drilling = "drill" in placed.step.activities
        is_drill = figure.fact.endswith("drill") or (drilling and figure.fact.endswith(".size"))
        if is_drill and not _one_of(figure.value, sheet.shop.drills):
            yield Fault(placed.where, f"the shop has no drill of {figure.value:g} mm ({figure.fact})")


def depths_on_dial(sheet: Sheet) -> Iterator[Fault]:
    """A depth per side is a whole number of dial divisions: of half divisions where the dial reads diameter.

    A bore is opened in finer steps where the step that does it tells them, and something in the shop sets them.
    """
    shop = sheet.shop
    division = shop.dial_division_mm if shop.dial_reads == "radius" else shop.dial_division_mm / 2
    for placed in sheet.steps:
        for line in placed.step.settings:
            if any(isinstance(piece, str) and _PER_SIDE.search(piece) for piece in line.label):
                for piece in line.value:
                    if isinstance(piece, Figure) and not any(
                        _whole(piece.value, one) for one in (division, *_finer(sheet, placed.step, division))
                    ):
                        what = f"{piece.value:g} mm per side ({piece.fact}) is no whole number of dial divisions"
                        yield Fault(placed.where, f"{what}; one moves the tool {division:g} mm")


def _finer(sheet: Sheet, step: Step, division: float) -> Iterator[float]:
    if "bore" not in step.activities:
        return
    opens = next((figure.value for figure in figures_in(step) if figure.fact == "bore.fine_step"), None)
    angle = next((found.figure.value for found in sheet.at_steps if found.figure.fact == "bore.slide_angle"), None)
    set_by = steps_of(sheet, angle, 2 * division)
    if opens is not None and any(abs(opens - one) <= _NEAR * one for one in set_by):
        yield opens / 2


def _whole(value: float, division: float) -> bool:
    count = value / division
    return isfinite(count) and round(count) >= 1 and abs(count - round(count)) <= _SAME * max(1.0, count)


def dial_told(sheet: Sheet) -> Iterator[Fault]:
    """The sheet says whether the dial reads radius or diameter, wherever a depth is set, and never says the other."""
    said = False
    telling = {typed for typed in sheet.lines if "reads" in typed.lower()}
    for found, typed in zip(sheet.texts, sheet.typed, strict=True):
        for match in _READS.finditer(typed.replace(FIGURE, "")) if typed in telling else ():
            if match[1].lower() != sheet.shop.dial_reads:
                yield Fault(found.where, f"the text says the dial reads {match[1]}; it reads {sheet.shop.dial_reads}")
            said = said or found.field == "conventions" + LINE
    cut = any(placed.step.machine == "turning" for placed in sheet.steps)
    if not said and (cut or any("per side" in typed for typed in sheet.lines)):
        yield Fault("conventions", f"nothing says that the cross-slide dial reads {sheet.shop.dial_reads}")
