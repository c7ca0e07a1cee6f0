"""Sheets whose drawings are not to be trusted."""

from typing import Any

from tailtrue.shop_sheet import Sign

from .broken import breaks
from .changed import Job, with_sheet, with_shop
from .sample import procedure
from .sample_drawings import SCREWS, SETTINGS
from .sample_pieces import figure, mm


def _with_drawing(kind: str, /, **changes: Any) -> Job:
    drawings = procedure().drawings
    return with_sheet(drawings=tuple(one.model_copy(update=changes) if one.kind == kind else one for one in drawings))


def _with_sizes(kind: str, **sizes: float | None) -> Job:
    """The sample with dimensions of one drawing changed, or left out; a name of a list is written with two underscores."""
    dimensions = dict(next(one for one in procedure().drawings if one.kind == kind).dimensions)
    for written, value in sizes.items():
        name = written.replace("__", ".")
        if value is None:
            del dimensions[name]
        else:
            # A name of its own, so that the sheet has nothing to say against the value.
            dimensions[name] = mm("bar.length_of_its_own", value)
    return _told(_with_drawing(kind, dimensions=dimensions))


def _told(job: Job) -> Job:
    """The made-up fact, said to come from somewhere."""
    changed, givens = job
    extra = changed.derivations[0].model_copy(update={"fact": "bar.length_of_its_own"})
    return changed.model_copy(update={"derivations": (*changed.derivations, extra)}), givens


@breaks("V84", "drawing drill-ladder")
def drawing_at_no_step() -> Job:
    return _with_drawing("drill-ladder", place="9.9")


@breaks("V84", "drawing boring-reach")
def drawing_printed_twice() -> Job:
    drawings = procedure().drawings
    return with_sheet(drawings=(*drawings, next(one for one in drawings if one.kind == "boring-reach")))


@breaks("V85", "drawing boring-reach")
def drawing_of_no_kind() -> Job:
    return _with_drawing("boring-reach", kind="boring-rich")


@breaks("V85", "drawing boring-reach")
def drawing_without_a_dimension() -> Job:
    return _with_sizes("boring-reach", room=None)


@breaks("V87", "drawing collar-blank")
def blank_with_a_hole_wider_than_its_collar() -> Job:
    return _with_sizes("collar-blank", hole=200.0)


@breaks("V87", "drawing blank-held")
def ring_in_the_jaws_with_no_wall() -> Job:
    return _with_sizes("blank-held", hole=200.0)


@breaks("V85", "drawing collar-blank", also="V87")
def drawing_with_a_dimension_of_nothing() -> Job:
    return _with_sizes("collar-blank", each_face=0.0)


@breaks("V86", "drawing bar-in-steady")
def drawing_at_odds_with_its_step() -> Job:
    held = next(one for one in procedure().drawings if one.kind == "bar-in-steady").dimensions
    return _with_drawing("bar-in-steady", dimensions={**held, "standing_out": mm("bar.short_overhang", 31.0)})


@breaks("V86", "drawing bar-in-steady")
def drawing_at_odds_with_another_place() -> Job:
    held = next(one for one in procedure().drawings if one.kind == "bar-in-steady").dimensions
    return _with_drawing("bar-in-steady", dimensions={**held, "length": mm("bar.saw", 385.0)})


@breaks("V86", "drawing drill-ladder", also="V87")
def ladder_with_a_drill_twice() -> Job:
    drill, bore = mm("hole.ladder.size", 20.0, "tool"), mm("bore.rough_to", 21.7)
    return _with_drawing("drill-ladder", dimensions={"drill.1": drill, "drill.2": drill, "rough_bore": bore})


@breaks("V87", "drawing drill-ladder")
def ladder_beyond_the_bore() -> Job:
    return _with_sizes("drill-ladder", rough_bore=19.0)


@breaks("V87", "drawing drill-ladder")
def ladder_without_drills() -> Job:
    return _with_sizes("drill-ladder", drill__1=None)


@breaks("V87", "drawing blank-held")
def grip_and_what_stands_out_are_not_the_blank() -> Job:
    return _with_sizes("blank-held", standing_out=14.0)


@breaks("V87", "drawing blank-held")
def spacer_that_does_not_fit_the_jaws() -> Job:
    return _with_sizes("blank-held", spacer=11.0)


@breaks("V87", "drawing blank-held")
def grip_deeper_than_the_jaws() -> Job:
    return _with_sizes("blank-held", spacer=None, jaw_depth=19.0)


@breaks("V87", "drawing collar-blank")
def faces_that_do_not_make_the_blank() -> Job:
    return _with_sizes("collar-blank", sawn_width=32.0)


@breaks("V87", "drawing collar-blank")
def collar_larger_than_its_stock() -> Job:
    return _with_sizes("collar-blank", sawn_diameter=59.0)


@breaks("V87", "drawing collar-blank")
def bar_larger_than_the_collar() -> Job:
    return _with_sizes("collar-blank", bar=61.0)


@breaks("V87", "drawing boring-reach")
def boring_bar_too_short_for_the_blank() -> Job:
    return _with_sizes("boring-reach", overhang=37.0)


@breaks("V87", "drawing boring-reach")
def boring_bar_too_thick_for_the_hole() -> Job:
    return _with_sizes("boring-reach", shank=20.0)


@breaks("V87", "drawing boring-reach")
def hole_in_the_chuck_too_small_for_the_bore() -> Job:
    return _with_sizes("boring-reach", chuck_hole=20.0)


@breaks("V87", "drawing bar-in-spindle")
def bar_too_thick_for_the_spindle() -> Job:
    return _with_sizes("bar-in-spindle", spindle_bore=22.0)


