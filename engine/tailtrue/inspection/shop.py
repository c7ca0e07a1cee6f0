"""What the inspection knows besides the sheet: plain givens and hard limits, from the user's files alone."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True)
class SpeedCap:
    """A speed that must not be passed, in some phases or, with `phases` left out, in all of them."""

    name: str
    limit_per_min: float
    phases: tuple[str, ...] | None = None

    def holds_in(self, phase: str) -> bool:
        """Whether the limit applies in the phase with this id."""
        return self.phases is None or phase in self.phases


@dataclass(frozen=True)
class HandSetting:
    """A number that the job file sets by hand: to what, by whom, to which side it may go, and what bounds it."""

    value: float
    initials: str
    safe: str
    at_least: tuple[str, ...] = ()
    at_most: tuple[str, ...] = ()


@dataclass(frozen=True)
class ShopEntry:
    """One entry of a file with rules of the shop: what it does to what, why, and by whom."""

    kind: str
    name: str
    reason: str
    by: str


@dataclass(frozen=True)
class Taper:
    """A taper as it was asked for, on work between centres."""

    large_mm: float
    small_mm: float
    length_mm: float
    work_length_mm: float
    hole_depths_mm: float
    small_end: str
    dog_mm: float


@dataclass(frozen=True)
class Piece:
    """A piece of stock to be held in the chuck alone, and how many diameters of it may stand free."""

    diameter_mm: float
    length_mm: float
    grip_mm: float
    most_diameters: float


@dataclass(frozen=True)
class Bond:
    """What the tables say of a bond between the two metals of this job.

    `mpa` is what it bears in a gap that costs nothing, `gaps` the share of it that is left up to each gap on diameter in mm,
    `wait_s` how long it cures, `starts` whether a metal or an activator starts that.
    """

    mpa: float
    gaps: tuple[tuple[float, float], ...]
    wait_s: float
    starts: bool = True


@dataclass(frozen=True)
class Rework:
    """What was found of a bore, in mm, at which seat, and the sheet that was left: names and titles of steps by number.

    `found` is the word of the job file for it, `of` what the sheet that was left does.
    """

    readings: tuple[float, ...]
    end: str
    left: Mapping[str, str]
    titles: Mapping[str, str]
    most_tries: int
    found: str = ""
    of: str = ""


@dataclass(frozen=True)
class Shop:
    """Givens of one job.

    A geared lathe has `speeds`; a variable one has `speed_from` and `speed_to`. `tool_ids_in_shop` names the needs
    that the shop has. `instruments` holds range and resolution: from, to and reading step in mm. `labels` are the
    user's own words that come back on the sheet; a number typed in one of them is theirs. `must_say` names, for an
    activity, the cautions that stand before it in every shop; `states` the states it may be done in; `at_back` names the
    cautions that hold at any lathe and need only be named up front.
    `measured` holds the readings of the bar at each seat,
    `fit_mm` the least and largest clearance of the way the collars are fixed, `least_depth_mm` how deep screws and pins
    must lie. `parts` are the parts that a sheet of this kind has, no less and no more. `bar_exists`: the collars were fixed
    long ago. `bar_on_hand` holds what was measured on such a bar, in mm, by the dimension of the drawing.
    `third_collar`: the job asks for one in the middle of the bar. `guard_switch`: the chuck guard stops the drive.
    `takes` holds the least and largest size, in mm, that a collet, soft jaws or a stub mandrel of the crib may be used for.
    `by_hand` are the numbers that the job file sets, by fact; `shop_rules` the entries of the shop's own rule files;
    `kept` the typed pieces of each line, as shipped, of the cautions and steps that those put words beside;
    `signals` the signal words of the shipped cautions, `limits` the shipped limits with the side to which a shop may move
    each.
    """

    machine_name: str
    dials: Literal["metric", "inch"]
    tool_side: Literal["front", "rear"]
    dial_reads: Literal["radius", "diameter"]
    dial_division_mm: float
    between_centres_mm: float
    swing_over_cross_slide_mm: float
    speed_caps: tuple[SpeedCap, ...]
    drills: frozenset[float]
    tool_ids_in_shop: frozenset[str]
    instruments: Mapping[str, tuple[float, float, float]]
    feeds: tuple[float, ...] = ()
    speeds: tuple[float, ...] = ()
    speed_from: float | None = None
    speed_to: float | None = None
    speed_settings: tuple[str, ...] = ()
    set_over: str = ""
    # What was found out of line before the tailstock: bed, headstock.
    found_out: frozenset[str] = frozenset()
    screws: tuple[str, str] = ("", "")  # toward the operator, away; empty where nobody said
    labels: tuple[str, ...] = ()
    must_say: Mapping[str, frozenset[str]] = field(default_factory=dict)
    states: Mapping[str, frozenset[str]] = field(default_factory=dict)
    messages_at_step: int = 0
    messages_at_phase: int = 0
    messages_up_front: int = 0
    at_back: frozenset[str] = frozenset()
    by_hand: Mapping[str, HandSetting] = field(default_factory=dict)
    shop_rules: tuple[ShopEntry, ...] = ()
    kept: Mapping[tuple[str, str], tuple[tuple[str, ...], ...]] = field(default_factory=dict)
    signals: Mapping[str, str] = field(default_factory=dict)
    limits: Mapping[str, tuple[float, str]] = field(default_factory=dict)
    measured: Mapping[str, tuple[float, ...]] = field(default_factory=dict)
    fit_mm: tuple[float, float] = (0.0, 0.0)
    least_depth_mm: float = 1.0
    bond: Bond | None = None  # none: nothing is bonded
    parts: frozenset[str] = frozenset({"drawing", "cut-list", "look-up", "card", "care", "sop"})
    bar_exists: bool = False
    bar_on_hand: Mapping[str, float] = field(default_factory=dict)
    fixed_by: str = ""  # how the collars of that bar are fixed; empty where nobody told
    worn_out_mm: float | None = None  # where the collars of that bar are worn out, as told
    taper: Taper | None = None
    piece: Piece | None = None
    top_slide_division_mm: float | None = None
    indicator_division_mm: float | None = None
    indicator_turn_mm: float | None = None
    indicator_travel_mm: float | None = None
    takes: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    rework: Rework | None = None
    centre_drills: tuple[tuple[float, float], ...] = ()  # pilot and body of each one in the crib, in mm
    spindle_bore_mm: float | None = None
    collet_mm: float = 0.0  # how long the collet grips; nought where nobody said
    bar_metal: tuple[float, float] | None = None  # modulus of elasticity in MPa and density in kg/m3
    third_collar: bool = False
    guard_switch: bool = False
    operator: str = ""  # as the job says
    instructed: bool = False  # a learner, or under age: an instructor is there at the first start between centres
    shared: bool = False  # others use this lathe, and somebody is there to supervise
    supervised: bool = False  # somebody stands by for the whole job, and nobody is alone
    owner: bool = False  # at home, experienced, of age: nobody else is trained or signs
    unsaid: tuple[str, ...] = ()  # labels of what nobody said and a stop against a hazard hangs on
    telescoping: bool = False  # the gauge for the bore only carries a size, which another instrument reads
    chuck_drives: bool = False
    bush_passes_mm: float = 0.0  # the hole of what grips the bar for facing; nought where nobody measured it
    independent_chucks: Mapping[str, float] = field(default_factory=dict)  # by label the most revolutions a minute
    belt: bool = False  # the speed is changed by moving a belt by hand
    chuck_bodies_mm: tuple[float, ...] = ()  # of every chuck of the lathe
    tailstock_height_right: bool = False
    height_gauge: bool = False
    tool_post: str = ""  # empty where nobody named it
    learner_cut: tuple[float, float] | None = None  # depth per side in mm and feed in mm/rev; none: nobody learns
