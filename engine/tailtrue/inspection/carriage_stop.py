"""Between centres the feed runs toward the dog: a stop is set before it, past the cut and short of the dog."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of_step

_SET = re.compile(r"\bSet the carriage stop\b")
_TOWARD_THE_DOG = frozenset({"skim", "dog-drive"})
_FED = "power-feed"
_FEED_OUT = re.compile(r"\bTake the feed out\b", re.IGNORECASE)
_PAST, _ROOM = "collar.stop_past", "collar.dog_gap"


def set_before_the_dog(sheet: Sheet) -> Iterator[Fault]:
    """No power feed runs toward a dog before a line has set the carriage stop, in the room that there is."""
    is_set = False
    for placed in sheet.steps:
        does = set(placed.step.activities)
        words = " ".join(piece for text in placed.step.text for piece in text if isinstance(piece, str))
        is_set = is_set or _PAST in placed.told or ("mount-between-centres" in does and _SET.search(words) is not None)
        if _TOWARD_THE_DOG & does and placed.step.machine == "turning" and not is_set:
            yield Fault(placed.where, "the feed runs toward the dog, and no line has set the carriage stop")
        past = placed.told.get(_PAST)
        if past is not None and not 0 < past < placed.told.get(_ROOM, 0.0):
            yield Fault(placed.where, f"the stop lets the tool {past:g} mm past the collar, and the dog stands there")


def feed_taken_out(sheet: Sheet) -> Iterator[Fault]:
    """Each cut by power feed says where the feed comes out: a stop on the bed alone breaks what runs into it."""
    for placed in sheet.steps:
        if (
            _FED in placed.step.activities
            and placed.step.machine == "turning"
            and not _FEED_OUT.search(words_of_step(placed.step))
        ):
            yield Fault(placed.where, "the feed runs by power, and no line says where to take it out")
