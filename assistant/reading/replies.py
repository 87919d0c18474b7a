"""A reply to an open question, where the person may as well wish for something else."""

from collections.abc import Mapping
from datetime import date

from assistant.reading.answers import read_confirm, read_count, read_litres
from assistant.reading.areas import read_area
from assistant.reading.dates import read_date
from assistant.reading.lexicon import Lexicon
from assistant.reading.outcomes import Ask, Outcome, Reading, Wish
from assistant.reading.percents import read_germination
from assistant.reading.wishes import read_wish

Answer = Reading[float] | Reading[date] | Reading[str] | Reading[Wish]


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

    An answer that was understood goes before a wish; a bare 0 and STOP go before everything.
    """
    wish = read_wish(text, lexicons, language, ask)
    if ask is Ask.COMMAND:
        return wish
    sure = wish.outcome is Outcome.UNDERSTOOD
    if sure and wish.value in (Wish.STOP, Wish.BACK):
        return wish
    answer = read_answer(text, ask, lexicons[language], today, region, past)
    if answer.outcome is Outcome.UNDERSTOOD or wish.outcome is Outcome.AGAIN:
        return answer
    return wish if sure or answer.outcome is Outcome.AGAIN else answer


def read_answer(
    text: str,
    ask: Ask,
    lexicon: Lexicon,
    today: date,
    region: str | None = None,
    past: bool = False,
) -> Answer:
    """The answer to a question of this kind."""
    if ask is Ask.AREA:
        return read_area(text, lexicon, region)
    if ask is Ask.DATE:
        return read_date(text, lexicon, today, past)
    plain = {
        Ask.GERMINATION: read_germination,
        Ask.COUNT: read_count,
        Ask.LITRES: read_litres,
        Ask.CONFIRM: read_confirm,
    }
    return plain[ask](text, lexicon)
