"""Bookmarks and the language of a PDF. Its maker writes neither, so both are added behind its last byte.

A PDF may be grown by new objects and a table of where they lie (ISO 32000-1, 7.5.6); nothing that was written is touched.
"""

import re
import zlib
from collections.abc import Iterator, Sequence
from html import unescape
from typing import NamedTuple

_HEADING = re.compile(r'<h2[^>]*?(?<![\w-])id="([^"]+)"[^>]*>(.*?)</h2>', re.DOTALL)
# How long a phase takes and how many cautions it has may stand in its heading, and are no part of its name.
_BESIDES = re.compile(r'<span class="(?:takes|holds)">.*?</span>', re.DOTALL)
_TAG = re.compile(r"<[^>]+>")
_TABLE = re.compile(rb"/Size (\d+)\s+/W \[(\d+) (\d+) (\d+)\]\s+/Root (\d+) 0 R\s+/Info (\d+) 0 R")
_IN_A_STREAM = 2
_WIDTHS = (1, 4, 2)


class Bookmark(NamedTuple):
    """A heading and the name of its place."""

    place: str
    words: str


class _Table(NamedTuple):
    """What the last table of a file says: where it stands, how many objects there are, the root and where it lies."""

    start: int
    size: int
    root: int
    info: int
    catalogue: bytes


def bookmarks(html: str) -> tuple[Bookmark, ...]:
    """The headings of a page that can be found by name.

    >>> bookmarks('<h2 id="phase-1"><i>1</i> Before &amp; after <span class="takes">10 min.</span></h2>')
    (Bookmark(place='phase-1', words='1 Before & after'),)
    """
    found = (
        (place, " ".join(unescape(_TAG.sub(" ", _BESIDES.sub("", words))).split()))
        for place, words in _HEADING.findall(html)
    )
    return tuple(Bookmark(place, words) for place, words in found)


def with_places(html: str, marks: Sequence[Bookmark]) -> str:
    """The page with a link to each heading that is never shown: the maker of PDF names no place that nothing leads to."""
    links = "".join(f'<a href="#{mark.place}"></a>' for mark in marks)
    page, end, rest = html.rpartition("</body>")
    return f'{page}<p style="display: none">{links}</p>{end}{rest}' if end else html


def outlined(file: bytes, marks: Sequence[Bookmark]) -> bytes:
    """The file with its bookmarks and its language; as it was when it is not written in the way that is read here."""
    table = _read(file)
    if table is None or not marks:
        return file
    first = table.size
    objects = [(table.root, _catalogue(table.catalogue, first)), *_outline(marks, first)]
    grown, places = bytearray(file), {}
    for number, body in objects:
        places[number] = len(grown)
        grown += b"%d 0 obj\n%s\nendobj\n" % (number, body)
    start, last = len(grown), first + len(marks) + 1
    places[last] = start
    rows = b"".join(_row(places[number]) for number in sorted(places))
    head = b"<< /Type /XRef /Length %d /Size %d /W [%d %d %d] " % (len(rows), last + 1, *_WIDTHS)
    head += b"/Index [%d 1 %d %d] " % (table.root, first, len(places) - 1)
    head += b"/Root %d 0 R /Info %d 0 R /Prev %d >>" % (table.root, table.info, table.start)
    grown += b"%d 0 obj\n%s\n" % (last, head)
    grown += b"stream\n%s\nendstream\nendobj\nstartxref\n%d\n%%%%EOF\n" % (rows, start)
    return bytes(grown)


def _row(place: int) -> bytes:
    kind, wide, generation = _WIDTHS
    return (1).to_bytes(kind, "big") + place.to_bytes(wide, "big") + bytes(generation)


def _catalogue(was: bytes, outline: int) -> bytes:
    more = b"/Outlines %d 0 R /PageMode /UseOutlines /Lang (en) /ViewerPreferences << /DisplayDocTitle true >>"
    return was.rstrip()[: -len(b">>")] + more % outline + b" >>"


def _outline(marks: Sequence[Bookmark], first: int) -> Iterator[tuple[int, bytes]]:
    """The list and its lines, one level deep."""
    count = len(marks)
    yield first, b"<< /Type /Outlines /First %d 0 R /Last %d 0 R /Count %d >>" % (first + 1, first + count, count)
    for place, mark in enumerate(marks, start=1):
        words = ("\ufeff" + mark.words).encode("utf-16-be").hex().encode()
        before = b"/Prev %d 0 R " % (first + place - 1) if place > 1 else b""
        after = b"/Next %d 0 R " % (first + place + 1) if place < count else b""
        yield (
            first + place,
            b"<< /Title <%s> /Parent %d 0 R %s%s/Dest (%s) >>" % (words, first, before, after, mark.place.encode()),
        )


def _read(file: bytes) -> _Table | None:
    """The last table of a file; None when it, or the root that it names, is written in another way."""
    start = int(file.rpartition(b"startxref")[2].split()[0])
    head, _, rest = file[start:].partition(b"stream\n")
    said = _TABLE.search(head)
    if said is None or b"/FlateDecode" not in head:
        return None
    size, *widths, root, info = map(int, said.groups())
    rows = zlib.decompressobj().decompress(rest)
    kind, place, index = _fields(rows[root * sum(widths) : (root + 1) * sum(widths)], widths)
    catalogue = _packed(file, rows, widths, place, index) if kind == _IN_A_STREAM else _plain(file, place)
    return _Table(start, size, root, info, catalogue) if catalogue.rstrip().endswith(b">>") else None


def _fields(row: bytes, widths: Sequence[int]) -> tuple[int, int, int]:
    one, two, _ = widths
    return (
        int.from_bytes(row[:one], "big"),
        int.from_bytes(row[one : one + two], "big"),
        int.from_bytes(row[one + two :], "big"),
    )


def _plain(file: bytes, place: int) -> bytes:
    body = file[place : file.index(b"endobj", place)]
    return body.partition(b"obj")[2].strip()


def _packed(file: bytes, rows: bytes, widths: Sequence[int], stream: int, index: int) -> bytes:
    """An object inside a stream of objects: number and place of each stand before the first of them."""
    _, place, _ = _fields(rows[stream * sum(widths) : (stream + 1) * sum(widths)], widths)
    head, _, rest = file[place:].partition(b"stream\n")
    opened = zlib.decompressobj().decompress(rest)
    first = int(re.findall(rb"/First (\d+)", head)[0])
    places = [int(one) for one in opened[:first].split()[1::2]]
    end = places[index + 1] if index + 1 < len(places) else len(opened) - first
    return opened[first + places[index] : first + end].strip()
