"""Near misses: what one thing keeps from holding, and only what may well be otherwise tomorrow."""

from pathlib import Path

from shops import shop
from tailtrue.advise import advise
from tailtrue.explaining.near import NearMiss, near_misses


def near(folder: Path, *changes: tuple[str, str, str]) -> dict[str, NearMiss]:
    return {miss.id: miss for miss in near_misses(advise(shop(folder, "fernhill", *changes)).case)}


def test_who_stands_at_the_lathe_changes_from_day_to_day(tmp_path: Path) -> None:
    miss = near(tmp_path)["working-alone"]
    assert (miss.kind, miss.severity) == ("caution", 5)
    assert miss.short_by == "the operator is alone: yes; here no"
    assert miss.what_happens
    assert miss.sources


def test_what_two_things_keep_from_holding_is_not_near(tmp_path: Path) -> None:
    # Supervised and not alone: a learner would still be supervised.
    assert "learner-without-supervision" not in near(tmp_path)


def test_without_supervision_the_same_stop_is_near(tmp_path: Path) -> None:
    found = near(tmp_path, ("job", "supervised = true", "supervised = false"))
    assert found["learner-without-supervision"].kind == "stop"


def test_a_size_at_the_bound_is_near_and_one_far_from_it_is_not(tmp_path: Path) -> None:
    # A caution asks for stock longer than 600 mm.
    assert "long-bar-in-the-saw" in near(tmp_path / "at", ("stock", '"600 mm"', '"595 mm"'))
    assert "long-bar-in-the-saw" not in near(tmp_path / "far", ("stock", '"600 mm"', '"500 mm"'))


def test_what_holds_is_not_near(tmp_path: Path) -> None:
    assert "long-bar-in-the-saw" not in near(tmp_path, ("stock", '"600 mm"', '"605 mm"'))


def test_a_metal_that_is_not_on_the_rack_is_not_near(tmp_path: Path) -> None:
    found = near(tmp_path)
    assert "leaded-alloy" not in found
    assert "brittle-chips" not in found


def test_a_stop_that_holds_sizes_against_each_other_which_lie_close_by_nature_stays_silent(tmp_path: Path) -> None:
    assert "bar-measures-otherwise" not in near(tmp_path)


def test_a_choice_is_near_only_where_it_would_be_chosen(tmp_path: Path) -> None:
    # The spacer is chosen although jaws alone come first: they want 8 mm more and are not near.
    assert not [name for name in near(tmp_path) if name.startswith("collar.hold=")]
    barely = near(tmp_path / "deep", ("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "24.2 mm"'))
    assert barely["collar.hold=jaws"].kind == "choice"


def test_a_job_that_is_refused_has_near_misses_too(tmp_path: Path) -> None:
    advice = advise(shop(tmp_path, "fernhill", ("lathe", 'stop = "tested"', 'stop = "untested"')))
    assert advice.refused
    found = {miss.id for miss in near_misses(advice.case)}
    assert "stop-missing-or-untested" not in found
    assert "working-alone" in found
