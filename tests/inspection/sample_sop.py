"""The standing procedure of the sample, made from whatever stands on the sheet."""

from tailtrue.parts import Caution
from tailtrue.procedure import Procedure
from tailtrue.shop_sheet import (
    Control,
    EmergencyRow,
    Entry,
    Form,
    FormLine,
    GuardRow,
    HazardRow,
    LimitRow,
    Line,
    Reference,
    ShopSheet,
    Sign,
    Signatory,
    UpkeepRow,
    WearRow,
    WhoRow,
    WhoStep,
)

from .sample_pieces import figure, mm

FROM = ("common-practice",)


def line(name: str, text: str) -> Line:
    """A line of a part."""
    return Line(id=name, text=(text,), sources=FROM)


def sop_of(sheet: Procedure) -> ShopSheet:
    """A draft that every rule passes with this sheet."""
    title = sheet.title
    return ShopSheet(
        made_unasked=True,
        shop_rules=sheet.shop_rules,
        control=Control(
            id=f"SOP {title.number}",
            title="Use the bar",
            type="standing procedure",
            revision=title.revision,
            status="draft",
            issued=title.date,
            review_due="2027-11-25",
            review_because="the longest interval",
            overdue=False,
            language="English",
            use_level="continuous",
            valid_for=title.valid_for,
            generator=title.generator,
            rules=title.knowledge_version,
            inputs=title.inputs,
            entries=(
                Entry(label="Machine", value=("Workshop bench 4 in the corner",)), Entry(label="Kept at"),
                Entry(label="Number of the machine"), Entry(label="Takes the place of"), Entry(label="Last reviewed: by, on"),
                Entry(label="Newest copy: where"),
            ),
            signatories=(Signatory(role="Author", name="workshop staff"), Signatory(role="Approval")),
        ),
        photo=(f"Photo of {title.machine}.",),
        first=(line("who", "Use it only if you were instructed on it and permitted by the lathe steward."),),
        banners=(line("draft", "Draft. Nobody works from it."),),
        scope=(line("scope", "One bar on one lathe."),),
        who=tuple(
            WhoRow(
                phase=phase.number,
                title=phase.title,
                **{
                    who: tuple(WhoStep(number=step.number, title=step.title) for step in phase.steps if step.who == who)
                    for who in ("any", "supervised", "staff")
                },
            )
            for phase in sheet.phases
        ),
        training=(line("shown", "Be shown the work."),),
        supervision=(line("learner", "A learner works with a trainer."),),
        local=(
            Entry(label="Emergency number"), Entry(label="Reserve and sign in: where"), Entry(label="Prior approval"),
            Entry(label="Reports go to"),
        ),
        hazards=tuple(
            HazardRow(
                caution=one.id, signal=one.signal, signs=("P028",), hazard=one.hazard, harm=one.harm, avoid=one.avoid[0],
                shop_rule=one.shop_rule,
            )
            for one in _dangers(sheet)
        ),
        hazard_note=(line("note", "Not every hazard is covered here."),),
        signs=(Sign(code="P028", words="no gloves", shape="crossed-ring"),),
        wear=(
            WearRow(
                state="Isolated", machine="isolated", required=(("Gloves where it is sharp.",),),
                forbidden=(("Gloves kept on.",),), sources=FROM,
            ),
            WearRow(
                state="Turning", machine="turning", required=(("Safety glasses.",),),
                forbidden=(("Gloves of any kind.",),), never_signs=("P028",), sources=FROM,
            ),
        ),
        guards=(GuardRow(name="Guard", state=("present",), means=("Shut it.",), sources=FROM),),
        before=(line("key", "Take the chuck key out."),),
        during=(line("guard", "Shut the guard before every start."),),
        after=(line("off", "Switch off."),),
        forbidden=(line("abrasive", "Never hold abrasive cloth to turning work by hand."),),
        limits=(
            LimitRow(
                label="Speed with this chuck", limit=(figure("chuck.speed_limit", 1800.0, "1/min", "speed", "most"),),
                beyond=("A jaw is thrown.",), back=("Press the stop.",), sources=FROM,
            ),
            LimitRow(
                label="Diameter", limit=(mm("lathe.swing_over_slide", 150.0),),
                beyond=("The work strikes the slide.",), back=("Take smaller stock.",), sources=FROM,
            ),
        ),
        upkeep=(UpkeepRow(every="week", task=("Oil the ways.",), who="user", sources=FROM),),
        isolation=(line("plug", "Pull the plug."),),
        emergency=(EmergencyRow(seen="Somebody is caught", do=("Press the stop.",), never=("Pull.",), sources=FROM),),
        waste=(line("chips", "Keep steel apart."),),
        records=(line("keep", "Keep the roster."),),
        acknowledgement=(line("read", "I have read it."),),
        roster_rows=15,
        forms=(
            Form(id="tag", title="Tag", lead=("OUT OF USE.",), places=(FormLine(label="Hung by"),)),
            Form(
                id="comments", title="Comments", lead=("What does not fit.",),
                places=(FormLine(label="What", high=True), FormLine(label="Give back to")),
            ),
        ),
        references=(Reference(source="lathe-guide", title="Safe use of centre lathes", edition="", idea="gloves"),),
    )  # fmt: skip


def _dangers(sheet: Procedure) -> tuple[Caution, ...]:
    every = [*sheet.job_cautions]
    for phase in sheet.phases:
        every += [*phase.cautions, *(caution for step in phase.steps for caution in step.cautions)]
    found = {one.id: one for one in every if one.signal == "danger"}
    return tuple(found.values())
