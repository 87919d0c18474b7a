"""Refusals of the command line: exit 2 and one line that says what to write instead."""

from typing import IO, Any

import click
from click.exceptions import NoArgsIsHelpError

SHOWN_CHARACTERS = 40


class OneLineError(click.ClickException):
    """An option that cannot be read. The text says what to write instead."""

    exit_code = 2

    def show(self, file: IO[Any] | None = None) -> None:
        """Prints the one line."""
        click.echo(f"Error: {self.message}", file=file, err=file is None)


class _OneLine(click.Command):
    """Usage errors are one line, without the usage above it, here and in what it calls."""

    def make_context(
        self,
        info_name: str | None,
        args: list[str],
        parent: click.Context | None = None,
        **extra: Any,
    ) -> click.Context:
        """Reads the options; whatever click cannot read becomes one line."""
        try:
            return super().make_context(info_name, args, parent, **extra)
        except NoArgsIsHelpError:
            raise
        except click.UsageError as refused:
            raise _in_one_line(refused) from refused

    def invoke(self, ctx: click.Context) -> Any:
        """Runs the command; a refusal found later is one line too."""
        try:
            return super().invoke(ctx)
        except NoArgsIsHelpError:
            raise
        except click.UsageError as refused:
            raise _in_one_line(refused) from refused


class OneLineCommand(_OneLine):
    """A command that refuses in one line."""


class OneLineGroup(_OneLine, click.Group):
    """A group that refuses in one line, whichever of its commands it was."""


def _in_one_line(refused: click.UsageError) -> OneLineError:
    """A refusal with the help of the option that is missing."""
    about = getattr(refused, "param", None)
    missing = isinstance(refused, click.MissingParameter)
    help_text = getattr(about, "help", None) or "" if missing else ""
    return one_line(f"{refused.format_message()} {help_text}")


def one_line(text: str) -> OneLineError:
    """A refusal whose text holds no line break, whatever was typed."""
    return OneLineError(" ".join(text.split()))


def shown(typed: str) -> str:
    """What somebody typed, short and without control characters, for showing it back."""
    plain = "".join(ch if ch.isprintable() else " " for ch in str(typed))
    cut = plain[:SHOWN_CHARACTERS]
    return f"'{cut}...'" if len(plain) > SHOWN_CHARACTERS else f"'{cut}'"
