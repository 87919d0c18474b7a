"""The `nursery` command."""

import click

from assistant.commands import officer, plan, read, serve, village


@click.group()
def main() -> None:
    """A rice mat-nursery assistant over SMS and USSD."""


main.add_command(serve.start, "start")
main.add_command(serve.web, "web")
main.add_command(serve.worker, "worker")
main.add_command(plan.command, "plan")
main.add_command(read.command, "read")
main.add_command(village.command, "village")
main.add_command(officer.command, "officer")

if __name__ == "__main__":
    main()
