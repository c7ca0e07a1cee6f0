"""Where the collars come from: every piece of the stock list judged, the best of the source that was decided on taken."""

from collections.abc import Iterator, Mapping, Sequence
from math import sqrt
from typing import Any, NamedTuple

from tailtrue.calc.lengths import piece_of_stock
from tailtrue.calc.octagon import octagon_circle
from tailtrue.computed.collar_metal import group, unfit
from tailtrue.computed.registry import Limited, computed, field
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_SOURCES = ("sawn-bar", "bored-blank", "tube", "plate", "cast-blank")

_UNEVEN = "out of round: it is made round in four jaws first"
_NO_SCROLL = "no scroll chuck is there: it is set true in four jaws and made round first"
_PLATED = "no independent chuck holds it by halves: it is clamped to the faceplate for its bore"


class _Piece(NamedTuple):
    """A piece of stock, whatever its form: the round it holds, the circle it swings, what length it gives, its hole."""

    label: str
    material: str
    diameter: float
    corner: float
    gripped: float
    length: float
    bore: float
    enough: bool
    sound: bool
    uneven: float = 0.0
    plated: bool = False


def _bar(entry: Record, _kerf: float, _pieces: int) -> _Piece:
    size, uneven = entry["diameter"], entry.get("out_of_round") or 0.0
    over = size + uneven
    return _Piece(entry["label"], entry["material"], size, over, over, entry["length"], 0.0, True, True, uneven)


def _tube(entry: Record, kerf: float, pieces: int) -> _Piece:
    return _bar(entry, kerf, pieces)._replace(bore=entry["bore"])


def _plate(entry: Record, kerf: float, pieces: int) -> _Piece:
    low, high = sorted((entry["width"], entry["length"]))
    side = min(low, max(piece_of_stock(high, kerf, pieces), 0.0))
    return _Piece(entry["label"], entry["material"], side, side * sqrt(2), side, entry["thickness"], 0.0, True, True)


def _cast(entry: Record, _kerf: float, pieces: int) -> _Piece:
    small, large = sorted((entry["small_diameter"], entry["large_diameter"]))
    enough, sound = entry["count"] >= pieces, entry["state"] == "sound"
    return _Piece(entry["label"], entry["material"], small, large, large, entry["width"], 0.0, enough, sound)


def _bored(entry: Record, _kerf: float, pieces: int) -> _Piece:
    size, uneven, enough = entry["diameter"], entry.get("out_of_round") or 0.0, entry["count"] >= pieces
    over = size + uneven
    return _Piece(
        entry["label"], entry["material"], size, over, over, entry["width"], entry["bore"], enough, True, uneven
    )  # fmt: skip


_MAKERS = dict(zip(_SOURCES, (_bar, _bored, _tube, _plate, _cast), strict=True))


class _Wanted(NamedTuple):
    """What a piece must give."""

    bar: float
    least: float
    swing: float
    width: float
    kerf: float
    facing: float
    clean: float
    grip: float
    clearance: float
    hole_most: float
    gap_most: float
    scroll_uneven: float
    most_uneven: float
    pieces: int
    how_many: str
    corners_off: bool
    saw_outside: float
    stub: float | None


