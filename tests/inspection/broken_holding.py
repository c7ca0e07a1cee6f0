"""Sheets that hold work in a collet, in soft jaws or on a stub, with one thing wrong."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from shops import EXAMPLES, kept_bores
from tailtrue.parts import Figure, Limits, Setting
from tailtrue.procedure import Drawing, Step

from .broken import breaks
from .changed import Job, sheet_of

_SOFT, _STUB, _KEPT = "job", "job-stub", "bores kept"


@cache
def _job(name: str) -> Job:
    if name == _KEPT:
        with TemporaryDirectory() as folder:
            path = kept_bores(Path(folder))
            return sheet_of(path)
    return sheet_of(EXAMPLES / "tannery-lane" / f"{name}.toml")


def _where(name: str, step: str) -> str:
    return next(f"step {one.number}" for phase in _job(name)[0].phases for one in phase.steps if one.id == step)


def _with(name: str, step: str, change: Callable[[Step], Step]) -> Job:
    tree, shop = _job(name)
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(one) if one.id == step else one for one in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _without(name: str, step: str, *activities: str) -> Job:
    def less(one: Step) -> Step:
        return one.model_copy(update={"activities": tuple(done for done in one.activities if done not in activities)})

    return _with(name, step, less)


def _also(name: str, step: str, activity: str) -> Job:
    return _with(name, step, lambda one: one.model_copy(update={"activities": (*one.activities, activity)}))


def _figures(name: str, step: str, change: Callable[[Figure], Figure | None]) -> Job:
    def line(one: Setting) -> Setting | None:
        value = tuple(change(piece) if isinstance(piece, Figure) else piece for piece in one.value)
        return None if None in value else one.model_copy(update={"value": value})

    def changed(one: Step) -> Step:
        return one.model_copy(update={"settings": tuple(kept for kept in map(line, one.settings) if kept is not None)})

    return _with(name, step, changed)


@breaks("V131", _where(_SOFT, "bore-soft-jaws"))
def soft_jaws_bored_on_no_plug() -> Job:
    return _without(_SOFT, "fit-soft-jaws", "plug-in-jaws")


@breaks("V87", "drawing jaws-on-plug", also="V86")
def step_bored_into_a_wide_plug() -> Job:
    tree, shop = _job(_SOFT)

    def wide(one: Drawing) -> Drawing:
        if one.kind != "jaws-on-plug":
            return one
        broad = one.dimensions["plug_width"].model_copy(update={"value": 20.0})
        return one.model_copy(update={"dimensions": {**one.dimensions, "plug_width": broad}})

    return tree.model_copy(update={"drawings": tuple(map(wide, tree.drawings))}), shop


@breaks("V131", _where(_SOFT, "hold-blank-soft"), also="V90 V290")
def soft_jaws_that_nobody_bored() -> Job:
    return _without(_SOFT, "bore-soft-jaws", "bore-jaws")


@breaks("V131", _where(_SOFT, "hold-blank-soft"))
def soft_jaws_tried_at_no_hold() -> Job:
    return _with(_SOFT, "try-soft-jaws", lambda one: one.model_copy(update={"hold": None}))


@breaks("V131", _where(_SOFT, "face-blank"))
def plug_left_in_the_jaws() -> Job:
    return _without(_SOFT, "try-soft-jaws", "plug-out")


@breaks("V131", _where(_SOFT, "reseat-soft"), also="V01")
def soft_jaws_taken_out_and_trusted_again() -> Job:
    return _also(_SOFT, "turn-blank-round", "jaw-change")


@breaks("V132", _where(_STUB, "mount-on-stub"))
def collar_put_on_a_stub_that_was_not_turned() -> Job:
    return _without(_STUB, "turn-stub", "turn-stub")


@breaks("V132", _where(_STUB, "mount-on-stub"), also="V01")
def stub_taken_out_between_the_collars() -> Job:
    return _also(_STUB, "take-off-stub", "grip-in-chuck")


@breaks("V132", _where(_STUB, "face-on-stub"), also="V290")
def collar_faced_that_nobody_put_on_the_stub() -> Job:
    return _without(_STUB, "mount-on-stub", "mount-on-stub")


@breaks("V133", _where(_STUB, "face-on-stub"), also="V233 V80")
def deep_cut_on_the_stub() -> Job:
    return _figures(
        _STUB, "face-on-stub", lambda one: one.model_copy(update={"value": 0.5}) if one.rounding == "depth" else one
    )


@breaks("V133", _where(_STUB, "face-on-stub"), also="V80")
def stub_with_no_depth_of_cut() -> Job:
    return _figures(_STUB, "face-on-stub", lambda one: None if one.rounding == "depth" else one)


def _takes(name: str, what: str, low: float, high: float) -> Job:
    tree, shop = _job(name)
    return tree, replace(shop, takes={**shop.takes, what: (low, high)})


@breaks("V134", _where(_SOFT, "hold-bar-collet"))
def bar_thicker_than_the_collet() -> Job:
    return _takes(_SOFT, "collet", 23.0, 24.99)


@breaks("V134", _where(_SOFT, "hold-bar-collet"), also="V122 V652")
def nominal_bar_thicker_than_the_collet() -> Job:
    tree, shop = _takes(_SOFT, "collet", 24.0, 24.998)
    return tree, replace(shop, measured={})


@breaks("V134", _where(_SOFT, "hold-bar-collet"))
def collet_that_nobody_has() -> Job:
    tree, shop = _job(_SOFT)
    return tree, replace(shop, takes={what: sizes for what, sizes in shop.takes.items() if what != "collet"})


@breaks("V134", _where(_SOFT, "bore-soft-jaws"))
def soft_jaws_bored_past_their_size() -> Job:
    return _takes(_SOFT, "soft jaws", 45.0, 69.0)


@breaks("V134", _where(_STUB, "turn-stub"))
def stub_turned_thinner_than_it_bears() -> Job:
    return _takes(_STUB, "stub mandrel", 26.0, 34.0)


@breaks("V134", _where(_STUB, "turn-stub"))
def stub_turned_for_a_bore_that_is_not_said() -> Job:
    return _figures(_STUB, "turn-stub", lambda one: None if one.fact == "bore.nominal" else one)


@breaks("V203", _where(_SOFT, "drill-blank"))
def no_room_for_the_drill_behind_the_soft_jaws_told() -> Job:
    return _figures(_SOFT, "drill-blank", lambda one: None if one.fact == "collar.room_behind" else one)


@breaks("V57", _where(_SOFT, "face-bar"), also="V108")
def bar_turned_faster_than_the_collet_chuck_is_marked() -> Job:
    tree, shop = _job(_SOFT)
    caps = tuple(replace(cap, limit_per_min=100.0) if cap.name == "what grips the bar" else cap for cap in shop.speed_caps)
    return tree, replace(shop, speed_caps=caps)


@breaks("V57", _where(_STUB, "face-on-stub"))
def collar_held_by_its_bore_turned_too_fast() -> Job:
    tree, shop = _job(_STUB)
    caps = tuple(
        replace(cap, limit_per_min=300.0) if cap.name == "collar held by its bore" else cap for cap in shop.speed_caps
    )
    return tree, replace(shop, speed_caps=caps)


def _said(name: str, step: str, change: Callable[[str], str]) -> Job:
    """The first words of the first check of a step, changed."""

    def changed(one: Step) -> Step:
        check = one.checks[0]
        words = tuple(change(piece) if isinstance(piece, str) else piece for piece in check.text)
        return one.model_copy(update={"checks": (check.model_copy(update={"text": words}), *one.checks[1:])})

    return _with(name, step, changed)


@breaks("V600", _where(_KEPT, "face-first-on-stub"), also="V46 V205")
def stub_turned_with_one_of_two_bores_gauged() -> Job:
    tree, shop = _job(_KEPT)
    phases = tuple(one.model_copy(update={"each": one.each[:1]}) if one.id == "kept-bores" else one for one in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V601", _where(_STUB, "turn-stub"))
def stub_turned_however_loose() -> Job:
    return _figures(_STUB, "turn-stub", lambda one: None if one.fact == "limit.stub_gap" else one)


@breaks("V602", _where(_KEPT, "mount-raw-on-stub"))
def raw_face_looked_at_for_light() -> Job:
    return _said(_KEPT, "mount-raw-on-stub", lambda words: f"No light between collar and shoulder. {words}")


@breaks("V602", _where(_STUB, "mount-on-stub"))
def cut_face_not_looked_at_on_the_shoulder() -> Job:
    return _said(_STUB, "mount-on-stub", lambda words: words.replace("No light between collar and shoulder. ", ""))


@breaks("V603", _where(_KEPT, "face-first-on-stub"))
def stub_loose_by_all_it_may_be_in_the_smaller_of_two_kept_bores() -> Job:
    def loose(one: Figure) -> Figure:
        return one.model_copy(update={"value": 0.03}) if one.fact == "stub.gap_in_smaller" else one

    return _figures(_KEPT, "turn-stub", loose)


@breaks("V652", _where(_KEPT, "gauge-kept-bore"), also="V112")
def kept_bore_called_good_and_laid_aside() -> Job:
    def less(limits: Limits) -> Limits:
        low = limits.low and limits.low.model_copy(update={"value": limits.low.value + 0.005})
        return limits.model_copy(update={"low": low})

    def tight(one: Step) -> Step:
        checks = (check.model_copy(update={"limits": check.limits and less(check.limits)}) for check in one.checks)
        return one.model_copy(update={"checks": tuple(checks)})

    return _with(_KEPT, "gauge-kept-bore", tight)
