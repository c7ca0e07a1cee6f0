"""What somebody supervises: which steps are marked, who releases a hold, who may do the work."""

from typing import Literal

from tailtrue.assemble.filling import Filler
from tailtrue.store.models import HoldFile, StepFile
from tailtrue.truth import Truth
from tailtrue.wording import Wording

Who = Literal["any", "supervised", "staff"]


def supervision_marked(filler: Filler) -> bool:
    """Whether the sheet marks steps for a supervisor; not knowing is enough to mark them."""
    return filler.case.judge(filler.case.knowledge.page.supervised_when).truth is not Truth.NO


def learns(filler: Filler) -> bool:
    """Whether a learner or a minor does the work; not knowing is enough."""
    return filler.case.judge(filler.case.knowledge.page.supervisor.learner_when).truth is not Truth.NO


def who_does(filler: Filler, step: StepFile) -> Who:
    """Who may do a step. A learner has more of them marked for a supervisor, somebody under age some for staff."""
    if not supervision_marked(filler):
        return "any"
    supervisor = filler.case.knowledge.page.supervisor
    grown = not set(supervisor.file.adult_activities).isdisjoint(step.activities)
    if grown and filler.case.judge(supervisor.adult_when).truth is Truth.YES:
        return "staff"
    marked = supervisor.file.learner_activities
    if step.who == "any" and learns(filler) and not set(marked).isdisjoint(step.activities):
        return "supervised"
    return step.who


def released_by(filler: Filler, hold: HoldFile) -> str:
    """Who releases a hold: a learner none, and where somebody supervises no second look is left to whoever works."""
    supervisor = filler.case.knowledge.page.supervisor
    if hold.by != "other" and learns(filler):
        return supervisor.file.learner_releases
    if hold.by == "second" and filler.case.judge(supervisor.when).truth is Truth.YES:
        return supervisor.file.releases
    return hold.releases


def who_may(filler: Filler, owner: bool) -> tuple[Wording, ...]:
    """Who may do the work: an owner, a learner with a supervisor, or somebody trained; and what the marks mean."""
    page = filler.case.knowledge.page
    may = page.who_may_owner if owner else page.supervisor.learner_may if learns(filler) else page.who_may
    return (*may, *(page.supervised if supervision_marked(filler) else ()))
