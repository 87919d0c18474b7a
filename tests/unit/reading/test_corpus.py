"""The corpus of replies: how many are read rightly, by language and kind, and none wrongly in
silence. What is expected was written before the reader was tuned; see tests/corpus/README.md.
"""

import csv
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest

from assistant.people import LANGUAGES
from assistant.reading import Ask, Outcome, Reading, read_reply
from assistant.wiring.lexicons import open_lexicons

CORPUS = Path(__file__).parents[2] / "corpus"
GOAL = 0.98
MOST_NEEDLESS = 0.15
ANY_DAY = date(2026, 6, 10)
LEXICONS = open_lexicons()


@dataclass(frozen=True)
class Row:
    """One reply, its setting and what is accepted."""

    language: str
    ask: Ask
    region: str | None
    today: date
    past: bool
    reply: str
    outcomes: frozenset[str]
    values: tuple[str, ...]
    plain: bool

    def read(self) -> Reading[object]:
        """What the reader makes of it."""
        return read_reply(
            self.reply, self.ask, LEXICONS, self.language, self.today, self.region, self.past
        )


def rows(part: str) -> Iterator[Row]:
    """Every row of one part."""
    for language in LANGUAGES:
        path = CORPUS / part / f"{language}.tsv"
        with path.open(encoding="utf-8", newline="\n") as file:
            for cells in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
                yield _row(language, cells)


def _row(language: str, cells: dict[str, str]) -> Row:
    return Row(
        language=language,
        ask=Ask(cells["ask"]),
        region=None if cells["region"] == "-" else cells["region"],
        today=ANY_DAY if cells["today"] == "-" else date.fromisoformat(cells["today"]),
        past=cells["past"] == "yes",
        reply=cells["reply"],
        outcomes=frozenset(cells["outcome"].split("|")),
        values=tuple(cells["value"].split("|")),
        plain=cells["plain"] == "yes",
    )


def is_right(row: Row, reading: Reading[object]) -> bool:
    """As README.md scores it."""
    if reading.outcome.value not in row.outcomes:
        return False
    return reading.outcome is Outcome.AGAIN or any(_same(reading.value, v) for v in row.values)


def _same(value: object, wanted: str) -> bool:
    if not isinstance(value, float):
        return (value.isoformat() if isinstance(value, date) else str(value)) == wanted
    try:
        return float(wanted) == pytest.approx(value, rel=1e-3, abs=5e-3)
    except ValueError:
        return False


@pytest.mark.parametrize("part", ["work", "aside"])
def test_the_corpus_is_read(part, capsys):
    """At least 98 % rightly at the first try, none wrongly in silence, few asked in vain."""
    score: dict[str, list[int]] = defaultdict(lambda: [0, 0])
    silent, needless = [], []
    for row in rows(part):
        reading = row.read()
        right = is_right(row, reading)
        for place in (row.language, row.ask.value, "all"):
            score[place][0] += right
            score[place][1] += 1
        if reading.outcome is Outcome.UNDERSTOOD and not right:
            silent.append((row.language, row.ask.value, row.reply, reading.words))
        if row.plain:
            needless.append(reading.outcome is not Outcome.UNDERSTOOD)
    with capsys.disabled():
        shown = "  ".join(f"{place} {good}/{count}" for place, (good, count) in score.items())
        print(f"\n{part}: {shown}; plain replies read back {sum(needless)}/{len(needless)}")
        print(f"{part}: silent misreads: {silent or 'none'}")
    assert not silent
    assert score["all"][0] / score["all"][1] >= GOAL
    assert sum(needless) / len(needless) < MOST_NEEDLESS


def test_the_corpus_is_large_and_covers_every_language_and_kind():
    """Six hundred replies or more, in nine languages, of six kinds, in two parts."""
    parts = {part: list(rows(part)) for part in ("work", "aside")}
    assert sum(map(len, parts.values())) >= 600
    for found in parts.values():
        assert {row.language for row in found} == set(LANGUAGES)
        assert len({(row.language, row.ask) for row in found}) == 6 * len(LANGUAGES)
