"""Every way to fix the collars laid beside the others, and the figures of the one that was chosen."""

from typing import Any

from tailtrue.calc.lengths import within_both_sides
from tailtrue.calc.margins import torque_margin
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

WAYS = {
    "retaining-compound": "the bond",
    "shrink-fit": "a collar shrunk on",
    "set-screws": "set screws",
    "radial-pin": "a pin across",
    "press-fit": "a collar pressed on",
    "split-clamp": "a split collar",
}
ANY = "any"
# A bar on hand may be pinned along its joint. None is made so, so no figures belong to that way.
EVERY_WAY = (*WAYS, "axial-pin")


def _of(method: str, name: str) -> str:
    return f"joint.{method.replace('-', '_')}.{name}"


@computed("joint.wish", label="way of fixing the collars that the job wishes", kind="choice", choices=(ANY, *EVERY_WAY),
          needs=("job.joint_wish?",), how="as given for the job; any, where nothing was said")  # fmt: skip
def wish(said: str | None) -> str:
    return ANY if said is None else said


@computed("collar.yield", label="yield strength of the collars", unit="MPa", rounding="pressure", needs=("collar.material",),
          tables=("materials/materials",), how="from the table of materials")  # fmt: skip
def collar_yield(material: str, materials: Table) -> float:
    return materials.one(material=material).number("yield_mpa")


def _against(method: str, words: str) -> None:
    @computed(_of(method, "catch_margin"), label=f"strength of {words} in torques of a catch", unit="1",
              needs=(_of(method, "torque"), "joint.catch_torque"), how="torque it carries over that of a catch")  # fmt: skip
    def _catch(carries: float, asked: float) -> float:
        return torque_margin(carries, asked)

    @computed(_of(method, "skim_margin"), label=f"strength of {words} in torques of the skim", unit="1",
              needs=(_of(method, "torque"), "joint.skim_torque"), how="torque it carries over that of the skim")  # fmt: skip
    def _skim(carries: float, asked: float) -> float:
        return torque_margin(carries, asked)

    @computed(_of(method, "band"), label=f"room between smallest and largest bore for {words}", unit="mm", rounding="fit",
              bound="most",
              needs=(_of(method, "least"), _of(method, "largest"), "bore.gauge_uncertainty", "bore.spread"),
              how="largest less least clearance, less the doubt of the gauge at both ends, and the spread")  # fmt: skip
    def _band(least: float, largest: float, unsure: float, uneven: float) -> float:
        return within_both_sides(largest - least, unsure) - uneven


def _room(method: str, words: str) -> None:
    """Register by how much the room between the sizes falls short of what a gauge wants."""

    @computed(_of(method, "band_short"), label=f"room that the gauge lacks for {words}", unit="mm", rounding="fit",
              bound="least", needs=(_of(method, "band"), "bore.band_least"),
              how="what the gauge needs, less what there is: more than that where the doubt takes it all")  # fmt: skip
    def _band_short(band: float, needed: float) -> float:
        return needed - band


for _method, _words in WAYS.items():
    _against(_method, _words)

# The ways that hold by the bore alone: their stops tell it.
for _method in ("retaining-compound", "press-fit", "shrink-fit"):
    _room(_method, WAYS[_method])


def _chosen(name: str, of: str, label: str, **more: Any) -> None:
    @computed(name, label=label, needs=("joint.method", *(f"{_of(method, of)}?" for method in WAYS)),
              how="of the way that was chosen", **more)  # fmt: skip
    def _one(method: str, *each: float | None) -> float | None:
        return dict(zip(WAYS, each, strict=True))[method]


_chosen("joint.torque", "torque", "torque one collar carries", unit="N mm", rounding="torque", bound="most")
_chosen("joint.catch_margin", "catch_margin", "strength of the joint in torques of a catch", unit="1")
_chosen("joint.skim_margin", "skim_margin", "strength of the joint in torques of the skim", unit="1")
_chosen("bore.gap_target", "target", "clearance wanted, on diameter", unit="mm", rounding="fit")
_chosen("bore.gap_least", "least", "least clearance, on diameter", unit="mm", rounding="fit", bound="least")
_chosen("bore.gap_largest", "largest", "largest clearance, on diameter", unit="mm", rounding="fit", bound="most")


@computed("bore.fit", label="kind of fit between collar and bar", kind="choice", choices=("clearance", "interference"),
          needs=("bore.gap_least",), how="whether the bore is larger than the bar or smaller")  # fmt: skip
def fit(least: float) -> str:
    return "interference" if least < 0 else "clearance"


def _interference(name: str, end: str, label: str, bound: str) -> None:
    @computed(name, label=label, unit="mm", rounding="fit", bound=bound, needs=(end,),
              how="the clearance, the other way round; none where the bore is the larger")  # fmt: skip
    def _positive(gap: float) -> float | None:
        return -gap if gap < 0 else None


_interference("bore.interference_least", "bore.gap_largest", "least interference, on diameter", "least")
_interference("bore.interference_most", "bore.gap_least", "greatest interference, on diameter", "most")
