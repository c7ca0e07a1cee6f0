"""What is in the log and is no record: a row of an imported file, a barred visit; kept until somebody deals with it."""

from tailtrue.log.record import Part


class RowFault(Part):
    """One thing that is wrong with a row: in which column, what was read, what is wrong, what to do."""

    column: str
    said: str
    wrong: str
    do: str


class UnreadRow(Part):
    """A row as it stood in its file, with the line of the columns, and why it could not be read.

    Readings that were judged and are no record stand here too; they have no line in a file, so `line` is 0.
    """

    file: str
    line: int
    columns: str
    text: str
    faults: tuple[RowFault, ...]

    @property
    def same(self) -> tuple[str, str]:
        """What makes two rows the same row, whatever the file was called."""
        return self.columns, self.text

    @property
    def but_for_the_date(self) -> tuple[str, str]:
        """The same of a visit, whose date stands first."""
        return self.columns, self.text.partition(", ")[2]
