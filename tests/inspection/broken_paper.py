"""Sheets that cannot be read or trusted as a document."""

from dataclasses import replace
from math import inf, nan

from .broken import breaks
from .changed import (
    Job,
    card_figure,
    figure_of,
    in_order,
    step,
    with_card_line,
    with_caution,
    with_check,
    with_phase,
    with_setting,
    with_sheet,
    with_step,
    with_title,
)
from .sample import procedure
from .sample_pieces import mm


@breaks("V09", "step 4.1")
def sentence_of_more_than_twenty_words() -> Job:
    return with_step(
        "4.1",
        text=(
            (
                " ".join(["turn"] * 15) + " by ",
                mm("bar.length", 380.0),
                " so that it goes round.",
            ),
        ),
    )


@breaks("V14", "step 4.5")
def number_left_out() -> Job:
    changed, givens = with_step("4.4", number="4.5")
    needs = tuple(
        need.model_copy(update={"used_at": ("4.5",)}) if need.id == "micrometer-collars" else need for need in changed.needs
    )
    return changed.model_copy(update={"needs": needs}), givens


@breaks("V14", "step 5.1", also="V98")
def number_used_twice() -> Job:
    return with_step("5.4", number="5.1")


@breaks("V14", "phase 7")
def phase_out_of_count() -> Job:
    return with_phase("5", number="7")


@breaks("V24", "step 4.3")
def fact_without_an_account() -> Job:
    return with_setting("4.3", 2, fact="skim.guess")


@breaks("V24", "step 4.3")
def account_without_a_source() -> Job:
    made = (one.model_copy(update={"sources": ()}) if one.fact == "skim.depth" else one for one in procedure().derivations)
    return with_sheet(derivations=tuple(made))


@breaks("V303", "derivation of skim.depth")
def account_in_bare_digits() -> Job:
    bare = {"value": ("(0.05, 0.1)",)}
    made = (one.model_copy(update=bare) if one.fact == "skim.depth" else one for one in procedure().derivations)
    return with_sheet(derivations=tuple(made))


@breaks("V34", "step 4.1")
def placeholder_left_in_a_sentence() -> Job:
    return with_step("4.1", text=(("Put {{ bar.name }} between the centres.",),))


@breaks("V34", "step 4.1")
def value_that_was_never_there() -> Job:
    return with_step("4.1", title="Mount None")


@breaks("V34", "title block")
def title_still_to_be_done() -> Job:
    return with_title(author="TBD")


@breaks("V34", "drawing")
def label_that_is_no_number() -> Job:
    return with_sheet(drawing=procedure().drawing.model_copy(update={"labels": {"bar_note": "bar of nan"}}))


@breaks("V34", "step 4.1")
def empty_sentence() -> Job:
    return with_step("4.1", text=(("Put the bar in.",), (" ",)))


@breaks("V34", "stop at once")
def empty_line_among_others() -> Job:
    return with_sheet(stop_at_once=(("New noise.",), ()))


@breaks("V34", "step 4.3")
def setting_without_a_value() -> Job:
    lines = step("4.3").settings
    return with_step("4.3", settings=(*lines, lines[0].model_copy(update={"value": ()})))


@breaks("V34", "step 4.1")
def step_without_a_title() -> Job:
    return with_step("4.1", title="")


@breaks("V41", "whole sheet")
def nobody_told_when_to_stop() -> Job:
    return with_sheet(stop_at_once=())


@breaks("V41", "whole sheet")
def nobody_told_what_to_do_when_it_goes_wrong() -> Job:
    return with_sheet(if_it_goes_wrong=())


@breaks("V41", "whole sheet")
def look_up_table_without_rows() -> Job:
    return with_sheet(look_up=procedure().look_up.model_copy(update={"rows": ()}))


@breaks("V41", "step 4.1", also="V34")
def step_that_says_nothing() -> Job:
    return with_step("4.1", text=())


@breaks("V41", "step 4.1")
def step_without_a_box() -> Job:
    return with_step("4.1", boxes=())


@breaks("V41", "phase 3", also="V75 V90 V290 V301 V480")
def phase_without_steps() -> Job:
    return in_order("3")


@breaks("V360", "front")
def start_without_the_safety_review() -> Job:
    return with_sheet(do_not_start=procedure().do_not_start[:1])


@breaks("V360", "front")
def start_on_the_safety_review_of_another_sheet() -> Job:
    return with_sheet(do_not_start=(("The safety review, SW-L2-013, is not signed.",),))


@breaks("V360", "record", also="V480")
def readings_that_go_into_no_record() -> Job:
    return with_step("4.4", text=(("Measure both collars.",),))


@breaks("V361", "title block", also="V34")
def sheet_that_does_not_say_how_it_is_used() -> Job:
    return with_title(use_level=" ")


@breaks("V361", "title block")
def sheet_for_another_operator() -> Job:
    return with_title(operator="experienced")


@breaks("V361", "title block")
def sheet_in_force_beside_its_superseded_standing_procedure() -> Job:
    return with_title(stated="superseded")


@breaks("V35", "title block", also="V34")
def sheet_without_an_edition() -> Job:
    return with_title(revision=" ")


@breaks("V51", "step 2.1, caution short-grip")
def caution_from_a_source_that_is_not_listed() -> Job:
    return with_caution("2.1", sources=("old-almanac:7",))


@breaks("V51", "derivation of skim.depth")
def account_from_a_source_that_is_not_listed() -> Job:
    made = (
        one.model_copy(update={"sources": ("old-almanac",)}) if one.fact == "skim.depth" else one
        for one in procedure().derivations
    )
    return with_sheet(derivations=tuple(made))


