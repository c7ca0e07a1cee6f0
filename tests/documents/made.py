"""The papers of every shipped example and of a sweep of shops, each made once a session."""

import random
import re
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from itertools import count, cycle, islice
from pathlib import Path
from typing import Any

from random_shops import BARS, COLLARS, KITS, SPEEDS, WISHES, write
from render.reading import Element, figures, read_page
from shops import EXAMPLES
from tailtrue.advise import Advice, advise, knowledge, procedure_of
from tailtrue.errors import FactsWrong, Refused
from tailtrue.parts import Caution, Figure, Text
from tailtrue.procedure import Phase, Procedure, Step
from tailtrue.render import to_html, to_markdown
from tailtrue.render.card import to_card_html, to_card_markdown
from tailtrue.render.record_page import to_record_html, to_record_markdown
from tailtrue.render.safety_markdown import to_safety_markdown
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import to_sop_html, to_sop_markdown
from tailtrue.store.knowledge import Knowledge
from tailtrue.sweeping.files import Raw, read_sweep
from tailtrue.sweeping.reach import reached_by
from tailtrue.sweeping.run import jobs_of

SHIPPED = tuple(
    path.relative_to(EXAMPLES).with_suffix("").as_posix()
    for path in sorted(EXAMPLES.glob("*/*.toml"))
    if "\n[job]\n" in f"\n{path.read_text(encoding='utf-8')}"
)
SWEPT = 4
SWEEP = tuple(f"sweep-{number:02}" for number in range(1, SWEPT + 1))
# Jobs near the starts of the sweep that the rule base is held against, of every route.
ROUTES = tuple(knowledge().routes)
OF_A_ROUTE = 2
GENERATED = tuple(f"{route}-{number}" for route in ROUTES for number in range(1, OF_A_ROUTE + 1))
MAKERS = {
    "procedure": (to_html, to_markdown),
    "card": (to_card_html, to_card_markdown),
    "safety": (to_safety_html, to_safety_markdown),
    "sop": (to_sop_html, to_sop_markdown),
    "record": (to_record_html, to_record_markdown),
}
_END = re.compile(r"(?<=[.!?])\s+")


@dataclass
class Job:
    """One job with its tree; its papers are made when a test first asks for them."""

    name: str
    tree: Procedure
    advice: Advice
    _html: dict[str, str] = field(default_factory=dict)
    _pages: dict[str, Element] = field(default_factory=dict)

    @property
    def kinds(self) -> tuple[str, ...]:
        """The papers that this job has."""
        record = self.tree.record or self.tree.work_record
        lacks = {"card": self.tree.card is None, "sop": self.tree.sop is None, "record": record is None}
        return tuple(kind for kind in MAKERS if not lacks.get(kind))

    def html(self, kind: str) -> str:
        """A paper as HTML."""
        if kind not in self._html:
            self._html[kind] = MAKERS[kind][0](self.tree)
        return self._html[kind]

    def page(self, kind: str) -> Element:
        """A paper as a tree of elements; an element that is not closed in its turn fails the test."""
        if kind not in self._pages:
            self._pages[kind] = read_page(self.html(kind))
        return self._pages[kind]

    def markdown(self, kind: str) -> str:
        """A paper as Markdown."""
        return MAKERS[kind][1](self.tree)

    @property
    def steps(self) -> Iterator[tuple[Phase, Step]]:
        """Every step with its phase, in order."""
        return ((phase, step) for phase in self.tree.phases for step in phase.steps)

    @property
    def cautions(self) -> Iterator[Caution]:
        """Every message, in order."""
        yield from self.tree.job_cautions
        for phase in self.tree.phases:
            yield from phase.cautions
            for step in phase.steps:
                yield from step.cautions

    @property
    def figures(self) -> Iterator[Figure]:
        """Every number of the tree."""
        return figures(self.tree)


def said(text: Text) -> str:
    """A text with a mark in the place of each figure."""
    return "".join(piece if isinstance(piece, str) else "#" for piece in text)


def sentences(text: Text) -> list[str]:
    """The sentences of a text."""
    return [one for one in _END.split(said(text)) if one.strip()]


@cache
def job(name: str) -> Job:
    """A shipped example or a job of the sweep by its name."""
    if name in SHIPPED:
        return _made(name, advise(EXAMPLES / f"{name}.toml"))
    if name in GENERATED:
        route, _, number = name.rpartition("-")
        return _made(name, _generated(route, int(number)))
    if name in SWEEP:
        return _swept(SWEEP.index(name))
    return _made(name, advise(read_sweep(knowledge()).job, knowledge(), swept()[name]))


