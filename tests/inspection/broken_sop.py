"""Standing procedures that nobody may work from."""

from dataclasses import replace
from typing import Any

from tailtrue.parts import Figure
from tailtrue.shop_sheet import ShopSheet, Sign, Signatory

from .broken import breaks
from .changed import Job, figure_of, with_sheet
from .sample import procedure
from .sample_pieces import figure
from .sample_sop import line

_WHERE = "standing procedure"


def _sop() -> ShopSheet:
    sop = procedure().sop
    assert sop is not None
    return sop


def _with(**changes: Any) -> Job:
    return with_sheet(sop=_sop().model_copy(update=changes))


def _with_control(**changes: Any) -> Job:
    return _with(control=_sop().control.model_copy(update=changes))


def _with_row(part: str, **changes: Any) -> Job:
    """The last row of a part changed."""
    *rest, last = getattr(_sop(), part)
    return _with(**{part: (*rest, last.model_copy(update=changes))})


def _with_limit(fact: str, value: float) -> Job:
    """The number of one limit changed."""
    limits = []
    for row in _sop().limits:
        here = row.limit[0]
        assert isinstance(here, Figure)
        changed = (figure_of(here, value=value),) if here.fact == fact else row.limit
        limits.append(row.model_copy(update={"limit": changed}))
    return _with(limits=tuple(limits))


@breaks("V100", _WHERE)
def no_standing_procedure() -> Job:
    return with_sheet(sop=None)


@breaks("V100", _WHERE, also="V34")
def nothing_about_emergencies() -> Job:
    return _with(emergency=())


@breaks("V100", _WHERE)
def thirteen_lines_before_the_start() -> Job:
    return _with(before=tuple(line(f"before-{number}", "Look at it.") for number in range(13)))


@breaks("V100", _WHERE)
def roster_for_a_handful() -> Job:
    return _with(roster_rows=14)


@breaks("V100", _WHERE)
def revision_of_another_sheet() -> Job:
    return _with_control(revision="2")


@breaks("V101", _WHERE)
def approved_by_nobody() -> Job:
    return _with_control(status="approved")


@breaks("V101", _WHERE)
def approved_without_a_day() -> Job:
    return _with_control(
        status="approved", signatories=(Signatory(role="Author", name="staff"), Signatory(role="Approval", name="manager"))
    )


@breaks("V101", _WHERE)
def approved_without_an_author() -> Job:
    return _with_control(
        status="approved",
        signatories=(Signatory(role="Author"), Signatory(role="Approval", name="manager", day="2026-11-26")),
    )


@breaks("V101", _WHERE)
def approved_on_no_day() -> Job:
    return _with_control(
        status="approved",
        signatories=(Signatory(role="Author", name="staff"), Signatory(role="Approval", name="manager", day="last week")),
    )


@breaks("V101", _WHERE)
def draft_that_does_not_say_so() -> Job:
    return _with(banners=())


@breaks("V102", _WHERE)
def review_a_day_too_late() -> Job:
    return _with_control(review_due="2027-11-26")


@breaks("V102", _WHERE)
def review_years_too_late() -> Job:
    return _with_control(review_due="2029-01-01")


@breaks("V102", _WHERE)
def review_on_no_day() -> Job:
    return _with_control(review_due="next autumn")


@breaks("V102", _WHERE)
def overdue_review_not_called_so() -> Job:
    return _with_control(review_due="2026-11-24")


@breaks("V103", _WHERE, also="V34")
def limit_without_a_consequence() -> Job:
    return _with_row("limits", beyond=())


@breaks("V103", _WHERE, also="V34")
def limit_without_a_way_back() -> Job:
    return _with_row("limits", back=("  ",))


@breaks("V104", _WHERE)
def step_that_nobody_may_do() -> Job:
    return _with_row("who", any=(), supervised=(), staff=())


@breaks("V104", _WHERE)
def supervised_step_that_anybody_may_do() -> Job:
    rows = tuple(row.model_copy(update={"any": (*row.any, *row.supervised), "supervised": ()}) for row in _sop().who)
    return _with(who=rows)


@breaks("V104", _WHERE)
def step_in_the_table_twice() -> Job:
    row = _sop().who[-1]
    return _with(who=(*_sop().who, row))


