"""The finding of the word list's phrases in a row of tokens."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from assistant.reading.outcomes import Wish
from assistant.reading.text.fold import Token, TokenKind
from assistant.reading.text.lexicon import Lexicon, Phrase, Sort
from assistant.reading.text.near import is_slip_of, nearest
from assistant.reading.text.phrases import PackedPhrases, as_said

_Row = tuple[Phrase, Sort, str]
_WORDS_KEPT = 4096  # people use the same words in ever other texts


@dataclass(frozen=True)
class Item:
    """One meaning found in a reply: a phrase of the list, a number, a mark, a strange word."""

    sort: Sort | None  # None: a number in digits, a mark or a word that is not in the list
    key: str
    tokens: tuple[Token, ...]
    misspelt: bool = False
    has_rivals: bool = False  # misspelt, and as near to another meaning

    @property
    def text(self) -> str:
        """The folded words, one space apart."""
        return " ".join(self.phrase)

    @property
    def spelt(self) -> str:
        """The words with their accents, one space apart."""
        return " ".join(token.marked or token.text for token in self.tokens)

    @property
    def phrase(self) -> Phrase:
        """The folded words."""
        return tuple(token.text for token in self.tokens)

    @property
    def glued(self) -> bool:
        """Whether nothing stood between this and what came before."""
        return self.tokens[0].glued

    @property
    def strange(self) -> tuple["Item", ...]:
        """The same words with no meaning, one by one."""
        return tuple(Item(None, token.text, (token,)) for token in self.tokens)

    @property
    def is_digits(self) -> bool:
        """Whether it is a number in digits that no phrase took."""
        return self.sort is None and self.tokens[0].is_number

    @property
    def is_strange(self) -> bool:
        """Whether it is a word that the list does not know."""
        return self.sort is None and self.tokens[0].is_word

    def is_mark(self, marks: str) -> bool:
        """Whether it is one of these marks."""
        return self.sort is None and self.tokens[0].kind is TokenKind.MARK and self.key in marks


def items(
    found: Sequence[Token],
    lexicon: Lexicon,
    sorts: tuple[Sort, ...],
    forgiving: tuple[Sort, ...] = (),
) -> tuple[Item, ...]:
    """The tokens as meanings of these sorts: the longest phrase first, then the earlier sort.

    Words of the `forgiving` sorts may be misspelt, where nothing else is as near; so may one
    word of a phrase, whose other words are told by it: hindii pa is not hindi.
    """
    starts, packed = _starts(lexicon, sorts), _packed(lexicon, sorts)
    row: list[Item] = []
    at = 0
    while at < len(found):
        item = _slipped_phrase_at(found, at, lexicon, forgiving) if forgiving else None
        more = _packed_at(found, at, packed) if packed else {}
        item = item or _phrase_at(found, at, starts, more, lexicon)
        row.append(item or _single(found[at], lexicon, forgiving))
        at += len(row[-1].tokens)
    return tuple(row)


def says(run: Sequence[Token], phrase: Phrase, group: Sort | Wish, lexicon: Lexicon) -> bool:
    """Whether these tokens are the phrase, with its accents where they matter and were typed.

    A word without accents may have lost them, unless the reply has some elsewhere. Units and
    wishes of several words are told by the others: met vuông.
    """
    if len(run) != len(phrase):
        return False
    if any(token.text != word for token, word in zip(run, phrase, strict=True)):
        return False
    if not lexicon.is_tonal or not run[0].with_accents:
        return True
    spellings = lexicon.spellings(group, phrase)
    if len(run) > 1 and (group is Sort.UNIT or isinstance(group, Wish)):
        return any(_same_marks(run, spelling) for spelling in spellings)
    return tuple(token.marked for token in run) in spellings


def _same_marks(run: Sequence[Token], spelling: Phrase) -> bool:
    """Word by word: the same accents, or none on one side."""
    return all(
        token.marked in (word, token.text) or word == token.text
        for token, word in zip(run, spelling, strict=True)
    )


_Meaning = tuple[int, Sort, str]  # the place of the sort among those that are looked for
_Starts = Mapping[str, tuple[tuple[int, ...], Mapping[Phrase, tuple[_Meaning, ...]]]]
_Packed = Mapping[str, tuple[tuple[int, Sort, PackedPhrases], ...]]
_LONGEST = 16  # words; no phrase of a list has more


@lru_cache(maxsize=256)
def _starts(lexicon: Lexicon, sorts: tuple[Sort, ...]) -> _Starts:
    """First word -> how long the phrases are that begin with it, longest first, and what each
    means."""
    table: dict[str, dict[Phrase, list[_Meaning]]] = {}
    for place, sort in enumerate(sorts):
        listed = lexicon.phrases.get(sort, {})
        for phrase, key in () if isinstance(listed, PackedPhrases) else listed.items():
            table.setdefault(phrase[0], {}).setdefault(phrase, []).append((place, sort, key))
    return {
        word: (
            tuple(sorted({len(phrase) for phrase in rows}, reverse=True)),
            {phrase: tuple(meanings) for phrase, meanings in rows.items()},
        )
        for word, rows in table.items()
    }


@lru_cache(maxsize=256)
def _packed(lexicon: Lexicon, sorts: tuple[Sort, ...]) -> _Packed:
    """First word -> those of these sorts of which a packed phrase begins with it."""
    table: dict[str, tuple[tuple[int, Sort, PackedPhrases], ...]] = {}
    for place, sort in enumerate(sorts):
        listed = lexicon.phrases.get(sort)
        if isinstance(listed, PackedPhrases):
            for word in listed.first:
                table[word] = (*table.get(word, ()), (place, sort, listed))
    return table


def _packed_at(
    found: Sequence[Token], at: int, packed: _Packed
) -> Mapping[int, tuple[_Meaning, ...]]:
    """How long the packed phrases are that begin here, and what each means."""
    here = packed.get(found[at].text)
    if here is None:
        return {}
    said = as_said([token.text for token in found[at : at + _LONGEST]])
    lengths: dict[int, tuple[_Meaning, ...]] = {}
    for place, sort, phrases in here:
        for length in phrases.lengths(said):
            lengths[length] = (*lengths.get(length, ()), (place, sort, ""))
    return lengths


def _phrase_at(
    found: Sequence[Token],
    at: int,
    starts: _Starts,
    more: Mapping[int, tuple[_Meaning, ...]],
    lexicon: Lexicon,
) -> Item | None:
    lengths, rows = starts.get(found[at].text, ((), {}))
    for length in sorted({*lengths, *more}, reverse=True) if more else lengths:
        run = tuple(found[at : at + length])
        if len(run) < length:
            continue
        phrase = tuple(token.text for token in run)
        meanings = rows.get(phrase, ())
        for _, sort, key in sorted((*meanings, *more[length])) if length in more else meanings:
            if says(run, phrase, sort, lexicon):
                return Item(sort, key, run)
    return None


def _slipped_phrase_at(
    found: Sequence[Token], at: int, lexicon: Lexicon, sorts: tuple[Sort, ...]
) -> Item | None:
    """A phrase of two words or more of which one, that is no word of ours, is misspelt."""
    window = found[at : at + 3]
    if not any(_is_foreign(token, lexicon) for token in window):
        return None
    phrases = _by_word(lexicon, sorts)
    rows = [row for token in window[:2] for row in phrases.get(token.text, ())]
    fitting = [r for r in rows if _is_slipped(found[at : at + len(r[0])], r[0], lexicon)]
    longest = max((len(phrase) for phrase, _, _ in fitting), default=0)
    meanings = list(dict.fromkeys(r[1:] for r in fitting if len(r[0]) == longest))
    if not meanings:
        return None
    (sort, key), *rivals = meanings
    run = tuple(found[at : at + longest])
    return Item(sort, key, run, misspelt=True, has_rivals=bool(rivals))


def _is_foreign(token: Token, lexicon: Lexicon) -> bool:
    return token.is_word and token.text not in lexicon.known


def _is_slipped(run: Sequence[Token], phrase: Phrase, lexicon: Lexicon) -> bool:
    if len(run) != len(phrase):
        return False
    wrong = [(t, w) for t, w in zip(run, phrase, strict=True) if t.text != w]
    if len(wrong) != 1:
        return False
    token, word = wrong[0]
    return _is_foreign(token, lexicon) and is_slip_of(token.text, word)


@lru_cache(maxsize=256)
def _by_word(lexicon: Lexicon, sorts: tuple[Sort, ...]) -> Mapping[str, tuple[_Row, ...]]:
    """Each of the first two words of a phrase -> the phrases of two words or more with it."""
    table: dict[str, list[_Row]] = {}
    for sort in sorts:
        for phrase, key in lexicon.phrases.get(sort, {}).items():
            for word in set(phrase[:2]) if len(phrase) > 1 else ():
                table.setdefault(word, []).append((phrase, sort, key))
    return {word: tuple(rows) for word, rows in table.items()}


def _single(token: Token, lexicon: Lexicon, forgiving: tuple[Sort, ...]) -> Item:
    plain = Item(None, token.text, (token,))
    if not token.is_word or not forgiving or token.text in lexicon.known:
        return plain
    hit = _nearest(token.text, lexicon, forgiving)
    if hit is None:
        return plain
    (sort, key), rivals = hit
    return Item(sort, key, (token,), misspelt=True, has_rivals=bool(rivals))


@lru_cache(maxsize=_WORDS_KEPT)
def _nearest(
    word: str, lexicon: Lexicon, sorts: tuple[Sort, ...]
) -> tuple[tuple[Sort, str], tuple[tuple[Sort, str], ...]] | None:
    # Another unit is another field, and "no" the contrary of "done".
    wary = Sort.UNIT in sorts or Sort.NO in sorts
    return nearest(word, _spellings(lexicon, sorts), wary, lexicon.affixes)


@lru_cache(maxsize=256)
def _spellings(lexicon: Lexicon, sorts: tuple[Sort, ...]) -> Mapping[str, tuple[Sort, str]]:
    """Single words that may be misspelt -> what they mean.

    A unit that is read only after its number is a common word too: it must be spelt right.
    """
    table: dict[str, tuple[Sort, str]] = {}
    for sort in sorts:
        for phrase, key in lexicon.phrases.get(sort, {}).items():
            if len(phrase) == 1 and not key.startswith(("after ", "one ")):
                table.setdefault(phrase[0], (sort, key))
    return table
