"""What every command shares: errors in words, results as JSON on request, an exit code that says how it went."""

import json
from collections.abc import Callable
from dataclasses import asdict
from typing import Any

import typer

from tailtrue.errors import TailtrueError, report


def guarded(work: Callable[[], dict[str, Any]], as_json: bool) -> dict[str, Any]:
    """The result of `work`; on an error the report and its exit code, and no result at all."""
    try:
        result = work()
    except TailtrueError as error:
        if as_json:
            typer.echo(json.dumps({"version": 1, "ok": False, "errors": _errors(error)}, ensure_ascii=False, indent=2))
        else:
            typer.echo(report(error), err=True)
        raise typer.Exit(int(error.exit_code)) from None
    if as_json:
        typer.echo(json.dumps({"version": 1, "ok": True, **result}, ensure_ascii=False, indent=2))
    return result


def _errors(error: TailtrueError) -> list[dict[str, Any]]:
    return [
        {
            "kind": type(error).__name__, "where": one.where, "said": one.said, "wrong": one.wrong, "do": one.do,
            **({"hangs_on": behind} if (behind := [asdict(said) for said in error.hangs_on(number)]) else {}),
        }
        for number, one in enumerate(error.problems)
    ]  # fmt: skip
