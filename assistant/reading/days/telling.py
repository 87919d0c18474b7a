"""A reply made ready to be read for a day: its words by what stands beside them."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

from assistant.reading.days.clues import split_dots
from assistant.reading.days.told import Told
from assistant.reading.numbers import (
    NUMBER_SORTS,
    Amount,
    Piece,
    amounts,
    is_broken,
    number_items,
)
from assistant.reading.pieces import Row
from assistant.reading.text.fold import Token
from assistant.reading.text.lexicon import Lexicon, Phrase, Sort
from assistant.reading.text.near import SHORTEST, is_slip_of
from assistant.reading.text.spot import Item

_SORTS = (
    Sort.OTHER_CALENDAR,
    Sort.EITHER_DAY,
    Sort.DAY,
    Sort.WEEKDAY,
    Sort.MONTH,
    Sort.DAYS,
    Sort.AGO,
    Sort.LATER,
    Sort.EDGE,
    Sort.NEXT,
    Sort.LAST,
    Sort.THIS,
    Sort.MONTH_WORD,
    Sort.DATE_WORD,
    Sort.YEAR_WORD,
    *NUMBER_SORTS,
    Sort.ORDINAL,
    Sort.NTH,
    Sort.CLOCK,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.NOT_YET,
    Sort.RANGE,
    Sort.PAST_VERB,
    Sort.COMING_VERB,
    Sort.OTHER_UNIT,
    Sort.UNIT,
    Sort.PERCENT,
    Sort.ROUGH,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
    Sort.YES,
    Sort.DONE,
)
# A word of these is what it says; any other beside a day may be a slip of its name.
_OF_DAYS = frozenset(
    {Sort.DAY, Sort.WEEKDAY, Sort.DAYS, Sort.AGO, Sort.LATER, Sort.EDGE, Sort.NEXT, Sort.LAST}
)
_DULL = (
    Sort.FILLER,
    Sort.FARM,
    Sort.GREETING,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.YES,
    Sort.JOIN,
)
_MARKS = "/-.,:+()"


def tell(found: Sequence[Token], lexicon: Lexicon, today: date, past: bool) -> Told | None:
    """The row of what was typed; None where a number is broken."""
    forgiving = (Sort.MONTH, Sort.WEEKDAY, Sort.DAY)
    row = number_items(split_dots(found), lexicon, _SORTS, forgiving)
    if is_broken(row, _MARKS):
        return None
    kept: list[Piece] = []
    for piece in _anchored(_counted(amounts(row, lexicon, slash=False)), lexicon):
        if isinstance(piece, Item) and piece.sort is Sort.DONE:
            kept.append(replace(piece, sort=Sort.PAST_VERB))  # kal ho gaya: it was yesterday
        elif not (isinstance(piece, Item) and piece.sort in _DULL):
            kept.append(piece)
    settled = Row(_settled(kept, lexicon), lexicon)
    return Told(settled, today, past, _is_near_longer(row, lexicon))


def _is_near_longer(row: Sequence[Item], lexicon: Lexicon) -> bool:
    """Whether a longer name of a day stands there but for a slip that makes another word of the
    list: kesho kuwa, for kesho kutwa."""
    others = {token.at for item in row if item.sort not in _OF_DAYS for token in item.tokens}
    words = tuple(token for item in row for token in item.tokens)
    return any(
        _is_but_for_a_slip(words[at : at + len(phrase)], phrase, others)
        for phrase in lexicon.phrases.get(Sort.DAY, {})
        if len(phrase) > 1
        for at in range(len(words) - len(phrase) + 1)
    )


def _is_but_for_a_slip(run: Sequence[Token], phrase: Phrase, others: set[int]) -> bool:
    wrong = [(t, own) for t, own in zip(run, phrase, strict=True) if t.text != own]
    if len(wrong) != 1:
        return False
    token, own = wrong[0]
    return token.at in others and len(own) >= SHORTEST and is_slip_of(token.text, own)


def _counted(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """A week ago: the article before a span of time is a one."""
    made = list(pieces)
    for at, (piece, after) in enumerate(zip(pieces, pieces[1:], strict=False)):
        is_span = isinstance(after, Item) and after.sort is Sort.DAYS
        if is_span and isinstance(piece, Item) and piece.sort is Sort.ARTICLE and piece.key:
            made[at] = Amount(Fraction(1), (piece,), is_words=True)
    return tuple(made)


def _anchored(pieces: tuple[Piece, ...], lexicon: Lexicon) -> tuple[Piece, ...]:
    """10 days after sowing, buvai ke 10 din baad: counted from something else than today."""
    made = list(pieces)
    for at, piece in enumerate(pieces):
        if isinstance(piece, Item) and _is_anchor(pieces, at, lexicon):
            made[at] = replace(piece, sort=Sort.ROUGH)
    return tuple(made)


def _is_anchor(pieces: tuple[Piece, ...], at: int, lexicon: Lexicon) -> bool:
    item, before = pieces[at], pieces[at - 1] if at else None
    first, second = (*pieces[at + 1 : at + 3], None, None)[:2]
    if not isinstance(item, Item):
        return False
    if lexicon.edge_after:
        owned = isinstance(first, Item) and first.sort is Sort.ARTICLE
        return item.sort is Sort.FARM and owned and isinstance(second, Amount)
    counted = isinstance(before, Amount) and lexicon.unit_first
    after_span = counted or (isinstance(before, Item) and before.sort is Sort.DAYS)
    if isinstance(first, Item) and first.sort is Sort.ARTICLE:
        first = second  # depois da sementeira
    named = isinstance(first, Item) and (first.is_strange or first.sort is Sort.FARM)
    return after_span and named and lexicon.has(Sort.EDGE, item.phrase)


def _settled(pieces: list[Piece], lexicon: Lexicon) -> tuple[Piece, ...]:
    """Words with two meanings by what stands beside them.

    Indonesian minggu and Filipino linggo are Sunday and week; "senin kemarin" is last Monday.
    """
    settled: list[Piece] = []
    for at, piece in enumerate(pieces):
        before = pieces[at - 1] if at else None
        after = pieces[at + 1] if at + 1 < len(pieces) else None
        settled.append(_settle(piece, before, after, lexicon))
    return tuple(settled)


def _settle(piece: Piece, before: Piece | None, after: Piece | None, lexicon: Lexicon) -> Piece:
    if not isinstance(piece, Item):
        return piece
    beside = {p.sort for p in (before, after) if isinstance(p, Item)}
    counted = before is not None and not isinstance(before, Item)
    if piece.sort is Sort.WEEKDAY and lexicon.has(Sort.DAYS, piece.phrase):
        if counted or beside & {Sort.NEXT, Sort.LAST, Sort.AGO, Sort.LATER, Sort.THIS}:
            key = lexicon.phrases[Sort.DAYS][piece.phrase]
            return replace(piece, sort=Sort.DAYS, key=key)
    if piece.sort is Sort.DAY and isinstance(before, Item) and before.sort is Sort.WEEKDAY:
        for sort in (Sort.LAST, Sort.AGO, Sort.NEXT):
            if lexicon.has(sort, piece.phrase):
                return replace(piece, sort=sort)
    return piece
