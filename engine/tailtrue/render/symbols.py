"""What stands inside the safety signs: plain figures of our own, made of lines and filled shapes in a box of 24 by 24.

They show what a sign of that code is about; they are not the registered artwork. Every code of the signs table is here. The
bare prohibition alone is a shape without a figure: its code and words say what it forbids.
"""

from collections.abc import Mapping
from math import cos, pi, sin
from types import MappingProxyType
from typing import NamedTuple


class Symbol(NamedTuple):
    """Paths to be stroked and paths to be filled."""

    lines: str = ""
    solids: str = ""


def _ring(x: float, y: float, radius: float) -> str:
    return (
        f"M{x - radius:g} {y:g}a{radius:g} {radius:g} 0 1 0 {2 * radius:g} 0a{radius:g} {radius:g} 0 1 0 {-2 * radius:g} 0Z"
    )


def _wheel(x: float, y: float, radius: float, teeth: int) -> str:
    """A wheel with pointed teeth, and the hole in its middle."""
    turns = [(radius if step % 2 == 0 else radius * 0.72, pi * step / teeth) for step in range(2 * teeth)]
    points = "L".join(f"{x + reach * cos(angle):.1f} {y + reach * sin(angle):.1f}" for reach, angle in turns)
    return f"M{points}Z{_ring(x, y, radius * 0.25)}"


_MARK = Symbol("M12 5V14", _ring(12, 17.6, 1.3))
_HAND = Symbol(
    "M8.5 12V7.5M10.8 11V6M13.1 11V6M15.4 12V7.5M8 15.5L5.4 12.4",
    "M7.6 11h8.7v5a3 3 0 0 1-3 3h-2.7a3 3 0 0 1-3-3Z",
)
_CUFF = Symbol(f"{_HAND.lines}M8.2 20.4H15.8", _HAND.solids)
_FLAME = Symbol(
    solids="M12 4.5C14 8 17.2 10 17.2 14.2A5.2 5.2 0 0 1 6.8 14.2"
    "C6.8 12 8 11 9 9.3C9.5 11 10.4 11.6 11 11.6C11.6 9.5 11 7 12 4.5Z"
)
_HEAD = _ring(12, 12, 6.3)

