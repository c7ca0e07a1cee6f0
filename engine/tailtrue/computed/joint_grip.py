"""Collars held by interference, pressed cold or shrunk on: the window of the bore, what holds, what the metal bears."""

from typing import Any, NamedTuple

from tailtrue.calc.interference import (
    collar_stress,
    contact_pressure,
    effective_interference,
    interference_for_pressure,
    roughness_loss,
)
from tailtrue.calc.interference_grip import axial_grip, grip_torque, pressure_for_torque
from tailtrue.calc.lengths import midway
from tailtrue.calc.shrink import handling_clearance, release_change, shrink_rise, shrink_temperature
from tailtrue.calc.steps import step_up
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

_WHOLE_MM = 0.001  # the window begins on a whole micrometre, never below what is needed
_WAYS = {"press-fit": "pressed", "shrink-fit": "shrunk on"}
_SIZES = (
    "bar.diameter", "collar.width", "collar.diameter", "skim.worn_out_at", "bar.material", "collar.material",
    "collar.material_family", "joint.catch_torque", "limit.joint_margin",
)  # fmt: skip
_TABLES = (
    "joints/press_fits", "fits/attachment_clearance", "joints/friction", "joints/interference", "materials/materials",
)  # fmt: skip


class _Fit(NamedTuple):
    """A fit of one job: its window of interference, and what comes of both ends."""

    just_holds: float
    least: float
    most: float
    least_torque: float
    stress: float
    bears: float
    most_pressure: float


def _fit(
    method: str, bar: float, width: float, outside: float, worn: float, bar_metal: str, collar_metal: str, family: str,
    catch: float, margin: float, fits: Table, clearances: Table, friction: Table, values: Table, materials: Table,
) -> _Fit:  # fmt: skip
    way = fits.one(method=method, family=family)
    window = clearances.within(bar, "over_mm", "upto_mm", method=way.text("window_fit"))
    mu = friction.one(family=family, situation=way.text("situation")).number("friction_low")
    steel, metal = materials.one(material=bar_metal), materials.one(material=collar_metal)
    metals: dict[str, float] = {
        "bar_modulus_mpa": steel.number("modulus_mpa"), "bar_poisson": steel.number("poisson"),
        "collar_modulus_mpa": metal.number("modulus_mpa"), "collar_poisson": metal.number("poisson"),
    }  # fmt: skip
    if outside < bar * values.value("least-wall-ratio"):
        raise OutOfRange(f"a collar of {outside:g} mm is too thin on a bar of {bar:g} mm to be held by interference alone")
    safety, rough = values.value("safety-grip"), values.value("roughness-rz")
    loss = roughness_loss(rough, rough, values.value("roughness-loss-rz-cautious"))

    def holds(torque: float) -> float:
        needed = pressure_for_torque(torque, mu, bar, width)
        return loss + interference_for_pressure(
            pressure_mpa=needed, joint_diameter_mm=bar, collar_diameter_mm=worn, **metals
        )

    needed = step_up(holds(safety * margin * catch), _WHOLE_MM)
    # Less is more here: the table gives clearances, and an interference is one below nothing.
    most = -window.number("least_mm")
    least = min(max(-window.number("largest_mm"), needed), most)

    def pressure(interference: float, size: float) -> float:
        return contact_pressure(
            diametral_interference_mm=interference, joint_diameter_mm=bar, collar_diameter_mm=size, **metals
        )

    left = effective_interference(least, rough, rough, values.value("roughness-loss-rz-cautious"))
    stresses = [collar_stress(pressure(most, size), bar, size).von_mises_mpa for size in (outside, worn)]
    return _Fit(
        holds(margin * catch), least, most, grip_torque(pressure(left, worn), mu, bar, width) / safety, max(stresses),
        metal.number("yield_mpa") * values.value("elastic-share"), pressure(most, outside),
    )  # fmt: skip


def _register(method: str, words: str) -> None:
    prefix = f"joint.{method.replace('-', '_')}"

    def fact(name: str, label: str, take: Any, how: str, **more: Any) -> None:
        @computed(f"{prefix}.{name}", label=label, needs=_SIZES, tables=_TABLES, how=how, **more)
        def _taken(*given: Any) -> Any:
            return take(_fit(method, *given))

    fact("interference_least", f"least interference of a collar {words}, on diameter", lambda fit: fit.least,
         "what holds a catch when the collar is worn, and what roughness takes away; never less than the table",
         unit="mm", rounding="fit", bound="least")  # fmt: skip
    fact("interference_most", f"greatest interference of a collar {words}, on diameter", lambda fit: fit.most,
         "from the table of interferences", unit="mm", rounding="fit", bound="most")  # fmt: skip
    fact("target", f"clearance wanted for a collar {words}, less than nothing", lambda fit: -midway(fit.least, fit.most),
         "the middle of the window", unit="mm", rounding="fit")  # fmt: skip
    fact("least", f"least clearance of a collar {words}, less than nothing", lambda fit: -fit.most,
         "the greatest interference, taken as a clearance", unit="mm", rounding="fit", bound="least")  # fmt: skip
    fact("largest", f"largest clearance of a collar {words}, less than nothing", lambda fit: -fit.least,
         "the least interference, taken as a clearance", unit="mm", rounding="fit", bound="most")  # fmt: skip
    fact("torque", f"torque a collar {words} carries at least", lambda fit: fit.least_torque,
         "least interference, less what roughness takes, worn collar, low friction, over a safety factor",
         unit="N mm", rounding="torque", bound="most")  # fmt: skip
    fact("stress", f"stress at the bore of a collar {words}, at most", lambda fit: fit.stress,
         "greatest interference, nothing lost, the worse of new and worn", unit="MPa", rounding="pressure",
         bound="least")  # fmt: skip
    fact("stress_most", f"stress that the metal of a collar {words} may reach", lambda fit: fit.bears,
         "a share of its yield strength", unit="MPa", rounding="pressure", bound="most")  # fmt: skip


