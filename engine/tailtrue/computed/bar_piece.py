"""Which piece of the stock list becomes the bar, and what the one taken has over each that is left."""

from collections.abc import Iterable, Mapping
from typing import Any

from tailtrue.computed.registry import Limited, computed, field
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_NEEDS = ("stock.bars?",)
_FINISHES = ("materials/bar_finishes",)
_SOUND = 1.0


def _finish(bar: Record, finishes: Table) -> Row:
    return finishes.one(finish=bar["finish"])


def _doubt(bar: Record, finishes: Table) -> float:
    return _finish(bar, finishes).number("preference")


def _evenness(bar: Record, finishes: Table) -> float:
    return _finish(bar, finishes).number("evenness")


def _best(bars: Iterable[Record], finishes: Table) -> Record | None:
    """The thickest, of equal ones the most even, of these the first on the list."""
    return min(bars, key=lambda bar: (-bar["diameter"], _evenness(bar, finishes)), default=None)


def _best_of(name: str, label: str, how: str, *, sound: bool) -> None:
    @computed(name, label=label, kind="record", needs=_NEEDS, tables=_FINISHES, how=how)
    def _piece(bars: tuple[Record, ...] | None, finishes: Table) -> Limited:
        fitting = (bar for bar in bars or () if (_doubt(bar, finishes) <= _SOUND) is sound)
        return Limited(_best(fitting, finishes), "the stock list has no such bar")


_best_of("bar.best_sound", "best bar of sound surface", "of the bars whose surface may stay as bought the thickest, then "
         "the most even", sound=True)  # fmt: skip
_best_of("bar.best_doubtful", "best bar of doubtful surface", "of the other bars the thickest, then the most even",
         sound=False)  # fmt: skip


@computed(
    "bar.named",
    label="bar that the job names",
    kind="record",
    needs=("stock.bars?", "job.bar?"),
    how="the one of this label",
)
def named(bars: tuple[Record, ...] | None, label: str | None) -> Limited:
    return Limited(next((bar for bar in bars or () if bar["label"] == label), None), "the job names no bar of the list")


@computed(
    "bar.stock",
    label="bar stock used",
    kind="record",
    needs=("bar.piece", "bar.on_hand?", "bar.named?", "bar.best_sound?", "bar.best_doubtful?"),
    how="as chosen: the test bar on hand, the one the job names, or the best of the list",
)
def bar_stock(
    piece: str, on_hand: Record | None, said: Record | None, sound: Record | None, doubtful: Record | None
) -> Limited:
    ways: dict[str, tuple[Record | None, str]] = {
        "on-hand": ({**on_hand, "finish": "turned"} if on_hand is not None else None, "as measured on the bar on hand"),
        "named": (said, "named in the job"),
        "thickest-sound": (sound, "the stiffest whose surface may stay as bought"),
        "thickest-doubtful": (doubtful, "the stiffest of doubtful surface: there is no other"),
    }
    return Limited(*ways[piece])


@computed(
    "bar.offers",
    label="bars that the bar may be made from",
    kind="records",
    fields=(
        field("label", kind="text"),
        field("size", "mm", "size"),
        field("verdict", kind="text"),
        field("reason", kind="text"),
    ),
    needs=("stock.bars", "bar.stock", "bar.piece"),
    tables=("materials/bar_finishes", "materials/bar_left"),
    how="each bar of the stock list beside the one that was chosen, with what that one has over it",
)
def bar_offers(
    bars: tuple[Record, ...], chosen: Record, piece: str, finishes: Table, left: Table
) -> tuple[Record, ...]:  # fmt: skip
    first = next((bar for bar in bars if bar == chosen), None)

    def offer(bar: Record) -> Record:
        taken = bar is first
        finish = _finish(bar, finishes)
        reason = f"{finish.text('name')}: {finish.text('note')}" if taken else _left(bar, first, piece, finishes, left)
        return {
            "label": bar["label"], "size": bar["diameter"], "verdict": "chosen" if taken else "left", "reason": reason
        }  # fmt: skip

    return tuple(map(offer, bars))


def _left(bar: Record, chosen: Record | None, piece: str, finishes: Table, left: Table) -> str:
    """What the bar that was taken has over this one, in the words of the table."""
    finish = _finish(bar, finishes)

    def told(because: str) -> str:
        return left.one(because=because).text("says").format(finish=finish.text("name"), note=finish.text("note"))

    if chosen is None:
        return told("on-hand")
    if piece == "named":
        return told("named")
    if _doubt(bar, finishes) > _doubt(chosen, finishes):
        return told("thicker-doubtful" if bar["diameter"] > chosen["diameter"] else "doubtful")
    if bar["diameter"] < chosen["diameter"]:
        return told("thinner")
    return told("less-even" if _evenness(bar, finishes) > _evenness(chosen, finishes) else "alike")
