"""Sheets that this machine and this shop cannot carry out."""

from tailtrue.inspection import SpeedCap
from tailtrue.parts import Limits, Setting

from .broken import breaks
from .changed import (
    Job,
    check,
    step,
    with_check,
    with_dimension,
    with_line,
    with_look_up,
    with_setting,
    with_sheet,
    with_shop,
    with_step,
    with_title,
)
from .sample import procedure
from .sample_pieces import figure, mm


@breaks("V23", "step 4.3", also="V86")
def speed_that_no_gear_has() -> Job:
    return with_setting("4.3", 0, value=480.0)


@breaks("V23", "step 2.3", also="V126")
def speed_outside_the_range() -> Job:
    return with_shop(speeds=(), speed_from=510.0, speed_to=2000.0)


@breaks("V23", "step 1.3", also="V126")
def lathe_without_known_speeds() -> Job:
    return with_shop(speeds=())


@breaks("V23", "step 4.3", also="V126")
def limit_set_as_a_speed() -> Job:
    return with_setting("4.3", 0, fact="chuck.speed_limit", value=480.0)


@breaks("V23", "step 4.3")
def speed_in_a_sentence() -> Job:
    return with_step("4.3", text=(("Run at ", figure("skim.speed", 430.0, "1/min", "speed"), "."),))


@breaks("V70", "step 2.1", also="V24")
def corners_of_a_raw_blank_that_strike_the_cross_slide() -> Job:
    circle = Setting(label=("circle",), value=(mm("collar.corner_diameter", 400.0, "length"),), reason=())
    return with_line("2.1", circle)


@breaks("V57", "step 4.3", also="V86")
def speed_above_what_work_between_centres_bears() -> Job:
    return with_setting("4.3", 0, value=800.0)


@breaks("V57", "step 1.1", also="V108")
def printed_limit_above_the_chuck() -> Job:
    return with_shop(speed_caps=(SpeedCap("the chuck", 1600.0, ("bar-ends",)), SpeedCap("the top of the lathe", 2000.0)))


@breaks("V57", "step 2.6", also="V108")
def cap_for_every_phase() -> Job:
    return with_shop(speed_caps=(SpeedCap("a damaged belt", 400.0),))


@breaks("V58", "step 4.3")
def feed_that_is_not_on_the_plate() -> Job:
    return with_setting("4.3", 1, value=0.06)


@breaks("V58", "step 1.3")
def hand_feed_not_called_so() -> Job:
    lines = step("1.3").settings
    return with_step("1.3", settings=(lines[0], lines[1].model_copy(update={"label": ("feed",)}), lines[2]))


@breaks("V59", "step 2.3")
def drill_that_is_not_in_the_shop() -> Job:
    return with_shop(drills=frozenset({10.0, 19.5}))


@breaks("V59", "step 1.3", also="V24")
def centre_drill_that_is_not_in_the_shop() -> Job:
    return with_line("1.3", Setting(label=("centre drill",), value=(mm("bar.centre_drill", 3.15, "tool"),)))


@breaks("V60", "step 4.3")
def depth_between_two_divisions() -> Job:
    return with_setting("4.3", 2, value=0.07)


@breaks("V60", "step 4.3")
def depth_of_nothing() -> Job:
    return with_setting("4.3", 2, value=0.0)


@breaks("V60", "step 1.3")
def depth_on_a_coarser_dial() -> Job:
    return with_shop(dial_division_mm=0.1)


@breaks("V31", "conventions")
def other_way_of_reading_the_dial() -> Job:
    return with_shop(dial_reads="diameter")


@breaks("V31", "conventions", also="V182")
def reading_of_the_dial_not_told() -> Job:
    return with_sheet(conventions=(("Depth is per side.",),))


@breaks("V31", "step 4.3")
def one_line_reads_the_dial_wrong() -> Job:
    line = step("4.3").settings[2].model_copy(update={"reason": ("the dial, which reads diameter",)})
    return with_step("4.3", settings=(*step("4.3").settings[:2], line))


@breaks("V15", "step 4.4")
def tool_on_no_list() -> Job:
    return with_step("4.4", tools=("micrometer-collars", "crystal-ball"))


@breaks("V15", "need drills")
def need_that_no_step_uses() -> Job:
    return with_step("2.3", tools=())


