"""Dust that a vacuum cleaner draws off: its nozzle is fixed before the start, and no hand holds it at turning work."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_DUSTY = frozenset({"cut-collar", "bore", "drill", "skim", "face-on-stub"})
_IRON, _CLEANER = "iron-dust", "vacuum"
_VACUUM = re.compile(r"\bvacuum\b", re.IGNORECASE)
_FIXED = re.compile(r"\bclamp the nozzle\b", re.IGNORECASE)
_HELD = re.compile(r"\bhold (?:the |its )?(?:nozzle|hose)\b", re.IGNORECASE)


def nozzle_fixed(sheet: Sheet) -> Iterator[Fault]:
    """A cut that names a vacuum cleaner comes behind a still step that clamps its nozzle; no line has it held."""
    fixed = False
    for placed in sheet.steps:
        words = placed.words_alone
        if _HELD.search(words):
            yield Fault(placed.where, "a nozzle or a hose is held by hand")
        if placed.step.machine == "isolated":
            fixed = fixed or _FIXED.search(words) is not None
        elif not fixed and _VACUUM.search(f"{words} {_set(placed)}"):
            yield Fault(placed.where, "a vacuum cleaner is used at the tool, and no step before clamps its nozzle")


def drawn_at_every_cut(sheet: Sheet) -> Iterator[Fault]:
    """Where iron is cut and the shop draws dust off, a still step clamps the nozzle before the first cut into it."""
    if _CLEANER not in sheet.shop.tool_ids_in_shop or not any(one.id == _IRON for _, one in sheet.cautions):
        return
    for placed in sheet.steps:
        if placed.step.machine == "isolated" and _CLEANER in placed.step.tools and _FIXED.search(placed.words_alone):
            return
        if placed.step.machine == "turning" and _DUSTY & set(placed.step.activities):
            yield Fault(placed.where, "iron is cut here, and no step before clamps the nozzle that draws its dust off")
            return


def _set(placed: Placed) -> str:
    return " ".join(piece for line in placed.step.settings for piece in line.value if isinstance(piece, str))
