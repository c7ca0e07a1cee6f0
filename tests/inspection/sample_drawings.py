"""Drawings of the sample: one of each kind, at one with the sheet."""

from tailtrue.procedure import Drawing

from .sample_pieces import figure, mm

FRONT = {"tool_side": "front"}
SCREWS = ("the far screw", "the near screw")
SPEEDS = (200.0, 500.0, 800.0, 1250.0, 2000.0)
SETTINGS = ("small pulley", "A", "B", "C", "D")


def drawings() -> tuple[Drawing, ...]:
    """Every kind of drawing, each at a step of the sample."""
    held = {"diameter": ("held.diameter", 22.0), "length": ("bar.saw", 384.0), "standing_out": ("bar.short_overhang", 30.0)}
    blank = {"sawn_width": ("collar.saw_width", 33.0), "grip": ("collar.grip", 20.0), "standing_out": ("collar.out", 13.0)}
    blank |= {"jaw_depth": ("chuck.jaw_depth", 32.0), "diameter": ("collar.stock_diameter", 65.0)}
    reach = {"overhang": ("bore.overhang", 38.0), "width": ("blank.width", 30.0), "room": ("bore.room", 8.0)}
    reach |= {"shank": ("bore.shank", 12.0), "hole": ("hole.last", 20.0)}
    centres = {"dog": ("crib.dog_room", 25.0), "gap": ("collar.dog_gap", 10.0), "to_collar": ("collar.inner_edge", 35.0)}
    centres |= {"length": ("bar.saw", 384.0), "quill": ("lathe.quill_out", 30.0), "tool_clear": ("collar.over_bar", 19.0)}
    return (
        _drawing("bar-in-spindle", "1.1", {**held, "spindle_bore": ("lathe.spindle_bore", 30.0)}),
        _drawing("bar-in-steady", "1.1", held),
        _drawing("blank-held", "2.1", {**blank, "spacer": ("crib.spacer", 12.0)}),
        _drawing(
            "collar-blank",
            "2.1",
            {
                "sawn_width": ("collar.saw_width", 33.0),
                "width": ("blank.width", 30.0),
                "each_face": ("collar.each_face", 1.5),
                "sawn_diameter": ("collar.stock_diameter", 65.0),
                "diameter": ("blank.finished", 60.0),
                "bar": ("held.diameter", 22.0),
            },
        ),
        Drawing(
            id="drill-ladder",
            kind="drill-ladder",
            place="2.3",
            title="The hole",
            caption="Each drill.",
            dimensions={"drill.1": mm("hole.ladder.size", 20.0, "tool"), "rough_bore": mm("bore.rough_to", 21.7)},
            labels={"last": "last drill"},
        ),
        _drawing("boring-reach", "2.1", reach),
        _drawing("between-centres", "4.1", centres).model_copy(update={"said": FRONT}),
        _drawing("indicator-on-collars", "4.1", {}).model_copy(update={"said": FRONT}),
        _drawing("indicator-on-quill", "5.1", {"quill": ("lathe.quill_out", 30.0)}).model_copy(update={"said": FRONT}),
        _drawing("tailstock-move", "5.2", {}).model_copy(
            update={
                "labels": {"larger": "toward you", "smaller": "away from you"},
                "said": {**FRONT, "screw_toward": SCREWS[0], "screw_away": SCREWS[1]},
            }
        ),
        _plate(),
    )


def _plate() -> Drawing:
    listed = {f"speed.{number}": ("lathe.speeds", one) for number, one in enumerate(SPEEDS, start=1)}
    runs = {"bar": ("bar.speed", 800.0), "drill.1": ("hole.ladder.speed", 500.0)}
    runs |= {"bore": ("bore.speed", 500.0), "skim": ("skim.speed", 500.0)}
    return Drawing(
        id="speed-plate",
        kind="speed-plate",
        place="front",
        title="The speeds",
        caption="Set with the spindle stopped.",
        dimensions={name: figure(fact, value, "1/min", "speed") for name, (fact, value) in {**listed, **runs}.items()},
        labels={"bar": "face the bar", "drill": "drill", "bore": "bore", "skim": "skim"},
        said={f"setting.{number}": word for number, word in enumerate(SETTINGS, start=1)},
    )


def _drawing(kind: str, place: str, sizes: dict[str, tuple[str, float]]) -> Drawing:
    return Drawing(
        id=kind,
        kind=kind,
        place=place,
        title="Seen along the axis",
        caption="All of it at once.",
        dimensions={name: mm(fact, value) for name, (fact, value) in sizes.items()},
        labels={"chuck": "chuck"},
    )
