"""The fixed words of a page: headings, tags, states. The same for every format."""

from collections.abc import Iterable
from types import MappingProxyType
from typing import Final, Protocol

from tailtrue.parts import Dials, Figure, Text
from tailtrue.procedure import GoesOn, HandSet, LookUp, Phase, Void
from tailtrue.render.numbers import BY_HAND as MARK
from tailtrue.render.numbers import show
from tailtrue.render.pairs import pieces

HEADINGS: Final = MappingProxyType(
    {
        "facts": "This job",
        "findings": "Take note",
        "shop_rules": "Rules of this shop",
        "set_by_hand": f"Numbers set by hand ({MARK})",
        "who_may": "Who may do this",
        "do_not_start": "Do not start if",
        "stop_at_once": "Stop at once if",
        "after_a_stop": "After a stop",
        "emergency": "In an emergency",
        "job_cautions": "Cautions for the whole job",
        "also_read": "Also read: true at any lathe, all the time",
        "signs": "Signs on this sheet",
        "needs": "What you need",
        "cut_list": "Cut list",
        "time": "How long it takes",
        "conventions": "How to read the steps",
        "phases": "The work",
        "look_up": "Difference read, and the move",
        "look_up_fixed": "Difference read, and how far off",
        "limits": "Limits, and the way back",
        "trouble": "If it goes wrong",
        "care": "Care of the bar",
        "glossary": "Words of the trade",
        "choices": "What was chosen, and why",
        "derivations": "How each number came about",
        "cautions": "Where the cautions come from",
        "sources": "Sources",
        "control": "Document control",
    }
)

# Marks behind a number that no published source confirms and a source that was not read: shorter than a word.
UNCONFIRMED: Final = "[?]"
UNCONFIRMED_MEANS: Final = "[?] stands behind a number that no published source confirms."
READ: Final = "read"
# Most of those words are one, and cost lines.
CITED, CITED_MARK = "cited", "*"
STATUS_MEANS: Final = f"The text of a source was read, unless a word stands behind it; {CITED_MARK} is {CITED}."
IN_THEIR_ORDER: Final = "By the place where they stand in full, one after the other as they stand there."
LIMITS: Final = ("Limit", "What happens beyond it", "The way back")
MADE_BY: Final = "Made by"
CHANGED: Final = "Changed"
CHANGED_BLANK: Final = "Changed, and why"
WALKED: Final = "Walked through at the lathe, the usual way and one fault, before approval: by, on"
WALKED_BY_OWNER: Final = "Walked through at the lathe by its owner, the usual way and one fault, before approval: by, on"
APPROVED: Final = "Approved by"
APPROVED_BY_OWNER: Final = "Approved by owner"
STATUS: Final = "Status"
CHECKSUM: Final = "Checksum"
WEAR: Final = "Wear all the time:"
USE: Final = "Use"
OPERATOR: Final = "Operator"
TECHNICAL_REVIEW: Final = "Technical review"
SAFETY_REVIEW: Final = "Safety review"
REVIEW_DUE: Final = "Review due"
OVERDUE: Final = "REVIEW OVERDUE. Do not work from this paper before it is reviewed."

TABLET: Final = MappingProxyType(
    {
        "mode": "One step at a time",
        "clear": "Clear boxes and readings",
        "kept": "Boxes ticked and readings typed are kept on this device, for this sheet alone. They are never printed.",
        "not_kept": "Nothing is kept: this browser does not allow it. What is typed is lost when the page is closed.",
        "where": "Where you are",
        "progress": "how far the sheet is turned",
        "whole": "Whole sheet",
        "stops": "Stops and dangers",
        "table": "Table of moves",
        "turn": "Turn the page",
        "back": "Back",
        "next": "Next",
        "name": "Name of who releases",
        "release": "Released by this name",
        "take_back": "Take the release back",
        "ask": "Clear every box, reading and release of this sheet on this device?",
        "clear_now": "Clear them",
        "stay": "Keep them",
        "before": "Before the work",
        "step": "Step",
        "of": "of",
        "left": "Boxes not ticked before this one:",
        "hold": "HOLD. Type a name and press its button.",
        "no_name": "HOLD. The name is missing.",
        "released": "Released by",
        "inside": "inside the limits",
        "outside": "OUTSIDE the limits",
        "no_number": "not a number",
    }
)

