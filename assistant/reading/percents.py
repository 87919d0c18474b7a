"""Germination: a percentage, a count of a total, several lots, or words.

Outcomes: understood in percent (0-100); read back where the total was left out (85 sprouted)
or the number is unusual (0.85, under 10); asked again over 100 or where nothing is sure.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from assistant.reading.echo import percent_words
from assistant.reading.fold import LONGEST_REPLY, Kind, Token, cut, fold, unslip
from assistant.reading.lexicon import Item, Lexicon, Sort, items
from assistant.reading.numbers import NUMBER_SORTS, Amount, Piece, amounts, is_broken
from assistant.reading.outcomes import Reading, Reason, again, confirm, understood

LEAST_SURE_PERCENT = 10  # a smaller bare number is more likely a slip, or a count

_SORTS = (
    Sort.PERCENT,
    Sort.FROM,
    Sort.OF,
    Sort.SEEDS,
    Sort.LOTS,
    *NUMBER_SORTS,
    Sort.ALL,
    Sort.NONE,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.ROUGH,
    Sort.RANGE,
    Sort.ABOUT,
    Sort.OTHER_UNIT,
    Sort.UNIT,
    Sort.MONTH,
    Sort.DAYS,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
)
_GLUE = frozenset({"/", "-", "%", ",", "of"})
_OTHER_THINGS = (Sort.OTHER_UNIT, Sort.UNIT, Sort.MONTH, Sort.DAYS)
_DULL = (Sort.FILLER, Sort.FARM, Sort.GREETING, Sort.ABOUT, Sort.ARTICLE)
_HUNDRED = Fraction(100)


@dataclass(frozen=True)
class Share:
    """One lot's result: so many of so many, or a percentage."""

    percent: Fraction
    count: Fraction | None = None
    total: Fraction | None = None
    doubt: Reason = Reason.NONE


def read_germination(text: str, lexicon: Lexicon) -> Reading[float]:
    """Seeds that sprout, in percent [0-100]."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    folded, slipped = unslip(fold(text))
    reading = read_germination_tokens(cut(folded), lexicon)
    if slipped and reading.value is not None and reading.reason is Reason.NONE:
        return confirm(reading.value, reading.words, Reason.SLIP)
    return reading


def read_germination_tokens(found: Sequence[Token], lexicon: Lexicon) -> Reading[float]:
    """As `read_germination`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    row = items(_split_lots(found), lexicon, _SORTS, (Sort.NUMBER, Sort.PERCENT))
    if is_broken(row, _GLUE | {"o"}):
        return again(Reason.NOT_READ)
    pieces = amounts(row, lexicon)
    kept = tuple(p for p in pieces if not (isinstance(p, Item) and p.sort in _DULL))
    return _judge(kept, lexicon)


def percent_spans(found: Sequence[Token], lexicon: Lexicon) -> frozenset[int]:
    """The places of the tokens that surely speak of germination."""
    row = items(tuple(found), lexicon, _SORTS, (Sort.PERCENT,))
    pieces = amounts(row, lexicon)
    places: set[int] = set()
    for at, piece in enumerate(pieces):
        if _is_percent(piece) or (
            isinstance(piece, Item) and piece.sort in (Sort.OF, Sort.FROM)
        ):
            for near in (at - 1, at, at + 1):
                if 0 <= near < len(pieces) and (near == at or isinstance(pieces[near], Amount)):
                    places.update(_places(pieces[near]))
    return frozenset(places)


def _places(piece: Piece) -> list[int]:
    own = piece.items if isinstance(piece, Amount) else (piece,)
    return [token.at for item in own for token in item.tokens]


def _split_lots(found: Sequence[Token]) -> tuple[Token, ...]:
    """81,79,85,80 as four numbers: more than one mark of a kind is a list here."""
    cut_up: list[Token] = []
    for token in found:
        parts = token.text.split(",")
        if token.kind is Kind.NUMBER and len(parts) > 2 and "." not in token.text:
            cut_up.extend(Token(part, Kind.NUMBER, False, token.at) for part in parts)
        else:
            cut_up.append(token)
    return tuple(cut_up)


def _is_percent(piece: Piece | None) -> bool:
    return isinstance(piece, Item) and (piece.sort is Sort.PERCENT or piece.is_mark("%"))


def _sort(pieces: Sequence[Piece], at: int) -> Sort | None:
    piece = pieces[at] if 0 <= at < len(pieces) else None
    return piece.sort if isinstance(piece, Item) else None


