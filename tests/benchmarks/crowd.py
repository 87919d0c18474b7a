"""Five thousand invented farmers with a nursery each, as a season leaves them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from itertools import groupby
from typing import Any, cast
from uuid import uuid4
from zoneinfo import ZoneInfo

from sqlalchemy import Table, delete, text, update

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Kind
from assistant.people import Farmer, is_fiction
from assistant.reminders.plan import Hours, planned
from assistant.reminders.values import Reminder, State
from assistant.service.house import House, no_journal
from assistant.settings import Settings
from assistant.store import OutboxText, Store, TextState, Work
from assistant.store.engine import open_engine
from assistant.store.tables import (
    FarmerRow,
    IncomingRow,
    NurseryRow,
    OutboxRow,
    ReminderRow,
    WarningPhoneRow,
    WarningRow,
)
from assistant.store.tables_warnings import WarningDraftRow, WarningDraftVillageRow
from assistant.wiring.house import open_house
from tests.benchmarks.databases import copied, filling, numbers
from tests.benchmarks.size import ASKED_FARMERS, sized

FARMERS = ASKED_FARMERS or sized(5_000, small=100)
ZONE = "Africa/Nairobi"
TODAY = date(2026, 6, 15)
LANGUAGES = ("en", "sw")
OFFICER = "+999009999999"
MORNING = datetime(2026, 6, 15, 6, 0, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)
NOON = MORNING + timedelta(hours=6)


def phone(number: int) -> str:
    """A number of the test range."""
    made = f"+99900{number:07}"
    assert is_fiction(made), made
    return made


def house_at(store: Store, languages: tuple[str, ...] = LANGUAGES) -> House:
    """The use cases as the wiring opens them for a deployment; no journal of STOPs beside the
    database, which would stand in the folder that one happens to be in."""
    house = open_house(Settings(zone=ZONE, languages=languages), store)
    return replace(house, journal=no_journal)


@dataclass(frozen=True)
class Crowd:
    """Who is there: one nursery in each `len(days)` is on each of these days today.

    days:       the days of the nurseries today, counted from sowing
    villages:   how many villages the farmers live in, together a divisor of `len(days)`
    told_today: whether today's texts have gone out
    """

    days: Sequence[int]
    villages: int = 1
    told_today: bool = False
    farmers: int = FARMERS

    def settle(self, url: str) -> None:
        """Puts them into a database that has its tables and no rows.

        The first of each day comes in by the store; the others are copies of their rows.
        """
        store = Store(url)
        with store.work() as work:
            villages = [
                work.people.add_village(f"Kijiji {number}", ZONE).id
                for number in range(1, self.villages + 1)
            ]
            work.people.add_officer(OFFICER, "Asha", "no code", "en", villages)
            for number, day in enumerate(self.days, start=1):
                language = LANGUAGES[number % len(LANGUAGES)]
                village = villages[number % len(villages)]
                farmer = Farmer(0, phone(number), language, village, MORNING, None)
                self._add(work, work.people.save_farmer(farmer), day)
        store.close()
        last = self.farmers // len(self.days) * len(self.days)
        copies = range(len(self.days), last, len(self.days))
        copied(url, {_table(row): change for row, change in _COPIED.items()}, copies)

    def _add(self, work: Work, farmer: Farmer, day: int) -> None:
        """A nursery with its reminders; each morning that is past left one text."""
        nursery = work.nurseries.save(
            a_nursery(farmer.id, TODAY - timedelta(days=day)), MORNING
        )
        work.reminders.plan(planned(nursery, ZONE, Hours(), date.min))
        said = [each for each in work.reminders.of_nursery(nursery.id) if self._is_said(each)]
        for morning, reminders in groupby(said, key=lambda each: each.day):
            text = work.outbox.add(_delivered(farmer.phone, morning))
            for each in reminders:
                answered = TASKS[each.task].is_asked and each.day < TODAY
                state = State.DONE if answered else State.SENT
                work.reminders.set_state([each.id], state, text.message_id, asked=1)

    def _is_said(self, reminder: Reminder) -> bool:
        return reminder.day < TODAY or (self.told_today and reminder.day == TODAY)


def a_nursery(farmer_id: int, sow: date) -> Nursery:
    """0.4 ha at 85 %, sown on a day."""
    return Nursery(
        id=0,
        farmer_id=farmer_id,
        label="A",
        name=None,
        inputs=FieldInputs(field_area_m2=4000.0, germination=0.85),
        area_typed="0.4 ha",
        germination_known=True,
        sow_date=sow,
        made_on=sow - timedelta(days=20),
        sown=sow < TODAY,
    )


def a_text(to: str, at: datetime, **given: Any) -> OutboxText:
    """A text of the usual length, good for a day."""
    return OutboxText(
        message_id=uuid4().hex,
        phone=to,
        text="Nursery A, day 4:\nWater the beds: half a pail, morning and evening.\n1 Done",
        kind=Kind.PROMPT,
        due_at=at,
        not_after=at + timedelta(days=1),
        created_at=at,
        encoding="gsm7",
        segments=1,
        **given,
    )


def _delivered(to: str, day: date) -> OutboxText:
    at = datetime.combine(day, Hours().prompt, ZoneInfo(ZONE))
    return a_text(to, at, accepted_at=at, delivered_at=at, state=TextState.DELIVERED)


def _table(row: Any) -> Table:
    return cast(Table, row.__table__)


_MOVED_NUMBER = "CAST(10000000 + CAST(substr(phone, 7) AS BIGINT) + n AS TEXT)"
_MOVED_PHONE = f"'+99900' || substr({_MOVED_NUMBER}, 2)"
_MOVED_MESSAGE = "message_id || '-' || CAST(n AS TEXT)"
# What differs in the rows of the farmer who comes n numbers later.
_COPIED: dict[Any, dict[str, str]] = {
    FarmerRow: {"id": "id + n", "phone": _MOVED_PHONE},
    NurseryRow: {"id": "id + n", "farmer_id": "farmer_id + n"},
    ReminderRow: {"nursery_id": "nursery_id + n", "message_id": _MOVED_MESSAGE},
    OutboxRow: {"phone": _MOVED_PHONE, "message_id": _MOVED_MESSAGE},
}


def undo_today(url: str) -> None:
    """Forgets what was sent, asked and warned of since this morning."""
    engine = open_engine(url)
    outbox, reminder = _table(OutboxRow), _table(ReminderRow)
    with engine.begin() as connection:
        connection.execute(delete(outbox).where(outbox.c.created_at >= MORNING))
        for row in (WarningDraftVillageRow, WarningDraftRow, WarningPhoneRow, WarningRow):
            connection.execute(delete(_table(row)))
        connection.execute(
            update(reminder)
            .where(reminder.c.due_at >= MORNING, reminder.c.state != State.PLANNED)
            .values(state=State.PLANNED, asked=0, message_id=None)
        )
    engine.dispose()


SEASON_D = 40  # days of texts: soaking to the season's result, and replies
ANSWERS_D = 30


def a_season_of_texts(url: str) -> tuple[int, int]:
    """Fills the outbox and the inbox as a whole season leaves them; how many each then holds.

    A text a day for forty days to each phone and an answer on thirty, some lost, some keyed.
    """
    with filling(url, [_table(OutboxRow), _table(IncomingRow)]) as connection:
        if connection.dialect.name == "postgresql":
            at = "TIMESTAMPTZ '2026-06-14 03:00:00+00' - d * INTERVAL '1 day'"
        else:
            at = "strftime('%Y-%m-%d %H:%M:%S.000000', '2026-06-14 03:00:00', -d || ' days')"
        for statement, days in ((_SENT, SEASON_D), (_HEARD, ANSWERS_D)):
            all_days = numbers("d", range(1, days + 1))
            whole = statement.format(days=all_days, at=at).replace(":", "\\:")
            connection.execute(text(whole))
        counts = [
            connection.exec_driver_sql(f"SELECT count(*) FROM {table}").scalar_one()
            for table in ("outbox", "incoming")
        ]
    return counts[0], counts[1]


_SENT = """INSERT INTO outbox (message_id, phone, text, kind, due_at, not_after, urgent, state,
    attempts, encoding, segments, accepted_at, delivered_at, detail, created_at, village_id,
    private, lane) {days}
    SELECT 's' || d || phone, phone, 'Nursery A: water the beds.', 'prompt',
    {at}, {at}, false, CASE WHEN (id * 31 + d) % 29 = 0 THEN 'failed'
    WHEN (id * 17 + d) % 31 = 0 THEN 'expired' ELSE 'delivered' END,
    0, 'gsm7', 1 + (id + d) % 5 / 4, {at}, {at},
    CASE WHEN (id * 31 + d) % 29 = 0 THEN 'no such subscriber' ELSE '' END, {at},
    village_id, false, 2 FROM numbers CROSS JOIN farmer"""
_HEARD = """INSERT INTO incoming (gateway_id, phone, text, channel, step, at, taken_at, failed,
    village_id, private) {days} SELECT 's' || d || phone, phone, '1',
    CASE WHEN d % 6 = 0 THEN 'ussd' ELSE 'sms' END, CASE WHEN d % 12 = 0 THEN 'begin'
    WHEN d % 6 = 0 THEN 'answer' ELSE 'text' END, {at}, {at}, false, village_id,
    false FROM numbers CROSS JOIN farmer"""
