"""Germination [percent, 0-100]: a percentage, a count of a total, several lots, or words.

Read back: 0.85, a number under 10 without a sign, two lots, a low count without its total, a
count of the dead. Asked again: over 100, a range, "not" and "many".
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from assistant.reading.numbers import (
    NUMBER_SORTS,
    amounts,
    is_broken,
    number_items,
    tokens_of,
)
from assistant.reading.outcomes import (
    Outcome,
    Reading,
    Reason,
    again,
    confirm,
    slipped,
    understood,
)
from assistant.reading.pieces import Row
from assistant.reading.ratios import parted
from assistant.reading.shares import (
    LEAST_SURE_COUNT,
    Share,
    find_shares,
    is_percent,
    split_lots,
)
from assistant.reading.text.echo import percent_words
from assistant.reading.text.fold import LONGEST_REPLY, Token
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item

_SORTS = (
    Sort.PERCENT,
    Sort.FROM,
    Sort.OF,
    Sort.SEEDS,
    Sort.LOTS,
    *NUMBER_SORTS,
    Sort.NONE,
    Sort.ALL,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.DEAD,
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
_DULL = (Sort.FILLER, Sort.FARM, Sort.GREETING, Sort.ARTICLE)
_MARKS = "/-%,:;()+&~=."


def read_germination(text: str, lexicon: Lexicon) -> Reading[float]:
    """Seeds that sprout, in percent [0-100]."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found, has_slip = lexicon.mend(text)
    apart = parted(found, lexicon)
    reading = read_germination_tokens(apart, lexicon)
    if len(apart) > len(found) and reading.outcome is Outcome.UNDERSTOOD:
        reading = replace(reading, outcome=Outcome.CONFIRM, reason=Reason.AMBIGUOUS)
    return slipped(reading, has_slip)


