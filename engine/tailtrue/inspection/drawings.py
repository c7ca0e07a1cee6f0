"""The drawings of the making: each at its step, complete, at one with the sheet, and possible."""

import re
from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise
from math import radians, tan

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.parts import Figure
from tailtrue.procedure import Drawing, Step

_FRONT = "front"
_CLOSE_MM = 0.001
_CENTRE_DEG = 60.0
_DOG_CLEAR_MM = 10.0  # the tool runs off the collar before it reaches the dog
_DIGIT = re.compile(r"\d")
Sizes = Mapping[str, float]
Judge = Callable[[Sizes], Iterator[str]]


def _where(drawing: Drawing) -> str:
    return f"drawing {drawing.id}"


def _steps(sheet: Sheet) -> dict[str, Step]:
    return {placed.step.number: placed.step for placed in sheet.steps}


def placed(sheet: Sheet) -> Iterator[Fault]:
    """Every drawing stands at a step of the sheet, and once."""
    steps = _steps(sheet)
    bar = sheet.procedure.drawing
    seen: set[str] = {bar.id} if bar is not None else set()
    for drawing in sheet.procedure.drawings:
        if drawing.place not in steps and drawing.place != _FRONT:
            yield Fault(_where(drawing), f"it stands at step {drawing.place}, and there is no such step")
        if drawing.id in seen:
            yield Fault(_where(drawing), "it stands on the sheet twice")
        seen.add(drawing.id)


def complete(sheet: Sheet) -> Iterator[Fault]:
    """A drawing is of a known kind and has the dimensions of its kind, each a length above nothing."""
    for drawing in sheet.procedure.drawings:
        kind = KINDS.get(drawing.kind)
        if kind is None:
            yield Fault(_where(drawing), f'nobody knows a drawing of the kind "{drawing.kind}"')
            continue
        for name in kind[0]:
            if name not in drawing.dimensions:
                yield Fault(_where(drawing), f"the dimension {name} is missing")
        for name, figure in drawing.dimensions.items():
            unit, what = _ANGLE if name in ANGLES else UNITS.get(drawing.kind, ("mm", "length"))
            if figure.unit != unit or not figure.value > 0:
                yield Fault(_where(drawing), f"the dimension {name} is {figure.value:g} {figure.unit}, and no {what}")


def agrees(sheet: Sheet) -> Iterator[Fault]:
    """A fact has one value: on the drawing, at its step, and everywhere else on the sheet."""
    steps = _steps(sheet)
    everywhere: dict[str, list[Figure]] = {}
    for found in sheet.figures:
        if not found.where.startswith("drawing "):
            everywhere.setdefault(found.figure.fact, []).append(found.figure)
    for drawing in sheet.procedure.drawings:
        here: dict[str, list[Figure]] = {}
        for figure in figures_in(steps[drawing.place]) if drawing.place in steps else ():
            here.setdefault(figure.fact, []).append(figure)
        for name, figure in drawing.dimensions.items():
            said = here.get(figure.fact) or everywhere.get(figure.fact) or [figure]
            if figure not in said:
                values = " or ".join(dict.fromkeys(f"{one.value:g} {one.unit}" for one in said))
                what = f"its {name} is {figure.value:g} {figure.unit}, the sheet gives {figure.fact} as {values}"
                yield Fault(_where(drawing), what)
        yield from _whole_lists(drawing, here)


def _whole_lists(drawing: Drawing, here: Mapping[str, list[Figure]]) -> Iterator[Fault]:
    """What is drawn of a list is the whole list, in its order."""
    drawn: dict[str, list[Figure]] = {}
    for name, figure in drawing.dimensions.items():
        if name.rpartition(".")[2].isdigit():
            drawn.setdefault(figure.fact, []).append(figure)
    for fact, figures in drawn.items():
        if fact in here and figures != here[fact]:
            yield Fault(_where(drawing), f"it does not show the list {fact} as the step gives it")


def makes_sense(sheet: Sheet) -> Iterator[Fault]:
    """The dimensions of a drawing fit each other."""
    for drawing in sheet.procedure.drawings:
        needed, judge = KINDS.get(drawing.kind, ((), _nothing))
        if all(name in drawing.dimensions for name in needed):
            sizes = {name: figure.value for name, figure in drawing.dimensions.items()}
            for what in judge(sizes):
                yield Fault(_where(drawing), what)


def words_alone(sheet: Sheet) -> Iterator[Fault]:
    """No number is typed into the words of a drawing."""
    labels = sorted((label for label in sheet.shop.labels if label), key=len, reverse=True)
    for drawing in sheet.procedure.drawings:
        for words in (drawing.title, drawing.caption, *drawing.labels.values()):
            bare = words
            for label in labels:
                bare = bare.replace(label, "")
            if _DIGIT.search(bare):
                yield Fault(_where(drawing), f'a number is typed into "{words}"')


def _nothing(_sizes: Sizes) -> Iterator[str]:
    return iter(())


