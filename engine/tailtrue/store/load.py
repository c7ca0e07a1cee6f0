"""Loading the whole knowledge: files read, texts and conditions compiled against the catalogue of facts."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import Any, TypeVar

from tailtrue.computed.registry import Computed, register
from tailtrue.conditions import Condition, ConditionError, read_condition
from tailtrue.decisions import Decision, DecisionRow, Stated
from tailtrue.errors import FactsWrong, KnowledgeInvalid
from tailtrue.facts import Fact, FactSpec
from tailtrue.given.catalogue import Catalogue, load_catalogue
from tailtrue.quantities import read_quantity
from tailtrue.store import models, page_models
from tailtrue.store.checks import check_knowledge
from tailtrue.store.knowledge import (
    Also,
    Caution,
    CheckText,
    GoesOnText,
    HoldText,
    Knowledge,
    Need,
    Note,
    Phase,
    Remark,
    Route,
    Say,
    SettingsFrom,
    ShopRules,
    StepDrawing,
    StepText,
    Stop,
    Term,
    VoidText,
)
from tailtrue.store.layers import Layers
from tailtrue.store.overlay import Overlay
from tailtrue.store.page_texts import SettingText
from tailtrue.store.pages import load_page
from tailtrue.store.reading import Reader
from tailtrue.store.records import load_blocks, load_records
from tailtrue.store.route_models import PhaseFile, RouteFile
from tailtrue.store.safety import controls_of, load_safety
from tailtrue.store.sop import load_sop
from tailtrue.store.version import knowledge_version
from tailtrue.tables import read_tables, source_keys
from tailtrue.wording import Wording, read_wording

Made = TypeVar("Made")

# What a condition may look like, with words to put facts in place of.
_GRAMMAR = (
    'write "FACT is WORD", "FACT is yes", "FACT is one of A, B", "FACT > 90 mm", "FACT between 1 mm and 2 mm" or '
    '"FACT is known"; docs/facts.md lists the facts'
)

# Folders with what is said at the lathe, and with the facts that are said there.
SAID_IN = ("visit", "record", "setover", "tag", "explain")
FACTS_SAID_IN = ("visit", "setover", "tag")


class Loader:
    """Reads one knowledge folder, gathering every fault before it gives up."""

    def __init__(self, folder: Path, layers: Layers | None = None) -> None:
        self.folder = folder
        self.reader = Reader(folder)
        self.layers = layers
        self.overlay = Overlay(layers, self.reader.wrong)
        self.shipped: dict[str, Fact] = {}
        self.signals: dict[str, str] = {}
        self.always: list[models.CautionFile] = []
        self.computed: Mapping[str, Computed] = register()
        self.given: Catalogue = replace(load_catalogue(folder), worked_out=frozenset(self.computed))
        self.catalogue: dict[str, FactSpec] = dict(self.given.specs())
        self.catalogue.update({name: way.spec for name, way in self.computed.items()})

    def load(self) -> Knowledge:
        """The knowledge, or KnowledgeInvalid with all that is wrong."""
        limits = self._limits()
        self._said_at_lathe()
        sources = self._sources()
        decision_files = self._decision_files()
        knowledge = Knowledge(
            version=self._version(),
            given=self.given,
            catalogue=self.catalogue,
            computed=self.computed,
            limits=limits,
            decisions={file.id: self._decision(file, where) for file, where in decision_files},
            decision_examples={file.id: tuple(file.example) for file, _ in decision_files},
            cautions=tuple(
                Caution(f, self._when(f.when, w, f.id), self._wordings(f.avoid, w, f.id), controls_of(f, w, self._when), w)
                for f, w in self.overlay.cautions(self._cautions())
            ),
            stops=tuple(
                Stop(f, self._when(f.when, w, f.id), self._wording(f.text, w, f.id), self._wordings(f.way_out, w, f.id), w)
                for f, w in self.overlay.stops(self.reader.entries("stops", "stop", models.StopFile))
            ),
            notes=self._told(Note, self.overlay.notes(self.reader.entries("notes.toml", "note", models.NoteFile))),
            remarks=self._told(Remark, self.reader.entries("visit/remarks.toml", "remark", models.RemarkFile)),
            says=self._told(
                Say, chain(*(self.reader.entries(f"{room}/says.toml", "say", models.SayFile) for room in SAID_IN))
            ),
            glossary=tuple(Term(f, w) for f, w in self.reader.entries("words/glossary.toml", "term", models.TermFile)),
            blocks=load_blocks(self.reader, self._when, self._wording),
            records=load_records(self.folder, self.reader, self._when, self._wording),
            steps=self._steps(),
            routes=self._routes(),
            needs={
                f.id: Need(f, self._when(f.have, w, f.id), *self._wordings([f.name, f.detail, f.amount], w, f.id))
                for f, w in self.reader.entries("needs.toml", "need", models.NeedFile)
            },
            page=load_page(self.folder, self.reader, self._when, self._wording),
            drawings=tuple(
                StepDrawing(f, self._when(f.when, w, f.id), {n: self._wording(t, w, f.id) for n, t in f.labels.items()}, w)
                for f, w in self.reader.entries("drawings", "drawing", page_models.StepDrawingFile)
            ),
            safety=load_safety(self.folder, self.reader, self._when, self._wording),
            sources=sources,
            tables=read_tables(self.folder),
            sop=load_sop(self.folder, self.reader, self._when, self._wording),
            folder=self.folder,
            shop=ShopRules(limits=self.shipped, signals=self.signals, always=tuple(self.always)),
        )
        self.overlay.look_over()
        if self.reader.problems:
            raise KnowledgeInvalid(tuple(self.reader.problems))
        over = self.overlay
        laid = replace(
            knowledge.shop,
            changes=tuple(over.changes),
            marks=over.marks,
            own=over.own,
            kept=over.kept,
            taken_out=over.taken_out,
        )
        knowledge = replace(knowledge, shop=laid)
        check_knowledge(knowledge, over.word_problems(knowledge.tables))
        return knowledge

    def _told(self, make: Callable[..., Made], files: Iterable[tuple[Any, str]]) -> tuple[Made, ...]:
        """What is told when something holds: a file with its condition and its text read."""
        return tuple(make(f, self._when(f.when, w, f.id), self._wording(f.text, w, f.id), w) for f, w in files)

    def _sources(self) -> dict[str, models.SourceFile]:
        rows = self.reader.toml(self.folder / "sources.toml").items()
        read = ((name, self.reader.model(models.SourceFile, row, f"knowledge/sources.toml [{name}]")) for name, row in rows)
        return {name: made for name, made in read if made}

    def _version(self) -> str:
        shipped = knowledge_version(self.folder)
        return f"{shipped} + shop {self.layers.version}" if self.layers else shipped

    def _cautions(self) -> Iterator[tuple[models.CautionFile, str]]:
        """The cautions as shipped; what they say is kept, so that a sheet can be held against it."""
        for file, where in self.reader.entries("cautions", "caution", models.CautionFile):
            self.signals[file.id] = file.signal
            if not file.when and file.signal == "danger":
                self.always.append(file)
            yield file, where

    def _when(self, written: list[Any], where: str, said: str) -> Condition:
        return self._tried(lambda: read_condition(written, self.catalogue), read_condition([], {}), where, said)

    def _wording(self, text: str, where: str, said: str) -> Wording:
        return self._tried(lambda: read_wording(text), Wording(()), where, said)

    def _wordings(self, texts: list[str], where: str, said: str) -> tuple[Wording, ...]:
        return tuple(self._wording(text, where, said) for text in texts)

    def _tried(self, make: Callable[[], Made], instead: Made, where: str, said: str) -> Made:
        try:
            return make()
        except (ConditionError, ValueError) as wrong:
            do = _GRAMMAR if isinstance(wrong, ConditionError) else "mend it against the list of facts"
            self.reader.wrong(where, said, str(wrong), do)
            return instead

    def _limits(self) -> dict[str, Fact]:
        limits = {}
        shipped = list(self.reader.entries("limits.toml", "limit", models.LimitFile))
        laid = self.overlay.limits(shipped)
        for (as_shipped, _), (file, where) in zip(shipped, laid, strict=True):
            spec = FactSpec(
                file.id, "quantity", file.label, "limit", file.unit, file.rounding,
                "most" if file.safe == "lower" else "least", where=where, how=file.why,
                sources=tuple(key for written in file.sources for key in source_keys(written)),
            )  # fmt: skip
            try:
                plain = file.unit in ("", "1")
                value, before = (
                    float(one.value) if plain else read_quantity(one.value, one.unit) for one in (file, as_shipped)
                )
            except (FactsWrong, ValueError) as wrong:
                self.reader.wrong(where, file.value, str(wrong), f"give a quantity in {file.unit}")
                continue
            limits[file.id] = Fact(spec, value, sources=spec.sources)
            self.shipped[file.id] = Fact(spec, before)
            self._new(spec)
        return limits

    def _new(self, spec: FactSpec) -> None:
        if spec.name in self.catalogue:
            self.reader.wrong(spec.where, spec.name, "a fact has this name already", "rename one")
        self.catalogue[spec.name] = spec

    def _said_at_lathe(self) -> None:
        files = (self.reader.entries(f"{room}/facts.toml", "fact", models.SaidAtLatheFile) for room in FACTS_SAID_IN)
        for file, where in chain.from_iterable(files):
            self._new(FactSpec(
                file.id, file.kind, file.label, "given", file.unit, file.rounding, choices=tuple(file.choices), where=where,
                how=file.how, sources=tuple(key for written in file.sources for key in source_keys(written)),
            ))  # fmt: skip

    def _decision_files(self) -> list[tuple[models.DecisionFile, str]]:
        """The decisions as they are written, each a fact of the catalogue, so that conditions can be read."""
        files = list(self.overlay.decisions(self.reader.entries("decisions", "decision", models.DecisionFile)))
        for file, where in files:
            choices = tuple(dict.fromkeys(row.then for row in file.row))
            ids = {row.name: row.name.replace(",", "").lower().replace(" ", "-") for row in file.row}
            names = {row.then: row.name for row in file.row if ids[row.name] == row.then}
            self._new(FactSpec(
                file.id, "choice", file.label, "decided", choices=choices, where=where, how=file.question, names=names,
            ))  # fmt: skip
        return files

    def _decision(self, file: models.DecisionFile, where: str) -> Decision:
        rows = tuple(
            DecisionRow(
                row.then,
                row.name,
                self._when(row.when, where, f"{file.id}: {row.then}"),
                row.why,
                tuple(key for written in row.sources for key in source_keys(written)),
                row.if_unknown,
                self._wording(row.figures, where, f"{file.id}: {row.then}"),
                tuple((self._when(says.when, where, f"{file.id}: {row.then}"), says.text) for says in row.says),
                row.closed_by,
                row.never_taken,
                row.gives,
                row.settles,
            )
            for row in file.row
        )
        told = file.stated
        stated = Stated(told.fact, self._when(told.when, where, file.id), told.says) if told else None
        return Decision(
            self.catalogue[file.id], file.question, file.hit, rows, where, tuple(file.concerns), stated, file.every_way
        )

    def _setting(self, file: models.SettingFile, where: str, said: str) -> SettingText:
        label, value, reason = self._wordings([file.label, file.value, file.reason], where, said)
        return SettingText(label, value, reason, self._when(file.when, where, said))

    def _steps(self) -> dict[str, StepText]:
        steps: dict[str, StepText] = {}
        for path in sorted((self.folder / "steps").glob("*.md")):
            head, body = self.reader.head_and_body(path)
            where = self.reader.place(path, 1)
            file = self.reader.model(models.StepFile, head, where) if head else None
            if file is None:
                continue
            body, place = self.overlay.step(file, body, where)
            if file.id in steps or file.id != path.stem:
                self.reader.wrong(where, file.id, "the id of a step is the name of its file", "make them the same")
            steps[file.id] = self._step(file, body, place)
        return steps

    def _step(self, file: models.StepFile, body: str, where: str) -> StepText:
        rows = file.settings_from
        return StepText(
            file=file,
            when=self._when(file.when, where, file.id),
            sentences=self._wordings([line.strip() for line in body.splitlines() if line.strip()], where, file.id),
            settings=tuple(self._setting(setting, where, file.id) for setting in file.settings),
            settings_from=SettingsFrom(rows.records, *self._wordings([rows.label, rows.value, rows.reason], where, file.id))
            if rows
            else None,
            checks=tuple(
                CheckText(
                    self._wording(check.text, where, file.id),
                    check.low,
                    check.high,
                    check.instrument,
                    check.resolution,
                    check.uncertainty,
                    tuple(check.blanks),
                    self._when(check.when, where, file.id),
                )
                for check in file.check
            ),
            without={tool: self._when(when, where, file.id) for tool, when in file.without.items()},
            only={line: self._when(when, where, file.id) for line, when in file.only.items()},
            hold=self._hold(file.hold, where, file.id) if file.hold else None,
            why=self._wording(file.why, where, file.id),
            where=where,
        )

    def _hold(self, file: models.HoldFile, where: str, said: str) -> HoldText:
        goes_on = tuple(
            GoesOnText(self._when(one.when, where, said), tuple(one.at), self._wording(one.said, where, said))
            for one in file.goes_on
        )
        void = tuple(VoidText(self._when(one.when, where, said), self._wording(one.text, where, said)) for one in file.void)
        return HoldText(file, self._wording(file.text, where, said), goes_on, void)

    def _routes(self) -> dict[str, Route]:
        routes = {}
        for path in sorted((self.folder / "routes").glob("*.toml")):
            where = self.reader.place(path, 1)
            file = self.reader.model(RouteFile, self.reader.toml(path), where)
            if file is None:
                continue
            phases = tuple(self._phase(phase, where) for phase in file.phase)
            routes[file.id] = Route(file, self._wording(file.lead, where, file.id), phases, where)
        return routes

    def _phase(self, file: PhaseFile, where: str) -> Phase:
        also = tuple(
            Also(one.name, self._when(one.when, where, one.name), self._wording(one.purpose, where, one.name))
            for one in file.also
        )
        return Phase(file, self._when(file.when, where, file.id), self._wording(file.purpose, where, file.id), also)


def load_knowledge(folder: Path, layers: Layers | None = None) -> Knowledge:
    """Load the knowledge of a folder, with the rules of a shop laid over it.

    Every static check runs. Raises KnowledgeInvalid with every fault found, each with file and line.
    """
    return Loader(folder, layers).load()