def read_germination_tokens(found: Sequence[Token], lexicon: Lexicon) -> Reading[float]:
    """As `read_germination`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    row = _row(split_lots(found), lexicon)
    if row is None:
        return again(Reason.NOT_READ)
    if row.has_sign() or any(row.unread_digits(at) for at in range(len(row.pieces))):
        return again(Reason.IMPOSSIBLE)
    return _of_numbers(row) if row.numbers() else _of_words(row)


def percent_spans(found: Sequence[Token], lexicon: Lexicon) -> frozenset[int]:
    """The places of the tokens that surely speak of germination."""
    row = _row(found, lexicon)
    places: set[int] = set()
    for at in range(len(row.pieces) if row else 0):
        if row and (is_percent(row, at) or row.sort(at) in (Sort.OF, Sort.FROM)):
            near = _pair(row, at) if row.sort(at) in (Sort.OF, Sort.FROM) else _signed(row, at)
            kept = [piece for spot in near if (piece := row.get(spot)) is not None]
            places.update(token.at for piece in kept for token in tokens_of(piece))
    return frozenset(places)


def _signed(row: Row, at: int) -> tuple[int, ...]:
    """A percent sign and its number: the one before, or else the one after."""
    if row.amount(at - 1):
        return (at - 1, at)
    return (at, at + 1) if row.amount(at + 1) else ()


def _pair(row: Row, at: int) -> tuple[int, ...]:
    """The numbers that an "of" stands between, and itself."""
    if row.amount(at - 1) and row.amount(at + 1):
        return (at - 1, at, at + 1)
    return ()


def _row(found: Sequence[Token], lexicon: Lexicon) -> Row | None:
    row = number_items(found, lexicon, _SORTS, (Sort.PERCENT,))
    if is_broken(row, _MARKS):
        return None
    pieces = amounts(row, lexicon)
    kept = (p for p in pieces if not (isinstance(p, Item) and p.sort in _DULL))
    return Row(tuple(kept), lexicon)


def _of_words(row: Row) -> Reading[float]:
    """All, none; nearly all and many are no number."""
    sorts = row.sorts()
    if Sort.NOT_KNOWN in sorts:
        return again(Reason.NOT_KNOWN)
    told = sorts & {Sort.ALL, Sort.NONE}
    vague = sorts & {Sort.ABOUT, Sort.ROUGH, Sort.NOT, Sort.NO, Sort.DEAD}
    strange = any(row.strange(at) for at in range(len(row.pieces)))
    if len(told) != 1 or vague or strange:
        return again(Reason.NOT_READ)
    percent = Fraction(100 if Sort.ALL in told else 0)
    return confirm(float(percent), percent_words(percent, row.lexicon), Reason.UNUSUAL)


def _of_numbers(row: Row) -> Reading[float]:
    sorts = row.sorts()
    shares = find_shares(row)
    if sorts & {Sort.NOT, Sort.DEAD} or row.sorts(1) & {Sort.NO, Sort.NONE}:
        return _of_the_dead(row, shares)
    if Sort.RANGE in sorts or _has_span(row):
        return again(Reason.TWO_VALUES)
    if not shares:
        return again(Reason.NOT_READ)
    if len(shares) > 1 and any(share.doubt is Reason.UNUSUAL for share in shares):
        return again(Reason.TWO_VALUES)
    asks = any(row.mark(at, "?<>") for at in range(len(row.pieces)))
    more = any(row.mark(at, "+") and row.amount(at - 1) for at in range(len(row.pieces)))
    doubts = sorts & {Sort.ROUGH, Sort.NOT_KNOWN} or Sort.SORRY in row.sorts(1)
    rough = asks or more or doubts or row.opens_with_not() or row.has_loose_sign()
    return _mean(row, shares, Reason.ROUGH if rough else Reason.NONE)


def _of_the_dead(row: Row, shares: list[Share]) -> Reading[float]:
    """17 of 100 did not sprout: 83 did, if that is what was meant."""
    one = shares[0] if len(shares) == 1 else None
    if one is None or one.total is None or one.doubt or not 0 <= one.percent <= 100:
        return again(Reason.NEGATED)
    percent = _rounded(100 - one.percent)
    return confirm(float(percent), percent_words(percent, row.lexicon), Reason.NEGATED)


def _has_span(row: Row) -> bool:
    """85-90, 85 up to 90."""
    return any(
        (row.mark(at, "-~") or row.sort(at) is Sort.ROUGH)
        and row.amount(at - 1) is not None
        and row.amount(at + 1) is not None
        for at in range(len(row.pieces))
    )


def _mean(row: Row, shares: list[Share], doubt: Reason) -> Reading[float]:
    """One figure for all the lots: of all the seeds, where every lot was counted."""
    sorts, lexicon = row.sorts(), row.lexicon
    has_strange = any(row.strange(at) for at in range(len(row.pieces)))
    if any(
        share.doubt is Reason.IMPOSSIBLE or not 0 <= share.percent <= 100 for share in shares
    ):
        return again(Reason.IMPOSSIBLE)
    percent = _rounded(_of_all(shares))
    words, value = percent_words(percent, lexicon), float(percent)
    own = next((share.doubt for share in shares if share.doubt), doubt)
    if not own and percent < LEAST_SURE_COUNT and has_strange:
        own = Reason.UNUSUAL  # the word that we do not know may be "rotten"
    if not own and len(shares) == 2 and Sort.LOTS not in sorts and shares[0].total is None:
        own = Reason.TWO_VALUES
    return confirm(value, words, own) if own else understood(value, words)


def _of_all(shares: list[Share]) -> Fraction:
    counts = [share.count for share in shares if share.count is not None]
    totals = [share.total for share in shares if share.total is not None]
    if len(totals) == len(shares) == len(counts):
        return sum(counts, Fraction(0)) / sum(totals, Fraction(0)) * 100
    return sum((share.percent for share in shares), Fraction(0)) / len(shares)


def _rounded(percent: Fraction) -> Fraction:
    """To a hundredth where no short decimal holds it: shown and kept alike."""
    return (
        percent if (percent * 10_000).denominator == 1 else Fraction(round(percent * 100), 100)
    )
