"""Plays the corpus of replies through the whole talk and prints rates by kind and language.

python -m tests.corpus.talk [--part worked] [--lang sw] [--misses]
"""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import click

from assistant.dialogue.turns import turn
from tests.corpus.talk.judging import Outcome, is_false_deed, is_right, outcome
from tests.corpus.talk.moments import MOMENTS

FOLDER = Path(__file__).parent


class Reply(NamedTuple):
    """One row of the corpus."""

    language: str
    moment: str
    text: str
    meant: str


class Played(NamedTuple):
    """A row with what the talk made of it."""

    reply: Reply
    got: Outcome
    right: bool
    false_deed: bool


def replies(part: str) -> Iterator[Reply]:
    """The rows `moment<TAB>text<TAB>meant` of a part, by language."""
    for path in sorted((FOLDER / part).glob("*.tsv")):
        for line in path.read_text(encoding="utf-8").splitlines():
            moment, text, meant = line.split("\t")
            yield Reply(path.stem, moment, text, meant)


def play(reply: Reply) -> Played:
    """Sends one reply at its moment."""
    got = outcome(turn(reply.text, MOMENTS[reply.moment](reply.language)))
    return Played(
        reply, got, is_right(reply.meant, got, reply.moment), is_false_deed(reply.meant, got)
    )


def kind_of(meant: str) -> str:
    """What rates are counted by."""
    return meant.partition("=")[0]


@click.command()
@click.option("--part", default="worked", show_default=True)
@click.option("--lang", default=None)
@click.option("--misses", is_flag=True, help="Print each row that went wrong.")
def main(part: str, lang: str | None, misses: bool) -> None:
    """Rates of right outcomes by kind and language, and deeds that were not said."""
    played = [play(reply) for reply in replies(part) if lang in (None, reply.language)]
    languages = sorted({each.reply.language for each in played})
    whole: Counter[tuple[str, str]] = Counter()
    right: Counter[tuple[str, str]] = Counter()
    for each in played:
        for key in (
            (kind_of(each.reply.meant), each.reply.language),
            ("all", each.reply.language),
        ):
            whole[key] += 1
            right[key] += each.right
    click.echo("kind       " + " ".join(f"{code:>7}" for code in (*languages, "all")))
    for kind in dict.fromkeys([*sorted({kind for kind, _ in whole} - {"all"}), "all"]):
        cells = [_cell(right[kind, code], whole[kind, code]) for code in languages]
        of_all = _cell(
            sum(right[kind, code] for code in languages),
            sum(whole[kind, code] for code in languages),
        )
        click.echo(f"{kind:10} " + " ".join((*cells, of_all)))
    click.echo(f"deeds written that were not said: {sum(each.false_deed for each in played)}")
    for each in played if misses else ():
        if not each.right or each.false_deed:
            click.echo(_shown(each))


def _cell(right: int, whole: int) -> str:
    return f"{right:>3}/{whole:<3}" if whole else "      -"


def _shown(each: Played) -> str:
    got = f"written {sorted(each.got.written)} reached {sorted(each.got.reached)}"
    mark = "FALSE" if each.false_deed else "     "
    return "\t".join((f"{mark} {each.reply.language}", *each.reply[1:], got))


if __name__ == "__main__":
    main()
