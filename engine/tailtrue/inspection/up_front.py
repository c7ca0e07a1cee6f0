"""What stands up front: few messages in full; what is only named there is told at the back, and nothing grave is."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Caution

_FRONT = "front"
_LESSER = ("caution", "notice")


def few_in_full(sheet: Sheet) -> Iterator[Fault]:
    """No more stand in full up front than are read; beyond that only what maims, and what the shop itself asks for."""
    full = _in_full(sheet)
    most = sheet.shop.messages_up_front
    lesser = [one for one in full if one.signal in _LESSER and not one.shop_rule]
    if len(full) > most and lesser:
        yield Fault(_FRONT, f'{len(full)} messages stand in full, {most} is the most, and "{lesser[-1].id}" maims nobody')


def nothing_grave_at_back(sheet: Sheet) -> Iterator[Fault]:
    """Told at the back is what holds at any lathe, or a lesser word without room; no danger and no word of the shop."""
    full = len(_in_full(sheet)) >= sheet.shop.messages_up_front
    for where, caution in sheet.cautions:
        if not caution.at_back:
            continue
        if not where.startswith(_FRONT):
            yield Fault(where, f'the caution "{caution.id}" belongs to this place and is told at the back')
        elif caution.signal == "danger":
            yield Fault(where, f'the DANGER "{caution.id}" is told at the back')
        elif caution.shop_rule:
            yield Fault(where, f'the caution "{caution.id}" is of this shop and is told at the back')
        elif caution.id not in sheet.shop.at_back and not (full and caution.signal in _LESSER):
            yield Fault(where, f'the caution "{caution.id}" is about this job and is told at the back')


def _in_full(sheet: Sheet) -> list[Caution]:
    return [one for one in sheet.procedure.job_cautions if not one.at_back]
