"""Drawings of the making with any sizes, for the tests."""

from typing import Any

from hypothesis import strategies as st

from tailtrue.advise import knowledge
from tailtrue.parts import Figure
from tailtrue.procedure import Drawing

from .sample_pieces import mm

# The drawings as the knowledge has them: their words are printed, so they are the words that must fit.
PLANS = {one.file.id: one for one in knowledge().drawings}
_FRONT = {"larger": "toward you", "smaller": "away from you", "way": "toward you"}
_REAR = {"larger": "away from you", "smaller": "toward you", "way": "away from you"}


def drawing(name: str, said: dict[str, str] | None = None, **sizes: float) -> Drawing:
    """One of them with these sizes and words of the user; two underscores stand for a point."""
    plan = PLANS[name]
    said = said or {}
    ways = _REAR if said.get("tool_side") == "rear" else _FRONT
    unit = speed if plan.file.kind == "speed-plate" else _size
    return Drawing(
        id=name,
        kind=plan.file.kind,
        place="1.1",
        title=plan.file.title,
        caption=plan.file.caption,
        dimensions={written.replace("__", "."): unit(f"it.{written}", value) for written, value in sizes.items()},
        labels={key: ways.get(key, wording.words) for key, wording in plan.labels.items()},
        said=said,
    )


def _size(fact: str, value: float) -> Figure:
    angle = fact.endswith(".angle")
    return Figure(fact=fact, value=value, unit="deg", rounding="angle") if angle else size(fact, value)


def size(fact: str, value: float) -> Figure:
    """A length."""
    return mm(fact, value, "size")


def speed(fact: str, value: float) -> Figure:
    """A speed of the spindle."""
    return Figure(fact=fact, value=value, unit="1/min", rounding="speed")


@st.composite
def drawings(draw: st.DrawFn) -> Drawing:
    """Any of them, as small and as large as a shop may have it."""
    name = draw(st.sampled_from(sorted(PLANS)))
    kind = PLANS[name].file.kind
    return drawing(name, draw(_SAID.get(kind, st.just({}))), **draw(_SIZES[kind]))


def _between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_subnormal=False).map(lambda value: round(value, 3))


@st.composite
def _blank(draw: st.DrawFn) -> dict[str, float]:
    width, face, bar = draw(_between(12, 40)), draw(_between(0.5, 3)), draw(_between(10, 60))
    diameter = bar + draw(_between(12, 100))
    sizes = {"width": width, "each_face": face, "sawn_width": width + 2 * face, "bar": bar, "diameter": diameter}
    hole = {"hole": round(bar * draw(st.floats(0.3, 0.95)), 3)} if draw(st.booleans()) else {}
    return {**sizes, **hole, "sawn_diameter": diameter + draw(_between(0.5, 60))}


def _held(with_spacer: bool) -> st.SearchStrategy[dict[str, float]]:
    @st.composite
    def sizes(draw: st.DrawFn) -> dict[str, float]:
        grip, out = draw(_between(10, 50)), draw(_between(4, 30))
        made = {"grip": grip, "standing_out": out, "sawn_width": grip + out, "diameter": draw(_between(25, 160))}
        spacer = {"spacer": draw(_between(2, 45))} if with_spacer else {}
        hole = {"hole": round(made["diameter"] * draw(st.floats(0.1, 0.8)), 3)} if draw(st.booleans()) else {}
        return {**made, **spacer, **hole, "jaw_depth": grip + sum(spacer.values())}

    return sizes()


@st.composite
def _ladder(draw: st.DrawFn) -> dict[str, float]:
    steps = draw(st.lists(_between(0.3, 12), min_size=1, max_size=9))
    sizes, drill = {}, draw(_between(1, 8))
    for number, step in enumerate(steps, start=1):
        sizes[f"drill__{number}"] = round(drill, 3)
        drill += step
    return {"rough_bore": drill, **sizes}


@st.composite
def _reach(draw: st.DrawFn) -> dict[str, float]:
    width, room, shank = draw(_between(12, 40)), draw(_between(5, 12)), draw(_between(4, 40))
    sizes = {"width": width, "room": room, "overhang": width + room, "shank": shank}
    sizes["hole"] = shank + draw(_between(0.5, 20))
    return {**sizes, **({"chuck_hole": sizes["hole"] + draw(_between(0.5, 60))} if draw(st.booleans()) else {})}