def _equal(sizes: Sizes, whole: str, *parts: str) -> Iterator[str]:
    due = sum(sizes[name] for name in parts)
    if not abs(sizes[whole] - due) <= _CLOSE_MM:
        yield f"{' and '.join(parts)} make {due:g} mm, and {whole} is {sizes[whole]:g} mm"


def _above(sizes: Sizes, larger: str, smaller: str) -> Iterator[str]:
    if not sizes[larger] > sizes[smaller]:
        yield f"{larger} of {sizes[larger]:g} mm is not larger than {smaller} of {sizes[smaller]:g} mm"


def _blank(sizes: Sizes) -> Iterator[str]:
    if not abs(sizes["sawn_width"] - sizes["width"] - 2 * sizes["each_face"]) <= _CLOSE_MM:
        yield f"{sizes['width']:g} mm and twice {sizes['each_face']:g} mm do not make {sizes['sawn_width']:g} mm"
    yield from _above(sizes, "sawn_diameter", "diameter")
    yield from _above(sizes, "diameter", "bar")
    if "hole" in sizes:
        yield from _above(sizes, "diameter", "hole")


def _held(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "grip", "standing_out")
    if "hole" in sizes:
        yield from _above(sizes, "diameter", "hole")
    if "spacer" in sizes:
        yield from _equal(sizes, "jaw_depth", "spacer", "grip")
    elif sizes["grip"] > sizes["jaw_depth"] + _CLOSE_MM:
        yield f"a grip of {sizes['grip']:g} mm is more than jaws of {sizes['jaw_depth']:g} mm give"


def _centre_hole(sizes: Sizes) -> Iterator[str]:
    yield from _above(sizes, "cone", "pilot")
    yield from _above(sizes, "depth", "cone_depth")
    if sizes["angle"] != _CENTRE_DEG:
        yield f"a cone of {sizes['angle']:g} degrees does not fit a lathe centre"
    due = (sizes["cone"] - sizes["pilot"]) / 2 / tan(radians(_CENTRE_DEG / 2))
    if not abs(sizes["cone_depth"] - due) <= _CLOSE_MM:
        ends = f"from {sizes['pilot']:g} mm to {sizes['cone']:g} mm"
        yield f"{ends} a cone is {due:.4g} mm deep, not {sizes['cone_depth']:.4g} mm"


def _raw(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "first_face", "width", "second_face")
    yield from _above(sizes, "sawn_diameter", "diameter")
    yield from _above(sizes, "diameter", "bar")
    for outer in ("large", "corners"):
        if outer in sizes:
            yield from _above(sizes, outer, "sawn_diameter")
    if "hole" in sizes:
        yield from _above(sizes, "diameter", "hole")


def _four_jaws(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "grip", "standing_out")
    yield from _above(sizes, "diameter", "band_diameter")
    yield from _above(sizes, "standing_out", "band")
    for outer in ("large", "corners"):
        if outer in sizes:
            yield from _above(sizes, outer, "diameter")


def _on_band(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "grip", "standing_out")
    if not sizes["band"] + _CLOSE_MM >= sizes["grip"]:
        yield f"a band of {sizes['band']:g} mm is shorter than the grip of {sizes['grip']:g} mm on it"
    yield from _above(sizes, "sawn_width", "band")


def _on_plug(sizes: Sizes) -> Iterator[str]:
    yield from _above(sizes, "diameter", "plug")
    if not sizes["step"] + sizes["plug_width"] < sizes["jaw_depth"]:
        yield f"a step of {sizes['step']:g} mm runs into the plug, {sizes['plug_width']:g} mm wide behind it"


def _in_soft_jaws(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "grip", "standing_out")
    yield from _equal(sizes, "jaw_depth", "room", "grip")
    yield from _above(sizes, "diameter", "plug")
    if "hole" in sizes:
        yield from _above(sizes, "plug", "hole")


def _in_collet(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "sawn_width", "grip", "standing_out")
    if sizes["grip"] > sizes["collet_length"] + _CLOSE_MM:
        yield f"a grip of {sizes['grip']:g} mm is more than a collet of {sizes['collet_length']:g} mm gives"
    if "hole" in sizes:
        yield from _above(sizes, "diameter", "hole")


def _on_stub(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "width", "spigot", "inside")
    yield from _above(sizes, "stub_out", "spigot")
    yield from _above(sizes, "stub", "bore")
    yield from _above(sizes, "diameter", "stub")


def _on_faceplate(sizes: Sizes) -> Iterator[str]:
    yield from _above(sizes, "circle", "diameter")
    if not sizes["circle"] <= sizes["plate"] + _CLOSE_MM:
        yield f"straps on a circle of {sizes['circle']:g} mm stand out past a plate of {sizes['plate']:g} mm"


def _ladder(sizes: Sizes) -> Iterator[str]:
    drills = [value for name, value in sizes.items() if name.startswith("drill.")]
    if not drills:
        yield "it shows no drill"
    rising = [*drills, sizes["rough_bore"]]
    if any(not after > before for before, after in pairwise(rising)):
        yield "the holes do not grow from drill to drill and on to the bore"


