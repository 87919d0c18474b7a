"""What a text means, read once: by rule where it must be exact, by weight where it can be."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from functools import lru_cache
from types import MappingProxyType

from assistant.acts import Act, Weights
from assistant.hearing.ears import Ear, Ears, Mood
from assistant.hearing.kinds import HARMS, LOSSES, Kind
from assistant.hearing.thresholds import HALF, ON_ALERT, SURE
from assistant.reading.text.fold import TEXTS_KEPT, Token, read_tokens


class Certainty(StrEnum):
    """How sure it is. A rule says it; a weight that is high enough to act on; one that is only
    worth a question."""

    SAID = "said"
    SURE = "sure"
    HALF = "half"


_OF_ACT: Mapping[Act, frozenset[Kind]] = MappingProxyType(
    {
        Act.DIE: frozenset({Kind.DIE}),
        Act.HARM: HARMS,
        Act.DANGER: LOSSES,
        Act.REFUSE: frozenset({Kind.REFUSE, Kind.ERASE}),
        Act.PERSON: frozenset({Kind.PERSON}),
    }
)


# Where a text says that it is not so, no weight says the contrary: "nobody is hurt". Only the
# widest kind of an act does so: "the snake bit no one" says nothing of a fall.
_DENIES: Mapping[Act, frozenset[Kind]] = MappingProxyType(
    {
        Act.DIE: frozenset({Kind.DIE}),
        Act.HARM: frozenset({Kind.HURT}),
        Act.DANGER: LOSSES,
        Act.REFUSE: frozenset({Kind.REFUSE}),
        Act.PERSON: frozenset({Kind.PERSON}),
    }
)


_FEWEST_WORDS = 2


@dataclass(frozen=True)
class Understood:
    """One text, without the state it came in.

    text:    as it was typed
    said:    the kinds that a rule found, the first looked for first
    perhaps: kinds that a rule found likely enough to ask about
    elsewhere: kinds that the whole text says in another language than the person's own, where
        it may be an everyday word ("sawa" is fed up, and yes)
    denied:  kinds of which the text says, in the person's own language, that it is not so
    weights: how likely each act is; they add up to 1
    tongues: the languages whose rules found what is in `said`
    """

    text: str
    said: tuple[Kind, ...]
    perhaps: frozenset[Kind]
    elsewhere: frozenset[Kind]
    denied: frozenset[Kind]
    weights: Weights
    tongues: frozenset[str] = frozenset()

    def certainty(self, act: Act, alert: bool = False) -> Certainty | None:
        """How sure it is that the text is this act; None where nothing speaks for it.

        Args:
            alert: whether a storm is near, so that less is needed to ask
        """
        kinds = _OF_ACT.get(act, frozenset())
        if any(kind in kinds for kind in self.said):
            return Certainty.SAID
        if kinds & (self.perhaps | self.elsewhere):
            return Certainty.HALF
        if _DENIES.get(act, frozenset()) & self.denied:
            return None
        if self.weights[act] >= SURE.get(act, 2.0):
            return Certainty.SURE
        return Certainty.HALF if self._may_be(act, alert) else None

    def _may_be(self, act: Act, alert: bool) -> bool:
        """Whether an act is worth a question: lives and storms always, others where no other
        act is likelier ("rats came" is a trouble). Of one word that no rule knows ("nan"),
        nobody is asked whether somebody is hurt."""
        if act is Act.HARM and len(self.text.split()) < _FEWEST_WORDS:
            return False
        enough = self.weights[act] >= (ON_ALERT if alert else HALF).get(act, 2.0)
        return enough and (alert or act in (Act.DIE, Act.HARM) or self.likeliest is act)

    def kind(self, act: Act) -> Kind | None:
        """Which kind of the act a rule found; None where none did."""
        kinds = _OF_ACT.get(act, frozenset())
        return next((kind for kind in self.said if kind in kinds), None)

    def is_by_rule(self, act: Act) -> bool:
        """Whether a rule that knows the language, and not a weight, makes it likely."""
        return bool(_OF_ACT.get(act, frozenset()) & {*self.said, *self.perhaps})

    @property
    def likeliest(self) -> Act:
        """The act that weighs most."""
        return max(self.weights, key=lambda act: self.weights[act])


@lru_cache(maxsize=TEXTS_KEPT)
def understand(text: str, ears: Ears, language: str) -> Understood:
    """Reads a text for what it means. Nothing here raises on any text.

    Args:
        language: the one that the person is spoken to in; every other is heard too
    """
    words = tuple(token for token in read_tokens(text) if token.is_word or token.is_number)
    heard = _Heard()
    for ear in ears.own_first(language):
        if _may_be(ear, words, language):
            heard.take(ear, words, ear.language == language)
    return Understood(
        text=text,
        said=tuple(kind for kind in Kind if kind in heard.said),
        perhaps=frozenset(heard.perhaps - heard.said),
        elsewhere=frozenset(heard.elsewhere - heard.said),
        denied=frozenset(heard.denied),
        weights=ears.table.weigh(text),
        tongues=frozenset(heard.tongues),
    )


@dataclass
class _Heard:
    """What the ears find, one after the other."""

    said: set[Kind] = field(default_factory=set)
    perhaps: set[Kind] = field(default_factory=set)
    elsewhere: set[Kind] = field(default_factory=set)
    denied: set[Kind] = field(default_factory=set)
    tongues: set[str] = field(default_factory=set)

    def take(self, ear: Ear, words: Sequence[Token], is_own: bool) -> None:
        """Adds what one language finds; its denials are of what it found."""
        every = ear.book.every(words, ear.is_tonal and words[0].with_accents)
        found: dict[Mood, set[Kind]] = {mood: set() for mood in Mood}
        bare: set[Kind] = set()
        for (kind, mood), rule in every:
            (found[mood] if is_own or not rule.is_whole else bare).add(kind)
        not_so = found[Mood.DENIED]
        self.said |= found[Mood.SAID] - not_so
        self.tongues |= {ear.language} if found[Mood.SAID] - not_so else set()
        self.perhaps |= found[Mood.PERHAPS] - not_so
        self.elsewhere |= bare - not_so
        self.denied |= not_so if is_own else set()


def _may_be(ear: Ear, words: Sequence[Token], language: str) -> bool:
    """Whether an ear should listen: words without accents are the words of a tonal language
    only where that one is spoken."""
    accented = any(token.with_accents for token in words)
    return bool(words) and (accented or not ear.is_tonal or ear.language == language)
