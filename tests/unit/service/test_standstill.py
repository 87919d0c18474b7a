"""People are told when no text leaves, and copies are made each day."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from stat import S_IMODE

import pytest

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.lines import Lines, Terms
from assistant.service.copies import copies, copy_is_late, copy_of_today
from assistant.service.dispatch import dispatch
from assistant.service.pulse import SENDING, TICKING, hold_texts
from assistant.service.standstill import tell_people
from assistant.store import StoreError
from assistant.wording import messages_alarms as a
from tests.stages import stage
from tests.valley import AMINA, LEAD, OFFICER, Valley, like

TEN = timedelta(minutes=10)
SOON = timedelta(minutes=1)


@stage
def led(valley: Valley) -> None:
    """An officer and a lead; the worker is alive."""
    valley.add_officer()
    valley.add_officer(phone=LEAD, lead=True)
    alive(valley)


def alive(valley: Valley) -> None:
    """Both parts give a sign."""
    with valley.house.store.work() as work:
        for part in (SENDING, TICKING):
            work.running.beat(part, valley.now)


def to_lead(valley: Valley) -> int:
    """The texts that wait for the lead."""
    with valley.house.store.look() as work:
        assert work.outbox.of_phone(OFFICER) == ()
        return len(work.outbox.of_phone(LEAD))


def later(valley: Valley, by: timedelta) -> None:
    valley.now += by


def test_the_leads_hear_once_that_a_text_waits_for_ten_minutes(led: Valley) -> None:
    """And again in the next standstill."""
    led.post(AMINA, "START")
    for by, texts in ((TEN, 0), (SOON, 1), (SOON, 1)):
        later(led, by)
        alive(led)
        tell_people(led.house, led.now)
        assert to_lead(led) == texts
    led.send()
    assert led.heard(LEAD) == [like(a.NOTHING_LEAVES(n=11))]
    assert tell_people(led.house, led.now) == 0
    led.post(AMINA, "1")
    later(led, TEN + SOON)
    alive(led)
    assert tell_people(led.house, led.now) == 1


@dataclass
class Out:
    """A line that takes nothing now, or all."""

    answer: Handover

    def send(self, text: Outgoing, now: datetime) -> Handover:
        """As it was told."""
        return self.answer

    def time(self) -> None:
        """None."""


def test_the_leads_hear_of_a_line_that_puts_every_text_off(led: Valley) -> None:
    """A card without credit is asked again each ten minutes; no text is ever long overdue by
    its own clock."""
    desk = Out(Handover(Fate.TRY_LATER, "no credit", rest=TEN))
    lines = Lines({"desk": desk}, (), {"desk": Terms()})
    led.post(AMINA, "START")
    told = []
    for _ in range(13):
        dispatch(led.house, lines, led.now, limit=9, lease=SOON)
        alive(led)
        told.append(tell_people(led.house, led.now))
        later(led, SOON)
    assert told == [0] * 11 + [1, 0]
    desk.answer = Handover(Fate.ACCEPTED)
    later(led, TEN)
    assert dispatch(led.house, lines, led.now, limit=9, lease=SOON) == 2
    with led.house.store.look() as work:
        (text,) = work.outbox.of_phone(LEAD)
    assert text.text == like(a.NOTHING_LEAVES(n=11)) and text.accepted_at == led.now


def test_a_slow_line_that_goes_on_is_no_standstill(led: Valley) -> None:
    """A modem takes four seconds a text: the last of a morning wait for an hour."""
    lines = Lines({"desk": Out(Handover(Fate.ACCEPTED))}, (), {"desk": Terms()})
    for _ in range(20):
        led.post(AMINA, "START")
    for _ in range(15):
        dispatch(led.house, lines, led.now, limit=1, lease=SOON)
        alive(led)
        assert tell_people(led.house, led.now) == 0
        later(led, SOON)


def test_where_nobody_sends_who_notices_sends_it(led: Valley) -> None:
    """The text to the lead goes before what waits."""
    taken: list[Outgoing] = []

    class Line:
        """A line that works."""

        def send(self, text: Outgoing, now: object) -> Handover:
            """Takes it."""
            taken.append(text)
            return Handover(Fate.ACCEPTED)

        def time(self) -> None:
            """None."""

    led.post(AMINA, "START")
    later(led, TEN + SOON)
    assert tell_people(led.house, led.now, Line()) == 1
    assert [text.phone for text in taken] == [LEAD]


def test_daily_texts_that_stand_still_are_told_too(led: Valley) -> None:
    """Though texts leave."""
    later(led, TEN + SOON)
    with led.house.store.work() as work:
        work.running.beat(SENDING, led.now)
    tell_people(led.house, led.now)
    led.send()
    assert led.heard(LEAD) == [like(a.NO_DAILY_TEXTS)]


def test_nobody_is_told_of_what_a_person_holds_or_what_never_ran(
    led: Valley, valley: Valley
) -> None:
    """They know."""
    hold_texts(led.house, "restored", led.now)
    later(led, TEN + SOON)
    assert tell_people(led.house, led.now) == 0


# --- copies -----------------------------------------------------------------------------------


def test_a_copy_a_day_is_made_and_some_are_kept(valley: Valley, tmp_path: Path) -> None:
    """For its owner only; asked twice on a day, one is made."""
    folder = tmp_path / "copies"
    assert not copy_is_late(valley.house, valley.now)
    for _ in range(4):
        made = copy_of_today(valley.house, folder, 2, valley.now)
        assert made is not None and S_IMODE(made.stat().st_mode) == 0o600
        assert copy_of_today(valley.house, folder, 2, valley.now + SOON) is None
        later(valley, timedelta(days=1))
    assert len(copies(folder)) == 2
    assert not copy_is_late(valley.house, valley.now)
    assert copy_is_late(valley.house, valley.now + timedelta(days=2))


def test_a_copy_that_fails_is_tried_an_hour_later_and_leaves_none_half_made(
    valley: Valley, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As where the disk is full."""

    def full(target: Path) -> None:
        raise StoreError("the disk is full")

    monkeypatch.setattr(valley.house.store, "backup", full)
    with pytest.raises(StoreError):
        copy_of_today(valley.house, tmp_path, 2, valley.now)
    monkeypatch.undo()
    assert copies(tmp_path) == []
    assert copy_of_today(valley.house, tmp_path, 2, valley.now + SOON) is None
    assert copy_of_today(valley.house, tmp_path, 2, valley.now + timedelta(hours=2)) is not None
