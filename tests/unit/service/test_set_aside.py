"""A nursery whose row cannot be read harms nobody but itself, and somebody is told of it."""

from collections.abc import Callable
from datetime import datetime

import pytest
from sqlalchemy import create_engine, text

from assistant.agronomy.calendar import TaskCode
from assistant.reminders.values import State
from assistant.service import tick as ticking
from assistant.service.set_aside import look_again, look_over
from assistant.store import Work
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.stages import stage
from tests.valley import AMINA, BARAKA, Valley, like

SOW = like(t.HEAD, t.P_SOW, t.ASK_DONE)


def spoil(valley: Valley, what: str = "practice = 'floating'") -> None:
    """Amina's row is changed by hand."""
    engine = create_engine(valley.house.store._engine.url)
    with engine.begin() as connection:
        connection.execute(text(f"UPDATE nursery SET {what} WHERE farmer_id = 1"))
    engine.dispose()


@stage
def two(valley: Valley) -> None:
    """Two nurseries to be sown on the tenth, and the evening before."""
    for phone in (AMINA, BARAKA):
        valley.enrol(phone)
        valley.plan(phone, "10 June")
    valley.go("9 Jun 20:30")
    valley.heard(AMINA), valley.heard(BARAKA)


SPOILS = [
    "practice = 'floating'",
    "germination = 85",
    "sow_date = '2026-02-01', practice = 'x'",
]


@pytest.mark.parametrize("what", SPOILS)
def test_everybody_else_has_their_morning(
    two: Valley, what: str, caplog: pytest.LogCaptureFixture
) -> None:
    """Also where the spoilt one is long over and would be closed. It is logged once."""
    spoil(two, what)
    two.go("10 Jun 06:00")
    for _ in look_over(two.house, two.now):
        pass
    two.leap("10 Jun 06:05")
    assert [two.heard(AMINA), two.heard(BARAKA)] == [[], [SOW]]
    assert len([each for each in caplog.records if "set aside" in each.getMessage()]) == 1


def test_its_farmer_is_answered_and_can_stop(two: Valley) -> None:
    """What does not need the row works."""
    spoil(two)
    assert two.text(AMINA, "STOP") == [like(m.STOPPED)]
    assert two.text(AMINA, "my child drank the urea") != [like(m.SORRY_TROUBLE)]


def test_it_is_known_until_it_is_mended(two: Valley) -> None:
    """The day's look over all finds it, and finds it mended."""
    spoil(two)

    def aside() -> list[str]:
        for _ in look_over(two.house, two.now):
            pass
        with two.house.store.look() as work:
            return [each.why for each in work.running.aside()]

    assert ["put its file back" in why for why in aside()] == [True]
    spoil(two, "practice = 'mat'")
    assert aside() == []
    two.go("10 Jun 06:00")
    assert two.heard(AMINA) == [SOW]


def test_it_is_looked_for_no_more_while_it_is_set_aside(two: Valley) -> None:
    """The first morning finds it; then nothing is due, and it stands on the pages."""
    spoil(two)
    two.go("10 Jun 06:00")
    with two.house.store.look() as work:
        assert not work.mornings.is_due(two.now)
        assert len(work.running.aside()) == 1
    assert two.text(AMINA, "STOP") == [like(m.STOPPED)]
    two.text(AMINA, "START")  # which wakes what rested, and the next look lays it to rest again
    two.leap("10 Jun 06:30")
    with two.house.store.look() as work:
        assert not work.mornings.is_due(two.now)


def test_what_was_asked_rests_too(two: Valley) -> None:
    """Silence is not followed up of one that cannot be read; once mended, it is."""

    def asked() -> State:
        with two.house.store.look() as work:
            return next(r.state for r in work.reminders.of_nursery(1) if r.task is TaskCode.SOW)

    two.go("10 Jun 06:00")
    assert two.heard(AMINA) == [SOW]
    spoil(two)
    two.leap("11 Jun 05:00")
    assert asked() is State.SENT
    spoil(two, "practice = 'mat'")
    look_again(two.house)
    two.leap("11 Jun 05:05")
    assert asked() is State.UNANSWERED


def test_a_minute_after_it_was_mended_it_has_its_texts(two: Valley) -> None:
    """No start and no next day is waited for."""
    spoil(two)
    two.go("10 Jun 06:00")
    look_again(two.house)
    two.leap("10 Jun 06:05")
    assert two.heard(AMINA) == []
    spoil(two, "practice = 'mat'")
    look_again(two.house)
    two.leap("10 Jun 06:10")
    assert two.heard(AMINA) == [SOW]


def test_one_that_was_closed_is_shown_no_more(two: Valley) -> None:
    """Closing by hand is a way to mend it."""
    spoil(two)
    two.go("10 Jun 06:00")
    spoil(two, "closed = true")
    look_again(two.house)
    with two.house.store.look() as work:
        assert work.running.aside() == ()


def test_many_are_looked_at_in_parts(two: Valley, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where thousands are set aside, a minute looks at some of them."""
    monkeypatch.setattr("assistant.service.set_aside.AT_ONCE", 1)
    spoil(two)
    two.go("10 Jun 06:00")
    after = look_again(two.house)
    assert after > 0
    assert look_again(two.house, after) == 0


LOOKS = ["_expired", "_alarms", "_silent_beds", "forgotten_nurseries", "_unsaid"]


@pytest.mark.parametrize("broken", LOOKS)
def test_a_look_that_fails_stops_no_other(
    two: Valley, broken: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each kind of follow-up is looked for by itself."""

    def fail(work: Work, house: object, now: datetime) -> object:
        raise RuntimeError("a fault of ours")

    fail.__name__ = broken
    looks: dict[str, Callable[..., object]] = {broken: fail}
    monkeypatch.setattr(
        ticking,
        "FOLLOW_UPS",
        tuple((looks.get(look.__name__, look), follow) for look, follow in ticking.FOLLOW_UPS),
    )
    if broken == "_expired":
        monkeypatch.setattr(ticking, "_expired", fail)
    two.go("10 Jun 06:00")
    assert two.heard(BARAKA) == [SOW]
