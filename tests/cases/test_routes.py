"""Every route makes its sheet from a shipped example, judged by its own stops alone and with its own parts alone."""

import json
import re
import tomllib
from math import atan, sin
from pathlib import Path

import pytest

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, knowledge, make_procedure
from tailtrue.documents import Wanted, write_documents
from tailtrue.errors import Refused, UsageError
from tailtrue.parts import Figure, Text
from tailtrue.procedure import Procedure, Step

JOBS = sorted(
    path.relative_to(EXAMPLES).as_posix()
    for path in EXAMPLES.glob("*/*.toml")
    if "[job]" in path.read_text(encoding="utf-8") and path.name != "job.toml"
)


def made(name: str) -> Procedure:
    return make_procedure(EXAMPLES / name)


def step(procedure: Procedure, name: str) -> Step:
    return next(one for phase in procedure.phases for one in phase.steps if one.id == name)


def figure(one: Step, fact: str) -> Figure:
    return next(piece for line in one.settings for piece in line.value if isinstance(piece, Figure) and piece.fact == fact)


def words(text: Text) -> str:
    return "".join(piece for piece in text if isinstance(piece, str))


def route_job(folder: Path, route: str, *changes: tuple[str, str, str]) -> Path:
    """The job file of a route in a copy of the metric shop, with changes in its files."""
    shop(folder, "fernhill", *changes)
    return folder / "fernhill" / f"{route}.toml"


def test_every_route_has_an_example_that_is_shipped() -> None:
    shown = {str(advise(EXAMPLES / name).given.value("job.do")) for name in JOBS}
    assert shown | {"make-and-use-bar"} == set(knowledge().routes)


