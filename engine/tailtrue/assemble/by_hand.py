"""The table of numbers that were set by hand: each beside what was worked out and what bounds it."""

from tailtrue.assemble.filling import Filler, figure
from tailtrue.facts import Fact
from tailtrue.parts import Figure
from tailtrue.procedure import HandSet

WORKED_OUT = "worked_out"


def worked_out(found: Fact) -> Figure:
    """The number that was worked out, under a name of its own: it is not the one to work to."""
    return figure(found.spec, f"{found.name}.{WORKED_OUT}", found.worked_out)


def set_by_hand(filler: Filler) -> tuple[HandSet, ...]:
    """One line for each number set by hand, in the order of the job file."""
    settable = filler.case.knowledge.given.settable
    made = []
    for name, one in filler.case.by_hand.items():
        found = filler.fact(name)
        bounds = settable[name]
        made.append(
            HandSet(
                label=found.spec.label,
                value=filler.figure(name),
                worked_out=worked_out(found),
                safe=bounds.safe,
                at_least=tuple(filler.figure(bound) for bound in bounds.at_least),
                at_most=tuple(filler.figure(bound) for bound in bounds.at_most),
                reason=one.reason,
                initials=one.initials,
            )
        )
    return tuple(made)
