"""One incoming message, one transaction: kept once, read, answered, its changes made.

A repeat of a message changes nothing and gets the same answer. A fault of ours keeps the
message, apologises, and is logged. Where the database is away nothing is kept, and the gateway
is told to send the same again: an apology then would lose a STOP or a cry for help.
"""

import logging
from dataclasses import replace
from datetime import datetime, timedelta
from time import perf_counter

from assistant.alphabet import cost, plain
from assistant.channel import Channel, Incoming, Screen, Step
from assistant.dialogue.invited import NAMES as INVITED_TALKS
from assistant.dialogue.officer import without_any_code, without_code
from assistant.dialogue.turns import open_line, turn
from assistant.dialogue.values import Focus, Kind, Known, NoteUnread, RaiseAlarm, Text, Turn
from assistant.service.effects import Scene, carry_out
from assistant.service.floods import bounded, is_grave
from assistant.service.house import House
from assistant.service.inquiries import count_inquiries
from assistant.service.known import at_hand, know
from assistant.service.privacy import confirms
from assistant.service.reached import likeliest_first
from assistant.service.texts import REPLY_LASTS, Letter, post, worded
from assistant.store import PRIVATE, DatabaseAwayError, Lane, UssdTalk, Work
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording.screens import Hints, pages

log = logging.getLogger(__name__)

# Operators repeat a message for some days; a time beside that is of a clock that is wrong.
OLDEST, AHEAD = timedelta(days=7), timedelta(minutes=5)
MORE, BACK = "9", "0"
CODES = {o.CODE_WAY_BACK, o.NEXT_CODE}
_NO_WAY_BACK = {"signup", "menu", *INVITED_TALKS}


def receive(house: House, incoming: Incoming, now: datetime) -> Screen | None:
    """Takes a message in; the screen that answers it where it came by USSD.

    Raises:
        DatabaseAwayError: nothing is kept; the gateway should send the same again.
    """
    begun = perf_counter()
    incoming = replace(incoming, at=believed(incoming.at, now))
    screen = _received(house, incoming, now)
    house.meter.turned(incoming.channel, perf_counter() - begun)
    return screen


def believed(at: datetime, now: datetime) -> datetime:
    """When a message was written: its own word, where an operator's delay explains it."""
    return at if now - OLDEST <= at <= now + AHEAD else now


def _received(house: House, incoming: Incoming, now: datetime) -> Screen | None:
    try:
        with house.store.work() as work:
            work.lock(incoming.phone)
            at_hand(work, incoming.phone, now)  # first: what follows asks for parts of it
            seen = work.inbox.take(incoming, _kept_text(work, incoming), now)
            if not seen.new:
                return seen.answer
            screen = _answer(work, house, incoming, now)
            if screen is not None:
                work.inbox.keep_answer(incoming.gateway_id, screen)
            return screen
    except DatabaseAwayError:
        raise
    except OSError as fault:  # the journal of STOPs could not be written
        raise DatabaseAwayError(f"expected the journal to be written, got {fault}") from fault
    except Exception:
        log.exception("the message %s could not be answered", incoming.gateway_id)
        return _apologise(house, incoming, now)


def _kept_text(work: Work, incoming: Incoming) -> str:
    """The text as it may be written down. An officer's code is blanked wherever it stands."""
    if work.people.officer(incoming.phone) is not None:
        return without_any_code(incoming.text)
    return without_code(incoming.text)


def _answer(work: Work, house: House, incoming: Incoming, now: datetime) -> Screen | None:
    if incoming.channel is Channel.SMS:
        _answer_text(work, house, incoming, now)
        return None
    if incoming.step is Step.END:
        work.talks.end_ussd(_session_of(work, incoming)[0])
        return None
    return _answer_screen(work, house, incoming, now)


# --- SMS -------------------------------------------------------------------------------------


