"""Numbers set by hand, held against what is worked out and what bounds it. Beyond a bound there is no procedure."""

from collections.abc import Iterator
from math import isclose

from tailtrue.assemble.by_hand import worked_out
from tailtrue.assemble.filling import figure
from tailtrue.case import Case
from tailtrue.facts import Fact, NotKnown, SetByHand, Settable
from tailtrue.parts import Figure, Text
from tailtrue.refusals import Refusal

_SAME = 1e-9  # relative: what turning inches into millimetres may leave behind


def beyond(case: Case) -> tuple[Refusal, ...]:
    """Every number set by hand that crosses a bound, or that nothing bounds here."""
    return tuple(refusal for one in case.by_hand.values() for refusal in _refusals(case, one))


def _refusals(case: Case, one: SetByHand) -> Iterator[Refusal]:
    found = case.get(one.fact)
    settable = case.knowledge.given.settable[one.fact]
    if isinstance(found, NotKnown):
        label = case.knowledge.catalogue[one.fact].label
        why = f" ({found.trouble})" if found.trouble else ""
        yield _refusal(one, label, (f"It is not worked out for this job{why}, so nothing bounds it.",), settable)
        return
    if found.by_hand is None:
        said = f"You said it yourself, at {found.where}: change it there."
        yield _refusal(one, found.spec.label, (said,), settable)
        return
    for text in (
        *_against_worked_out(found, settable),
        *_against_bounds(case, found, settable),
        *_on_the_machine(case, found, settable),
    ):
        yield _refusal(one, found.spec.label, text, settable)


def _refusal(one: SetByHand, label: str, text: Text, settable: Settable) -> Refusal:
    title = f"{label}, set by {one.initials}, is not taken"
    ways: tuple[Text, ...] = ((f"Take the override of {one.fact} out of the job file.",),)
    if settable.safe:
        ways = ((f"Set it {settable.safe}.",), *ways)
    return Refusal(one.where, title, (*text, f" {settable.why}"), ways, settable.sources)


def _against_worked_out(found: Fact, settable: Settable) -> Iterator[Text]:
    passes = {"lower": found.value > found.worked_out, "higher": found.value < found.worked_out}
    if passes.get(settable.safe) and not _alike(found.value, found.worked_out):
        yield (
            "It is set to ",
            _set(found),
            f" and may only be {settable.safe} than what is worked out, ",
            worked_out(found),
            ".",
        )


def _against_bounds(case: Case, found: Fact, settable: Settable) -> Iterator[Text]:
    for names, word in ((settable.at_least, "least"), (settable.at_most, "most")):
        for name in names:
            bound = case.get(name)
            if isinstance(bound, NotKnown):
                yield (f"It may be at {word} the {bound.spec.label}, and that is not known.",)
                continue
            passes = found.value < bound.value if word == "least" else found.value > bound.value
            if passes and not _alike(found.value, bound.value):
                shown = figure(bound.spec, name, bound.value)
                yield ("It is set to ", _set(found), f" and may be at {word} ", shown, f", the {bound.spec.label}.")


def _on_the_machine(case: Case, found: Fact, settable: Settable) -> Iterator[Text]:
    listed = case.get(settable.one_of) if settable.one_of else None
    if isinstance(listed, Fact) and not any(_alike(found.value, one) for one in listed.value):
        yield ("It is set to ", _set(found), f", which is none of the {listed.spec.label}.")
    step = case.get(settable.whole) if settable.whole else None
    if isinstance(step, Fact):
        times = found.value / step.value
        if round(times) < 1 or not _alike(times, round(times)):
            shown = figure(step.spec, step.name, step.value)
            yield ("It is set to ", _set(found), ", which is no whole number of ", shown, f", the {step.spec.label}.")


def _set(found: Fact) -> Figure:
    return figure(found.spec, found.name, found.value)


def _alike(one: float, other: float) -> bool:
    return isclose(one, other, rel_tol=_SAME)
