""" "Out of ten nine came", "sa sampu siyam": a total and its count that stand side by side."""

from collections.abc import Sequence
from itertools import pairwise

from assistant.reading.text.fold import Token, TokenKind
from assistant.reading.text.lexicon import Lexicon, Sort

# Totals that people say a share of. No twenty: "out of twenty five" is as likely to be of 25.
_TOTALS = frozenset({"4", "5", "10", "100", "1000"})


def parted(found: Sequence[Token], lexicon: Lexicon) -> tuple[Token, ...]:
    """With a comma between a total and its count where they would be read as one number, and
    with an ending that means "out of" as a word of its own, as one stands behind a number."""
    cut_up = [part for token in found for part in _without_ending(token, lexicon)]
    numbers = [at for at, token in enumerate(cut_up) if _is_number(token, lexicon)]
    pairs = [at for at, after in pairwise(numbers) if after == at + 1]
    if len(numbers) != 2 or not pairs or not _begins_share(cut_up, pairs[0], lexicon):
        return tuple(cut_up)
    at = pairs[0] + 1
    comma = Token(",", TokenKind.MARK, False, cut_up[at].at)
    return (*cut_up[:at], comma, *cut_up[at:])


def _without_ending(token: Token, lexicon: Lexicon) -> tuple[Token, ...]:
    for ending, *more in lexicon.phrases.get(Sort.FROM, {}):
        stem = token.text.removesuffix(ending)
        if not more and stem != token.text and lexicon.has(Sort.NUMBER, (stem,)):
            rest = Token(ending, TokenKind.WORD, True, token.at)
            return Token(stem, TokenKind.WORD, token.glued, token.at), rest
    return (token,)


def _is_number(token: Token, lexicon: Lexicon) -> bool:
    return token.is_number or any(
        lexicon.has(sort, (token.text,)) for sort in (Sort.NUMBER, Sort.TIMES)
    )


def _begins_share(found: Sequence[Token], at: int, lexicon: Lexicon) -> bool:
    """Whether "of" stands before a round total, with at most a word between."""
    total = (found[at].text,)
    values = (lexicon.phrases.get(sort, {}).get(total) for sort in (Sort.NUMBER, Sort.TIMES))
    before = tuple(token.text for token in found[max(at - 3, 0) : at])
    joins = any(
        lexicon.has(sort, before[start:end])
        for sort in (Sort.OF, Sort.FROM)
        for start in range(len(before))
        for end in range(start + 1, len(before) + 1)
    )
    return joins and any(value in _TOTALS for value in values)
