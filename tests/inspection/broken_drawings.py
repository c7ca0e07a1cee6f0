"""Sheets whose drawings are not to be trusted."""

from typing import Any

from .broken import breaks
from .changed import Job, with_sheet
from .sample import procedure
from .sample_pieces import mm


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
    return with_sheet(drawings=(*drawings, drawings[-1]))


@breaks("V85", "drawing boring-reach")
def drawing_of_no_kind() -> Job:
    return _with_drawing("boring-reach", kind="boring-rich")


@breaks("V85", "drawing boring-reach")
def drawing_without_a_dimension() -> Job:
    return _with_sizes("boring-reach", room=None)


@breaks("V85", "drawing collar-blank", also="V87")
def drawing_with_a_dimension_of_nothing() -> Job:
    return _with_sizes("collar-blank", each_face=0.0)


@breaks("V86", "drawing bar-in-chuck")
def drawing_at_odds_with_its_step() -> Job:
    held = next(one for one in procedure().drawings if one.kind == "bar-in-chuck").dimensions
    return _with_drawing("bar-in-chuck", dimensions={**held, "standing_out": mm("bar.overhang", 31.0)})


@breaks("V86", "drawing bar-in-chuck")
def drawing_at_odds_with_another_place() -> Job:
    held = next(one for one in procedure().drawings if one.kind == "bar-in-chuck").dimensions
    return _with_drawing("bar-in-chuck", dimensions={**held, "length": mm("bar.saw", 385.0)})


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