@computed(
    "collar.offers",
    label="stock that the collars may be made from",
    kind="records",
    fields=(
        field("label", kind="text"),
        field("source_name", kind="text"),
        field("verdict", kind="text"),
        field("reason", kind="text"),
        field("gives", "mm", "length"),
    ),
    needs=(
        "stock.collar_bars?", "stock.bored_blanks?", "stock.collar_tubes?", "stock.collar_plates?", "stock.cast_blanks?",
        "lathe.chucks", "bar.diameter", "collar.least_diameter", "collar.swing_limit", "limit.collar_width_least",
        "limit.saw_kerf", "limit.facing_stock", "limit.clean_up", "limit.grip_least", "limit.face_clearance",
        "limit.scroll_out_of_round", "limit.out_of_round_most", "collar.pieces", "collar.how_many",
        "joint.retaining_compound.target?", "joint.retaining_compound.largest?", "crib.saw_takes_slugs?",
        "limit.saw_outside", "crib.faceplate_diameter?", "crib.stub_diameter?",
    ),
    tables=("materials/collar_sources", "cutting/boring_stock", "materials/materials", "materials/collar_metals"),
    how="each piece held against: a metal that holds its size, enough of it, sound, swings, a chuck that opens to it or a "
    "faceplate, a collar wide and thick enough, metal left in the hole",
)  # fmt: skip
def offers(*given: Any) -> tuple[Record, ...]:
    lists, rest = given[: len(_SOURCES)], given[len(_SOURCES) :]
    chucks, bar, least, swing, width, kerf, facing, clean, grip, clearance, *last = rest
    scroll, uneven, count, word, gap, gap_most, slugs, outside, plate, stub, sources, boring, materials, metals = last
    # The joint is chosen after the stock. A hole is held against the bond, the widest fit of all, here; against the
    # joint that was chosen by the stop on holes that are too large.
    gap, gap_most = gap or 0.0, gap_most or 0.0
    stock = boring.within(bar + gap, "over_mm", "upto_mm").number("least_mm")
    wanted = _Wanted(
        bar, least, swing, width, kerf, facing, clean, grip, clearance, bar + gap - stock, bar + gap_most,
        scroll, uneven, count, word, slugs is not False, outside, stub,
    )  # fmt: skip
    found = []
    for source, entries in zip(_SOURCES, lists, strict=True):
        row = sources.one(collar_source=source)
        for entry in entries or ():
            piece = _MAKERS[source](entry, kerf, count)
            banded = row.yes("banded") or piece.uneven > wanted.scroll_uneven or _only_uneven_held(chucks, row)
            if plate is not None and row.yes("on_faceplate") and not _halves_held(row, piece, wanted, chucks):
                # Bored on the plate it goes on a stub: that is what a chuck grips then.
                piece, banded = piece._replace(plated=True, gripped=stub or 0.0), False
            no_metal = unfit(materials.one(material=piece.material), metals)
            against = no_metal or next(_against(row, piece, banded, wanted, chucks), "")
            judged = _judged(source, row, piece, banded, against, wanted.scroll_uneven)
            found.append({**judged, "metal": group(metals, piece.material)})
    return tuple(found)


def _why_held(row: Row, piece: _Piece, banded: bool, scroll: float) -> str:
    if piece.plated:
        return _PLATED
    if banded and not row.yes("banded"):
        return _UNEVEN if piece.uneven > scroll else _NO_SCROLL
    return row.text("note")


def _judged(source: str, row: Row, piece: _Piece, banded: bool, against: str, scroll: float) -> Record:
    return {
        **piece._asdict(),
        "source": source,
        "source_name": row.text("name"),
        "preference": row.number("preference"),
        "banded": banded,
        "fits": not against,
        "verdict": "fits" if not against else "does not serve",
        "reason": against or _why_held(row, piece, banded, scroll),
        "gives": piece.diameter,
    }


def _against(
    row: Row, piece: _Piece, banded: bool, wanted: _Wanted, chucks: Sequence[Record]
) -> Iterator[str]:  # fmt: skip
    """What speaks against a piece, the gravest first."""
    if not piece.sound:
        yield "not seen to be sound: a hidden crack or hole throws the work or falsifies the reading"
    if not piece.enough:
        yield f"{wanted.how_many} alike are needed"
    if _swings(row, piece, wanted) > wanted.swing:
        yield "it does not swing over the cross slide"
    if row.yes("corners") and piece.plated and not wanted.corners_off:
        yield "its corners cannot be sawn off, and on a stub mandrel none are turned off"
    if piece.uneven > wanted.most_uneven:
        yield "farther out of round than may be turned round"
    if piece.gripped > max((chuck["grips_to"] for chuck in chucks_of_kind(chucks, row, banded)), default=0.0):
        yield "no chuck of the right kind opens to it with its jaws inside the body"
    if piece.diameter - 2 * _skin(row, banded) - wanted.clean < wanted.least:
        yield "the collar would be too thin"
    blank = _blank_width(row, piece, wanted)
    if blank - 2 * (wanted.facing + row.number("skin_face_mm")) < wanted.width:
        yield "the collar would be too narrow"
    if banded and _too_narrow_for_halves(row, piece, wanted):
        yield "too narrow to be turned half and half: either grip would be too short"
    if piece.bore > (wanted.gap_most if row.yes("bore_kept") else wanted.hole_most):
        yield "its hole leaves no metal for the bore"


