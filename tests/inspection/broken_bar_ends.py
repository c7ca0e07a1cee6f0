"""Sheets on which the ends of the bar are drilled, handled or held wrong."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from shops import EXAMPLES
from tailtrue.parts import Figure
from tailtrue.procedure import Need, Procedure, Step

from .broken import breaks
from .changed import Job, sheet_of
from .sample_pieces import mm


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / name / "job.toml")


def _where(name: str, step: str) -> str:
    return next(f"step {one.number}" for phase in _job(name)[0].phases for one in phase.steps if one.id == step)


def _with(name: str, step: str, change: Callable[[Step], Step], without: str = "") -> Job:
    tree, shop = _job(name)
    needs: tuple[Need, ...] = tuple(need for need in tree.needs if need.id != without)
    return _changed(tree, step, change).model_copy(update={"needs": needs}), shop


def _changed(tree: Procedure, step: str, change: Callable[[Step], Step]) -> Procedure:
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(one) if one.id == step else one for one in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases})


def _lacking(name: str, step: str, tool: str) -> Job:
    def less(one: Step) -> Step:
        return one.model_copy(update={"tools": tuple(kept for kept in one.tools if kept != tool)})

    return _with(name, step, less, without=tool)


def _settings(step: str, change: Callable[[Any], Any]) -> Job:
    def changed(one: Step) -> Step:
        lines = tuple(line.model_copy(update={"value": tuple(map(change, line.value))}) for line in one.settings)
        return one.model_copy(update={"settings": lines})

    return _with("ropewalk", step, changed)


def _as_fact(old: str, figure: Figure) -> Callable[[Any], Any]:
    return lambda piece: figure if isinstance(piece, Figure) and piece.fact == old else piece


@breaks("V260", _where("ropewalk", "centre-bar"), also="V80 V86")
def centre_hole_counted_from_the_face() -> Job:
    return _settings("centre-bar", _as_fact("bar.centre_cone_depth", mm("bar.centre_depth", 3.8, "length")))


@breaks("V260", _where("ropewalk", "centre-bar"), also="V80 V86")
def cone_hardly_cut() -> Job:
    return _settings("centre-bar", _as_fact("bar.centre_cone_depth", mm("bar.centre_cone_depth", 0.4, "length")))


@breaks("V260", _where("ropewalk", "centre-bar"))
def large_end_not_told() -> Job:
    return _settings("centre-bar", lambda piece: piece if getattr(piece, "fact", "") != "bar.centre_cone" else "wide")


@breaks("V260", _where("ropewalk", "centre-bar"))
def cone_that_no_drill_of_the_crib_cuts() -> Job:
    tree, shop = _job("ropewalk")
    return tree, replace(shop, centre_drills=((1.0, 3.15),))


@breaks("V261", _where("ropewalk", "face-bar"), also="V290")
def rim_left_sharp() -> Job:
    def blunt(one: Step) -> Step:
        return one.model_copy(update={"activities": tuple(done for done in one.activities if done != "deburr")})

    return _with("ropewalk", "check-centre", blunt)


@breaks("V262", _where("ropewalk", "hold-bar-bore"))
def jaws_bare_on_the_seat() -> Job:
    return _lacking("ropewalk", "hold-bar-bore", "jaw-strips")


@breaks("V263", _where("ropewalk", "hold-bar-bore"))
def far_end_loose_behind_the_jaws() -> Job:
    return _lacking("ropewalk", "hold-bar-bore", "spindle-bush")


@breaks("V263", _where("tannery-lane", "hold-bar-collet"))
def far_end_loose_behind_the_collet() -> Job:
    return _lacking("tannery-lane", "hold-bar-collet", "spindle-bush")


def _not_told(one: Step) -> Step:
    kept = (line for line in one.settings if "bar.short_overhang" not in {getattr(p, "fact", "") for p in line.value})
    return one.model_copy(update={"settings": tuple(kept)})


@breaks("V264", _where("ropewalk", "hold-bar-bore"))
def nothing_tells_how_far_the_bar_stands_out() -> Job:
    return _with("ropewalk", "hold-bar-bore", _not_told)


@breaks("V262", _where("ropewalk", "hold-bar-bore"), also="V264")
def jaws_bare_and_nothing_tells_where_they_grip() -> Job:
    tree, shop = _lacking("ropewalk", "hold-bar-bore", "jaw-strips")
    return _changed(tree, "hold-bar-bore", _not_told), shop


@breaks("V263", _where("ropewalk", "hold-bar-bore"), also="V264")
def far_end_loose_and_nothing_tells_how_long_it_is() -> Job:
    tree, shop = _lacking("ropewalk", "hold-bar-bore", "spindle-bush")
    return _changed(tree, "hold-bar-bore", _not_told), shop


@breaks("V263", _where("ropewalk", "hold-bar-bore"))
def nobody_writes_that_the_bush_holds() -> Job:
    def less(one: Step) -> Step:
        checks = tuple(check for check in one.checks if "bush" not in str(check.text).lower())
        return one.model_copy(update={"checks": checks})

    return _with("ropewalk", "hold-bar-bore", less)


@breaks("V265", _where("ropewalk", "face-bar"))
def bar_faster_than_its_free_far_end_bears() -> Job:
    # The same sheet with a bar of lead, which is soft and heavy: it whirls at a fifth of the speed of steel.
    tree, shop = _job("ropewalk")
    return tree, replace(shop, bar_metal=(16.0, 11340.0))


@breaks("V313", _where("ropewalk", "hold-bar-bore"))
def bush_thicker_than_the_hole_of_the_chuck() -> Job:
    tree, shop = _job("ropewalk")
    return tree, replace(shop, bush_passes_mm=30.0)


@breaks("V313", _where("tannery-lane", "hold-bar-collet"))
def bush_sent_through_the_collet_chuck() -> Job:
    def front(one: Step) -> Step:
        return one.model_copy(update={"settings": tuple(line for line in one.settings if line.value != ("from the rear",))})

    return _with("tannery-lane", "hold-bar-collet", front)


@breaks("V620", _where("ropewalk", "hold-bar-bore"))
def bush_that_would_be_as_thin_as_paper() -> Job:
    def thin(piece: Any) -> Any:
        size = isinstance(piece, Figure) and piece.fact == "bar.bush"
        return piece.model_copy(update={"value": 28.0}) if size else piece

    return _settings("hold-bar-bore", thin)
