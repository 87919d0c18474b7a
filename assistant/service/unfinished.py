"""A sign-up that was left open gets one kind text with its open question, and never a second.

Only who wrote by SMS has one: a phone that dialled by mistake, and was answered on its screen,
is left in peace. Who refused or sent STOP has no open sign-up any more.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from assistant.channel import Channel
from assistant.dialogue.conversations import SIGNUP, TABLES
from assistant.dialogue.engine import ask
from assistant.dialogue.values import Kind
from assistant.service.house import House
from assistant.service.known import know
from assistant.service.texts import Letter, after_quiet, post
from assistant.store import Work
from assistant.wording import messages_talk as m

LOOKED = "unfinished"
EVERY = timedelta(hours=1)
# Common practice, no source: long enough that nobody is pressed, soon enough that the person
# still knows what they began.
NUDGED_AFTER = timedelta(days=2)
# Later it would come out of nothing: the service stood still meanwhile.
NOT_AFTER = timedelta(days=4)
LASTS = timedelta(days=1)
NUDGED = "nudged"  # among the answers of the talk: who had the text has no other


def left_open(work: Work, house: House, now: datetime) -> Sequence[str]:
    """The phones of sign-ups that wait for an answer since two days. Looked for once an hour:
    nobody waits for it, and most looks of a process ask the database nothing."""
    at, phones = house.recent.find(
        LOOKED, now, lambda: _found(work, house, now), lambda _: True
    )
    return phones if at == now else ()


def _found(work: Work, house: House, now: datetime) -> Sequence[str]:
    before = work.running.pulse(LOOKED)
    if before is not None and timedelta(0) <= now - before < EVERY:
        return ()
    if after_quiet(house, house.zone, now) > now:
        return ()
    work.running.beat(LOOKED, now)
    return work.talks.resting(SIGNUP.name, now - NOT_AFTER, now - NUDGED_AFTER)


def nudge(work: Work, house: House, phone: str, now: datetime) -> None:
    """Asks the open question once more, unless somebody has answered or agreed meanwhile."""
    work.lock(phone)
    session = work.talks.session(phone)
    if session is None or session.conversation != SIGNUP.name or NUDGED in session.answers:
        return
    if work.people.on_roll(phone) is not None or not _wrote(work, phone, now):
        return
    known = know(work, house, phone, "", Channel.SMS, (), now)
    text = ask(session, known, TABLES, m.NUDGE())
    letter = Letter(
        phone=phone,
        language=known.catalogue.language,
        says=text.says,
        kind=Kind.CONSENT,
        not_after=now + LASTS,
        focus=text.focus,
    )
    post(work, house, letter, now)
    answers = {**session.answers, NUDGED: True}
    work.talks.keep_session(phone, replace(session, answers=answers), now)


def _wrote(work: Work, phone: str, now: datetime) -> bool:
    """Whether the phone was answered by SMS while it signed up."""
    return bool(work.outbox.replies(phone, now - NOT_AFTER - EVERY))
