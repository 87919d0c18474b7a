"""Which of the plain questions a text asks, by the ideas in it.

A question is a row of ideas ("when uncover"), the same for all languages
(`questions/topics.toml`); a language's file says how each idea is put
(`questions/<language>.toml`). So a new way to say "how much" serves every question. Nothing
here is learned or weighed.
"""

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass, field
from functools import lru_cache

from assistant.hearing.topics import Topic
from assistant.reading.text.fold import TEXTS_IN_HAND, Token, read_tokens
from assistant.reading.text.rules import Rule, RuleBook, bound, read_rule

ASKS = "asks"
"""The idea that stands in no row: words that make a question of any text."""
AREA = "area"
"""The idea that no list holds: a size of land was read in the text."""
OTHER = "other"
"""The idea that stands in no row: what a person must answer, whatever else is in the text."""
MOST_WORDS = 24  # a longer text tells a story; a person should read it
ASKING = frozenset(
    (
        "much",
        "when",
        "what",
        "how",
        "why",
        "where",
        "which",
        "who",
        "may",
        "need",
        "whatif",
        "times",
        ASKS,
    )
)
"""Ideas that ask: with none of them in it, a text may be a statement too."""
_OF_HOW = frozenset({"much", "long", "times", "age", "deep"})
_SHORT = 4  # words of a text that a single idea may tell
_SPARE = 5  # words that say nothing of the question, in a text that is taken for it


@dataclass(frozen=True)
class Row:
    """One way to ask: these ideas, and none of those."""

    topic: Topic
    ideas: frozenset[str]
    without: frozenset[str] = frozenset()

    def fits(self, ideas: Set[str]) -> bool:
        """Whether a text with these ideas asks so."""
        return self.ideas <= ideas and not self.without & ideas


@dataclass(frozen=True)
class Question:
    """What was asked; `asks`: by a word of asking, and not only by what it is about."""

    topic: Topic
    asks: bool


@dataclass(frozen=True, eq=False)
class Tongue:
    """How one language says the ideas; `is_tonal`: its accents make other words."""

    language: str
    is_tonal: bool
    book: RuleBook[str]


@dataclass(frozen=True, eq=False)
class Questions:
    """The questions in their order, and how every language asks them."""

    rows: tuple[Row, ...] = ()
    tongues: Mapping[str, Tongue] = field(default_factory=dict)

    def heard(self, text: str, languages: Iterable[str], area: bool = False) -> Question | None:
        """The question that a text asks; None where it is none of them.

        Args:
            languages: those to listen in, the first that hears one decides
            area: whether a size of land was read in the text
        """
        words = tuple(each for each in read_tokens(text) if each.is_word or each.is_number)
        if not words or len(words) > MOST_WORDS:
            return None
        for code in languages:
            if code in self.tongues:
                found = _asked(self, self.tongues[code], words, area)
                if found is not None:
                    return found
        return None

    def ideas(self, text: str, languages: Iterable[str]) -> frozenset[str]:
        """The ideas that a text holds in any of these languages."""
        words = tuple(each for each in read_tokens(text) if each.is_word or each.is_number)
        if not words or len(words) > MOST_WORDS:
            return frozenset()
        tongues = (self.tongues[code] for code in languages if code in self.tongues)
        return frozenset(idea for tongue in tongues for idea, _ in rules_in(tongue, words))


@lru_cache(maxsize=TEXTS_IN_HAND)
def rules_in(tongue: Tongue, words: tuple[Token, ...]) -> tuple[tuple[str, Rule], ...]:
    """The rules of a language that find themselves in these words, with their ideas."""
    return tongue.book.every(words, tongue.is_tonal and words[0].with_accents)


@lru_cache(maxsize=TEXTS_IN_HAND)
def _asked(
    questions: Questions, tongue: Tongue, words: tuple[Token, ...], area: bool
) -> Question | None:
    rules = rules_in(tongue, words)
    ideas = {idea for idea, _ in rules} | ({AREA} if area else set())
    if OTHER in ideas:
        return None
    asks = bool(ideas & ASKING)
    if ideas & _OF_HOW:
        ideas.discard("how")  # of "how much", "how long", "how old"
    fitting = [row for row in questions.rows if row.fits(ideas)]
    if not fitting:
        return None
    best = max(fitting, key=lambda row: len(row.ideas))  # the first of those
    if len(best.ideas) == 1 and len(words) > _SHORT:
        return None
    covering = [rule for _, rule in rules]
    strange = sum(not any(rule.covers(word) for rule in covering) for word in words)
    if strange > _SPARE + len(best.ideas):
        return None
    return Question(best.topic, asks)


def tongue(language: str, is_tonal: bool, ideas: Mapping[str, str]) -> Tongue:
    """A language from its file.

    Raises:
        ValueError: a row that cannot be read, with its idea.
    """
    rules = [(idea, _rule(idea, said)) for idea, said in ideas.items()]
    return Tongue(language, is_tonal, bound(rules))


def _rule(idea: str, said: str) -> Rule:
    try:
        rule = read_rule(said)
    except ValueError as fault:
        raise ValueError(f"{idea}: {fault}") from fault
    if len(rule.groups) > 1:
        raise ValueError(f"{idea}: expected one way or another, got a '+' in {said!r}")
    return rule


def row(topic: Topic, written: str) -> Row:
    """A row from its written form: "when rain -plant"."""
    parts = written.split()
    return Row(
        topic,
        frozenset(each for each in parts if not each.startswith("-")),
        frozenset(each[1:] for each in parts if each.startswith("-")),
    )
