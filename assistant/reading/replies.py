"""A reply to an open question, where the person may as well wish for something else."""

from collections.abc import Callable, Mapping
from datetime import date

from assistant.reading.areas import read_area
from assistant.reading.confirms import read_confirm
from assistant.reading.counts import read_count, read_litres
from assistant.reading.dates import read_date
from assistant.reading.outcomes import Ask, Outcome, Reading, Reason, Wish
from assistant.reading.percents import read_germination
from assistant.reading.text.lexicon import Lexicon
from assistant.reading.wishes import read_wish

Answer = Reading[float] | Reading[date] | Reading[str] | Reading[Wish]


# The reader saw nothing of its kind: a wish that is not quite sure may be meant.
_NOTHING_SEEN = frozenset({Reason.NOT_READ, Reason.NOT_KNOWN, Reason.MISSING_NUMBER})


def read_reply(
    text: str,
    ask: Ask,
    lexicons: Mapping[str, Lexicon],
    language: str,
    today: date,
    region: str | None = None,
    past: bool = False,
) -> Answer:
    """The answer to the question, or a wish, whichever was understood best.

    A bare 0 and STOP go before everything, then an answer that was understood, a wish that
    was, an answer to be read back, a wish to be read back.
    """
    wish = read_wish(text, lexicons, language, ask)
    is_sure = wish.outcome is Outcome.UNDERSTOOD
    if ask is Ask.COMMAND or (is_sure and wish.value in (Wish.STOP, Wish.BACK)):
        return wish
    answer = read_answer(text, ask, lexicons[language], today, region, past)
    if answer.outcome is Outcome.UNDERSTOOD or wish.outcome is Outcome.AGAIN:
        return answer
    if is_sure or answer.reason in _NOTHING_SEEN:
        return wish
    return answer


def read_answer(
    text: str,
    ask: Ask,
    lexicon: Lexicon,
    today: date,
    region: str | None = None,
    past: bool = False,
) -> Answer:
    """The answer to a question of this kind (a wish is none: see `read_reply`)."""
    readers: Mapping[Ask, Callable[[], Answer]] = {
        Ask.AREA: lambda: read_area(text, lexicon, region),
        Ask.GERMINATION: lambda: read_germination(text, lexicon),
        Ask.DATE: lambda: read_date(text, lexicon, today, past),
        Ask.COUNT: lambda: read_count(text, lexicon),
        Ask.LITRES: lambda: read_litres(text, lexicon),
        Ask.CONFIRM: lambda: read_confirm(text, lexicon),
    }
    return readers[ask]()
