"""The germination results that a reply names: percentages, counts of a total, lots."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from assistant.reading.numbers import Amount
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.fold import Token, TokenKind
from assistant.reading.text.lexicon import Sort

LEAST_SURE_PERCENT = 10  # a smaller bare number is likelier a slip, or a count
# "85 sprouted": of the hundred seeds of the test that we teach. A lower count is as likely to
# be of fifty, and is read back. A design choice.
LEAST_SURE_COUNT = 60
_TWO = re.compile(r"\d\d[.,]\d\d")
_ABOUT_ELSE = (Sort.OTHER_UNIT, Sort.UNIT, Sort.MONTH, Sort.DAYS)
_ROUND = frozenset({4, 5, 10, 20, 50, 100})  # what seeds are counted out of
_MOST_LOTS = 12  # "4 lots": a greater number before the word is a result


@dataclass(frozen=True)
class Share:
    """One lot's result, in percent, and the counts it came from where they were told."""

    percent: Fraction
    count: Fraction | None = None
    total: Fraction | None = None
    doubt: Reason = Reason.NONE


def split_lots(found: Sequence[Token]) -> tuple[Token, ...]:
    """81,79,85,80 as four numbers: more than one comma is a list here."""
    cut_up: list[Token] = []
    for token in found:
        parts = token.text.split(",")
        if token.is_number and len(parts) > 2 and "." not in token.text:
            cut_up += [Token(p, TokenKind.NUMBER, False, token.at) for p in parts if p]
        else:
            cut_up.append(token)
    return tuple(cut_up)


def is_percent(row: Row, at: int) -> bool:
    """Whether a percent sign or word stands there."""
    return row.sort(at) is Sort.PERCENT or row.mark(at, "%")


def find_shares(row: Row) -> list[Share]:
    """All results of the reply; none where its numbers do not make sense together."""
    counted, used = _counts(row)
    numbers = row.numbers()
    if not counted:
        return _percents(row, numbers)
    loose = [at for at in numbers if at not in used]
    return [] if any(_is_free(row, at) for at in loose) else counted


def _counts(row: Row) -> tuple[list[Share], set[int]]:
    """41 of 50, 41/50, "of 50, 41"; and the places of the numbers that they use."""
    shares: list[Share] = []
    used: set[int] = set()
    for at in range(len(row.pieces)):
        amount = row.amount(at)
        if amount is not None and amount.ratio:
            shares.append(_share(*amount.ratio, is_slash=True))
            used.add(at)
        elif row.sort(at) in (Sort.OF, Sort.FROM) and (pair := _around(row, at)):
            if not used & set(pair):
                count, total = (row.amount(place) for place in pair)
                if count and total:
                    shares.append(_share(count.value, total.value, is_slash=False))
                    used |= set(pair)
    return shares, used


def _around(row: Row, at: int) -> tuple[int, int] | None:
    """The places of the count and the total that an "of" joins."""
    left, right = _amount_near(row, at, -1), _amount_near(row, at, 1)
    if left is not None and right is not None:
        total_first = row.sort(at) is Sort.FROM and not _is_of_total(row, left, right)
        return (right, left) if total_first else (left, right)
    if right is not None and (later := _amount_near(row, right, 1)) is not None:
        return later, right
    return None


def _is_of_total(row: Row, left: int, right: int) -> bool:
    """ "Eight of every ten", with a word that else follows the total: "of every ten, eight"."""
    count, total = row.amount(left), row.amount(right)
    return count is not None and total is not None and count.value < total.value in _ROUND


def _amount_near(row: Row, at: int, step: int) -> int | None:
    """The nearest number on one side, with only words of seed or strange words between."""
    at += step
    while row.get(at) is not None:
        amount = row.amount(at)
        if amount is not None:
            return None if amount.is_fraction else at
        passes = row.sort(at) in (Sort.SEEDS, Sort.OF, Sort.FROM, Sort.NOT, Sort.NO, Sort.DEAD)
        if not passes and not row.mark(at, ",:") and not row.strange(at):
            return None
        at += step
    return None


