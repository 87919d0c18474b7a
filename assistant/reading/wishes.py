"""What a person wishes for at any point: a word, a sentence, a misspelt word, a greeting.

A wish that is UNDERSTOOD goes before the question that is open. One to CONFIRM or ask AGAIN
counts only where the question could not read the reply either. Words that are answers to the
open question (`asked`) are no wish: "hindi" is a language here and a "no" there.
"""

from collections.abc import Mapping, Sequence
from functools import lru_cache

from assistant.reading.languages import language_named
from assistant.reading.outcomes import (
    Ask,
    Option,
    Reading,
    Reason,
    Wish,
    again,
    confirm,
    understood,
)
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_KEPT, Token, read_tokens
from assistant.reading.text.lexicon import Lexicon, Phrase, Sort
from assistant.reading.text.near import is_swap_or_gap, nearest, one_key_off
from assistant.reading.text.spot import Item, items, says

MOST_WORDS_MISSPELT = 3  # in a longer reply a near word is too often another word
_SHORT = 4  # letters; one other letter makes another word of it

# The wish that is the safer one to offer first where two are as likely.
_ORDER = (
    Wish.PROBLEM,
    Wish.OFFICER,
    Wish.RAIN,
    Wish.CHANGE_DATE,
    Wish.DATES,
    Wish.QUANTITIES,
    Wish.MAKING,
    Wish.NEXT,
    Wish.HOW,
    Wish.TODAY,
    Wish.LANGUAGE,
    Wish.HELP,
    Wish.MENU,
    Wish.BACK,
    Wish.START,
    Wish.THANKS,
    Wish.WORK_DAYS,
    Wish.EVERY_DAY,
    Wish.STOP,
)
# What may be said after their word is for them, whatever else it may be about.
_ADDRESSED = frozenset({Wish.OFFICER, Wish.PROBLEM})
_ANSWERS: Mapping[Ask, tuple[Sort, ...]] = {
    Ask.DATE: (Sort.DAY, Sort.EITHER_DAY, Sort.WEEKDAY, Sort.MONTH),
    Ask.CONFIRM: (Sort.YES, Sort.NO, Sort.DONE, Sort.NOT_YET),
}

# "How much" is asked back by who does not understand such a question, too.
_ASK_A_NUMBER = (Ask.AREA, Ask.GERMINATION, Ask.COUNT, Ask.LITRES)

Words = tuple[Token, ...]


