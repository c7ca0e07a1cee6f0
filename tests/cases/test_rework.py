"""What was found leads to one way, printed by itself, and back to a step of the sheet that was left."""

import re
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, knowledge, make_procedure
from tailtrue.errors import Refused
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step
from tailtrue.render import to_markdown

BORE = ("found_front", "found_rear")
# The bar of the example measures 24.962 to 24.965 at end A; its bore is wanted 25.000 to 25.050 there.


def job_with(folder: Path, lines: str, name: str = "fernhill", *changes: tuple[str, str, str]) -> Path:
    shop(folder, name, *changes)
    path = folder / name / "rework.toml"
    text = re.sub(r"^found.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    path.write_text(f"{text}{lines}\n", encoding="utf-8")
    return path


def bore(found: str, *sizes: float, chuck: bool = True, on: bool = False, at: str = "end-a") -> str:
    front, rear = ([f"{size} mm"] * 3 for size in (sizes[0], sizes[-1]))
    said = {True: "true", False: "false"}
    return (
        f'found = "{found}"\nfound_at = "{at}"\nfound_front = {front}\nfound_rear = {rear}\n'
        f"found_in_chuck = {said[chuck]}\nfound_collars_on = {said[on]}"
    ).replace("'", '"')


WAYS = [
    (bore("bore-under-size", 24.93), "open-the-bore", "gauge-bore"),
    (bore("bore-under-size", 24.93, chuck=False), "set-it-true-and-open-it", "gauge-bore"),
    (bore("bore-under-size", 24.985), "bond-it-tight", "gauge-bore"),
    (bore("bore-under-size", 24.0), "go-back-to-the-last-cuts", "set-boring-bar"),
    (bore("bore-under-size", 24.0, chuck=False), "go-back-to-the-last-cuts", "reseat-spacer"),
    (bore("bore-over-size", 25.3), "make-a-new-collar", "saw-blanks"),
    (bore("bore-over-size", 25.053), "swap-the-collars", "gauge-bore"),
    (bore("bore-over-size", 25.053, on=True), "make-a-new-collar", "saw-blanks"),
    (bore("bore-over-size", 25.053, at="end-b"), "leave-the-bore", "gauge-bore"),
    (bore("bore-tapered", 25.04, 25.01), "leave-the-bore", "gauge-bore"),
    (bore("bore-tapered", 24.97, 24.95), "open-the-bore", "gauge-bore"),
    (bore("bore-bell-mouthed", 25.2, 25.0), "make-a-new-collar", "saw-blanks"),
    (bore("bore-chattered", 24.96), "open-the-bore", "gauge-bore"),
    (bore("bore-chattered", 25.01), "leave-the-bore", "gauge-bore"),
    ('found = "centre-drill-broken"\nfound_collars_on = false', "cut-the-end-off", ""),
    ('found = "centre-bruised"\nfound_collars_on = true', "take-a-new-bar", ""),
    ('found = "bar-bent"\nfound_run_out = "0.3 mm"', "take-a-new-bar", ""),
    ('found = "bar-bent"\nfound_run_out = "0.03 mm"', "keep-the-bar", "fit-tailstock-centre"),
    ('found = "collar-too-wide"\nfound_width = "26 mm"', "face-it-again", "reseat-spacer"),
    ('found = "collar-too-narrow"\nfound_width = "24 mm"', "keep-the-narrow-collar", "fit-spotting-drill"),
    ('found = "collar-too-narrow"\nfound_width = "4 mm"', "make-a-new-collar-for-the-width", "saw-blanks"),
    ('found = "collar-slipped"', "fix-the-collar-anew", "mark-seats saw-blanks"),
    ('found = "collar-slipped"\nrework_of = "use-bar"', "take-the-bar-out-of-use", ""),
    ('found = "bond-failed"\nrework_of = "re-certify"', "take-the-bar-out-of-use", ""),
    ('found = "cut-not-clean"\nfound_collar = "50.01 mm"\nrework_of = "use-bar"', "take-the-bar-out-of-use", ""),
    ('found = "bar-bent"\nfound_run_out = "0.3 mm"\nrework_of = "use-bar"', "take-the-bar-out-of-use", ""),
    ('found = "bond-failed"', "make-a-new-collar-for-the-bond", "saw-blanks"),
    ('found = "skim-chattered"\nfound_collar = "68 mm"', "skim-again", "note-state"),
    ('found = "cut-not-clean"\nfound_collar = "68 mm"', "skim-again", "note-state"),
    ('found = "cut-not-clean"\nfound_collar = "50.01 mm"', "new-collars", "saw-blanks"),
    ('found = "tool-dug-in"\nfound_in_chuck = false', "set-up-anew", "fit-hard-centre"),
    ('found = "tool-dug-in"\nfound_in_chuck = true', "grip-the-work-anew", "hold-blank-spacer reseat-spacer"),
    ('found = "tool-dug-in"\nfound_in_chuck = false\nrework_of = "use-bar"', "set-up-anew", "inspect-bar"),
]


def last(tree: Procedure) -> Step:
    return tree.phases[-1].steps[-1]


@pytest.mark.parametrize(("lines", "way", "back"), WAYS, ids=[f"{index}-{way}" for index, (_, way, _) in enumerate(WAYS)])
def test_what_was_found_leads_one_way_and_back(tmp_path: Path, lines: str, way: str, back: str) -> None:
    path = job_with(tmp_path, lines)
    advice = advise(path)
    assert advice.case.value("rework.way") == way
    tree = make_procedure(path)
    hold = last(tree).hold
    assert hold is not None
    assert [on.step for on in hold.goes_on] == back.split()
    assert (hold.void is None) == bool(back)
    left = advice.case.value("job.rework_of")
    lines_left = "\n".join(
        line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith(("found", "rework"))
    )
    path.write_text(lines_left.replace('do = "rework"', f'do = "{left}"'), encoding="utf-8")
    sheet = make_procedure(path)
    states = [(one.number, one.machine, one.activities) for phase in sheet.phases for one in phase.steps]
    for on in hold.goes_on:
        step = next(step for phase in sheet.phases for step in phase.steps if step.number == on.number)
        assert (step.id, step.title) == (on.step, on.title)
        assert sheet.title.title == on.sheet
        after = states[next(place for place, (number, _, _) in enumerate(states) if number == on.number) :]
        turns = next(place for place, (_, machine, _) in enumerate(after) if machine == "turning")
        assert any("start-check" in activities for _, _, activities in after[:turns])


SHOPS = [
    ("quarry-road", "job", "make-bar", 'found = "skim-chattered"\nfound_collar = "1.85 in"', "set-tool"),
    ("quarry-road", "job", "make-bar", 'found = "cut-not-clean"\nfound_collar = "1.85 in"', "set-tool"),
    ("tannery-lane", "job-large-collet", "make-bar", 'found = "collar-too-wide"\nfound_width = "60 mm"', "reseat-collet"),
    ("tannery-lane", "job-large-collet", "make-bar", 'found = "tool-dug-in"\nfound_in_chuck = true',
     "hold-blank-collet reseat-collet"),
    ("tannery-lane", "job-stub", "make-bar", 'found = "collar-too-wide"\nfound_width = "60 mm"', "mount-on-stub hold-stub"),
    ("tannery-lane", "job-stub", "make-bar", 'found = "tool-dug-in"\nfound_in_chuck = true',
     "hold-blank-spacer mount-on-stub hold-stub"),
    ("weir-cottage", "job-bench", "make-bar", 'found = "centre-bruised"\nfound_collars_on = false', ""),
    ("weir-cottage", "job", "make-bar", 'found = "centre-drill-broken"\nfound_collars_on = false', ""),
    ("weir-cottage", "job", "make-bar", 'found = "tool-dug-in"\nfound_in_chuck = true', "hold-uneven grip-band reseat-four-jaw"),
]  # fmt: skip


def left_in(folder: Path, name: str, job: str, left: str, lines: str) -> Path:
    shop(folder, name)
    path = folder / name / "rework-of-it.toml"
    text = (folder / name / f"{job}.toml").read_text(encoding="utf-8")
    said = f'[job]\ndo = "rework"\nrework_of = "{left}"\nrework_sheet = "X-1"\n{lines}\n'
    path.write_text(text.replace("[job]\n", said, 1), encoding="utf-8")
    return path


@pytest.mark.parametrize(("name", "job", "left", "lines", "back"), SHOPS)
def test_every_way_to_hold_work_has_its_step_to_go_on_at(
    tmp_path: Path, name: str, job: str, left: str, lines: str, back: str
) -> None:
    hold = last(make_procedure(left_in(tmp_path, name, job, left, lines))).hold
    assert hold is not None
    assert [on.step for on in hold.goes_on] == back.split()
    assert (hold.void is None) == bool(back)


def test_a_bar_that_is_tagged_out_ends_its_sheet(tmp_path: Path) -> None:
    page = to_markdown(make_procedure(job_with(tmp_path, 'found = "collar-slipped"\nrework_of = "use-bar"')))
    assert "**Do not go on with sheet FM-L2-004: it is void.** Its bar is out of use." in page
    assert "go on with sheet" not in page.replace("Do not go on with sheet", "")
    assert "Tick the lines of your sheet again" not in page


def test_a_collar_is_sawn_only_where_it_does_not_slide_off_and_is_then_made_anew(tmp_path: Path) -> None:
    tree = make_procedure(job_with(tmp_path, 'found = "collar-slipped"'))
    step = next(one for phase in tree.phases for one in phase.steps if one.id == "take-joint-apart")
    lines = ["".join(map(str, line)) for line in step.text]
    tried = next(place for place, line in enumerate(lines) if line.startswith("IF it slides off whole"))
    assert all("saw it through" not in line for line in lines[:tried])
    assert {"wedge-and-scraper", "hacksaw"} <= set(step.tools)
    assert {"wedge-and-scraper", "hacksaw"} <= {need.id for need in tree.needs}
    page = to_markdown(tree)
    assert "IF the collar is whole and its bore fits: go on with sheet FM-L2-004 at step 6.1, Mark the seats." in page
    assert "IF it is sawn through or its bore does not fit: go on with sheet FM-L2-004 at step 2.2, Saw the blanks." in page


@pytest.mark.parametrize("name", ["use-bar", "re-certify", "taper-and-return"])
def test_a_collar_that_moved_on_a_bar_on_hand_is_not_fixed_on_its_sheet(name: str) -> None:
    rows = {
        seen: "".join(map(str, do))
        for seen, do, _ in make_procedure(EXAMPLES / "fernhill" / f"{name}.toml").if_it_goes_wrong
    }
    assert "Hang a tag on it" in rows["A collar moved on its witness line"]


def test_the_chuck_comes_back_before_a_blank_is_gripped_that_is_made_after_the_driver_was_fitted(tmp_path: Path) -> None:
    steps = [one.id for phase in make_procedure(job_with(tmp_path, 'found = "bond-failed"')).phases for one in phase.steps]
    driver = advise(tmp_path / "fernhill" / "rework.toml").case.value("drive.way")
    assert ("rework-chuck-back" in steps) == (driver in ("drive-plate", "slot-of-the-faceplate"))


@pytest.mark.parametrize("found", ["skim-chattered", "cut-not-clean"])
@pytest.mark.parametrize(("collar", "refused"), [("69.2 mm", False), ("69.6 mm", True), ("106.7 mm", True)])
def test_a_collar_that_reads_more_than_its_sheet_has_is_not_believed(
    tmp_path: Path, found: str, collar: str, refused: bool
) -> None:
    path = job_with(tmp_path, f'found = "{found}"\nfound_collar = "{collar}"')
    assert [one.id for one in advise(path).refused] == (["rework-collar-too-large"] if refused else [])


def test_every_way_is_reached_but_the_one_for_a_shop_without_four_jaws() -> None:
    rows = {row.then for row in knowledge().decisions["rework.way"].rows}
    assert rows - {way for _, way, _ in WAYS} == {"make-a-new-collar-for-the-grip"}


def test_without_an_independent_chuck_a_bore_that_left_the_chuck_is_not_cut(tmp_path: Path) -> None:
    no_four = ("lathe", r'\[\[lathe.chucks\]\]\nlabel = "200 mm four-jaw chuck".*', "")
    path = job_with(tmp_path, bore("bore-under-size", 24.93, chuck=False), "fernhill", no_four)
    assert advise(path).case.value("rework.way") == "make-a-new-collar-for-the-grip"
    assert all(step.machine != "turning" for phase in make_procedure(path).phases for step in phase.steps)


def figures(step: Step, fact: str) -> list[float]:
    return [one.value for line in step.settings for text in (line.label, line.value, line.reason) for one in text
            if isinstance(one, Figure) and one.fact == fact]  # fmt: skip


@pytest.mark.parametrize("size", [24.3 + 0.017 * index for index in range(42)])
def test_a_bore_under_size_ends_inside_its_window_on_paper(tmp_path: Path, size: float) -> None:
    path = job_with(tmp_path, bore("bore-under-size", round(size, 3), round(size - 0.004, 3)))
    case = advise(path).case
    # A bond still takes a gap of 0.010 over the largest reading of the bar.
    assert (case.value("rework.way") == "bond-it-tight") == (round(size - 0.004, 3) >= 24.975)
    if case.value("rework.way") == "bond-it-tight":
        return
    if case.value("rework.way") != "open-the-bore":
        assert case.value("rework.way") == "go-back-to-the-last-cuts"
        return
    step = next(one for phase in make_procedure(path).phases for one in phase.steps if one.id == "rework-bore")
    depths = figures(step, "rework.cuts.depth")
    grown = 2 * sum(depths)
    # The dial of this lathe reads diameter, 0.05 a division: 0.025 a side.
    assert all(abs(depth / 0.025 - round(depth / 0.025)) < 1e-9 for depth in depths)
    # Bar 24.962 to 24.965; a bond takes 0.025 to 0.100 and the gauge is sure to 0.009: 24.999 to 25.053.
    assert round(size - 0.004, 3) + grown >= 24.999 - 1e-9
    assert round(size, 3) + grown <= 25.053 + 1e-9
    assert len(depths) <= 4


REFUSED = [
    ("", "rework-nothing-found"),
    ('found = "bore-under-size"', "rework-bore-not-read"),
    (bore("bore-under-size", 25.3), "rework-readings-and-words"),
    (bore("bore-over-size", 24.9), "rework-words-and-readings"),
    (bore("bore-over-size", 29.3), "rework-bore-far-off"),
    ('found = "collar-too-wide"', "rework-width-not-said"),
    ('found = "collar-too-wide"\nfound_width = "24 mm"', "rework-width-other-way"),
    ('found = "bar-bent"', "rework-run-out-not-said"),
    ('found = "skim-chattered"', "rework-collar-not-said"),
    ('found = "centre-drill-broken"', "rework-collars-on-not-said"),
    ('found = "tool-dug-in"', "rework-chuck-not-said"),
    ('found = "collar-too-wide"\nfound_width = "26 mm"\nrework_of = "use-bar"', "rework-of-a-bar-in-use"),
    ('found = "collar-slipped"\nfound_in_chuck = true\nrework_of = "use-bar"', "rework-in-the-chuck-in-use"),
]


@pytest.mark.parametrize(("lines", "stop"), REFUSED, ids=[stop for _, stop in REFUSED])
def test_what_cannot_be_judged_is_refused(tmp_path: Path, lines: str, stop: str) -> None:
    advice = advise(job_with(tmp_path, lines))
    assert stop in {one.id for one in advice.refused}
    with pytest.raises(Refused):
        make_procedure(tmp_path / "fernhill" / "rework.toml")


def test_a_bar_that_was_not_measured_leaves_no_bore_to_judge(tmp_path: Path) -> None:
    path = job_with(tmp_path, bore("bore-under-size", 24.93))
    path.write_text(re.sub(r"^measured.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE), encoding="utf-8")
    assert "rework-bar-not-measured" in {one.id for one in advise(path).refused}


def test_what_was_found_is_not_passed_over_by_another_sheet(tmp_path: Path) -> None:
    path = job_with(tmp_path, 'found = "bond-failed"')
    path.write_text(path.read_text(encoding="utf-8").replace('do = "rework"', 'do = "make-bar"'), encoding="utf-8")
    assert "found-and-no-rework" in {one.id for one in advise(path).refused}


def test_rework_is_refused_where_the_sheet_that_was_left_would_be(tmp_path: Path) -> None:
    path = job_with(tmp_path, 'found = "bond-failed"', "fernhill", ("lathe", 'stop = "tested"', 'stop = "none"'))
    assert advise(path).refused


def test_the_numbers_of_both_sheets_stand_on_the_last_page() -> None:
    hold = last(make_procedure(EXAMPLES / "fernhill" / "rework.toml")).hold
    assert hold is not None
    assert hold.goes_on[0].sheet_number == "FM-L2-004"


def test_a_sheet_whose_number_nobody_said_is_named_by_its_title(tmp_path: Path) -> None:
    tree = make_procedure(
        job_with(tmp_path, 'found = "bond-failed"', "fernhill", ("rework", 'rework_sheet = "FM-L2-004"\n', ""))
    )
    hold = last(tree).hold
    assert hold is not None
    assert hold.goes_on[0].sheet_number == ""
    assert f'the sheet "{hold.goes_on[0].sheet}"' in to_markdown(tree)


def test_chatter_is_met_with_a_slower_speed_and_a_most() -> None:
    tree = make_procedure(EXAMPLES / "quarry-road" / "rework.toml")
    step = next(one for phase in tree.phases for one in phase.steps if one.id == "change-one-thing")
    case = advise(EXAMPLES / "quarry-road" / "rework.toml").case
    assert figures(step, "rework.slower_skim")[0] < float(case.value("skim.speed"))
    assert 1 <= figures(step, "rework.tries")[0] <= 3


def test_a_collar_that_left_its_chuck_is_gripped_in_the_independent_chuck_which_a_step_fits(tmp_path: Path) -> None:
    # A collar 25 mm wide in jaws 30 mm deep: 4 mm out in front, 21 mm held, 9 mm behind for a boring bar 5 mm longer.
    tree = make_procedure(job_with(tmp_path, bore("bore-under-size", 24.93, chuck=False)))
    steps = [step for phase in tree.phases for step in phase.steps]
    order = [step.id for step in steps]
    assert order.index("rework-fit-chuck") < order.index("set-bore-true") < order.index("rework-set-boring-bar")
    (fitted,) = (need for need in tree.needs if need.id == "independent-chuck")
    assert "".join(map(str, fitted.name)).startswith("200 mm four-jaw chuck")
    assert not any(need.id == "four-jaw-chuck" for need in tree.needs)
    change, true = steps[order.index("rework-fit-chuck")], steps[order.index("set-bore-true")]
    assert change.machine == "isolated"
    assert figures(change, "rework.chuck_speed_limit") == [1500]
    assert (figures(true, "rework.stands_out"), figures(true, "rework.grip"), figures(true, "rework.room_behind")) == (
        [4], [21], [9],
    )  # fmt: skip
    assert figures(last(tree), "rework.chuck_speed_limit") == [1500]


@pytest.mark.parametrize(
    ("said", "way"),
    [
        ("", "make-a-new-collar-for-the-grip"),  # neither jaws nor hole measured
        ('jaw_depth = "14 mm"\n', "make-a-new-collar-for-the-grip"),  # 9 mm of grip with room behind it
        ('jaw_depth = "15 mm"\n', "set-it-true-and-open-it"),
        ('through_bore = "25 mm"\n', "make-a-new-collar-for-the-grip"),
        ('through_bore = "60 mm"\n', "set-it-true-and-open-it"),
    ],
)
def test_without_grip_and_room_a_bore_that_left_the_chuck_is_not_cut(tmp_path: Path, said: str, way: str) -> None:
    jaws = ("lathe", '(grips_to = "140 mm"\n)jaw_depth = "30 mm"\n', rf"\g<1>{said}")
    path = job_with(tmp_path, bore("bore-under-size", 24.93, chuck=False), "fernhill", jaws)
    assert advise(path).case.value("rework.way") == way
    make_procedure(path)


@pytest.mark.parametrize("way", WAYS[:2], ids=lambda way: str(way[1]))
def test_a_lathe_without_power_feeds_reworks_by_hand(tmp_path: Path, way: tuple[str, str, str]) -> None:
    lines, name, _ = way
    path = job_with(tmp_path, lines, "fernhill", ("lathe", r"^feeds = .*?\]\n", ""))
    assert advise(path).case.value("rework.way") == name
    turned = [step for phase in make_procedure(path).phases for step in phase.steps if step.machine == "turning"]
    fed = [str(line.label[0]) for step in turned for line in step.settings if str(line.label[0]).startswith("feed")]
    assert fed
    assert all("by hand" in label for label in fed)
