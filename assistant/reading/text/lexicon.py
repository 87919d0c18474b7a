"""One language's words as a frozen value: phrases by what they mean, wishes, shown words."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from functools import cached_property

from assistant.reading.outcomes import Wish
from assistant.reading.text.fold import Token, cut, fold, has_other_digits, unslip
from assistant.reading.text.near import Affixes
from assistant.reading.text.phrases import PackedPhrases
from assistant.reading.text.rules import RuleBook

Phrase = tuple[str, ...]  # folded words


class Sort(StrEnum):
    """What a phrase of the word list means. The comment says what its key holds."""

    NUMBER = "number"  # the number
    TIMES = "times"  # the multiplier: 100, 1000, 12
    FRACTION = "fraction"  # 1/2
    AND_HALF = "and_half"  # what is added to the number before: 1/2
    SHIFT = "shift"  # what is added to the number that follows: 1/2, -1/4
    POINT = "point"  # one point five
    JOIN = "join"  # "and" between parts of a number
    ARTICLE = "article"  # "one" where it counts as one; "of", "the": may stand before a unit
    UNIT = "unit"  # keys of agronomy.units, one space apart; "after": only after its number
    UNIT_OR_VERB = "unit_or_verb"  # a unit behind a number only: "2 has", "it has 3 goats"
    LENGTH = "length"  # metres in one of it
    OTHER_UNIT = "other_unit"  # kilograms, hours: the number is about something else
    UNMEASURED = "unmeasured"  # paces, ropes
    PERCENT = "percent"
    LITRE = "litre"  # litres in one of it
    SEEDS = "seeds"  # seeds, sprouted: a count whose total may be left out
    DEAD = "dead"  # rotten, empty: the count is of seeds that did not sprout
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
    PLAIN_YES = "plain_yes"  # first words of a yes that is no mere "ok", which is in YES too
    WHOLE_YES = "whole_yes"  # of YES: a yes only as a whole reply, "it is", "I am in"
    DONE = "done"
    DEED = "deed"  # "I have watered": what was done, of `DEEDS`; two of them where it is either
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
    EDGE = "edge"  # before, after, every: what is named beside it is not the day itself
    DAYS = "days"  # days in one of it, or "month"
    MONTH_WORD = "month_word"
    DATE_WORD = "date_word"
    YEAR_WORD = "year_word"
    ORDINAL = "ordinal"  # th, er: stands after a day
    NTH = "nth"  # first, premier: the day of the month that is named behind it
    CLOCK = "clock"  # am, o'clock: the number beside it is an hour
    PAST_VERB = "past_verb"
    COMING_VERB = "coming_verb"
    OTHER_CALENDAR = "other_calendar"
    FARM = "farm"  # field, plot, sowing: may stand around any answer
    BESIDE = "beside"  # on top, at dawn, well: may stand beside what was done
    COMPANION = "companion"  # as that, in words that stand in cries too: accounts for nothing
    PERSON = "person"  # my wife, the workers: may stand beside a deed, and says nothing alone
    THING = "thing"  # straw, soil, a sack: beside a deed that is named; "soil finished" is none


# Sorts with thousands of phrases, which are packed; no word of these may be misspelt.
BESIDE_A_DEED = (Sort.COMPANION, Sort.PERSON, Sort.THING)

# What can be said to be done. The key of a phrase holds one or more, one space apart.
# "make": the mix or the bed was made.
DEEDS = frozenset("make soak sow water cover uncover flood drain transplant fill up".split())
# What else can be told of the shoots and of oneself; neither is anything done. "other": what
# makes a deed another one, or none ("my uncle's field", "only three", "almost", "maybe").
OTHER = "other"
TOLD = DEEDS | {"not_up", "forgot", OTHER}


@dataclass(frozen=True)
class WishWords:
    """How one wish is said: whole replies, and sentences by the words they hold.

    `anywhere` are those whole replies that work in every language.
    """

    words: tuple[Phrase, ...]
    sentences: tuple[tuple[tuple[Phrase, ...], ...], ...]  # each: one phrase of every group
    anywhere: tuple[Phrase, ...] = ()


@dataclass(frozen=True, eq=False)
class Lexicon:
    """The word list of one language, folded (see `fold`), as opened by the wiring."""

    language: str
    locale: str  # for shown dates and numbers
    decimal: str
    groups: tuple[str, ...]  # thousands marks
    digits: str  # the ten digits that are shown
    own_digits: str  # other digits that its people write; those of any other script are a slip
    times_first: bool  # "mia tano": the multiplier comes before its number
    fraction_adds: bool  # "satu setengah" is one and a half; else "three quarters"
    unit_first: bool  # "siku tatu": the unit of time before its number
    month_first: bool  # some write 6/10 for 10 June
    next_is_coming: bool  # "lundi prochain" is always the coming one
    edge_after: bool  # "somvar ke baad": before and after stand behind
    is_tonal: bool  # an accent makes another word
    no_is_not: bool  # the word for "no" is "not" too: a comma makes the difference
    phrases: Mapping[Sort, Mapping[Phrase, str]]  # those of `BESIDE_A_DEED` packed
    told: RuleBook[str]  # of `TOLD`: how it is said in words that stand apart
    short: Mapping[str, str]  # as typed, shortened -> spelt out, where a deed is told
    joining: tuple[tuple[tuple[str, str], ...], ...]  # "and then": words plain, with accents
    placing: tuple[tuple[tuple[str, str], ...], ...]  # "behind the": what follows is a place
    placed: tuple[tuple[tuple[str, str], ...], ...]  # "ke paas": what stands before is one
    turning: frozenset[str]  # "but", folded: what follows may take back what was said
    affixes: Affixes  # of grammar: a slip is of the rest of a word
    # With accents, if tonal; of what is packed they are packed too: see `spellings`.
    marked: Mapping[tuple[Sort | Wish, Phrase], Collection[Phrase]]
    unit_names: Mapping[str, tuple[str, str]]  # shown: one, many
    answers: Mapping[str, str]  # shown: yes, no, done, not_yet
    wish_names: Mapping[Wish, str]  # shown
    wishes: Mapping[Wish, WishWords]
    choices: Mapping[str, tuple[str, ...]]  # other words for a numbered choice, by its code
    danger: tuple[str, ...]  # words of a call that cannot wait: flood, storm
    stop_not: tuple[Phrase, ...]  # rain, insects, water: beside these "stop" is no wish
    known: frozenset[str]  # every single word of the list: what is spelt right
    own: frozenset[str]  # those of them that are no English mixed in
    own_units: Mapping[str, Fraction] = field(default_factory=dict)  # a village's sizes [m2]

    def mend(self, text: str) -> tuple[tuple[Token, ...], bool]:
        """The tokens of a reply that is about a number, and whether digits had to be guessed.

        Letters for digits (o.4), or digits of a script that is not this language's.
        """
        folded, has_slip = unslip(fold(text))
        return cut(folded), has_slip or has_other_digits(text, self.own_digits)

    def has(self, sort: Sort, phrase: Phrase) -> bool:
        """Whether a phrase is in the list under this sort."""
        return phrase in self.phrases.get(sort, {})

    def spellings(self, group: Sort | Wish, phrase: Phrase) -> Collection[Phrase]:
        """A phrase as it is written with accents; as it stands where none were noted."""
        packed = self.phrases.get(group) if isinstance(group, Sort) else None
        if isinstance(packed, PackedPhrases):
            return packed.spellings(phrase) or (phrase,)
        return self.marked.get((group, phrase), (phrase,))

    def all_spellings(self) -> Iterator[tuple[Phrase, Phrase]]:
        """Every phrase for which accents were noted, with each of its spellings."""
        for (_, phrase), spellings in self.marked.items():
            yield from ((phrase, spelling) for spelling in spellings)
        for packed in self.phrases.values():
            if isinstance(packed, PackedPhrases):
                yield from packed.all_spellings()

    def places(self, found: Sequence[Token]) -> frozenset[int]:
        """The places of the words that only say where something is or who helped, whatever
        they are: "behind the old chapel", "chapel ke paas"."""
        strict = self.is_tonal and any(token.with_accents for token in found)
        said: set[int] = set()
        for at in range(len(found)):
            for phrases, step in ((self._placing, 1), (self._placed, -1)):
                length = _longest_at(phrases, found, at, strict)
                if length:
                    start = at + length if step > 0 else at - 1
                    said.update(range(at, at + length), _words_from(found, start, step))
        return frozenset(said)

    @cached_property
    def _placing(self) -> "_ByFirst":
        return _by_first(self.placing)

    @cached_property
    def _joining(self) -> "_ByFirst":
        return _by_first(self.joining)

    @cached_property
    def _placed(self) -> "_ByFirst":
        return _by_first(self.placed)

    def joins_at(self, found: Sequence[Token | None], at: int, strict: bool) -> int:
        """How many words from here on join the parts of a sentence; 0 where none do."""
        return _longest_at(self._joining, found, at, strict)

    def joins(self, phrase: Phrase) -> bool:
        """Whether these words join the parts of a sentence."""
        return any(tuple(plain for plain, _ in each) == phrase for each in self.joining)

    def turns(self, phrase: Phrase) -> bool:
        """Whether one of these words may take back what was said before it."""
        return not self.turning.isdisjoint(phrase)


_MOST_OF_A_PLACE = 2  # words


def _words_from(found: Sequence[Token], at: int, step: int) -> Iterator[int]:
    """The places of at most so many words from here on, or back, up to a mark or a number."""
    for place in range(at, at + step * _MOST_OF_A_PLACE, step):
        if not 0 <= place < len(found) or not found[place].is_word:
            return
        yield place


_ByFirst = Mapping[str, tuple[tuple[tuple[str, str], ...], ...]]


def _by_first(phrases: Sequence[tuple[tuple[str, str], ...]]) -> _ByFirst:
    """The phrases by their first word without accents, in the same order."""
    found: dict[str, list[tuple[tuple[str, str], ...]]] = {}
    for phrase in phrases:
        found.setdefault(phrase[0][0], []).append(phrase)
    return {word: tuple(those) for word, those in found.items()}


def _longest_at(phrases: _ByFirst, found: Sequence[Token | None], at: int, strict: bool) -> int:
    """How many words long the longest of these phrases is that stands here; 0 for none."""
    first = found[at]
    for phrase in phrases.get(first.text, ()) if first is not None else ():
        run = found[at : at + len(phrase)]
        if len(run) == len(phrase) and all(
            token is not None and (token.marked if strict else token.text) == word[strict]
            for token, word in zip(run, phrase, strict=True)
        ):
            return len(phrase)
    return 0
