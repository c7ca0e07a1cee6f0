"""The standing procedure says of this lathe and this job what was said and worked out, and nothing else."""

from collections import Counter
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import knowledge, make_procedure
from tailtrue.parts import Figure, Text
from tailtrue.procedure import Procedure
from tailtrue.shop_sheet import ShopSheet

APPROVED = (
    "job",
    r'^author = "lathe steward"',
    'author = "lathe steward"\napprover = "shop manager"\nwalked_through = "second trainer, 2026-11-25"\napproved_on = 2026-11-25',
)


def sop_of(tree: Procedure) -> ShopSheet:
    assert tree.sop is not None
    return tree.sop


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def tree(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


def changed(folder: Path, *changes: tuple[str, str, str], name: str = "fernhill") -> ShopSheet:
    return sop_of(make_procedure(shop(folder, name, *changes)))


def words(text: Text) -> str:
    return "".join(piece if isinstance(piece, str) else f"<{piece.fact}>" for piece in text)


def banners(sop: ShopSheet) -> list[str]:
    return [line.id for line in sop.banners]


def guard(sop: ShopSheet, name: str) -> str:
    return next(words(row.state) for row in sop.guards if row.name == name)


def test_every_step_of_the_work_stands_once_under_its_own_word(tree: Procedure) -> None:
    told = Counter()
    for row in sop_of(tree).who:
        told.update((step.number, step.title, "any") for step in row.any)
        told.update((step.number, step.title, "supervised") for step in row.supervised)
        told.update((step.number, step.title, "staff") for step in row.staff)
    assert told == Counter((step.number, step.title, step.who) for phase in tree.phases for step in phase.steps)


def test_in_a_shared_shop_wheel_chuck_first_start_and_tailstock_have_a_supervisor() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    assert [step.title for row in sop_of(tree).who for step in row.supervised] == [
        "Grind the turning tools",
        "Take the chuck off and fit the driver",
        "First start between centres: the supervisor is here",
        "Move the tailstock",
    ]


def test_it_is_made_unasked_for_a_shared_shop_alone(tree: Procedure) -> None:
    assert sop_of(tree).made_unasked is (tree.title.shop == "Fernhill Makerspace")


def test_without_approval_it_is_a_draft_and_says_so(tree: Procedure) -> None:
    sop = sop_of(tree)
    assert sop.control.status == "draft"
    assert banners(sop) == ["banner-draft"]
    assert sop.control.review_due == "2027-11-24"


def test_with_names_and_day_it_is_approved_and_carries_no_banner(tmp_path: Path) -> None:
    sop = changed(tmp_path, APPROVED)
    assert sop.control.status == "approved"
    assert banners(sop) == []
    last = sop.control.signatories[-1]
    assert (last.role, last.name, last.day) == ("Approval", "shop manager", "2026-11-25")


def test_approved_said_without_names_stays_a_draft_and_tells_why(tmp_path: Path) -> None:
    sop = changed(tmp_path, ("job", r'^place = "shared"', 'place = "shared"\nstatus = "approved"'))
    assert banners(sop) == ["banner-draft", "banner-approval-missing"]


def test_one_that_was_superseded_says_so(tmp_path: Path) -> None:
    sop = changed(tmp_path, APPROVED, ("job", r'^place = "shared"', 'place = "shared"\nstatus = "superseded"'))
    assert banners(sop) == ["banner-superseded"]


def test_a_review_before_the_date_of_the_job_is_overdue_without_a_clock(tmp_path: Path) -> None:
    sop = changed(tmp_path, APPROVED, ("job", r'^place = "shared"', 'place = "shared"\nreview_due = 2026-11-23'))
    assert sop.control.overdue
    assert banners(sop) == ["banner-overdue"]


def test_compound_and_micrometers_past_their_day_are_told(tmp_path: Path) -> None:
    late = 'name = "Fernhill tool crib"\ncompound_expires = 2026-11-01\ncalibration_due = 2026-11-23'
    sop = changed(tmp_path, APPROVED, ("crib", r'^name = "Fernhill tool crib"', late))
    assert banners(sop) == ["banner-compound", "banner-calibration"]


def test_what_was_not_said_is_a_place_to_write_and_what_was_said_stands_there(tmp_path: Path) -> None:
    told = 'place = "shared"\nopening_hours = "Tuesday evenings"\nkept_at = "folder 3"\nchanges = [{ what = "guard", why = "it was cracked" }]'
    sop = changed(tmp_path, ("job", r'^place = "shared"', told))
    here = {entry.label: entry.value for entry in (*sop.control.entries, *sop.local)}
    assert here["Hours of use"] == ("Tuesday evenings",)
    assert here["Kept at"] == ("folder 3",)
    assert here["Emergency number"] is None
    assert here["Takes the place of"] is None
    assert [(one.what, one.why) for one in sop.control.changes] == [("guard", "it was cracked")]


@pytest.mark.parametrize(
    ("pattern", "instead", "name", "state"),
    [
        (r'^chuck_guard = "interlocked"', 'chuck_guard = "hinged"', "Chuck guard", "present, does not stop the drive"),
        (r"^no_volt_release = true\n", "", "No-volt release", "none, or not told"),
        (r'^chuck_key = "self-ejecting"', 'chuck_key = "plain"', "Chuck key", "stays in the chuck"),
        (r'^chuck_key = "self-ejecting"\n', "", "Chuck key", "stays in the chuck"),
        (r'^run_down = "2 s"', 'run_down = "9 s"', "Run-down of the spindle", "<lathe.run_down>, long"),
        (r'^run_down = "2 s"\n', "", "Run-down of the spindle", "not told"),
    ],
)
def test_what_protects_stands_in_the_state_that_was_told(
    tmp_path: Path, pattern: str, instead: str, name: str, state: str
) -> None:
    assert guard(changed(tmp_path, ("lathe", pattern, instead)), name) == state


def test_every_kind_of_protection_stands_once(tree: Procedure) -> None:
    names = [row.name for row in sop_of(tree).guards]
    assert names == list(dict.fromkeys(rule.file.name for rule in knowledge().sop.controls))


def test_limits_carry_the_figures_of_the_sheet() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    found = {piece.fact: piece.value for row in sop_of(tree).limits for piece in row.limit if isinstance(piece, Figure)}
    assert found["chuck.speed_limit"] == 2500  # as marked in its file
    assert found["lathe.swing_over_slide"] == 195
    at_steps = {
        piece.fact: piece.value
        for phase in tree.phases
        for step in phase.steps
        for setting in step.settings
        for piece in setting.value
        if isinstance(piece, Figure)
    }
    assert found["skim.depth"] == at_steps["skim.depth"]


def test_a_threaded_nose_forbids_reverse_and_another_does_not() -> None:
    never = {
        name: {line.id for line in sop_of(make_procedure(EXAMPLES / name / "job.toml")).forbidden}
        for name in ("fernhill", "quarry-road")
    }
    assert never["quarry-road"] - never["fernhill"] == {"never-reverse"}


def test_every_danger_of_the_sheet_stands_among_the_hazards_first(tree: Procedure) -> None:
    every = [*tree.job_cautions]
    for phase in tree.phases:
        every += [*phase.cautions, *(caution for step in phase.steps for caution in step.cautions)]
    dangers = {caution.id for caution in every if caution.signal == "danger"}
    rows = sop_of(tree).hazards
    assert {row.caution for row in rows[: len(dangers)]} == dangers
    assert len({row.caution for row in rows}) == len(rows)


def test_an_emergency_that_the_sheet_tells_is_told_alike(tree: Procedure) -> None:
    on_sheet = {seen: (do, never) for seen, do, never in tree.if_it_goes_wrong}
    told = {row.seen: (row.do, row.never) for row in sop_of(tree).emergency}
    both = on_sheet.keys() & told.keys()
    assert {"Somebody is caught", "Heavy bleeding", "Chip in the eye"} <= both
    assert all(told[seen] == on_sheet[seen] for seen in both)


def test_the_same_files_have_the_same_fingerprint_and_others_another(tmp_path: Path) -> None:
    first = changed(tmp_path / "a").control.inputs
    assert changed(tmp_path / "b").control.inputs == first
    assert changed(tmp_path / "c", ("lathe", r'^run_down = "2 s"', 'run_down = "3 s"')).control.inputs != first


@pytest.mark.parametrize(
    ("name", "label"),
    [
        ("fernhill", "Bonding compound good until"),
        ("cinder-lane", "Set screws of the collars looked at: by, on"),
        ("ropewalk", "Witness lines of the collars looked at: by, on"),
    ],
)
def test_the_control_block_asks_for_what_the_joint_of_the_collars_needs(name: str, label: str) -> None:
    block = sop_of(make_procedure(EXAMPLES / name / "job.toml")).control
    assert [entry.label for entry in block.entries if "collars" in entry.label or "compound" in entry.label] == [label]


def test_every_way_to_fix_the_collars_has_one_entry_of_its_own() -> None:
    known = knowledge()
    told = [
        way
        for entry in known.sop.page.file.control
        for line in entry.when
        if isinstance(line, str)
        for way in line.partition(" is ")[2].removeprefix("one of ").split(", ")
    ]
    assert sorted(told) == sorted(known.catalogue["joint.method"].choices)


# Kind of sheet, a line that its standing procedure must have, and a part of a line that belongs to other work.
WORK = [
    ("make-bar", "training-centres", "tailstock moved"),
    ("use-bar", "during-clamp", "under age: shop staff saw"),
    ("re-certify", "never-strike-bar", "tailstock after every move"),
    ("taper-and-return", "never-untagged", "finger into a bore"),
    ("chucked-bar-test", "after-piece", "the dog and the bar"),
    ("height-and-droop", "during-isolated", "before every start"),
    ("rework", "never-inside-a-cut", "the dog and the bar"),
]


@pytest.mark.parametrize(("sheet", "has", "others"), WORK, ids=[row[0] for row in WORK])
def test_every_work_of_a_shared_shop_has_a_standing_procedure_of_its_own_lines(sheet: str, has: str, others: str) -> None:
    sop = sop_of(make_procedure(EXAMPLES / "fernhill" / f"{sheet}.toml"))
    assert sop.made_unasked
    lines = [*sop.training, *sop.supervision, *sop.before, *sop.during, *sop.after, *sop.forbidden]
    assert has in [line.id for line in lines]
    # A line about the tailstock is right where it is unclamped; what is never done with one is not.
    assert not [line.id for line in lines if others in words(line.text).lower()]


def test_every_kind_of_sheet_is_called_after_its_work() -> None:
    titles = [sop_of(make_procedure(EXAMPLES / "fernhill" / f"{row[0]}.toml")).control.title for row in WORK]
    assert len(set(titles)) == len(titles)


def test_where_nothing_turns_no_line_speaks_of_a_cut() -> None:
    sop = sop_of(make_procedure(EXAMPLES / "fernhill" / "height-and-droop.toml"))
    assert "The tool digs in while the work turns" not in [row.seen for row in sop.emergency]
    assert "Metals allowed" not in [row.label for row in sop.limits]


def test_what_a_shop_says_of_itself_stands_where_it_is_read(tmp_path: Path) -> None:
    told = (
        'place = "shared"\npermitted_by = "the lathe steward"\nprior_approval = true\nsign_in = "board at the door"\n'
        'short_address = "shelf 3"\nlast_reviewed = "second trainer, 2026-03-30"\nreports_to = "shop manager"'
    )
    sop = changed(tmp_path, ("job", r'^place = "shared"', told))
    assert words(sop.first[0].text).endswith("permitted by the lathe steward.")
    here = {entry.label: entry.value and words(entry.value) for entry in (*sop.control.entries, *sop.local)}
    assert here["Prior approval before each use: yes or no"] == "yes"
    assert here["Reserve and sign in: where"] == "board at the door"
    assert here["Newest copy: where"] == "shelf 3"
    assert here["Last reviewed: by, on"] == "second trainer, 2026-03-30"
    back = {place.label: place.value for form in sop.forms for place in form.places}
    assert back["Give back to"] == ("shop manager",)


def test_sheet_and_standing_procedure_tell_the_same_changes(tmp_path: Path) -> None:
    told = 'place = "shared"\nchanges = [{ what = "guard", why = "it was cracked" }, { what = "speed", why = "new chuck" }]'
    tree = make_procedure(shop(tmp_path, "fernhill", ("job", r'^place = "shared"', told)))
    assert [one.what for one in tree.title.changes] == ["guard", "speed"]
    assert tree.title.changes == sop_of(tree).control.changes
