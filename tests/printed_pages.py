"""What is read back from a file of print."""

import re

import pypdfium2 as pdfium


def pages_of(pdf: bytes) -> tuple[str, ...]:
    """What stands on each page, without the gaps between words."""
    return tuple(re.sub(r"\s", "", page.get_textpage().get_text_range()) for page in pdfium.PdfDocument(pdf))
