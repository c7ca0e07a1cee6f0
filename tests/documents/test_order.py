"""The order of the work: what is made before it is used, hands away from what turns, power off round a move."""

import re

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, procedure_of
from tailtrue.procedure import Procedure, Step

from .made import Job, said

# Hands at work, chuck, tool or gauge; nothing of it is done while the spindle turns.
HANDS = {
    "grip-in-chuck", "mount-between-centres", "chuck-change", "measure", "measure-bar", "gauge-bore", "move-tailstock",
    "re-clamp", "verify-tailstock", "deburr", "handle-stock", "clear-chips", "inspect-bar", "taper-shank-drill",
}  # fmt: skip
CUTS = {"facing", "turning", "drill", "bore", "centre-drill", "skim"}


def _words(step: Step) -> str:
    return " ".join(said(line) for line in step.text)


def test_v15_the_list_of_needs_is_the_list_of_what_is_used(made: Job) -> None:
    """Common practice: a list of tools that is neither longer nor shorter than the work."""
    used = {tool for _, step in made.steps for tool in step.tools}
    assert used == {need.id for need in made.tree.needs}
    words = made.page("procedure").words
    for need in made.tree.needs:
        assert all(piece in words for piece in need.name if isinstance(piece, str)), need.id


def test_v16_nothing_is_used_before_it_is_made(made: Job) -> None:
    """Common practice: bored before bonded, fixed before skimmed, centred before carried between centres."""
    done: list[set[str]] = [set(step.activities) for _, step in made.steps]
    makes_bar = any("saw-stock" in one for one in done)
    for earlier, later in (
        ("centre-drill", "mount-between-centres"),
        ("saw-stock", "facing"),
        ("bore", "bond"),
        ("bond", "skim"),
    ):
        places = [place for place, one in enumerate(done) if later in one]
        if makes_bar and places and any(earlier in one for one in done):
            assert next(place for place, one in enumerate(done) if earlier in one) < places[0], (earlier, later)


def test_v17_each_start_is_preceded_by_its_check(made: Job) -> None:
    """Shop safety practice: key out, clamps tight, bed clear, speed read, between the last hands in and the start."""
    checked = False
    for _, step in made.steps:
        if step.machine == "turning":
            assert checked, step.number
        elif "start-check" in step.activities:
            checked = True
            if step.id == "start-check":
                words = (_words(step) + " ".join(said(one.text) for one in step.checks)).lower()
                for part in ("key", "clamp", "speed", "hand"):
                    assert part in words, (step.number, part)
        elif HANDS & set(step.activities):
            checked = False


def test_v18_no_hand_goes_in_while_the_spindle_turns(made: Job) -> None:
    """US Navy and US Army machine shop manuals: stop the lathe before measuring, cleaning or adjusting."""
    for _, step in made.steps:
        if step.machine == "turning":
            assert not HANDS & set(step.activities), step.number
            assert not any(check.instrument for check in step.checks), step.number


def test_v19_gloves_are_never_asked_for_while_the_spindle_can_turn(made: Job) -> None:
    """HSE (GB) guidance on lathes: no gloves at a turning spindle."""
    gloves = {need.id for need in made.tree.needs if "glove" in need.id}
    for _, step in made.steps:
        if step.machine != "isolated":
            assert not gloves & set(step.tools), step.number
            for caution in step.cautions:
                assert not any("glove" in one for one in caution.protective_equipment), caution.id
    for state in made.tree.safety_review.wear:
        if state.spindle_can_turn:
            assert not any("glove" in said(line).lower() for line in state.wear), state.id
            assert any("glove" in said(line).lower() for line in state.never), state.id
    for row in made.tree.sop.wear if made.tree.sop else ():
        if row.machine != "isolated":
            assert not any("glove" in said(line).lower() for line in row.required), row.state


def test_v20_a_move_of_the_tailstock_is_isolated_clamped_verified_and_restored(made: Job) -> None:
    """Common practice: the next start finds a tailstock that is proved tight."""
    for phase in made.tree.phases:
        moves = [place for place, step in enumerate(phase.steps) if step.id.startswith("move-tailstock")]
        for place in moves:
            assert phase.steps[place].machine == "isolated"
            after = [set(step.activities) for step in phase.steps[place + 1 :]]
            clamped = next(at for at, one in enumerate(after) if "re-clamp" in one)
            verified = next(at for at, one in enumerate(after) if "verify-tailstock" in one)
            assert clamped < verified
            assert phase.steps[place + 1 + verified].hold is not None
            assert all(step.machine == "isolated" for step in phase.steps[place : place + 2 + verified])


