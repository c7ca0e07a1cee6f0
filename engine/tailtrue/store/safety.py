"""The knowledge of the safety review: files read, texts and conditions compiled, all held against the rest."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple, TypeVar

from tailtrue.conditions import Condition
from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.store import safety_models as models
from tailtrue.store.models import CautionFile, ControlFile
from tailtrue.store.reading import Reader, ReadText, ReadWhen
from tailtrue.wording import Wording

_FOLDER = "safety"
Whole = TypeVar("Whole", models.MatrixFile, models.ReviewFile)


class ControlText(NamedTuple):
    """A control with its condition read; without a condition its level says whether it is there."""

    file: ControlFile
    when: Condition | None


class ReviewLineText(NamedTuple):
    """A line of the review with its texts read."""

    file: models.LineFile
    text: Wording
    answer: Wording | None
    when: Condition
    where: str


class SignatureText(NamedTuple):
    """A signature with its texts read."""

    file: models.SignatureFile
    text: Wording
    when: Condition
    where: str


class WearText(NamedTuple):
    """What is worn in a state, with its texts read."""

    file: models.WearFile
    wear: tuple[Wording, ...]
    never: tuple[Wording, ...]
    when: Condition
    where: str


class MachineCheckText(NamedTuple):
    """A line of a machine check with its texts read."""

    file: models.MachineCheckFile
    item: Wording
    passes: Wording
    otherwise: Wording
    when: Condition
    where: str


class EliminationText(NamedTuple):
    """A way to take a hazard out, with its conditions and reasons read."""

    file: models.EliminationFile
    when: Condition
    taken: Condition
    because: Wording
    declined: Wording
    where: str


@dataclass(frozen=True)
class SafetyText:
    """All of the safety review that is the same for every job."""

    review: models.ReviewFile
    lead: tuple[Wording, ...]
    matrix: models.MatrixFile
    parts: tuple[models.PartFile, ...]
    lines: tuple[ReviewLineText, ...]
    signatures: tuple[SignatureText, ...]
    chemicals: tuple[models.ChemicalFile, ...]
    wear: tuple[WearText, ...]
    checks: tuple[MachineCheckText, ...]
    eliminations: tuple[EliminationText, ...]
    not_met: tuple[tuple[models.NotMetFile, str], ...]

    def sourced(self) -> Iterator[tuple[str, str, Iterable[str]]]:
        """Where, what, and the sources it names."""
        yield "knowledge/safety/matrix.toml", "matrix", self.matrix.sources
        yield "knowledge/safety/review.toml", "review", self.review.sources
        yield from (("knowledge/safety/chemicals.toml", one.id, one.sources) for one in self.chemicals)
        entries: tuple[ReviewLineText | SignatureText | WearText | MachineCheckText | EliminationText, ...] = (
            *self.lines, *self.signatures, *self.wear, *self.checks, *self.eliminations,
        )  # fmt: skip
        for entry in entries:
            yield entry.where, entry.file.id, entry.file.sources
        yield from ((where, row.row, row.sources) for row, where in self.not_met)

    def wordings(self) -> Iterator[tuple[str, str, Wording]]:
        """Where, what, and each text with places for facts."""
        yield from (("knowledge/safety/review.toml", "lead", text) for text in self.lead)
        for line in self.lines:
            yield from ((line.where, line.file.id, text) for text in (line.text, line.answer) if text is not None)
        yield from ((one.where, one.file.id, one.text) for one in self.signatures)
        for state in self.wear:
            yield from ((state.where, state.file.id, text) for text in (*state.wear, *state.never))
        for check in self.checks:
            yield from ((check.where, check.file.id, text) for text in (check.item, check.passes, check.otherwise))
        for way in self.eliminations:
            yield from ((way.where, way.file.id, text) for text in (way.because, way.declined))


def load_safety(folder: Path, reader: Reader, when: ReadWhen, text: ReadText) -> SafetyText:
    """The safety review's knowledge; what is wrong in an entry is noted by the reader."""

    def texts(written: list[str], where: str, said: str) -> tuple[Wording, ...]:
        return tuple(text(one, where, said) for one in written)

    review = _whole(folder, reader, "review.toml", models.ReviewFile)
    entries = reader.entries
    return SafetyText(
        review=review,
        lead=texts(review.lead, "knowledge/safety/review.toml", "lead"),
        matrix=_whole(folder, reader, "matrix.toml", models.MatrixFile),
        parts=tuple(file for file, _ in entries(f"{_FOLDER}/activities.toml", "part", models.PartFile)),
        lines=tuple(
            ReviewLineText(f, text(f.text, w, f.id), text(f.answer, w, f.id) if f.answer else None, when(f.when, w, f.id), w)
            for f, w in entries(f"{_FOLDER}/lines.toml", "line", models.LineFile)
        ),
        signatures=tuple(
            SignatureText(f, text(f.text, w, f.id), when(f.when, w, f.id), w)
            for f, w in entries(f"{_FOLDER}/signatures.toml", "signature", models.SignatureFile)
        ),
        chemicals=tuple(file for file, _ in entries(f"{_FOLDER}/chemicals.toml", "chemical", models.ChemicalFile)),
        wear=tuple(
            WearText(f, texts(f.wear, w, f.id), texts(f.never, w, f.id), when(f.when, w, f.id), w)
            for f, w in entries(f"{_FOLDER}/wear.toml", "state", models.WearFile)
        ),
        checks=tuple(
            MachineCheckText(
                f, text(f.item, w, f.id), text(f.passes, w, f.id), text(f.otherwise, w, f.id), when(f.when, w, f.id), w
            )
            for f, w in entries(f"{_FOLDER}/checks.toml", "check", models.MachineCheckFile)
        ),
        eliminations=tuple(
            EliminationText(
                f, when(f.when, w, f.id), when(f.taken, w, f.id), text(f.because, w, f.id), text(f.declined, w, f.id), w
            )
            for f, w in entries(f"{_FOLDER}/eliminations.toml", "elimination", models.EliminationFile)
        ),
        not_met=tuple(entries(f"{_FOLDER}/not_met.toml", "not_met", models.NotMetFile)),
    )


