"""Sheets whose front is a page of warnings, or which hide one that is grave."""

from .broken import breaks
from .changed import Job, with_caution, with_sheet
from .sample import procedure
from .sample_pieces import caution


@breaks("V510", "front")
def eleven_messages_up_front() -> Job:
    many = tuple(caution(f"small-{word}", "caution", "turning") for word in "abcdefghi")
    return with_sheet(job_cautions=(*procedure().job_cautions, *many))


@breaks("V511", "front, caution gloves")
def danger_told_at_the_back() -> Job:
    gloves, chips = procedure().job_cautions
    return with_sheet(job_cautions=(gloves.model_copy(update={"at_back": True}), chips))


@breaks("V511", "front, caution draught")
def what_this_job_asks_for_told_at_the_back() -> Job:
    here = caution("draught", "warning", "turning").model_copy(update={"at_back": True})
    return with_sheet(job_cautions=(*procedure().job_cautions, here))


@breaks("V511", "front, caution chips", also="V154")
def word_of_the_shop_told_at_the_back() -> Job:
    gloves, chips = procedure().job_cautions
    said = chips.model_copy(update={"at_back": True, "shop_rule": "RK: two of us were cut"})
    return with_sheet(job_cautions=(gloves, said))


@breaks("V511", "step 2.1, caution short-grip")
def message_at_a_step_told_at_the_back() -> Job:
    return with_caution("2.1", at_back=True)