def _judge(pieces: tuple[Piece, ...], lexicon: Lexicon) -> Reading[float]:
    sorts = {p.sort for p in pieces if isinstance(p, Item)}
    numbers = [p for p in pieces if isinstance(p, Amount)]
    if not numbers:
        return _in_words(sorts, pieces, lexicon)
    if any(isinstance(p, Item) and p.is_digits for p in pieces) or _is_negative(pieces):
        return again(Reason.IMPOSSIBLE)
    if Sort.NOT in sorts or _has_late_no(pieces):
        return again(Reason.NEGATED)
    if Sort.RANGE in sorts or _has_dash(pieces):
        return again(Reason.TWO_VALUES)
    shares = _ratios(pieces) or _plain(pieces, numbers)
    if not shares:
        return again(Reason.NOT_READ)
    doubt = Reason.ROUGH if Sort.ROUGH in sorts or Sort.NOT_KNOWN in sorts else Reason.NONE
    return _mean(shares, sorts, doubt, lexicon)


def _in_words(
    sorts: set[Sort | None], pieces: tuple[Piece, ...], lexicon: Lexicon
) -> Reading[float]:
    if Sort.NOT_KNOWN in sorts:
        return again(Reason.NOT_KNOWN)
    if any(isinstance(p, Item) and p.is_digits for p in pieces):
        return again(Reason.IMPOSSIBLE)
    if Sort.NOT in sorts or len(sorts & {Sort.ALL, Sort.NONE}) != 1:
        return again(Reason.NOT_READ)
    percent = _HUNDRED if Sort.ALL in sorts else Fraction(0)
    return confirm(float(percent), percent_words(percent, lexicon), Reason.UNUSUAL)


def _is_negative(pieces: Sequence[Piece]) -> bool:
    first = pieces[0]
    after = pieces[1] if len(pieces) > 1 else None
    return (
        isinstance(first, Item)
        and first.is_mark("-")
        and isinstance(after, Amount)
        and after.glued
    )


def _has_late_no(pieces: Sequence[Piece]) -> bool:
    """A "no" after the number. One that opens the reply only corrects what went before."""
    return any(_sort(pieces, at) in (Sort.NO, Sort.NONE) for at in range(1, len(pieces)))


def _has_dash(pieces: Sequence[Piece]) -> bool:
    for at, piece in enumerate(pieces):
        if isinstance(piece, Item) and piece.is_mark("-~") and at and at + 1 < len(pieces):
            if isinstance(pieces[at - 1], Amount) and isinstance(pieces[at + 1], Amount):
                return True
    return False


def _ratios(pieces: tuple[Piece, ...]) -> list[Share]:
    """41 of 50, 41/50, of 50 41."""
    shares: list[Share] = []
    for at, piece in enumerate(pieces):
        if isinstance(piece, Amount) and piece.ratio:
            shares.append(_share(*piece.ratio, is_slash=True))
        elif _sort(pieces, at) in (Sort.OF, Sort.FROM):
            share = _around(pieces, at)
            if share:
                shares.append(share)
    used = sum(2 if share.total else 1 for share in shares)
    loose = [p for p in pieces if isinstance(p, Amount)]
    count = sum(2 if not p.ratio else 2 for p in loose if p.ratio) + sum(
        1 for p in loose if not p.ratio
    )
    lots = any(_sort(pieces, at) is Sort.LOTS for at in range(len(pieces)))
    return shares if used == count or (lots and used == count - 1) else []


def _around(pieces: tuple[Piece, ...], at: int) -> Share | None:
    """The two numbers that an "of" joins."""
    left, right = _amount_near(pieces, at, -1), _amount_near(pieces, at, 1)
    if left is not None and right is not None:
        first, second = pieces[left], pieces[right]
        turned = _sort(pieces, at) is Sort.FROM
    elif right is not None and (later := _amount_near(pieces, right, 1)) is not None:
        first, second, turned = pieces[right], pieces[later], True
    else:
        return None
    if not isinstance(first, Amount) or not isinstance(second, Amount):
        return None
    count, total = (second, first) if turned else (first, second)
    return _share(count.value, total.value, is_slash=False)


def _amount_near(pieces: tuple[Piece, ...], at: int, step: int) -> int | None:
    """The nearest number on one side, with only words of seed between."""
    at += step
    while 0 <= at < len(pieces):
        piece = pieces[at]
        if isinstance(piece, Amount):
            return None if piece.ratio else at
        if (
            piece.sort not in (Sort.SEEDS, Sort.OF)
            and not piece.is_mark(",:")
            and not piece.is_strange
        ):
            return None
        at += step
    return None


