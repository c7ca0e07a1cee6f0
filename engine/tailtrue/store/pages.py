"""The standing texts of a sheet and its card, read from ``knowledge/page.toml``."""

from collections.abc import Iterable
from pathlib import Path

from tailtrue.conditions import Condition
from tailtrue.errors import KnowledgeInvalid
from tailtrue.store import page_models as models
from tailtrue.store.models import When
from tailtrue.store.page_texts import (
    CardGroupText,
    CardLineText,
    CardText,
    Care,
    CutText,
    DrawingPlan,
    Page,
    PageLine,
    StandingLine,
    Supervisor,
    Trouble,
    WorkLine,
)
from tailtrue.store.reading import Reader, ReadText, ReadWhen
from tailtrue.wording import Wording


def load_page(folder: Path, reader: Reader, when: ReadWhen, word: ReadText) -> Page:
    """What stands in the file. Raises KnowledgeInvalid when it cannot be read."""
    path = folder / "page.toml"
    where = reader.place(path)
    file = reader.model(models.PageFile, reader.toml(path), where)
    if file is None:
        raise KnowledgeInvalid(tuple(reader.problems))
    return _PageTexts(where, when, word).page(file)


class _PageTexts:
    """Reads texts and conditions of the one file."""

    def __init__(self, where: str, when: ReadWhen, word: ReadText) -> None:
        self.where, self._read_when, self._read_word = where, when, word

    def when(self, written: When, said: str) -> Condition:
        return self._read_when(written, self.where, said)

    def word(self, text: str, said: str) -> Wording:
        return self._read_word(text, self.where, said)

    def words(self, texts: Iterable[str], said: str) -> tuple[Wording, ...]:
        return tuple(self.word(text, said) for text in texts)

    def page(self, file: models.PageFile) -> Page:
        return Page(
            conventions=self.lines(file.conventions, "conventions"),
            stop_at_once=self.of_work(file.stop_at_once, "stop_at_once"),
            do_not_start=self.of_work(file.do_not_start, "do_not_start"),
            after_a_stop=self.of_work(file.after_a_stop, "after_a_stop"),
            in_emergency=self.words(file.in_emergency, "in_emergency"),
            who_may=self.words(file.who_may, "who_may"),
            who_may_owner=self.words(file.who_may_owner, "who_may_owner"),
            owner_when=self.when(file.owner_when, "owner_when"),
            supervised=self.words(file.supervised, "supervised"),
            supervised_when=self.when(file.supervised_when, "supervised_when"),
            supervisor=Supervisor(
                file.supervisor,
                self.when(file.supervisor.when, "supervisor"),
                self.when(file.supervisor.learner_when, "supervisor"),
                self.when(file.supervisor.adult_when, "supervisor"),
                self.words(file.supervisor.learner_may, "supervisor"),
            ),
            care=self.words(file.care, "care"),
            care_besides=tuple(Care(self.word(one.text, "care"), self.when(one.when, "care")) for one in file.care_besides),
            trouble=tuple(map(self.trouble, file.trouble)),
            use_level=file.use_level,
            control=tuple(self.line(row, "control") for row in file.control),
            facts=tuple(self.line(row, "facts") for row in file.facts),
            cuts=tuple(map(self.cut, file.cut)),
            time_notes=self.lines(file.time_notes, "time_notes"),
            drawing=self.drawing(file.drawing),
            card=self.card(file.card),
            sources=tuple(file.sources),
        )

    def lines(self, written: Iterable[models.StandingLineFile], said: str) -> tuple[StandingLine, ...]:
        return tuple(StandingLine(one, self.word(one.text, said)) for one in written)

    def of_work(self, written: Iterable[models.WorkLineFile], said: str) -> tuple[WorkLine, ...]:
        return tuple(WorkLine(one, self.word(one.text, said)) for one in written)

    def trouble(self, row: models.TroubleFile) -> Trouble:
        do, never = self.words([row.do, row.never], row.seen)
        return Trouble(row.seen, do, never, self.when(row.when, row.seen), tuple(row.concerns), row.turning)

    def cut(self, cut: models.CutFile) -> CutText:
        material, size, saw_to = self.words([cut.material, cut.size, cut.saw_to], cut.piece)
        return CutText(cut, material, size, saw_to, self.when(cut.when, cut.piece))

    def drawing(self, shown: models.DrawingFile) -> DrawingPlan:
        labels = {name: self.word(text, name) for name, text in shown.labels.items()}
        also_when = self.when(shown.also_when, "drawing")
        return DrawingPlan(shown.title, shown.caption, shown.dimensions, labels, shown.also, also_when, shown.if_said)

    def line(self, row: models.PageLineFile, said: str) -> PageLine:
        label, value, reason = self.words([row.label, row.value, row.reason], said)
        return PageLine(label, value, reason, self.when(row.when, said), tuple(row.concerns))

    def card(self, file: models.CardFile) -> CardText:
        return CardText(file, tuple(self.line(note, "card") for note in file.notes), tuple(map(self.group, file.group)))

    def group(self, group: models.CardGroupFile) -> CardGroupText:
        lines = tuple(
            CardLineText(line.fact, self.word(line.label, line.fact), line.beside, line.beside_label, line.tool)
            for line in group.line
        )
        return CardGroupText(group.title, frozenset(group.steps), lines, tuple(group.place))
