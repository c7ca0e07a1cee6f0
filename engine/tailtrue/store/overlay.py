"""The rules of a shop laid over the shipped knowledge, entry by entry; a change against the safe side is refused."""

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any

from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import nearest
from tailtrue.quantities import OFFERED, read_quantity
from tailtrue.store.checks import MARKS
from tailtrue.store.knowledge import ShopChange
from tailtrue.store.layers import Layers
from tailtrue.store.models import CautionFile, ControlFile, DecisionFile, LimitFile, NoteFile, StepFile, StopFile
from tailtrue.store.overlay_models import AddFile, DisableFile, EntryFile, RewordFile, TightenFile
from tailtrue.store.rule_files import SHOP_SOURCE
from tailtrue.store.shop_words import shop_word_problems
from tailtrue.tables import Table
from tailtrue.wording import read_wording

_WEIGHT = {"notice": 0, "caution": 1, "warning": 2, "danger": 3}
_MOST_LINES = 3  # of what a caution says to do
_UNITS = "|".join(re.escape(unit) for units in OFFERED.values() for unit in (*units, "rev/min", "minutes", "hours"))
_TYPED = re.compile(rf"(?<!\w)\d[\d.,/]*\s?(?:{_UNITS})(?!\w)")
_COULD = {"tighten": ("limit",), "reword": ("caution", "note", "step"), "disable": ("caution", "note", "decision")}

_A_WORD = 3  # letters of a word that is looked for in names
_MOST_NEAR = 4

Wrong = Callable[[str, str, str, str], None]


def signed(entry: EntryFile) -> str:
    """Who changed it, when, and why, as it stands on paper."""
    day = _day(entry)
    return f"{entry.by}, {day}: {entry.reason}" if day else f"{entry.by}: {entry.reason}"


def _day(entry: EntryFile) -> str:
    return entry.date.isoformat() if entry.date else ""


