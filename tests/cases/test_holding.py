"""Other ways to hold work, from whole jobs: when each is taken, what it needs, what it leaves out, what is said when a
file lacks something."""

from pathlib import Path

import pytest

from shops import EXAMPLES, kept_bores, shop
from tailtrue.advise import advise, knowledge, make_procedure
from tailtrue.errors import FactsWrong
from tailtrue.facts import Fact
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step

Change = tuple[str, str, str]
SHOP = "tannery-lane"


def job_of(folder: Path, job: str, *changes: Change) -> Path:
    return shop(folder, SHOP, *changes).with_name(f"{job}.toml")


def decided(folder: Path, job: str, fact: str, *changes: Change) -> str:
    return str(advise(job_of(folder, job, *changes)).case.value(fact))


def steps(sheet: Procedure) -> list[Step]:
    return [step for phase in sheet.phases for step in phase.steps]


def names(sheet: Procedure) -> list[str]:
    return [step.id for step in steps(sheet)]


def figure(sheet: Procedure, step: str, fact: str) -> float:
    found = next(one for one in steps(sheet) if one.id == step)
    return next(p.value for line in found.settings for p in line.value if isinstance(p, Figure) and p.fact == fact)


@pytest.mark.parametrize("route", ["make-and-use-bar", "make-bar"])
@pytest.mark.parametrize("job", ["job", "job-stub"])
def test_both_jobs_make_an_inspected_sheet_on_both_routes(tmp_path: Path, job: str, route: str) -> None:
    made = make_procedure(job_of(tmp_path, job, (job, r"\Z", f'\ndo = "{route}"\n')))
    assert ("bore-soft-jaws" in names(made)) == (job == "job")


def test_soft_jaws_are_bored_on_the_plug_and_the_plug_is_out_before_a_blank_goes_in() -> None:
    order = names(make_procedure(EXAMPLES / SHOP / "job.toml"))
    marks = ["fit-soft-jaws", "bore-soft-jaws", "try-soft-jaws", "hold-blank-soft", "face-blank", "reseat-soft",
             "face-blank-to-width", "drill-blank", "bore-rough", "take-collar-off", "hard-jaws-back"]  # fmt: skip
    assert [one for one in order if one in marks] == marks
    assert not {"hold-blank-jaws", "hold-blank-spacer", "spacer-out"} & set(order)


def test_the_step_of_soft_jaws_grips_and_leaves_the_face_clear_after_both_faces_are_cut() -> None:
    """Geometry: what stands out, less what is faced off, is still clear of the jaws."""
    case = advise(EXAMPLES / SHOP / "job.toml").case
    step, width, facing = (case.value(name) for name in ("collar.soft_step", "collar.saw_width", "limit.facing_stock"))
    assert step >= 10
    assert width - facing - step >= 4
    assert case.value("collar.room_behind") == pytest.approx(40 - step)


