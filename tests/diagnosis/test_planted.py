"""Faults planted in simulated lathes come back by name where the tests can tell, and as "cannot tell" where they cannot."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from random import Random

import pytest

from diagnosis.planted import Planted, setup
from tailtrue.diagnosis.answer import Diagnosis, answer
from tailtrue.diagnosis.knowing import known
from tailtrue.diagnosis.saying import Teller
from tailtrue.diagnosis.tests_file import Made
from tailtrue.render.words import say

PAGE = Path(__file__).parents[2] / "docs" / "diagnosis.md"

# Sizes that matter in a shop: mm, or mm for each mm; whether either sign occurs.
SIZES: Mapping[str, tuple[float, float, bool]] = {
    "bed-twist": (5e-5, 1.5e-4, True),
    "headstock": (6e-5, 1.5e-4, True),
    "tailstock": (0.012, 0.08, True),
    "worn-bed": (0.012, 0.03, False),
    "bowed-path": (0.006, 0.015, True),
    "clamping": (0.008, 0.02, True),
    "tool-wear": (0.0025, 0.005, False),
    "bar-bends": (0.005, 0.01, False),
    "soft-end": (0.006, 0.012, False),
    "eccentric-centre": (0.008, 0.02, True),
    "centre-holes": (0.008, 0.02, True),
    "height": (0.015, 0.06, True),
    "headstock-pitch": (8e-5, 2e-4, True),
}
EVERY = tuple(known().tests)
SCENES = {
    "every test, one fault": (EVERY, 1, 260),
    "every test, two faults": (EVERY, 2, 120),
    "between centres alone, three collars": (("between_centres",), 1, 80),
    "between centres and chucked bar": (("between_centres", "chucked_bar"), 1, 80),
    "between centres, chucked bar and level": (("between_centres", "chucked_bar", "level"), 1, 80),
    "every test, nothing wrong": (EVERY, 0, 60),
}
# What those tests can tell, by the geometry: the chucked bar sees the lean of the path less the yaw, the level the lean
# alone, between centres the tailstock and whatever looks like it there.
TELLS = {
    "every test, one fault": set(SIZES),
    "every test, two faults": set(SIZES),
    "between centres alone, three collars": {"worn-bed"},
    "between centres and chucked bar": {"worn-bed"},
    "between centres, chucked bar and level": {"worn-bed", "bed-twist", "headstock"},
}


@dataclass(frozen=True)
class Found:
    """One lathe, its faults, and what was said of it."""

    sizes: Mapping[str, float]
    diagnosis: Diagnosis

    @property
    def faults(self) -> tuple[str, ...]:
        """What was planted."""
        return tuple(self.sizes)

    @property
    def first(self) -> bool:
        """The planted causes head the list."""
        return set(list(self.diagnosis.weights)[: len(self.faults)]) == set(self.faults)

    @property
    def honest(self) -> bool:
        """It says that it cannot tell: the cause among several, or among those not settled. Or it is right."""
        (fault,) = self.faults
        found = self.diagnosis
        if found.named == self.faults:
            return True  # so large, or of such a sign, that nothing else comes near
        if found.answer == "cannot-tell":
            return fault in (*found.rivals, *found.not_settled)
        return found.answer == "nothing" and fault in (*found.not_settled, *found.rivals)


def diagnosed(planted: Planted, kinds: tuple[str, ...]) -> Diagnosis:
    made = Made(planted.made(*kinds), dict.fromkeys(kinds, 0.001), dict.fromkeys(kinds, "tests.toml"))
    return answer(made, setup(planted.tool_side), known())


@cache
def scene(name: str) -> tuple[Found, ...]:
    kinds, faults, count = SCENES[name]
    hand = Random(name)
    found = []
    for number in range(count):
        causes = tuple(hand.sample(sorted(SIZES), faults))
        if faults == 1:
            # Each cause in its turn, so that none is left to chance.
            causes = (sorted(SIZES)[number % len(SIZES)],)
        sizes = {one: hand.uniform(*SIZES[one][:2]) * (hand.choice((-1, 1)) if SIZES[one][2] else 1) for one in causes}
        planted = Planted(sizes, hand.choice(("front", "rear")), hand=hand)
        found.append(Found(sizes, diagnosed(planted, kinds)))
    return tuple(found)


def rates(name: str) -> dict[str, int]:
    """Counts for one row of the table."""
    found = scene(name)
    tells = [one for one in found if set(one.faults) <= TELLS.get(name, set())]
    others = [one for one in found if one.faults and one not in tells]
    wrong = [one for one in found if set(one.diagnosis.named) - set(one.faults)]
    return {
        "lathes": len(found),
        "can tell": len(tells),
        "ranked first": sum(one.first for one in tells),
        "cannot": len(others),
        "says so": sum(one.honest for one in others),
        "named wrongly": len(wrong),
    }


def table() -> str:
    """The measured table of the page."""
    lines = [
        "| tests made | lathes | fault can be told | planted fault ranked first | fault cannot always be told | says so, or is right | a sound part named |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    lines += (f"| {name} | {' | '.join(str(one) for one in rates(name).values())} |" for name in SCENES)
    return "\n".join(lines)


def test_there_are_five_hundred_lathes_and_more() -> None:
    assert sum(len(scene(name)) for name in SCENES) >= 500


@pytest.mark.parametrize("name", TELLS)
def test_the_planted_fault_heads_the_list_where_the_tests_can_tell(name: str) -> None:
    found = rates(name)
    assert found["can tell"] >= 6
    assert found["ranked first"] >= 0.95 * found["can tell"]


@pytest.mark.parametrize("name", [name for name in TELLS if len(TELLS[name]) < len(SIZES)])
def test_where_the_tests_cannot_always_tell_it_says_so_or_is_right(name: str) -> None:
    found = rates(name)
    assert found["cannot"] >= 50
    assert found["says so"] >= 0.95 * found["cannot"]


@pytest.mark.parametrize("name", SCENES)
def test_a_sound_part_is_hardly_ever_blamed(name: str) -> None:
    found = rates(name)
    assert found["named wrongly"] <= 0.05 * found["lathes"]


def test_a_sound_lathe_is_left_alone() -> None:
    found = scene("every test, nothing wrong")
    assert sum(one.diagnosis.answer == "nothing" for one in found) >= 0.95 * len(found)


@pytest.mark.parametrize("name", ["between centres alone, three collars"])
def test_between_centres_alone_never_blames_bed_twist_or_headstock(name: str) -> None:
    assert not any({"bed-twist", "headstock"} & set(one.diagnosis.named) for one in scene(name))


def test_a_chucked_bar_and_centres_never_settle_headstock_against_bed() -> None:
    for one in scene("between centres and chucked bar"):
        assert not {"bed-twist", "headstock"} & set(one.diagnosis.named)
        if one.faults in (("bed-twist",), ("headstock",)) and one.diagnosis.answer == "cannot-tell":
            assert {"bed-twist", "headstock"} <= set(one.diagnosis.rivals)


def test_estimates_lie_within_their_doubt() -> None:
    """The doubt is stated with k = 2: about one in twenty lies outside."""
    outside = total = 0
    for name in ("every test, one fault", "every test, two faults"):
        for one in scene(name):
            for cause in ("bed-twist", "headstock", "height"):
                estimate = one.diagnosis.estimates[cause]
                total += 1
                true = one.sizes.get(cause, 0.0)
                outside += abs(estimate.value - true) > 2 * estimate.standard_uncertainty
    assert total > 1000
    assert outside <= 0.08 * total


def test_what_was_planted_comes_back_with_its_side_and_size() -> None:
    met = set()
    for one in scene("every test, one fault"):
        (cause,) = one.faults
        estimate = one.diagnosis.estimates.get(cause)
        if cause == "clamping" or estimate is None:
            continue  # seen as scatter as well; one cannot be settled while it is not named
        met.add(cause)
        # Wear has another shape here than the diagnosis takes for it.
        share = 0.3 if cause == "worn-bed" else 0.1
        off = abs(estimate.value - one.sizes[cause])
        assert off <= 4 * estimate.standard_uncertainty + share * abs(one.sizes[cause]), one.sizes
    assert met == set(SIZES) - {"clamping"}


def test_every_diagnosis_can_be_said_in_both_systems() -> None:
    for name in SCENES:
        for one in scene(name)[:40]:
            for dials in ("metric", "inch"):
                found = replace(one.diagnosis, setup=setup(one.diagnosis.setup.tool_side, dials=dials))
                lines = Teller(found).lines()
                assert any(line.part == "answer" for line in lines)
                said = " ".join(say(line.text, found.setup.dials) for line in lines)
                assert "{{" not in said
                assert ("Move the tailstock" in said) <= (found.answer == "named")


def test_any_mixture_of_tests_and_faults_gets_an_answer() -> None:
    hand = Random("mixtures")
    for _ in range(80):
        kinds = {"between_centres"} | {one for one in EVERY if hand.random() < hand.choice((0.15, 0.4, 0.8))}
        if hand.random() < 0.3:
            kinds = {one for one in kinds if not known().tests[one].with_} - {"between_centres"} or {"clamping"}
        sizes = {one: hand.uniform(*SIZES[one][:2]) for one in hand.sample(sorted(SIZES), hand.choice((0, 1, 2, 5)))}
        found = diagnosed(Planted(sizes, hand.choice(("front", "rear")), hand=hand), tuple(sorted(kinds)))
        assert [one for one in Teller(found).lines() if one.part == "answer"]
        assert found.next_test is None or found.next_test.id not in kinds


def test_the_table_of_the_page_is_what_was_measured() -> None:
    assert table() in PAGE.read_text(encoding="utf-8")