CUTS: Final = MappingProxyType({"buy": "Buy at least", "mass_to_buy": "Weighs", "mass_finished": "Finished"})

TIME: Final = MappingProxyType({"work": "Work", "attended": "Hands on", "waiting": "Wait", "total": "Together"})

STATES: Final = MappingProxyType({"isolated": "lathe isolated", "stopped": "spindle stopped", "turning": "spindle turning"})

WHO: Final = MappingProxyType({"any": "", "supervised": "with a supervisor", "staff": "staff only"})

KINDS: Final = MappingProxyType(
    {
        "tool": "Tools",
        "instrument": "Instruments",
        "stock": "Stock",
        "consumable": "Consumables",
        "wear": "To wear",
    }
)

LEVELS: Final = MappingProxyType({"note": "Note", "attention": "Attention"})

VERDICTS: Final = MappingProxyType({"chosen": "chosen", "fits": "would do", "no": "no", "unknown": "not known"})

WEIGHED: Final = "Weighed:"
CHOICE_HEADS: Final = ("Question", "Chosen, and why", "Other ways")
NUMBER_HEADS: Final = ("Number", "Size", "How it came about")
NEAR_WAYS: Final = (
    "Other ways are told where they would do, are in doubt, or a figure speaks of them. "
    "All of them are in the Markdown copy of this sheet. Without a source it is common practice."
)

ORIGINS: Final = MappingProxyType(
    {
        "published": "published",
        "common-practice": "common practice",
        "memory": "unconfirmed",
        "said": "as you said",
        "decided": "decided here",
    }
)

DIMENSIONS: Final = MappingProxyType(
    {
        "bar.length": "bar length",
        "bar.diameter": "bar diameter",
        "collar.diameter": "collar diameter",
        "collar.width": "collar width",
        "collar.station": "end of the bar to the middle of its collar",
        "collar.spacing": "between the middles of the collars",
        "third.station": "either end of the bar to the middle of collar three",
        "third.apart": "between the middles of neighbouring collars",
        "centre_hole.cone_diameter": "diameter of the centre hole's cone",
        "centre_hole.angle": "angle of that cone",
        "bar.least": "least diameter of the bar as it is bought",
        "bar.largest": "largest diameter of the bar as it is bought",
        "centres.span": "between its seats on the centres",
        "bore_over.least": "bore larger than its seat by at least",
        "bore_over.largest": "bore larger than its seat by at most",
        "bore_a.least": "bore of the collar at end A, at least",
        "bore_a.largest": "bore of the collar at end A, at most",
        "bore_b.least": "bore of the collar at end B, at least",
        "bore_b.largest": "bore of the collar at end B, at most",
        "bore_middle.least": "bore of the middle collar, at least",
        "bore_middle.largest": "bore of the middle collar, at most",
        "rims.alike": "rims of one skim, the tailstock in line, alike within",
    }
)

