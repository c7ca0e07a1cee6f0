"""What the last cuts in the bore can be set by: dials of both slides, an indicator, the eye."""

from tailtrue.calc.fine_feed import slide_angle, slide_step
from tailtrue.calc.lengths import midway, on_diameter, share_of
from tailtrue.calc.steps import length_of_steps, nearest_steps
from tailtrue.computed.registry import computed


@computed(
    "bore.dial_step",
    label="one division of the cross-slide dial opens the bore by",
    unit="mm",
    rounding="depth",
    needs=("lathe.radial_division",),
    how="twice what one division moves the tool",
)
def dial_step(division: float) -> float:
    return on_diameter(division)


@computed(
    "bore.half_step",
    label="half a division of the cross-slide dial opens the bore by",
    unit="mm",
    rounding="depth",
    needs=("bore.dial_step",),
    how="half of what a whole division opens",
)
def half_step(whole: float) -> float:
    return midway(0.0, whole)


@computed(
    "bore.slide_step",
    label="one division of the top-slide dial, set over, opens the bore by",
    unit="mm",
    rounding="depth",
    needs=("lathe.top_slide_dial_division", "limit.fine_feed_ratio"),
    how="twice the division, divided by the ratio of the slide that is set over",
)
def set_over_step(division: float, ratio: float) -> float:
    return slide_step(division, ratio)


@computed(
    "bore.indicator_step",
    label="one division of an indicator on the cross slide opens the bore by",
    unit="mm",
    rounding="depth",
    needs=("crib.indicator_division",),
    how="twice the division: the slide moves, and the cut comes off both sides",
)
def indicator_step(division: float) -> float:
    return on_diameter(division)


@computed(
    "bore.slide_angle",
    label="angle of the top slide from the line of the bed",
    unit="deg",
    rounding="angle",
    needs=("limit.fine_feed_ratio", "limit.slide_angle_step"),
    how="the angle whose sine is one divided by the ratio, to the nearest mark that the eye can halve and halve again",
)
def angle(ratio: float, mark: float) -> float:
    return length_of_steps(nearest_steps(slide_angle(ratio), mark), mark)


@computed(
    "bore.proof_wind",
    label="top slide wound in to prove its angle",
    unit="mm",
    rounding="depth",
    needs=("lathe.top_slide_dial_division", "limit.slide_proof_divisions"),
    how="so many divisions of its dial",
)
def proof_wind(division: float, count: float) -> float:
    return length_of_steps(count, division)


@computed(
    "bore.proof_across",
    label="move across at the right angle",
    unit="mm",
    rounding="depth",
    needs=("bore.proof_wind", "limit.fine_feed_ratio"),
    how="what the slide is wound, divided by the ratio",
)
def proof_across(wind: float, ratio: float) -> float:
    return midway(0.0, slide_step(wind, ratio))


_PROOF = ("bore.proof_across", "limit.slide_proof_part")


@computed("bore.proof_least", label="least move across that proves the angle", unit="mm", rounding="depth", bound="least",
          needs=_PROOF, how="the move at the right angle, less the part by which it may be off")  # fmt: skip
def proof_least(across: float, part: float) -> float:
    return across - share_of(across, part)


@computed("bore.proof_most", label="largest move across that proves the angle", unit="mm", rounding="depth", bound="most",
          needs=_PROOF, how="the move at the right angle, and the part by which it may be off")  # fmt: skip
def proof_most(across: float, part: float) -> float:
    return across + share_of(across, part)


@computed(
    "bore.fine_step",
    label="one step of the last cut opens the bore by",
    unit="mm",
    rounding="depth",
    needs=(
        "bore.fine_feed", "bore.dial_step", "bore.half_step", "lathe.top_slide_dial_division?", "limit.fine_feed_ratio",
        "crib.indicator_division?",
    ),
    how="the step of the way that was chosen",
)  # fmt: skip
def fine_step(
    way: str, dial: float, half: float, slide: float | None, ratio: float, indicator: float | None
) -> float | None:
    steps = {"dial": dial, "half-divisions": half}
    if slide is not None:
        steps["top-slide-set-over"] = slide_step(slide, ratio)
    if indicator is not None:
        steps["indicator-on-the-slide"] = on_diameter(indicator)
    return steps.get(way)
