"""Whether a task was done, from a reply to the text that asked for it.

Stricter than the answer to a question that waits for a yes: such a text is followed by all
kinds of talk, and what is wrongly taken as done moves a plan and ends the asking. Sure is only
what says nothing else.
"""

from dataclasses import replace
from datetime import date

from assistant.reading.confirms import FORGIVING, NOT_YET, SORTS, YES, read_confirm
from assistant.reading.dates import read_date
from assistant.reading.outcomes import Outcome, Reading, Reason
from assistant.reading.text.fold import read_tokens
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item, items

_FIRM = (Sort.DONE, Sort.DEED, Sort.NOT_YET)
_TICKS = "✅✔☑✓"
_TALK = (Sort.FARM, Sort.SEEDS, Sort.UNIT)  # "I have the seed", "no water"
_OF_DAYS = (
    Sort.DAY,
    Sort.EITHER_DAY,
    Sort.MONTH,
    Sort.WEEKDAY,
    Sort.NEXT,
    Sort.LAST,
    Sort.THIS,
    Sort.AGO,
    Sort.LATER,
    Sort.EDGE,
    Sort.DAYS,
    Sort.MONTH_WORD,
    Sort.DATE_WORD,
    Sort.YEAR_WORD,
    Sort.ORDINAL,
    Sort.CLOCK,
    Sort.NUMBER,
    Sort.ARTICLE,
    Sort.JOIN,
    Sort.FILLER,
)


def read_told(text: str, lexicon: Lexicon, digits: bool = True) -> Reading[str]:
    """As `read_confirm`; to be confirmed where other words stand beside the answer ("done with
    ploughing", "no money for seed"), or where it only says that the text was read ("ok")."""
    reading = read_confirm(text, lexicon, digits)
    row = items(read_tokens(text), lexicon, (*SORTS, *_TALK), FORGIVING)
    if reading.value is None or any(item.is_digits for item in row):
        return reading
    if any(item.is_strange for item in row) or _only_talks(row) or _perhaps_another(row):
        return _unsure(reading, Reason.NOT_READ)
    if reading.outcome is Outcome.CONFIRM:
        put_off = reading.value == NOT_YET and reading.reason is Reason.ROUGH  # "tomorrow"
        sure = put_off or reading.reason is Reason.NOT_READ  # strange there were seeds only
        return replace(reading, outcome=Outcome.UNDERSTOOD) if sure else reading
    if reading.value == YES and not _says_yes(row, lexicon):
        return _unsure(reading, Reason.ROUGH)
    return reading


def read_told_day(text: str, lexicon: Lexicon, today: date) -> date | None:
    """The day gone by that words name which say nothing else. Of a word for yesterday and
    tomorrow alike (kal) the former: it tells of what was done."""
    row = items(read_tokens(text), lexicon, _OF_DAYS)
    if text.isdigit() or any(item.is_strange for item in row):
        return None
    reading = read_date(text, lexicon, today, past=True)
    if reading.outcome is Outcome.UNDERSTOOD:
        return reading.value
    if reading.reason is not Reason.AMBIGUOUS or len(reading.options) != 2:
        return None
    gone = [each.value for each in reading.options if each.value < today]
    return gone[0] if len(gone) == 1 else None


def _unsure(reading: Reading[str], reason: Reason) -> Reading[str]:
    return replace(reading, outcome=Outcome.CONFIRM, reason=reason)


def _only_talks(row: tuple[Item, ...]) -> bool:
    """No word for done or not yet, and things of the farm beside a yes or no."""
    sorts = {item.sort for item in row}
    return not sorts & {*_FIRM} and bool(sorts & {*_TALK})


def _perhaps_another(row: tuple[Item, ...]) -> bool:
    """A misspelt answer beside other words: nimenunua is bought, nimefunua uncovered."""
    return len(row) > 1 and any(item.misspelt for item in row)


def _says_yes(row: tuple[Item, ...], lexicon: Lexicon) -> bool:
    """Whether a yes is one: "ok" may only mean that the text was read."""
    return any(
        lexicon.has(Sort.PLAIN_YES, item.phrase[:1]) or item.text in _TICKS
        for item in row
        if item.sort is Sort.YES
    )
