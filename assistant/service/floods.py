"""Answers to a phone that writes without end: a machine that answers back, or somebody who
spends the programme's money. What is written is kept and heard all the same; only the answers
become few, then none; unknown numbers together have so many an hour. No first danger, STOP or answer to a warning is ever counted out; of one
cry in the very same words twenty answers an hour, then one each ten minutes.
"""

from collections.abc import Collection, Iterable
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.dialogue.values import (
    AnswerWarning,
    CallForHelp,
    Decline,
    IssueWarning,
    Known,
    RaiseAlarm,
    SettleAlarm,
    StartTexts,
    StopTexts,
    Text,
    Turn,
)
from assistant.service.brakes import strangers_are_answered
from assistant.service.house import House
from assistant.service.texts import worded
from assistant.store import PRIVATE, OutboxText, Work
from assistant.wording import messages_talk as m

HOUR, DAY = timedelta(hours=1), timedelta(days=1)
# Common practice, no source: a whole plan takes about ten texts, a sign-up five more.
MOST_AN_HOUR, MOST_A_DAY = 40, 150
MOST_A_DAY_TO_STRANGERS = 10  # a slip or two while signing up
SAME_IN, SAME_TIMES = timedelta(minutes=10), 4  # people change their words; machines do not
# The very same cry: so many answers an hour, then one each while. Common practice, no source:
# who is in need has the words by then, and an officer the call; a machine would go on for ever.
MOST_CRIES, CRY_AGAIN = 20, timedelta(minutes=10)

# Whoever says one of these is answered, whatever was said before.
ALWAYS_ANSWERED = (
    RaiseAlarm,
    SettleAlarm,
    StopTexts,
    StartTexts,
    Decline,
    AnswerWarning,
    CallForHelp,
    IssueWarning,
)


def bounded(
    work: Work, house: House, outcome: Turn, known: Known, language: str, now: datetime
) -> tuple[Text, ...]:
    """The answers that still go to this phone: all, one that says that it had many, or none."""
    texts = outcome.texts
    if not texts:
        return texts
    if is_grave(outcome, known):
        return () if _cries(outcome) and _is_machine(work, known.phone, now) else texts
    sent = work.outbox.replies(known.phone, now - DAY)
    if _is_new(known, sent) and not strangers_are_answered(work, house, now):
        return ()
    if _goes_round(house, sent, texts, language, now):
        return ()
    for most, span in _room(known):
        lately = [each.created_at for each in sent if each.created_at > now - span]
        if len(lately) > most:
            return ()
        if len(lately) == most:
            here = (min(lately) + span).astimezone(ZoneInfo(known.zone)).time()
            return (Text((m.MANY_TEXTS(time=here),)),)
    return texts


def _is_machine(work: Work, phone: str, now: datetime) -> bool:
    """Whether a cry is the very text that a phone sent again and again within the hour, and it
    was answered just now. A first cry, and any in other words, is never held."""
    heard = work.story.heard(phone, MOST_CRIES + 1, now - HOUR)  # this one among them
    if len(heard) <= MOST_CRIES or len({each.text for each in heard}) > 1:
        return False
    return any(
        each.created_at > now - CRY_AGAIN for each in work.outbox.replies(phone, now - HOUR)
    )


def _cries(outcome: Turn) -> bool:
    """Whether somebody cries; who wants to die is never taken for a machine."""
    alarms = [each for each in outcome.changes if isinstance(each, RaiseAlarm)]
    return bool(alarms) and all(each.kind != PRIVATE for each in alarms)


def is_grave(outcome: Turn, known: Known) -> bool:
    """Whether an answer leaves whatever was said or spent before: to a danger, a STOP, and to
    an officer at work (a number whose codes are locked may be a forger's)."""
    at_work = known.desk is not None and known.desk.locked_until is None
    return at_work or any(isinstance(each, ALWAYS_ANSWERED) for each in outcome.changes)


def _room(known: Known) -> tuple[tuple[int, timedelta], ...]:
    """How many answers there are, in which time; the longest first."""
    if known.farmer is None and known.session is None:
        return ((MOST_A_DAY_TO_STRANGERS, DAY),)
    return ((MOST_A_DAY, DAY), (MOST_AN_HOUR, HOUR))


def _is_new(known: Known, sent: Collection[OutboxText]) -> bool:
    """Whether nobody knows a phone: neither a farmer nor an officer, and nobody in a talk of
    which they have had a text."""
    return not (known.farmer or known.desk or (known.session and sent))


def _goes_round(
    house: House,
    sent: Iterable[OutboxText],
    texts: tuple[Text, ...],
    language: str,
    now: datetime,
) -> bool:
    """Whether the same was answered again and again just now: the other side is a machine."""
    words = worded(house, texts[0].says, language)
    lately = [each.text for each in sent if each.created_at > now - SAME_IN]
    return lately[-SAME_TIMES:] == [words] * SAME_TIMES
