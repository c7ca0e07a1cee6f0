"""Sheets that take another piece off the rack than the one that was judged, or a piece that is no metal for collars."""

from tailtrue.parts import Setting

from .broken import breaks
from .changed import Job, with_sheet, with_step
from .sample import procedure


def _rack(taken: str, **verdicts: str) -> Job:
    """The sample with a list of pieces at a step, one of which the step names."""
    lines = tuple(
        Setting(label=(f"round bar: {name}, ",), value=(verdict,), reason=("so it is",))
        for name, verdict in verdicts.items()
    )
    return with_step("3.2", settings=lines, text=((f"Take this piece: {taken}.",),))


@breaks("V490", "step 3.2", also="V470")
def another_piece_than_the_one_that_is_called_chosen() -> Job:
    return _rack("nylon", brass="chosen", nylon="does not serve")


@breaks("V490", "step 3.2", also="V470")
def two_pieces_called_chosen() -> Job:
    return _rack("brass", brass="chosen", bronze="chosen")


@breaks("V490", "step 3.2", also="V470")
def a_rack_of_which_nothing_is_chosen() -> Job:
    return _rack("brass", brass="left", nylon="does not serve")


@breaks("V491", "choice collar.metal")
def collars_of_a_plastic() -> Job:
    first = procedure().choices[0]
    ways = tuple(way.model_copy(update={"name": "nylon"}) if way.verdict == "chosen" else way for way in first.alternatives)
    metal = first.model_copy(update={"id": "collar.metal", "chosen": "nylon", "alternatives": ways})
    return with_sheet(choices=(*procedure().choices, metal))