@breaks("V15", "need chuck")
def need_that_forgets_a_step() -> Job:
    return _with_need("chuck", used_at=("1.1",))


@breaks("V15", "need chuck")
def need_said_to_be_used_elsewhere() -> Job:
    return _with_need("chuck", used_at=("1.1", "2.1", "4.1"))


@breaks("V15", "need chuck")
def need_listed_twice() -> Job:
    needs = procedure().needs
    return with_sheet(needs=(*needs, next(need for need in needs if need.id == "chuck")))


@breaks("V61", "need dog")
def need_that_the_sheet_says_is_missing() -> Job:
    return _with_need("dog", in_shop=False)


@breaks("V61", "need dog")
def need_that_the_shop_does_not_have() -> Job:
    return with_shop(tool_ids_in_shop=frozenset(need.id for need in procedure().needs if need.id != "dog"))


def _with_need(name: str, **changes: object) -> Job:
    needs = (need.model_copy(update=changes) if need.id == name else need for need in procedure().needs)
    return with_sheet(needs=tuple(needs))


@breaks("V26", "step 2.7")
def reading_with_nowhere_to_write_it() -> Job:
    return with_check("2.7", blanks=())


@breaks("V26", "step 2.7")
def reading_written_without_a_unit() -> Job:
    return with_check("2.7", blanks=tuple(blank.model_copy(update={"unit": ""}) for blank in check("2.7").blanks))


@breaks("V27", "step 2.7")
def judged_size_of_which_the_paper_tells_no_doubt() -> Job:
    return with_check("2.7", uncertainty=None, resolution=None)


@breaks("V27", "step 2.7")
def gauge_too_coarse_for_the_band() -> Job:
    return with_check("2.7", uncertainty=mm("bore.gauge_uncertainty", 0.031, "fit"))


@breaks("V27", "step 2.7")
def resolution_too_coarse_for_the_band() -> Job:
    changed, givens = with_check("2.7", uncertainty=None)
    return changed, with_shop(instruments={**givens.instruments, "bore-gauge": (12.0, 32.0, 0.05)})[1]


@breaks("V27", "step 4.4")
def instrument_coarser_than_its_only_limit() -> Job:
    _, givens = with_shop()
    return with_shop(instruments={**givens.instruments, "micrometer-collars": (50.0, 75.0, 51.0)})


@breaks("V27", "step 2.7")
def doubt_in_another_unit() -> Job:
    return with_check("2.7", uncertainty=figure("bore.gauge_uncertainty", 0.0005, "in", "fit"))


@breaks("V62", "step 2.7", also="V27 V232")
def band_upside_down() -> Job:
    return with_check("2.7", limits=Limits(low=mm("bore.head_low", 22.09, "fit"), high=mm("bore.head_high", 22.03, "fit")))


@breaks("V62", "step 2.7", also="V27")
def band_without_sides() -> Job:
    return with_check("2.7", limits=Limits())


@breaks("V62", "step 2.7", also="V63 V27")
def band_in_two_units() -> Job:
    return with_check(
        "2.7", limits=Limits(low=figure("bore.head_low", 0.867, "in", "fit"), high=mm("bore.head_high", 22.09, "fit"))
    )


@breaks("V63", "step 2.7")
def instrument_not_named() -> Job:
    return with_check("2.7", instrument=None)


@breaks("V63", "step 2.7")
def instrument_unknown_to_the_shop() -> Job:
    return with_check("2.7", instrument="laser-tracker")


@breaks("V63", "step 2.7")
def instrument_that_does_not_reach() -> Job:
    _, givens = with_shop()
    return with_shop(instruments={**givens.instruments, "bore-gauge": (12.0, 22.05, 0.01)})


@breaks("V68", "drawing")
def dimension_left_out() -> Job:
    return with_dimension("collar.width", None)


@breaks("V68", "drawing")
def dimension_below_nothing() -> Job:
    return with_dimension("collar.width", -30.0)


@breaks("V68", "drawing", also="V71 V72 V110 V115")
def spacing_of_nothing() -> Job:
    return with_dimension("collar.spacing", 0.0)


@breaks("V69", "drawing")
def bar_longer_than_the_lathe() -> Job:
    return with_shop(between_centres_mm=379.0)


