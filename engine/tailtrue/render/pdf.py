"""A page as PDF. The maker is an extra: everything else works without it.

The page is the HTML page. Same page and same letter faces, same bytes: the date in the file is that of the sheet, no
clock is read.
"""

import re
from functools import lru_cache
from io import BytesIO

from tailtrue.places import templates_folder
from tailtrue.procedure import TitleBlock
from tailtrue.render.sign_letters import DRAWN, letter_face, letters

# Links inside the page are resolved against this; nothing is ever fetched.
_BASE = "file:///sheet"
# A face that words are written in; that of the signs comes with us.
_LETTERS = re.compile(rb"/FontName /[A-Z]+\+(?!signs)")
_IN_LARGE_PRINT = '<html lang="en" class="large'
# Citations lead to the list of sources a thousand times: their links cost a fifth of the time, and the number says it all.
# What is ticked on a screen is never printed, and would cost a hundredth. What stands in the brackets is kept.
_NOT_PRINTED = re.compile(r'<a href="#source-[^>]*>([^<]*)</a>|<input type="checkbox"[^>]*>')
# The C library gives the store of each printed page back to the system and takes it anew, at a twelfth of the time, until a
# piece of up to 32 MiB has been let go: then it keeps as much at hand.
_KEPT_AT_HAND = 31 * 2**20


class PdfImpossible(Exception):
    """No PDF can be made here; says why, and what to do."""

    def __init__(self, wrong: str, do: str) -> None:
        self.wrong, self.do = wrong, do
        super().__init__(wrong)


def to_pdf(html: str, title: TitleBlock) -> bytes:
    """A page as PDF, letters embedded.

    Raises PdfImpossible when the maker is not installed, or finds no letters to print with.
    """
    try:
        import plutoprint
    except ImportError as missing:
        raise PdfImpossible("the maker of PDF is not installed", "install it: pip install 'tailtrue[pdf]'") from missing
    from tailtrue.render.outline import bookmarks, outlined, with_places

    bytes(_KEPT_AT_HAND)  # given back at once, and never written to
    book = plutoprint.Book(media=plutoprint.MEDIA_TYPE_PRINT)
    marks = bookmarks(html)
    book.load_html(with_places(_printed(html), marks), user_style=_style(), base_url=_BASE)
    book.set_metadata(plutoprint.PDF_METADATA_CREATION_DATE, f"{title.date}T00:00:00Z")
    made = BytesIO()
    book.write_to_pdf_stream(made)
    # Without a letter face the pages come out with frames and no words, and nothing says so.
    if not _LETTERS.search(made.getvalue()):
        raise PdfImpossible(
            "no letter faces were found, so the pages would be without words",
            "install some, such as the package fonts-liberation",
        )
    return outlined(made.getvalue(), marks)


def _printed(html: str) -> str:
    """The page as it is printed. Large print keeps the drawings of its signs, which are of other sizes."""
    plain = "".join(filter(None, _NOT_PRINTED.split(html)))
    return plain if _IN_LARGE_PRINT in plain else DRAWN.sub(letters, plain)


@lru_cache(maxsize=1)
def _style() -> str:
    """What only the PDF needs."""
    return (templates_folder() / "pdf.css").read_text(encoding="utf-8") + letter_face()


def pdf_ready() -> bool:
    """Whether the maker of PDF is installed."""
    from importlib.util import find_spec

    return find_spec("plutoprint") is not None
