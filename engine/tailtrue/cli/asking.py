"""A command that lacks something says what to write, with a line to copy."""

import shlex
from typing import Any

import typer
from typer.core import TyperCommand

# What stands in the line to copy for a thing that was not given, by its place-holder or its option.
_SUCH_AS = {
    "JOB": "job.toml", "JOB...": "job.toml", "NUMBER": "1", "FILE": "log.csv", "--out": "papers", "--from": "visit.toml",
    "--reason": "another bar was on", "--initials": "AB",
}  # fmt: skip


class Asking(TyperCommand):
    """A command whose word on what is missing ends with the whole line, as it could be typed."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """As ever; a thing that is missing is told with its meaning and an example."""
        typed = list(args)
        try:
            return super().parse_args(ctx, args)
        except typer.BadParameter as wrong:
            # Only what is missing has no message of its own.
            if not wrong.message and wrong.param is not None:
                means = (getattr(wrong.param, "help", None) or "it is needed").rstrip(".")
                wrong.message = f"It is: {means}.\nWrite, for example: {self._line(ctx, typed)}"
            raise

    def _line(self, ctx: Any, typed: list[str]) -> str:
        needed = [one for one in self.params if one.required]
        words = [] if any(not word.startswith("-") for word in typed[:1]) else [
            _such_as(one.metavar or "") for one in needed if one.param_type_name == "argument"
        ]  # fmt: skip
        words += typed
        for one in needed:
            if one.param_type_name == "option" and not set(one.opts) & set(typed):
                words += [one.opts[0], _such_as(one.metavar or "", one.opts[0])]
        return f"{ctx.command_path} {shlex.join(words)}"


def _such_as(*names: str) -> str:
    return next((_SUCH_AS[name] for name in names if name in _SUCH_AS), names[-1])


def ask(app: typer.Typer) -> None:
    """Let every command of this app, and of those below it, say what to write."""
    for command in app.registered_commands:
        command.cls = Asking
    for group in app.registered_groups:
        if group.typer_instance is not None:
            ask(group.typer_instance)
