"""Cautions stand before the hand reaches the place, at most three at a step, and none is lost."""

from collections.abc import Iterator
from types import SimpleNamespace

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, knowledge, make_procedure, procedure_of
from tailtrue.assemble.cautions import CautionDealer, Few, Place
from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.parts import Caution
from tailtrue.procedure import Phase, Procedure
from tailtrue.sweeping.files import read_sweep
from tailtrue.truth import Truth

TREES = {name: make_procedure(EXAMPLES / name / "job.toml") for name in ("fernhill", "quarry-road")}


@pytest.fixture(params=sorted(TREES))
def tree(request: pytest.FixtureRequest) -> Procedure:
    return TREES[request.param]


def shown(phase: Phase) -> Iterator[str]:
    yield from (caution.id for caution in phase.cautions)
    for step in phase.steps:
        yield from (caution.id for caution in step.cautions)


def test_no_step_carries_more_than_three(tree: Procedure) -> None:
    """Procedure writing practice: more messages before one step are not read; one line that points back counts as well."""
    assert max(len(step.cautions) for phase in tree.phases for step in phase.steps) == 3


def test_no_danger_is_left_over_for_the_opening_of_a_phase(tree: Procedure) -> None:
    assert not [caution.id for phase in tree.phases for caution in phase.cautions if caution.signal == "danger"]


def test_none_is_said_twice_in_a_phase(tree: Procedure) -> None:
    for phase in tree.phases:
        names = list(shown(phase))
        assert len(names) == len(set(names)), phase.id


def test_one_that_comes_again_names_the_place_of_its_full_text_and_a_danger_never_does(tree: Procedure) -> None:
    full: dict[tuple[str, str], Caution] = {}
    lines = 0
    for phase in tree.phases:
        places = [(phase.number, phase.cautions), *((step.number, step.cautions) for step in phase.steps)]
        here = [(place, caution) for place, cautions in places for caution in cautions]
        for _, caution in here:
            if caution.again:
                lines += 1
                assert caution.signal != "danger"
                assert full[caution.again, caution.id] == caution.model_copy(update={"again": ""})
        full.update({(place, caution.id): caution for place, caution in here if not caution.again})
    assert lines > 10


def test_every_caution_that_holds_for_an_activity_of_the_job_is_somewhere(tree: Procedure) -> None:
    activities = {activity for phase in tree.phases for step in phase.steps for activity in step.activities}
    on_the_sheet = {caution.id for caution in tree.job_cautions} | {name for phase in tree.phases for name in shown(phase)}
    for caution in knowledge().cautions:
        if not caution.file.when and activities & set(caution.file.answers):
            assert caution.file.id in on_the_sheet


def test_the_worst_come_first_at_a_step(tree: Procedure) -> None:
    for phase in tree.phases:
        for step in phase.steps:
            words = [caution.signal == "danger" for caution in step.cautions]
            assert words == sorted(words, reverse=True)


def test_what_was_not_said_shows_the_caution_and_says_so() -> None:
    """The bench lathe file does not say whether its lead screw is covered."""
    reasons = [caution.shown_because for caution in TREES["quarry-road"].job_cautions if caution.shown_because]
    reasons += [
        caution.shown_because
        for phase in TREES["quarry-road"].phases
        for caution in (*phase.cautions, *(one for step in phase.steps for one in step.cautions))
        if caution.shown_because
    ]
    assert reasons
    assert all(reason.endswith("was not given") for reason in reasons)


def test_gloves_are_never_asked_for_while_power_is_there(tree: Procedure) -> None:
    """HSE, emery cloth and gloves at lathes: gloves only with the machine isolated."""
    for phase in tree.phases:
        for step in phase.steps:
            if step.machine != "isolated":
                assert not [tool for tool in step.tools if "glove" in tool]


@pytest.mark.parametrize("name", sorted(TREES))
def test_not_knowing_a_fact_never_takes_a_caution_away(name: str) -> None:
    said = advise(EXAMPLES / name / "job.toml").case
    given = {fact: found for fact, found in said.known().items() if found.spec.comes == "given"}

    def holding(facts: dict[str, Fact]) -> set[str]:
        case = Case(knowledge(), facts)
        return {c.file.id for c in knowledge().cautions if case.judge(c.when).truth is not Truth.NO}

    whole = holding(given)
    # A lathe file without feeds says something: there is no power feed.
    for gone in given.keys() - {"lathe.feeds"}:
        without = {fact: found for fact, found in given.items() if fact != gone}
        assert whole <= holding(without), gone


def test_at_most_five_open_a_phase_and_what_they_are_about_stands_after_them(tree: Procedure) -> None:
    """Procedure writing practice: a page of warnings before a phase is not read."""
    for phase in tree.phases:
        assert len(phase.cautions) <= 5, phase.id
        met: set[str] = set()
        for step in phase.steps:
            met |= set(step.activities)
        for caution in (*phase.cautions, *(one for step in phase.steps for one in step.cautions)):
            assert met & set(caution.answers), caution.id


def test_a_caution_that_names_something_to_wear_never_moves_to_a_livelier_step() -> None:
    gloves, plain = (_caution(name, wear) for name, wear in (("hot", ("dry gloves",)), ("bumped", ())))
    held = [(SimpleNamespace(file=SimpleNamespace(scope="step")), one) for one in (_caution("worst", ()), gloves, plain)]
    places = [Place("1.1", "turning", ("start-check",)), Place("1.2", "isolated", ("hold",))]
    dealt = CautionDealer(held, Few(1, 5, 5)).phase("1", places)  # type: ignore[arg-type]
    assert [one.id for one in dealt.steps[1]] == ["worst"]
    assert [one.id for one in dealt.steps[0]] == ["bumped"]
    assert [one.id for one in dealt.opening] == ["hot"]