TO_SCALE: Final = "to scale"
LENGTH_TO_SCALE: Final = "length alone to scale"
ALLOWANCE_NOT_TO_SCALE: Final = "to scale, but what comes off is drawn larger"
DIAMETERS_TO_SCALE: Final = "diameters to scale"
# On the bar: the bores of the collars, or by how much one is larger than its seat; and how far the rims may differ.
BORES: Final = MappingProxyType(
    {"bore_a": "bore A", "bore_b": "bore B", "bore_middle": "bore, middle", "bore_over": "bore over its seat"}
)
RIMS: Final = ("in line: rims", "alike within")
NOT_TO_SCALE: Final = "not to scale"
# ISO practice where sizes are metric, practice of inch countries elsewhere; the view is set right of the bar in both.
PROJECTIONS: Final = MappingProxyType({"metric": "first-angle projection", "inch": "third-angle projection"})
END_VIEWS: Final = MappingProxyType({"metric": "seen from end A", "inch": "seen from end B"})
PLATE: Final = ("Speed", "Lever or belt", "Work of this job")
MISSING: Final = "Fill in before work:"
TROUBLE: Final = ("What you see", "Do", "Do not")
SHOP_RULE: Final = "Shop rule"
SHOP_RULES_MEAN: Final = "This shop added or changed what follows. It answers for it. Limits are only ever drawn tighter."
SHOP_KINDS: Final = MappingProxyType({"add": "added", "tighten": "tighter", "reword": "reworded", "disable": "taken out"})
SHOP_RULES: Final = ("Rule", "What", "Reason", "By")
BY_HAND_MEANS: Final = f"{MARK} behind a number: a person put it in place of the one that was worked out."
SET_AT: Final = "set at"  # before the name of lever or belt, after what runs at that speed
SETTINGS: Final = "Lever or belt at rev/min"
BY_HAND_CARD: Final = f"{MARK} set by hand, see the sheet."
BY_HAND: Final = ("Number", "Set to", "Worked out", "May be", "Reason", "By")
SPEED_OF_IT: Final = "speed"
DIFFER: Final = "Collars differ by"
LEAVE: Final = "leave it"
# On the card: what stands before the limit of a band of differences, and what it asks where the tailstock cannot be moved.
UP_TO: Final = "up to"
BELOW: Final = "below"
IN_LIMITS: Final = "in limits"
NOT_TOLD: Final = "not told"
READ_AGAIN: Final = "read again"
AS_STEP: Final = "As step"
# The reason of a setting, and of a choice, that a step has given.
AS_AT_STEP: Final = "as at step"
AT_STEP: Final = "Reason at step"
GET_IT: Final = "GET IT:"
HERE: Final = "Tick what lies ready, and get the rest before you begin."
# The second column of the look-up table, on the sheet and on the card: where the tailstock moves, and where it cannot.
MOVE_BY: Final = ("Move the tailstock", "move")
OFF_BY: Final = ("Centre off the line", "off by")
LARGER: Final = "Tailstock end LARGER"
SMALLER: Final = "Tailstock end SMALLER"
LARGER_SHORT: Final = "LARGER"
SMALLER_SHORT: Final = "SMALLER"
NO_VERDICT: Final = (
    "The instrument on hand cannot tell whether the tailstock is within its limit. "
    "Use the table to come closer, and claim nothing about the limit."
)
NO_VERDICT_FIXED: Final = (
    "The instrument on hand cannot tell whether the tailstock is within its limit. "
    "Use the table to know about how far it is off, and claim nothing about the limit."
)


def say(text: Text, dials: Dials) -> str:
    """A text as plain words, its figures set in the system of the dials.

    >>> from tailtrue.parts import Figure
    >>> say(("Set ", Figure(fact="skim.speed", value=310.0, unit="1/min", rounding="speed"), "."), "metric")
    'Set 310\\xa0rev/min.'
    """
    return "".join([piece if isinstance(piece, str) else show(piece, dials, finer) for piece, finer in pieces(text)])


def sentence(text: str) -> str:
    """A text that ends as a sentence does.

    >>> sentence("Fresh edges cut"), sentence("Is the key out?")
    ('Fresh edges cut.', 'Is the key out?')
    """
    return text if text.endswith((".", "!", "?")) else f"{text}."


def also_read(number: str, first: str) -> str:
    """Where the hazards stand that the front only names.

    >>> also_read("QR-1", "1.1")
    'Read before step 1.1, in the safety review, QR-1, and again at the back of this sheet, how to avoid:'
    """
    return f"Read before step {first}, in the safety review, {number}, and again at the back of this sheet, how to avoid:"


def place_of(number: str) -> str:
    """A step or a phase by its number.

    >>> place_of("3.4"), place_of("3")
    ('step 3.4', 'phase 3')
    """
    return f"{'step' if '.' in number else 'phase'} {number}"


def full_at(number: str) -> str:
    """Where a caution that comes again stands in full, in short: most of them keep to one line with it.

    >>> full_at("3.4"), full_at("3")
    ('In full: 3.4.', 'In full: phase 3.')
    """
    return f"In full: {number if '.' in number else place_of(number)}."


def dimension(key: str) -> str:
    """What a dimension of the drawing is called.

    >>> dimension("collar.bore_depth")
    'collar bore depth'
    """
    return DIMENSIONS.get(key) or key.replace(".", " ").replace("_", " ")


