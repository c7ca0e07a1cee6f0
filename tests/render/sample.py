"""A procedure made by hand, as rich as a real one: every kind of node, awkward labels."""

from typing import Literal

from review_sample import review
from tailtrue.parts import Caution, Figure, Setting
from tailtrue.procedure import (
    Alternative,
    Card,
    CardGroup,
    CardLine,
    Choice,
    Cut,
    Drawing,
    Finding,
    LookUp,
    Move,
    Phase,
    Procedure,
    ShortStep,
    Source,
    StartLine,
    StartList,
    TitleBlock,
)
from tailtrue.shop_sheet import Sign

from .sample_making import making
from .sample_pieces import DIFFERENCES, LITERAL_LABEL, bar_length, caution, figure, mm
from .sample_reasons import derivations, needs
from .sample_using import using

MACHINE = "Lathe 2 (the grey one)"
SHOP = "Saltmarsh Workshop"
NUMBER = "SW-L2-014"


def procedure(
    dials: Literal["metric", "inch"] = "metric", paper: Literal["A4", "Letter"] = "A4", machine: str = MACHINE
) -> Procedure:
    """The sample, in the system and on the paper that are asked for."""
    return Procedure(
        title=title(dials, paper, machine),
        lead=(
            "A steel bar between centres carries two aluminium collars. Skim both at one cross-slide setting "
            "and compare them: half their difference, carried over ",
            bar_length(),
            " of bar, is the move of the tailstock.",
        ),
        facts=(
            Setting(label=("Bar",), value=("low-carbon steel, cold drawn, ", mm("bar.diameter", 22, "size"))),
            Setting(label=("Collars",), value=("two of aluminium 6082, ", mm("collar.diameter", 60, "size"))),
            Setting(
                label=("Cross-slide dial",),
                value=(mm("lathe.dial_division", 0.05, "depth"), " a division"),
                reason=("reads diameter",),
            ),
            Setting(
                label=("Top speed used",),
                value=(figure("job.top_speed", 1250, "1/min", "speed", "most"),),
                reason=("the chuck is marked for more",),
            ),
        ),
        drawing=drawing(),
        who_may=(("Anyone signed off on this lathe.",), ("Steps marked staff only: the lathe keeper.",)),
        do_not_start=(
            ("the chuck guard or the stop button does not work",),
            ("nobody within call knows that you are here",),
            (
                "the bar rocks on a flat plate by more than ",
                mm("bar.straightness", 0.1, "depth", "most"),
            ),
        ),
        stop_at_once=(
            ("the centre smokes, squeals or goes loose",),
            ("anything moves in the chuck or on the centres",),
            ("you need to reach across turning work",),
            ("three rounds bring no improvement",),
        ),
        if_it_goes_wrong=(
            (
                "The two readings of one collar differ",
                ("wipe it, wait ", figure("cool.time", 900, "s", "time", "least"), ", read again"),
                ("take the mean of the two",),
            ),
            (
                "The tailstock collar is larger after every move",
                ("sharpen the tool, take a second pass at the same setting",),
                ("move further",),
            ),
            (
                "The result changes when the clamp is set",
                ("clamp as always, four times, and read each time",),
                ("leave the clamp slack",),
            ),
        ),
        conventions=(
            ("Headstock at your left, tailstock at your right, you on the operator side.",),
            ("A box is ticked after the step is done. Interrupted: go back one step.",),
            ("Depth is given by the dial: this one reads diameter.",),
        ),
        job_cautions=job_cautions(),
        needs=needs(),
        cut_list=(
            Cut(
                piece=LITERAL_LABEL,
                count=1,
                material="low-carbon steel, cold drawn",
                size=(mm("bar.diameter", 22, "size"), " round"),
                saw_to=(mm("bar.saw_length", 384, "length"),),
            ),
            Cut(
                piece="collars 1 and 2",
                count=2,
                material="aluminium 6082",
                size=(mm("collar.diameter", 60, "size"), " round"),
                saw_to=(mm("collar.saw_length", 33, "length"),),
            ),
        ),
        phases=(*making(), *using()),
        signs=(Sign(code="W024", words="hands are crushed", shape="triangle"),),
        look_up=LookUp(
            rows=tuple(
                Move(
                    difference=mm("align.table", value, "difference"),
                    move=None if value < 0.006 else mm("align.table", value * 0.7308, "difference"),
                )
                for value in DIFFERENCES[dials]
            ),
            larger_at_tailstock="toward you, the tool side",
            smaller_at_tailstock="away from you, the far side",
            inside=mm("align.inside", 0.0125, "difference", "most"),
            leave=mm("align.uncertainty", 0.00482, "difference", "least"),
            verdict_possible=True,
        ),
        safety_review=review((*making(), *using()), job_cautions(), needs()),
        card=card((*making(), *using())),
        care=(("Oil the bar and hang it by its end.",), ("Touch up the centre holes before each use.",)),
        findings=(
            Finding(
                level="attention",
                text=(
                    "The micrometer's step of ",
                    mm("mike.resolution", 0.01, "fit"),
                    " is coarse for this limit.",
                ),
                sources=("gum:7",),
            ),
            Finding(level="note", text=("No reamer near this size: the collars are bored.",)),
        ),
        choices=(
            Choice(
                id="joint.method",
                question="How are the collars held on the bar?",
                chosen="bonded",
                alternatives=(
                    Alternative(
                        name="bond",
                        verdict="chosen",
                        reason="safe by a factor of 28",
                        why="a thin film needs no press",
                        sources=("common-practice",),
                    ),
                    Alternative(
                        name="press",
                        verdict="no",
                        reason="the shop has no press",
                        why="driven on, they mark the bar",
                        sources=("common-practice",),
                    ),
                    Alternative(
                        name="set screw",
                        verdict="fits",
                        reason="safe by a factor of 3",
                        why="pushes the collar aside",
                        sources=("common-practice",),
                    ),
                    Alternative(
                        name="shrink",
                        verdict="unknown",
                        reason="nobody said whether there is an oven",
                        why="needs heat",
                        sources=("common-practice",),
                    ),
                ),
            ),
        ),
        derivations=derivations(),
        sources=(
            Source(
                id="lathe-safety-guide",
                kind="regulation",
                title="Safe use of centre lathes",
                edition="2nd",
                status="read",
            ),
            Source(
                id="gum",
                kind="standard",
                title="Guide to the expression of uncertainty",
                edition="2008",
                status="cited",
            ),
            Source(id="common-practice", kind="open", title="What the trade does", status="open"),
            Source(id="memory", kind="open", title="Not confirmed yet", status="open"),
        ),
    )