def test_the_step_of_soft_jaws_ends_clear_of_a_wide_plug(tmp_path: Path) -> None:
    """Geometry: jaws 40 mm deep hold a plug 22 mm wide; 16 mm are left once the tool keeps 2 mm away from it."""
    wide = ("crib", 'soft_jaws_plug_width = "12 mm"', 'soft_jaws_plug_width = "22 mm"')
    case = advise(job_of(tmp_path, "job", wide)).case
    assert case.value("collar.soft_step") == pytest.approx(16)
    sheet = make_procedure(job_of(tmp_path / "made", "job", wide))
    assert figure(sheet, "fit-soft-jaws", "softjaw.plug_width") == 22
    plug = next(one for one in sheet.needs if one.id == "jaw-plug")
    assert [piece.value for piece in plug.name if isinstance(piece, Figure)] == [62, 22]


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ([], "soft-jaws"),
        ([("lathe", 'jaw_depth = "34 mm"', 'jaw_depth = "18 mm"')], "jaws"),
        ([("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nspacer = "14 mm"'), ("crib", '"62 mm"', '"66 mm"')], "jaws-and-spacer"),
        ([("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nspacer = "14 mm"'), ("crib", '"95 mm"', '"69 mm"')], "jaws-and-spacer"),
        ([("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nspacer = "14 mm"'), ("crib", '"40 mm"', '"18 mm"')], "jaws-and-spacer"),
    ],
    ids=["taken", "shallow hard jaws", "plug too thick", "not to be bored so far", "too shallow"],
)  # fmt: skip
def test_soft_jaws_are_taken_where_they_serve_and_are_the_better_hold(
    tmp_path: Path, changes: list[Change], expected: str
) -> None:
    assert decided(tmp_path, "job", "collar.hold", *changes) == expected


def test_soft_jaws_that_leave_a_thin_ring_are_taken_before_hard_ones(tmp_path: Path) -> None:
    """A ring whose wall is a fifth of its diameter: 41 mm on a bar of 25 mm."""
    thin = [
        ("lathe", 'jaw_depth = "34 mm"', 'jaw_depth = "18 mm"'), ("stock", '"70 mm"\n', '"41 mm"\n'),
        ("crib", '"62 mm"', '"33 mm"'), ("crib", '"45 mm"', '"35 mm"'),
    ]  # fmt: skip
    assert decided(tmp_path, "job", "collar.hold", *thin) == "soft-jaws"


def test_without_soft_jaws_and_spacer_the_sheet_is_refused_and_both_ways_out_are_told(tmp_path: Path) -> None:
    job = job_of(tmp_path, "job", ("crib", r'soft_jaws_chuck.*?soft_jaws_plug_width = "12 mm"\n', ""))
    stop = next(one for one in advise(job).refused if one.id == "blank-cannot-be-gripped")
    told = str(stop)
    assert "soft jaws" in told
    assert "spacer" in told


@pytest.mark.parametrize(
    ("job", "line", "told"),
    [
        ("job", r'soft_jaws_plug = "62 mm"\n', "soft_jaws_plug"),
        ("job", r'soft_jaws_plug_width = "12 mm"\n', "soft_jaws_plug_width"),
        ("job", r'collet_speed = "3500 1/min"\n', "collet_speed"),
        ("job-stub", r'stub_least = "20 mm"\n', "stub_least"),
    ],
)
def test_half_a_way_to_hold_is_asked_for_whole(tmp_path: Path, job: str, line: str, told: str) -> None:
    crib = "crib" if job == "job" else "crib-stub"
    with pytest.raises(FactsWrong) as wrong:
        advise(job_of(tmp_path, job, (crib, line, "")))
    assert told in str(wrong.value)


def test_soft_jaws_of_a_chuck_that_is_not_there_are_asked_about(tmp_path: Path) -> None:
    with pytest.raises(FactsWrong) as wrong:
        advise(job_of(tmp_path, "job", ("crib", 'soft_jaws_chuck = "160 mm', 'soft_jaws_chuck = "165 mm')))
    assert "names nothing of the lathe list, chucks" in str(wrong.value)


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ([], "collet"),
        ([("stock", '"ground"', '"hot-rolled"')], "spindle-bore"),
        ([("crib", 'collet_to = "25 mm"', 'collet_to = "24.99 mm"')], "spindle-bore"),
        ([("crib", 'collet_hole = "30 mm"', 'collet_hole = "25 mm"')], "spindle-bore"),
        ([("lathe", 'spindle_bore = "38 mm"', 'spindle_bore = "20 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')], "steady"),
        ([("lathe", 'spindle_length = "430 mm"', 'spindle_length = "300 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')], "steady"),
    ],
    ids=["taken", "black bar", "bar too thick", "hole of the collet chuck too small", "spindle too narrow", "bar stands out behind"],
)  # fmt: skip
def test_a_collet_is_taken_for_bright_bar_of_its_size_that_ends_inside_the_spindle(
    tmp_path: Path, changes: list[Change], expected: str
) -> None:
    assert decided(tmp_path, "job", "bar.hold", *changes) == expected


def test_the_bar_turns_no_faster_than_the_collet_chuck_is_marked(tmp_path: Path) -> None:
    slow = make_procedure(job_of(tmp_path, "job", ("crib", '"3500 1/min"', '"200 1/min"')))
    assert figure(slow, "face-bar", "bar.facing.speed") == 155
    assert figure(slow, "centre-bar", "bar.centring.speed") == 155
    assert figure(slow, "change-to-collet", "bar.hold_speed_limit") == 200


def test_the_bar_turns_at_half_the_whirl_of_its_far_end_at_most(tmp_path: Path) -> None:
    """The stout bar here whirls far above any speed of the lathe: the shop lowers the share until it tells."""
    path = job_of(tmp_path, "job", ("job", r"\Z", '\nrules = "shop-rules.toml"\n'))
    text = '[[tighten]]\nlimit = "limit.whirl_share"\nvalue = "0.01"\nreason = "a lathe that shakes"\nby = "RK"\n'
    (path.parent / "shop-rules.toml").write_text(text, encoding="utf-8")
    case = advise(path).case
    most = case.value("bar.inside_speed_limit")
    assert case.value("bar.facing.speed") <= most < 155
    assert case.value("bar.centring.speed") <= most
    speed = case.get("bar.facing.speed")
    assert isinstance(speed, Fact)
    assert speed.limited_by == "the far end of the bar inside the spindle"


def test_a_bar_that_was_not_measured_goes_into_a_collet_that_takes_what_is_to_be_expected(tmp_path: Path) -> None:
    unknown = ("job", r"^measured_(head|tail) = .*?\n", "")
    assert decided(tmp_path / "narrow", "job", "bar.hold", unknown) == "spindle-bore"
    wider = make_procedure(job_of(tmp_path / "wide", "job", unknown, ("crib", '"25 mm"', '"25.2 mm"')))
    assert "hold-bar-collet" in names(wider)


def test_the_stub_itself_is_turned_at_its_own_speed(tmp_path: Path) -> None:
    """Only a collar that friction alone holds is bound to the slow speed; the stub sits in the jaws like any blank."""
    fast = [("crib-stub", 'tool_material = "HSS"', 'tool_material = "carbide"')]
    sheet = make_procedure(job_of(tmp_path, "job-stub", *fast))
    assert figure(sheet, "turn-stub", "stub.turning.speed") > 600 >= figure(sheet, "face-on-stub", "stub.facing.speed")


def test_the_chuck_comes_back_after_the_collet_before_jaws_are_changed() -> None:
    order = names(make_procedure(EXAMPLES / SHOP / "job.toml"))
    marks = ["close-chuck", "change-to-collet", "hold-bar-collet", "change-from-collet", "fit-soft-jaws"]
    assert [one for one in order if one in marks] == marks


def test_the_bore_is_finished_at_the_first_grip_and_the_second_face_is_cut_on_the_stub() -> None:
    order = names(make_procedure(EXAMPLES / SHOP / "job-stub.toml"))
    marks = ["face-blank", "keep-grip", "drill-blank", "bore-rough", "gauge-bore", "take-collar-to-stub", "hold-stub",
             "turn-stub", "mount-on-stub", "face-on-stub", "take-off-stub", "mark-seats"]  # fmt: skip
    assert [one for one in order if one in marks] == marks
    assert not {"turn-blank-round", "reseat-spacer", "face-blank-to-width", "take-collar-off"} & set(order)


def test_cuts_on_the_stub_are_light_slow_and_end_short_of_its_screw() -> None:
    sheet = make_procedure(EXAMPLES / SHOP / "job-stub.toml")
    assert figure(sheet, "face-on-stub", "stub.cut") <= 0.25
    assert figure(sheet, "face-on-stub", "stub.facing.speed") <= 600
    assert figure(sheet, "turn-stub", "stub.spigot") < figure(sheet, "face-on-stub", "collar.width")


def test_the_boring_bar_reaches_through_the_metal_that_is_still_to_be_faced_off() -> None:
    case = advise(EXAMPLES / SHOP / "job-stub.toml").case
    assert case.value("bore.overhang") >= case.value("bore.through_width") > case.value("collar.width")


@pytest.mark.parametrize(
    "changes",
    [
        [("crib-stub", '"34 mm"', '"29 mm"')],
        [("crib-stub", '"34 mm"', '"45 mm"')],
        [("crib-stub", 'stub_least = "20 mm"', 'stub_least = "26 mm"')],
        [("crib-stub", 'stub_length = "30 mm"', 'stub_length = "15 mm"')],
    ],
    ids=["no shoulder", "too much to turn off", "too thin for its screw", "spreads too short"],
)
def test_a_stub_that_does_not_serve_leaves_the_blank_in_its_jaws(tmp_path: Path, changes: list[Change]) -> None:
    assert decided(tmp_path, "job-stub", "collar.second_face_hold", *changes) == "reversed"
    assert "reseat-spacer" in names(make_procedure(job_of(tmp_path / "made", "job-stub", *changes)))


@pytest.mark.parametrize(("job", "hold"), [("job", "reseat-soft"), ("job-stub", "mount-on-stub")])
def test_a_collar_found_too_wide_goes_back_to_the_hold_of_its_sheet(tmp_path: Path, job: str, hold: str) -> None:
    found = (
        'do = "rework"\nrework_sheet = "TL-5-01"\nfound = "collar-too-wide"\nfound_width = "25.60 mm"\n'
        "found_collars_on = false\nfound_in_chuck = false\n"
    )
    sheet = make_procedure(EXAMPLES / SHOP / f"{job}.toml")
    number = next(one.number for one in steps(sheet) if one.id == hold)
    again = make_procedure(job_of(tmp_path, job, (job, r"\Z", found)))
    told = next(one for one in steps(again) if one.id == "go-back")
    assert f"'{number}'" in repr(told) or number in "".join(str(piece) for line in told.text for piece in line)


def test_the_bar_turns_slowly_on_the_greased_pads_of_the_steady(tmp_path: Path) -> None:
    # Memory: greased pads bear about 30 m/min; on 25 mm that is 382 a minute, and this lathe has 370 below it.
    pads = ("lathe", 'spindle_bore = "38 mm"', 'spindle_bore = "20 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')
    sheet = make_procedure(job_of(tmp_path, "job", pads))
    assert figure(sheet, "hold-bar-steady", "limit.pad_speed") == 30
    assert figure(sheet, "centre-bar", "bar.centring.speed") == 370
    assert figure(sheet, "face-bar", "bar.facing.speed") <= 370


@pytest.mark.parametrize("decision", ["bar.hold", "collar.hold", "collar.second_face_hold"])
def test_every_way_to_hold_that_is_taken_stands_once_in_the_table_of_holdings(decision: str) -> None:
    known = knowledge()
    taken = [row.then for row in known.decisions[decision].rows if not row.never_taken]
    told = [row.text("hold") for row in known.tables["machines/holdings"].where(decision=decision)]
    assert sorted(told) == sorted(taken)


@pytest.mark.parametrize(("fact", "table", "column"), [
    ("crib.drive", "machines/drives", "drive"), ("chuck.kind", "machines/chuck_kinds", "kind"),
])  # fmt: skip
def test_every_drive_and_kind_of_chuck_stands_once_in_its_table(fact: str, table: str, column: str) -> None:
    known = knowledge()
    assert sorted(row.text(column) for row in known.tables[table]) == sorted(known.catalogue[fact].choices)


def test_a_blank_whose_bore_is_kept_is_faced_on_both_sides_on_the_stub_and_no_jaw_grips_it(tmp_path: Path) -> None:
    order = names(make_procedure(kept_bores(tmp_path)))
    marks = ["measure-bar", "gauge-kept-bore", "hold-stub", "turn-stub", "mount-raw-on-stub", "face-first-on-stub",
             "lift-off-stub", "mount-on-stub", "face-on-stub", "take-off-stub", "mark-seats"]  # fmt: skip
    assert [one for one in order if one in marks] == marks
    jaws = {"hold-blank-jaws", "hold-blank-spacer", "spacer-out", "face-blank", "keep-grip", "drill-blank", "bore-rough"}
    assert not jaws & set(order)


def test_whoever_turns_the_stub_again_is_sent_to_where_its_power_came_back(tmp_path: Path) -> None:
    """Not to the power of the faces that were cut between."""
    steps = [step for phase in make_procedure(kept_bores(tmp_path)).phases for step in phase.steps]
    turned = next(place for place, step in enumerate(steps) if step.id == "turn-stub")
    power = next(step.number for step in reversed(steps[:turned]) if step.id == "restore-power")
    for wanted in ("mount-raw-on-stub", "mount-on-stub"):
        lines = [str(piece) for line in next(step for step in steps if step.id == wanted).text for piece in line]
        assert [line for line in lines if f"THEN go back to step {power}, where power comes back" in line], wanted


def test_jaws_too_deep_for_a_blank_do_not_matter_where_its_bore_is_kept_on_a_stub(tmp_path: Path) -> None:
    """Jaws 34 mm deep and a blank 30 mm wide, and nothing to bring it forward."""
    no_spacer = ("crib-stub", 'spacer = "14 mm"\n', "")
    assert not advise(kept_bores(tmp_path, no_spacer)).refused
    no_stub = ("crib-stub", r"stub_metal.*?stub_length = \"30 mm\"\n", "")
    refused = advise(kept_bores(tmp_path / "none", no_spacer, no_stub)).refused
    assert "blank-cannot-be-gripped" in [stop.id for stop in refused]


def test_without_a_stub_a_kept_bore_is_said_to_be_held_by_the_rim(tmp_path: Path) -> None:
    no_stub = ("crib-stub", r"stub_metal.*?stub_length = \"30 mm\"\n", "")
    case = advise(kept_bores(tmp_path, no_stub)).case
    assert (case.value("collar.hold"), case.value("collar.second_face_hold")) == ("jaws-and-spacer", "by-the-rim")


def test_the_first_cuts_on_the_stub_are_as_light_and_slow_as_the_second(tmp_path: Path) -> None:
    sheet = make_procedure(kept_bores(tmp_path))
    assert figure(sheet, "face-first-on-stub", "stub.cut") <= 0.25
    assert figure(sheet, "face-first-on-stub", "stub.facing.speed") <= 600
