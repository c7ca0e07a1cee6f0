"""Sheets on which a drill or a boring bar is sent through more, or less, than the blank is wide by then."""

from typing import Any

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Figure, Setting

from .broken import breaks
from .changed import Job, sheet_of


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / "fernhill" / f"{name}.toml")


def _valued(node: Any, fact: str, value: float | None) -> Any:
    if isinstance(node, Figure):
        return node.model_copy(update={"value": value}) if node.fact == fact else node
    if isinstance(node, tuple):
        return tuple(_valued(one, fact, value) for one in node)
    if isinstance(node, Setting):
        return node.model_copy(update={part: _valued(getattr(node, part), fact, value) for part in ("value", "reason")})
    return node


def _told(name: str, wanted: str, fact: str, value: float | None) -> Job:
    """A sheet of one job with a number in the settings of one step changed; without a value nothing tells it."""
    tree, shop = _job(name)
    phases = []
    for phase in tree.phases:
        steps = []
        for step in phase.steps:
            lines = step.settings
            if step.id == wanted and value is None:
                lines = tuple(
                    line.model_copy(update={"reason": tuple(one for one in line.reason if not _tells(one, fact))})
                    for line in lines
                    if not any(_tells(one, fact) for one in line.value)
                )
            elif step.id == wanted:
                lines = _valued(lines, fact, value)
            steps.append(step.model_copy(update={"settings": lines}))
        phases.append(phase.model_copy(update={"steps": tuple(steps)}))
    return tree.model_copy(update={"phases": tuple(phases)}), shop


def _tells(piece: str | Figure, fact: str) -> bool:
    return isinstance(piece, Figure) and piece.fact == fact


@breaks("V310", "step 6.23")
def drill_sent_through_the_blank_as_it_was_cast() -> Job:
    return _told("job-cast", "drill-blank", "hole.travel_needed", 52.0)


@breaks("V310", "step 6.23")
def drill_that_stops_inside_the_blank() -> Job:
    return _told("job-cast", "drill-blank", "hole.travel_needed", 30.0)


@breaks("V310", "step 6.25", also="V86")
def boring_bar_set_out_for_the_blank_as_it_was_cast() -> Job:
    return _told("job-cast", "set-boring-bar", "bore.overhang", 47.0)


@breaks("V310", "step 6.25", also="V86")
def width_that_is_not_the_one_faced_to() -> Job:
    return _told("job-cast", "set-boring-bar", "bore.through_width", 36.0)


@breaks("V203", "step 6.23")
def room_behind_a_band_not_told() -> Job:
    return _told("job-cast", "drill-blank", "blank.room_behind", None)


@breaks("V203", "step 6.23")
def band_gripped_so_deep_that_the_drill_strikes() -> Job:
    return _told("job-cast", "drill-blank", "blank.room_behind", 6.0)


@breaks("V316", "step 6.6")
def band_that_one_pass_does_not_reach() -> Job:
    return _told("job-cast", "turn-band", "collar.band_passes", 1.0)


@breaks("V316", "step 6.3")
def raw_blank_whose_passes_nobody_tells() -> Job:
    return _told("job-cast", "turn-band", "collar.band_passes", None)


@breaks("V317", "step 6.16")
def many_cuts_to_width_told_as_few() -> Job:
    return _told("job-cast", "face-blank-to-width", "collar.second_rough_cuts", 5.0)


@breaks("V317", "step 6.16")
def cuts_to_width_that_nobody_counts() -> Job:
    return _told("job-cast", "face-blank-to-width", "collar.second_rough_cuts", None)


@breaks("V317", "step 6.16", also="V233")
def cuts_to_width_that_leave_two_light_ones() -> Job:
    return _told("job-cast", "face-blank-to-width", "collar.second_depth", 1.0)


@breaks("V317", "step 6.16", also="V233")
def cuts_to_width_that_take_more_than_there_is() -> Job:
    return _told("job-cast", "face-blank-to-width", "collar.second_depth", 1.1)


def _on_pads() -> Job:
    wide = {"lathe.spindle_bore": "20 mm", "lathe.steady_from": "8 mm", "lathe.steady_to": "60 mm"}
    advice = advise(EXAMPLES / "fernhill" / "job.toml", instead=wide)
    return tree_of(advice), shop_for(advice)


@breaks("V318", "step 4.7", also="V80 V82")
def bar_spun_on_greased_pads() -> Job:
    tree, shop = _on_pads()
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(update={"settings": _valued(step.settings, "bar.centring.speed", 700.0)})
                    if step.id == "centre-bar"
                    else step
                    for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V495", "step 6.13")
def blank_turned_round_that_stands_out_as_before() -> Job:
    return _told("job-cast", "reseat-four-jaw", "collar.again_out", 28.0)


@breaks("V495", "step 6.13")
def blank_turned_round_and_nobody_tells_how_far_it_stands_out() -> Job:
    return _told("job-cast", "reseat-four-jaw", "collar.again_out", None)
