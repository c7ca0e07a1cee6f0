"""One drawing of each entry of the knowledge, on sizes that a shop may have."""

from tailtrue.procedure import Drawing

from .sample_drawings import drawing


def sound(name: str) -> Drawing:
    """The drawing of this name."""
    return _SOUND[name]


_SOUND = {
    "collar-blank": drawing("collar-blank", sawn_width=28, width=25, each_face=1.5, sawn_diameter=70, diameter=64, bar=25),
    "blank-in-jaws": drawing("blank-in-jaws", sawn_width=30, grip=18, standing_out=12, jaw_depth=18, diameter=70),
    "blank-on-spacer": drawing(
        "blank-on-spacer", spacer=12, sawn_width=28, grip=20, standing_out=8, jaw_depth=32, diameter=70
    ),
    "drill-ladder": drawing("drill-ladder", rough_bore=24, drill__1=4, drill__2=12, drill__3=22),
    "boring-reach": drawing("boring-reach", width=25, room=8, overhang=33, shank=16, hole=23),
    "boring-reach-clear": drawing("boring-reach-clear", width=25, room=8, overhang=33, shank=16, hole=23, behind=12),
    "bar-in-steady": drawing("bar-in-steady", diameter=25, length=378, standing_out=37),
    "bar-in-spindle": drawing("bar-in-spindle", diameter=25, length=378, standing_out=37, spindle_bore=38),
    "bar-in-collet": drawing("bar-in-collet", diameter=25, length=378, standing_out=37, spindle_bore=38),
    "blank-in-collet": drawing("blank-in-collet", sawn_width=28, grip=21, standing_out=7, collet_length=30, diameter=60),
    "boring-reach-collet": drawing("boring-reach-collet", width=25, room=8, overhang=33, shank=16, hole=23, chuck_hole=62),
    "bar-in-four-jaws": drawing("bar-in-four-jaws", diameter=25, length=378, standing_out=37, spindle_bore=38, run_out=0.05),
    "bar-under-press": drawing("bar-under-press", diameter=25, length=378, height=700),
    "round-blank-by-halves": drawing(
        "round-blank-by-halves",
        sawn_width=33,
        first_face=1.5,
        second_face=6.5,
        width=25,
        sawn_diameter=70,
        diameter=64,
        bar=25,
    ),
    "jaws-on-plug": drawing("jaws-on-plug", jaw_depth=40, step=20, plug=62, plug_width=12, diameter=70),
    "blank-in-soft-jaws": drawing(
        "blank-in-soft-jaws", sawn_width=28, grip=20, standing_out=8, jaw_depth=40, room=20, plug=62, diameter=70
    ),
    "boring-reach-soft-jaws": drawing("boring-reach-soft-jaws", width=25, room=8, overhang=33, shank=16, hole=23, behind=20),
    "boring-reach-four-jaws": drawing("boring-reach-four-jaws", width=25, room=8, overhang=33, shank=16, hole=23, behind=14),
    "boring-reach-faceplate": drawing("boring-reach-faceplate", width=25, room=8, overhang=33, shank=16, hole=23, behind=20),
    "boring-reach-unmeasured": drawing("boring-reach-unmeasured", width=25, room=8, overhang=33, shank=16, hole=23),
    "centre-hole": drawing("centre-hole", cone=6.7, pilot=3.15, cone_depth=3.074, depth=7, angle=60),
    "slug-blank": drawing(
        "slug-blank",
        first_face=2,
        width=30,
        second_face=8,
        sawn_width=40,
        sawn_diameter=80,
        corners=113,
        diameter=74,
        bar=25,
    ),
    "cast-blank": drawing(
        "cast-blank", first_face=3, width=30, second_face=9, sawn_width=42, sawn_diameter=78, large=82, diameter=72, bar=25
    ),
    "slug-in-jaws": drawing(
        "slug-in-jaws",
        grip=16,
        standing_out=24,
        band=20,
        sawn_width=40,
        room=14,
        diameter=80,
        corners=113,
        band_diameter=79,
    ),
    "casting-in-jaws": drawing(
        "casting-in-jaws",
        grip=17,
        standing_out=25,
        band=21,
        sawn_width=42,
        room=13,
        diameter=78,
        large=82.5,
        band_diameter=73,
    ),
    "uneven-in-jaws": drawing(
        "uneven-in-jaws", grip=10, standing_out=18, band=14, sawn_width=28, diameter=70, band_diameter=68
    ),
    "blank-on-band": drawing(
        "blank-on-band", grip=16, standing_out=24, band=20, sawn_width=40, room=14, diameter=80, band_diameter=79
    ),
    "blank-on-faceplate": drawing(
        "blank-on-faceplate", packing=20, sawn_width=40, straps=25, plate=200, circle=160, diameter=80
    ),
    "collar-on-stub": drawing("collar-on-stub", width=25, spigot=23, inside=2, stub_out=27, stub=34, bore=25, diameter=70),
    "between-centres": drawing(
        "between-centres", {"tool_side": "front"}, dog=25, gap=12.5, to_collar=37.5, length=375, quill=30, tool_clear=22
    ),
    "between-centres-three": drawing(
        "between-centres-three",
        {"tool_side": "front"},
        dog=25,
        gap=12.5,
        to_collar=37.5,
        to_middle=187.5,
        length=375,
        quill=30,
        tool_clear=22,
    ),
    "indicator-on-collars": drawing("indicator-on-collars", {"tool_side": "front"}),
    "indicator-reads-collars": drawing("indicator-reads-collars", {"tool_side": "front"}),
    "indicator-on-quill": drawing("indicator-on-quill", {"tool_side": "front"}, quill=30),
    "tailstock-move": drawing("tailstock-move", {"tool_side": "front", "screw_away": "the near screw"}),
    "tailstock-move-one-screw": drawing("tailstock-move-one-screw", {"tool_side": "front"}),
    "tailstock-set-over": drawing("tailstock-set-over", {"tool_side": "front", "screw_toward": "the far screw"}, amount=2.5),
    "tailstock-set-over-one-screw": drawing("tailstock-set-over-one-screw", {"tool_side": "front"}, amount=2.5),
    "tailstock-set-back": drawing("tailstock-set-back", {"tool_side": "rear", "screw_away": "the near screw"}, amount=2.5),
    "tailstock-set-back-one-screw": drawing("tailstock-set-back-one-screw", {"tool_side": "rear"}, amount=2.5),
    "taper-work": drawing(
        "taper-work",
        {"tool_side": "front", "small_end": "tailstock"},
        large=30,
        small=28,
        length=100,
        work_length=250,
        amount=2.44,
    ),
    "speed-plate": drawing("speed-plate", {"setting.1": "B1"}, speed__1=60, speed__2=100, skim=100),
}
