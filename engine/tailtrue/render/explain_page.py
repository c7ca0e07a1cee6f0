"""Why the move is what it is: a plan of this bar with the offset exaggerated, and the reasons. One HTML page."""

from markupsafe import Markup

from tailtrue.papers import Explained, Plan
from tailtrue.parts import Dials, Figure
from tailtrue.render.ink import LINE_HEIGHT, Ink
from tailtrue.render.numbers import read, show, show_one
from tailtrue.render.paper import page
from tailtrue.render.words import unit_words

TITLE = "Why the tailstock moves by so much"
CAPTION = "Plan, seen from above. The offset is drawn far too large; the places along the bar are to scale."
WIDTH, HEIGHT = 170.0, 106.0
_HEAD_X, _TAIL_X = 22.0, 138.0
_LINE = 42.0
_OFFSET = 8.0  # on paper, of the tailstock centre
_RADIUS = 15.0  # of a collar cut on the line
_BAR = 4.0
_COLLAR = 9.0


def explain_html(explained: Explained) -> str:
    """The explanation as one HTML file."""
    drawing = Markup(plan_drawing(explained.plan, explained.head.dials))
    return page("explain.html.j2", explained.head, explained=explained, drawing=drawing, title=TITLE, caption=CAPTION)


def plan_drawing(plan: Plan, dials: Dials) -> str:
    """The plan as SVG: the line of the centres, the slanting bar, the path of the tool, and the sizes."""
    ink = Ink()
    toward = 1 if plan.tool_in_front else -1  # down the page is toward the operator
    # A collar that came out large stood away from the tool.
    aside = -toward * _OFFSET if plan.tailstock_larger else toward * _OFFSET
    ink.words(_HEAD_X - 20, 4, ("far side",))
    ink.words(_HEAD_X - 20, HEIGHT - 2, ("YOU STAND HERE",), "start", "strong")
    ink.line(_HEAD_X - 8, _LINE, _TAIL_X + 14, _LINE, "chain")
    stations = [_along(figure, plan) for figure in (plan.head_station, plan.tail_station)]
    path = _LINE + toward * _RADIUS
    _bar(ink, stations, aside, path)
    ink.line(_HEAD_X + 2, path, _TAIL_X - 2, path, "path")
    _tool(ink, (stations[0] + stations[1]) / 2, path, toward)
    _centres(ink, aside)
    _sizes(ink, stations, plan, dials)
    _offset(ink, aside, plan, dials)
    ink.words(WIDTH, HEIGHT - 2, (unit_words(dials),), "end")
    return ink.svg("plan", WIDTH, HEIGHT, TITLE, _told(plan, dials))


def _along(station: Figure, plan: Plan) -> float:
    return _HEAD_X + (_TAIL_X - _HEAD_X) * station.value / plan.span.value


def _axis(x: float, aside: float) -> float:
    return _LINE + aside * (x - _HEAD_X) / (_TAIL_X - _HEAD_X)


def _bar(ink: Ink, stations: list[float], aside: float, path: float) -> None:
    ends = [(_HEAD_X, _axis(_HEAD_X, aside)), (_TAIL_X, _axis(_TAIL_X, aside))]
    (x1, y1), (x2, y2) = ends
    half = _BAR / 2
    ink.outline(((x1, y1 - half), (x2, y2 - half), (x2, y2 + half), (x1, y1 + half)), "edge steel")
    for x in stations:
        # As wide on the one side of its own axis as on the other: it was cut while it turned.
        radius = abs(path - _axis(x, aside))
        left, right = x - _COLLAR / 2, x + _COLLAR / 2
        ink.outline(
            ((left, _axis(left, aside) - radius), (right, _axis(right, aside) - radius),
             (right, _axis(right, aside) + radius), (left, _axis(left, aside) + radius))
        )  # fmt: skip
    ink.line(x1, y1, x2, y2, "bold")


def _tool(ink: Ink, x: float, path: float, toward: int) -> None:
    ink.outline(
        (
            (x, path),
            (x + 2, path + toward * 3),
            (x + 2, path + toward * 10),
            (x - 2, path + toward * 10),
            (x - 2, path + toward * 3),
        )
    )
    ink.words(x + 4, path + toward * 8 + 1, ("tool, along its path",))


def _centres(ink: Ink, aside: float) -> None:
    ink.outline(((_HEAD_X - 8, _LINE - 4), (_HEAD_X, _LINE), (_HEAD_X - 8, _LINE + 4)))
    ink.words(_HEAD_X - 20, _LINE + 9, ("headstock", "centre"))
    y = _LINE + aside
    ink.outline(((_TAIL_X + 8, y - 4), (_TAIL_X, y), (_TAIL_X + 8, y + 4)))
    ink.box(_TAIL_X + 8, y - 5, 8, 10)


def _sizes(ink: Ink, stations: list[float], plan: Plan, dials: Dials) -> None:
    near, far, whole = HEIGHT - 27, HEIGHT - 19, HEIGHT - 11
    for x, foot in ((_HEAD_X, whole), (stations[0], near), (stations[1], far), (_TAIL_X, whole)):
        ink.line(x, HEIGHT - 33, x, foot + 1)
    first, second, spacing, span = (
        read(one, dials).number for one in (plan.head_station, plan.tail_station, plan.spacing, plan.span)
    )
    ink.across(_HEAD_X, stations[0], near, f"a {first}")
    ink.across(stations[0], stations[1], near, f"b - a {spacing}")
    ink.across(_HEAD_X, stations[1], far, f"b {second}")
    ink.across(_HEAD_X, _TAIL_X, whole, f"L {span}")


def _offset(ink: Ink, aside: float, plan: Plan, dials: Dials) -> None:
    x = _TAIL_X + 22
    end = _LINE + aside
    ink.line(_TAIL_X + 16, end, x + 2, end)
    ink.line(x, end, x, _LINE, "thin")
    ink.arrow(x, _LINE, "up" if aside > 0 else "down")
    way = "toward you" if aside < 0 else "away from you"
    end_name = "tailstock" if plan.tailstock_larger else "headstock"
    # Without readings of its own the drawing shows a case, not a move to be made.
    what = ("move", show_one(plan.move, dials)) if plan.move else (f"{end_name} end", "larger: move")
    head = end - 7.5 - LINE_HEIGHT * len(what) if aside < 0 else end + 10.5
    ink.words(WIDTH, head, (*what, way), "end", "strong")


def _told(plan: Plan, dials: Dials) -> str:
    side = "nearest you" if plan.tool_in_front else "on the far side"
    end = "tailstock" if plan.tailstock_larger else "headstock"
    found = f" It is larger by {show_one(plan.difference, dials)}." if plan.difference else ""
    move = f" The centre moves back onto the line by {show_one(plan.move, dials)}." if plan.move else ""
    return (
        f"The bar from above, the tool {side}. The headstock centre is on the line, the tailstock centre beside it, so that "
        f"the collar at the {end} end stands farther from the path of the tool and comes out larger.{found}{move} Headstock "
        f"collar {show(plan.head_station, dials)} from the headstock centre, tailstock collar "
        f"{show(plan.tail_station, dials)}, "
        f"{show(plan.spacing, dials)} apart, {show(plan.span, dials)} between the points."
    )