def _reach(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "overhang", "width", "room")
    yield from _above(sizes, "hole", "shank")
    if "chuck_hole" in sizes and "behind" not in sizes:
        yield from _above(sizes, "chuck_hole", "hole")


def _bar_held(sizes: Sizes) -> Iterator[str]:
    if "spindle_bore" in sizes:
        yield from _above(sizes, "spindle_bore", "diameter")
    yield from _above(sizes, "length", "standing_out")


def _upright(sizes: Sizes) -> Iterator[str]:
    yield from _above(sizes, "height", "length")
    yield from _above(sizes, "length", "diameter")


def _between_centres(sizes: Sizes) -> Iterator[str]:
    yield from _equal(sizes, "to_collar", "dog", "gap")
    if not sizes["gap"] >= _DOG_CLEAR_MM - _CLOSE_MM:
        yield f"{sizes['gap']:g} mm between dog and collar; the tool needs {_DOG_CLEAR_MM:g} mm to run off"
    if not sizes["length"] > 2 * sizes["to_collar"]:
        yield f"two ends of {sizes['to_collar']:g} mm leave nothing of a bar of {sizes['length']:g} mm"
    if "to_middle" in sizes and not abs(2 * sizes["to_middle"] - sizes["length"]) <= _CLOSE_MM:
        yield f"{sizes['to_middle']:g} mm is not the middle of a bar of {sizes['length']:g} mm"


def _taper(sizes: Sizes) -> Iterator[str]:
    yield from _above(sizes, "large", "small")
    yield from _above(sizes, "work_length", "length")


def _plate(sizes: Sizes) -> Iterator[str]:
    speeds = [value for name, value in sizes.items() if name.startswith(LISTED_SPEED)]
    for name, value in sizes.items():
        if not name.startswith(LISTED_SPEED) and value not in speeds:
            yield f"{name} runs at {value:g} 1/min, and the lathe has no such speed"


LISTED_SPEED = "speed."
# Kinds whose dimensions are no lengths.
UNITS: Mapping[str, tuple[str, str]] = {"speed-plate": ("1/min", "speed")}

# Dimensions that are angles, whatever the drawing.
ANGLES = frozenset({"angle"})
_ANGLE = ("deg", "angle")

# Each kind: the dimensions it must have, and how they fit together.
KINDS: Mapping[str, tuple[tuple[str, ...], Judge]] = {
    "collar-blank": (("sawn_width", "width", "each_face", "sawn_diameter", "diameter", "bar"), _blank),
    "blank-held": (("sawn_width", "grip", "standing_out", "jaw_depth", "diameter"), _held),
    "centre-hole": (("cone", "pilot", "cone_depth", "depth", "angle"), _centre_hole),
    "raw-blank": (("sawn_width", "first_face", "second_face", "width", "sawn_diameter", "diameter", "bar"), _raw),
    "blank-in-four-jaws": (("sawn_width", "grip", "standing_out", "band", "diameter", "band_diameter"), _four_jaws),
    "blank-on-band": (("sawn_width", "grip", "standing_out", "band", "band_diameter"), _on_band),
    "blank-on-faceplate": (("packing", "sawn_width", "straps", "plate", "circle", "diameter"), _on_faceplate),
    "jaws-on-plug": (("jaw_depth", "step", "plug", "plug_width", "diameter"), _on_plug),
    "blank-in-soft-jaws": (
        ("sawn_width", "grip", "standing_out", "jaw_depth", "room", "plug", "diameter"),
        _in_soft_jaws,
    ),
    "blank-in-collet": (("sawn_width", "grip", "standing_out", "collet_length", "diameter"), _in_collet),
    "collar-on-stub": (("width", "spigot", "inside", "stub_out", "stub", "bore", "diameter"), _on_stub),
    "drill-ladder": (("rough_bore",), _ladder),
    "boring-reach": (("overhang", "width", "room", "shank", "hole"), _reach),
    "bar-in-collet": (("diameter", "length", "standing_out", "spindle_bore"), _bar_held),
    "bar-in-spindle": (("diameter", "length", "standing_out", "spindle_bore"), _bar_held),
    "bar-in-four-jaws": (("diameter", "length", "standing_out", "spindle_bore", "run_out"), _bar_held),
    "bar-in-steady": (("diameter", "length", "standing_out"), _bar_held),
    "bar-upright": (("diameter", "length", "height"), _upright),
    "between-centres": (("dog", "gap", "to_collar", "length", "quill", "tool_clear"), _between_centres),
    "indicator-on-collars": ((), _nothing),
    "indicator-on-quill": (("quill",), _nothing),
    "tailstock-move": ((), _nothing),
    "tailstock-set-over": (("amount",), _nothing),
    "taper-work": (("large", "small", "length", "work_length", "amount"), _taper),
    "speed-plate": (("speed.1",), _plate),
}