def test_v21_nobody_is_told_to_hold_abrasive_to_turning_work(made: Job) -> None:
    """HSE (GB) guidance on emery cloth at metalworking lathes."""
    for _, step in made.steps:
        if step.machine == "turning":
            assert not re.search(r"\b(?:emery|abrasive|sandpaper|polish\w*)\b", _words(step), re.I), step.number
    turns = any(step.machine == "turning" for _, step in made.steps)
    if made.tree.sop and turns:
        assert any("abrasive" in said(line.text).lower() for line in made.tree.sop.forbidden)


def test_v22_what_stands_out_behind_is_asked_answered_and_printed(made: Job) -> None:
    """NIOSH FACE reports on lathe deaths: unsupported stock behind the headstock whips."""
    for _, step in made.steps:
        if "bar-through-spindle" in step.activities:
            assert any(check.blanks for check in step.checks), step.number
    lines = [line for block in made.tree.safety_review.checks for line in block.lines if line.id == "rear"]
    assert len(lines) == 1
    assert lines[0].killer
    assert lines[0].blanks[0].unit == ("in" if made.tree.title.dials == "inch" else "mm")
    # What stands out whips when it turns.
    assert any("behind the headstock" in said(line) for line in made.tree.do_not_start) == any(
        step.machine == "turning" for _, step in made.steps
    )


def test_v23_a_speed_to_set_is_below_every_cap_that_the_sheet_names(made: Job) -> None:
    """ISO/TR 13618 on work-holding: no speed above what the chuck carries."""
    caps = [one.value for one in made.figures if one.fact == "chuck.speed_limit"]
    for _, step in made.steps:
        for line in step.settings:
            for piece in line.value:
                if not isinstance(piece, str) and piece.rounding == "speed" and piece.fact.endswith(".speed"):
                    assert piece.value > 0, step.number
                    between_centres = "dog-drive" in step.activities
                    assert not caps or between_centres or piece.value <= max(caps), step.number
    if made.tree.card:
        on_card = {(line.value.fact, line.value.value) for group in made.tree.card.groups for line in group.lines}
        for _, step in made.steps:
            for line in step.settings:
                for piece in line.value:
                    if not isinstance(piece, str) and piece.rounding == "speed":
                        assert (piece.fact, piece.value) in on_card, step.number


def test_v42_the_review_the_joint_and_the_tailstock_are_held_and_the_proof_is_seen(made: Job) -> None:
    """10 CFR 50 appendix B, criterion X, as a model: no work past a hold without release."""
    holds = [step for _, step in made.steps if step.hold is not None]
    done = {activity for _, step in made.steps for activity in step.activities}
    held = {activity for step in holds for activity in step.activities}
    if "bond" in done:
        assert "cure-wait" in held
    if "move-tailstock" in done and any(step.id.startswith("move-tailstock") for _, step in made.steps):
        assert "verify-tailstock" in held
        if "skim" in done:
            labels = [blank.label for _, step in made.steps for check in step.checks for blank in check.blanks]
            assert "witness or second look" in labels
    first = next(step for _, step in made.steps)
    assert first.hold is not None
    assert f"safety review, {made.tree.title.number}," in said(first.hold.text)
    order = [step.id for _, step in made.steps]
    for step in holds:
        assert step.hold is not None
        assert step.hold.releases.strip()
        if "cure-wait" in step.activities:  # time is waited for, the work is not done again
            assert step.hold.go_back_to is None
            continue
        assert step.hold.go_back_to
        assert order.index(step.hold.go_back_to) <= order.index(step.id)
    assert sum(1 for _ in made.page("procedure").all("div", "hold")) == len(holds)


@pytest.mark.parametrize("name", ["job", "use-bar", "taper-and-return", "re-certify"])
@pytest.mark.parametrize("said_of", [{"job.operator": "learner"}, {"job.minor": True}, {}])
def test_v42_a_learner_waits_for_the_instructor_before_the_first_start_between_centres(
    name: str, said_of: dict[str, object]
) -> None:
    """10 CFR 50 appendix B, criterion X, as a model: the hold is the instructor's, and stands after the work is mounted."""
    steps = [step for phase in learner(name, said_of).phases for step in phase.steps]
    held = [step.hold is not None and "instructor" in step.hold.releases for step in steps]
    assert any(held) == bool(said_of)
    if said_of:
        mounted = next(place for place, step in enumerate(steps) if step.id in {"mount-bar", "mount-work"})
        started = next(place for place, step in enumerate(steps) if step.machine == "turning" and place > mounted)
        assert mounted < held.index(True) < started


def learner(name: str, said_of: dict[str, object]) -> Procedure:
    """An example with another person at the lathe."""
    return procedure_of(advise(EXAMPLES / "fernhill" / f"{name}.toml", instead=said_of))
