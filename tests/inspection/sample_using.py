"""Phases of the sample in which the bar is used."""

from tailtrue.parts import Blank, Check, Limits, Setting
from tailtrue.procedure import Hold, Phase, Step

from .sample_pieces import caution, depth, mm, power_feed, speed, start_check, written


def using() -> tuple[Phase, ...]:
    """Skim and read, then move the tailstock."""
    return (_test(), _move())


def _test() -> Phase:
    return Phase(
        id="test",
        number="4",
        title="Skim and read",
        purpose=("This phase is the test.",),
        steps=(
            Step(
                id="mount-bar",
                number="4.1",
                title="Mount the bar",
                machine="isolated",
                activities=("mount-between-centres",),
                cautions=(caution("bar-drops", "warning", "mount-between-centres"),),
                text=(("Put the bar between the centres.",), ("Set the carriage stop short of the dog.",)),
                settings=(
                    Setting(
                        label=("tip past the collar by",),
                        value=(mm("collar.stop_past", 5.0, "length"),),
                        reason=("of ", mm("collar.dog_gap", 10.0, "length")),
                    ),
                ),
                tools=("dog",),
            ),
            start_check("4.2"),
            Step(
                id="skim-collars",
                number="4.3",
                title="Skim both collars",
                machine="turning",
                activities=("skim",),
                cautions=(
                    caution("abrasive-cloth", "danger", "skim"),
                    caution("slide-moved", "notice", "skim"),
                ),
                text=(("Cut both collars toward the headstock.",),),
                settings=(speed("skim.speed", 500), power_feed("skim.feed", 0.05), depth("skim.depth", 0.05)),
                tools=("turning-tool", "dog"),
            ),
            Step(
                id="read-collars",
                number="4.4",
                title="Read the collars",
                machine="isolated",
                activities=("measure",),
                cautions=(caution("measured-hot", "notice", "measure"),),
                text=(("Isolate the lathe. Measure both collars.",), ("Write them into the record of sheet SW-L2-014.",)),
                checks=(
                    Check(
                        text=("Both collars, above the worn size.",),
                        limits=Limits(low=mm("skim.worn_out_at", 50.0)),
                        instrument="micrometer-collars",
                        resolution=mm("collar.sizing_resolution", 0.001, "fit"),
                        blanks=(Blank(label="headstock end", unit="mm"), Blank(label="tailstock end", unit="mm")),
                    ),
                    written("In limits: somebody else saw the cut.", "witness or second look"),
                ),
                tools=("micrometer-collars",),
            ),
        ),
    )


def _move() -> Phase:
    return Phase(
        id="move",
        number="5",
        title="Move the tailstock",
        steps=(
            Step(
                id="isolate",
                number="5.1",
                title="Isolate the lathe",
                machine="isolated",
                activities=("mount-between-centres",),
                cautions=(caution("bar-falls", "caution", "mount-between-centres"),),
                text=(("Isolate the lathe. Wind the saddle clear. Take the bar out.",),),
            ),
            Step(
                id="move-tailstock",
                number="5.2",
                title="Move the tailstock",
                who="supervised",
                machine="isolated",
                activities=("move-tailstock",),
                cautions=(caution("slack-tailstock", "warning", "move-tailstock"),),
                text=(("Push with the screw until the indicator shows the move.",),),
                tools=("indicator",),
            ),
            Step(
                id="re-clamp",
                number="5.3",
                title="Clamp and read again",
                machine="isolated",
                activities=("move-tailstock", "re-clamp"),
                text=(("Tighten the bed clamp.",),),
                tools=("indicator",),
            ),
            Step(
                id="verify-tailstock",
                number="5.4",
                title="Verify before power comes back",
                machine="isolated",
                activities=("verify-tailstock", "move-tailstock"),
                text=(("Tug the tailstock by hand.",),),
                checks=(written("The tailstock does not move.", "verified by"),),
                hold=Hold(text=("Nobody restores power before this.",), releases="a second person", go_back_to="re-clamp"),
            ),
        ),
    )
