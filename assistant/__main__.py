"""The `nursery` command: each of its commands is opened only when it is called.

Reading a reply or printing a plan needs no database and no web server, and a desk computer
should not wait for them.
"""

from importlib import import_module
from typing import NamedTuple

import click

from assistant.commands.left_out import left_out
from assistant.commands.one_line import OneLineGroup


class _Place(NamedTuple):
    """Where a command stands, and the first sentence of its help: all commands are listed
    without opening one."""

    module: str  # of assistant.commands
    name: str
    sentence: str


_COMMANDS = {
    "start": _Place(
        "serve",
        "start",
        "All in one; with no gateway set, beside a simulated operator to try it by hand.",
    ),
    "web": _Place("serve", "web", "Only the web side: what the gateway calls."),
    "worker": _Place("serve", "worker", "Only the worker: due prompts and the outbox."),
    "plan": _Place("plan", "command", "Print the quantities and the calendar of one nursery."),
    "read": _Place(
        "read",
        "command",
        "Read one reply a line from standard input and show how it is understood.",
    ),
    "village": _Place("village", "command", "The villages of the programme."),
    "import": _Place("importing", "command", "Take in a list of farmers (CSV or XLSX)."),
    "officer": _Place("officer", "command", "The extension officers."),
    "alert": _Place(
        "alert", "command", "Try one CAP 1.2 message: what it says and what would follow."
    ),
    "catalogue": _Place(
        "catalogue",
        "command",
        "Print the texts of a language as a CSV sheet for a native reviewer.",
    ),
    "check": _Place(
        "check",
        "command",
        "Check settings, database, catalogues, word lists, gateway; exit 1 if one is unfit.",
    ),
    "texts": _Place(
        "running", "texts", "Hold all texts back, let them go, or look how they stand."
    ),
    "line": _Place("line", "line", "Try the lines to the phones, or look how they stand."),
    "clock": _Place("running", "clock", "What to make of this machine's clock."),
    "backup": _Place(
        "backup", "command", "Copy the database into FILE, which only its owner may read."
    ),
    "restore": _Place("backup", "restore", "Put the copy FILE in the place of the database."),
    "settings": _Place(
        "deploying", "settings", "Print a settings file with every setting explained."
    ),
    "units": _Place(
        "deploying",
        "units",
        "Write the systemd units nursery-web and nursery-worker INTO a folder.",
    ),
    "person": _Place("person", "person", "What is kept of one person, and having it deleted."),
    "trail": _Place("person", "trail", "The trail of what was done."),
    "status": _Place(
        "database",
        "status",
        "Which tables the database has, and which this release works with.",
    ),
    "migrate": _Place("database", "migrate", "Bring the tables to this release."),
    "downgrade": _Place(
        "database",
        "downgrade",
        "Take the tables back to TO, such as v0076, for an earlier release to work with.",
    ),
    "acts": _Place(
        "acts",
        "command",
        "How texts are heard: by rule, and by the table learned from sentences.",
    ),
    "question": _Place(
        "questions",
        "command",
        "Questions that the office answers; each is read on the page before it is used.",
    ),
}


class _OnCall(OneLineGroup):
    """A group whose commands are imported when they are asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return [name for name in _COMMANDS if name not in left_out()]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        place = _COMMANDS.get(cmd_name)
        if place is None or cmd_name in left_out():
            return None
        found = getattr(import_module(f"assistant.commands.{place.module}"), place.name)
        if not isinstance(found, click.Command):
            raise TypeError(f"{place} is no command: name one in assistant/commands")
        return found

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The commands and what they are for, as click writes them; none is opened."""
        with formatter.section("Commands"):
            formatter.write_dl(
                [(name, _COMMANDS[name].sentence) for name in self.list_commands(ctx)]
            )


@click.group(cls=_OnCall)
def main() -> None:
    """A rice mat-nursery assistant over SMS and USSD."""


if __name__ == "__main__":
    main()
