"""The cuts that make the bore: roughed by passes, then the last cuts, each in divisions of the dial."""

from tailtrue.calc.boring_passes import boring_passes
from tailtrue.calc.lengths import midway, on_diameter
from tailtrue.calc.steps import finishing_cut, step_down, steps_in
from tailtrue.computed.registry import computed


@computed(
    "bore.rough_to",
    label="bore to rough to",
    unit="mm",
    rounding="size",
    bound="most",
    needs=("bore.nominal", "bore.finish_stock", "lathe.fit_step"),
    how="bore less the stock for the last cuts",
)
def rough_to(bore: float, stock: float, step: float) -> float:
    return step_down(bore - stock, step)


@computed(
    "bore.finish_depth",
    label="depth per side of each of the last cuts",
    unit="mm",
    rounding="depth",
    needs=("limit.bore_finish_stock", "limit.bore_finish_cuts", "lathe.radial_division"),
    how="stock for the last cuts shared out per side, in whole divisions of the dial",
)
def finish_depth(stock: float, cuts: float, division: float) -> float:
    return finishing_cut(stock, cuts, division)


@computed(
    "bore.finish_stock",
    label="stock for the last cuts, on diameter",
    unit="mm",
    rounding="depth",
    needs=("bore.finish_depth", "limit.bore_finish_cuts"),
    how="twice the depth of the last cuts, all of them",
)
def finish_stock(depth: float, cuts: float) -> float:
    return on_diameter(depth, cuts)


@computed(
    "bore.aim_most",
    label="bore to aim at, where the bar is largest",
    unit="mm",
    rounding="fit",
    needs=(
        "bar.expected_largest", "bore.add_least", "bore.add_most", "job.measured_head?", "job.measured_tail?",
        "job.measured_middle?",
    ),
    how="largest reading of the bar, and the middle between the least and the most that is added to it; until it has been "
    "measured, the largest that stock of its finish may be",
)  # fmt: skip
def aim_most(expected: float, least: float, most: float, *seats: tuple[float, ...] | None) -> float:
    measured = [reading for readings in seats for reading in readings or ()]
    return max(measured, default=expected) + midway(least, most)


@computed(
    "bore.finish_cuts",
    label="last cuts in the bore",
    kind="count",
    rounding="count",
    needs=("bore.aim_most", "bore.rough_to", "bore.finish_depth", "limit.bore_finish_cuts"),
    how="from the size roughed to, up to the bore aimed at, divided by what a cut takes off; no fewer than usual",
)
def finish_cuts(aim: float, roughed: float, depth: float, usual: float) -> int:
    return max(round(usual), boring_passes(roughed, max(aim, roughed), depth))


@computed(
    "bore.finish_divisions",
    label="divisions of the dial for each of the last cuts",
    unit="1",
    rounding="count",
    needs=("bore.finish_depth", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def finish_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed(
    "bore.rough_passes",
    label="roughing passes in the bore",
    kind="count",
    rounding="count",
    needs=("bore.rough_to", "hole.before_boring", "collar.boring.depth"),
    how="what is left, divided by what a pass takes off the diameter, up to a whole pass",
)
def rough_passes(to: float, drilled: float, depth: float) -> int:
    return boring_passes(drilled, to, depth)


@computed(
    "bore.rough_cut",
    label="depth per side of each roughing pass in the bore",
    unit="mm",
    rounding="depth",
    needs=("bore.rough_to", "hole.before_boring", "bore.rough_passes", "lathe.radial_division"),
    how="stock per side shared out over the passes, up to whole divisions of the dial; the last pass takes what is left",
)
def rough_cut(to: float, drilled: float, passes: int, division: float) -> float:
    return finishing_cut(to - drilled, passes, division)


@computed(
    "bore.rough_divisions",
    label="divisions of the dial for each roughing pass in the bore",
    unit="1",
    rounding="count",
    needs=("bore.rough_cut", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def rough_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


def _on_diameter(name: str, what: str, depth: str) -> None:
    @computed(name, label=f"change of diameter by {what}", unit="mm", rounding="depth", needs=(depth,),
              how="twice the depth per side")  # fmt: skip
    def _step(deep: float) -> float:
        return on_diameter(deep)


_on_diameter("bore.rough_step", "each roughing pass in the bore", "bore.rough_cut")
_on_diameter("bore.finish_step", "each of the last cuts in the bore", "bore.finish_depth")
