"""Sheets whose papers break what holds of every document: lists called out, limits, words of danger, review, walk-through."""

from typing import Any

from .broken import breaks
from .changed import Job, with_sheet, with_title
from .sample import procedure


def _start(**changes: Any) -> Job:
    card = procedure().card
    return with_sheet(card=card.model_copy(update={"start": card.start.model_copy(update=changes)}))


@breaks("V250", "card")
def start_called_out_without_an_end() -> Job:
    return _start(ends_with="Go on")


@breaks("V250", "card")
def start_called_out_without_the_key() -> Job:
    return _start(lines=procedure().card.start.lines[1:])


@breaks("V250", "card")
def start_called_out_with_an_answer_that_needs_no_look() -> Job:
    first, *rest = procedure().card.start.lines
    return _start(lines=(first.model_copy(update={"state": "checked"}), *rest))


@breaks("V250", "card")
def start_called_out_longer_than_it_is_read() -> Job:
    lines = procedure().card.start.lines
    return _start(lines=lines * 2)


@breaks("V251", "title block")
def review_later_than_a_year() -> Job:
    return with_title(review_due="2028-01-01")


@breaks("V251", "title block")
def review_overdue_and_not_called_so() -> Job:
    return with_title(review_due="2026-11-24")


@breaks("V251", "title block")
def review_on_no_day() -> Job:
    return with_title(review_due="next spring")


@breaks("V252", "title block")
def owner_alone_on_the_sheet_of_a_shop_with_staff() -> Job:
    return with_title(owner=True)


@breaks("V252", "standing procedure")
def approved_and_never_walked_through() -> Job:
    job, shop = with_title(walked_through="")
    sop = job.sop
    control = sop.control.model_copy(
        update={
            "status": "approved",
            "signatories": tuple(
                one.model_copy(update={"name": "somebody", "day": "2026-11-25"}) for one in sop.control.signatories
            ),
        }
    )
    return job.model_copy(update={"sop": sop.model_copy(update={"control": control})}), shop


@breaks("V103", "limits", also="V34")
def limit_of_the_sheet_without_a_way_back() -> Job:
    (row,) = procedure().limits
    return with_sheet(limits=(row.model_copy(update={"back": ("  ",)}),))


@breaks("V103", "limits")
def sheet_without_limits() -> Job:
    return with_sheet(limits=())


@breaks("V108", "limits")
def limit_of_the_sheet_above_the_chuck() -> Job:
    (row,) = procedure().limits
    (speed,) = row.limit
    return with_sheet(limits=(row.model_copy(update={"limit": (speed.model_copy(update={"value": 1801.0}),)}),))


@breaks("V253", "whole sheet")
def danger_said_of_everything() -> Job:
    job, _ = with_sheet()
    grave = next(one for one in (*job.job_cautions, *job.phases[0].cautions) if one.severity >= 4)
    many = tuple(
        grave.model_copy(
            update={"id": f"grave-{number}", "hazard": f"Grave thing {number}", "signal": "danger", "severity": 5}
        )
        for number in range(7)
    )
    return with_sheet(job_cautions=(*job.job_cautions, *many))