def test_what_has_no_room_goes_to_the_start_check_right_before_and_to_no_other_step() -> None:
    held = [(SimpleNamespace(file=SimpleNamespace(scope="step")), _caution(name, ())) for name in ("a", "b", "c")]
    places = [
        Place("1.1", "isolated", ("tidy",)),
        Place("1.2", "stopped", ("start-check",)),
        Place("1.3", "turning", ("hold",)),
    ]
    dealt = CautionDealer(held, Few(1, 5, 5)).phase("1", places)  # type: ignore[arg-type]
    assert [[one.id for one in step] for step in dealt.steps] == [[], ["b"], ["a"]]
    assert [one.id for one in dealt.opening] == ["c"]


def test_one_that_comes_again_stands_at_the_first_step_of_the_phase_that_does_it() -> None:
    """A brass collar throws its chips at the first cut of a phase, not at the last."""
    file = SimpleNamespace(file=SimpleNamespace(scope="step"))
    cloth = _caution("cloth", ()).model_copy(update={"answers": ("skim",)})
    chips = _caution("chips", ()).model_copy(update={"answers": ("skim", "cut")})
    dealer = CautionDealer([(file, cloth), (file, chips)], Few(2, 5, 5))  # type: ignore[list-item]
    dealer.phase("1", [Place("1.1", "turning", ("skim", "cut"))])
    again = dealer.phase("2", [Place("2.1", "turning", ("skim",)), Place("2.2", "turning", ("cut",))])
    assert [[one.id for one in step] for step in again.steps] == [["chips", "cloth"], []]


def test_every_message_stands_at_its_own_work(tree: Procedure) -> None:
    """Common practice: above the step, at the start check right before it, or at the opening of the phase."""
    for phase in tree.phases:
        steps = phase.steps
        for place, step in enumerate(steps):
            about = set(step.activities)
            if "start-check" in about and place + 1 < len(steps):
                about |= set(steps[place + 1].activities)
            for caution in step.cautions:
                assert set(caution.answers) & about, (step.number, caution.id)
                assert not [one.number for one in steps[:place] if set(caution.answers) & set(one.activities)]


def _caution(name: str, wear: tuple[str, ...]) -> Caution:
    return Caution(
        id=name, signal="warning", severity=4, likelihood=2, hazard=name, harm="it hurts.", avoid=(("Stop.",),),
        protective_equipment=wear, answers=("hold",), sources=("common-practice",),
    )  # fmt: skip


def test_what_is_too_much_for_an_opening_goes_up_front_once_the_least_of_it() -> None:
    """A step of many kinds of work: no danger leaves its phase, nor does what asks for more than is worn for the job."""
    wear = {"b": ("dry gloves",), "d": ("glasses",)}
    nodes = [_caution(name, wear.get(name, ())) for name in "abcde"]
    nodes.append(_caution("f", ()).model_copy(update={"signal": "danger", "severity": 5}))
    held = [(SimpleNamespace(file=SimpleNamespace(scope="step")), one) for one in nodes]
    places = [Place("1.1", "isolated", ("hold",))]
    front = (_caution("front", ("glasses",)).model_copy(update={"answers": ("other",)}),)
    dealer = CautionDealer(held, Few(1, 3, 5), front)  # type: ignore[arg-type]
    dealt = dealer.phase("1", places)
    assert [[one.id for one in step] for step in dealt.steps] == [["a"]]
    assert [one.id for one in dealt.opening] == ["f", "b", "c"]  # the danger first
    assert [one.id for one in dealer.up_front] == ["d", "e"]
    later = dealer.phase("2", places)
    assert not {"d", "e"} & {one.id for one in (*later.opening, *later.steps[0])}


def test_a_step_that_saws_grips_and_files_opens_with_five_and_loses_none() -> None:
    """Rework in one step: fourteen messages are about it, and all stand before it."""
    sweep = read_sweep(knowledge())
    raw = {
        **sweep.starts["rework"], "job.found": "centre-bruised", "job.found_collars_on": False, "job.found_in_chuck": False,
        "lathe.feeds": ["0.05 mm/rev", "0.1 mm/rev"],
    }  # fmt: skip
    tree = procedure_of(advise(sweep.job, knowledge(), raw))
    (phase,) = (one for one in tree.phases if any("saw-stock" in step.activities for step in one.steps))
    assert len(phase.cautions) == 5
    before = {caution.id for caution in (*tree.job_cautions, *phase.cautions, *phase.steps[0].cautions)}
    for caution in knowledge().cautions:
        if not caution.file.when and set(phase.steps[0].activities) & set(caution.file.answers):
            assert caution.file.id in before


def test_what_kills_comes_again_and_lesser_words_do_not_where_the_front_is_about_the_work() -> None:
    """Common practice: generic words stand once; the grave one stands where the hand meets it."""
    step = SimpleNamespace(file=SimpleNamespace(scope="step"))
    lesser, grave, own = (_caution(name, ()) for name in ("lesser", "grave", "own"))
    grave = grave.model_copy(update={"severity": 5, "answers": ("turn",)})
    lesser = lesser.model_copy(update={"answers": ("hold",)})
    own = own.model_copy(update={"answers": ("file",)})
    front = tuple(_caution(name, ()).model_copy(update={"answers": (name,)}) for name in ("turn", "hold"))
    dealer = CautionDealer([(step, one) for one in (grave, lesser, own)], Few(3, 5, 5), front)  # type: ignore[misc]
    places = [Place("1.1", "turning", ("turn", "hold", "file"))]
    assert [one.id for one in dealer.phase("1", places).steps[0]] == ["grave", "lesser", "own"]
    assert [one.id for one in dealer.phase("2", places).steps[0]] == ["grave", "own"]
