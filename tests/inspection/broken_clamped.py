"""Sheets on which a blank is clamped to the faceplate, with one thing wrong."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from shops import clamped
from tailtrue.parts import Figure
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, sheet_of


@cache
def _job() -> Job:
    with TemporaryDirectory() as folder:
        path = clamped(Path(folder), "plate")
        return sheet_of(path)


def _where(wanted: str) -> str:
    return next(f"step {one.number}" for phase in _job()[0].phases for one in phase.steps if one.id == wanted)


def _changed(wanted: str, **update: object) -> Job:
    tree, shop = _job()
    done = False

    def change(step: Step) -> Step:
        nonlocal done
        if step.id != wanted or done:
            return step
        done = True
        return step.model_copy(update=update)

    phases = tuple(phase.model_copy(update={"steps": tuple(map(change, phase.steps))}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop


def _step(wanted: str) -> Step:
    return next(one for phase in _job()[0].phases for one in phase.steps if one.id == wanted)


def _told(wanted: str, fact: str, value: float) -> Job:
    def valued(piece: object) -> object:
        return piece.model_copy(update={"value": value}) if isinstance(piece, Figure) and piece.fact == fact else piece

    lines = tuple(
        line.model_copy(update={part: tuple(map(valued, getattr(line, part))) for part in ("value", "reason")})
        for line in _step(wanted).settings
    )
    return _changed(wanted, settings=lines)


@breaks("V670", _where("bore-rough"), also="V290")
def turned_between_the_straps() -> Job:
    return _changed("bore-rough", activities=("turning", "cut-collar"))


@breaks("V671", _where("clamp-to-faceplate"))
def two_straps() -> Job:
    return _told("clamp-to-faceplate", "faceplate.straps", 2.0)


@breaks("V671", _where("clamp-to-faceplate"))
def straps_that_hardly_hold() -> Job:
    return _told("clamp-to-faceplate", "faceplate.margin", 1.4)


@breaks("V672", _where("spot-blank"), also="V90 V290")
def balance_not_tried() -> Job:
    return _changed("balance-faceplate", activities=("clamp-to-faceplate",))


@breaks("V672", _where("drill-blank"))
def nuts_not_tried_again() -> Job:
    return _changed("tighten-straps", activities=("clear-chips", "stop-spindle"))


@breaks("V673", _where("clamp-to-faceplate"), also="V86")
def straps_past_the_rim() -> Job:
    return _told("clamp-to-faceplate", "faceplate.strap_circle", 201.0)


@breaks("V57", _where("spot-blank"), also="V80 V82")
def plate_too_fast() -> Job:
    return _told("spot-blank", "collar.spotting.speed", 700.0)
