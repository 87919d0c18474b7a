"""Answers to a phone that writes without end: a machine that answers back, or somebody who
spends the programme's money. What is written is kept and heard all the same; only the answers
become few, then none; unknown numbers together have so many an hour. No first danger, STOP or
answer to a warning is ever counted out; of cries twenty answers an hour, then one each ten
minutes where the words are the very same, and one in a few minutes where they change and the
answer does not.
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
from assistant.store import PRIVATE, Lane, OutboxText, Work
from assistant.wording import messages_talk as m

HOUR, DAY = timedelta(hours=1), timedelta(days=1)
# Common practice, no source: a whole plan takes about ten texts, a sign-up five more.
MOST_AN_HOUR, MOST_A_DAY = 40, 150
MOST_A_DAY_TO_STRANGERS = 10  # a slip or two while signing up
SAME_IN, SAME_TIMES = timedelta(minutes=10), 4  # people change their words; machines do not
# The very same cry: so many answers an hour, then one each while. Common practice, no source:
# who is in need has the words by then, and an officer the call; a machine would go on for ever.
MOST_CRIES, CRY_AGAIN = 20, timedelta(minutes=10)
# The same where the words change and the answer does not; who said few things and says another
# is no machine.
CRY_SOON, FEW_WORDS = timedelta(minutes=3), 3

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
        again = _cries(outcome) and _is_machine(
            work, known.phone, worded(house, texts[0].says, language), now
        )
        return () if again else texts
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


def _is_machine(work: Work, phone: str, answer: str, now: datetime) -> bool:
    """Whether a cry has an answer that a phone had again and again within the hour, and just
    now. Never a first cry, nor one that has another answer, nor new words after few others."""
    heard = work.story.heard(phone, MOST_CRIES + 1, now - HOUR)  # this one is the first of them
    if len(heard) <= MOST_CRIES:
        return False
    this, *before = (each.text for each in heard)
    if this not in before and len(set(before)) <= FEW_WORDS:
        return False
    answers = work.outbox.replies(phone, now - HOUR)
    if {this} == set(before):
        return any(each.created_at > now - CRY_AGAIN for each in answers)
    grave = [each for each in answers if each.lane == Lane.DANGER]
    lately = (each.text for each in grave if each.created_at > now - CRY_SOON)
    return len(grave) >= MOST_CRIES and any(answer in text for text in lately)


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
    which they have had a text, for as many texts as signing up takes."""
    signs_up = known.session is not None and 0 < len(sent) < MOST_A_DAY_TO_STRANGERS
    return not (known.farmer or known.desk or signs_up)


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
