"""Sheets whose bond is reckoned as if only one of its two metals counted."""

from tailtrue.inspection.shop import Bond

from .broken import breaks
from .changed import Job, with_setting, with_shop, with_step

_GAPS = ((0.05, 1.0), (0.15, 0.7))


# The sample: 30 N m on a bar of 22 mm in a collar of 30 mm, gap up to 0.092 mm: pi 22^2 30 / 2 = 22.8 N m for each MPa.
@breaks("V470", "step 3.1")
def bond_on_a_metal_that_halves_it() -> Job:
    return with_shop(bond=Bond(mpa=1.0, gaps=_GAPS, wait_s=86400.0))


@breaks("V470", "step 3.1")
def bond_in_a_gap_that_halves_it() -> Job:
    return with_shop(bond=Bond(mpa=2.0, gaps=((0.05, 1.0), (0.15, 0.5)), wait_s=86400.0))


@breaks("V470", "step 3.1")
def bond_in_a_gap_of_which_nothing_is_known() -> Job:
    return with_shop(bond=Bond(mpa=2.0, gaps=((0.05, 1.0),), wait_s=86400.0))


@breaks("V470", "step 3.1")
def bond_reckoned_a_tenth_too_strong() -> Job:
    return with_setting("3.1", 0, value=35200.0)


@breaks("V470", "step 3.1")
def bond_that_nothing_starts() -> Job:
    return with_shop(bond=Bond(mpa=2.0, gaps=_GAPS, wait_s=86400.0, starts=False))


@breaks("V470", "step 3.2")
def bond_cut_before_a_slow_metal_lets_it_cure() -> Job:
    return with_shop(bond=Bond(mpa=2.0, gaps=_GAPS, wait_s=2 * 86400.0))


@breaks("V470", "step 3.2")
def bond_without_its_wait() -> Job:
    return with_step("3.2", text=(("Lay the bar level.",),))
