"""The lines to the phones as a lead sees them, and a text that tries one of them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from assistant.dialogue.values import Kind
from assistant.service.audit import TrailAct, note
from assistant.service.connections import Allows, LineStands, lines_stand
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.texts import Letter, post
from assistant.store import Lane
from assistant.wording import messages_web_lines as words

LASTS = timedelta(minutes=30)


@dataclass(frozen=True)
class LinesPage:
    """How each line stands, with what was set of it; how many texts wait, and since when."""

    lines: tuple[tuple[LineStands, Allows | None], ...]
    waiting: int
    since: datetime | None
    phone: str
    currency: str


def lines_page(
    house: House, sight: Sight, terms: Mapping[str, Allows], now: datetime
) -> LinesPage | None:
    """For a lead; None for anybody else."""
    if not sight.officer.is_lead:
        return None
    stand = lines_stand(house, tuple(terms), terms, now)
    with house.store.look() as work:
        return LinesPage(
            lines=tuple((each, terms.get(each.name)) for each in stand),
            waiting=work.running.waiting(now),
            since=work.running.waiting_since(now),
            phone=sight.officer.phone,
            currency=house.tariff.currency if house.tariff else "",
        )


def try_line(
    house: House, sight: Sight, terms: Mapping[str, Allows], line: str, now: datetime
) -> bool:
    """Puts a text to the lead's own phone into the outbox, by this line alone; False for who is
    no lead, and for a line that is not set."""
    if not sight.officer.is_lead or line not in (tuple(terms) or ("",)):
        return False
    says = words.TEST_TEXT(line=line) if line else words.TEST_OF_ONLY()
    letter = Letter(
        phone=sight.officer.phone,
        language=sight.officer.language,
        says=(says,),
        kind=Kind.NOTICE,
        not_after=now + LASTS,
        urgent=True,
        lane=Lane.ANSWER,
    )
    with house.store.work() as work:
        text = post(work, house, letter, now)
        if line:
            work.lines.took([text.message_id], line)
        note(work, sight.officer.id, TrailAct.LINE_TRIED, now, detail=line)
    return True
