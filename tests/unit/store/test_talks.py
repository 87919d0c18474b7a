"""Half-finished talks and USSD sessions."""

from dataclasses import replace
from datetime import datetime, timedelta

from sqlalchemy import create_engine, text

from assistant.dialogue.values import Focus, Session
from assistant.store import Store, UssdTalk

_PHONE = "+447700900101"
_SESSION = Session("plan", 1, "pail", {"area_m2": 4000.0, "typed": "0.4 ha"}, ("area",))


def test_a_half_finished_talk_is_kept_until_the_next(store: Store, now: datetime) -> None:
    """One talk for each phone, the latest."""
    further = _SESSION.to("date", pail_litres=20)
    with store.work() as work:
        work.talks.keep_session(_PHONE, _SESSION, now)
        work.talks.keep_session(_PHONE, further, now)
    with store.work() as work:
        assert work.talks.session(_PHONE) == further
        assert work.talks.session("+447700900102") is None


def test_a_talk_that_ended_is_gone(store: Store, now: datetime) -> None:
    """Ending one that never was does no harm."""
    with store.work() as work:
        work.talks.keep_session(_PHONE, _SESSION, now)
        work.talks.keep_session(_PHONE, None, now)
        work.talks.keep_session("+447700900102", None, now)
    with store.work() as work:
        assert work.talks.session(_PHONE) is None


def test_a_talk_that_ended_can_begin_again_in_one_transaction(
    store: Store, now: datetime
) -> None:
    """Starting over is ending and beginning."""
    with store.work() as work:
        work.talks.keep_session(_PHONE, _SESSION, now)
        work.talks.keep_session(_PHONE, None, now)
        work.talks.keep_session(_PHONE, replace(_SESSION, step="area"), now)
        assert work.talks.session(_PHONE) == replace(_SESSION, step="area")


def test_a_talk_of_another_release_is_no_talk(
    store: Store, now: datetime, database_url: str
) -> None:
    """It is overwritten by the next."""
    with store.work() as work:
        work.talks.keep_session(_PHONE, _SESSION, now)
    engine = create_engine(database_url)
    with engine.begin() as connection:
        connection.execute(text("""UPDATE talk SET session = '{"kind": "chat"}'"""))
    engine.dispose()
    with store.work() as work:
        assert work.talks.session(_PHONE) is None
        work.talks.keep_session(_PHONE, _SESSION, now)
        assert work.talks.session(_PHONE) == _SESSION


def test_a_ussd_session_keeps_its_pages_until_it_ends(store: Store, now: datetime) -> None:
    """The next answer replaces the pages of the last."""
    first = UssdTalk("s1", _PHONE, ("1/2 ...", "2/2 ..."), 0, Focus(question="plan.area"))
    turned = replace(first, page=1, focus=None)
    with store.work() as work:
        work.talks.keep_ussd(first, now)
        assert work.talks.ussd("s1") == first
        work.talks.keep_ussd(turned, now)
    with store.work() as work:
        assert work.talks.ussd("s1") == turned
        work.talks.end_ussd("s1")
        assert work.talks.ussd("s1") is None


def test_dropped_ussd_sessions_of_a_phone_are_found_the_latest_first(
    store: Store, now: datetime
) -> None:
    """A dropped session never says that it ended."""
    older, newer = UssdTalk("s1", _PHONE), UssdTalk("s2", _PHONE)
    with store.work() as work:
        work.talks.keep_ussd(older, now)
        work.talks.keep_ussd(newer, now + timedelta(minutes=1))
        work.talks.keep_ussd(UssdTalk("s3", "+447700900102"), now)
        assert work.talks.ussd_of(_PHONE) == (newer, older)