def _share(count: Fraction, total: Fraction, is_slash: bool) -> Share:
    if total <= 0 or count > total:
        return Share(Fraction(-1), count, total, Reason.IMPOSSIBLE)
    may_be_lots = is_slash and count >= 50 and 50 < total < 100
    doubt = Reason.AMBIGUOUS if may_be_lots or total.denominator != 1 else Reason.NONE
    return Share(count / total * 100, count, total, doubt)


def _percents(row: Row, numbers: list[int]) -> list[Share]:
    """The marked percentages, or else all numbers that are about nothing else."""
    marked = [at for at in numbers if _is_marked(row, at)]
    if marked:
        return [_marked(amount) for at in marked if (amount := row.amount(at))]
    free = [at for at in numbers if _is_free(row, at)]
    pair = [amount.value for at in free if (amount := row.amount(at))]
    if len(pair) == 2 and Sort.SEEDS in row.sorts() and _is_sample(max(pair)):
        share = _share(min(pair), max(pair), is_slash=False)
        return [replace(share, doubt=Reason.AMBIGUOUS)]
    return [_bare(row, at, amount) for at in free if (amount := row.amount(at))]


def _is_sample(total: Fraction) -> bool:
    """Whether seeds are counted out in such a number: 50 seeds, 41 sprouted; "ten seeds, eight
    sprouted" are no lots of 10 % and 8 %."""
    return total in _ROUND or total >= 20 and (total % 10 == 0 or total % 25 == 0)


def _is_marked(row: Row, at: int) -> bool:
    """85%, asilimia 85; in "85% 90" the sign belongs to the first."""
    before = is_percent(row, at - 1) and row.amount(at - 2) is None
    return is_percent(row, at + 1) or before


def _is_free(row: Row, at: int) -> bool:
    """Whether a number is a result: not of days or kilograms, nor the 2 of "lot 2: 85"."""
    return (
        row.sort(at + 1) not in _ABOUT_ELSE
        and row.sort(at - 1) is not Sort.MONTH
        and not _is_about_lots(row, at)
    )


def _is_about_lots(row: Row, at: int) -> bool:
    """The 4 of "4 lots", the 2 of "lot 2: 85"."""
    amount = row.amount(at)
    if amount is None or amount.value > _MOST_LOTS:
        return False
    named = row.sort(at - 1) is Sort.LOTS and row.amount(at + 1 + row.mark(at + 1, ":="))
    return row.sort(at + 1) is Sort.LOTS or bool(named)


def _marked(amount: Amount) -> Share:
    value = amount.value
    if amount.other is not None and value > 100 >= amount.other:
        value = amount.other
    is_share = 0 < value <= 1 and not amount.is_words
    if amount.is_slip or amount.is_odd:
        return Share(value, doubt=Reason.SLIP)
    return Share(value, doubt=Reason.UNUSUAL if is_share else Reason.NONE)


def _may_be_two(amount: Amount) -> bool:
    """85,90 without a sign: one number or two."""
    return len(amount.items) == 1 and bool(_TWO.fullmatch(amount.items[0].key))


def _bare(row: Row, at: int, amount: Amount) -> Share:
    """A number without a sign: 85, 0.85, half, 85 sprouted."""
    value = amount.value
    if amount.is_slip or amount.is_odd or amount.other is not None or _may_be_two(amount):
        return Share(value, doubt=Reason.SLIP)
    if amount.is_fraction and value <= 1:
        return Share(value * 100)
    if 0 < value < 1:
        return Share(value * 100, doubt=Reason.UNUSUAL)
    seeds = Sort.SEEDS in (row.sort(at + 1), row.sort(at - 1)) or row.strange(at + 1)
    if seeds and value < LEAST_SURE_COUNT:
        return Share(value, doubt=Reason.MISSING_UNIT)
    return Share(value, doubt=Reason.UNUSUAL if value < LEAST_SURE_PERCENT else Reason.NONE)
