"""A small procedure that passes inspection, and the shop that it is for."""

from collections.abc import Iterator
from functools import cache

from review_sample import review
from tailtrue.inspection import Shop, SpeedCap
from tailtrue.inspection.shop import Bond
from tailtrue.parts import Figure, Setting, Term
from tailtrue.procedure import (
    Alternative,
    Card,
    CardGroup,
    CardLine,
    Choice,
    Cut,
    Derivation,
    Drawing,
    Finding,
    LookUp,
    Move,
    Need,
    Phase,
    Procedure,
    ShortStep,
    Source,
    StartLine,
    StartList,
    TitleBlock,
)
from tailtrue.shop_sheet import LimitRow

from .sample_drawings import SCREWS, SETTINGS, SPEEDS, drawings
from .sample_making import making
from .sample_pieces import OPEN, caution, figure, mm, written_for_each
from .sample_record import record
from .sample_sop import sop_of
from .sample_time import plan, timed
from .sample_using import using

MACHINE = "Lathe 2, the grey one"
SPAN, SPACING = 376.0, 260.0
JOB_CAUTIONS = (
    caution("gloves", "danger", "turning", "drill", "bore", "skim", "spindle-start"),
    caution("chips", "caution", "turning", "bore"),
)
GLOSSARY = (
    Term(id="bore", term="bore", seen_as="bore", meaning=("A hole made to size.",), sources=("common-practice",)),
    Term(id="collar", term="collar", seen_as="collars", meaning=("A ring on the bar.",), sources=("common-practice",)),
)
_MOST_LINES = 15
_USED_UP = {"compound"}
_WEAR = {"nitrile-gloves"}
_INSTRUMENTS = {"micrometer-bar", "micrometer-collars", "bore-gauge", "indicator"}

_STILL, _LIVE, _OFF = frozenset({"isolated", "stopped"}), frozenset({"stopped", "turning"}), frozenset({"isolated"})
STATES = {
    **dict.fromkeys(
        ("clear-chips", "gauge-bore", "grip-in-chuck", "measure", "measure-bar", "mount-between-centres"), _STILL
    ),
    **dict.fromkeys(("bar-through-spindle", "bond", "cure-wait", "grip-on-band", "move-tailstock", "re-clamp"), _OFF),
    **dict.fromkeys(
        ("verify-tailstock", "saw-stock", "joint-check", "inspect-bar", "set-back", "press", "drill-press"), _OFF
    ),
    **dict.fromkeys(("drill", "turning", "skim", "facing"), frozenset({"turning"})),
    **dict.fromkeys(("bore", "spindle-start", "start-check"), _LIVE),
    **dict.fromkeys(("grip-uneven", "free-end", "set-over", "pin", "heat-part", "set-screw"), _STILL | _LIVE),
}


@cache
def shop() -> Shop:
    """Givens of the sample: a geared lathe of an invented workshop."""
    return Shop(
        machine_name=MACHINE,
        operator="trained",
        dials="metric",
        tool_side="front",
        dial_reads="radius",
        dial_division_mm=0.05,
        between_centres_mm=600.0,
        swing_over_cross_slide_mm=150.0,
        speed_caps=(
            SpeedCap("the top of the lathe", 2000.0),
            SpeedCap("chuck", 1800.0, ("bar-ends", "collars")),
            SpeedCap("work between centres", 600.0, ("test",)),
        ),
        drills=frozenset({10.0, 20.0}),
        tool_ids_in_shop=frozenset(need.id for need in procedure().needs),
        instruments={
            "micrometer-bar": (0.0, 25.0, 0.01),
            "micrometer-collars": (50.0, 75.0, 0.01),
            "bore-gauge": (12.0, 32.0, 0.01),
        },
        feeds=(0.05, 0.1, 0.2),
        speeds=SPEEDS,
        speed_settings=SETTINGS,
        set_over="two-screws",
        screws=SCREWS,
        must_say={"gauge-bore": frozenset({"finger-in-bore"}), "skim": frozenset({"gloves", "abrasive-cloth"})},
        states=STATES,
        messages_at_step=3,
        messages_at_phase=3,
        messages_up_front=10,
        at_back=frozenset({"chips"}),
        labels=("Workshop bench 4 in the corner", "SW-L2-014"),
        measured={"head": (22.0, 21.998)},
        fit_mm=(0.01, 0.15),
        bond=Bond(mpa=2.0, gaps=((0.05, 1.0), (0.15, 0.7)), wait_s=86400.0),
        indicator_division_mm=0.01,
    )


