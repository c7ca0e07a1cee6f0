"""Jobs of the sweep that are enough: together they reach all that it reaches, in seconds and not in minutes."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.store.knowledge import Knowledge
from tailtrue.sweeping.files import FOLDER, Raw, Sweep, read_sweep
from tailtrue.sweeping.reach import Reach, Thing, everything, on_sheets, reached_by, unfilled, unreached
from tailtrue.sweeping.run import aimed, visited

FILE = f"{FOLDER}/enough.json"
_AGAIN = "tailtrue knowledge sweep --keep"
_KEYS = {"start", "set"}
# What an entry costs beside the letters that are laid over its start: a job takes its time however little it says.
_COST = 60


@dataclass(frozen=True)
class Enough:
    """A job that is kept: values laid over a start."""

    start: str
    set: Raw

    def raw(self, sweep: Sweep) -> Raw:
        """The job as values laid over the files of its shop."""
        return {**sweep.starts[self.start], **self.set}


def reach_of_enough(known: Knowledge) -> Reach:
    """What the jobs that are kept, and the visits, reach together. Raises KnowledgeInvalid where they cannot be read.

    Where they leave something open, jobs that aim at one thing are tried too: whoever writes a new rule adds its job there.
    """
    sweep = read_sweep(known)
    reach = Reach()
    raws = [one.raw(sweep) for one in read_enough(known, sweep)]
    for visit in sweep.visits:
        reach.add(visited(known, sweep, visit))
    _try(known, sweep, raws, reach)
    reach.counted.update(thing for _, things in on_sheets(known, sweep.job, raws) for thing in things)
    if any(True for _ in unreached(known, reach)):
        _try(known, sweep, aimed(sweep), reach)
    return reach


def _try(known: Knowledge, sweep: Sweep, raws: Iterable[Raw], reach: Reach) -> None:
    for raw in raws:
        things, advice, refused = reached_by(sweep.job, known, raw)
        reach.add(things, refused=refused, faults=unfilled(advice, raw))


def not_enough(known: Knowledge) -> tuple[int, tuple[Problem, ...]]:
    """How many parts of the rule base the jobs that are kept reach, and what is wrong where some are reached by none."""
    reach = reach_of_enough(known)
    problems = tuple(unreached(known, reach))
    if problems:
        said = f"{len(problems)} things are not as these {reach.jobs} jobs show them"
        again = f"run: {_AGAIN}. It tries every job of the sweep and keeps what is needed; then mend what it still tells"
        problems = (
            Problem(f"knowledge/{FILE}", said, "the jobs that are kept may be of an earlier rule base", again),
            *problems,
        )
    problems += tuple(reach.faults)
    return sum(1 for thing in everything(known) if reach.counted[thing]), problems


def read_enough(known: Knowledge, sweep: Sweep) -> tuple[Enough, ...]:
    """The jobs that are kept in the knowledge."""
    where = f"knowledge/{FILE}"
    again = f"write the file anew: {_AGAIN}"
    try:
        entries = json.loads((known.folder / FILE).read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise KnowledgeInvalid([Problem(where, str(error), "cannot be read", again)]) from None
    if not isinstance(entries, list) or not all(isinstance(one, dict) and set(one) == _KEYS for one in entries):
        raise KnowledgeInvalid([Problem(where, "its entries", "are not a start and what is laid over it", again)])
    for place, one in enumerate(entries, start=1):
        if one["start"] not in sweep.starts:
            said = f"entry {place} lies on '{one['start']}'"
            raise KnowledgeInvalid([Problem(where, said, "which is no start of the sweep", again)])
    return tuple(Enough(one["start"], one["set"]) for one in entries)


def enough(sweep: Sweep, tried: Sequence[tuple[Raw, set[Thing]]], sheets: Iterable[tuple[Raw, set[Thing]]]) -> list[Enough]:
    """Jobs chosen one after the other, each for what it adds by its cost; sheets that show a term stand first.

    `tried` are the jobs with what each reaches, `sheets` those whose papers show terms that no paper before them did.
    """
    by_text = {_written(raw): (raw, things) for raw, things in tried}
    chosen = {_written(raw): raw for raw, _ in sheets}
    still_open: set[Thing] = set().union(*(things for _, things in tried))
    for text in chosen:
        still_open -= by_text[text][1]
    costs = {text: len(json.dumps(_nearest(sweep, raw).set)) + _COST for text, (raw, _) in by_text.items()}
    while still_open:
        text = max(by_text, key=lambda one: len(by_text[one][1] & still_open) / costs[one])
        raw, things = by_text[text]
        chosen[text] = raw
        still_open -= things
    return [_nearest(sweep, raw) for raw in chosen.values()]


def as_file(jobs: Iterable[Enough]) -> str:
    """The file of the jobs that are kept: an entry a line, so that a change shows where it is."""
    entries = (json.dumps({"start": one.start, "set": one.set}, ensure_ascii=False, sort_keys=True) for one in jobs)
    return "[\n" + ",\n".join(entries) + "\n]\n"


def _nearest(sweep: Sweep, raw: Raw) -> Enough:
    """The job as few values over a start; only a start that says nothing which the job does not say can lie below it."""
    return min(_over(sweep.starts, raw), key=lambda one: len(json.dumps(one.set)))


def _over(starts: Mapping[str, Raw], raw: Raw) -> Iterator[Enough]:
    for name, start in starts.items():
        if start.keys() <= raw.keys():
            yield Enough(name, {key: value for key, value in raw.items() if key not in start or start[key] != value})


def _written(raw: Raw) -> str:
    return json.dumps(raw, sort_keys=True)
