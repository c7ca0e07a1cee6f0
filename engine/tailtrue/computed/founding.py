"""First sizes of a cast blank for a trained founder: casting, pattern, feeder, and the plain stick that needs none."""

from collections.abc import Callable

from tailtrue.calc.casting import (
    CastBlank,
    blank_surface,
    blank_volume,
    cast_blank,
    modulus,
    pattern_size,
    side_feeder_diameter,
    stick_height,
)
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_RULES = ("casting/pattern",)
_COLLAR = ("collar.diameter", "collar.width")


def _blank(diameter: float, width: float, rules: Table) -> CastBlank:
    return cast_blank(
        diameter, width, rules.value("allowance"), rules.value("top_extra"), rules.value("draft")
    )  # fmt: skip


def _feeder(diameter: float, width: float, rules: Table) -> float:
    blank = _blank(diameter, width, rules)
    chill = modulus(blank_volume(*blank), blank_surface(*blank))
    return side_feeder_diameter(chill, rules.value("modulus_factor"), rules.value("feeder_height"))


def _size(name: str, label: str, how: str, take: Callable[[float, float, Table], float]) -> None:
    @computed(name, label=label, unit="mm", rounding="length", needs=_COLLAR, tables=_RULES, how=how)
    def _of_collar(diameter: float, width: float, rules: Table) -> float:
        return take(diameter, width, rules)


_ALLOWED = "finished collar, metal to machine on every surface, more on the top face, draft"
_LONGER = "size of the casting, longer by the contraction of the metal"
_size("casting.small", "small diameter of the casting", _ALLOWED, lambda d, w, r: _blank(d, w, r).small_diameter_mm)
_size("casting.large", "large diameter of the casting", _ALLOWED, lambda d, w, r: _blank(d, w, r).large_diameter_mm)
_size("casting.height", "height of the casting", _ALLOWED, lambda d, w, r: _blank(d, w, r).height_mm)
_size("casting.pattern_small", "small diameter of the pattern", _LONGER,
      lambda d, w, r: pattern_size(_blank(d, w, r).small_diameter_mm, r.value("contraction")))  # fmt: skip
_size("casting.pattern_large", "large diameter of the pattern", _LONGER,
      lambda d, w, r: pattern_size(_blank(d, w, r).large_diameter_mm, r.value("contraction")))  # fmt: skip
_size("casting.pattern_height", "height of the pattern", _LONGER,
      lambda d, w, r: pattern_size(_blank(d, w, r).height_mm, r.value("contraction")))  # fmt: skip
_size("casting.feeder", "diameter and height of a feeder beside the casting",
      "modulus of the casting times a factor, for a round feeder as high as it is wide", _feeder)  # fmt: skip
_size("casting.stick", "height of a plain stick for one blank, its top sawn off",
      "height of the blank divided by the share that stays",
      lambda d, w, r: stick_height(_blank(d, w, r).height_mm, r.value("stick_share")))  # fmt: skip


def _printed(name: str, rule: str, label: str, unit: str, rounding: str) -> None:
    @computed(name, label=label, unit=unit, rounding=rounding, needs=("job.cast_collars",), tables=_RULES,
              how="from the rules for patterns")  # fmt: skip
    def _of_rule(_wanted: bool, rules: Table) -> float:
        return rules.value(rule)


_printed("casting.allowance", "allowance", "metal to machine on each surface", "mm", "length")
_printed("casting.top_extra", "top_extra", "more metal on the top face", "mm", "length")
