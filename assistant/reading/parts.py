"""A deed that is told in one part of a text, beside parts that say something else.

"We soaked the seed at six because the radio said storm": the words of the part that tells the
deed are all accounted for, as if it had come alone, and no word beside it takes anything back.
What the other parts say is not known; so whoever uses this holds it against what the whole
text may be besides (a cry, a question).
"""

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from assistant.reading.confirms import DONE, YES, is_for_later, read_deeds, told_by_rule
from assistant.reading.outcomes import Outcome
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_KEPT, read_tokens
from assistant.reading.text.lexicon import DEEDS, OTHER, Lexicon, Sort
from assistant.reading.text.short import spelt_out
from assistant.reading.text.spot import Item
from assistant.reading.told import asks, read_told, row_of, says_how_many_of

MOST_PARTS = 9  # a text of more is a story
_SEPARATES = re.compile(
    r"[,;:!.\n]+(?=\s|$)|[;!]|\s[-\u2013\u2014]+\s|(?<=[^\W\d]),(?=[^\W\d])"
)
_Part = tuple[str, str]  # the words that join it to what came before ("and then"); its own


# What takes a deed back, also in words of its own: not, not yet, half of it, we will.
_BACK = frozenset(
    {
        Sort.NOT,
        Sort.NO,
        Sort.NOT_YET,
        Sort.NOT_KNOWN,
        Sort.NONE,
        Sort.COMING_VERB,
        Sort.SORRY,
        Sort.FRACTION,
        Sort.DEAD,
    }
)


@lru_cache(maxsize=TEXTS_KEPT)
def told_in_part(text: str, lexicon: Lexicon, deeds: frozenset[str] = DEEDS) -> str | None:
    """The longest run of parts that by itself tells one of these deeds and names it, where
    nothing in the text takes it back; None where there is none, or the text has one part."""
    if len(text) > LONGEST_REPLY or "?" in text:
        return None
    spelt = spelt_out(text, lexicon)
    parts = _parts(spelt, lexicon)
    if not 1 < len(parts) <= MOST_PARTS or _is_another(spelt, lexicon):
        return None
    for at, end in _runs(len(parts)):
        run = _joined(parts[at:end])
        others = [" ".join(part) for part in (*parts[:at], *parts[end:])]
        if _tells(run, lexicon, deeds) and not any(
            _takes_back(each, lexicon) for each in others
        ):
            return run
    return None


def told_in_story(text: str, lexicon: Lexicon, deeds: frozenset[str] = DEEDS) -> bool:
    """Whether the words of one of these deeds stand in a text of which others are not known,
    and none of those that are known takes it back."""
    spelt = spelt_out(text[:LONGEST_REPLY], lexicon)
    told = read_deeds(behind_but(spelt, lexicon), lexicon)
    if not told & deeds or _is_another(spelt, lexicon):
        return False
    return not _is_taken_back(spelt, lexicon, deeds)


# What may be said of something else, where it stands before the part that tells the deed: "my
# wife was not home, so I put the seed in water".
_OF_BEFORE = frozenset({Sort.NOT, Sort.NO, Sort.NONE, Sort.SORRY})


def _is_taken_back(text: str, lexicon: Lexicon, deeds: frozenset[str]) -> bool:
    """Whether anything says that the deed is not done, in its own part or behind it; before it
    only what cannot be of something else."""
    parts = _parts(text, lexicon)
    tells = [read_deeds(words, lexicon) & deeds for _, words in parts]
    first = next((at for at, told in enumerate(tells) if told), 0)
    return any(
        _words_back(words, lexicon) - (_OF_BEFORE if at < first else frozenset())
        for at, (_, words) in enumerate(parts)
    )


def _words_back(part: str, lexicon: Lexicon) -> frozenset[Sort]:
    """The sorts of the words that take a deed back, but for those it is told with ("the seed is
    no more dry")."""
    found = read_tokens(part)
    rules = [rule for code, rule in told_by_rule(found, lexicon) if code in DEEDS]
    return frozenset(
        item.sort
        for item in row_of(found, lexicon)
        if item.sort in _BACK and not all(any(r.covers(t) for r in rules) for t in item.tokens)
    )


