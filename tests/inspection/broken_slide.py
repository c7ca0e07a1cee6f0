"""Sheets that ask for a cut which no dial sets, or count a depth on the wrong dial."""

from dataclasses import replace

from tailtrue.parts import Setting

from .broken import breaks
from .changed import Job, step, with_step
from .sample_pieces import figure, mm


def _fine(value: float, *more: Setting, **shop: float | None) -> Job:
    """The last cuts in the bore set in other steps, perhaps by the top slide, in another shop."""
    kept = [line for line in step("2.6").settings if line.label != ("one step of the last cut opens the bore by",)]
    told = Setting(label=("one step of the last cut opens the bore by",), value=(mm("bore.fine_step", value, "depth"),))
    changed, givens = with_step("2.6", settings=(*kept, told, *more))
    return changed, replace(givens, **shop)


def _angle(degrees: float) -> Setting:
    return Setting(
        label=("top slide, from the line of the bed",), value=(figure("bore.slide_angle", degrees, "deg", "angle"),)
    )


def _facing(depth: float, count: int | None, **shop: float | None) -> Job:
    reason = (
        (figure("bar.facing.depth_divisions", count, "1", "count"), " divisions of its dial") if count else ("by caliper",)
    )
    line = Setting(
        label=("depth of each cut, by the top slide",), value=(mm("bar.facing.depth", depth, "depth"),), reason=reason
    )
    touched = ("Lock the saddle. Touch the face. Set the dial of the top slide to zero.",)
    changed, givens = with_step("1.3", settings=(*step("1.3").settings, line), text=(touched,))
    return changed, replace(givens, **shop)


@breaks("V232", "step 2.6")
def window_finer_than_the_dial_and_nothing_told() -> Job:
    kept = tuple(line for line in step("2.6").settings if line.label != ("one step of the last cut opens the bore by",))
    return with_step("2.6", settings=kept)


@breaks("V232", "step 2.6")
def setting_wider_than_the_window() -> Job:
    return _fine(0.08, indicator_division_mm=0.04)


@breaks("V232", "step 2.6")
def indicator_that_the_shop_does_not_have() -> Job:
    return _fine(0.02, indicator_division_mm=None)


@breaks("V232", "step 2.6", also="V24 V275")
def top_slide_at_another_angle_than_reckoned() -> Job:
    return _fine(0.01, _angle(8.0), top_slide_division_mm=0.05)


@breaks("V232", "step 2.6", also="V24 V275")
def top_slide_whose_dial_nobody_gave() -> Job:
    return _fine(0.01, _angle(5.739170477))


@breaks("V233", "step 1.3", also="V24")
def facing_told_on_a_dial_that_nobody_gave() -> Job:
    return _facing(0.3, 6)


@breaks("V233", "step 1.3", also="V24")
def facing_counted_on_another_dial() -> Job:
    return _facing(0.3, 12, top_slide_division_mm=0.05)


@breaks("V233", "step 1.3", also="V24")
def facing_between_two_lines_of_its_dial() -> Job:
    return _facing(0.325, None, top_slide_division_mm=0.05)
