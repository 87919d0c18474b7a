"""`nursery acts`: the ear at a desk: how a text is heard, the table made anew, its figures."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

import click

from assistant.acts import Act
from assistant.acts.table import written
from assistant.commands.acts_training import ACTS, Sentence, Trained, read_sentences, train
from assistant.commands.asked_figures import match_figures
from assistant.commands.asked_training import as_sentences, train_match, ways_of
from assistant.hearing import Ears, understand
from assistant.hearing.matching import written_match
from assistant.people import LANGUAGES
from assistant.wiring.asked import open_asked, open_more
from assistant.wiring.hearing import HearingError, open_ears
from assistant.wiring.mapped import replace_bytes
from assistant.wiring.questions import open_questions

FOLDER = Path(__file__).parents[1] / "acts"
SENTENCES, TABLE = FOLDER / "sentences", FOLDER / "table.bin"
MATCH = Path(__file__).parents[1] / "hearing" / "asked" / "table.bin"
ORDINARY = (Act.DONE, Act.NOTDONE, Act.VALUE, Act.GREETING, Act.TALK)
ALARMS = (Act.HARM, Act.DANGER, Act.REFUSE)
RATES = (0.005, 0.01, 0.02, 0.03, 0.05)


@click.group("acts")
def command() -> None:
    """How texts are heard: by rule, and by the table learned from sentences."""


@command.command("hear")
@click.option("--lang", type=click.Choice(list(LANGUAGES)), default="en", show_default=True)
@click.argument("text")
def hear(lang: str, text: str) -> None:
    """Print what a text is heard as: kinds that a rule found, and the weight of each act."""
    heard = understand(text, _ears(), lang)
    click.echo(f"said   {', '.join(heard.said) or '-'}")
    click.echo(f"asks   {', '.join(sorted(heard.perhaps)) or '-'}")
    click.echo(f"denied {', '.join(sorted(heard.denied)) or '-'}")
    for act, weight in sorted(heard.weights.items(), key=lambda each: -each[1]):
        click.echo(f"{weight:5.2f}  {act:9} {heard.certainty(act) or ''}")


@command.command("train")
@click.option("--from", "folder", type=click.Path(path_type=Path), default=SENTENCES)
@click.option("--to", "table", type=click.Path(path_type=Path), default=TABLE)
def make(folder: Path, table: Path) -> None:
    """Make the table anew from the sentences, and print its figures (about a minute).

    Needs the dev extra. Each sentence is weighed by a table that has not seen it.
    """
    sentences = (*_read(folder), *as_sentences(open_more()))
    trained = train(sentences)
    replace_bytes(table, written(trained.table))
    click.echo(f"{len(sentences)} sentences -> {table.name}, {table.stat().st_size} bytes")
    for line in figures(sentences, trained):
        click.echo(line)


@command.command("questions")
@click.option("--to", "table", type=click.Path(path_type=Path), default=MATCH)
def questions(table: Path) -> None:
    """Make the table of plain questions anew from the ways of asking, and print its figures.

    Needs the dev extra. Each way is weighed by a table that has not seen it.
    """
    hands = (open_asked(), open_more())
    trained = train_match(ways_of(hands, _read(SENTENCES)), open_questions())
    replace_bytes(table, written_match(trained.table))
    click.echo(f"{len(trained.ways)} ways -> {table.name}, {table.stat().st_size} bytes")
    for line in match_figures(trained):
        click.echo(line)


@command.command("rules")
@click.option("--lang", type=click.Choice(list(LANGUAGES)), required=True)
@click.option("--from", "folder", type=click.Path(path_type=Path), default=SENTENCES)
@click.option("--misses", is_flag=True, help="Print the sentences that no rule hears.")
def rules(lang: str, folder: Path, misses: bool) -> None:
    """How far the exact rules alone hear the sentences of a language, and what they mishear."""
    ears = _ears()
    rows = [row for row in _read(folder) if row.language == lang]
    for line in _heard_by_rule(rows, ears, misses):
        click.echo(line)


def _read(folder: Path) -> tuple[Sentence, ...]:
    try:
        return read_sentences(folder)
    except (OSError, ValueError) as fault:
        raise click.ClickException(str(fault)) from fault


def _ears() -> Ears:
    try:
        return open_ears()
    except HearingError as fault:
        raise click.ClickException(str(fault)) from fault


def _heard_by_rule(rows: Sequence[Sentence], ears: Ears, misses: bool) -> Iterator[str]:
    counts: Counter[tuple[Act, str]] = Counter()
    missed = []
    for row in rows:
        said = understand(row.text, ears, row.language).said
        counts[row.act, str(said[0]) if said else "-"] += 1
        wrong = bool(said) if row.act in ORDINARY else not said
        if wrong and (misses or row.act in ORDINARY):
            missed.append(f"{row.act}\t{row.text}\t{' '.join(said)}")
    for act in ACTS:
        kinds = {kind: n for (each, kind), n in counts.items() if each is act}
        whole = sum(kinds.values())
        shown = ", ".join(
            f"{kind} {n}" for kind, n in sorted(kinds.items(), key=lambda x: -x[1])
        )
        yield f"{act:9} {whole:5}  {shown}"
    yield from missed


# --- figures ---------------------------------------------------------------------------------


def figures(sentences: Sequence[Sentence], trained: Trained) -> Iterator[str]:
    """Recall by act and language, and the curve of alarms against false ones."""
    best = [ACTS[int(at)] for at in trained.likely.argmax(1)]
    yield "most likely act is right, by act and language"
    languages = sorted({row.language for row in sentences})
    yield "act       " + " ".join(f"{code:>5}" for code in (*languages, "all"))
    for act in ACTS:
        shares = (_share(sentences, best, act, {code}) for code in languages)
        yield f"{act:9} " + " ".join([*shares, _share(sentences, best, act, set(languages))])
    yield "heard at a rate of false alarms (of done, notdone, value, greeting, talk)"
    yield "act       " + " ".join(f"{rate:>12.1%}" for rate in RATES)
    for act in ALARMS:
        yield f"{act:9} " + " ".join(_curve(sentences, trained.likely, act))


def _share(
    sentences: Sequence[Sentence], best: Sequence[Act], act: Act, codes: set[str]
) -> str:
    hits = [
        got is act
        for row, got in zip(sentences, best, strict=True)
        if row.act is act and row.language in codes
    ]
    return f"{sum(hits) / len(hits):5.2f}" if hits else "    -"


def _curve(sentences: Sequence[Sentence], likely: Any, act: Act) -> Iterable[str]:
    """At each rate: the weight above which an act is heard, and how much of it then is."""
    column = likely[:, ACTS.index(act)]
    false = sorted(
        (float(w) for row, w in zip(sentences, column, strict=True) if row.act in ORDINARY),
        reverse=True,
    )
    true = [float(w) for row, w in zip(sentences, column, strict=True) if row.act is act]
    for rate in RATES:
        limit = false[int(rate * len(false))]
        heard = sum(weight > limit for weight in true) / len(true)
        yield f"{heard:5.2f} >{limit:5.2f}"
