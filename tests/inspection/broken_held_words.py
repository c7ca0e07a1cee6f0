"""Sheets whose words do not fit what holds the work, or whose list names a part that no line fits."""

from shops import EXAMPLES
from tailtrue.parts import Text
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of


def _job(shop: str, name: str) -> Job:
    return sheet_of(EXAMPLES / shop / f"{name}.toml")


_COLLET, _THREE, _FOUR, _CAST = (
    ("tannery-lane", "job-large-collet"), ("fernhill", "job"), ("weir-cottage", "job"), ("fernhill", "job-cast"),
)  # fmt: skip


def _said(text: Text, old: str, new: str) -> Text:
    return tuple(piece.replace(old, new) if isinstance(piece, str) else piece for piece in text)


def _reworded(job: tuple[str, str], step: str, old: str, new: str) -> Job:
    return on_step(
        _job(*job), step, lambda one: one.model_copy(update={"text": tuple(_said(line, old, new) for line in one.text)})
    )


@breaks("V540", place_of(_job(*_COLLET), "start-to-bore"), also="V186")
def chuck_key_where_a_collet_holds() -> Job:
    return _reworded(_COLLET, "start-to-bore", "Touch every key", "Touch the chuck key")


@breaks("V540", place_of(_job(*_COLLET), "bore-rough"))
def speed_for_a_blank_in_jaws_where_a_collet_holds() -> Job:
    def told(one: Step) -> Step:
        lines = (one.settings[0].model_copy(update={"reason": ("a blank held short in the jaws",)}), *one.settings[1:])
        return one.model_copy(update={"settings": lines})

    return on_step(_job(*_COLLET), "bore-rough", told)


@breaks("V541", place_of(_job(*_THREE), "hold-bar-bore"))
def bush_and_strips_listed_and_fitted_by_nobody() -> Job:
    return _reworded(_THREE, "hold-bar-bore", "Lay strips under the jaws, all alike.", "Wipe the bar clean.")


@breaks("V541", place_of(_job(*_FOUR), "hold-bar-four-jaw"))
def bush_fitted_when_the_bar_is_in() -> Job:
    def turned_round(one: Step) -> Step:
        first = next(line for line in one.text if "Fit the bush" in str(line))
        return one.model_copy(update={"text": (*(line for line in one.text if line != first), first)})

    return on_step(_job(*_FOUR), "hold-bar-four-jaw", turned_round)


@breaks("V686", place_of(_job(*_CAST), "tighten-raw"))
def jaws_of_a_casting_tightened_and_its_pad_left_slack() -> Job:
    return on_step(_job(*_CAST), "tighten-raw", lambda one: one.model_copy(update={"text": one.text[:-1]}))


@breaks("V542", place_of(_job(*_CAST), "turn-band"))
def casting_cut_on_and_never_tightened_again() -> Job:
    return on_step(_job(*_CAST), "tighten-raw", lambda one: one.model_copy(update={"activities": ("stop-spindle",)}))