def _share(count: Fraction, total: Fraction, is_slash: bool) -> Share:
    if total <= 0 or count > total:
        return Share(Fraction(-1), count, total, Reason.IMPOSSIBLE)
    may_be_lots = is_slash and count >= 50 and 50 < total < 100
    doubt = Reason.AMBIGUOUS if may_be_lots or total.denominator != 1 else Reason.NONE
    return Share(count / total * 100, count, total, doubt)


def _plain(pieces: tuple[Piece, ...], numbers: list[Amount]) -> list[Share]:
    """Percentages: the marked ones, or else all numbers that are about nothing else."""
    marked = [
        p
        for at, p in enumerate(pieces)
        if isinstance(p, Amount) and (_percent_after(pieces, at) or _percent_before(pieces, at))
    ]
    if marked:
        return [_marked(p) for p in marked]
    free = [
        at
        for at, p in enumerate(pieces)
        if isinstance(p, Amount)
        and _sort(pieces, at + 1) not in (*_OTHER_THINGS, Sort.LOTS)
        and _sort(pieces, at - 1) is not Sort.MONTH
    ]
    return [_bare(pieces, at) for at in free]


def _percent_after(pieces: tuple[Piece, ...], at: int) -> bool:
    return at + 1 < len(pieces) and _is_percent(pieces[at + 1])


def _percent_before(pieces: tuple[Piece, ...], at: int) -> bool:
    if at == 0 or not _is_percent(pieces[at - 1]):
        return False
    return at < 2 or not isinstance(pieces[at - 2], Amount)


def _marked(amount: Amount) -> Share:
    value = amount.other if amount.other is not None and amount.other <= 100 else amount.value
    below_one = 0 < value <= 1 and not amount.is_words
    doubt = Reason.SLIP if amount.slip else Reason.UNUSUAL if below_one else Reason.NONE
    return Share(value, doubt=doubt)


def _bare(pieces: tuple[Piece, ...], at: int) -> Share:
    """A number without a sign: 85, 0.85, half, 85 sprouted."""
    amount = pieces[at]
    assert isinstance(amount, Amount)
    if amount.slip or amount.odd or amount.other is not None:
        return Share(amount.value, doubt=Reason.SLIP)
    if amount.is_fraction and amount.value <= 1:
        return Share(amount.value * 100)
    if 0 < amount.value < 1:
        return Share(amount.value * 100, doubt=Reason.UNUSUAL)
    after = pieces[at + 1] if at + 1 < len(pieces) else None
    counted = _sort(pieces, at + 1) is Sort.SEEDS or _sort(pieces, at - 1) is Sort.SEEDS
    if counted or (isinstance(after, Item) and after.is_strange):
        return Share(amount.value, doubt=Reason.MISSING_UNIT)
    unusual = amount.value < LEAST_SURE_PERCENT
    return Share(amount.value, doubt=Reason.UNUSUAL if unusual else Reason.NONE)


def _mean(
    shares: list[Share], sorts: set[Sort | None], doubt: Reason, lexicon: Lexicon
) -> Reading[float]:
    """One figure for all the lots: of all the seeds, where they were counted."""
    if any(
        share.doubt is Reason.IMPOSSIBLE or not 0 <= share.percent <= 100 for share in shares
    ):
        return again(Reason.IMPOSSIBLE)
    if all(share.total for share in shares):
        counted = sum((s.count or Fraction(0) for s in shares), Fraction(0))
        percent = counted / sum((s.total or Fraction(0) for s in shares), Fraction(0)) * 100
    else:
        percent = sum((s.percent for s in shares), Fraction(0)) / len(shares)
    if (percent * 10000).denominator != 1:
        percent = Fraction(round(percent * 100), 100)
    words, value = percent_words(percent, lexicon), float(percent)
    own = next((s.doubt for s in shares if s.doubt is not Reason.NONE), Reason.NONE)
    if (
        own is Reason.NONE
        and len(shares) == 2
        and Sort.LOTS not in sorts
        and not shares[0].total
    ):
        own = Reason.TWO_VALUES
    reason = own if own is not Reason.NONE else doubt
    return (
        confirm(value, words, reason) if reason is not Reason.NONE else understood(value, words)
    )
