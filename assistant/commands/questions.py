"""`nursery question`: the questions that the programme's office answers itself."""

import json
import tomllib
from pathlib import Path
from typing import Any

import click

from assistant.commands.deployment import opened, settings_now
from assistant.hearing.office import Unfit
from assistant.service.desk.questions import (
    Draft,
    Refusal,
    add_question,
    kept_questions,
    withdraw_question,
)
from assistant.store import KeptQuestion
from assistant.worker import wall_clock

_ENTRIES = {"language", "ways", "answer", "village"}
_WHY = {
    Unfit.EMPTY: "it has no answer",
    Unfit.WAYS: "write 1 to 12 ways of asking, each of two words or more and up to 60 letters",
    Unfit.REFUSED: "no dose, product, poison or bait is ever named: {words}",
    Unfit.DOSE: "an amount that may be a dose: {words}",
    Unfit.LENGTH: "the answer is longer than a segment with the name of the office before it",
    Unfit.HEARD: "this way is heard as danger, a refusal or a word to send: {words}",
    Unfit.PLACE: "no such village, or a language that is not spoken here: {words}",
}


@click.group()
def command() -> None:
    """Questions that the office answers; each is read on the page before it is used."""


@command.command("list")
def show() -> None:
    """List the questions, in use or waiting for a second reader."""
    with opened(settings_now()) as house:
        for kept, village in kept_questions(house):
            state = "in use" if kept.in_use else "to be read"
            place = village or "everywhere"
            click.echo(f"{kept.id}\t{state}\t{kept.language}\t{place}\t{kept.ways[0]}")


@command.command("add")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
def add(file: Path) -> None:
    """Add the [[question]] tables of a TOML file: language, ways, answer, and maybe village."""
    drafts = _read(file)
    with opened(settings_now()) as house:
        faults = 0
        for at, draft in enumerate(drafts, start=1):
            kept = add_question(house, None, draft, wall_clock())
            if isinstance(kept, Refusal):
                faults += 1
                why = _WHY[kept.why].format(words=kept.words)
                click.echo(f"question {at}: {why}", err=True)
            elif kept is not None:
                click.echo(
                    f"Added {kept.id}; an officer reads it on the page, then it is used."
                )
    if faults:
        raise click.ClickException(f"{faults} of {len(drafts)} questions were not added")


@command.command("export")
def export() -> None:
    """Print all questions as a TOML file that can be added again."""
    with opened(settings_now()) as house:
        for kept, village in kept_questions(house):
            click.echo(_table(kept, village))


@command.command("withdraw")
@click.argument("number", type=int)
def withdraw(number: int) -> None:
    """Use a question no more."""
    with opened(settings_now()) as house:
        if withdraw_question(house, None, number, wall_clock()) is None:
            raise click.ClickException(f"there is no question {number}")
    click.echo(f"Withdrawn: {number}")


def _table(kept: KeptQuestion, village: str) -> str:
    """One question; a JSON string is a TOML string too."""
    rows = {"language": kept.language, "ways": list(kept.ways), "answer": kept.answer}
    lines = [f"{key} = {json.dumps(value, ensure_ascii=False)}" for key, value in rows.items()]
    if village:
        lines.append(f"village = {json.dumps(village, ensure_ascii=False)}")
    return "\n".join(["[[question]]", *lines, ""])


def _read(file: Path) -> list[Draft]:
    try:
        table = tomllib.loads(file.read_text("utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise click.ClickException(f"{file}: {fault}") from fault
    found = table.get("question")
    if set(table) != {"question"} or not isinstance(found, list):
        raise click.ClickException(f"{file}: write [[question]] tables and nothing else")
    return [_draft(file, at, each) for at, each in enumerate(found, start=1)]


def _draft(file: Path, at: int, table: dict[str, Any]) -> Draft:
    ways, words = table.get("ways"), {**table, "ways": ""}
    known = set(table) <= _ENTRIES and isinstance(ways, list)
    if not known or not all(isinstance(each, str) for each in [*words.values(), *(ways or ())]):
        raise click.ClickException(
            f'{file}: question {at}: write language = "sw", ways = ["..."], answer = "..." and '
            "maybe village, and nothing else"
        )
    return Draft(
        str(table.get("language", "")),
        tuple(ways or ()),
        str(table.get("answer", "")),
        str(table.get("village", "")),
    )
