"""Drawings of the making with any sizes, for the tests."""

from typing import Any

from hypothesis import strategies as st

from tailtrue.advise import knowledge
from tailtrue.procedure import Drawing

from .sample_pieces import mm

MINE = frozenset(
    {"bar-in-spindle", "drill-ladder", "collar-blank", "bar-in-chuck", "bar-in-steady", "boring-reach", "blank-held"}
)
# The drawings as the knowledge has them: their words are printed, so they are the words that must fit.
PLANS = {one.file.id: one for one in knowledge().drawings if one.file.kind in MINE}


def drawing(name: str, **sizes: float) -> Drawing:
    """One of them with these sizes; two underscores stand for a point."""
    plan = PLANS[name]
    return Drawing(
        id=name,
        kind=plan.file.kind,
        place="1.1",
        title=plan.file.title,
        caption=plan.file.caption,
        dimensions={written.replace("__", "."): mm(f"it.{written}", value, "size") for written, value in sizes.items()},
        labels={key: wording.words for key, wording in plan.labels.items()},
    )


@st.composite
def drawings(draw: st.DrawFn) -> Drawing:
    """Any of them, as small and as large as a shop may have it."""
    name = draw(st.sampled_from(sorted(PLANS)))
    return drawing(name, **draw(_SIZES[PLANS[name].file.kind]))


def _between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_subnormal=False).map(lambda value: round(value, 3))


@st.composite
def _blank(draw: st.DrawFn) -> dict[str, float]:
    width, face, bar = draw(_between(12, 40)), draw(_between(0.5, 3)), draw(_between(10, 60))
    diameter = bar + draw(_between(12, 100))
    sizes = {"width": width, "each_face": face, "sawn_width": width + 2 * face, "bar": bar, "diameter": diameter}
    return {**sizes, "sawn_diameter": diameter + draw(_between(0.5, 60))}


def _held(with_spacer: bool) -> st.SearchStrategy[dict[str, float]]:
    @st.composite
    def sizes(draw: st.DrawFn) -> dict[str, float]:
        grip, out = draw(_between(10, 50)), draw(_between(4, 30))
        made = {"grip": grip, "standing_out": out, "sawn_width": grip + out, "diameter": draw(_between(25, 160))}
        spacer = {"spacer": draw(_between(2, 45))} if with_spacer else {}
        return {**made, **spacer, "jaw_depth": grip + sum(spacer.values())}

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


_SIZES: dict[str, Any] = {
    "collar-blank": _blank(),
    "blank-held": st.one_of(_held(True), _held(False)),
    "drill-ladder": _ladder(),
    "boring-reach": st.one_of(
        _reach(), st.builds(lambda sizes, behind: {**sizes, "behind": behind}, _reach(), _between(2, 45))
    ),
    "bar-in-chuck": _bar(),
    "bar-in-steady": _bar(),
    "bar-in-spindle": st.builds(
        lambda sizes, bore: {**sizes, "spindle_bore": sizes["diameter"] + bore}, _bar(), _between(0.5, 40)
    ),
}
