"""The fixed words of the safety review, the same for every format."""

from types import MappingProxyType
from typing import Final

HEADINGS: Final = MappingProxyType(
    {
        "work": "The work, in activities",
        "matrix": "How hazards are rated",
        "hazards": "Hazards and controls",
        "high": "What stays high, and who accepts it",
        "ways": "Ways to take a hazard away",
        "near": "What nearly held",
        "people": "People",
        "alone": "Help within reach",
        "wear": "What is worn, by state of the machine",
        "checks": "Check of the machine, on the day",
        "isolation": "Taking the power away",
        "chemicals": "Substances",
        "emergency": "Emergency",
        "signatures": "Signed",
    }
)
WORK: Final = ("", "Activity", "Steps", "Lathe")
HAZARDS: Final = ("No.", "Hazard, harm", "Before", "Controls, the strongest first", "After")
HIGH: Final = ("No.", "Hazard", "After", "What holds it, what would bring it down", "Initials")
WAYS: Final = ("Hazard", "Way to take it away", "Here", "Because")
NEAR: Final = ("Rule", "It holds when; what is here", "What would happen then")
WEAR: Final = ("State", "Wear", "Never")
CHECKS: Final = ("", "Look at", "Must be", "Otherwise", "Found")
CHEMICALS: Final = ("Substance",)
MATRIX: Final = "Likelihood"
SEVERITY: Final = "Severity"
CLASSES: Final = ("Class", "Score", "What is due")

LEVELS: Final = MappingProxyType(
    {"eliminate": "Eliminate", "substitute": "Substitute", "guard": "Guard", "instruct": "Instruct", "protect": "Protect"}
)
STATES: Final = MappingProxyType({"counted": "", "to-see": "tick if there", "not-here": "not here"})
HELD: Final = MappingProxyType(
    {
        "control": "a control that is more than an instruction",
        "hold": "the hold at step",
        "acceptance": "nothing but the acceptance signed below",
    }
)
VERDICTS: Final = MappingProxyType({"taken": "taken", "declined": "declined"})

USUAL: Final = "Who is hurt: {who}, unless another is named. Letters after \u201calso\u201d: other activities that meet it."
NOT_COUNTED: Final = "A box stands before a control that nobody told us of. It is not counted; tick it when you see it."
LOWERS: Final = "Steps of likelihood taken off by each kind of control"
WEAK: Final = "With instruct and protect alone, severity {severity} and above keeps likelihood {likelihood} at least."
ALSO: Final = "also"
WOULD: Final = "Would bring it down"
NO_HIGH: Final = "Nothing stays high."
MISSING: Final = "MISSING: fill in before work"
KILLER: Final = "Lines marked with a black bar have no way round: not as it must be, no start."
NOT_APPLICABLE: Final = "does not apply"
GIVEN: Final = "as given"
NAME_DATE: Final = ("Name", "Signature", "Date")
