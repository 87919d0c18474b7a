"""The `nursery` command: each of its commands is opened only when it is called.

Reading a reply or printing a plan needs no database and no web server, and a desk computer
should not wait for them.
"""

from importlib import import_module

import click

from assistant.commands.one_line import OneLineGroup

_COMMANDS = {
    "start": "serve:start",
    "web": "serve:web",
    "worker": "serve:worker",
    "plan": "plan:command",
    "read": "read:command",
    "village": "village:command",
    "import": "importing:command",
    "officer": "officer:command",
    "alert": "alert:command",
    "catalogue": "catalogue:command",
    "check": "check:command",
    "texts": "running:texts",
    "line": "line:line",
    "clock": "running:clock",
    "backup": "backup:command",
    "restore": "backup:restore",
    "settings": "deploying:settings",
    "units": "deploying:units",
    "person": "person:person",
    "trail": "person:trail",
    "status": "database:status",
    "migrate": "database:migrate",
    "downgrade": "database:downgrade",
    "acts": "acts:command",
    "question": "questions:command",
}


class _OnCall(OneLineGroup):
    """A group whose commands are imported when they are asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        place = _COMMANDS.get(cmd_name)
        if place is None:
            return None
        module, _, name = place.partition(":")
        found = getattr(import_module(f"assistant.commands.{module}"), name)
        if not isinstance(found, click.Command):
            raise TypeError(f"{place} is no command: name one in assistant/commands")
        return found


@click.group(cls=_OnCall)
def main() -> None:
    """A rice mat-nursery assistant over SMS and USSD."""


if __name__ == "__main__":
    main()
