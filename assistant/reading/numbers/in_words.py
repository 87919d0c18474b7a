"""Numbers in words: forty one, themanini na tano, delapan puluh lima, elfu mbili.

No library covers the nine languages (text2num has no Hindi, Bengali, Swahili, Indonesian,
Vietnamese or Filipino; num2words has no Hindi or Swahili and only goes the other way), so the
words are data, irregular ones as whole phrases, and only sums and products are made here.
"""

from dataclasses import dataclass
from fractions import Fraction

from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item, says

_NO_LIMIT = Fraction(10**9)
_TEN = Fraction(10)


@dataclass
class WordSum:
    """Adds and multiplies number words from one place on, as long as they fit together."""

    row: tuple[Item, ...]
    at: int
    lexicon: Lexicon
    head: Fraction = Fraction(0)  # finished parts: the two thousand of 2,500
    tail: Fraction | None = None  # the part that is still being made
    room: Fraction = _NO_LIMIT  # what comes next must be smaller
    limit: Fraction = _NO_LIMIT  # what the tail must stay under

    def read(self) -> tuple[Fraction, int]:
        """The value, and where the number ends."""
        end = self.at
        while self.at < len(self.row):
            joined = self.row[self.at].sort is Sort.JOIN and self.tail is not None
            self.at += joined
            if not self._take(joined):
                break
            end = self.at
        return self.head + (self.tail or 0), end

    def _take(self, joined: bool) -> bool:
        item = self.row[self.at] if self.at < len(self.row) else None
        if item is None or item.sort not in (Sort.NUMBER, Sort.TIMES):
            return False
        value = Fraction(item.key)
        if self.lexicon.times_first:
            taken = self._add(value) if item.sort is Sort.NUMBER else self._times_next(value)
        elif item.sort is Sort.TIMES or self._is_times_ten(item):
            taken = not joined and self._times(value)
        else:
            taken = self._add(value)
        self.at += taken
        return taken

    def _is_times_ten(self, item: Item) -> bool:
        """Vietnamese without tone marks writes ten and times ten alike: tam muoi is eighty."""
        if self.tail is None or not 2 <= self.tail <= 9 or Fraction(item.key) != _TEN:
            return False
        if not self.lexicon.has(Sort.TIMES, item.phrase):
            return False
        return says(item.tokens, item.phrase, Sort.TIMES, self.lexicon)

    def _add(self, value: Fraction) -> bool:
        if self.tail is not None and value >= self.room:
            return False
        self.head += self.tail or 0
        self.tail, self.limit, self.room = value, self.room, _place(value)
        return True

    def _times(self, times: Fraction) -> bool:
        whole = self.head + (self.tail or 0)
        if self.tail is None:
            self.tail = times
        elif whole < times:
            self.head, self.tail, self.limit = Fraction(0), whole * times, _NO_LIMIT
        elif self.tail * times < self.limit:
            self.tail *= times
        else:
            return False
        self.room = times
        return True

    def _times_next(self, times: Fraction) -> bool:
        """Mia tano, elfu mbili: the multiplier comes first, its number may follow."""
        if not self._add(times):
            return False
        self.room = times
        after = self.row[self.at + 1] if self.at + 1 < len(self.row) else None
        if after is not None and after.sort is Sort.NUMBER and Fraction(after.key) < times:
            self.tail = times * Fraction(after.key)
            self.at += 1
        return True


def _place(value: Fraction) -> Fraction:
    """What may still be added to this number is smaller than this: 80 takes 1 to 9."""
    if value.denominator != 1 or value < 10:
        return Fraction(0)
    place = 1
    while value % (place * 10) == 0:
        place *= 10
    return Fraction(place if place > 1 else 0)
