"""Sheets whose collars would come loose, or whose screws and pins would meet the tool."""

from .broken import breaks
from .changed import Job, step, with_setting, with_shop, with_step
from .joined import held_by
from .sample_pieces import figure, mm


@breaks("V120", "step 3.1")
def joint_that_slips_in_a_catch() -> Job:
    return with_setting("3.1", 0, value=19000.0)


@breaks("V120", "step 3.1")
def joint_that_carries_nothing_known() -> Job:
    return with_step("3.1", settings=())


@breaks("V120", "step 3.1")
def joint_without_the_torque_of_a_catch() -> Job:
    (line,) = step("3.1").settings
    return with_step("3.1", settings=(line.model_copy(update={"reason": ()}),))


# Worn out, the collars of the sample are 50 mm, on a bar of 22 mm: 14 mm of wall.
@breaks("V121", "step 3.1")
def screw_that_stands_too_high() -> Job:
    return held_by(
        "set-screw", mm("joint.set_screws.length", 14.0), mm("joint.set_screws.major", 6.0), mm("joint.set_screws.spot", 0.5)
    )


@breaks("V121", "step 3.1")
def screw_whose_length_is_not_told() -> Job:
    return held_by("set-screw", mm("joint.set_screws.major", 6.0), mm("joint.set_screws.spot", 0.5))


@breaks("V121", "step 3.1")
def pin_across_that_the_skim_reaches() -> Job:
    return held_by("pin", mm("joint.radial_pin.length", 48.5), mm("joint.radial_pin.diameter", 4.0))


@breaks("V121", "step 3.1")
def clamp_screw_that_stands_out() -> Job:
    return held_by("set-screw", mm("joint.split_clamp.length", 25.0), mm("joint.split_clamp.head", 8.0))


@breaks("V122", "bore, head end")
def bore_smaller_than_the_bar_for_a_bond() -> Job:
    return with_shop(measured={"head": (22.05,)})


@breaks("V122", "bore, head end")
def bore_larger_than_the_bar_for_a_shrink_fit() -> Job:
    tight = figure("joint.shrink_fit.temperature", 150.0, "degC", "temperature")
    return held_by("heat-part", tight)


@breaks("V122", "bore, head end")
def bore_outside_the_window_of_its_way() -> Job:
    return with_shop(fit_mm=(0.01, 0.05))


@breaks("V122", "bore, to be worked out")
def bore_worked_out_far_too_wide() -> Job:
    deep = (mm("joint.set_screws.length", 12.0), mm("joint.set_screws.major", 6.0), mm("joint.set_screws.spot", 0.5))
    return held_by("set-screw", *deep, mm("bore.add_least", 0.03), mm("bore.add_most", 0.2))


@breaks("V122", "bore, head end")
def bore_for_a_bar_that_nobody_measured() -> Job:
    return with_shop(measured={})
