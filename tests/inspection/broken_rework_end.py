"""Sheets of rework that end wrong: a lost bar is measured with, a spoiled collar is used, or nobody can tell where to go."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from shops import EXAMPLES, shop
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.procedure import Hold

from .broken import breaks
from .changed import Job, sheet_of

USED = 'do = "rework"\nrework_of = "use-bar"\nrework_sheet = "FM-L2-002"\nfound = "collar-slipped"\n'
MADE = 'do = "rework"\nrework_sheet = "FM-L2-004"\nfound = "collar-slipped"\n'
SPOILED = 'do = "rework"\nrework_sheet = "FM-L2-004"\nfound = "centre-bruised"\nfound_collars_on = false\n'
DUG_IN = 'do = "rework"\nrework_sheet = "FM-L2-004"\nfound = "tool-dug-in"\nfound_in_chuck = true\n'


@cache
def _found(lines: str) -> Job:
    with TemporaryDirectory() as folder:
        shop(Path(folder), "fernhill")
        path = Path(folder) / "fernhill" / "job.toml"
        path.write_text(path.read_text(encoding="utf-8").replace("[job]\n", f"[job]\n{lines}", 1), encoding="utf-8")
        return sheet_of(path)


def _hold(job: Job) -> Hold:
    hold = job[0].phases[-1].steps[-1].hold
    assert hold is not None
    return hold


def _ends(job: Job, **changes: object) -> Job:
    tree, given = job
    *phases, final = tree.phases
    *steps, end = final.steps
    changed = end.model_copy(update={"hold": _hold(job).model_copy(update=changes)})
    final = final.model_copy(update={"steps": (*steps, changed)})
    return tree.model_copy(update={"phases": (*phases, final)}), given


@breaks("V640", "step 3.1", also="V641")
def void_sheet_that_is_gone_on_with() -> Job:
    job = _found(SPOILED)
    return _ends(job, goes_on=(_hold(_found(MADE)).goes_on[-1],))


@breaks("V640", "step 3.1", also="V34")
def void_sheet_and_no_reason_for_it() -> Job:
    job = _found(SPOILED)
    void = _hold(job).void
    assert void is not None
    return _ends(job, void=void.model_copy(update={"text": ()}))


@breaks("V640", "step 3.1")
def two_steps_to_go_on_at_and_no_telling_which() -> Job:
    job = _found(DUG_IN)
    return _ends(job, goes_on=tuple(one.model_copy(update={"when": ()}) for one in _hold(job).goes_on))


@breaks("V641", "step 3.1")
def test_goes_on_with_the_bar_that_was_tagged_out() -> Job:
    job = _found(USED)
    rework = job[1].rework
    assert rework is not None
    number = next(number for number, name in rework.left.items() if name == "fetch-bar")
    there = {"number": number, "step": "fetch-bar", "title": "Fetch the test bar", "when": ()}
    on = _hold(_found(MADE)).goes_on[0].model_copy(update=there)
    return _ends(job, goes_on=(on,), void=None)


@breaks("V641", "step 3.1")
def shorter_bar_made_by_the_sheet_of_the_longer_one() -> Job:
    job = _found(SPOILED)
    return _ends(job, goes_on=(_hold(_found(MADE)).goes_on[-1].model_copy(update={"when": ()}),), void=None)


@breaks("V642", "step 3.1")
def collar_sawn_through_and_its_seat_marked() -> Job:
    job = _found(MADE)
    return _ends(job, goes_on=(_hold(job).goes_on[0].model_copy(update={"when": ()}),))


@breaks("V642", "step 3.1")
def collar_fixed_anew_and_nobody_asks_whether_it_is_whole() -> Job:
    job = _found(MADE)
    first, second = _hold(job).goes_on
    return _ends(job, goes_on=(first.model_copy(update={"when": ("IF you like it better:",)}), second))


@breaks("V643", "if it goes wrong")
def collar_fixed_on_a_sheet_that_tests() -> Job:
    path = EXAMPLES / "fernhill" / "use-bar.toml"
    tree, given = tree_of(advise(path)), shop_for(advise(path))
    row = ("A collar moved on its witness line", ("Take it off. Fix it anew with every step of its phase.",), ("Cut on.",))
    others = tuple(one for one in tree.if_it_goes_wrong if one[0] != row[0])
    return tree.model_copy(update={"if_it_goes_wrong": (*others, row)}), given
