"""The phases of the sample that join and use the bar."""

from tailtrue.parts import Blank, Check, Setting
from tailtrue.procedure import Hold, Phase, Step

from .sample_pieces import caution, figure, mm, start_check


def using() -> tuple[Phase, ...]:
    """Bond, skim, read and move."""
    return (_bond(), _skim(), _read())


def _bond() -> Phase:
    return Phase(
        id="bond",
        number="3",
        title="Bond the collars to the bar",
        steps=(
            Step(
                id="bond.join",
                number="3.1",
                title="Join",
                machine="isolated",
                activities=("bond",),
                cautions=(
                    caution(
                        "bond-skin",
                        "caution",
                        "The bond irritates skin and eyes",
                        "A rash may come back for life",
                        "Read its data sheet first.",
                        "Open a window.",
                        wear=("nitrile gloves",),
                    ),
                ),
                text=(
                    ("Wet bar and bore, turn the collar as it goes on.",),
                    (
                        "Set each collar ",
                        mm("collar.station", 60, "length"),
                        " from its end to its middle.",
                    ),
                ),
                tools=("bond",),
                boxes=("collar 1", "collar 2"),
            ),
            Step(
                id="bond.cure",
                number="3.2",
                title="Wait",
                machine="isolated",
                activities=("cure-wait",),
                boxes=("",),
                text=(
                    (
                        "Leave it lie for ",
                        figure("bond.cure_time", 86400, "s", "time", "least"),
                        ".",
                    ),
                ),
                checks=(Check(text=("Write both times",), blanks=(Blank(label="began"), Blank(label="ended"))),),
                hold=Hold(
                    text=("The bond must have cured before the bar turns.",),
                    releases="lathe keeper",
                    go_back_to="bond.join",
                ),
            ),
        ),
    )


def _skim() -> Phase:
    return Phase(
        id="skim",
        number="4",
        title="Skim both collars at one setting",
        steps=(
            Step(
                id="skim.mount",
                number="4.1",
                title="Mount the bar between centres",
                machine="isolated",
                activities=("mount-between-centres",),
                cautions=(
                    caution(
                        "dog-tail",
                        "warning",
                        "The tail of the dog strikes",
                        "It breaks fingers and catches sleeves",
                        "Keep hands to the right of the carriage.",
                    ),
                ),
                text=(
                    ("Tighten the centre until the bar turns with light drag and has no end shake.",),
                    (
                        "Lock the quill at ",
                        mm("lathe.quill_out", 30, "length"),
                        ".",
                    ),
                ),
                tools=("dog", "glasses"),
            ),
            start_check("4.2"),
            Step(
                id="skim.cut",
                number="4.3",
                title="Skim",
                machine="turning",
                activities=("skim",),
                cautions=(
                    caution(
                        "cross-slide",
                        "notice",
                        "The cross-slide moved between collars",
                        "The reading is worth nothing",
                        "Leave its handle alone until both are cut.",
                    ),
                ),
                text=(("Cut both collars toward the headstock.",), ("Cut once more at the same setting.",)),
                settings=(
                    Setting(
                        label=("speed",),
                        value=(figure("skim.speed", 460, "1/min", "speed", "most"),),
                        reason=("live centre",),
                    ),
                    Setting(label=("feed",), value=(figure("skim.feed", 0.05, "mm/rev", "feed"),)),
                    Setting(
                        label=("depth by the dial",),
                        value=(mm("skim.depth", 0.2, "depth"),),
                        reason=("4 divisions",),
                    ),
                    Setting(label=("time, both",), value=(figure("skim.time", 156.5, "s", "time"),)),
                ),
                boxes=("first cut", "second cut"),
            ),
        ),
    )


def _read() -> Phase:
    return Phase(
        id="read",
        number="5",
        title="Read the collars, move the tailstock",
        steps=(
            Step(
                id="read.measure",
                number="5.1",
                title="Measure",
                machine="isolated",
                activities=("measure",),
                text=(("Measure head, tail, tail, head.",),),
                checks=(
                    Check(
                        text=("Collars as cool as the bar",),
                        instrument="micrometer-large",
                        blanks=(
                            Blank(label="headstock end", unit="mm", count=2),
                            Blank(label="tailstock end", unit="mm", count=2),
                        ),
                    ),
                ),
            ),
            Step(
                id="read.move",
                number="5.2",
                title="Move the tailstock by the table",
                machine="isolated",
                activities=("move-tailstock",),
                who="staff",
                cautions=(
                    caution(
                        "slack-tailstock",
                        "warning",
                        "A slack tailstock drops the bar",
                        "It falls on your feet",
                        "Take the bar out first.",
                    ),
                ),
                text=(
                    ("Loosen the clamp. Move the tailstock by the table.",),
                    ("Clamp it as you always do.",),
                ),
                checks=(
                    Check(
                        text=("Indicator before and after",),
                        blanks=(Blank(label="before", unit="mm"), Blank(label="after", unit="mm")),
                    ),
                ),
                hold=Hold(
                    text=("Tug the tailstock. It must not move.",),
                    releases="lathe keeper",
                    go_back_to="read.move",
                ),
            ),
        ),
    )