@cache
def procedure() -> Procedure:
    """A procedure that every rule passes."""
    bare = _without_lists()
    used: dict[str, list[str]] = {}
    for phase in bare.phases:
        for step in phase.steps:
            for tool in step.tools:
                used.setdefault(tool, []).append(step.number)
    needs = tuple(_need(name, tuple(at)) for name, at in used.items())
    whole = bare.model_copy(update={"needs": needs, "safety_review": review(bare.phases, bare.job_cautions, needs)})
    whole = whole.model_copy(update={"sop": sop_of(whole), "glossary": GLOSSARY})
    facts = dict.fromkeys((*(one.fact for one in _figures(whole)), _ACCOUNTED))
    return whole.model_copy(update={"derivations": tuple(_derivation(fact) for fact in facts)})


def card_of(phases: tuple[Phase, ...]) -> Card:
    """A card with every number that a step sets, a group for each phase."""
    groups = (
        CardGroup(
            title=phase.title,
            lines=tuple(
                CardLine(label=setting.label, value=piece, step=step.number)
                for step in phase.steps
                for setting in step.settings
                for piece in setting.value
                if isinstance(piece, Figure)
            ),
        )
        for phase in phases
    )
    note = Setting(label=("After the skim",), value=("once more over both.",))
    return Card(
        start=StartList(
            title="Before each start",
            lines=(
                StartLine(item="key", state="out"),
                StartLine(item="gloves", state="off"),
                StartLine(item="sleeves, hair", state="close"),
                StartLine(item="guard", state="shut"),
                StartLine(item="clamps", state="tight"),
                StartLine(item="behind the spindle", state="nothing out"),
                StartLine(item="speed", state="as on the plate", unit="1/min"),
                StartLine(item="turn by hand", state="free"),
            ),
            ends_with="List complete",
        ),
        messages=_dangers(phases),
        notes=(note,),
        groups=tuple(group for group in groups if group.lines),
        steps_title="Do, then tick",
        steps=tuple(_short(phase) for phase in phases[:_MOST_LINES] if phase.steps),
        list_first="call the list first",
        interrupted="Called away? Stop the spindle. Go back one line.",
        ends_with="List complete",
        emergency="Press the stop. Isolate the lathe. Call",
        pointer="It does not stand in for the sheet.",
    )


def _dangers(phases: tuple[Phase, ...]) -> tuple[str, ...]:
    every = [*JOB_CAUTIONS]
    for phase in phases:
        every += [*phase.cautions, *(one for step in phase.steps for one in step.cautions)]
    return tuple(dict.fromkeys(one.id for one in every if one.signal == "danger"))[:3]


def _short(phase: Phase) -> ShortStep:
    starts = any(step.machine == "turning" for step in phase.steps)
    return ShortStep(
        step=phase.steps[0].number, last=phase.steps[-1].number, text="Do the work of this phase.", starts=starts
    )


def _need(name: str, used_at: tuple[str, ...]) -> Need:
    words = (name.replace("-", " "),)
    if name in _USED_UP:
        amount = (figure(f"consume.{name}", 1.0, "ml", "ratio"),)
        return Need(id=name, kind="consumable", name=words, amount=amount, in_shop=True, used_at=used_at)
    if name in _WEAR:
        return Need(id=name, kind="wear", name=words, in_shop=True, used_at=used_at)
    kind = "instrument" if name in _INSTRUMENTS else "tool"
    return Need(id=name, kind=kind, name=words, in_shop=True, used_at=used_at)


def _figures(part: object) -> Iterator[Figure]:
    if isinstance(part, Figure):
        yield part
    elif isinstance(part, tuple | list):
        for value in part:
            yield from _figures(value)
    elif isinstance(part, dict):
        yield from _figures(tuple(part.values()))
    elif hasattr(part, "__dict__"):
        yield from _figures(tuple(vars(part).values()))


# What an account gives goes by a name of its own: nothing that a sheet lacks is found in its accounts.
_ACCOUNTED = "account.of"


def _derivation(fact: str) -> Derivation:
    return Derivation(
        fact=fact,
        label=fact.replace(".", " "),
        value=(figure(_ACCOUNTED, 1.0, "1", "ratio"),),
        how="from the table",
        sources=("common-practice",),
        weakest="common-practice",
    )