def controls_of(file: CautionFile, where: str, when: ReadWhen) -> tuple[ControlText, ...]:
    """The controls of a caution with their conditions read."""
    return tuple(
        ControlText(control, when(control.when, where, file.id) if control.when else None) for control in file.controls
    )


def _whole(folder: Path, reader: Reader, name: str, model: type[Whole]) -> Whole:
    path = folder / _FOLDER / name
    made = reader.model(model, reader.toml(path), reader.place(path))
    if made is None:
        raise KnowledgeInvalid(tuple(reader.problems))
    return made


def safety_problems(safety: SafetyText, activities: Mapping[str, str], needs: Iterable[str]) -> Iterator[Problem]:
    """What does not fit together: `activities` are those of the steps, each with the place of one step."""
    where = "knowledge/safety/activities.toml"
    seen: dict[str, str] = {}
    for part in safety.parts:
        for activity in part.answers:
            if activity in seen:
                yield Problem(where, activity, f"stands in {seen[activity]} and in {part.id}", "leave it in one")
            seen[activity] = part.id
    for activity, step in activities.items():
        if activity not in seen:
            yield Problem(step, activity, "no part of the safety review holds this activity", f"add it in {where}")
    known = set(needs)
    for chemical in safety.chemicals:
        if chemical.id not in known:
            yield Problem("knowledge/safety/chemicals.toml", chemical.id, "is not in needs.toml", "mend the name")
    yield from _matrix_problems(safety.matrix)


def _matrix_problems(matrix: models.MatrixFile) -> Iterator[Problem]:
    where = "knowledge/safety/matrix.toml"
    for score in sorted({severity * likelihood for severity in range(1, 6) for likelihood in range(1, 6)}):
        if sum(1 for one in matrix.class_ if one.low <= score <= one.high) != 1:
            yield Problem(where, "class", f"the score {score} lies in no class or in two", "close the gap")
    levels = {"eliminate", "substitute", "guard", "instruct", "protect"}
    if set(matrix.lowers) != levels:
        yield Problem(where, "lowers", "does not name each kind of control", f"name {', '.join(sorted(levels))}")
    for level, most in (("instruct", 1), ("protect", 1)):
        if matrix.lowers.get(level, 0) > most:  # type: ignore[call-overload]
            yield Problem(where, f"lowers.{level}", "an instruction or a thing worn lowers by more than one step", "one")