def may_be(one: HandSet) -> Text:
    """What a number set by hand may be, in words and figures."""
    parts: list[Text] = [(f"{one.safe} only",)] if one.safe else []
    parts += [("at least ", bound) for bound in one.at_least]
    parts += [("at most ", bound) for bound in one.at_most]
    return tuple(piece for place, part in enumerate(parts) for piece in ((", ", *part) if place else part))


def unit_words(dials: Dials) -> str:
    """What the bare numbers of a drawing are in.

    >>> unit_words("inch")
    'sizes in inches'
    """
    return "sizes in mm" if dials == "metric" else "sizes in inches"


def listed(names: Iterable[str]) -> str:
    """Names in a row, the last joined by a word.

    >>> listed(["collar 1", "collar 2", "collar 3"])
    'collar 1, collar 2 and collar 3'
    """
    *first, last = tuple(names) or ("",)
    return f"{', '.join(first)} and {last}" if first else last


def when_to_leave(look_up: LookUp) -> tuple[Text, ...]:
    """The sentences under the look-up table: when it is good, and when to leave it."""
    sentences: list[Text] = []
    moves = look_up.can_move
    if look_up.inside is not None:
        sentences.append(("In limits at ", look_up.inside, " or less: leave it alone." if moves else " or less."))
        if look_up.outside is not None:
            sentences.append(("From there to below ", look_up.outside, ": read again first."))
    elif look_up.leave is not None:
        told = ": leave the tailstock alone." if moves else "."
        sentences.append(("At ", look_up.leave, f" or less the reading cannot tell{told}"))
    if not look_up.verdict_possible:
        sentences.append((NO_VERDICT if moves else NO_VERDICT_FIXED,))
    return tuple(sentences)


def bands(look_up: LookUp) -> tuple[tuple[str, Figure, str], ...]:
    """The differences for which nothing is moved: the word before a limit, the limit, and what is done instead."""
    if look_up.inside is None:
        told = LEAVE if look_up.can_move else NOT_TOLD
        return ((UP_TO, look_up.leave, told),) if look_up.leave is not None else ()
    again = ((BELOW, look_up.outside, READ_AGAIN),) if look_up.outside is not None else ()
    return ((UP_TO, look_up.inside, LEAVE if look_up.can_move else IN_LIMITS), *again)


def look_up_heading(look_up: LookUp) -> str:
    """What stands over the look-up table."""
    return HEADINGS["look_up" if look_up.can_move else "look_up_fixed"]


def for_the_phase(phase: Phase) -> str:
    """How many cautions hold for all of a phase, and how many of those after them for its first step alone."""
    many, first = len(phase.cautions), phase.steps[0]
    then = f", then {len(first.cautions)} for step {first.number}" if first.cautions else ""
    return f"{many} caution{'s' * (many > 1)} for the whole phase{then}:"


def second_column(look_up: LookUp) -> tuple[str, str]:
    """What the second column tells: on the sheet, and in short on the card."""
    return MOVE_BY if look_up.can_move else OFF_BY


class Ways(Protocol):
    """What says the way for each case."""

    @property
    def larger_at_tailstock(self) -> str:
        """The way when the tailstock end came out larger."""

    @property
    def smaller_at_tailstock(self) -> str:
        """The way when it came out smaller."""


def directions(look_up: Ways) -> tuple[tuple[str, str], tuple[str, str]]:
    """The two cases of the look-up table and the way the tailstock goes in each."""
    return (
        (LARGER, _without_case(LARGER, look_up.larger_at_tailstock)),
        (SMALLER, _without_case(SMALLER, look_up.smaller_at_tailstock)),
    )


def _without_case(case: str, direction: str) -> str:
    """A direction that does not name its case again.

    >>> _without_case("Tailstock end LARGER", "Tailstock end LARGER: move the tailstock toward you.")
    'move the tailstock toward you.'
    """
    return direction.removeprefix(f"{case}:").strip()


def goes_on_words(on: GoesOn) -> str:
    """The step of the other sheet at which work goes on."""
    return f"go on with {_sheet(on)} at step {on.number}, {on.title}."


def void_words(void: Void) -> str:
    """That nobody goes on with the other sheet."""
    return f"Do not go on with {_sheet(void)}: it is void."


def _sheet(of: GoesOn | Void) -> str:
    return f"sheet {of.sheet_number}" if of.sheet_number else f'the sheet "{of.sheet}"'
