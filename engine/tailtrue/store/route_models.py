"""The shape of the routes: the authored order of a whole job, phase by phase."""

from typing import Literal

from pydantic import Field

from tailtrue.store.models import File, When


class AlsoFile(File):
    """One more piece that a phase is done for in some jobs, and what its purpose says of it."""

    name: str
    when: When = Field(min_length=1)
    purpose: str = ""


class PhaseFile(File):
    """A stretch of a route, and what holds the work in it, which limits its speeds."""

    id: str
    title: str
    held: Literal["nothing", "chuck", "bar", "blank", "faceplate", "stub", "independent", "point", "centres"] = "nothing"
    purpose: str = ""
    each: list[str] = Field(default=[])
    also: list[AlsoFile] = Field(default=[])
    when: When = Field(default=[])
    steps: list[str] = Field(min_length=1)


class RouteFile(File):
    """The authored order of a whole job, what it has to do with, and the parts its sheet has."""

    id: str
    title: str
    lead: str
    concerns: list[str] = Field(min_length=1)
    parts: list[Literal["drawing", "cut-list", "look-up", "card", "care", "sop"]]
    starts_with: list[str]
    must_reach: list[str]
    answers: list[str] = Field(default=[], description="the decisions that its back tells; none named: every one asked")
    leaves: bool = Field(default=False, description="another sheet was left for this one, and work goes back to it")
    phase: list[PhaseFile] = Field(min_length=1)
