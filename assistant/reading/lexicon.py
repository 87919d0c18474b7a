"""One language's words as a frozen value, and the finding of them in a row of tokens."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import lru_cache

from assistant.reading.fold import Kind, Token
from assistant.reading.near import nearest
from assistant.reading.outcomes import Wish

Phrase = tuple[str, ...]


class Sort(StrEnum):
    """What a phrase of the word list means. The comment says what its key holds."""

    NUMBER = "number"  # the number
    TIMES = "times"  # the multiplier: 100, 1000, 12
    FRACTION = "fraction"  # 1/2
    AND_HALF = "and_half"  # what is added after the number: 1/2
    SHIFT = "shift"  # what is added to the number that follows: 1/2, -1/4
    JOIN = "join"  # "and" between parts of a number
    ARTICLE = "article"  # "a", "of", "the": may stand between number and unit
    UNIT = "unit"  # key of agronomy.units; several, where the word is used for several
    LENGTH = "length"  # metres in one of it
    OTHER_UNIT = "other_unit"  # kilograms, hours: the number is about something else
    UNMEASURED = "unmeasured"  # paces, ropes
    PERCENT = "percent"
    LITRE = "litre"  # litres in one of it
    SEEDS = "seeds"  # seeds, sprouted: a count without its total
    LOTS = "lots"
    BY = "by"  # 50 by 20
    OF = "of"  # 41 of 50
    FROM = "from"  # of 50, 41: the total comes first
    ALL = "all"
    NONE = "none"
    ABOUT = "about"
    ROUGH = "rough"  # less than, more than
    RANGE = "range"  # to, or
    NO = "no"
    NOT = "not"
    SORRY = "sorry"  # "I mean", "sorry": what follows corrects
    NOT_KNOWN = "not_known"
    YES = "yes"
    DONE = "done"
    NOT_YET = "not_yet"
    FILLER = "filler"
    GREETING = "greeting"
    DAY = "day"  # days from today
    EITHER_DAY = "either_day"  # days before or after today
    MONTH = "month"  # 1-12
    WEEKDAY = "weekday"  # 0 Monday - 6 Sunday
    NEXT = "next"
    LAST = "last"
    THIS = "this"
    AGO = "ago"
    LATER = "later"
    DAYS = "days"  # days in one of it
    MONTH_WORD = "month_word"
    DATE_WORD = "date_word"
    YEAR_WORD = "year_word"
    ORDINAL = "ordinal"  # th, er: stands glued to a day
    CLOCK = "clock"  # am, o'clock: the number before or after is an hour
    PAST_VERB = "past_verb"
    COMING_VERB = "coming_verb"
    OTHER_CALENDAR = "other_calendar"
    FARM = "farm"  # field, plot, sowing: may stand around any answer


@dataclass(frozen=True)
class WishWords:
    """How one wish is said: whole replies, and sentences by the words they hold."""

    words: tuple[Phrase, ...]
    sentences: tuple[tuple[tuple[Phrase, ...], ...], ...]  # each: one of every group


@dataclass(frozen=True, eq=False)
class Lexicon:
    """The word list of one language, folded (see `fold`), as opened by the wiring."""

    language: str
    locale: str  # for shown dates and numbers
    decimal: str
    groups: tuple[str, ...]  # thousands marks, "" never
    digits: str  # the ten digits that are shown
    times_first: bool  # "mia tano": the multiplier comes before its number
    number_fraction: str  # "times" (three quarters) or "plus" (satu setengah)
    unit_first: bool  # "ekari mbili"
    month_first: bool  # some write 6/10 for 10 June
    phrases: Mapping[Sort, Mapping[Phrase, str]]
    unit_names: Mapping[str, tuple[str, str]]  # shown: one, many
    answers: Mapping[str, str]  # shown: yes, no, done, not_yet
    wish_names: Mapping[Wish, str]  # shown
    wishes: Mapping[Wish, WishWords]
    stop_not: tuple[Phrase, ...]  # words of rain, insects, water beside which "stop" is no wish
    known: frozenset[str] = field(default=frozenset())


@dataclass(frozen=True)
class Item:
    """One meaning found in a reply: a phrase of the list, a number, a mark or a strange word."""

    sort: Sort | None  # None: a number in digits, a mark or a word that is not in the list
    key: str
    tokens: tuple[Token, ...]
    misspelt: bool = False
    others: tuple[str, ...] = ()  # keys that the misspelt word is as near to

    @property
    def text(self) -> str:
        """The folded words, one space apart."""
        return " ".join(token.text for token in self.tokens)

    @property
    def glued(self) -> bool:
        """Whether nothing stood between this and what came before."""
        return self.tokens[0].glued

    @property
    def is_digits(self) -> bool:
        """Whether it is a number in digits that no phrase took."""
        return self.sort is None and self.tokens[0].kind is Kind.NUMBER

    @property
    def is_strange(self) -> bool:
        """Whether it is a word that the list does not know."""
        return self.sort is None and self.tokens[0].kind is Kind.WORD

    def is_mark(self, marks: str) -> bool:
        """Whether it is one of these marks."""
        return self.sort is None and self.tokens[0].kind is Kind.MARK and self.key in marks


def items(
    found: tuple[Token, ...],
    lexicon: Lexicon,
    sorts: tuple[Sort, ...],
    forgiving: tuple[Sort, ...] = (),
) -> tuple[Item, ...]:
    """The tokens as meanings of these sorts, the longest phrase first, earlier sorts before later.

    Words of the `forgiving` sorts may be misspelt, where nothing else is as near.
    """
    starts = _starts(lexicon, sorts)
    row: list[Item] = []
    at = 0
    while at < len(found):
        item = _phrase_at(found, at, starts) or _single(found[at], lexicon, sorts, forgiving)
        row.append(item)
        at += len(item.tokens)
    return tuple(row)


def has(lexicon: Lexicon, sort: Sort, phrase: Phrase) -> bool:
    """Whether a phrase is in the list under this sort."""
    return phrase in lexicon.phrases.get(sort, {})


def known_words(parts: Iterable[Iterable[Phrase]]) -> frozenset[str]:
    """Every single word of some phrase lists: what is spelt right is no misspelling."""
    return frozenset(word for phrases in parts for phrase in phrases for word in phrase)


@lru_cache(maxsize=256)
def _starts(
    lexicon: Lexicon, sorts: tuple[Sort, ...]
) -> Mapping[str, tuple[tuple[Phrase, Sort, str], ...]]:
    """First word -> the phrases that begin with it, longest first."""
    table: dict[str, list[tuple[Phrase, Sort, str]]] = {}
    for sort in sorts:
        for phrase, key in lexicon.phrases.get(sort, {}).items():
            table.setdefault(phrase[0], []).append((phrase, sort, key))
    return {word: tuple(sorted(rows, key=lambda r: -len(r[0]))) for word, rows in table.items()}


def _phrase_at(
    found: tuple[Token, ...],
    at: int,
    starts: Mapping[str, tuple[tuple[Phrase, Sort, str], ...]],
) -> Item | None:
    for phrase, sort, key in starts.get(found[at].text, ()):
        run = found[at : at + len(phrase)]
        if len(run) == len(phrase) and all(
            t.text == w for t, w in zip(run, phrase, strict=True)
        ):
            return Item(sort, key, run)
    return None


def _single(
    token: Token, lexicon: Lexicon, sorts: tuple[Sort, ...], forgiving: tuple[Sort, ...]
) -> Item:
    if token.kind is not Kind.WORD or token.text in lexicon.known or not forgiving:
        return Item(None, token.text, (token,))
    hit = nearest(token.text, _spellings(lexicon, forgiving))
    if hit is None:
        return Item(None, token.text, (token,))
    (sort, key), others = hit
    return Item(sort, key, (token,), misspelt=True, others=tuple(k for _, k in others))


@lru_cache(maxsize=256)
def _spellings(lexicon: Lexicon, sorts: tuple[Sort, ...]) -> Mapping[str, tuple[Sort, str]]:
    """Single words that may be misspelt -> what they mean."""
    table: dict[str, tuple[Sort, str]] = {}
    for sort in sorts:
        for phrase, key in lexicon.phrases.get(sort, {}).items():
            if len(phrase) == 1:
                table.setdefault(phrase[0], (sort, key))
    return table