def read_wish(
    text: str, lexicons: Mapping[str, Lexicon], language: str, asked: Ask | None = None
) -> Reading[Wish]:
    """The wish in a reply; AGAIN where there is none (a plain answer is no wish)."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    return _read(text, tuple(lexicons.items()), language, asked)


@lru_cache(maxsize=TEXTS_KEPT)
def _read(
    text: str, listed: tuple[tuple[str, Lexicon], ...], language: str, asked: Ask | None
) -> Reading[Wish]:
    lexicons = dict(listed)
    found = read_tokens(text)
    if not found:
        return again(Reason.EMPTY)
    reader = _Wishes(lexicons, lexicons[language], asked)
    if [token.text for token in found] == ["0"]:
        return reader.sure(Wish.BACK)
    if all(token.text == "?" for token in found):
        return reader.sure(Wish.HELP)
    words = tuple(token for token in found if token.is_word)
    return reader.read(words, any(token.is_number for token in found))


class _Wishes:
    """Reads wishes in one language, with STOP and languages' names from all of them."""

    def __init__(
        self, lexicons: Mapping[str, Lexicon], own: Lexicon, asked: Ask | None
    ) -> None:
        self.lexicons, self.own = lexicons, own
        self.asked = None if asked is Ask.COMMAND else asked

    def sure(self, wish: Wish) -> Reading[Wish]:
        return understood(wish, self.own.wish_names[wish])

    def unsure(self, wishes: Sequence[Wish], reason: Reason) -> Reading[Wish]:
        """The first of the wishes is read back; if there are more, all are offered."""
        options = tuple(Option(wish, self.own.wish_names[wish]) for wish in wishes)
        return confirm(wishes[0], options[0].words, reason, options if len(options) > 1 else ())

    def read(self, words: Words, has_numbers: bool) -> Reading[Wish]:
        if not words or self._is_answer(words):
            return again(Reason.NOT_READ)
        whole = None if has_numbers else self._by_whole_reply(words)
        return whole or self._by_sentence(words) or self._by_spelling(words, has_numbers)

    def _is_answer(self, words: Words) -> bool:
        sorts = _ANSWERS.get(self.asked, ()) if self.asked else ()
        phrase = _phrase(words)
        return any(self.own.has(sort, phrase) for sort in sorts)

    # --- the whole reply is one wish ---------------------------------------------------------

    def _by_whole_reply(self, words: Words) -> Reading[Wish] | None:
        """Exactly, without please and the like, or without its greeting."""
        bare = self._without(words, (Sort.FILLER, Sort.ARTICLE))
        ungreeted = self._without(words, (Sort.GREETING, Sort.FILLER, Sort.ARTICLE))
        for run in (words, bare, ungreeted):
            if run and (wish := self._exact(run)):
                if self._may_be_answer(run, wish):
                    return None
                vague = wish is Wish.QUANTITIES and self.asked in _ASK_A_NUMBER
                return self.unsure([wish], Reason.ROUGH) if vague else self.sure(wish)
        if not ungreeted and any(i.sort for i in items(words, self.own, (Sort.GREETING,))):
            return self.sure(Wish.MENU)
        return self._stop_elsewhere(words)

    def _without(self, words: Words, sorts: tuple[Sort, ...]) -> Words:
        row = items(words, self.own, sorts)
        return tuple(token for item in row if item.sort not in sorts for token in item.tokens)

    def _exact(self, run: Words) -> Wish | None:
        phrase = _phrase(run)
        wish = _whole(self.own).get(phrase)
        if wish is not None and says(run, phrase, wish, self.own):
            return wish
        if language_named(" ".join(phrase)) is not None and not self._is_own_no(phrase):
            return Wish.LANGUAGE
        english = self.lexicons.get("en")
        if english is None or any(word in self.own.known for word in phrase):
            return None
        return _whole(english).get(phrase)

    def _may_be_answer(self, run: Words, wish: Wish) -> bool:
        """Vietnamese without tone marks: dung is stop, and right."""
        plain = self.own.is_tonal and not run[0].with_accents and wish is Wish.STOP
        sorts = _ANSWERS[Ask.CONFIRM]
        return plain and any(self.own.has(sort, _phrase(run)) for sort in sorts)

    def _is_own_no(self, phrase: Phrase) -> bool:
        """Hindi is a language, and "no" to a Filipino."""
        return any(self.own.has(sort, phrase) for sort in (Sort.NO, Sort.YES))

    def _stop_elsewhere(self, words: Words) -> Reading[Wish] | None:
        """STOP in another language: obeyed, or asked where it may be another word here."""
        phrase = _phrase(words)
        others = [x for x in self.lexicons.values() if phrase in x.wishes[Wish.STOP].words]
        if not any(says(words, phrase, Wish.STOP, other) for other in others):
            return None
        is_plain = all(token.marked == token.text for token in words)
        sure = [x for x in others if phrase in x.wishes[Wish.STOP].anywhere]
        sure = [x for x in sure if not (x.is_tonal and is_plain)]
        if sure and not any(word in self.own.known for word in phrase):
            return self.sure(Wish.STOP)
        return self.unsure([Wish.STOP], Reason.AMBIGUOUS)

    # --- a sentence --------------------------------------------------------------------------

    def _by_sentence(self, words: Words) -> Reading[Wish] | None:
        """The wish whose words a sentence holds; the one with the most of them."""
        words = self._without_phrases_of_yes(words)
        texts = frozenset(token.text for token in words)
        scores = {wish: n for wish in _ORDER if (n := self._score(words, texts, wish))}
        if Wish.STOP in scores and self._is_no_stop(words):
            del scores[Wish.STOP]
        if not scores:
            return None
        best = max(scores.values())
        wishes = [wish for wish in _ORDER if scores.get(wish) == best]
        wishes = [wish for wish in wishes if self._begins(words, wish)] or wishes
        if len(wishes) > 1:
            return self.unsure(wishes, Reason.AMBIGUOUS)
        if self.asked is not None:  # a sentence is likelier the answer
            return self.unsure(wishes, Reason.ROUGH)
        return self.sure(wishes[0])

    def _begins(self, words: Words, wish: Wish) -> bool:
        """Whether the reply is addressed to this wish: OFFICER chickens came in."""
        own = self.own.wishes[wish].words if wish in _ADDRESSED else ()
        return any(_phrase(words[: len(name)]) == name for name in own)

    def _without_phrases_of_yes(self, words: Words) -> Words:
        """Without "no problem", which is a yes and opens no talk of trouble."""
        row = items(words, self.own, (Sort.YES,))
        kept = (item for item in row if item.sort is None or len(item.tokens) == 1)
        return tuple(token for item in kept for token in item.tokens)

    def _score(self, words: Words, texts: frozenset[str], wish: Wish) -> int:
        """How many groups the longest fitting sentence of the wish has."""
        fitting = (
            len(groups)
            for groups in self.own.wishes[wish].sentences
            if all(
                any(p[0] in texts and self._holds(words, p, wish) for p in group)
                for group in groups
            )
        )
        return max(fitting, default=0)

    def _holds(self, words: Words, phrase: Phrase, group: Wish | Sort) -> bool:
        size = len(phrase)
        return any(
            token.text == phrase[0] and says(words[at : at + size], phrase, group, self.own)
            for at, token in enumerate(words)
        )

    def _is_no_stop(self, words: Words) -> bool:
        """Whether "stop" is here about rain, insects or water, or is refused."""
        if any(self._holds(words, phrase, Wish.STOP) for phrase in self.own.stop_not):
            return True
        row = items(words, self.own, (Sort.NOT, Sort.NO))
        return any(
            (first.sort is not None and self._is_stop(second))
            or (second.sort is not None and self._is_stop(first))
            for first, second in zip(row, row[1:], strict=False)
        )

    def _is_stop(self, item: Item) -> bool:
        return item.phrase in self.own.wishes[Wish.STOP].words

    # --- a typing mistake --------------------------------------------------------------------

    def _by_spelling(self, words: Words, has_numbers: bool) -> Reading[Wish]:
        """A short reply with a typing mistake. STOP on a likeness is always asked."""
        bare = self._without(words, (Sort.FILLER, Sort.ARTICLE))
        all_known = all(token.text in self.own.known for token in bare)
        if has_numbers or not bare or len(bare) > MOST_WORDS_MISSPELT or all_known:
            return again(Reason.NOT_READ)
        word = " ".join(_phrase(bare))
        hit = nearest(word, _spelt(self.own))
        if hit is None:
            return again(Reason.NOT_READ)
        wish, rivals = hit
        near = [s for s, w in _spelt(self.own).items() if w is wish and one_key_off(word, s)]
        is_risky = len(word) <= _SHORT and not any(is_swap_or_gap(word, s) for s in near)
        is_answer_likelier = self.asked is not None and wish not in (Wish.HELP, Wish.MENU)
        if rivals or wish is Wish.STOP or is_risky or is_answer_likelier:
            return self.unsure([wish, *rivals], Reason.MISSPELT)
        return self.sure(wish)


def _phrase(words: Words) -> Phrase:
    return tuple(token.text for token in words)


@lru_cache(maxsize=32)
def _whole(lexicon: Lexicon) -> Mapping[Phrase, Wish]:
    return {phrase: wish for wish in _ORDER for phrase in lexicon.wishes[wish].words}


@lru_cache(maxsize=32)
def _spelt(lexicon: Lexicon) -> Mapping[str, Wish]:
    return {" ".join(phrase): wish for phrase, wish in _whole(lexicon).items()}
