"""The rule base itself: `tailtrue knowledge`."""

from pathlib import Path
from typing import Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Json

knowledge_app = typer.Typer(no_args_is_help=True, help="The rule base itself.")


@knowledge_app.command("check")
def knowledge_check(
    rules: Annotated[
        Path | None, typer.Option("--with", help="a file, or folder of files, with rules of a shop", show_default=False)
    ] = None,
    as_json: Json = False,
    summary_wanted: Annotated[
        bool, typer.Option("--summary", help="tell also where the values come from, and which are not confirmed")
    ] = False,
) -> None:
    """Load the rule base, with rules of a shop laid over it where they are named, and run every static check on it."""

    def work() -> dict[str, Any]:
        from tailtrue.diagnosis.soundness import check_diagnosis
        from tailtrue.errors import KnowledgeInvalid, Problem
        from tailtrue.log.soundness import check_log
        from tailtrue.places import knowledge_folder
        from tailtrue.store.dead import dead_entries
        from tailtrue.store.layers import read_layers
        from tailtrue.store.load import load_knowledge
        from tailtrue.store.noticing import EQUAL, but_equal, equal_without_need, noticing, unnoticed
        from tailtrue.store.noticing import counts as faults_counted
        from tailtrue.store.rule_files import files_of
        from tailtrue.store.skeletons import unfilled
        from tailtrue.store.summary import summary, weighing_most
        from tailtrue.sweeping.enough import not_enough
        from tailtrue.truing.soundness import paper_problems

        folder = knowledge_folder()
        if open_places := tuple(unfilled(folder)):
            raise KnowledgeInvalid(open_places)
        layers = read_layers(files_of(rules), rules.parent) if rules else None
        knowledge = load_knowledge(folder, layers)
        counts = summary(knowledge)
        problems: list[Problem] = []
        try:
            record = check_log(folder, knowledge.sources)
            problems += paper_problems(knowledge, {fact.key for fact in record.facts.values()})
            counts["record_fields"] = len(record.facts)
        except KnowledgeInvalid as wrong:
            problems += wrong.problems
        try:
            diagnosis = check_diagnosis(folder, knowledge.tables, knowledge.sources)
            counts |= {
                "causes": len(diagnosis.causes),
                "diagnosis_tests": len(diagnosis.tests),
                "diagnosis_says": len(diagnosis.says),
            }
        except KnowledgeInvalid as wrong:
            problems += wrong.problems
        if problems:
            raise KnowledgeInvalid(problems)
        # Rules of a shop change what the examples of the shipped ones say, and what jobs reach.
        if not knowledge.shop.changes:
            # This takes longest, so a fault of another kind is not kept waiting for it.
            tried, explained = tuple(noticing(knowledge)), knowledge.tables[EQUAL]
            found = tuple(but_equal(tried, explained))
            counts |= faults_counted(found)
            if problems := [*unnoticed(found), *equal_without_need(tried, explained)]:
                raise KnowledgeInvalid(problems)
            counts["reached"], unmet = not_enough(knowledge)
            if unmet:
                raise KnowledgeInvalid(unmet)
        dead = list(dead_entries(knowledge))
        counts["dead_entries"] = len(dead)
        counts["dead"] = dead
        counts["values_not_confirmed"] = dict(weighing_most(knowledge))
        return counts

    counts = guarded(work, as_json)
    if not as_json:
        heaviest, dead = counts.pop("values_not_confirmed"), counts.pop("dead")
        typer.echo("The knowledge is sound.")
        for name, count in counts.items():
            typer.echo(f"  {name}: {count}")
        if summary_wanted:
            _where_values_come_from(counts, heaviest)
            typer.echo("No example and no route reaches:" if dead else "Nothing is dead.")
            for entry in dead:
                typer.echo(f"  {entry}")


def _where_values_come_from(counts: dict[str, Any], heaviest: dict[str, int]) -> None:
    from tailtrue.store.summary import percent_published

    typer.echo(f"A published source stands behind {percent_published(counts)} of {counts['values']} values.")
    typer.echo("Most values without one:")
    for place, count in heaviest.items():
        typer.echo(f"  {place}: {count}")