for _method, _words in _WAYS.items():
    _register(_method, _words)


@computed("joint.press_fit.force", label="force to press a collar on, at most", unit="N", rounding="force", bound="least",
          needs=_SIZES, tables=_TABLES, how="greatest interference, new collar, high friction")  # fmt: skip
def press_force(*given: Any) -> float:
    bar, width, values = given[0], given[1], given[len(_SIZES) + _TABLES.index("joints/interference")]
    return axial_grip(_fit("press-fit", *given).most_pressure, values.value("press-friction"), bar, width)


@computed("joint.press_fit.opening", label="height that the bar and the collar need under the ram", unit="mm",
          rounding="length", bound="least", needs=("bar.length", "collar.width"),
          how="length of the bar and the width of a collar")  # fmt: skip
def opening(length: float, width: float) -> float:
    return length + width


@computed("joint.shrink_fit.clearance", label="clearance of the hot collar for putting it on, on diameter", unit="mm",
          rounding="fit", bound="least", needs=("bar.diameter",), tables=("joints/interference",),
          how="a share of the diameter, or the least that is handled")  # fmt: skip
def handling(bar: float, values: Table) -> float:
    return handling_clearance(bar, values.value("handling-share"), values.value("handling-least"))


@computed("joint.shrink_fit.hottest", label="hottest that the metal of the collar stands", unit="degC",
          rounding="temperature", bound="most", needs=("collar.material_family", "collar.material"),
          tables=("joints/shrink_limits", "joints/shrink_metals"),
          how="what is advised for its family and temper")  # fmt: skip
def hottest(family: str, material: str, limits: Table, tempers: Table) -> float:
    temper = tempers.one(material=material).text("condition")
    return limits.one(family=family, condition=temper).number("advised_degc")


@computed(
    "joint.shrink_fit.temperature",
    label="temperature of the collar for putting it on",
    unit="degC",
    rounding="temperature",
    bound="least",
    needs=(
        "joint.shrink_fit.interference_most", "joint.shrink_fit.clearance", "bar.diameter", "collar.expansion",
        "job.temperature", "joint.shrink_fit.hottest",
    ),
    how="greatest interference and clearance, divided by expansion and diameter, over the temperature of the shop",
)  # fmt: skip
def temperature(most: float, clearance: float, bar: float, expansion: float, room: float, limit: float) -> float:
    return shrink_temperature(shrink_rise(most, clearance, bar, expansion), room, limit)


@computed(
    "joint.shrink_fit.lets_go_at",
    label="temperature at which bar and collar together may let go",
    unit="degC",
    rounding="temperature",
    bound="most",
    needs=(
        "joint.shrink_fit.interference_least", "bar.diameter", "bar.expansion", "collar.expansion", "job.temperature",
    ),
    tables=("joints/interference",),
    how="least interference, less what roughness takes, divided by the diameter and the difference of expansions",
)  # fmt: skip
def lets_go(least: float, bar: float, of_bar: float, of_collar: float, room: float, values: Table) -> float | Limited:
    rough = values.value("roughness-rz")
    left = effective_interference(least, rough, rough, values.value("roughness-loss-rz-cautious"))
    return room + release_change(left, bar, of_bar, of_collar)


@computed(
    "joint.shrink_fit.holds_a_catch_to",
    label="temperature of bar and collar together up to which a catch is held",
    unit="degC",
    rounding="temperature",
    bound="most",
    needs=("job.temperature", "bar.expansion", "collar.expansion", *_SIZES),
    tables=_TABLES,
    how="least interference, less what just holds a catch on a worn collar without its safety factor, divided by the "
    "diameter and the difference of expansions, over the temperature of the shop",
)
def holds_a_catch(room: float, of_bar: float, of_collar: float, *given: Any) -> Limited | float:
    fit, bar = _fit("shrink-fit", *given), given[0]
    if of_collar <= of_bar:
        return Limited(None, "a collar that grows no more than the bar grips no less when both are warm")
    if fit.least < fit.just_holds:
        return Limited(None, "the joint does not hold a catch even when it is cool")
    return room + release_change(fit.least - fit.just_holds, bar, of_bar, of_collar)
