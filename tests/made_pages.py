"""Small files of print with any fault that a test of pages must see."""

from itertools import accumulate

A4 = (595, 842)


def written(*pages: str, size: tuple[int, int] = (300, 200)) -> bytes:
    """A file whose pages are told in the marks of its own language."""
    width, height = size
    kids = " ".join(f"{4 + 2 * number} 0 R" for number in range(len(pages)))
    objects = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} /MediaBox [0 0 {width} {height}] >>",
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
    ]
    for number, marks in enumerate(pages):
        objects += [
            f"<< /Type /Page /Parent 2 0 R /Contents {5 + 2 * number} 0 R /Resources << /Font << /F 3 0 R >> >> >>",
            f"<< /Length {len(marks)} >>\nstream\n{marks}\nendstream",
        ]
    parts = ["%PDF-1.4\n", *(f"{number} 0 obj\n{one}\nendobj\n" for number, one in enumerate(objects, start=1))]
    *places, end = accumulate(map(len, parts))
    table = "".join(f"{place:010} 00000 n \n" for place in places)
    end_of_file = f"trailer << /Size {len(objects) + 1} /Root 1 0 R >>\nstartxref\n{end}\n%%EOF\n"
    return f"{''.join(parts)}xref\n0 {len(objects) + 1}\n0000000000 65535 f \n{table}{end_of_file}".encode()


def line(words: str, x: int, y: int, size: int = 10) -> str:
    """Words at a place in points from the left and lower edge."""
    return f"BT /F {size} Tf {x} {y} Td ({words}) Tj ET "
