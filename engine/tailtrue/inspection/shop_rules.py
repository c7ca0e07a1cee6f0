"""Rules of the shop: each told on the sheet with reason and name, none that makes a limit looser or a danger less."""

from collections import Counter
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_LIST, _SOP, _REVIEW = "rules of this shop", "standing procedure", "safety review"
_WEIGHT = {"notice": 0, "caution": 1, "warning": 2, "danger": 3}
_SAME = 1e-6  # relative: what converting between inches and millimetres may leave behind


def told(sheet: Sheet) -> Iterator[Fault]:
    """The list has each entry of the shop's files with its reason and its author, and nothing else."""
    laid = Counter((one.kind, one.name, one.reason, one.by) for one in sheet.shop.shop_rules)
    listed = Counter((str(one.kind), one.name, one.reason, one.by) for one in sheet.procedure.shop_rules)
    for kind, name, _, by in (laid - listed).elements():
        yield Fault(_LIST, f'the list does not tell, or not with its reason and author, the rule of {by}: {kind} "{name}"')
    for kind, name, _, by in (listed - laid).elements():
        yield Fault(_LIST, f'the list tells a rule that no file of the shop holds: {kind} "{name}", {by}')
    sop = sheet.procedure.sop
    # Nobody who signs the standing procedure need hold the sheet beside it: the list stands there whole.
    if sop is not None and sop.shop_rules != sheet.procedure.shop_rules:
        yield Fault(_SOP, "the rules of this shop are not told as on the sheet, every one with its reason and author")
    if bool(laid) != (" + shop " in sheet.procedure.title.knowledge_version):
        yield Fault("title block", "the version of the rules does not say whether rules of the shop lie over them")


def marked(sheet: Sheet) -> Iterator[Fault]:
    """What the shop added or reworded says so where it stands; what is as shipped does not."""
    ours = {one.name for one in sheet.shop.shop_rules if one.kind in ("add", "reword")}
    for where, caution in sheet.cautions:
        if bool(caution.shop_rule) != (caution.id in ours):
            yield Fault(where, f'the caution "{caution.id}" {_said(bool(caution.shop_rule))}')
    for placed in sheet.steps:
        if bool(placed.step.shop_rule) != (placed.step.id in ours):
            yield Fault(placed.where, f'the step "{placed.step.id}" {_said(bool(placed.step.shop_rule))}')
    again = [(_REVIEW, one.caution, one.shop_rule) for one in sheet.procedure.safety_review.hazards]
    if sheet.procedure.sop is not None:
        listed = {row.caution for row in sheet.procedure.sop.hazards}
        for name in sorted({one.id for _, one in sheet.cautions if one.id in ours} - listed):
            yield Fault(_SOP, f'the hazard "{name}" is a rule of the shop and is not among the hazards')
        again += [(_SOP, row.caution, row.shop_rule) for row in sheet.procedure.sop.hazards]
    for where, name, mark in again:
        if bool(mark) != (name in ours):
            yield Fault(where, f'the hazard "{name}" {_said(bool(mark))}')


def _said(marked_here: bool) -> str:
    return "is called a rule of the shop and is as shipped" if marked_here else "is a rule of the shop and does not say so"


def no_less_loud(sheet: Sheet) -> Iterator[Fault]:
    """No message has a lower signal word than the one it was shipped with."""
    for where, caution in sheet.cautions:
        shipped = sheet.shop.signals.get(caution.id)
        if shipped is not None and _WEIGHT.get(caution.signal, -1) < _WEIGHT[shipped]:
            yield Fault(where, f'the caution "{caution.id}" is shipped as {shipped.upper()}, here {caution.signal.upper()}')


def no_looser(sheet: Sheet) -> Iterator[Fault]:
    """No named limit on the sheet is on the unsafe side of the shipped one."""
    for where, figure in sheet.figures:
        shipped = sheet.shop.limits.get(figure.fact)
        if shipped is None:
            if figure.fact.startswith("limit.") and figure.fact.count(".") == 1:
                yield Fault(where, f"{figure.fact} is no shipped limit")
            continue
        value, safe = shipped
        higher = figure.value - value
        if (higher if safe == "lower" else -higher) > _SAME * abs(value):
            yield Fault(
                where, f"{figure.fact} is {figure.value:g} {figure.unit} here, shipped as {value:g}, and may only go {safe}"
            )
