"""Sheets on which somebody goes back, and the spindle is to turn on an isolated lathe."""

from shops import EXAMPLES
from tailtrue.parts import Text
from tailtrue.procedure import Procedure, Step

from .broken import breaks
from .changed import Job, sheet_of


def _job(shop: str, name: str) -> Job:
    return sheet_of(EXAMPLES / shop / f"{name}.toml")


def _changed(job: Job, wanted: str, **changes: object) -> Job:
    tree, shop = job
    phases = tuple(
        phase.model_copy(update={"steps": tuple(_other(step, wanted, changes) for step in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _other(step: Step, wanted: str, changes: dict[str, object]) -> Step:
    return step.model_copy(update=changes) if wanted in (step.id, step.number) else step


def _step(tree: Procedure, wanted: str) -> Step:
    return next(step for phase in tree.phases for step in phase.steps if wanted in (step.id, step.number))


def _lines(tree: Procedure, wanted: str, old: str, new: str) -> tuple[Text, ...]:
    lines = _step(tree, wanted).text
    assert any(old in piece for text in lines for piece in text if isinstance(piece, str))
    return tuple(tuple(piece.replace(old, new) if isinstance(piece, str) else piece for piece in text) for text in lines)


@breaks("V336", "step 6.2", also="V186")
def round_of_feet_that_begins_on_an_isolated_lathe() -> Job:
    tree, _ = _job("fernhill", "chucked-bar-test")
    text = _lines(tree, "5.2", "restore power", "look round")
    return _changed(_job("fernhill", "chucked-bar-test"), "5.2", text=text)


@breaks("V336", "step 7.5")
def jaws_cut_again_from_the_start_check() -> Job:
    job = _job("tannery-lane", "job")
    text = _lines(job[0], "try-soft-jaws", "step 7.2, where power comes back", "the start check")
    return _changed(job, "try-soft-jaws", text=text)


@breaks("V336", "step 7.1")
def stub_turned_again_from_the_start_check() -> Job:
    job = _job("tannery-lane", "job-stub")
    return _changed(
        job, "mount-on-stub", text=_lines(job[0], "mount-on-stub", "step 6.2, where power comes back", "step 6.3")
    )


@breaks("V336", "step 8.5")
def pass_after_cooling_from_the_start_check() -> Job:
    job = _job("ropewalk", "job")
    again = "stop, isolate, make the cooling step again, then the start check"
    lines = tuple(
        line.model_copy(update={"reason": (again,)}) if "cooling step" in str(line.reason) else line
        for line in _step(job[0], "rough-collars").settings
    )
    return _changed(job, "rough-collars", settings=lines)


@breaks("V336", "step 7.5", also="V270")
def way_back_to_a_line_that_nobody_finds() -> Job:
    job = _job("tannery-lane", "job")
    text = _lines(job[0], "try-soft-jaws", "back to step 7.2, where power comes back", "back to the line above")
    return _changed(job, "try-soft-jaws", text=text)