@breaks("V87", "drawing bar-in-steady")
def more_of_the_bar_outside_than_there_is() -> Job:
    return _with_sizes("bar-in-steady", standing_out=400.0)


@breaks("V88", "drawing boring-reach")
def number_typed_into_a_label() -> Job:
    return _with_drawing("boring-reach", labels={"chuck": "chuck 160"})


@breaks("V88", "drawing boring-reach")
def number_typed_into_a_caption() -> Job:
    return _with_drawing("boring-reach", caption="Leave 5 free.")


def _with_said(kind: str, **said: str) -> Job:
    before = next(one for one in procedure().drawings if one.kind == kind).said
    return _with_drawing(kind, said={**before, **{name.replace("__", "."): word for name, word in said.items()}})


@breaks("V85", "drawing speed-plate", also="V126")
def plate_without_speeds() -> Job:
    return _with_drawing(
        "speed-plate", dimensions={"bar": figure("bar.speed", 800.0, "1/min", "speed")}, labels={"bar": "bar"}
    )


@breaks("V85", "drawing speed-plate", also="V86")
def length_on_the_plate() -> Job:
    plate = next(one for one in procedure().drawings if one.kind == "speed-plate").dimensions
    return _with_drawing("speed-plate", dimensions={**plate, "skim": mm("skim.speed", 500.0)})


@breaks("V87", "drawing between-centres")
def dog_and_room_that_do_not_reach_the_collar() -> Job:
    return _with_sizes("between-centres", gap=4.0)


@breaks("V87", "drawing between-centres")
def dog_so_near_the_collar_that_the_tool_may_strike_it() -> Job:
    return _with_sizes("between-centres", dog=31.5, gap=3.5)


@breaks("V87", "drawing between-centres")
def ends_longer_than_the_bar() -> Job:
    return _with_sizes("between-centres", length=70.0)


@breaks("V87", "drawing speed-plate", also="V86")
def work_at_a_speed_that_the_lathe_has_not() -> Job:
    plate = next(one for one in procedure().drawings if one.kind == "speed-plate").dimensions
    return _with_drawing("speed-plate", dimensions={**plate, "skim": figure("skim.speed", 480.0, "1/min", "speed")})


@breaks("V89", "drawing between-centres")
def set_up_with_the_tool_on_the_wrong_side() -> Job:
    return _with_said("between-centres", tool_side="rear")


@breaks("V89", "drawing indicator-on-collars")
def indicator_drawn_without_a_side() -> Job:
    return _with_drawing("indicator-on-collars", said={})


@breaks("V125", "drawing tailstock-move")
def arrows_the_wrong_way_round() -> Job:
    return _with_drawing("tailstock-move", labels={"larger": "away from you", "smaller": "toward you"})


@breaks("V125", "drawing tailstock-move")
def one_screw_drawn_for_a_tailstock_of_two() -> Job:
    return _with_drawing("tailstock-move", labels={"larger": "toward you", "smaller": "away from you", "one_screw": "screw"})


@breaks("V125", "drawing tailstock-move")
def screws_taken_for_each_other() -> Job:
    return _with_said("tailstock-move", screw_toward=SCREWS[1], screw_away=SCREWS[0])


@breaks("V125", "drawing tailstock-move")
def screw_that_nobody_named() -> Job:
    return with_shop(screws=("", SCREWS[1]))


@breaks("V125", "drawing indicator-on-quill", also="V300")
def move_drawn_for_a_tailstock_that_cannot() -> Job:
    return with_shop(set_over="none")


@breaks("V126", "drawing speed-plate")
def levers_of_other_speeds() -> Job:
    return _with_said("speed-plate", setting__1=SETTINGS[1], setting__2=SETTINGS[0])


@breaks("V126", "drawing speed-plate")
def plate_in_another_order() -> Job:
    plate = dict(next(one for one in procedure().drawings if one.kind == "speed-plate").dimensions)
    plate["speed.1"], plate["speed.2"] = plate["speed.2"], plate["speed.1"]
    return _with_drawing("speed-plate", dimensions=plate)


@breaks("V126", "drawing speed-plate")
def speed_of_a_step_left_out() -> Job:
    plate = dict(next(one for one in procedure().drawings if one.kind == "speed-plate").dimensions)
    del plate["skim"]
    return _with_drawing("speed-plate", dimensions=plate)


@breaks("V126", "drawing speed-plate")
def work_that_no_step_does() -> Job:
    drawn = next(one for one in procedure().drawings if one.kind == "speed-plate")
    plate = {**drawn.dimensions, "turn": figure("bar.length_of_its_own", 500.0, "1/min", "speed")}
    return _told(_with_drawing("speed-plate", dimensions=plate, labels={**drawn.labels, "turn": "turn"}))


@breaks("V126", "drawing speed-plate")
def speed_without_its_work() -> Job:
    labels = next(one for one in procedure().drawings if one.kind == "speed-plate").labels
    return _with_drawing("speed-plate", labels={name: word for name, word in labels.items() if name != "skim"})


def _with_signs(code: str, *signs: Sign) -> Job:
    """The sample with a sign at every caution for the whole job."""
    cautions = tuple(one.model_copy(update={"signs": (code,)}) for one in procedure().job_cautions)
    return with_sheet(job_cautions=cautions, signs=signs)


def _sign(code: str, words: str, shape: str) -> Sign:
    return Sign.model_validate({"code": code, "words": words, "shape": shape})


@breaks("V127", "front, caution chips")
def sign_at_a_caution_without_words() -> Job:
    return _with_signs("W025", _sign("W024", "hands are crushed", "triangle"))


@breaks("V127", "sign P028")
def prohibition_drawn_as_a_warning() -> Job:
    return _with_signs("P028", _sign("P028", "no gloves", "triangle"))