def _without_lists() -> Procedure:
    phases = written_for_each(timed((*making(), *using())))
    return Procedure(
        title=TitleBlock(
            title="Make and use a line-up bar",
            shop="Saltmarsh Workshop",
            machine=MACHINE,
            machine_detail=("Workshop bench 4 in the corner",),
            number="SW-L2-014",
            revision="3",
            date="2026-11-25",
            author="workshop staff",
            use_level="read and tick each line",
            operator="trained",
            approver="",
            walked_through="workshop staff, 2026-11-24",
            review_due="2027-11-25",
            paper="A4",
            knowledge_version="0.4.0",
            checksum="7c1e-93af",
            generator="tailtrue",
            inputs="5c0b-cbe1",
            dials="metric",
            valid_for="this lathe only",
        ),
        lead=(
            "A bar of ",
            mm("bar.length", 380.0),
            " with two collars.",
        ),
        facts=(Setting(label=("Dial",), value=(mm("lathe.dial_division", 0.05, "depth"), " a division, reads radius")),),
        drawing=_drawing(),
        drawings=drawings(),
        who_may=(("Anyone signed off on this lathe.",),),
        do_not_start=(("The stop fails its check.",), ("The safety review, SW-L2-014, is not signed.",)),
        stop_at_once=(("New noise. Press the stop.",),),
        after_a_stop=(
            ("Press the stop. Wait until the spindle stands still. Isolate the lathe.",),
            ("Wind the tool clear. Clear hands and keys. Put the start lever in neutral.",),
            ("Bring power back. Make the start check again.",),
            ("Begin again one line earlier. Begin a stopped cut from its start.",),
        ),
        in_emergency=(
            ("Press the stop and isolate. Call. Give first aid.",),
            ("Put out a small fire. Otherwise leave.",),
        ),
        if_it_goes_wrong=(("The tool digs in", ("Press the stop.",), ("Reach in.",)),),
        limits=(
            LimitRow(
                label="Speed with this chuck",
                limit=(figure("chuck.speed_limit", 1800.0, "1/min", "speed", "most"),),
                beyond=("A jaw is thrown.",),
                back=("Press the stop.",),
                sources=("common-practice",),
            ),
        ),
        conventions=(
            ("Depth is per side. This cross-slide dial reads radius.",),
            ("IF a condition is not met, THEN go on with the next line.",),
        ),
        job_cautions=JOB_CAUTIONS,
        needs=(),
        cut_list=(
            Cut(
                piece="bar",
                count=1,
                material="steel",
                size=(mm("bar.diameter", 22.0),),
                saw_to=(mm("bar.saw", 384.0),),
                buy=mm("bar.buy_length", 386.0),
                mass_to_buy=figure("bar.buy_mass", 1.152, "kg", "mass"),
                mass_finished=figure("bar.finished_mass", 1.134, "kg", "mass"),
            ),
        ),
        phases=phases,
        time=plan(phases),
        look_up=_look_up(),
        safety_review=review(phases, JOB_CAUTIONS),
        card=card_of(phases),
        record=record(),
        care=(("Oil the bar.",),),
        findings=(Finding(level="note", text=("None of the drills is a reamer.",), sources=("gum:7",)),),
        choices=(
            Choice(
                id="joint.method",
                question="How are the collars held?",
                chosen="bonded",
                alternatives=(
                    Alternative(name="bond", verdict="chosen", reason="it fits", why="a film needs no press", sources=OPEN),
                ),
            ),
        ),
        derivations=(),
        sources=(
            Source(id="lathe-guide", kind="regulation", title="Safe use of centre lathes", status="read"),
            Source(id="gum", kind="standard", title="Guide to uncertainty", edition="2008", status="read"),
            Source(id="common-practice", kind="open", title="What the trade does", status="open"),
        ),
    )


def _drawing() -> Drawing:
    sizes = {
        "bar.length": 380.0,
        "bar.diameter": 22.0,
        "collar.diameter": 60.0,
        "collar.width": 30.0,
        "collar.station": 60.0,
        "collar.spacing": SPACING,
        "centres.span": SPAN,
    }
    return Drawing(
        id="bar",
        kind="bar",
        place="front",
        title="The bar",
        caption="Both collars sit alike.",
        dimensions={name: mm(name, value) for name, value in sizes.items()},
        labels={"bar_note": "bar of steel"},
    )


def _look_up() -> LookUp:
    def row(difference: float, *, leave: bool = False) -> Move:
        move = None if leave else mm("align.table.move", difference / 2 * SPAN / SPACING, "difference")
        return Move(difference=mm("align.table.difference", difference, "difference"), move=move)

    return LookUp(
        rows=(row(0.005, leave=True), row(0.02), row(0.05), row(0.1)),
        larger_at_tailstock="Tailstock end LARGER: move the tailstock toward you.",
        smaller_at_tailstock="Tailstock end SMALLER: move the tailstock away from you.",
        inside=mm("align.inside", 0.02, "difference"),
        outside=mm("align.outside", 0.032, "difference"),
        leave=mm("align.uncertainty", 0.006, "difference"),
        verdict_possible=True,
    )