def _answer_text(work: Work, house: House, incoming: Incoming, now: datetime) -> None:
    if confirms(work, house, incoming.phone, incoming.text, now):
        return
    texts = likeliest_first(work.outbox.numbered(incoming.phone))
    focuses = tuple(text.focus for text in texts if text.focus is not None)
    known = know(work, house, incoming.phone, incoming.text, incoming.channel, focuses, now)
    outcome = turn(incoming.text, known)
    _keep(work, house, outcome, incoming, known, now)
    language = _language(outcome, known)
    private = _is_private(outcome)
    answers = bounded(work, house, outcome, known, language, now)
    grave = is_grave(outcome, known)
    for text in _joined(house, answers, language):
        _post(work, house, incoming.phone, text, language, now, private, grave)


def _joined(house: House, texts: tuple[Text, ...], language: str) -> tuple[Text, ...]:
    """Texts that fit one segment together go together; each SMS costs."""
    found: list[Text] = []
    for text in texts:
        says = (*found[-1].says, *text.says) if found else text.says
        if found and cost(worded(house, says, language)).segments == 1:
            found[-1] = Text(says, text.focus or found[-1].focus)
        else:
            found.append(text)
    return tuple(found)


def _keep(
    work: Work, house: House, outcome: Turn, incoming: Incoming, known: Known, now: datetime
) -> None:
    if outcome.session is not None or at_hand(work, incoming.phone, now).talk is not None:
        work.talks.keep_session(incoming.phone, outcome.session, now)
    scene = Scene(work, house, incoming.phone, incoming.channel, now, incoming.gateway_id)
    carry_out(outcome.changes, scene)
    count_inquiries(work, house, outcome.inquiries, known.farmer, now)
    if known.unread and not any(isinstance(each, NoteUnread) for each in outcome.changes):
        work.calls.read_again(incoming.phone)


def _is_private(outcome: Turn) -> bool:
    """Whether the answer shows what only one person and the leads may know."""
    alarms = (each for each in outcome.changes if isinstance(each, RaiseAlarm))
    said = {say.message for text in outcome.texts for say in text.says}
    return any(each.kind == PRIVATE for each in alarms) or bool(said & CODES)


def _language(outcome: Turn, known: Known) -> str:
    return outcome.language or known.catalogue.language


def _post(
    work: Work,
    house: House,
    phone: str,
    text: Text,
    language: str,
    now: datetime,
    private: bool = False,
    grave: bool = False,
) -> None:
    letter = Letter(
        phone=phone,
        language=language,
        says=text.says,
        kind=Kind.REPLY,
        not_after=now + REPLY_LASTS,
        focus=text.focus,
        private=private,
        lane=Lane.DANGER if grave else None,
    )
    post(work, house, letter, now)


# --- USSD ------------------------------------------------------------------------------------


def _session_of(work: Work, incoming: Incoming) -> tuple[str, UssdTalk | None]:
    """The session by this phone, and what is kept of it. Operators use their ids again, after
    a restart for one: the pages of another phone are shown to nobody else, and not ended by
    them."""
    session_id = incoming.session_id or incoming.gateway_id
    kept = work.talks.ussd(session_id)
    if kept is None or kept.phone == incoming.phone:
        return session_id, kept
    own = f"{session_id} {incoming.phone}"
    return own, work.talks.ussd(own)


def _answer_screen(work: Work, house: House, incoming: Incoming, now: datetime) -> Screen:
    session_id, kept = _session_of(work, incoming)
    talk = kept if incoming.step is Step.ANSWER else None
    turned = _turn_page(talk, incoming.text.strip()) if talk else None
    if turned is not None:
        work.talks.keep_ussd(turned, now)
        return Screen(turned.pages[turned.page], more=True)
    focuses = (talk.focus,) if talk and talk.focus else ()
    known = know(work, house, incoming.phone, incoming.text, incoming.channel, focuses, now)
    outcome = turn(incoming.text, known) if talk else open_line(known)
    _keep(work, house, outcome, incoming, known, now)
    language = _language(outcome, known)
    for text in outcome.texts:
        if text.keep:
            private, grave = _is_private(outcome), is_grave(outcome, known)
            _post(work, house, incoming.phone, text, language, now, private, grave)
    fresh = _talk(house, session_id, incoming.phone, outcome, language)
    work.talks.keep_ussd(fresh, now)
    return Screen(fresh.pages[0], more=not _is_over(outcome))