@st.composite
def _bar(draw: st.DrawFn) -> dict[str, float]:
    diameter, out = draw(_between(10, 60)), draw(_between(12, 120))
    return {"diameter": diameter, "standing_out": out, "length": out + draw(_between(10, 900))}


@st.composite
def _centres(draw: st.DrawFn) -> dict[str, float]:
    dog, gap = draw(_between(8, 80)), draw(_between(1, 60))
    sizes = {"dog": dog, "gap": gap, "to_collar": dog + gap, "length": 2 * (dog + gap) + draw(_between(20, 900))}
    return {**sizes, "quill": draw(_between(5, 80)), "tool_clear": draw(_between(3, 90))}


@st.composite
def _speeds(draw: st.DrawFn) -> dict[str, float]:
    listed = sorted(draw(st.sets(st.integers(5, 4000), min_size=1, max_size=24)))
    uses = [name for name in PLANS["speed-plate"].labels if name != "drill"] + ["drill__1", "drill__2"]
    sizes = {f"speed__{number}": float(one) for number, one in enumerate(listed, start=1)}
    return {**sizes, **{use: float(draw(st.sampled_from(listed))) for use in uses}}


_WORDS = st.lists(
    st.sampled_from(["rear", "screw", "turned", "in", "knurled", "5/16", "A2", "pulley,"]), min_size=1, max_size=9
)
_NAMES = _WORDS.map(" ".join)
_SIDE = st.fixed_dictionaries({"tool_side": st.sampled_from(["front", "rear"])})
_SAID: dict[str, Any] = {
    "between-centres": _SIDE,
    "indicator-on-collars": _SIDE,
    "indicator-on-quill": _SIDE,
    "tailstock-move": st.fixed_dictionaries(
        {"tool_side": st.sampled_from(["front", "rear"])}, optional={"screw_toward": _NAMES, "screw_away": _NAMES}
    ),
    "tailstock-set-over": st.fixed_dictionaries(
        {"tool_side": st.sampled_from(["front", "rear"])}, optional={"screw_toward": _NAMES, "screw_away": _NAMES}
    ),
    "taper-work": st.fixed_dictionaries(
        {"tool_side": st.sampled_from(["front", "rear"]), "small_end": st.sampled_from(["headstock", "tailstock"])}
    ),
    "speed-plate": st.one_of(
        st.just({}), st.builds(lambda name: {f"setting.{number}": name for number in range(1, 25)}, _NAMES)
    ),
}


@st.composite
def _plugged(draw: st.DrawFn) -> dict[str, float]:
    step, plug, width = draw(_between(10, 40)), draw(_between(25, 150)), draw(_between(5, 60))
    sizes = {"step": step, "plug_width": width, "jaw_depth": step + width + draw(_between(2, 20))}
    return {**sizes, "plug": plug, "diameter": plug + draw(_between(6, 12))}


@st.composite
def _soft(draw: st.DrawFn) -> dict[str, float]:
    sizes = {**draw(_held(with_spacer=False)), "room": draw(_between(10, 60))}
    sizes["plug"] = round(sizes["diameter"] * draw(st.floats(0.82, 0.95)), 3)
    return {**sizes, "jaw_depth": sizes["grip"] + sizes["room"]}


@st.composite
def _stubbed(draw: st.DrawFn) -> dict[str, float]:
    inside, spigot, bore = draw(_between(1, 5)), draw(_between(10, 40)), draw(_between(10, 60))
    stub = bore + draw(_between(6, 16))
    sizes = {"inside": inside, "spigot": spigot, "width": inside + spigot, "stub_out": spigot + draw(_between(4, 8))}
    return {**sizes, "bore": bore, "stub": stub, "diameter": stub + draw(_between(6, 90))}


@st.composite
def _raw(draw: st.DrawFn) -> dict[str, float]:
    sizes = {"width": draw(_between(12, 40)), "first_face": draw(_between(0.5, 5)), "second_face": draw(_between(0.5, 30))}
    sizes["sawn_width"] = sum(sizes.values())
    sizes["bar"] = draw(_between(10, 60))
    sizes["diameter"] = sizes["bar"] + draw(_between(12, 100))
    sizes["sawn_diameter"] = sizes["diameter"] + draw(_between(0.5, 20))
    outer = draw(st.sampled_from(["large", "corners"]))
    return {**sizes, outer: sizes["sawn_diameter"] * (1.414 if outer == "corners" else 1.05)}


