"""A fuzz run over generated and mutated replies: python -m tests.unit.reading.fuzz SECONDS

Two things are looked for: an exception on any text, and a reply of the corpus that is read as
another value once a slip of the finger has gone through its letters (its digits stay).
"""

import argparse
import random
import sys
import time
from collections import Counter
from datetime import date, timedelta

from assistant.reading import Ask, Outcome, read_reply, read_several, read_told, read_told_day
from tests.unit.reading.test_corpus import LEXICONS, Row, is_right, rows

REGIONS = (None, "BD", "NP", "IN-WB", "VN-N", "VN-S", "ZM", "TZ", "XX")
SCRAPS = (
    "½ ¼ % - + / . , : ; ( ) ' \" _ e x * = ~ ? ! m2 ² 0 1 2 10 31 85 100 1500 2026 1.500 "
    "1,5 👍 😀 ❌ ०२ ০২ ٢ ２ \u200d \u00a0 \t"
).split(" ")


def main() -> None:
    """Runs for so many seconds and prints what was found; exit 1 if anything was."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("seconds", type=float)
    parser.add_argument("--seed", type=int, default=20260610)
    options = parser.parse_args()
    chance = random.Random(options.seed)
    corpus = [row for row in rows("work") if row.reply.strip()]
    words = sorted({word for row in corpus for word in row.reply.split()})
    counts: Counter[str] = Counter()
    misread: set[tuple[str, str, str]] = set()
    end = time.monotonic() + options.seconds
    while time.monotonic() < end:
        _generated(chance, words, counts)
        _mutated(chance, corpus, counts, misread)
    print(dict(counts))
    for found in sorted(misread):
        print("read as another value:", found)
    sys.exit(bool(misread))


def _generated(chance: random.Random, words: list[str], counts: Counter[str]) -> None:
    """Any words and scraps in any order give an outcome."""
    parts = [chance.choice(chance.choice((words, SCRAPS))) for _ in range(chance.randrange(9))]
    text = chance.choice(("", " ")).join(parts)
    language = chance.choice(list(LEXICONS))
    today = date(2026, 6, 10) + timedelta(days=chance.randrange(-4000, 4000))
    region = chance.choice(REGIONS)
    for ask in Ask:
        reading = read_reply(
            text, ask, LEXICONS, language, today, region, chance.random() < 0.5
        )
        counts[f"generated {reading.outcome}"] += 1
    read_told(text, LEXICONS[language])
    read_told_day(text, LEXICONS[language], today)
    read_several(text, list(Ask), LEXICONS[language], today, region)


def _mutated(
    chance: random.Random,
    corpus: list[Row],
    counts: Counter[str],
    misread: set[tuple[str, str, str]],
) -> None:
    """A slip in the letters must not change a number, a date or an answer in silence."""
    row = chance.choice(corpus)
    text = _slip(chance, row.reply)
    if text is None:
        return
    reading = read_reply(text, row.ask, LEXICONS, row.language, row.today, row.region, row.past)
    counts[f"mutated {reading.outcome}"] += 1
    changed = reading.outcome is Outcome.UNDERSTOOD and "understood" in row.outcomes
    if changed and not is_right(row, reading):
        misread.add((row.language, row.ask.value, f"{row.reply} -> {text} -> {reading.words}"))


def _slip(chance: random.Random, text: str) -> str | None:
    """One letter swapped, doubled, left out or replaced; None where there are no letters."""
    places = [at for at, ch in enumerate(text) if ch.isalpha()]
    if len(places) < 4:
        return None
    at = chance.choice(places)
    kind = chance.randrange(4)
    if kind == 0 and at + 1 in places:
        return text[:at] + text[at + 1] + text[at] + text[at + 2 :]
    if kind == 1:
        return text[:at] + text[at] + text[at:]
    if kind == 2:
        return text[:at] + text[at + 1 :]
    return text[:at] + chance.choice(text[at].lower() + "aeiounrst") + text[at + 1 :]


if __name__ == "__main__":
    main()