@knowledge_app.command("sweep")
def knowledge_sweep(
    out: Annotated[
        Path | None,
        typer.Option("--out", help="folder for reference/reach.md, the page of what is reached", show_default=False),
    ] = None,
    seek_wanted: Annotated[
        bool, typer.Option("--seek", help="look for a job that reaches what is reached by none; takes minutes")
    ] = False,
    keep: Annotated[
        bool, typer.Option("--keep", help="write down the jobs that are enough to reach it all, for `knowledge check`")
    ] = False,
    as_json: Json = False,
) -> None:
    """Make and inspect many jobs from the catalogue of given facts, and tell what of the rule base no job reaches."""

    def work() -> dict[str, Any]:
        import os

        from tailtrue.advise import knowledge
        from tailtrue.documents import write_all
        from tailtrue.errors import KnowledgeInvalid
        from tailtrue.sweeping.enough import FILE, as_file, enough
        from tailtrue.sweeping.files import read_sweep
        from tailtrue.sweeping.page import reach_page
        from tailtrue.sweeping.reach import everything, unreached
        from tailtrue.sweeping.run import sweep_all
        from tailtrue.sweeping.seek import as_entry, seek

        known = knowledge()
        sweep = read_sweep(known)
        swept = sweep_all(known, sweep, os.cpu_count() or 1)
        reach = swept.reach
        if keep:
            kept = enough(sweep, swept.tried, swept.sheets)
            write_all({FILE: as_file(kept)}, known.folder)
        problems = (*unreached(known, reach), *reach.faults)
        if out is not None:
            write_all({"reference/reach.md": reach_page(known, reach)}, out)
        every = everything(known)
        none = [thing for thing in every if not reach.counted[thing]]
        found = [seek(known, sweep, thing) for thing in none] if seek_wanted else []
        if problems and not seek_wanted:
            raise KnowledgeInvalid(problems)
        return {
            "jobs": reach.jobs, "refused": reach.refused, "contradict": reach.unread, "things": len(every),
            "reached": len(every) - len(none), "unreached_explained": len(none) - len(problems), "unreached": len(problems),
            "found": [as_entry(one) for one in found if one is not None],
        }  # fmt: skip

    counts = guarded(work, as_json)
    if not as_json:
        found = counts.pop("found")
        for name, count in counts.items():
            typer.echo(f"  {name}: {count}")
        for entry in found:
            typer.echo(entry)


@knowledge_app.command("new")
def knowledge_new(
    kind: Annotated[str, typer.Argument(metavar="KIND", help="rule (a stop), caution, step, decision or material")],
    name: Annotated[str, typer.Argument(metavar="ID", help="the id of the new entry")],
    out: Annotated[
        Path | None, typer.Option("--out", help="file to write, or folder to write it into; else its place in the knowledge")
    ] = None,
) -> None:
    """Write the skeleton of a new entry, which the check refuses until it is filled in."""

    def work() -> dict[str, Any]:
        from tailtrue.documents import write_all
        from tailtrue.places import knowledge_folder, templates_folder
        from tailtrue.store.skeletons import KINDS, skeleton

        path, text = skeleton(kind, name, knowledge_folder(), templates_folder(), out)
        (written,) = write_all({path.name: text}, path.parent)
        return {"path": str(written), "then": KINDS[kind].then}

    done = guarded(work, as_json=False)
    typer.echo(done["path"])
    typer.echo(f"Fill it in, then run: tailtrue knowledge check. {done['then']}")


@knowledge_app.command("reference")
def knowledge_reference(
    out: Annotated[Path, typer.Option("--out", help="folder for facts.md and the pages of reference/")],
) -> None:
    """Write the reference pages: what goes into the four files of a job, and every rule, step, limit and source."""

    def work() -> dict[str, Any]:
        from tailtrue.documents import write_all
        from tailtrue.places import knowledge_folder
        from tailtrue.reference import pages
        from tailtrue.store.load import load_knowledge
        from tailtrue.store.sources_named import sources_named

        folder = knowledge_folder()
        knowledge = load_knowledge(folder)
        return {"paths": [str(path) for path in write_all(pages(knowledge, sources_named(folder, knowledge)), out)]}

    for path in guarded(work, as_json=False)["paths"]:
        typer.echo(path)