@st.composite
def _four(draw: st.DrawFn) -> dict[str, float]:
    grip, clear, diameter = draw(_between(10, 40)), draw(_between(2, 6)), draw(_between(25, 160))
    sizes = {"grip": grip, "standing_out": grip + 2 * clear, "band": grip + clear, "sawn_width": 2 * (grip + clear)}
    sizes |= {"diameter": diameter, "band_diameter": diameter - draw(_between(0.5, 12))}
    room = {"room": draw(_between(0.5, 45))} if draw(st.booleans()) else {}
    return {**sizes, **room}


def _four_outer(sizes: dict[str, float], outer: str) -> dict[str, float]:
    return {**sizes, outer: sizes["diameter"] * 1.2} if outer else sizes


@st.composite
def _hole(draw: st.DrawFn) -> dict[str, float]:
    pilot = draw(_between(0.5, 10))
    cone_depth, pilot_depth = draw(_between(0.5, 9)), round(pilot * draw(st.floats(1.1, 1.6)), 3)
    cone = round(pilot + 2 * cone_depth * 0.57735, 3)
    return {"pilot": pilot, "cone": cone, "cone_depth": cone_depth, "depth": cone_depth + pilot_depth, "angle": 60.0}


_SIZES: dict[str, Any] = {
    "centre-hole": _hole(),
    "raw-blank": _raw(),
    "blank-in-four-jaws": st.builds(_four_outer, _four(), st.sampled_from(["", "large", "corners"])),
    "blank-on-band": _four(),
    "jaws-on-plug": _plugged(),
    "blank-in-soft-jaws": _soft(),
    "collar-on-stub": _stubbed(),
    "blank-on-faceplate": st.builds(
        lambda packing, width, straps, size, reach, spare: {
            "packing": packing,
            "sawn_width": width,
            "straps": straps,
            "diameter": size,
            "circle": size + reach,
            "plate": size + reach + spare,
        },
        _between(6, 60),
        _between(14, 80),
        _between(6, 60),
        _between(40, 150),
        _between(20, 150),
        _between(0, 100),
    ),
    "blank-in-collet": st.builds(
        lambda grip, out, spare, size: {
            "grip": grip,
            "standing_out": out,
            "sawn_width": grip + out,
            "collet_length": grip + spare,
            "diameter": size,
        },
        _between(7, 60),
        _between(4, 12),
        _between(0, 20),
        _between(25, 110),
    ),
    "bar-in-four-jaws": st.builds(
        lambda sizes, bore, out: {**sizes, "spindle_bore": sizes["diameter"] + bore, "run_out": out},
        _bar(),
        _between(0.5, 40),
        _between(0.01, 0.1),
    ),
    "bar-upright": st.builds(
        lambda sizes, room: {"diameter": sizes["diameter"], "length": sizes["length"], "height": sizes["length"] + room},
        _bar(),
        _between(10, 400),
    ),
    "bar-in-collet": st.builds(
        lambda sizes, bore: {**sizes, "spindle_bore": sizes["diameter"] + bore}, _bar(), _between(0.5, 40)
    ),
    "collar-blank": _blank(),
    "blank-held": st.one_of(_held(True), _held(False)),
    "drill-ladder": _ladder(),
    "boring-reach": st.one_of(
        _reach(), st.builds(lambda sizes, behind: {**sizes, "behind": behind}, _reach(), _between(2, 45))
    ),
    "between-centres": st.one_of(
        _centres(), _centres().map(lambda sizes: {**sizes, "to_middle": round(sizes["length"] / 2, 3)})
    ),
    "indicator-on-collars": st.just({}),
    "indicator-on-quill": st.fixed_dictionaries({"quill": _between(5, 80)}),
    "tailstock-move": st.just({}),
    "tailstock-set-over": st.fixed_dictionaries({"amount": _between(0.02, 15)}),
    "speed-plate": _speeds(),
    "taper-work": st.builds(
        lambda small, more, length, rest, amount: {
            "small": small,
            "large": small + more,
            "length": length,
            "work_length": length + rest,
            "amount": amount,
        },
        _between(5, 90),
        _between(0.05, 20),
        _between(5, 600),
        _between(10, 900),
        _between(0.02, 25),
    ),
    "bar-in-steady": _bar(),
    "bar-in-spindle": st.builds(
        lambda sizes, bore: {**sizes, "spindle_bore": sizes["diameter"] + bore}, _bar(), _between(0.5, 40)
    ),
}
