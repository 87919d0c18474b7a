"""Reading the replies of the corpus. Floor: splitting them at blanks."""

import csv
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

from assistant.reading import Ask
from assistant.reading.replies import read_reply
from assistant.wiring.lexicons import open_lexicons
from tests.benchmarks.databases import Kind
from tests.benchmarks.harness import Result, Side, compare

CORPUS = Path(__file__).parent.parent / "corpus" / "work"
ANY_DAY = date(2026, 6, 10)


def _replies() -> list[dict[str, Any]]:
    """What `read_reply` is given for each row."""
    lexicons = open_lexicons()
    found = []
    for path in sorted(CORPUS.glob("*.tsv")):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
                day = row["today"]
                found.append(
                    {
                        "text": row["reply"],
                        "ask": Ask(row["ask"]),
                        "lexicons": lexicons,
                        "language": path.stem,
                        "today": ANY_DAY if day == "-" else date.fromisoformat(day),
                        "region": None if row["region"] == "-" else row["region"],
                        "past": row["past"] == "yes",
                    }
                )
    return found


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Every reply of the part of the corpus to work on, in its language and to its question."""
    replies = _replies()
    texts = [reply["text"] for reply in replies]
    floor = Side("str.split", lambda: [text.split() for text in texts])
    what = "reading: a reply to a question"
    ours = Side(what, lambda: [read_reply(**reply) for reply in replies])
    yield compare(what, len(replies), "replies", ours, floor, runs=runs)
    yield from _long_texts(runs)


SCRAPS = ("1", "a", "o.", "½", "1,", "-", "\N{GRINNING FACE}", "2 acres ", "yes no ", "di ")
SHORT, LONG = 500, 2000  # characters


def _long_texts(runs: int) -> Iterator[Result]:
    """No pattern runs away: four times the letters take about four times as long."""
    lexicons = open_lexicons()

    def read(length: int) -> None:
        for scrap in SCRAPS:
            for ask in Ask:
                read_reply((scrap * length)[:length], ask, lexicons, "en", ANY_DAY)

    what = f"reading: odd texts of {LONG:,} characters"
    floor = Side(f"the same of {SHORT} characters", lambda: read(SHORT))
    yield compare(what, len(SCRAPS), "texts", Side(what, lambda: read(LONG)), floor, runs=runs)
