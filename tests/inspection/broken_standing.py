"""Standing procedures that leave out who may, what changed, or a place to write, and lines that say two things at once."""

from typing import Any

from tailtrue.shop_sheet import Change, Entry, FormLine

from .broken import breaks
from .broken_sop import _alone, _sop, _with, _with_control, _with_row
from .changed import Job, with_sheet
from .sample import procedure
from .sample_sop import line

_WHERE, _TITLE = "standing procedure", "title block"
_CHANGE = Change(what="speed with the chuck lowered", why="new chuck, marked for less")


def _with_title(sop_too: bool = False, **changes: Any) -> Job:
    """The title block changed, and that of the standing procedure with it."""
    tree = procedure()
    assert tree.sop is not None
    update: dict[str, Any] = {"title": tree.title.model_copy(update=changes)}
    if sop_too:
        update["sop"] = tree.sop.model_copy(update={"control": tree.sop.control.model_copy(update=changes)})
    return with_sheet(**update)


def _without_label(part: str) -> Job:
    block = _sop().control
    entries = tuple(one for one in block.entries if part not in one.label.lower())
    local = tuple(one for one in _sop().local if part not in one.label.lower())
    return _with(control=block.model_copy(update={"entries": entries}), local=local)


@breaks("V450", _WHERE)
def first_line_that_asks_for_no_instruction() -> Job:
    return _with(first=(line("who", "Use it only if you are permitted by the lathe steward."),))


@breaks("V450", _WHERE)
def first_line_that_names_nobody_who_permits() -> Job:
    return _with(first=(line("who", "Use it only if you were instructed on it."),))


@breaks("V450", _WHERE)
def photo_of_any_lathe() -> Job:
    return _with(photo=("Photo of the lathe.",))


@breaks("V451", _WHERE)
def no_place_for_the_last_review() -> Job:
    return _without_label("last reviewed")


@breaks("V451", _WHERE)
def nothing_says_where_to_sign_in() -> Job:
    return _without_label("sign in")


@breaks("V451", _WHERE)
def nothing_says_whether_approval_is_needed() -> Job:
    return _without_label("prior approval")


@breaks("V451", _WHERE)
def nothing_says_where_the_newest_copy_is() -> Job:
    return _without_label("newest copy")


@breaks("V451", _WHERE)
def no_place_for_comments() -> Job:
    return _with(forms=_sop().forms[:1])


@breaks("V451", _WHERE)
def comments_that_go_to_nobody() -> Job:
    return _with_row("forms", places=(FormLine(label="What", high=True),))


@breaks("V451", _WHERE)
def hazards_told_as_if_they_were_all() -> Job:
    return _with(hazard_note=(line("note", "Every hazard is covered here."),))


@breaks("V452", _TITLE, also="V34")
def sheet_made_by_nobody() -> Job:
    return _with_title(sop_too=True, generator=" ")


@breaks("V452", _TITLE, also="V34")
def change_without_a_reason() -> Job:
    return _with_title(sop_too=True, changes=(_CHANGE.model_copy(update={"why": " "}),))


@breaks("V452", _WHERE)
def change_that_the_sheet_does_not_have() -> Job:
    return _with_control(changes=(_CHANGE,))


@breaks("V452", _WHERE)
def paper_from_other_files() -> Job:
    return _with_control(inputs="0000-0000")


def _owner(**changes: Any) -> Job:
    """The sample as an owner alone has it, with one part changed."""
    block = _sop().control
    local = tuple(one for one in _sop().local if "reports go to" not in one.label.lower())
    alone = {
        "first": (line("who", "Only the owner uses it."),), "training": (), "supervision": (), "acknowledgement": (),
        "local": local, "records": (line("keep", "Keep the record."),), "roster_rows": 0,
        "control": block.model_copy(update={"signatories": block.signatories[:1], "status": "draft"}),
    }  # fmt: skip
    return _alone(_with(**{**alone, **changes}))


@breaks("V453", _WHERE)
def owner_sent_to_a_trainer() -> Job:
    return _owner(after=(line("off", "Ask the trainer."),))


@breaks("V453", _WHERE)
def owner_asked_for_the_roster() -> Job:
    return _owner(records=(line("keep", "Keep the roster."),))


@breaks("V453", _WHERE)
def upkeep_by_staff_that_an_owner_has_not() -> Job:
    return _owner(upkeep=(_sop().upkeep[0].model_copy(update={"who": "staff"}),))


@breaks("V453", _WHERE)
def form_of_an_owner_signed_by_staff() -> Job:
    return _owner(local=(*_sop().local, Entry(label="Staff on duty")))


@breaks("V453", _WHERE)
def owner_who_reports_to_somebody() -> Job:
    return _owner(local=(*_sop().local, Entry(label="Reports go to")))


@breaks("V453", _WHERE)
def tag_that_an_owner_asks_himself_to_take_off() -> Job:
    tag = _sop().forms[0].model_copy(update={"lead": ("Only whoever keeps the lathe takes it off.",)})
    return _owner(forms=(tag, *_sop().forms[1:]))


@breaks("V454", _WHERE)
def line_that_begins_with_no_command() -> Job:
    return _with(before=(line("key", "The chuck key should be out."),))


@breaks("V454", _WHERE)
def line_with_two_commands() -> Job:
    return _with(after=(line("off", "Switch off and wipe the ways."),))


@breaks("V454", _WHERE)
def condition_that_leads_to_nothing() -> Job:
    return _with(during=(line("noise", "IF there is noise, the spindle is stopped."),))


@breaks("V455", "limits")
def command_hidden_in_a_consequence() -> Job:
    return _with_row("limits", beyond=("Take smaller stock.",))