def job_cautions() -> tuple[Caution, ...]:
    """The cautions for the whole job."""
    return (
        caution(
            "entanglement",
            "danger",
            "Turning work and chuck catch sleeves, hair and gloves",
            "It can pull your arm in before you can let go",
            "No gloves, no loose sleeves, hair tied back.",
            "Stop the spindle before a hand goes in.",
            sources=("lathe-safety-guide:4", "common-practice"),
        ),
        caution(
            "chips",
            "warning",
            "Chips fly and are sharp",
            "They cut hands and blind eyes",
            "Clear chips with a brush, spindle stopped.",
            wear=("safety glasses with side shields",),
        ),
        caution(
            "lift",
            "caution",
            "The chuck is heavy",
            "It crushes fingers against the bed",
            "Use the cradle.",
            shown_because="the mass of the chuck was not given",
        ),
        caution(
            "swarf-in-taper",
            "notice",
            "A chip in the taper",
            "The bar runs out of true",
            "Wipe both tapers.",
        ),
    )


def card(phases: tuple[Phase, ...]) -> Card:
    """A card with every number that is set, a group for each phase."""
    groups = (
        CardGroup(
            title=phase.title,
            lines=tuple(
                CardLine(label=setting.label, value=setting.value[0], step=step.number)
                for step in phase.steps
                for setting in step.settings
                if len(setting.value) == 1 and isinstance(setting.value[0], Figure)
            ),
        )
        for phase in phases
    )
    notes = (Setting(label=("The dial reads diameter",), value=(mm("lathe.dial_division", 0.05, "depth"), " a division.")),)
    start = StartList(
        title="Before each start",
        lines=(StartLine(item="key", state="out"), StartLine(item="speed", state="as told", unit="1/min")),
        ends_with="List complete",
    )
    return Card(
        messages=_messages(phases),
        start=start,
        notes=notes,
        groups=tuple(group for group in groups if group.lines),
        steps_title="Do, then tick",
        steps=tuple(_short(phase) for phase in phases),
        list_first="call the list first",
        interrupted="Called away? Stop the spindle. Go back one line.",
        ends_with="List complete",
        emergency="Press the stop. Isolate the lathe. Then help. Call",
        pointer="It does not stand in for the sheet.",
    )


def _short(phase: Phase) -> ShortStep:
    starts = any(step.machine == "turning" for step in phase.steps)
    return ShortStep(step=phase.steps[0].number, last=phase.steps[-1].number, text="Do this.", starts=starts)


def _messages(phases: tuple[Phase, ...]) -> tuple[str, ...]:
    every = [one for phase in phases for one in (*phase.cautions, *(told for step in phase.steps for told in step.cautions))]
    return tuple(dict.fromkeys(one.id for one in every if one.signal == "danger"))


def title(dials: Literal["metric", "inch"], paper: Literal["A4", "Letter"], machine: str) -> TitleBlock:
    """The identity of the sample."""
    return TitleBlock(
        title="Make and use a line-up bar",
        shop=SHOP,
        machine=machine,
        machine_detail=(
            mm("lathe.swing", 280, "length"),
            " swing, ",
            mm("lathe.between_centres", 600, "length"),
            " between centres, tool at the front",
        ),
        number=NUMBER,
        revision="3",
        date="2026-11-25",
        author="workshop staff",
        approver="",
        review_due="2027-11-25",
        paper=paper,
        knowledge_version="0.4.0",
        checksum="7c1e-93af",
        dials=dials,
        valid_for="this lathe, this bar and these tools only; void if any of them changes",
    )


def drawing() -> Drawing:
    """The drawing of the sample's bar."""
    return Drawing(
        id="bar",
        kind="bar",
        place="front",
        title="The line-up bar",
        caption="Both collars sit the same distance from their end, so the bar can be turned round.",
        dimensions={
            "bar.length": bar_length(),
            "bar.diameter": mm("bar.diameter", 22, "size"),
            "collar.diameter": mm("collar.diameter", 60, "size"),
            "collar.width": mm("collar.width", 30, "length"),
            "collar.station": mm("collar.station", 60, "length"),
            "collar.spacing": mm("collar.spacing", 260, "length"),
            "centre_hole.cone_diameter": mm("centre_hole.cone_diameter", 6.7, "size"),
        },
        labels={
            "centre_hole": "centre hole A 3.15, both ends",
            "bar_note": "cold drawn, as measured",
            "collar_note": "two collars, bonded, edges broken",
            "headstock_end": "headstock end",
            "tailstock_end": "tailstock end",
        },
    )
