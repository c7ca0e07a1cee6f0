"""The sample with its bond changed for another joint."""

from tailtrue.parts import Figure, Setting
from tailtrue.procedure import Derivation, Phase, Step

from .changed import Job, reviewed_anew, with_phases
from .sample_pieces import caution


def held_by(activity: str, *sizes: Figure) -> Job:
    """The sample with its bond changed for screws or pins of these sizes, and checked with a hold."""
    mean = caution("means-of-fixing", "caution", activity, "joint-check")

    def change(step: Step) -> Step:
        if step.number == "3.1":
            lines = tuple(Setting(label=("size",), value=(size,)) for size in sizes)
            return step.model_copy(
                update={"activities": (activity,), "settings": (*step.settings, *lines), "cautions": (mean,)}
            )
        if step.number != "3.2" or step.hold is None:
            return step
        hold = step.hold.model_copy(update={"go_back_to": "bond"})
        return step.model_copy(update={"activities": ("joint-check",), "hold": hold})

    def without_bond(phase: Phase) -> Phase:
        steps = tuple(change(step) for step in phase.steps)
        # What the phase of fixing warns of is the bond.
        return phase.model_copy(update={"steps": steps, "cautions": () if phase.number == "3" else phase.cautions})

    changed, givens = with_phases(without_bond)
    made = tuple(
        Derivation(
            fact=size.fact, label="size", value=changed.derivations[0].value, how="as given", sources=("common-practice",),
            weakest="common-practice",
        )
        for size in sizes
    )  # fmt: skip
    return reviewed_anew((changed.model_copy(update={"derivations": (*changed.derivations, *made)}), givens))