def behind_but(text: str, lexicon: Lexicon) -> str:
    """What stands behind the last "but", which is what counts; all where there is none."""
    words = text.split()
    turns = [
        at
        for at, word in enumerate(words)
        if lexicon.turns(tuple(token.text for token in read_tokens(word)))
    ]
    return " ".join(words[turns[-1] + 1 :]) if turns else text


_MOST_OF_APOLOGY = 4  # words: "no no, I am sorry"


def without_apology(text: str, lexicon: Lexicon) -> str | None:
    """What stands behind the "no, sorry" with which a text begins; None where it begins
    otherwise, or says nothing else."""
    words = text.split()
    for count in range(min(_MOST_OF_APOLOGY, len(words) - 1), 0, -1):
        if _is_apology(" ".join(words[:count]), lexicon):
            return " ".join(words[count:])
    return None


def _is_apology(text: str, lexicon: Lexicon) -> bool:
    """Where the word for "no" is "not" too, only with its comma: "di na namin natapos"."""
    row = row_of(read_tokens(text), lexicon)
    sorts = {item.sort for item in row if not _is_mark(item)}
    if not sorts or not sorts <= {Sort.NO, Sort.SORRY}:
        return False
    return Sort.SORRY in sorts or not lexicon.no_is_not or _is_mark(row[-1])


def _is_mark(item: Item) -> bool:
    return not any(token.is_word or token.is_number for token in item.tokens)


def _runs(count: int) -> Iterator[tuple[int, int]]:
    """Each run of fewer parts than all, the longest first."""
    for length in range(count - 1, 0, -1):
        for at in range(count - length + 1):
            yield at, at + length


def _joined(run: Sequence[_Part]) -> str:
    """The words of a run, without what joins it to what came before."""
    (_, first), *others = run
    return " ".join((first, *(f"{join} {words}".strip() for join, words in others)))


def _tells(run: str, lexicon: Lexicon, deeds: frozenset[str]) -> bool:
    reading = read_told(run, lexicon, digits=False)
    sure = reading.outcome is Outcome.UNDERSTOOD and reading.value in (DONE, YES)
    return sure and bool(read_deeds(run, lexicon) & deeds)


def _is_another(text: str, lexicon: Lexicon) -> bool:
    """Whether any word says that it is another's, not all of it, or only to come."""
    found = read_tokens(text)
    row = row_of(found, lexicon)
    other = any(code == OTHER for code, _ in told_by_rule(found, lexicon))
    return other or asks(row) or is_for_later(row) or says_how_many_of(row)


def _takes_back(part: str, lexicon: Lexicon) -> bool:
    """Whether a part may be all that counts: it says no, or "but"."""
    found = read_tokens(part)
    turns = lexicon.turns(tuple(token.text for token in found))
    return turns or any(item.sort in _BACK for item in row_of(found, lexicon))


def parts_of(text: str, lexicon: Lexicon) -> tuple[str, ...]:
    """A text cut at marks and at words that join sentences, which are left out."""
    return tuple(words for _, words in _parts(text, lexicon))


def _parts(text: str, lexicon: Lexicon) -> list[_Part]:
    strict = lexicon.is_tonal and any(token.with_accents for token in read_tokens(text))
    return [
        part
        for piece in _SEPARATES.split(text)
        for part in _at_joins(piece.split(), lexicon, strict)
        if part[1]
    ]


def _at_joins(words: Sequence[str], lexicon: Lexicon, strict: bool) -> Iterator[_Part]:
    """The parts of a piece between marks, cut before words such as "and" and "because"; words
    that join nothing to nothing ("and then because") stay together."""
    tokens = [next(iter(read_tokens(word)), None) for word in words]
    join: list[str] = []
    start = at = 0
    while at < len(words):
        length = lexicon.joins_at(tokens, at, strict)
        if not length:
            at += 1
            continue
        if at > start:
            yield " ".join(join), " ".join(words[start:at])
            join = []
        join += words[at : at + length]
        start = at = at + length
    yield " ".join(join), " ".join(words[start:])