class Overlay:
    """What the files of a shop change. Faults go to `wrong`; what was changed is kept in `changes`.

    `marks` holds what stands beside a rule on paper, by kind and id; `own` how many of its lines, the last ones, are
    the shop's, `kept` what is typed in the lines as shipped, which stay.
    """

    def __init__(self, layers: Layers | None, wrong: Wrong) -> None:
        files = layers.files if layers else ()
        self._wrong = wrong
        self._added: list[tuple[AddFile, str]] = [(e, f.place("add", n)) for f in files for n, e in enumerate(f.rules.add)]
        self._tighten: list[tuple[TightenFile, str]] = [
            (e, f.place("tighten", n)) for f in files for n, e in enumerate(f.rules.tighten)
        ]
        self._reword: list[tuple[RewordFile, str]] = [
            (e, f.place("reword", n)) for f in files for n, e in enumerate(f.rules.reword)
        ]
        self._disable: list[tuple[DisableFile, str]] = [
            (e, f.place("disable", n)) for f in files for n, e in enumerate(f.rules.disable)
        ]
        self._met: dict[str, set[str]] = {kind: set() for kind in ("caution", "note", "step", "decision", "limit")}
        self.changes: list[ShopChange] = []
        self.marks: dict[tuple[str, str], str] = {}
        self.own: dict[tuple[str, str], int] = {}
        self.kept: dict[tuple[str, str], tuple[tuple[str, ...], ...]] = {}
        self.taken_out: dict[str, tuple[str, str]] = {}

    def cautions(self, shipped: Iterable[tuple[CautionFile, str]]) -> Iterator[tuple[CautionFile, str]]:
        """The cautions that stand after the shop has spoken."""
        for file, where in shipped:
            self._met["caution"].add(file.id)
            out = [(gone, at) for gone, at in self._disable if gone.caution == file.id]
            if out and self._takes_out_caution(file, out):
                continue
            made, place = file, where
            for entry, at in self._reword:
                if entry.caution == file.id and self._may_reword_caution(file, entry, at):
                    # Of two files the louder word binds.
                    signal = max(made.signal, entry.signal or made.signal, key=_WEIGHT.__getitem__)
                    avoid = [*made.avoid, *self._beside("caution", file.id, file.avoid, entry)]
                    update = {"avoid": avoid, "signal": signal, **_sourced(made)}
                    made, place = made.model_copy(update=update), at
                    self._change("reword", "caution", file.id, file.hazard, entry, at)
            yield made, place
        for new, at in self._added:
            if new.caution:
                self._change("add", "caution", new.caution.id, new.caution.hazard, new, at)
                yield _own(_controlled(new.caution)), at

    def notes(self, shipped: Iterable[tuple[NoteFile, str]]) -> Iterator[tuple[NoteFile, str]]:
        """The notes that stand after the shop has spoken."""
        for file, where in shipped:
            self._met["note"].add(file.id)
            out = [(gone, at) for gone, at in self._disable if gone.note == file.id]
            for gone, at in out:
                self._change("disable", "note", file.id, file.id.replace("-", " "), gone, at)
            if out:
                continue
            yield file, where
            for number, (entry, at) in enumerate(self._reword):
                if entry.note == file.id and self._brings_in_nothing(at, file.id, [file.text], entry):
                    self._change("reword", "note", file.id, file.id.replace("-", " "), entry, at)
                    # The shipped note stays; the words of the shop are a note of their own behind it.
                    name = f"{file.id}-of-the-shop-{number}"
                    self.marks["note", name] = self.marks.pop(("note", file.id))
                    own = {"id": name, "text": " ".join(entry.text), "example": []}
                    yield file.model_copy(update={**own, **_sourced(file)}), at
        for new, at in self._added:
            if new.note:
                self._change("add", "note", new.note.id, new.note.id.replace("-", " "), new, at)
                yield _own(new.note), at

    def stops(self, shipped: Iterable[tuple[StopFile, str]]) -> Iterator[tuple[StopFile, str]]:
        """The shipped stops, none left out and none reworded, and those of the shop."""
        yield from shipped
        for new, at in self._added:
            if new.stop:
                self._change("add", "stop", new.stop.id, new.stop.title, new, at)
                yield _own(new.stop), at

    def limits(self, shipped: Iterable[tuple[LimitFile, str]]) -> Iterator[tuple[LimitFile, str]]:
        """Each limit as the strictest of all files draws it."""
        for file, where in shipped:
            self._met["limit"].add(file.id)
            yield self._limit(file, where)

    def step(self, file: StepFile, body: str, where: str) -> tuple[str, str]:
        """The sentences of a step, behind them those of the shop where it has its own, and where they stand."""
        self._met["step"].add(file.id)
        shipped = [line for line in body.splitlines() if line.strip()]
        for entry, at in self._reword:
            if entry.step != file.id:
                continue
            if file.hold or MARKS & set(file.activities):
                self._wrong(at, file.id, "is a check or a hold: its words stay as they are", "add a caution of your own")
            elif file.machine == "turning":
                wrong = "is done while the spindle turns: its words stay as they are"
                self._wrong(at, file.id, wrong, "add a caution of your own")
            elif self._brings_in_nothing(at, file.id, shipped, entry):
                body, where = "\n".join((body, *self._beside("step", file.id, shipped, entry))), at
                self._change("reword", "step", file.id, file.title, entry, at)
        return body, where

    def decisions(self, shipped: Iterable[tuple[DecisionFile, str]]) -> Iterator[tuple[DecisionFile, str]]:
        """Decisions with alternatives closed: they stay in sight and never hold."""
        for file, where in shipped:
            self._met["decision"].add(file.id)
            made, place = file, where
            for entry, at in self._disable:
                if entry.decision == file.id and self._may_close(file, entry, at):
                    closed = {"closed_by": f"shop rule, {signed(entry)}", "when": [{"not": []}]}
                    rows = [row.model_copy(update=closed) if row.then == entry.alternative else row for row in made.row]
                    made, place = made.model_copy(update={"row": rows}), at
                    name = next(row.name for row in rows if row.then == entry.alternative)
                    self._change(
                        "disable", "alternative", f"{file.id}: {entry.alternative}", f"{file.question} {name}", entry, at
                    )
            yield made, place

    def word_problems(self, tables: Mapping[str, Table]) -> Iterator[Problem]:
        """What is wrong in the words that the shop wrote."""
        return shop_word_problems(self._added, self._reword, tables)

    def look_over(self) -> None:
        """Entries that name what is not there, none or too much, or that change one thing twice in a file."""
        entries: list[tuple[str, EntryFile, str]] = [("tighten", *one) for one in self._tighten]
        entries += [("reword", *one) for one in self._reword]
        entries += [("disable", *one) for one in self._disable]
        seen: set[tuple[str, ...]] = set()
        for words, at in self._reword:
            self._typed_numbers(at, *words.text)
        for kind, entry, at in entries:
            could = _COULD[kind]
            named = [(what, str(getattr(entry, what))) for what in could if getattr(entry, what)]
            if len(named) != 1:
                self._wrong(
                    at, f"[[{kind}]]", "names nothing to change, or more than one thing", f"name one: {', '.join(could)}"
                )
                continue
            what, name = named[0]
            key = (at.rpartition(":")[0], kind, what, name, str(getattr(entry, "alternative", "")))
            if name not in self._met[what]:
                self._wrong(at, name, f"no {what} has this name", _near(what, name, self._met[what]))
            elif key in seen:
                self._wrong(at, name, "is changed a second time in this file", "keep one of the two")
            seen.add(key)
        gone = {(what, getattr(out, what)) for out, _ in self._disable for what in ("caution", "note")}
        for words, at in self._reword:
            for what in ("caution", "note"):
                if getattr(words, what) and (what, getattr(words, what)) in gone:
                    self._wrong(
                        at, getattr(words, what), "is reworded here and taken out by another rule", "keep one of the two"
                    )
        for new, at in self._added:
            self._typed_numbers(at, *_texts_of(new))
            if sum(one is not None for one in (new.caution, new.stop, new.note)) != 1:
                self._wrong(at, "[[add]]", "adds nothing, or more than one thing", "give one of: caution, stop, note")

    def _typed_numbers(self, at: str, *texts: str) -> None:
        """A number with a unit is a fact, so that it prints in both systems and says where it comes from."""
        for text in texts:
            if typed := _TYPED.search(text):
                self._wrong(at, typed[0], "is a number typed into a text", "write a fact in double braces, or leave it out")

    def _change(self, kind: str, what: str, name: str, label: str, entry: EntryFile, at: str, **more: Any) -> None:
        self.changes.append(ShopChange(kind, what, name, label, entry.reason, entry.by, _day(entry), at, **more))
        self.marks[what, name] = signed(entry)

    def _limit(self, file: LimitFile, where: str) -> tuple[LimitFile, str]:
        shipped = _size(file.value, file.unit)
        found: list[tuple[float, TightenFile, str]] = []
        for entry, at in self._tighten:
            if entry.limit == file.id and shipped is not None:
                size = self._tighter(file, shipped, entry, at)
                found += [(size, entry, at)] if size is not None else []
        if not found:
            return file, where
        sizes = [size for size, _, _ in found]
        strictest = min(sizes) if file.safe == "lower" else max(sizes)
        place = sizes.index(strictest)
        for number, (size, entry, at) in enumerate(found):
            self._change(
                "tighten", "limit", file.id, file.label, entry, at, shipped=shipped, drawn=size, binds=number == place
            )  # fmt: skip
        _, entry, at = found[place]
        self.marks["limit", file.id] = signed(entry)
        update = {"value": entry.value, "why": f"shop rule, {signed(entry)}", **_sourced(file)}
        return file.model_copy(update=update), at

    def _tighter(self, file: LimitFile, shipped: float, entry: TightenFile, at: str) -> float | None:
        size = _size(entry.value, file.unit)
        if size is None:
            unit = file.unit if file.unit not in ("", "1") else "a plain number"
            self._wrong(at, entry.value, f"is no value of {file.id}", f"write it in {unit}; as shipped it is {file.value}")
        elif size == shipped:
            self._wrong(at, entry.value, f"changes nothing: {file.id} is {file.value} as shipped", "take the entry out")
        elif (size > shipped) == (file.safe == "lower"):
            wrong = f"is looser than the {file.value} of {file.id}, {file.label}"
            self._wrong(at, entry.value, wrong, f"a shop may only make it {file.safe}")
        elif size < 0 or (size == 0 and file.safe == "lower"):
            self._wrong(at, entry.value, f"leaves nothing of {file.id}", "take the entry out, or add a stop")
        else:
            return size
        return None

    def _takes_out_caution(self, file: CautionFile, entries: list[tuple[DisableFile, str]]) -> bool:
        for entry, at in entries:
            if file.signal == "danger":
                self._wrong(at, file.id, "is a DANGER and stands in every shop", "take the entry out")
            else:
                self._change("disable", "caution", file.id, file.hazard, entry, at)
                self.taken_out |= dict.fromkeys(file.answers, (at, file.id))
        return file.signal != "danger"

    def _may_reword_caution(self, file: CautionFile, entry: RewordFile, at: str) -> bool:
        if file.signal == "danger":
            self._wrong(at, file.id, "is a DANGER and keeps its words", "add a caution of your own beside it")
        elif entry.signal and _WEIGHT[entry.signal] < _WEIGHT[file.signal]:
            self._wrong(
                at,
                entry.signal,
                f"is less than the {file.signal.upper()} of {file.id}",
                "leave the signal word, or raise it",
            )
        elif len(entry.text) > _MOST_LINES:
            self._wrong(at, file.id, f"has more than {_MOST_LINES} lines", "say it shorter")
        else:
            return self._brings_in_nothing(at, file.id, file.avoid, entry, signal_allowed=True)
        return False

    def _beside(self, what: str, name: str, shipped: Sequence[str], entry: RewordFile) -> list[str]:
        """The lines of a shop that are not said already; they stand behind the shipped ones, which stay."""
        self.kept[what, name] = tuple(_typed(line) for line in shipped)
        lines = [line for line in dict.fromkeys(entry.text) if line.strip() not in {one.strip() for one in shipped}]
        self.own[what, name] = self.own.get((what, name), 0) + len(lines)
        return lines

    def _brings_in_nothing(
        self, at: str, name: str, old: Iterable[str], entry: RewordFile, *, signal_allowed: bool = False
    ) -> bool:  # fmt: skip
        """Whether the words of a shop carry no number that the shipped ones do not."""
        if entry.signal and not signal_allowed:
            self._wrong(at, name, "has no signal word", "take the signal word out of this entry")
            return False
        if not all(line.strip() for line in entry.text):
            self._wrong(at, name, "has an empty line", "take it out")
            return False
        before, after = _places(old), _places(entry.text)
        if before is None or after is None or after <= before:
            return True  # a brace that is no place is told where the text is read
        new = ", ".join(sorted(after - before))
        self._wrong(
            at, name, f"brings in {new}", "say it with the numbers of the words that it stands beside, or add a rule"
        )
        return False

    def _may_close(self, file: DecisionFile, entry: DisableFile, at: str) -> bool:
        alternatives = [row.then for row in file.row]
        if not file.shop_may_close:
            self._wrong(at, file.id, "is no choice that a shop may narrow", "take the entry out")
        elif entry.alternative not in alternatives:
            said = entry.alternative or "alternative"
            self._wrong(at, said, f"is no alternative of {file.id}", f"name one of: {', '.join(alternatives)}")
        else:
            return True
        return False