@breaks("V105", _WHERE)
def sign_of_gloves_at_a_turning_spindle() -> Job:
    changed, givens = _with_row("wear", signs=("M009",))
    assert changed.sop is not None
    signs = (*changed.sop.signs, Sign(code="M009", words="wear protective gloves", shape="disc"))
    return changed.model_copy(update={"sop": changed.sop.model_copy(update={"signs": signs})}), givens


@breaks("V105", _WHERE)
def no_sign_against_gloves_where_it_can_start() -> Job:
    return _with_row("wear", never_signs=())


@breaks("V107", _WHERE)
def sign_of_what_is_worn_without_its_words() -> Job:
    return _with_row("wear", signs=("M004",))


@breaks("V100", _WHERE, also="V34")
def nothing_says_who_may_use_the_lathe() -> Job:
    return _with(first=())


@breaks("V100", _WHERE, also="V450")
def first_line_that_lets_everybody_in() -> Job:
    return _with(first=(_sop().first[0].model_copy(update={"text": ("People who were shown this lathe use it.",)}),))


@breaks("V105", _WHERE)
def gloves_worn_at_a_turning_spindle() -> Job:
    return _with_row("wear", required=(("Thin gloves.",),))


@breaks("V105", _WHERE)
def gloves_not_forbidden_where_it_can_start() -> Job:
    return _with_row("wear", machine="stopped", forbidden=(("Rings.",),))


@breaks("V105", _WHERE)
def nothing_worn_while_it_turns() -> Job:
    return _with(wear=_sop().wear[:1])


@breaks("V106", _WHERE)
def abrasive_by_hand_not_forbidden() -> Job:
    return _with(forbidden=(line("key", "Never let go of the key."),))


@breaks("V106", _WHERE)
def abrasive_by_hand_advised() -> Job:
    return _with(forbidden=(line("abrasive", "Hold abrasive cloth by hand to finish."),))


@breaks("V107", _WHERE)
def sign_without_words() -> Job:
    return _with(signs=(Sign(code="P028", words="P028", shape="crossed-ring"),))


@breaks("V107", _WHERE)
def sign_of_a_hazard_left_out() -> Job:
    return _with_row("hazards", signs=("W025",))


@breaks("V107", _WHERE)
def hazard_made_smaller() -> Job:
    return _with_row("hazards", harm="It tickles.")


@breaks("V107", _WHERE)
def answer_that_the_sheet_does_not_give() -> Job:
    return _with_row("hazards", avoid=("Hope for the best.",))


@breaks("V107", _WHERE)
def danger_left_out() -> Job:
    return _with(hazards=_sop().hazards[1:])


@breaks("V108", _WHERE)
def speed_above_the_chuck() -> Job:
    return _with_limit("chuck.speed_limit", 1801.0)


@breaks("V108", _WHERE)
def diameter_above_the_cross_slide() -> Job:
    return _with_limit("lathe.swing_over_slide", 151.0)


@breaks("V108", _WHERE, also="V24")
def limit_that_cannot_be_held_against_the_shop() -> Job:
    return _with_row("limits", limit=(figure("skim.centre_speed_limit", 400.0, "1/min", "speed", "most"),))


@breaks("V109", _WHERE)
def line_of_more_than_twenty_words() -> Job:
    return _with(during=(line("long", "Look " + "again " * 20 + "at it."),))


@breaks("V109", _WHERE)
def line_from_a_source_nobody_lists() -> Job:
    return _with_row("waste", sources=("hearsay",))


@breaks("V109", _WHERE)
def row_without_a_source() -> Job:
    return _with_row("guards", sources=())


def _alone(job: Job, *, owner: bool = True) -> Job:
    tree, known = job
    return tree, replace(known, owner=owner)


@breaks("V268", _WHERE, also="V453")
def owner_alone_with_lines_for_others_to_sign() -> Job:
    return _alone(_with(roster_rows=0))


@breaks("V268", _WHERE, also="V453")
def owner_alone_with_a_roster() -> Job:
    return _alone(_with_control(signatories=_sop().control.signatories[:1], status="draft"))


@breaks("V268", _WHERE)
def shop_with_others_that_one_alone_signs() -> Job:
    return _with_control(signatories=_sop().control.signatories[:1], status="draft")


@breaks("V100", _WHERE)
def training_of_others_left_out() -> Job:
    return _with(training=())
