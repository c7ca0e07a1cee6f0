"""Sheets whose choices say what their steps do not."""

from typing import Literal

from tailtrue.procedure import Alternative, Choice, Finding

from .broken import breaks
from .changed import Job, with_sheet, with_shop
from .sample import procedure
from .sample_pieces import OPEN, mm


@breaks("V320", "choice bore.gauge", also="V24")
def gauge_that_is_said_to_be_finer_than_it_reads() -> Job:
    good_to = ("Good to ", mm("crib.bore_gauge_doubt", 0.003, "fit"), ".")
    way = Alternative(
        name="bore gauge", verdict="chosen", reason="it fits", why="it reads finest", sources=OPEN, figures=good_to
    )
    gauge = Choice(
        id="bore.gauge", question="What is the bore measured with?", chosen="bore gauge", alternatives=(way,),
    )  # fmt: skip
    return with_sheet(choices=(*procedure().choices, gauge))


def _reason(words: str) -> Job:
    first = procedure().choices[0]
    left = Alternative(name="jaws", verdict="no", reason=words, why="the face stands clear", sources=OPEN)
    return with_sheet(choices=(first.model_copy(update={"alternatives": (*first.alternatives, left)}),))


@breaks("V321", "choice joint.method")
def reason_with_a_sign_of_comparison() -> Job:
    return _reason("wants blank standing out >= what facing wants")


@breaks("V321", "choice joint.method")
def reason_with_the_name_of_a_fact() -> Job:
    return _reason("wants collar.stands_out to be more")


@breaks("V321", "choice joint.method")
def reason_with_a_size_in_one_unit() -> Job:
    return _reason("wants more than stands out; here -4 mm")


def _width(chosen: float, beside: float, printed: float, weighed: Literal["least", "greatest"] | None = "least") -> Job:
    """A choice of the width among two sizes, with what is printed as the width beside it."""

    def way(name: str, verdict: Literal["chosen", "no"], size: float) -> Alternative:
        at = mm(f"collar.width_{name}", size)
        told = (at, ".") if verdict == "no" else (at, "; finished ", mm("collar.width", printed), ".")
        return Alternative(
            name=name, verdict=verdict, reason="it was weighed", why="so it is", sources=OPEN, figures=told, size=at
        )

    width = Choice(
        id="collar.width_bound", question="What bounds the width?", chosen="stock", settles="collar.width", weighed=weighed,
        alternatives=(way("stock", "chosen", chosen), way("bar", "no", beside)),
    )  # fmt: skip
    return with_sheet(choices=(*procedure().choices, width))


@breaks("V400", "choice collar.width_bound", also="V24")
def size_chosen_that_is_not_the_least() -> Job:
    return _width(35.0, 30.0, 30.0)


@breaks("V400", "choice collar.width_bound", also="V24")
def size_chosen_that_is_not_the_greatest() -> Job:
    return _width(20.0, 25.0, 30.0, "greatest")


@breaks("V401", "choice collar.width_bound", also="V24 V470")
def number_beyond_the_size_that_binds() -> Job:
    return _width(20.0, 25.0, 21.0)


@breaks("V401", "choice collar.width_bound", also="V24 V470")
def number_that_is_not_the_one_that_was_measured() -> Job:
    return _width(20.0, 25.0, 19.0, None)


def _first(chosen: str, *found: str, told: bool) -> Job:
    order = Choice(
        id="truing.order", question="What is put right first?", chosen=chosen,
        alternatives=(Alternative(name=chosen, verdict="chosen", reason="it fits", why="so it is", sources=OPEN),),
    )  # fmt: skip
    waits = Finding(level="attention", text=("Leave the tailstock until then.",), sources=("common-practice",))
    findings = (*procedure().findings, waits) if told else procedure().findings
    sheet, _ = with_sheet(choices=(*procedure().choices, order), findings=findings)
    _, shop = with_shop(found_out=frozenset(found))
    return sheet, shop


@breaks("V402", "choice truing.order")
def tailstock_first_on_a_twisted_bed() -> Job:
    return _first("the tailstock", "bed", told=True)


@breaks("V402", "choice truing.order")
def headstock_before_the_bed() -> Job:
    return _first("the headstock", "bed", "headstock", told=True)


@breaks("V402", "choice truing.order")
def twisted_bed_and_nothing_says_that_the_tailstock_waits() -> Job:
    return _first("the bed", "bed", told=False)
