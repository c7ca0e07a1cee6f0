"""The fixed words of the safety review, the same for every format."""

from types import MappingProxyType
from typing import Final

HEADINGS: Final = MappingProxyType(
    {
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
HAZARDS: Final = ("No.", "Hazard, harm", "Before", "After", "Controls, the strongest first")
RATED: Final = HAZARDS[2:4]
WHERE: Final = "Steps {steps}; lathe {machine}."
ABOVE: Final = "Its hazards stand under the letters above."
HIGH: Final = ("No.", "Hazard", "After", "What holds it, what would bring it down", "Initials")
WAYS: Final = ("Hazard", "Way to take it away", "Here", "Because")
NEAR: Final = ("Rule", "It holds when; what is here", "What would happen then")
WEAR: Final = ("State", "Wear", "Never")
CHECKS: Final = ("", "Look at", "Must be", "Otherwise", "Found")
CHECKED: Final = ("Must be", "Found")
OTHERWISE: Final = "Otherwise:"
CHEMICALS: Final = ("Substance",)
MATRIX: Final = "Likelihood"
CLASSES: Final = ("Class", "Score", "What is due")

LEVELS: Final = MappingProxyType(
    {"eliminate": "Eliminate", "substitute": "Substitute", "guard": "Guard", "instruct": "Instruct", "protect": "Protect"}
)
LETTERS: Final = MappingProxyType({"eliminate": "E", "substitute": "S", "guard": "G", "instruct": "I", "protect": "P"})
STATES: Final = MappingProxyType({"counted": "", "to-see": "tick if there", "not-here": "not here"})
HELD: Final = MappingProxyType(
    {
        "control": "a control that is more than an instruction",
        "hold": "a hold of the sheet",
        "acceptance": "nothing but the acceptance signed below",
    }
)
BRIEFLY: Final = MappingProxyType({"control": "a control holds it", "hold": "hold at step"})
STEP: Final = "step {step}"
ACCEPTED: Final = "Nothing but the acceptance signed below holds one that names no hold and no control."
VERDICTS: Final = MappingProxyType({"taken": "taken", "declined": "declined"})

USUAL: Final = "Who is hurt: {who}, unless another is named."
UNDER: Final = "Letters under a number: other activities that meet it."
NOT_COUNTED: Final = "A box stands before a control that nobody told us of. It is not counted; tick it when you see it."
LOWERS: Final = "Steps of likelihood taken off by each kind of control"
WEAK: Final = "With instruct and protect alone, severity {severity} and above keeps likelihood {likelihood} at least."
ALSO: Final = "also"
STRONGEST_FIRST: Final = "controls, the strongest first."
WOULD: Final = "Would bring it down"
WOULD_STANDS: Final = (
    "What would bring one down stands in its row above: with a box where nobody told us of it, marked \u201cnot here\u201d "
    "where it is missing. Initial each."
)
HOLDS_WHEN: Final = "Holds when:"
THEN: Final = "Then:"
NO_HIGH: Final = "Nothing stays high."
MISSING: Final = "MISSING"
BOXED: Final = "What is marked MISSING is filled in before work."
KILLER: Final = "A line with a black bar has no way round: not as it must be, no start."
NOT_APPLICABLE: Final = "does not apply"
GIVEN: Final = "as given"
NAME_DATE: Final = ("Name", "Signature", "Date")