@pytest.mark.parametrize("name", JOBS)
def test_the_example_of_a_route_makes_its_sheet(name: str, tmp_path: Path) -> None:
    done = tailtrue("make", EXAMPLES / name, "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr
    tree = json.loads((tmp_path / "out" / "procedure.json").read_text(encoding="utf-8"))
    page = (tmp_path / "out" / "procedure.html").read_text(encoding="utf-8")
    said = tomllib.loads((EXAMPLES / name).read_text(encoding="utf-8"))["job"]
    parts = knowledge().routes[said.get("do", "make-and-use-bar")].file.parts
    assert (tree["drawing"] is not None) == ("drawing" in parts)
    assert bool(tree["cut_list"]) == ("cut-list" in parts) == ("Cut list" in page)
    assert (tree["look_up"] is not None) == ("look-up" in parts) == ("Difference read, and the move" in page)
    assert (tree["card"] is not None) == ("card" in parts) == (tmp_path / "out" / "card.html").exists()
    assert bool(tree["care"]) == ("care" in parts) == ("Care of the bar" in page)


def test_a_job_that_does_not_say_what_is_to_be_done_makes_and_uses_the_bar() -> None:
    assert advise(EXAMPLES / "fernhill" / "job.toml").route.file.id == "make-and-use-bar"


def test_what_is_no_route_is_a_fault_of_the_job_file(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", 'accuracy = "good"', 'accuracy = "good"\ndo = "make-coffee"'))
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 4
    assert "make-coffee" in done.stderr
    assert "use-bar" in done.stderr


WITHOUT_BORING = [
    ("crib", r"\[\[crib.boring_bars\]\].*?(?=\[\[crib.outside)", ""),
    ("crib", r"\[\[crib.bore_gauges\]\].*", ""),
    ("crib", 'tool_material = "HSS"', 'tool_material = "HSS"\nboring_bars = []\nbore_gauges = []'),
]


@pytest.mark.parametrize("route", ["use-bar", "re-certify", "chucked-bar-test", "height-and-droop", "taper-and-return"])
def test_tools_of_the_making_do_not_refuse_what_makes_nothing(route: str, tmp_path: Path) -> None:
    changes = [one for one in WITHOUT_BORING if "tool_material" not in one[1]]
    job = route_job(tmp_path, route, *changes, WITHOUT_BORING[2])
    assert make_procedure(job).phases
    with pytest.raises(Refused) as refused:
        make_procedure(tmp_path / "fernhill" / "make-bar.toml")
    assert {"no-gauge-for-the-bore"} <= {one.where for one in refused.value.problems}


def test_a_guard_that_is_missing_refuses_every_route_on_which_something_turns(tmp_path: Path) -> None:
    shop(tmp_path, "fernhill", ("lathe", 'chuck_guard = "interlocked"', 'chuck_guard = "none"'))
    for route in set(knowledge().routes) - {"make-and-use-bar"}:
        refused = {one.id for one in advise(tmp_path / "fernhill" / f"{route}.toml").refused}
        assert ("chuck-guard-missing" in refused) == (route != "height-and-droop"), route


def test_the_bar_on_hand_takes_the_place_of_the_planned_one() -> None:
    drawing = made("fernhill/use-bar.toml").drawing
    assert drawing is not None
    sizes = {name: size.value for name, size in drawing.dimensions.items()}
    assert sizes["bar.length"] == 340
    assert sizes["collar.diameter"] == 67.4
    assert sizes["collar.spacing"] == 340 - 2 * 48
    # 60 degree cone from 6.6 mm to a pilot of 3.15 mm is 2.99 mm deep, at both ends
    assert sizes["centres.span"] == pytest.approx(340 - 2 * (6.6 - 3.15) / 2 / 0.57735, abs=1e-3)


def test_collars_that_are_used_up_are_not_skimmed_again(tmp_path: Path) -> None:
    job = route_job(tmp_path, "use-bar", ("stock", '"67.4 mm"', '"50.2 mm"'))
    assert [one.id for one in advise(job).refused] == ["collars-worn-out"]


def test_a_bar_on_hand_is_not_made_again(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", 'accuracy = "good"', 'accuracy = "good"\nbar_on_hand = "test bar 2, rack A"'))
    assert "bar-on-hand-while-making" in {one.id for one in advise(job).refused}


def test_the_bar_is_looked_over_with_a_hold_before_it_turns() -> None:
    procedure = made("fernhill/use-bar.toml")
    order = [one.id for phase in procedure.phases for one in phase.steps]
    looked = step(procedure, "inspect-bar")
    assert looked.hold is not None
    assert order.index("inspect-bar") < order.index("true-collars")
    low = next(check.limits.low for check in looked.checks if check.limits)
    assert low is not None
    assert low.value == pytest.approx(50.3)  # worn out, and one visit on top


def test_the_set_over_is_half_the_taper_over_the_whole_length() -> None:
    """Two diameters of 30 mm and 28 mm, 100 mm apart, on work of 250 mm with holes of 3 mm: 244 mm stand aslant."""
    procedure = made("fernhill/taper-and-return.toml")
    for name in ("set-over", "set-back"):
        assert figure(step(procedure, name), "setover.amount").value == pytest.approx(244 * sin(atan(0.01)), rel=1e-9)


@pytest.mark.parametrize(
    ("side", "end", "over"),
    [("front", "tailstock", "toward you"), ("front", "headstock", "away from you"),
     ("rear", "tailstock", "away from you"), ("rear", "headstock", "toward you")],
)  # fmt: skip
def test_the_small_end_goes_toward_the_tool_and_back_again(tmp_path: Path, side: str, end: str, over: str) -> None:
    """Jones 1914, taper turning by setting the tailstock over: small at the tailstock, the centre comes to the tool."""
    job = route_job(tmp_path, "taper-and-return", ("lathe", 'tool_side = "front"', f'tool_side = "{side}"'))
    text = job.read_text(encoding="utf-8")
    job.write_text(text.replace('small_end = "tailstock"', f'small_end = "{end}"'), encoding="utf-8")
    procedure = make_procedure(job)
    back = {"toward you": "away from you", "away from you": "toward you"}[over]
    assert words(step(procedure, "set-over").settings[0].label).endswith(f" {over}")
    assert words(step(procedure, "set-back").settings[0].label).endswith(f" {back}")


def test_a_taper_that_is_not_said_is_refused_with_what_to_enter(tmp_path: Path) -> None:
    job = route_job(tmp_path, "taper-and-return")
    job.write_text(
        re.sub(r"^(taper_|work_|head_|tail_hole|small_).*\n", "", job.read_text(encoding="utf-8"), flags=re.M),
        encoding="utf-8",
    )
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 5
    assert "taper_large" in done.stderr
    assert not (tmp_path / "out").exists()


def test_a_taper_of_which_nothing_is_said_is_refused_and_not_a_fault_of_the_program(tmp_path: Path) -> None:
    # A note on the travel speaks of the set-over, which nobody can work out here.
    job = shop(tmp_path, "fernhill", ("job", 'accuracy = "good"', 'accuracy = "good"\ndo = "taper-and-return"'))
    assert "taper-not-said" in {one.id for one in advise(job).refused}


def test_a_taper_too_steep_for_a_set_over_is_refused(tmp_path: Path) -> None:
    job = route_job(tmp_path, "taper-and-return")
    job.write_text(job.read_text(encoding="utf-8").replace('"28 mm"', '"12 mm"'), encoding="utf-8")
    assert {"setover-too-steep", "setover-beyond-travel"} <= {one.id for one in advise(job).refused}


@pytest.mark.parametrize(("side", "larger"), [("front", "front foot"), ("rear", "rear foot")])
def test_the_foot_under_the_tool_is_raised_for_a_larger_free_end(tmp_path: Path, side: str, larger: str) -> None:
    """Raised in front, the bed leans what stands on it to the rear: a front tool comes nearer to the work."""
    job = route_job(tmp_path, "chucked-bar-test", ("lathe", 'tool_side = "front"', f'tool_side = "{side}"'))
    lines = {words(line.label)[:8]: words(line.value) for line in step(make_procedure(job), "level-feet").settings}
    assert lines["free end"] is not None
    values = [words(line.value) for line in step(make_procedure(job), "level-feet").settings]
    assert values[0] == larger
    assert values[1] == {"front foot": "rear foot", "rear foot": "front foot"}[larger]


@pytest.mark.parametrize(("resolution", "out"), [("0.001 mm", "it is surely out"), ("0.01 mm", "it is more than the doubt")])
def test_a_difference_that_is_out_and_repeats_leads_to_the_feet(tmp_path: Path, resolution: str, out: str) -> None:
    """Procedure writing practice: each result of a decision names the step that follows it."""
    tree = make_procedure(route_job(tmp_path, "chucked-bar-test", ("crib", "0\\.001 mm", resolution)))
    (feet,) = (phase for phase in tree.phases if phase.id == "feet")
    told = [words(line) for line in step(tree, "decide-bands").text]
    assert feet.steps[0].id == "level-feet"
    due = f"IF {out}, THEN read the bands again. IF it repeats, THEN go to step {feet.steps[0].number}."
    assert [line for line in told if "it repeats" in line] == [due]


def test_a_piece_too_long_for_the_chuck_is_refused(tmp_path: Path) -> None:
    job = route_job(tmp_path, "chucked-bar-test")
    stock = tmp_path / "fernhill" / "test-pieces.toml"
    stock.write_text(stock.read_text(encoding="utf-8").replace('"180 mm"', '"260 mm"'), encoding="utf-8")
    assert [one.id for one in advise(job).refused] == ["test-piece-behind-the-spindle"]


def test_the_tailstock_may_stand_high_and_never_low() -> None:
    """A customary limit after ISO 1708, from memory: 0.04 mm, the tailstock high only; 0.02 mm over 100 mm of quill."""
    procedure = made("fernhill/height-and-droop.toml")
    bands = [
        (check.limits.low.value, check.limits.high.value)
        for phase in procedure.phases for one in phase.steps for check in one.checks
        if check.limits and check.limits.low and check.limits.high
    ]  # fmt: skip
    assert bands == [(0, pytest.approx(0.04)), (0, pytest.approx(0.016)), (0, pytest.approx(0.012))]


def test_the_spindle_never_turns_under_power_while_the_height_is_checked() -> None:
    procedure = made("fernhill/height-and-droop.toml")
    assert {one.machine for phase in procedure.phases for one in phase.steps} == {"isolated"}


def test_a_paper_that_a_route_does_not_have_is_a_fault_of_the_wish(tmp_path: Path) -> None:
    procedure = made("fernhill/make-bar.toml").model_copy(update={"work_record": None})
    with pytest.raises(UsageError, match="has no "):
        write_documents(procedure, tmp_path, Wanted(documents=("record",)))
    assert not list(tmp_path.iterdir())


def test_both_ways_round_are_skimmed_and_compared_before_a_bar_is_certified() -> None:
    order = [one.id for phase in made("fernhill/re-certify.toml").phases for one in phase.steps]
    assert order.count("skim-collars") == 2
    first, second = (index for index, one in enumerate(order) if one == "skim-collars")
    assert first < order.index("turn-end-for-end") < second < order.index("compare-swap") < order.index("certify-bar")


def test_a_hold_goes_back_to_the_nearest_step_of_that_name(tmp_path: Path) -> None:
    write_documents(
        made("fernhill/taper-and-return.toml"), tmp_path, Wanted(documents=("procedure",), formats=("md", "html"))
    )
    for name in ("procedure.md", "procedure.html"):
        text = (tmp_path / name).read_text(encoding="utf-8")
        assert not re.search(r"go back to step \d+\.\d+,", text)
        assert "go back to step 3.4" in text
        assert "go back to step 5.4" in text


@pytest.mark.parametrize("name", JOBS)
def test_a_tailstock_that_moves_is_verified_behind_a_hold(name: str) -> None:
    sheet, moved = made(name), False
    for phase in sheet.phases:
        moves = [index for index, one in enumerate(phase.steps) if "move-tailstock" in one.activities]
        if moves:
            moved = True
            assert any(one.hold and "verify-tailstock" in one.activities for one in phase.steps[moves[0] :])
            assert all(one.machine == "isolated" for one in phase.steps[: moves[-1] + 1])
    # Where the tailstock is brought into line, or stands elsewhere for the test, the sheet moves it.
    concerns = knowledge().routes[str(advise(EXAMPLES / name).given.value("job.do") or "make-and-use-bar")].file.concerns
    assert moved == bool({"tailstock", "height"} & set(concerns))


def test_the_card_says_which_way_the_tailstock_is_set_over_and_which_way_back() -> None:
    card = made("fernhill/taper-and-return.toml").card
    assert card is not None
    ways = {
        group.title: words(line.label)
        for group in card.groups
        for line in group.lines
        if line.value.fact == "setover.amount"
    }
    assert ways == {"Set over": "toward you", "Set back": "away from you"}


def test_a_heading_without_anything_below_it_is_left_out(tmp_path: Path) -> None:
    procedure = made("fernhill/height-and-droop.toml").model_copy(update={"choices": ()})
    write_documents(procedure, tmp_path, Wanted(documents=("procedure",), formats=("md", "html")))
    written = list(tmp_path.iterdir())
    assert len(written) == 2
    for path in written:
        assert "What was chosen, and why" not in path.read_text(encoding="utf-8")
