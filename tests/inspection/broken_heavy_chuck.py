"""Sheets on which a chuck that one person does not lift is changed, and nobody is told."""

from functools import cache

from cases.test_large_lathe import LARGE
from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.procedure import Caution, Step

from .broken import breaks
from .changed import Job, sheet_of


def _job() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "use-bar.toml")


@cache
def _large() -> Job:
    """The same with a chuck that two people do not lift either."""
    path = EXAMPLES / "fernhill" / "use-bar.toml"
    advice = advise(path, instead=LARGE)
    return tree_of(advice), shop_for(advice)


def _cautions(change: dict[str, object]) -> Job:
    """The sheet with its message of the heavy chuck changed."""
    tree, shop = _job()

    def other(found: tuple[Caution, ...]) -> tuple[Caution, ...]:
        return tuple(one.model_copy(update=change) if one.id == "chuck-beyond-one-person" else one for one in found)

    phases = tuple(
        phase.model_copy(
            update={
                "cautions": other(phase.cautions),
                "steps": tuple(step.model_copy(update={"cautions": other(step.cautions)}) for step in phase.steps),
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases, "job_cautions": other(tree.job_cautions)}), shop


@breaks("V551", "step 3.1")
def mass_of_the_chuck_not_told() -> Job:
    return _cautions({"avoid": (("Isolate the lathe first.",), ("Lift it with a hoist or a second person.",))})


@breaks("V551", "step 3.1")
def nobody_asked_to_help_with_the_chuck() -> Job:
    tree, _ = _job()
    (mass,) = {
        piece
        for phase in tree.phases
        for caution in phase.cautions
        for line in caution.avoid
        for piece in line
        if caution.id == "chuck-beyond-one-person" and not isinstance(piece, str)
    }
    return _cautions({"avoid": (("The heaviest chuck here is about ", mass, "."),)})


@breaks("V662", "step 3.1")
def second_person_offered_for_a_chuck_that_two_do_not_lift() -> Job:
    tree, shop = _large()

    def by_two(step: Step) -> Step:
        text = tuple(
            ("Lift each chuck with a hoist or a second person.",) if "hoist" in str(line) else line for line in step.text
        )
        return step.model_copy(update={"text": text})

    phases = tuple(one.model_copy(update={"steps": tuple(map(by_two, one.steps))}) for one in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop
