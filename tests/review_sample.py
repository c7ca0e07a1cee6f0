"""A safety review made by hand for the samples, rated by plain counting and by nothing of the engine."""

from tailtrue.parts import Blank, Caution
from tailtrue.procedure import Need, Phase
from tailtrue.review import (
    CheckLine,
    CheckList,
    Chemical,
    Control,
    Elimination,
    Held,
    Matrix,
    NearMissLine,
    Rating,
    ReviewedHazard,
    ReviewLine,
    RiskClass,
    SafetyReview,
    Signature,
    WearState,
    WorkPart,
)

_BANDS = ("low", "moderate", "high", "extreme")
_ENDS = (4, 9, 16, 25)
_KILLERS = ("stop", "no-volt", "covers", "tailstock", "chuck-mark", "key", "rear", "turn-by-hand", "body")
_KILLERS_AT_REST = ("dead", "covers", "tailstock", "key", "rear", "body")


def rating(severity: int, likelihood: int) -> Rating:
    """A rating, its class read off the ends of the classes."""
    score = severity * likelihood
    band = _BANDS[sum(1 for end in _ENDS if score > end)]
    return Rating(
        severity=severity, likelihood=likelihood, score=score, band="moderate" if severity == 5 and band == "low" else band
    )


def review(phases: tuple[Phase, ...], job_cautions: tuple[Caution, ...], needs: tuple[Need, ...] = ()) -> SafetyReview:
    """A review in which every activity of the steps is a part of its own."""
    steps = [step for phase in phases for step in phase.steps]
    killers = _KILLERS_AT_REST if all(step.machine == "isolated" for step in steps) else _KILLERS
    activities = dict.fromkeys(activity for step in steps for activity in step.activities)
    work = tuple(
        WorkPart(
            id=f"W{place}",
            title=activity.replace("-", " "),
            activities=(activity,),
            used_at=tuple(step.number for step in steps if activity in step.activities),
            machine=tuple(dict.fromkeys(step.machine for step in steps if activity in step.activities)),
        )
        for place, activity in enumerate(activities, start=1)
    )
    shown: dict[str, Caution] = {}
    for caution in (
        *job_cautions,
        *(one for phase in phases for one in phase.cautions),
        *(one for step in steps for one in step.cautions),
    ):
        shown.setdefault(caution.id, caution)
    hazards = tuple(_hazard(place, caution, work) for place, caution in enumerate(shown.values(), start=1))
    live = tuple(step.number for step in steps if step.machine != "isolated")
    still = tuple(step.number for step in steps if step.machine == "isolated")
    return SafetyReview(
        title="Safety review before the job",
        lead=(("Filled in at the lathe.",),),
        head=tuple(_line(name) for name in ("review-date", "analyst", "operator", "reviewer", "valid-until")),
        work=work,
        usual_person="the operator",
        hazards=hazards,
        matrix=_matrix(),
        people=(_line("fit-for-work"),),
        alone=(_line("within-call"),),
        wear=tuple(
            state
            for state in (
                WearState(
                    id="isolated", title="Isolated", used_at=still, spindle_can_turn=False,
                    wear=(("safety glasses",), ("cut-resistant gloves allowed",)),
                    never=(("Take gloves off before power comes back.",),),
                ),
                WearState(
                    id="live", title="Power on", used_at=live, spindle_can_turn=True, wear=(("safety glasses",),),
                    never=(("No gloves of any kind.",),),
                ),
            )
            if state.used_at
        ),
        checks=(
            CheckList(title="Lathe isolated", lines=tuple(_check(name) for name in killers), ends_with="List complete"),
        ),
        isolation=tuple(_line(name) for name in ("isolate-how", "isolate-keeper", "isolate-prove")),
        chemicals=tuple(
            Chemical(need=need.id, name=need.name, used_at=need.used_at, blanks=(Blank(label="data sheet dated"),))
            for need in needs
            if need.id in ("compound", "degreaser", "activator")
        ),
        emergency=tuple(
            _line(name) for name in ("phone", "address", "first-aid-kit", "eyewash", "extinguisher", "way-out")
        ),
        near_misses=(
            NearMissLine(
                id="bar-too-long", title="Bar longer than the lathe takes", short_by="a little",
                what_happens="no sheet would be printed", sources=("common-practice",),
            ),
        ),
        eliminations=(
            Elimination(
                id="no-polishing", hazard="abrasive cloth", way="skim only", verdict="taken",
                because=("no step polishes",), sources=("common-practice",),
            ),
            Elimination(
                id="no-solvent", hazard="flammable cleaner", way="water-based cleaner", verdict="declined",
                because=("the bottle names its cleaner",), sources=("common-practice",),
            ),
        ),
        accepts=Signature(id="accepts", role="person in charge", text=("I accept what stays high.",)),
        signatures=(
            Signature(id="operator", role="operator", text=("I have read this.",)),
            Signature(id="reviewer", role="reviewer", text=("I have found nothing left out.",)),
        ),
        sources=("common-practice",),
    )  # fmt: skip


def _line(name: str) -> ReviewLine:
    return ReviewLine(id=name, text=(name.replace("-", " "),), blanks=(Blank(label="written here"),), must=True)


def _check(name: str) -> CheckLine:
    return CheckLine(
        id=name, item=(name.replace("-", " "),), passes=("as it must be",), otherwise=("Do not start.",),
        blanks=(Blank(label="seen"),), killer=True, not_applicable=False,
    )  # fmt: skip


def _hazard(place: int, caution: Caution, work: tuple[WorkPart, ...]) -> ReviewedHazard:
    """One hazard with a guard that is there and an instruction: two steps down, one at the least."""
    before = rating(caution.severity, caution.likelihood)
    after = rating(caution.severity, max(1, caution.likelihood - 2))
    return ReviewedHazard(
        number=f"H{place}",
        caution=caution.id,
        signal=caution.signal,
        hazard=caution.hazard,
        shop_rule=caution.shop_rule,
        harm=caution.harm,
        who="the operator",
        # A sample may warn of what no step does; the review still lists it somewhere.
        parts=tuple(part.id for part in work if set(part.activities) & set(caution.answers)) or (work[0].id,),
        before=before,
        controls=(
            Control(level="guard", text="guard shut", state="counted"),
            Control(level="instruct", text="stand aside", state="counted"),
        ),
        after=after,
        held=Held(by="control") if after.band == "high" else None,
    )


def _matrix() -> Matrix:
    scale = range(1, 6)
    lows = (1, 5, 10, 17)
    return Matrix(
        severities=tuple((f"severity {word}",) for word in ("one", "two", "three", "four", "five")),
        likelihoods=tuple((f"likelihood {word}",) for word in ("one", "two", "three", "four", "five")),
        cells=tuple(tuple(rating(severity, likelihood).band for severity in scale) for likelihood in scale),
        classes=tuple(
            RiskClass(band=band, low=low, high=high, action=("work so",))
            for band, low, high in zip(_BANDS, lows, _ENDS, strict=True)
        ),
        lowers={"eliminate": 2, "substitute": 1, "guard": 1, "instruct": 1, "protect": 1},
        weak_from_severity=4,
        weak_least_likelihood=2,
        rules=(("The score is severity times likelihood.",),),
        sources=("common-practice",),
    )
