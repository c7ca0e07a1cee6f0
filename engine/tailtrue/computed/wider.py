"""The accuracy whose limit bears a bar as it bends: told where a narrower one stands in the way."""

from tailtrue.calc.alignment import scaled_tolerance
from tailtrue.calc.lengths import share_of
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_WORDS = ("general", "good", "fine")


def _wider_fact(name: str, apart: str, bend: str, table: str, what: str) -> None:
    @computed(name, label=f"accuracy whose limit bears the bending of {what}", kind="choice", choices=_WORDS,
              needs=(apart, bend, "limit.bend_share"), tables=(table,),
              how="the narrowest tolerance of the table of which a share is as much as the bending; else none")  # fmt: skip
    def _wider(distance: float, bending: float, share: float, accuracy: Table) -> str | None:
        allowed = {
            row.text("word"): scaled_tolerance(row.number("tolerance_mm"), row.number("over_length_mm"), distance)
            for row in accuracy.rows
        }
        bearing = [word for word in allowed if share_of(allowed[word], share) >= bending]
        return min(bearing, key=allowed.__getitem__, default=None)


_wider_fact("align.wider", "collar.spacing", "skim.bend_on_diameter", "alignment/accuracy", "the test bar")
_wider_fact("chucked.wider", "chucked.spacing", "chucked.bend_on_diameter", "alignment/chucked", "the chucked bar")
