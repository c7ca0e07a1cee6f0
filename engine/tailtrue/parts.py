"""The pieces that every document of the engine is made of: figures, texts, settings, checks, safety messages.

Nothing here decides or computes. A number is always a :class:`Figure`: a canonical value with its unit, the name of
the fact it came from, and the rounding kind that says how a page may show it. Text is a list of words and figures,
so a page can be set in inches or in millimetres without touching a sentence.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, Final, Literal

from pydantic import BaseModel, ConfigDict, Field

Signal = Literal["danger", "warning", "caution", "notice"]
MachineState = Literal["isolated", "stopped", "turning"]
Origin = Literal["published", "common-practice", "memory", "said", "decided"]
COMMON_PRACTICE: Origin = "common-practice"
Rounding = Literal[
    "fit",
    "difference",
    "half",
    "depth",
    "feed",
    "length",
    "size",
    "tool",
    "speed",
    "surface-speed",
    "force",
    "torque",
    "pressure",
    "power",
    "mass",
    "load",
    "time",
    "temperature",
    "ratio",
    "count",
    "angle",
]
Bound = Literal["nearest", "most", "least"]
Paper = Literal["A4", "Letter"]
Status = Literal["draft", "approved", "superseded"]
Dials = Literal["metric", "inch"]

# How a paper stands, in the words of a page.
STANDING: Final[Mapping[Status, str]] = MappingProxyType(
    {"draft": "not approved", "approved": "approved", "superseded": "superseded"}
)


def status_of(stated: str, *, approved: bool) -> Status:
    """Superseded when the job file says so, else a draft until it is approved.

    >>> status_of("superseded", approved=True), status_of("draft", approved=True), status_of("", approved=True)
    ('superseded', 'draft', 'approved')
    """
    if stated == "superseded":
        return "superseded"
    return "approved" if approved and stated != "draft" else "draft"


class Node(BaseModel):
    """A part of the tree: closed, and not changed once made."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Figure(Node):
    """One number: canonical value and unit, the fact it is, and how it may be rounded for the page."""

    fact: str
    value: float
    unit: str
    rounding: Rounding
    bound: Bound = "nearest"
    marked: str | None = Field(default=None, description="the size as the tool is marked, printed as it stands")
    set_by: str | None = Field(default=None, description="who set it in place of the computed number; printed with a mark")


Piece = Annotated[str | Figure, Field(union_mode="left_to_right")]
Text = tuple[Piece, ...]


class Limits(Node):
    """The band a measured size must lie in. A missing side is open."""

    low: Figure | None = None
    high: Figure | None = None


class Blank(Node):
    """A place to write in: what is written, in which unit (empty for words). Many stand in rows of `abreast`."""

    label: str
    unit: str = ""
    count: int = 1
    abreast: int = 1
    each: tuple[str, ...] = Field(default=(), description="pieces of repeated work, each with as many places of its own")

    @property
    def places(self) -> int:
        """How often it is written, for every piece together."""
        return self.count * max(1, len(self.each))


class Check(Node):
    """What is compared or written down at a step."""

    text: Text
    limits: Limits | None = None
    instrument: str | None = None
    resolution: Figure | None = None
    uncertainty: Figure | None = None
    blanks: tuple[Blank, ...] = ()


class Setting(Node):
    """One line of a settings table: what to set, the figure, and what limited it."""

    label: Text
    value: Text
    reason: Text = ()


class Term(Node):
    """A term of the trade that a document uses, and what it means there."""

    id: str
    term: str
    seen_as: str = Field(description="the form in which the document uses it")
    meaning: Text
    sources: tuple[str, ...]


class Caution(Node):
    """A safety message: the hazard, what it does, how it is avoided."""

    id: str
    signal: Signal
    severity: int
    likelihood: int
    hazard: str
    harm: str
    avoid: tuple[Text, ...]
    protective_equipment: tuple[str, ...] = ()
    signs: tuple[str, ...] = ()
    answers: tuple[str, ...]
    shown_because: str | None = None
    shop_rule: str = Field(default="", description="who of the shop added or reworded it, and why")
    of_shop: int = Field(default=0, description="how many lines, the last ones, the shop put beside the shipped ones")
    again: str = Field(default="", description="the step or phase before this one where the page prints it in full")
    at_back: bool = Field(
        default=False, description="named up front, told in the safety review and at the back of the sheet"
    )
    sources: tuple[str, ...]


class ShopRule(Node):
    """One rule of the shop that lies over the shipped ones: what it does, in words and figures, why, and by whom."""

    kind: Literal["add", "tighten", "reword", "disable"]
    what: str
    name: str
    change: Text
    reason: str
    by: str
    dated: str = ""
