"""A row of an imported file that could not be taken in: its text and its faults, kept until somebody deals with it."""

from tailtrue.log.record import Part


class RowFault(Part):
    """One thing that is wrong with a row: in which column, what was read, what is wrong, what to do."""

    column: str
    said: str
    wrong: str
    do: str


class UnreadRow(Part):
    """A row as it stood in its file, with the line of the columns, and why it could not be read."""

    file: str
    line: int
    columns: str
    text: str
    faults: tuple[RowFault, ...]

    @property
    def same(self) -> tuple[str, str]:
        """What makes two rows the same row, whatever the file was called."""
        return self.columns, self.text