SYMBOLS: Mapping[str, Symbol] = MappingProxyType(
    {
        "M001": _MARK,
        "M002": Symbol(
            "M12 8V18"
            "M12 8C10 6.5 7.5 6.5 5.5 7.2V16.5C7.5 15.8 10 16 12 18C14 16 16.5 15.8 18.5 16.5V7.2C16.5 6.5 14 6.5 12 8"
        ),
        "M003": Symbol(
            f"{_ring(12, 13, 4.4)}M6.6 12A5.4 6.2 0 0 1 17.4 12", "M5.2 10.6h2.8v5.2h-2.8ZM16 10.6h2.8v5.2h-2.8Z"
        ),
        "M004": Symbol(f"{_HEAD}M5.7 11H7.3M16.7 11H18.3M11 11H13", "M7.2 9.8h4.2v3.8h-4.2ZM12.6 9.8h4.2v3.8h-4.2Z"),
        "M005": Symbol("M12 5V12M6 12H18M8.2 15H15.8M10.4 18H13.6"),
        "M006": Symbol("M10 5V9M14 5V9M12 16V19.5", "M7.5 9h9v3.5a4.5 4.5 0 0 1-9 0Z"),
        "M008": Symbol(solids="M8.5 5h5v6.8c2 1.7 5.3 1.6 5.3 4.9v1.8H8.5Z"),
        "M009": _CUFF,
        "M010": Symbol(solids="M9 4.5L12 6L15 4.5L19 8.4L16.8 10.8L15.6 9.8V19.5H12.7V14H11.3V19.5H8.4V9.8L7.2 10.8L5 8.4Z"),
        "M011": Symbol("M5.5 7.5H13V10M5.5 18.5C9 15.5 15 15.5 18.5 18.5", "M13 11l1.2 2.2a1.3 1.3 0 1 1-2.4 0Z"),
        "M013": Symbol(_HEAD, "M11.5 8.5H18.8V15.5A6.5 6.5 0 0 1 11.5 18Z"),
        "M016": Symbol(
            f"{_HEAD}M8 12.2H16V16.4H8ZM8 14.3H16M6 10.4L8 12.2M18 10.4L16 12.2",
            f"{_ring(9.8, 9.4, 1)}{_ring(14.2, 9.4, 1)}",
        ),
        "M017": Symbol(f"{_HEAD}M6 10.5L8.5 12.5M18 10.5L15.5 12.5", "M8.3 12.3h7.4l-1.6 5h-4.2Z"),
        "M021": Symbol("M4.5 15.5H9M15 15.5H19.5M9 15.5L15 8.5", f"{_ring(9, 15.5, 1.4)}{_ring(15, 15.5, 1.4)}"),
        "M022": Symbol(
            "M12 11V13.6M5 16.4C8 13.8 16 13.8 19 16.4", "M8.6 4.2h6.8l-1.9 6h-3ZM5 16.8C8 14.6 16 14.6 19 16.8L17 19.4H7Z"
        ),
        "M026": Symbol("M9.6 8.4C8.6 3.4 15.4 3.4 14.4 8.4M7 12.8H4.4M17 12.8H19.6", "M9.4 8h5.2v3.6H17V19.5H7V11.6H9.4Z"),
        "M027": Symbol(
            "M4.6 18.6H19.4", f"M4.6 13.4A7.4 7.4 0 0 1 19.4 13.4H17A5 5 0 0 0 7 13.4Z{_wheel(12, 13.6, 3.6, 7)}"
        ),
        "M028": Symbol("M9 11.5V9a3 3 0 0 1 6 0V11.5", "M7.3 11.3h9.4v7.2h-9.4Z"),
        "M057": Symbol("".join(f"M5.5 {y}C8 {y - 2} 10 {y + 2} 12.5 {y}S17 {y - 2} 18.5 {y}" for y in (8, 12, 16))),
        "M058": Symbol(
            "M12.4 8.6V5H4.8V19H12.4V15.4",
            f"{_ring(8.6, 9.2, 1.6)}M7 11.4h3.2v5.2H7Z{_ring(17, 9.2, 1.6)}M15.4 11.4h3.2v5.2h-3.2Z",
        ),
        "M068": Symbol("M13.4 14.4V13a2.1 2.1 0 0 1 4.2 0V14.4", f"{_wheel(8.6, 9, 4.6, 8)}M11.8 14.2h7.4v5h-7.4Z"),
        "P001": Symbol(),
        "P003": _FLAME,
        "P010": _HAND,
        "P011": Symbol(solids="M12 5C15 9.8 16.6 12 16.6 14.6A4.6 4.6 0 0 1 7.4 14.6C7.4 12 9 9.8 12 5Z"),
        "P013": Symbol("M8.8 5h6.4v14h-6.4Z", f"M10 7h4v8h-4Z{_ring(12, 17, 0.7)}"),
        "P015": Symbol(
            "M17.6 4.6V9.2M17.6 14.8V19.4",
            "M4 9.8H10.4C12 8.8 14 9 15.4 10L19.6 11.2V12.4H16L18.8 13.6L18.4 14.8L10.4 14.2H4Z",
        ),
        "P022": Symbol("M15 10.5h2.4v4.2H15", "M6.8 8.5h8.4v6.3a3.2 3.2 0 0 1-3.2 3.2h-2a3.2 3.2 0 0 1-3.2-3.2Z"),
        "P028": _CUFF,
        "P036": Symbol(solids=f"{_ring(12, 8.8, 2.1)}M9.4 11.8h5.2v4.4h-1.1V19h-3v-2.8H9.4Z"),
        "P043": Symbol("M12 12V18.5M8.8 18.5H15.2", "M7.6 5.5h8.8c0 5.5-2.2 7.2-4.4 7.2s-4.4-1.7-4.4-7.2Z"),
        "P080": Symbol(solids=f"{_ring(12, 6.6, 2.3)}M8.2 9.7h7.6v5.5h-1.6V19.6h-4.4v-4.4H8.2Z"),
        "W001": _MARK,
        "W002": Symbol(
            solids="M12 5L13.4 9.4L17 7.4L15.8 11L20 12.4L16 13.8L17.6 18.2L13.4 15.8L11.6 19.6L10.4 15.8"
            "L6.2 18L8 13.8L4 12L8.2 10.6L6.8 7L10.8 9.2Z"
        ),
        "W007": Symbol(
            "M4.5 19.6H19.5M12 9.4L9.4 13.6L12.8 15.4V18.4M9.4 13.6L5.4 17M12 9.4L16.4 12",
            f"{_ring(13.6, 6.2, 2.1)}M14.6 15.2h4.4v4.4h-4.4Z",
        ),
        "W010": Symbol(
            "M12 4.6V19.4M5.6 8.3L18.4 15.7M18.4 8.3L5.6 15.7M9.6 5.8L12 8.2L14.4 5.8M9.6 18.2L12 15.8L14.4 18.2"
        ),
        "W011": Symbol(
            "M4.5 19.8H19.5M9.4 10L12.2 14.8L17.4 10.6M12.2 14.8L17.2 17M9.4 10L5.8 13.6M9.4 10L14 8.6", _ring(8.6, 6.8, 2.1)
        ),
        "W012": Symbol(solids="M13.8 4L7 13.2H11.3L9.3 20L17 10.3H12.6L15.4 4Z"),
        "W015": Symbol("M12 3.5V6.5M12 6.5L7 12M12 6.5L17 12", "M6 11.8h12v7.4H6Z"),
        "W016": Symbol(
            solids=f"M6 10.5a6 6 0 0 1 12 0c0 2.4-1.2 4-2.8 4.8V19H8.8v-3.7C7.2 14.5 6 12.9 6 10.5Z"
            f"{_ring(9.7, 10.8, 1.5)}{_ring(14.3, 10.8, 1.5)}"
        ),
        "W017": Symbol("".join(f"M{x} 14.5C{x - 2} 12 {x + 2} 9 {x} 6" for x in (7.5, 12, 16.5)), "M4.5 16.5h15v2.4h-15Z"),
        "W018": Symbol("M17.2 8.2A6.2 6.2 0 1 0 18.2 13", "M19 4.5V10.6H12.9Z"),
        "W019": Symbol("M8 12H10M16 12H14", f"M4.5 4.5h3.4v15H4.5ZM16.1 4.5h3.4v15h-3.4Z{_ring(12, 12, 2)}"),
        "W020": Symbol(
            "M9.6 13V16.4L7.8 20M9.6 16.4L11.4 20M7 15.6L9.6 13.4L12.2 15.6M12.8 11.4L14.6 11M12.6 13L14 14",
            f"{_ring(9.6, 10.6, 2)}M8.4 4.6h9.4v3.4h-9.4Z",
        ),
        "W021": _FLAME,
        "W022": Symbol("M4.5 19.3H19.5", "M4.5 17L19.5 17V7.5Z"),
        "W024": Symbol(
            "M13 11.4H18.4M13 13H19M13 14.6H18.4", "M4.5 4.5h15v3.4h-15ZM4.5 10.6h9v4.8h-9ZM4.5 17.6h15v2.6h-15Z"
        ),
        "W025": Symbol(f"{_ring(13.5, 7.6, 3.4)}{_ring(13.5, 16.4, 3.4)}M4 12H8", "M7.5 9.8L11.6 12L7.5 14.2Z"),
        "W029": Symbol("M12 6.5V4.5M9.5 4.6H14.5", "M8.6 10a3.4 3.4 0 0 1 6.8 0V20H8.6Z"),
        "W035": Symbol(
            "M8.5 10V14M4.5 19.8H19.5",
            "M6.3 4.5h4.4v4.4H6.3ZM13 8.5h4.4v4.4H13ZM6.4 13.6h4.2L8.5 17.6ZM13.1 14.4h4.2L15.2 18Z",
        ),
        "W038": Symbol(
            "M14.5 9A4.2 4.2 0 0 1 14.5 15M16.6 6.6A7.4 7.4 0 0 1 16.6 17.4", "M5 9.8h3.2l4.3-3.6v11.6l-4.3-3.6H5Z"
        ),
        "W041": Symbol(
            "".join(f"M6.5 {y}C8.5 {y - 2.4:g} 10 {y + 2.4:g} 12 {y}S15.5 {y - 2.4:g} 17.5 {y}" for y in (7.6, 12)),
            f"{_ring(5.8, 17.6, 2)}M8.6 15.8L20 16.6V19H8.6Z",
        ),
        "W071": Symbol(
            solids=f"{_ring(12, 6.4, 2.6)}M5 20V14a4 4 0 0 1 4-4h6a4 4 0 0 1 4 4v6Z"
            "M12 11L13.2 13.8L16 15L13.2 16.2L12 19L10.8 16.2L8 15L10.8 13.8Z"
        ),
        "W079": Symbol(
            "M4 14.2H20" + "".join(f"M{x} 10.6C{x - 2} 9 {x + 2} 7.4 {x} 5.2" for x in (9.8, 14.2)),
            "M6.4 12.4h11.2v5a2.2 2.2 0 0 1-2.2 2.2h-6.8a2.2 2.2 0 0 1-2.2-2.2Z",
        ),
        "W080": Symbol(
            "".join(
                f"M11.4 {near}C13.4 {near - 2.4:g} 15 {far + 2.4:g} 19 {far}"
                for near, far in ((10.6, 7), (12.6, 12.6), (14.6, 18.2))
            ),
            "M4.2 9.6H8.2L10 11V14.2L8.2 15.6H4.2Z",
        ),
        "W088": Symbol(solids=_wheel(12, 12, 8, 10)),
        "W089": Symbol(solids=f"{_wheel(8.8, 8.8, 5.2, 8)}{_wheel(15.4, 15.4, 5.2, 8)}"),
        "E003": Symbol(solids="M10 5h4v5h5v4h-5v5h-4v-5H5v-4h5Z"),
        "E004": Symbol(
            solids="M5 8.5C9 5 15 5 19 8.5L17.8 11.8L14.6 11V9.3C13 8.8 11 8.8 9.4 9.3V11L6.2 11.8ZM9 12.6h6l2.8 6H6.2Z"
        ),
        "E011": Symbol(
            "M5.5 15C9 11.2 15 11.2 18.5 15C15 18.8 9 18.8 5.5 15Z",
            f"{_ring(12, 15, 1.7)}M12 4.5l1.4 2.8a1.6 1.6 0 1 1-2.8 0Z",
        ),
        "E020": Symbol(solids="M6 11a6 5.5 0 0 1 12 0ZM9.4 12h5.2v3H9.4ZM5 16h14v3H5Z"),
        "F001": Symbol("M12 8V5.8H15.8M11 6H8.5C6.8 6.6 6.3 8.6 6.3 12", "M9.3 10.4a2.7 2.7 0 0 1 5.4 0V19.8H9.3Z"),
        "F016": Symbol(
            "M7.2 8.4V19H16.8V8.4",
            "M5.6 4.6h12.8v3.8H5.6ZM12 9.6C13.2 11.8 15 12.8 15 15A3 3 0 0 1 9 15C9 13 10.8 12 12 9.6Z",
        ),
    }
)