@breaks("V51", "choice joint.method")
def choice_without_a_source() -> Job:
    first, *rest = procedure().choices
    ways = tuple(way.model_copy(update={"sources": ()}) for way in first.alternatives)
    return with_sheet(choices=(first.model_copy(update={"alternatives": ways}), *rest))


@breaks("V51", "findings")
def finding_from_a_source_that_is_not_listed() -> Job:
    findings = tuple(one.model_copy(update={"sources": ("old-almanac",)}) for one in procedure().findings)
    return with_sheet(findings=findings)


@breaks("V55", "step 2.3")
def repeat_without_an_end() -> Job:
    return with_step("2.3", text=(("Feed in pecks.",), ("Repeat until it is through.",)))


@breaks("V64", "lead")
def millimetres_typed_into_the_lead() -> Job:
    return with_sheet(lead=("A bar 380 mm long.",))


@breaks("V64", "step 4.1, caution bar-drops")
def inches_typed_into_a_caution() -> Job:
    return with_caution("4.1", avoid=(("Stand 12 in away.",),))


@breaks("V64", "step 4.4")
def percent_typed_into_a_check() -> Job:
    return with_check("4.4", text=("Worn by less than 5%.",))


@breaks("V64", "step 4.1")
def degrees_typed_into_a_reason() -> Job:
    return with_step("4.1", why=("A cone of 60° carries it.",))


@breaks("V64", "step 4.1", also="V65")
def speed_typed_into_a_sentence() -> Job:
    return with_step("4.1", text=(("Never run above 500 rpm.",),))


@breaks("V65", "step 4.1")
def bare_number_in_a_sentence() -> Job:
    return with_step("4.1", text=(("Take 3 light cuts.",),))


@breaks("V66", "step 4.3", also="V60")
def depth_that_is_no_number() -> Job:
    return with_setting("4.3", 2, value=nan)


@breaks("V66", "cut list, bar", also="V48 V86")
def length_without_end() -> Job:
    cut = procedure().cut_list[0]
    return with_sheet(cut_list=(cut.model_copy(update={"saw_to": (mm("bar.saw", inf),)}),))


@breaks("V67", "lead")
def figure_without_a_unit() -> Job:
    return with_sheet(lead=("A bar of ", figure_of(mm("bar.length", 380.0), unit=""), "."))


@breaks("V78", "title block")
def date_the_other_way_round() -> Job:
    return with_title(date="25.11.2026")


@breaks("V78", "title block")
def day_that_never_was() -> Job:
    return with_title(date="2026-02-30")


@breaks("V78", "title block", also="V34")
def no_date() -> Job:
    return with_title(date="")


@breaks("V64", "step 4.1")
def number_typed_that_a_user_wrote_too() -> Job:
    changed, givens = with_step("4.1", why=("The bar stands out 30 mm.",))
    return changed, replace(givens, labels=(*givens.labels, "30 mm"))


@breaks("V34", "card")
def card_line_without_a_label() -> Job:
    return with_card_line("skim.feed", label=(" ",))


@breaks("V41", "whole sheet", also="V82 V432")
def card_left_empty() -> Job:
    return with_sheet(card=procedure().card.model_copy(update={"groups": (), "steps": ()}))


@breaks("V80", "card", also="V81")
def card_with_another_depth() -> Job:
    return with_card_line("skim.depth", value=figure_of(card_figure("skim.depth"), value=0.06))


@breaks("V80", "card")
def card_with_another_rounding() -> Job:
    return with_card_line("skim.feed", value=figure_of(card_figure("skim.feed"), rounding="difference"))


@breaks("V80", "card")
def card_that_rounds_a_feed_up() -> Job:
    return with_card_line("skim.feed", value=figure_of(card_figure("skim.feed"), bound="least"))


@breaks("V80", "card", also="V82")
def card_with_another_speed() -> Job:
    return with_card_line("skim.speed", value=figure_of(card_figure("skim.speed"), value=800.0))


@breaks("V80", "card")
def card_naming_a_step_that_is_not_there() -> Job:
    return with_card_line("skim.feed", step="9.9")


@breaks("V80", "card")
def card_naming_the_wrong_step() -> Job:
    return with_card_line("skim.feed", step="4.4")


@breaks("V80", "card")
def number_in_a_label_of_the_card_that_no_step_sets() -> Job:
    return with_card_line("skim.feed", label=("feed, bar of ", mm("bar.length", 380.0)))


@breaks("V81", "card")
def depth_on_the_card_that_does_not_say_per_side() -> Job:
    return with_card_line("skim.depth", label=("depth",))


@breaks("V81", "card")
def feed_on_the_card_that_says_per_side() -> Job:
    return with_card_line("skim.feed", label=("feed per side",))


@breaks("V82", "step 4.3")
def speed_that_the_card_leaves_out() -> Job:
    card = procedure().card
    groups = tuple(
        group.model_copy(update={"lines": tuple(line for line in group.lines if line.value.fact != "skim.speed")})
        for group in card.groups
    )
    return with_sheet(card=card.model_copy(update={"groups": groups}))


@breaks("V83", "card", also="V80")
def upper_limit_on_the_card_called_the_least() -> Job:
    figure = figure_of(card_figure("skim.feed"), bound="most")
    return with_card_line("skim.feed", label=("feed, at least",), value=figure)


@breaks("V83", "card", also="V80")
def lower_limit_on_the_card_called_the_most() -> Job:
    figure = figure_of(card_figure("skim.feed"), bound="least")
    return with_card_line("skim.feed", label=("feed, at most",), value=figure)