def _halves_held(row: Row, piece: _Piece, wanted: _Wanted, chucks: Sequence[Record]) -> bool:
    """Whether an independent chuck opens to the piece, and it is wide enough to be turned half and half."""
    opens = any(chuck["grips_to"] >= piece.gripped for chuck in chucks_of_kind(chucks, row, banded=True))
    return opens and not _too_narrow_for_halves(row, piece, wanted)


def _too_narrow_for_halves(row: Row, piece: _Piece, wanted: _Wanted) -> bool:
    return _blank_width(row, piece, wanted) / 2 - wanted.clearance < wanted.grip


def _swings(row: Row, piece: _Piece, wanted: _Wanted) -> float:
    """The circle of a piece as it goes into the chuck: a slug too large for the swing has its corners sawn off."""
    return octagon_circle(piece.diameter, wanted.saw_outside) if row.yes("corners") and wanted.corners_off else piece.corner


def _blank_width(row: Row, piece: _Piece, wanted: _Wanted) -> float:
    if row.yes("own_width"):
        return piece.length
    return piece_of_stock(piece.length, wanted.kerf, wanted.pieces)


def _skin(row: Row, banded: bool) -> float:
    """What comes off each side before the blank is round."""
    return row.number("uneven_skin_mm" if banded else "skin_side_mm")


def kind_held_in(row: Row, banded: bool) -> tuple[float, str]:
    """Jaws and kind of the chuck for this source, as it comes from the mill or where it has to be made round first."""
    if banded:
        return row.number("uneven_jaws"), row.text("uneven_kind")
    return row.number("jaws"), row.text("chuck_kind")


def chucks_of_kind(chucks: Sequence[Record], row: Row, banded: bool) -> list[Record]:
    """The chucks of the kind that a blank of this source is held in."""
    jaws, kind = kind_held_in(row, banded)
    return [chuck for chuck in chucks if chuck["jaws"] == jaws and chuck["kind"] == kind]


def _only_uneven_held(chucks: Sequence[Record], row: Row) -> bool:
    """Whether the lathe has no chuck for this source as it comes from the mill, and has the one that makes it round."""
    return not chucks_of_kind(chucks, row, banded=False) and bool(chucks_of_kind(chucks, row, banded=True))


def _fits(source: str, words: str) -> None:
    @computed(
        f"collar.{source.replace('-', '_')}_fits", label=f"{words} that serves", kind="yes-no",
        needs=("collar.offers",), how="whether a piece of this kind on the stock list serves",
    )  # fmt: skip
    def _any(pieces: Sequence[Record]) -> bool:
        return any(piece["fits"] for piece in pieces if piece["source"] == source)


for _source, _words in zip(
    _SOURCES, ("round bar", "ready-bored blank", "thick tube", "slug of plate", "cast blank"), strict=True
):
    _fits(_source, _words)


@computed("collar.offer_count", label="pieces of stock to choose from", kind="count", rounding="count",
          needs=("collar.offers",), how="counted")  # fmt: skip
def offer_count(pieces: Sequence[Record]) -> int:
    return len(pieces)


@computed(
    "collar.stock",
    label="collar stock used",
    kind="record",
    needs=("collar.metal?", "collar.offers?", "collar.source?", "job.collar_source?", "job.collar_bar?", "bar.on_hand?"),
    tables=("materials/collar_sources",),
    how="as decided: the collars of the test bar on hand, the piece that the job names, or of the metal decided on the "
    "thickest that serves; where nothing serves, what comes nearest",
)
def collar_stock(
    metal: str | None, pieces: Sequence[Record] | None, decided: str | None, asked: str | None, named: str | None,
    on_hand: Record | None, sources: Table,
) -> Limited | None:  # fmt: skip
    if metal == "on-hand" and on_hand is not None:
        return Limited(_collars_of(on_hand), "as measured on the bar on hand")
    pieces = pieces or ()
    if metal == "named":
        of_name = (one for one in pieces if one["label"] == named)
        # What the job names is of a list; a piece of another list may have the same label.
        bar = next((one for one in of_name if sources.one(collar_source=one["source"]).yes("by_label")), None)
        return Limited(bar, "named in the job")
    if metal is not None:
        serving = [one for one in pieces if one["fits"] and one["source"] == decided and one["metal"] == metal]
        return Limited(max(serving, key=lambda one: one["diameter"]), "the thickest of the stock list")
    # Nothing serves: the stops tell of the piece that comes nearest.
    source = decided or asked
    mine = [one for one in pieces if source in (None, one["source"])]
    if not mine:
        return Limited(None, "the stock list has nothing of the kind that the job asks for")
    best = max(mine, key=lambda one: (-one["preference"], one["diameter"]))
    return Limited(best, "nothing on the stock list serves")


