"""The days gone by that words of a reply name, each with the reply without them."""

from datetime import date
from functools import lru_cache

from assistant.reading.text.fold import TEXTS_IN_HAND
from assistant.reading.text.lexicon import Lexicon
from assistant.reading.told import is_no_day, read_told_day

LONGEST_DAY = 5  # words: "2 days ago", "yesterday", "on Friday the 5th", "ngày mùng 5 tháng 6"


@lru_cache(maxsize=TEXTS_IN_HAND)
def days_told(text: str, lexicon: Lexicon, today: date) -> tuple[tuple[date, str], ...]:
    """Each run of words that names such a day, the longest first, then the last; no run is all
    of the reply, or half of the name of a week."""
    words = text.split()
    return tuple(
        (day, " ".join(words[:start] + words[start + count :]))
        for count in range(min(LONGEST_DAY, len(words) - 1), 0, -1)
        for start in range(len(words) - count, -1, -1)
        if (day := read_told_day(" ".join(words[start : start + count]), lexicon, today))
        and not _is_of_a_week(words, start, start + count, lexicon)
    )


def _is_of_a_week(words: list[str], start: int, end: int, lexicon: Lexicon) -> bool:
    across = (words[end - 1 : end + 1], words[max(start - 1, 0) : start + 1])
    return any(is_no_day(" ".join(each), lexicon) for each in across)