@breaks("V70", "drawing", also="V108")
def collar_that_strikes_the_cross_slide() -> Job:
    return with_shop(swing_over_cross_slide_mm=60.0)


@breaks("V71", "drawing", also="V47")
def collar_over_the_end_of_the_bar() -> Job:
    return with_dimension("collar.width", 120.0)


@breaks("V71", "drawing", also="V47")
def collars_that_touch() -> Job:
    return with_dimension("collar.width", 260.0)


@breaks("V71", "drawing")
def collars_not_alike_from_both_ends() -> Job:
    return with_dimension("collar.station", 60.5)


@breaks("V71", "drawing", also="V48")
def collars_no_larger_than_the_bar() -> Job:
    return with_dimension("bar.diameter", 60.0)


@breaks("V72", "look-up table", also="V110")
def move_of_the_whole_difference() -> Job:
    """The trap of the trade: the difference of the diameters taken for twice what it is."""
    rows = procedure().look_up.rows
    doubled = tuple(
        row.model_copy(update={"move": row.move.model_copy(update={"value": row.move.value * 2})}) if row.move else row
        for row in rows
    )
    return with_look_up(rows=doubled)


@breaks("V72", "look-up table", also="V110 V115")
def move_of_the_collars_not_of_the_centres() -> Job:
    return with_dimension("centres.span", 260.0)


@breaks("V72", "look-up table", also="V68 V110")
def move_without_lengths_to_check_it() -> Job:
    changed, givens = with_dimension("centres.span", None)
    dimensions = {name: one for name, one in changed.drawing.dimensions.items() if name != "bar.length"}
    drawing = changed.drawing.model_copy(update={"dimensions": dimensions})
    return changed.model_copy(update={"drawing": drawing}), givens


@breaks("V72", "look-up table")
def move_in_inches() -> Job:
    rows = procedure().look_up.rows
    changed = rows[1].model_copy(update={"move": figure("align.table.move", 0.0006, "in", "difference")})
    return with_look_up(rows=(rows[0], changed, *rows[2:]))


@breaks("V73", "look-up table")
def rows_out_of_order() -> Job:
    return with_look_up(rows=tuple(reversed(procedure().look_up.rows)))


@breaks("V73", "look-up table")
def large_difference_left_alone() -> Job:
    *rows, last = procedure().look_up.rows
    return with_look_up(rows=(*rows, last.model_copy(update={"move": None})))


@breaks("V73", "look-up table", also="V112 V116")
def move_inside_the_doubt() -> Job:
    return with_look_up(leave=mm("align.uncertainty", 0.03, "difference"))


@breaks("V32", "look-up table")
def wrong_way() -> Job:
    table = procedure().look_up
    return with_look_up(larger_at_tailstock=table.smaller_at_tailstock, smaller_at_tailstock=table.larger_at_tailstock)


@breaks("V32", "look-up table", also="V89 V111 V125")
def tool_at_the_rear() -> Job:
    return with_shop(tool_side="rear")


@breaks("V32", "look-up table")
def both_ways_at_once() -> Job:
    return with_look_up(larger_at_tailstock="Move it toward you or away from you.")


@breaks("V32", "look-up table")
def way_by_a_bare_sign() -> Job:
    return with_look_up(smaller_at_tailstock="Move it in the negative direction.")


@breaks("V74", "look-up table")
def verdict_without_a_limit() -> Job:
    return with_look_up(inside=None)


@breaks("V74", "look-up table", also="V116")
def out_of_limits_within_limits() -> Job:
    return with_look_up(outside=mm("align.outside", 0.02, "difference"))


@breaks("V74", "look-up table", also="V112 V116")
def verdict_of_an_instrument_that_cannot() -> Job:
    return with_look_up(verdict_possible=False)


@breaks("V74", "step 4.4", also="V112")
def box_for_a_verdict_that_nothing_can_give() -> Job:
    return with_look_up(verdict_possible=False, inside=None, outside=None)


@breaks("V74", "look-up table", also="V73")
def verdict_without_its_doubt() -> Job:
    return with_look_up(leave=None)


@breaks("V38", "title block")
def sheet_of_another_machine() -> Job:
    return with_title(machine="Lathe 3")


@breaks("V38", "title block")
def sheet_in_the_wrong_system() -> Job:
    return with_title(dials="inch")