def _turn_page(talk: UssdTalk, key: str) -> UssdTalk | None:
    """The next or the earlier page of a long answer, where the key asks for one."""
    last = len(talk.pages) - 1
    if key == MORE and last > 0 and not (talk.page == last and _offers(talk, MORE)):
        return _at(talk, min(talk.page + 1, last))
    if key == BACK and talk.page > 0:
        return _at(talk, talk.page - 1)
    return None


def _offers(talk: UssdTalk, key: str) -> bool:
    """Whether a choice of the page that is shown has this digit."""
    lines = talk.pages[talk.page].splitlines()
    return any(line.startswith(f"{key} ") for line in lines)


def _at(talk: UssdTalk, page: int) -> UssdTalk:
    return UssdTalk(talk.session_id, talk.phone, talk.pages, page, talk.focus)


def _talk(house: House, session_id: str, phone: str, outcome: Turn, language: str) -> UssdTalk:
    says = tuple(say for text in outcome.texts for say in text.says)
    last = outcome.texts[-1].focus if outcome.texts else None
    words = {
        name: worded(house, (message(),), language)
        for name, message in (("more", m.MORE_HINT), ("back", m.BACK_HINT))
    }
    hints = Hints(words["more"], words["back"], _last_hint(house, outcome, last, language))
    screens = pages(plain(worded(house, says, language)), hints, house.limits)
    return UssdTalk(session_id, phone, screens, 0, last)


def _last_hint(house: House, outcome: Turn, focus: Focus | None, language: str) -> str:
    """The way on from the last screen: back within a talk, else to the menu."""
    session = outcome.session
    if _is_over(outcome) or (session and session.conversation in _NO_WAY_BACK):
        return ""
    step = f"{session.conversation}.{session.step}" if session else None
    asks = focus is not None and focus.question is not None and focus.question == step
    message = m.BACK_HINT if asks else m.MENU_HINT
    return worded(house, (message(),), language)


def _is_over(outcome: Turn) -> bool:
    """Whether nothing more can be asked in this session: stopped, or consent refused."""
    said = {say.message for text in outcome.texts for say in text.says}
    return bool(said & {m.STOPPED, m.YOU_ARE_STOPPED, m.NO_CONSENT})


# --- failure ---------------------------------------------------------------------------------


def _hand_on(work: Work, house: House, incoming: Incoming, now: datetime) -> None:
    """Words that our own fault kept from being read may be a cry for help: a person reads
    them. Keys and an officer's texts are not handed on."""
    said = incoming.text.strip()
    if not any(ch.isalpha() for ch in said) or work.people.officer(incoming.phone):
        return
    scene = Scene(work, house, incoming.phone, incoming.channel, now, incoming.gateway_id)
    carry_out((NoteUnread("", _kept_text(work, incoming), passed=True),), scene)


def _apologise(house: House, incoming: Incoming, now: datetime) -> Screen | None:
    with house.store.work() as work:
        work.lock(incoming.phone)
        seen = work.inbox.take(incoming, _kept_text(work, incoming), now)
        if not seen.new:
            return seen.answer
        work.inbox.mark_failed(incoming.gateway_id)
        _hand_on(work, house, incoming, now)
        farmer = work.people.farmer(incoming.phone)
        language = (farmer.language if farmer else None) or house.languages[0]
        sorry = Text((m.SORRY_TROUBLE(),))
        if incoming.channel is Channel.SMS:
            _post(work, house, incoming.phone, sorry, language, now)
            return None
        screen = Screen(worded(house, sorry.says, language), more=False)
        work.inbox.keep_answer(incoming.gateway_id, screen)
        return screen
