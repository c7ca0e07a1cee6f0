"""The bar turned end for end: what is the lathe's and what is the bar's."""

from tailtrue.calc.budget import carried_uncertainty, standard_uncertainty
from tailtrue.calc.conformity import methods_agree
from tailtrue.calc.doubts import both_together
from tailtrue.calc.indicator import move_factor, move_from_reading, swap_parts
from tailtrue.calc.lengths import midway
from tailtrue.calc.steps import length_of_steps
from tailtrue.calc.uncertainty import expanded
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_COLLARS = ("reverse.first_difference", "reverse.turned_difference")
_DOUBTS = ("reverse.first_doubt", "reverse.turned_doubt")
_INDICATOR = ("reverse.first_indicator", "reverse.turned_indicator")
_BAR = ("truing.span", "truing.head_station", "truing.tail_station")


@computed("reverse.change", label="change of the difference when the bar is turned round", unit="mm", rounding="difference",
          needs=_COLLARS, how="size of the one less the other")  # fmt: skip
def change(first: float, turned: float) -> float:
    return abs(turned - first)


@computed("reverse.change_doubt", label="doubt of that change", unit="mm", rounding="difference", bound="least",
          needs=_DOUBTS, how="root of the sum of the squares of both doubts")  # fmt: skip
def change_doubt(first: float, turned: float) -> float:
    return both_together(first, turned)


@computed("reverse.mean_difference", label="mean difference of both ways round", unit="mm", rounding="difference",
          needs=_COLLARS, how="tailstock end less headstock end, mean of both")  # fmt: skip
def mean_difference(first: float, turned: float) -> float:
    return midway(first, turned)


@computed("reverse.collars", label="what the collars say of the bar", kind="choice", choices=("agree", "differ"),
          needs=(*_COLLARS, *_DOUBTS), how="agree where they differ by no more than the doubt of both")  # fmt: skip
def collars(first: float, turned: float, first_doubt: float, turned_doubt: float) -> str:
    return "agree" if methods_agree(first, first_doubt, turned, turned_doubt) else "differ"


@computed("reverse.lathe_signed", label="part of the lathe in the run of the indicator", unit="mm", rounding="difference",
          needs=_INDICATOR, how="mean of both ways round")  # fmt: skip
def lathe_signed(first: float, turned: float) -> float:
    return swap_parts(first, turned).lathe_mm


@computed("reverse.lathe", label="size of the part of the lathe", unit="mm", rounding="difference",
          needs=("reverse.lathe_signed",), how="its size; which way is said in words")  # fmt: skip
def lathe(signed: float) -> float:
    return abs(signed)


@computed("reverse.bar", label="size of the part of the bar", unit="mm", rounding="difference",
          needs=_INDICATOR, how="half of the one way less the other, its size")  # fmt: skip
def bar(first: float, turned: float) -> float:
    return abs(swap_parts(first, turned).bar_mm)


@computed(
    "reverse.indicator_doubt",
    label="doubt of each of these parts",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("reverse.step",),
    tables=("visit/doubts", "alignment/uncertainty"),
    how="four readings of the indicator, halved",
)
def indicator_doubt(step: float, doubts: Table, components: Table) -> float:
    half_width = length_of_steps(doubts.value("indicator_divisions"), step)
    coverage = components.value("coverage_factor")
    return expanded(standard_uncertainty(half_width, "rectangular"), coverage)


@computed("reverse.nearer", label="end at which the bar is nearer the indicator", kind="choice",
          choices=("tailstock", "headstock", "neither"), needs=("reverse.lathe_signed",),
          how="sign of the part of the lathe")  # fmt: skip
def nearer(signed: float) -> str:
    return "tailstock" if signed > 0 else "headstock" if signed < 0 else "neither"


@computed("reverse.move", label="move that the part of the lathe asks for", unit="mm", rounding="difference",
          needs=("reverse.lathe", *_BAR), how="its size x L / (b - a)")  # fmt: skip
def move(size: float, span: float, first: float, second: float) -> float:
    return abs(move_from_reading("traverse on the tool side", size, span, first, second))


@computed("reverse.move_doubt", label="doubt of that move", unit="mm", rounding="difference", bound="least",
          needs=("reverse.indicator_doubt", *_BAR), how="that of the part x L / (b - a)")  # fmt: skip
def move_doubt(unsure: float, span: float, first: float, second: float) -> float:
    return carried_uncertainty(unsure, move_factor("traverse on the tool side", span, first, second))
