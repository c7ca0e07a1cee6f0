"""The bar as drawn: it goes into the lathe, and its collars go onto it."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_CLOSE_MM = 0.01
_CORNER = "collar.corner_diameter"
_ANGLE, _LIMITS = "centre_hole.angle", ("bar.least", "bar.largest")
_BORES = ("bore_a", "bore_b", "bore_middle", "bore_over")
# What the drawing takes from the steps.
_SAID = (*_LIMITS, *(f"{bore}.{end}" for bore in _BORES for end in ("least", "largest")), "rims.alike")
_CENTRE_DEG = 60.0
_NEEDED = ("bar.length", "bar.diameter", "collar.diameter", "collar.width", "collar.station", "collar.spacing")


def size(sheet: Sheet, name: str) -> float | None:
    """A dimension of the drawing in mm; None when it is missing or is no length."""
    drawing = sheet.procedure.drawing
    figure = drawing.dimensions.get(name) if drawing is not None else None
    return figure.value if figure is not None and figure.unit == "mm" else None


def dimensioned(sheet: Sheet) -> Iterator[Fault]:
    """Every dimension that makes the bar is there and is a length above nothing."""
    if sheet.procedure.drawing is None:
        return  # whether the sheet must have one is judged with its parts
    for name in _NEEDED:
        value = size(sheet, name)
        if value is None:
            yield Fault("drawing", f"the dimension {name} is missing, or is not in mm")
        elif not value > 0:
            yield Fault("drawing", f"the dimension {name} is {value:g} mm")


def bar_fits_lathe(sheet: Sheet) -> Iterator[Fault]:
    """The bar goes between the centres."""
    length = size(sheet, "bar.length")
    if length is not None and not length <= sheet.shop.between_centres_mm:
        yield Fault(
            "drawing", f"the bar is {length:g} mm long, the lathe takes {sheet.shop.between_centres_mm:g} mm between centres"
        )


def collar_swings(sheet: Sheet) -> Iterator[Fault]:
    """The collars clear the cross slide."""
    diameter = size(sheet, "collar.diameter")
    swing = sheet.shop.swing_over_cross_slide_mm
    if diameter is not None and not diameter < swing:
        yield Fault("drawing", f"a collar of {diameter:g} mm does not clear a swing of {swing:g} mm over the cross slide")
    for placed, _, figure in sheet.at_steps:
        if figure.fact == _CORNER and not figure.value < swing:
            what = f"a raw blank that swings {figure.value:g} mm does not clear {swing:g} mm over the cross slide"
            yield Fault(placed.where, what)


def collars_fit_bar(sheet: Sheet) -> Iterator[Fault]:
    """Both collars sit on the bar, clear of its ends and of each other, alike from both ends."""
    found = {name: size(sheet, name) for name in _NEEDED}
    have = {name: value for name, value in found.items() if value is not None}
    if len(have) < len(_NEEDED):
        return  # told by the rule on missing dimensions
    station, width, spacing, length = (
        have[name] for name in ("collar.station", "collar.width", "collar.spacing", "bar.length")
    )
    if not station - width / 2 > 0:
        yield Fault("drawing", f"a collar {width:g} mm wide, its middle {station:g} mm from the end, hangs over the end")
    if not spacing > width:
        yield Fault("drawing", f"collars {width:g} mm wide, {spacing:g} mm from middle to middle, touch each other")
    if not abs(2 * station + spacing - length) <= _CLOSE_MM:
        yield Fault(
            "drawing", f"two stations of {station:g} mm and {spacing:g} mm between do not make the {length:g} mm of the bar"
        )
    if not have["collar.diameter"] > have["bar.diameter"]:
        yield Fault("drawing", "the collars are no larger than the bar")


def bar_as_measured(sheet: Sheet) -> Iterator[Fault]:
    """A bar that exists is drawn as it was measured."""
    for name, measured in sheet.shop.bar_on_hand.items():
        drawn = size(sheet, name)
        if drawn is not None and not abs(drawn - measured) <= _CLOSE_MM:
            yield Fault("drawing", f"{name} is {measured:g} mm on the bar on hand, the sheet says {drawn:g} mm")


def hole_and_limits(sheet: Sheet) -> Iterator[Fault]:
    """The centre hole has the angle of a lathe centre; the limits of the bar lie about its size, as the steps say."""
    drawing = sheet.procedure.drawing
    if drawing is None:
        return
    angle = drawing.dimensions.get(_ANGLE)
    if angle is not None and (angle.unit, angle.value) != ("deg", _CENTRE_DEG):
        yield Fault("drawing", f"a centre hole of {angle.value:g} {angle.unit} does not fit a lathe centre")
    nominal, least, largest = (size(sheet, name) for name in ("bar.diameter", *_LIMITS))
    if nominal is not None and least is not None and largest is not None and not least <= nominal <= largest:
        yield Fault("drawing", f"the bar of {nominal:g} mm lies outside its limits of {least:g} mm and {largest:g} mm")
    for name in _SAID:
        drawn = drawing.dimensions.get(name)
        said = {found.figure.value for found in sheet.at_steps if drawn is not None and found.figure.fact == drawn.fact}
        if drawn is not None and said != {drawn.value}:
            values = " or ".join(f"{value:g} mm" for value in sorted(said)) or "nothing"
            yield Fault("drawing", f"{name} is {drawn.value:g} mm on the drawing, the steps say {values}")
