"""Random lathes with faults planted in them, and the tests somebody might have made on each.

The lathe is the simulated one: points and rotations, none of the formulas of the diagnosis. What a formula cannot
plant there (a soft end, a bending bar, a centre off its taper) is added to the readings by its plain meaning.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from random import Random
from typing import Any

from simulated_lathe import SimulatedLathe
from tailtrue.diagnosis.setup import Setup
from tailtrue.places import knowledge_folder
from tailtrue.tables import read_tables

SPAN, HEAD, MIDDLE, TAIL, HEIGHT = 300.0, 30.0, 150.0, 270.0, 165.0
STATIONS = (HEAD, MIDDLE, TAIL)
STICK_OUT = (20.0, 70.0, 120.0)
LEVEL = (0.0, 100.0, 300.0, 500.0)
PLACES = ("head", "middle", "tail")

# What the hand leaves in a reading of each kind of instrument: standard deviation, mm and mm/m.
MICROMETER, LEVEL_NOISE, INDICATOR = 0.0013, 0.01, 0.0015

_TABLES = read_tables(knowledge_folder())


def setup(tool_side: str = "front", **changes: Any) -> Setup:
    """The lathe and the bar of the tests: 300 mm between the centres, limit 0.016 mm on the collars."""
    plain: dict[str, Any] = {
        "tool_side": tool_side, "span_mm": SPAN, "head_mm": HEAD, "tail_mm": TAIL, "limit_mm": 0.016,
        "height_of_centres_mm": HEIGHT, "most_overhang": 2.5, "has_screws": True, "dials": "metric", "grade": "general",
        "tables": _TABLES,
    }  # fmt: skip
    return Setup(**(plain | changes))


@dataclass(frozen=True)
class Planted:
    """One lathe: its faults with their sizes, and which side the tool stands on."""

    faults: Mapping[str, float]
    tool_side: str = "front"
    seed: int = 1
    hand: Random = field(default_factory=lambda: Random(1), compare=False)

    @property
    def lathe(self) -> SimulatedLathe:
        """The lathe in three dimensions."""
        size = self.faults.get
        worn = size("worn-bed", 0.0)

        def front_way(z: float) -> float:
            # Worn most at the chuck, and even beyond; not the shape that the diagnosis takes for it.
            return worn * max(0.0, 1 - max(0.0, z - 40) / 90)

        return SimulatedLathe(
            yaw=size("headstock", 0.0),
            pitch=size("headstock-pitch", 0.0),
            twist=size("bed-twist", 0.0) / HEIGHT,
            offset=size("tailstock", 0.0),
            height=size("height", 0.0),
            rides_the_bed=True,
            centre_height=HEIGHT,
            way_spacing=HEIGHT,
            front_wear=front_way,
            tool_in_front=self.tool_side == "front",
            wear_for_each_collar=size("tool-wear", 0.0),
        )

    def made(self, *kinds: str) -> dict[str, dict[str, Any]]:
        """Values of the tests, as a file of tests has them."""
        return {kind: self._one(kind) for kind in kinds}

    def _one(self, kind: str) -> dict[str, Any]:
        if kind == "chucked_bar":
            sizes = self.lathe.diameters_chucked(STICK_OUT, radius=30)
            read = [self._read(size, MICROMETER) for size in sizes]
            return {"stations": STICK_OUT, "diameters": read, "stick_out": 130.0, "bar_diameter": 60.0, "cut_first": "chuck"}
        if kind == "level":
            read = [self._read(self.lathe.level(z), LEVEL_NOISE) for z in LEVEL]
            return {"stations": LEVEL, "readings": read, "plus_is": "front low", "height_of_centres": HEIGHT}
        if kind == "sweep":
            found = self.lathe.sweep(SPAN, 25.0, sag=0.006)
            names = ("front", "top", "rear", "bottom")
            read = {name: self._read(one, INDICATOR) for name, one in zip(names, found, strict=True)}
            return {**read, "sag": 0.006, "where": "outside", "give_or_take": 0.004}
        if kind == "height":
            high = self.faults.get("height", 0.0)
            return {
                "head": self._read(high * HEAD / SPAN, INDICATOR), "tail": self._read(high * TAIL / SPAN, INDICATOR),
            }  # fmt: skip
        if kind == "clamping":
            loose = self.faults.get("clamping", 0.0)
            back = [self._read(self.hand.gauss(0, loose), 0.0008) for _ in range(5)]
            return {"released": [0.0] * 5, "clamped": back}
        if kind == "indicator_on_collars":
            sizes = self._sizes("between_centres")
            return {
                "tool_side_head": 0.0, "tool_side_tail": 0.0, "far_side_head": 0.0,
                "far_side_tail": self._read(sizes[-1] - sizes[0], INDICATOR), "give_or_take": 0.004,
            }  # fmt: skip
        sizes = dict(zip(PLACES, self._sizes(kind), strict=True))
        read = {place: [self._read(size, MICROMETER) for _ in range(2)] for place, size in sizes.items()}
        more = {"middle_station": MIDDLE, "cut_first": "head", "overhang_of_centre": 80.0}
        return {**read, **(more if kind == "between_centres" else {})}

    def _sizes(self, kind: str) -> list[float]:
        lathe, size = self.lathe, self.faults.get
        moved = {
            "centre_turned": -size("eccentric-centre", 0.0), "bar_turned_end_for_end": -size("centre-holes", 0.0),
        }.get(kind)  # fmt: skip
        lathe = lathe.moved(size("eccentric-centre", 0.0) if moved is None or kind != "centre_turned" else moved)
        lathe = lathe.moved(size("centre-holes", 0.0) if moved is None or kind != "bar_turned_end_for_end" else moved)
        if kind == "clamped_anew":
            lathe = lathe.moved(size("clamping", 0.0))
        order = (2, 1, 0) if kind == "cut_order_reversed" else (0, 1, 2)
        sizes = lathe.diameters_between_centres(SPAN, STATIONS, order=order)
        left = 0.2 if kind == "more_spring_passes" else 1.0
        bends, soft = size("bar-bends", 0.0) * left, size("soft-end", 0.0) * left
        give = [(0.13 * bends, 0.01 * soft), (bends, 0.25 * soft), (0.13 * bends, 0.81 * soft)]
        side = 1 if self.tool_side == "front" else -1
        bow = [2 * side * size("bowed-path", 0.0) * share for share in (0.36, 1.0, 0.36)]
        return [one + 2 * (bar + end) + path for one, (bar, end), path in zip(sizes, give, bow, strict=True)]

    def _read(self, size: float, noise: float) -> float:
        return round(size + self.hand.gauss(0, noise), 5)
