"""Holding a sheet against every rule. Whatever cannot be judged has failed."""

from collections.abc import Iterable, Iterator

from tailtrue.inspection.report import Failure, Report
from tailtrue.inspection.rule import Fault, Rule
from tailtrue.inspection.rules import RULES
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.shop import Shop
from tailtrue.procedure import Procedure

FAILS_CLOSED = "what cannot be judged is not printed"
UNREADABLE = "V00"


def inspect(procedure: Procedure, shop: Shop, rules: Iterable[Rule] = RULES) -> Report:
    """Judge a finished procedure by every rule; an inspector that breaks is itself a failure."""
    # Whatever breaks, the sheet must not pass.
    try:
        sheet = Sheet(procedure, shop)
    except Exception as broken:
        return Report((Failure(UNREADABLE, "whole sheet", _broken("the sheet could not be read", broken), FAILS_CLOSED),))
    return Report(tuple(dict.fromkeys(failure for rule in rules for failure in _judge(rule, sheet))))


def _judge(rule: Rule, sheet: Sheet) -> Iterator[Failure]:
    faults: list[Fault] = []
    try:
        faults.extend(rule.judge(sheet))
    except Exception as broken:
        faults.append(Fault("whole sheet", _broken("this rule could not be judged", broken)))
    for fault in faults:
        yield Failure(rule.id, fault.where, fault.what, rule.source)


def _broken(what: str, broken: Exception) -> str:
    return f"{what} ({type(broken).__name__}: {broken})"
