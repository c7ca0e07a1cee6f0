"""The standing procedure of work at an isolated lathe, with something of turning in it, or a limit of its own left out."""

from .broken import breaks
from .broken_routes import _job, _without_limit
from .changed import Job

_WHERE = "standing procedure"


def _with_of(name: str, part: str, wanted: str) -> Job:
    """The paper of the height with one entry of another paper in it."""
    tree, known = _job("height-and-droop")
    other, _ = _job(name)
    assert tree.sop is not None
    assert other.sop is not None
    entry = next(one for one in getattr(other.sop, part) if wanted in (getattr(one, "id", ""), getattr(one, "machine", "")))
    sop = tree.sop.model_copy(update={part: (*getattr(tree.sop, part), entry)})
    return tree.model_copy(update={"sop": sop}), known


@breaks("V520", _WHERE)
def abrasive_forbidden_where_nothing_turns() -> Job:
    return _with_of("use-bar", "forbidden", "never-abrasive")


@breaks("V520", _WHERE, also="V107")
def clothing_for_a_spindle_that_stands_still() -> Job:
    return _with_of("use-bar", "wear", "turning")


@breaks("V520", _WHERE, also="V107")
def hazard_of_turning_work_on_the_paper_of_the_height() -> Job:
    tree, known = _job("height-and-droop")
    other, _ = _job("use-bar")
    assert tree.sop is not None
    assert other.sop is not None
    gloves = next(row for row in other.sop.hazards if row.caution == "gloves-at-the-spindle")
    return tree.model_copy(update={"sop": tree.sop.model_copy(update={"hazards": (*tree.sop.hazards, gloves)})}), known


@breaks("V507", _WHERE)
def height_judged_by_no_limit() -> Job:
    return _without_limit("height-and-droop", "height.most")


@breaks("V507", _WHERE)
def bar_certified_however_thin_its_collars() -> Job:
    return _without_limit("re-certify", "skim.worn_out_at")
