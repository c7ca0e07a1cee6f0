"""Sheets that answer what they have nothing to do with."""

from .broken import breaks
from .changed import Job, with_sheet
from .sample import procedure


def _answering(name: str) -> Job:
    asked = procedure().choices[0].model_copy(update={"id": name, "question": "What was it?"})
    return with_sheet(choices=(*procedure().choices, asked))


@breaks("V301", "choice bar.hold")
def ends_that_nobody_faces_here() -> Job:
    return _answering("bar.hold")


@breaks("V301", "choice bar.cut_wet")
def a_bar_that_nobody_turns_here() -> Job:
    return _answering("bar.cut_wet")