def _near(what: str, name: str, known: Collection[str]) -> str:
    """The names that are like one that is not there, or have a word of it; all of them where they are few."""
    words = {word for word in re.split(r"[^a-z0-9]+", name.casefold()) if len(word) >= _A_WORD}
    close = nearest(name, known)
    near = [close] if close else []
    shared = {one: len(words & set(re.split(r"[^a-z0-9]+", one.casefold()))) for one in sorted(known)}
    near += sorted((one for one in shared if shared[one]), key=lambda one: -shared[one])
    near = list(dict.fromkeys(near))[:_MOST_NEAR]
    if near:
        return f"nearest: {', '.join(near)}"
    return f"tailtrue why JOB --list prints the name of every {what}"


def _texts_of(entry: AddFile) -> Iterator[str]:
    """Everything that an added rule puts on paper as running text."""
    if entry.caution:
        yield from (entry.caution.hazard, entry.caution.harm, *entry.caution.avoid)
    if entry.stop:
        yield from (entry.stop.title, entry.stop.text, *entry.stop.way_out)
    if entry.note:
        yield entry.note.text


def _controlled(file: CautionFile) -> CautionFile:
    """What a shop says to do is an instruction to people, unless it names better controls."""
    if file.controls:
        return file
    lines = [line.rstrip(".") for line in file.avoid if "{{" not in line] or ["what the caution says to do"]
    return file.model_copy(update={"controls": [ControlFile(level="instruct", text=line) for line in lines]})


def _own(file: Any) -> Any:
    """A rule of the shop with the shop among its sources."""
    return file.model_copy(update=_sourced(file))


def _sourced(file: Any) -> dict[str, list[str]]:
    return {"sources": list(dict.fromkeys([*file.sources, SHOP_SOURCE]))}


def _size(written: str, unit: str) -> float | None:
    try:
        return float(written) if unit in ("", "1") else read_quantity(written, unit)
    except (FactsWrong, ValueError):
        return None


def _typed(line: str) -> tuple[str, ...]:
    try:
        return tuple(piece for piece in read_wording(line.strip()).parts if isinstance(piece, str))
    except ValueError:
        return (line.strip(),)


def _places(lines: Iterable[str]) -> set[str] | None:
    try:
        return {f"{place.wants} {place.name}" for line in lines for place in read_wording(line).places()}
    except ValueError:
        return None
