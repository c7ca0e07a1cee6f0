"""Makes the letter face of the safety signs, with which a PDF prints a sign as one letter. Run it by hand after a sign was changed.

It needs packages that nothing else does: pip install fonttools skia-pathops

PYTHONPATH=engine python tests/sign_letters.py
"""

from io import BytesIO

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.svgLib.path import parse_path
from fontTools.ttLib import newTable
from fontTools.ttLib.tables.ttProgram import Program
from pathops import FillType, LineCap, LineJoin, Path, PathOp, op

from tailtrue.places import templates_folder
from tailtrue.render.sign_letters import FACE, TRIANGLE, letter
from tailtrue.render.symbols import SYMBOLS

HEIGHT = 24  # of a drawing
GAP = 1.2  # on either side of it
UNITS = 40  # whole steps a unit of the drawing: 4 thousandths of a millimetre on paper
NEAR = 0.6  # of a step: as far as a curve may be from its drawing
MADE = 3786912000  # in the file, which knows no clock
# Letters of a face without a program are fitted to the dots of a screen when they are taken up, which takes time and is of no
# use in print. A short one is not counted; this one puts down a number and takes it up again.
NOTHING_TO_DO = ["PUSHB[ ]", "1", "POP[ ]"] * 4


def drawn(path: str) -> Path:
    """What lies inside an odd number of the outlines of a path."""
    made = Path(fillType=FillType.EVEN_ODD)
    parse_path(path, made.getPen(glyphSet=None))
    made = made.transform(UNITS, 0, 0, UNITS, 0, 0)
    made.simplify(fix_winding=True)
    return made


def stroked(path: str, width: float, cap: LineCap = LineCap.ROUND_CAP) -> Path:
    made = Path()
    parse_path(path, made.getPen(glyphSet=None))
    made = made.transform(UNITS, 0, 0, UNITS, 0, 0)
    made.stroke(width * UNITS, cap, LineJoin.ROUND_JOIN, 4)
    made.convertConicsToQuads(NEAR / 4)
    made.simplify(fix_winding=True)
    return made


def disc(radius: float) -> Path:
    return drawn(f"M{12 - radius} 12a{radius} {radius} 0 1 0 {2 * radius} 0a{radius} {radius} 0 1 0 {-2 * radius} 0Z")


def both(one: Path, *others: Path) -> Path:
    for other in others:
        one = op(one, other, PathOp.UNION)
    return one


def without(one: Path, other: Path) -> Path:
    return op(one, other, PathOp.DIFFERENCE)


def figure(code: str, scale: float = 1, right: float = 0, down: float = 0) -> Path:
    symbol = SYMBOLS[code]
    parts = ([stroked(symbol.lines, 1.7)] if symbol.lines else []) + ([drawn(symbol.solids)] if symbol.solids else [])
    return both(Path(), *parts).transform(scale, 0, 0, scale, right * UNITS, down * UNITS)


def sign(code: str, on_black: bool) -> Path:
    """What is printed of a sign: in black on white paper, or in white on a black ground. Sizes are those of its drawing."""
    if code[0] == "W":
        rim = "M12 1.8L22.9 21.2H1.1Z"
        dark = both(stroked(rim, 2), figure(code, 0.61, 4.7, 7.4))
        return without(drawn(rim), dark) if on_black else dark
    if code[0] == "P":
        bar = stroked("M4.5 4.5L19.5 19.5", 2, LineCap.BUTT_CAP)
        dark = both(without(disc(11.6), disc(9.6)), bar, figure(code, 0.9, 1.2, 1.2))
        return without(disc(11.6), dark) if on_black else dark
    outer, inner = (disc(11.8), disc(11)) if code[0] == "M" else (drawn("M.2 .2H23.8V23.8H.2Z"), drawn("M1 1H23V23H1Z"))
    light = figure(code)
    return both(without(outer, inner), light) if on_black else without(inner, light)


def triangle() -> Path:
    """The mark of a safety message: the box of its drawing is 22 high."""
    made = both(stroked("M12 1L23.2 21H.8Z", 2), stroked("M12 7.5V14.2M12 16.2V18.6", 2.4, LineCap.BUTT_CAP))
    return made.transform(1, 0, 0, 1, 0, 2 * UNITS)


def glyph(shape: Path, gap: float):  # type: ignore[no-untyped-def]
    """Outlines upwards from the base line, their curves of the kind that a letter is made of."""
    pen = TTGlyphPen(None)
    shape.transform(1, 0, 0, -1, gap * UNITS, HEIGHT * UNITS).draw(Cu2QuPen(pen, NEAR, reverse_direction=True))
    return pen.glyph()


def face() -> bytes:
    """The file: each sign twice, the one on a black ground as the first set of other letters."""
    shapes = {letter(code): (glyph(sign(code, on_black=False), GAP), HEIGHT + 2 * GAP) for code in SYMBOLS}
    shapes[TRIANGLE] = glyph(triangle(), 0), HEIGHT
    # A face without a space is not measured by its own letters.
    shapes[" "] = TTGlyphPen(None).glyph(), GAP
    names = {one: f"u{ord(one):X}" for one in sorted(shapes)}
    other = {
        f"{names[one]}.black": glyph(sign(code, on_black=True), GAP)
        for one, code in sorted((letter(code), code) for code in SYMBOLS)
    }
    widths = {name: shapes[one][1] for one, name in names.items()} | dict.fromkeys(other, HEIGHT + 2 * GAP)
    made = FontBuilder(HEIGHT * UNITS, isTTF=True)
    made.setupGlyphOrder([".notdef", *widths])
    made.setupCharacterMap({ord(one): name for one, name in names.items()})
    made.setupGlyf({".notdef": TTGlyphPen(None).glyph(), **{name: shapes[one][0] for one, name in names.items()}, **other})
    sides = {name: getattr(made.font["glyf"][name], "xMin", 0) for name in widths}
    made.setupHorizontalMetrics(
        {".notdef": (0, 0), **{name: (round(width * UNITS), sides[name]) for name, width in widths.items()}}
    )
    made.setupHorizontalHeader(ascent=HEIGHT * UNITS, descent=0)
    made.setupNameTable({"familyName": FACE, "styleName": "Regular", "psName": FACE})
    made.setupOS2(sTypoAscender=HEIGHT * UNITS, sTypoDescender=0, usWinAscent=HEIGHT * UNITS, usWinDescent=0)
    exchanged = "".join(f"sub {name.removesuffix('.black')} by {name};" for name in other)
    made.addOpenTypeFeatures(f"feature ss01 {{ {exchanged} }} ss01;")
    made.setupPost(keepGlyphNames=False)
    made.updateHead(created=MADE, modified=MADE)
    made.font["prep"] = newTable("prep")
    made.font["prep"].program = Program()
    made.font["prep"].program.fromAssembly(NOTHING_TO_DO)
    made.font.recalcTimestamp = False
    written = BytesIO()
    made.save(written)
    return written.getvalue()


if __name__ == "__main__":
    (templates_folder() / f"{FACE}.ttf").write_bytes(face())