@cache
def swept() -> Mapping[str, Raw]:
    """Every job of the whole sweep that gets a sheet, by name."""
    known = knowledge()
    sweep = read_sweep(known)
    found: dict[str, Raw] = {}
    for number, raw in enumerate(jobs_of(known, sweep), start=1):
        _, advice, refused = reached_by(sweep.job, known, raw)
        if advice is not None and not refused:
            found[f"whole-sweep-{number:04}"] = raw
    return found


@cache
def _of_route(route: str) -> Iterator[Advice]:
    """Sheets of one route: a start of the sweep, and four of the alternatives that the sweep tries laid over it."""
    known = knowledge()
    sweep = read_sweep(known)
    starts = [raw for raw in sweep.starts.values() if raw.get("job.do", "make-and-use-bar") == route]
    ways = [way for way in sweep.ways if "job.do" not in way]
    draw = random.Random(route)
    drawn = ((draw.choice(starts), *draw.sample(ways, 4), paper) for paper in cycle(_PAPERS))
    return _printed(known, sweep.job, (_laid(*each) for each in drawn))


# Every route on both papers, and for somebody who learns.
_PAPERS = (
    {"job.paper": "A4"},
    {"job.paper": "Letter"},
    {"job.operator": "learner", "job.supervised": True, "job.alone": False},
)


def _laid(*parts: Raw) -> Raw:
    return {name: raw for part in parts for name, raw in part.items()}


def _printed(known: Knowledge, path: Path, jobs: Iterable[Raw]) -> Iterator[Advice]:
    for raw in jobs:
        try:
            advice = advise(path, known, raw)
            procedure_of(advice)
            yield advice
        except (FactsWrong, Refused):
            continue


_MADE: dict[str, list[Advice]] = {}


def _generated(route: str, number: int) -> Advice:
    made = _MADE.setdefault(route, [])
    made += islice(_of_route(route), number - len(made))
    return made[number - 1]


def _made(name: str, advice: Advice) -> Job:
    return Job(name, procedure_of(advice), advice)


_PLAIN: dict[str, Any] = {
    "dials": "metric", "swing_over_bed": 300, "swing_over_cross_slide": 180, "between_centres": 600,
    "spindle_bore": 38, "spindle_length": 400, "speeds": SPEEDS[1], "feeds": [0.05, 0.1, 0.2], "motor": 1100,
    "taper": "MT3", "reads": "diameter", "division": 0.05, "side": "front", "steady": False, "marked": 1800,
    "body": 160, "jaws": 25, "tool": "HSS", "centre": "live", "head": "hard", "drive": "drive-plate", "spacer": 10,
    "drills": "tapers", "micrometers": [(0, 25), (25, 50), (50, 75)], "resolution": 0.001, "gauge": "telescoping",
    "bar": BARS[0], "bar_d": 22, "bar_l": 380, "collar": COLLARS[0], "collar_d": 60, "collar_l": 80, "measured": True,
    "accuracy": "good", "coarse": False, "set_over": "two-screws", "bottle": True, "kit": [], "wish": None, "doubt": None,
}  # fmt: skip
_OTHERWISE: dict[str, tuple[Any, ...]] = {
    "between_centres": (500, 900), "speeds": SPEEDS, "motor": (550, 3000), "reads": ("radius",),
    "division": (0.02, 0.0254), "side": ("rear",), "steady": (True,), "marked": (3000, "unmarked"), "body": (125, 200),
    "tool": ("carbide",), "centre": ("dead",), "head": ("soft",), "drive": ("faceplate", "chuck-jaw"), "spacer": (6, 14),
    "bar": tuple(BARS), "bar_d": (20, 24), "bar_l": (350, 420), "collar": tuple(COLLARS), "collar_d": (50, 65),
    "collar_l": (100, 160), "measured": (False,), "coarse": (True,), "set_over": ("one-screw",), "doubt": (0.003,), "spindle_length": (None, 300), "jaws": (None, 35),
}  # fmt: skip


_WISHED = tuple(wish for wish in WISHES if wish != "press-fit")


def _swept(number: int) -> Job:
    """A shop near one that works, a few things otherwise in it; those that are refused have no papers."""
    draw = random.Random(number)
    for tried in count():
        one = _PLAIN | {key: draw.choice(_OTHERWISE[key]) for key in draw.sample(sorted(_OTHERWISE), 4)}
        one["dials"] = ("metric", "inch")[number % 2]
        # A wish that does not fit this shop is dropped, so that the search ends.
        if number % 3 == 0 and tried < 3:
            one |= {"wish": _WISHED[number // 3 % len(_WISHED)], "kit": sorted(KITS), "collar_d": 65}
        with tempfile.TemporaryDirectory() as folder:
            try:
                return _made(SWEEP[number], advise(write(Path(folder), one)))
            except Refused:
                continue
    raise AssertionError("the search never ends")
