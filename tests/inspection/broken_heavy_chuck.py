"""Sheets on which a chuck that one person does not lift is changed, and nobody is told."""

from functools import cache

from shops import EXAMPLES
from tailtrue.advise import advise, make_procedure, shop_for
from tailtrue.procedure import Caution

from .broken import breaks
from .changed import Job


@cache
def _job() -> Job:
    path = EXAMPLES / "fernhill" / "use-bar.toml"
    return make_procedure(path), shop_for(advise(path))


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
