"""The drawings of the work, one module for a family of kinds, found by their kind."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.bar_held import bar_in_collet, bar_in_four_jaws, bar_in_spindle, bar_in_steady
from tailtrue.render.figures.bar_upright import bar_upright
from tailtrue.render.figures.between_centres import between_centres
from tailtrue.render.figures.blank_collet import blank_in_collet
from tailtrue.render.figures.blank_held import blank_held
from tailtrue.render.figures.boring_reach import boring_reach
from tailtrue.render.figures.centre_hole import centre_hole
from tailtrue.render.figures.collar_blank import collar_blank
from tailtrue.render.figures.drill_ladder import drill_ladder
from tailtrue.render.figures.four_jaws import blank_in_four_jaws, blank_on_band
from tailtrue.render.figures.indicators import indicator_on_collars, indicator_on_quill
from tailtrue.render.figures.on_faceplate import blank_on_faceplate
from tailtrue.render.figures.on_stub import collar_on_stub
from tailtrue.render.figures.raw_blank import raw_blank
from tailtrue.render.figures.soft_jaws import blank_in_soft_jaws, jaws_on_plug
from tailtrue.render.figures.speed_plate import speed_plate
from tailtrue.render.figures.tailstock_move import tailstock_move
from tailtrue.render.figures.tailstock_set_over import tailstock_set_over
from tailtrue.render.figures.taper_work import taper_work

Draw = Callable[[Drawing, Dials], str]

KINDS: Mapping[str, Draw] = MappingProxyType(
    {
        "bar-in-collet": bar_in_collet,
        "bar-in-four-jaws": bar_in_four_jaws,
        "bar-in-spindle": bar_in_spindle,
        "bar-in-steady": bar_in_steady,
        "bar-upright": bar_upright,
        "between-centres": between_centres,
        "blank-held": blank_held,
        "blank-in-collet": blank_in_collet,
        "blank-in-four-jaws": blank_in_four_jaws,
        "blank-in-soft-jaws": blank_in_soft_jaws,
        "blank-on-band": blank_on_band,
        "blank-on-faceplate": blank_on_faceplate,
        "boring-reach": boring_reach,
        "centre-hole": centre_hole,
        "collar-blank": collar_blank,
        "collar-on-stub": collar_on_stub,
        "drill-ladder": drill_ladder,
        "indicator-on-collars": indicator_on_collars,
        "indicator-on-quill": indicator_on_quill,
        "jaws-on-plug": jaws_on_plug,
        "raw-blank": raw_blank,
        "speed-plate": speed_plate,
        "tailstock-move": tailstock_move,
        "tailstock-set-over": tailstock_set_over,
        "taper-work": taper_work,
    }
)


def figure_of(drawing: Drawing, dials: Dials) -> str:
    """A drawing as SVG. Raises ValueError for a kind nobody draws, or a dimension that is not there."""
    if drawing.kind not in KINDS:
        raise ValueError(f"nobody draws the kind {drawing.kind}; there are {', '.join(KINDS)}")
    return KINDS[drawing.kind](drawing, dials)
