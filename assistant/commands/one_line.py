"""Refusals of the command line: exit 2 and one line that says what to write instead."""

from typing import IO, Any

import click

SHOWN_CHARACTERS = 40


class OneLineError(click.ClickException):
    """An option that cannot be read. The text says what to write instead."""

    exit_code = 2

    def show(self, file: IO[Any] | None = None) -> None:
        """Prints the one line."""
        click.echo(f"Error: {self.message}", file=file, err=file is None)


class OneLineCommand(click.Command):
    """A command whose usage errors are one line, without the usage above it."""

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
        except click.MissingParameter as missing:
            help_text = getattr(missing.param, "help", None) or ""
            raise one_line(f"{missing.format_message()} {help_text}") from missing
        except click.UsageError as refused:
            raise one_line(refused.format_message()) from refused

    def invoke(self, ctx: click.Context) -> Any:
        """Runs the command; a refusal found later is one line too."""
        try:
            return super().invoke(ctx)
        except click.UsageError as refused:
            raise one_line(refused.format_message()) from refused


def one_line(text: str) -> OneLineError:
    """A refusal whose text holds no line break, whatever was typed."""
    return OneLineError(" ".join(text.split()))


def shown(typed: str) -> str:
    """What somebody typed, short and without control characters, for showing it back."""
    plain = "".join(ch if ch.isprintable() else " " for ch in str(typed))
    cut = plain[:SHOWN_CHARACTERS]
    return f"'{cut}...'" if len(plain) > SHOWN_CHARACTERS else f"'{cut}'"
