"""Plain deeds and what only looks like one: what is taken at once, and what wrongly.

python -m tests.corpus.deeds [--part worked] [--lang sw] [--misses]

Rows `deed<TAB>text`. Of a deed that a text of ours asks about the whole talk is played, at the
moment that asks; of water and make (the mix, the bed), which are only told, what is read.
`deed@-1` names the day it was done, counted from the day of the text. `-` is no deed: it is
played at every moment that asks.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import NamedTuple

import click

from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.reading import Outcome, read_deeds, read_told
from assistant.wiring.lexicons import open_lexicons
from tests.corpus.talk.judging import DEEDS, outcome
from tests.corpus.talk.moments import MOMENTS, TODAY

FOLDER = Path(__file__).parent
NO_DEED = "-"
ASKED = {
    "soak": "soak",
    "sow": "sow",
    "uncover": "uncover",
    "flood": "uncover",
    "drain": "drain",
    "transplant": "transplant",
    "fill": "fill",
}
AT = (*dict.fromkeys(ASKED.values()), "warning", "nothing")


class Row(NamedTuple):
    """One text, the deed it tells ("-": none) and how many days ago that was."""

    language: str
    deed: str
    days: int
    text: str


def rows(part: str, language: str | None = None) -> Iterator[Row]:
    """The rows of a part, by language."""
    for path in sorted((FOLDER / part).glob("*.tsv")):
        if language in (None, path.stem):
            for line in path.read_text(encoding="utf-8").splitlines():
                deed, text = line.split("\t")
                name, _, days = deed.partition("@")
                yield Row(path.stem, name, int(days or 0), text)


def told(text: str, language: str) -> bool:
    """Whether a text is read as a deed that was done, with no question left."""
    reading = read_told(text, open_lexicons()[language])
    return reading.outcome is Outcome.UNDERSTOOD and reading.value in ("done", "yes")


def is_right(row: Row, moments: Sequence[str] = AT) -> bool:
    """Whether a deed is taken at once with its day; whether no deed is taken for one at any of
    these moments."""
    if row.deed == NO_DEED:
        return not wrongly_at(row, moments)
    if row.deed not in ASKED:
        deeds = read_deeds(row.text, open_lexicons()[row.language])
        return told(row.text, row.language) and row.deed in deeds
    played = turn(row.text, MOMENTS[ASKED[row.deed]](row.language))
    return bool(outcome(played).written & DEEDS) and _day(row, played) in (None, _meant(row))


def wrongly_at(row: Row, moments: Sequence[str] = AT) -> list[str]:
    """The moments at which a text that tells no deed is written down as one."""
    return [at for at in moments if _writes(row, at)]


def _writes(row: Row, at: str) -> bool:
    return bool(outcome(turn(row.text, MOMENTS[at](row.language))).written & DEEDS)


def _meant(row: Row) -> date:
    return TODAY + timedelta(days=row.days)


def _day(row: Row, played: v.Turn) -> date | None:
    """The day that was kept, where one is kept of such a deed."""
    beds = [each.nursery for each in played.changes if isinstance(each, v.SaveNursery)]
    if row.deed == "sow" and beds:
        return beds[0].sow_date
    return beds[0].transplanted_on if row.deed == "transplant" and beds else None


@click.command()
@click.option("--part", default="worked", show_default=True)
@click.option("--lang", default=None)
@click.option("--misses", is_flag=True, help="Print each row that went wrong.")
def main(part: str, lang: str | None, misses: bool) -> None:
    """Deeds taken at once, and texts taken for a deed that was not said, by language."""
    whole: Counter[tuple[str, bool]] = Counter()
    right: Counter[tuple[str, bool]] = Counter()
    missed = []
    for row in rows(part, lang):
        key = (row.language, row.deed == NO_DEED)
        good = is_right(row)
        whole[key] += 1
        right[key] += good
        missed += [] if good else [row]
    for code in sorted({code for code, _ in whole}):
        deeds, traps = (code, False), (code, True)
        click.echo(
            f"{code:4} taken {right[deeds]:>3}/{whole[deeds]:<3} "
            f"wrongly {whole[traps] - right[traps]:>2}/{whole[traps]}"
        )
    for row in missed if misses else ():
        click.echo("\t".join((row.language, row.deed, row.text, *_said_of(row))))


def _said_of(row: Row) -> tuple[str, ...]:
    if row.deed == NO_DEED:
        return tuple(wrongly_at(row))
    reading = read_told(row.text, open_lexicons()[row.language])
    deeds = sorted(read_deeds(row.text, open_lexicons()[row.language]))
    return (f"{reading.outcome} {reading.value} {deeds}",)


if __name__ == "__main__":
    main()
