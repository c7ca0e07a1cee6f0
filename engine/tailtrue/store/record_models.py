"""The shape of the files of the records: places to write in, and what stands on the record of a route."""

from typing import Literal

from pydantic import Field

from tailtrue.store.models import File, When


class EntryFile(File):
    """A place to write in on the record.

    What a step judges takes band, instrument and doubt from that step, from the check of that number among those with a
    band; where the step is not on the sheet nothing is judged. What no step judges names them itself.
    """

    label: str
    unit: str = ""
    choices: list[str] = Field(default=[])
    planned: str = ""
    words: bool = False
    when: When = Field(default=[])
    judged_at: str = Field(default="", description="a step, by id")
    check: int = Field(default=1, ge=1)
    low: str = ""
    high: str = ""
    instrument: str = Field(default="", description="a need, by id")
    resolution: str = ""
    uncertainty: str = ""


class BlockFile(File):
    """Places of the record that belong together."""

    id: str
    title: str
    columns: list[str] = Field(min_length=1)
    when: When = Field(default=[])
    entry: list[EntryFile] = Field(min_length=1)
    sources: list[str] = Field(min_length=1)


class KnownFile(File):
    """A line of what is known beforehand."""

    label: str
    value: str
    when: When = Field(default=[])


class WayFile(File):
    """What was read, and on which side something stands or is set."""

    case: str
    side: str
    when: When = Field(default=[])


class ColumnFile(File):
    """A column of numbers: the field of the list of records, and its head."""

    field: str
    head: str


class LookTableFile(File):
    """A table from a computed list of records. `words` are those on paper for each word of the field `said`."""

    records: str
    title: str
    column: list[ColumnFile] = Field(min_length=1)
    said: str = ""
    says: str = Field(default="", description="head of the words")
    words: dict[str, str] = Field(default={})
    blank_at: list[str] = Field(default=[], description="words of `said` at which the first number stands alone")
    when: When = Field(default=[])


class RecordLineFile(File):
    """A line of a record."""

    part: Literal["safety", "told", "fill", "verify", "keep", "log"]
    text: str
    when: When = Field(default=[])


class WorkRecordFile(File):
    """The record of a route that is no test of the tailstock. `shared` are blocks of every record, by id."""

    route: str
    title: str
    of: str
    subject: str
    shared: list[str]
    known: list[KnownFile] = Field(default=[])
    way: list[WayFile] = Field(default=[])
    table: list[LookTableFile] = Field(default=[])
    line: list[RecordLineFile] = Field(min_length=1)
    block: list[BlockFile] = Field(min_length=1)
    sources: list[str] = Field(min_length=1)