def _collars_of(bar: Record) -> Record:
    """The collars of a bar that exists, as a piece of stock that needs nothing more done to it."""
    size = bar["collar_diameter"]
    piece = _Piece(
        bar["label"], bar["collar_material"], size, size, size, bar["collar_width"], bar["diameter"], True, True
    )  # fmt: skip
    return {**piece._asdict(), "source": "bored-blank", "fits": True, "banded": False}


def _of_stock(name: str, key: str, label: str, **more: Any) -> None:
    @computed(name, label=label, needs=("collar.stock",), how="as given for the stock", **more)
    def _said(stock: Record) -> Any:
        return stock[key]


_of_stock("collar.label", "label", "collar stock", kind="text")
_of_stock("collar.material", "material", "collar material", kind="text")
_of_stock("collar.made_from", "source", "what the collars are made from", kind="choice", choices=_SOURCES)
_of_stock("collar.stock_diameter", "diameter", "diameter of the collar stock", unit="mm", rounding="size", as_said=True)
_of_stock("collar.square_circle", "corner", "circle that the stock swings", unit="mm", rounding="size", bound="least")
_of_stock("collar.gripped_diameter", "gripped", "size over which the raw blank is gripped", unit="mm", rounding="size")
_of_stock("collar.stock_length", "length", "length of the collar stock", unit="mm", rounding="length", as_said=True)
_of_stock("collar.out_of_round", "uneven", "out of round of the collar stock", unit="mm", rounding="depth", bound="least")
_of_stock("collar.banded", "banded", "the blank is made round on a band before it is worked", kind="yes-no")
_of_stock("collar.plated", "plated", "the blank is clamped to the faceplate for its bore", kind="yes-no")
_of_stock("collar.sound", "sound", "the blank is seen to be sound", kind="yes-no")
_of_stock("collar.enough", "enough", "there are as many alike as are needed", kind="yes-no")
_of_stock("hole.start", "bore", "hole that is in the blank already", unit="mm", rounding="fit")


def _of_source(name: str, label: str, take: Any, **more: Any) -> None:
    @computed(name, label=label, needs=("collar.made_from",), tables=("materials/collar_sources",),
              how="from the table of sources for collars", **more)  # fmt: skip
    def _row(source: str, sources: Table) -> Any:
        return take(sources.one(collar_source=source))


_of_source("collar.along", "what the length of the stock is called", lambda row: row.text("along"), kind="text")
_of_source("collar.form", "how the size of the stock is taken", lambda row: row.text("form"), kind="text")
_of_source("collar.section", "section of the stock that is sawn", lambda row: row.text("section"), kind="choice",
           choices=("round", "slab"))  # fmt: skip
_of_source("collar.skin_face", "skin that comes off each face first", lambda row: row.number("skin_face_mm"), unit="mm",
           rounding="length")  # fmt: skip
_of_source("collar.in_pieces", "the blanks are there piece by piece",
           lambda row: row.yes("pieces"), kind="yes-no")  # fmt: skip
_of_source("collar.own_width", "the blank is as wide as its stock", lambda row: row.yes("own_width"), kind="yes-no")


@computed("collar.skin_side", label="skin that comes off each side first", unit="mm", rounding="length",
          needs=("collar.made_from", "collar.banded"), tables=("materials/collar_sources",),
          how="from the table of sources for collars; more where round stock is made round first")  # fmt: skip
def skin_side(source: str, banded: bool, sources: Table) -> float:
    return _skin(sources.one(collar_source=source), banded)


@computed("hole.given", label="hole that the blank came with", unit="mm", rounding="size", needs=("hole.start",),
          how="as given for the stock")  # fmt: skip
def hole_given(start: float) -> Limited | float:
    return start if start > 0 else Limited(None, "the stock is solid")


@computed("hole.there", label="the blank has a hole already", kind="yes-no", needs=("hole.start",),
          how="whether the stock was given with a bore")  # fmt: skip
def hole_there(start: float) -> bool:
    return start > 0
