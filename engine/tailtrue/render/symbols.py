"""What stands inside the safety signs: plain figures of our own, made of lines and filled shapes in a box of 24 by 24.

They show what a sign of that code is about; they are not the registered artwork. A code that is not here has no figure
plain enough to be told at the printed size: its shape stays empty, and its code and words say what it means.
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
        "M011": Symbol("M5.5 7.5H13V10M5.5 18.5C9 15.5 15 15.5 18.5 18.5", "M13 11l1.2 2.2a1.3 1.3 0 1 1-2.4 0Z"),
        "M013": Symbol(_HEAD, "M11.5 8.5H18.8V15.5A6.5 6.5 0 0 1 11.5 18Z"),
        "M017": Symbol(f"{_HEAD}M6 10.5L8.5 12.5M18 10.5L15.5 12.5", "M8.3 12.3h7.4l-1.6 5h-4.2Z"),
        "M021": Symbol("M4.5 15.5H9M15 15.5H19.5M9 15.5L15 8.5", f"{_ring(9, 15.5, 1.4)}{_ring(15, 15.5, 1.4)}"),
        "M028": Symbol("M9 11.5V9a3 3 0 0 1 6 0V11.5", "M7.3 11.3h9.4v7.2h-9.4Z"),
        "M057": Symbol("".join(f"M5.5 {y}C8 {y - 2} 10 {y + 2} 12.5 {y}S17 {y - 2} 18.5 {y}" for y in (8, 12, 16))),
        "P001": Symbol(),
        "P003": _FLAME,
        "P010": _HAND,
        "P011": Symbol(solids="M12 5C15 9.8 16.6 12 16.6 14.6A4.6 4.6 0 0 1 7.4 14.6C7.4 12 9 9.8 12 5Z"),
        "P013": Symbol("M8.8 5h6.4v14h-6.4Z", f"M10 7h4v8h-4Z{_ring(12, 17, 0.7)}"),
        "P022": Symbol("M15 10.5h2.4v4.2H15", "M6.8 8.5h8.4v6.3a3.2 3.2 0 0 1-3.2 3.2h-2a3.2 3.2 0 0 1-3.2-3.2Z"),
        "P028": _CUFF,
        "P036": Symbol(solids=f"{_ring(12, 8.8, 2.1)}M9.4 11.8h5.2v4.4h-1.1V19h-3v-2.8H9.4Z"),
        "P043": Symbol("M12 12V18.5M8.8 18.5H15.2", "M7.6 5.5h8.8c0 5.5-2.2 7.2-4.4 7.2s-4.4-1.7-4.4-7.2Z"),
        "P080": Symbol(solids=f"{_ring(12, 6.6, 2.3)}M8.2 9.7h7.6v5.5h-1.6V19.6h-4.4v-4.4H8.2Z"),
        "W001": _MARK,
        "W012": Symbol(solids="M13.8 4L7 13.2H11.3L9.3 20L17 10.3H12.6L15.4 4Z"),
        "W015": Symbol("M12 3.5V6.5M12 6.5L7 12M12 6.5L17 12", "M6 11.8h12v7.4H6Z"),
        "W016": Symbol(
            solids=f"M6 10.5a6 6 0 0 1 12 0c0 2.4-1.2 4-2.8 4.8V19H8.8v-3.7C7.2 14.5 6 12.9 6 10.5Z"
            f"{_ring(9.7, 10.8, 1.5)}{_ring(14.3, 10.8, 1.5)}"
        ),
        "W017": Symbol("".join(f"M{x} 14.5C{x - 2} 12 {x + 2} 9 {x} 6" for x in (7.5, 12, 16.5)), "M4.5 16.5h15v2.4h-15Z"),
        "W018": Symbol("M17.2 8.2A6.2 6.2 0 1 0 18.2 13", "M19 4.5V10.6H12.9Z"),
        "W019": Symbol("M8 12H10M16 12H14", f"M4.5 4.5h3.4v15H4.5ZM16.1 4.5h3.4v15h-3.4Z{_ring(12, 12, 2)}"),
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
    }
)
