"""Messages are counted once for each settled day; pages show the same before and after."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

from assistant.channel import Fate, Receipt, Tariff
from assistant.service.day_counts import AT_ONCE, SETTLED_D, count_days
from assistant.service.desk.messages import MessageFilter, messages, messages_by_month
from assistant.service.dispatch import take_receipt
from assistant.service.sight import Sight, sight_of
from tests.stages import stage
from tests.valley import AMINA, BARAKA, KIJANI, LEAD, OFFICER, Valley


def _sight(valley: Valley, phone: str = LEAD) -> Sight:
    with valley.house.store.look() as work:
        officer = work.people.officer(phone)
        assert officer is not None
        return sight_of(work, officer)


@stage
def lived_in(valley: Valley) -> None:
    """Two farmers of two villages from May to July; one of their texts was taken and lost."""
    valley.house = replace(valley.house, tariff=Tariff(Decimal("0.80"), "KES"))
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    for phone, village in ((AMINA, 1), (BARAKA, 2)):
        valley.enrol(phone, village=village)
        valley.sow(phone, "1 June")
    valley.operator.receipts = False
    valley.text(AMINA, "MENU")
    lost = valley.operator.delivered[-1].message_id
    assert take_receipt(valley.house, Receipt(lost, Fate.FAILED, valley.now), valley.now)
    valley.operator.receipts = True
    for when in ("20 Jun 08:00", "30 Jun 23:30", "1 Jul 00:30", "9 Jul 08:00"):
        valley.go(when)
        valley.text(AMINA, "MENU")
        valley.dial(BARAKA)


def test_pages_show_the_same_whether_days_were_counted_or_not(lived_in: Valley) -> None:
    """The month is the programme's: half past midnight on 1 July is no June there."""
    sights = (_sight(lived_in), _sight(lived_in, OFFICER))
    wants = (MessageFilter(), MessageFilter(month="2026-06"), MessageFilter(village_id=1))

    def seen() -> list[object]:
        house, now = lived_in.house, lived_in.now
        shown = [messages(house, sight, want, now) for sight in sights for want in wants]
        return [
            *((each.counts, each.in_all) for each in shown),
            *(messages_by_month(house, sight, now) for sight in sights),
        ]

    before = seen()
    counted = [count_days(lived_in.house, lived_in.now) for _ in range(6)]
    assert counted == [10, 10, 10, 1, 0, 0]  # 1 June to 1 July, of 9 July
    assert sum(counted) == (date(2026, 7, 9) - date(2026, 6, 1)).days - SETTLED_D + 1
    assert AT_ONCE == 10
    assert seen() == before
    with lived_in.house.store.look() as work:
        assert work.ledger.days.last() == date(2026, 7, 1)


def test_a_day_is_counted_once(lived_in: Valley) -> None:
    """By one worker; the other goes on with its work."""
    while count_days(lived_in.house, lived_in.now):
        pass
    with lived_in.house.store.work() as work:
        assert not work.ledger.days.keep(date(2026, 6, 1), ())
    lived_in.leap(lived_in.now + timedelta(days=1))
    assert count_days(lived_in.house, lived_in.now) == 1


def test_before_anything_was_sent_there_is_nothing_to_count(valley: Valley) -> None:
    """A deployment that was started for the first time."""
    assert count_days(valley.house, valley.now) == 0


def test_a_lead_sees_each_village_in_each_month_and_an_officer_their_own(
    lived_in: Valley,
) -> None:
    """Segments at 0.80 each, and sums that come to the same as village by village."""
    table = messages_by_month(lived_in.house, _sight(lived_in), lived_in.now)
    assert table.months == (date(2026, 7, 1), date(2026, 6, 1))
    names = [village.name if village else None for village, _ in table.lines]
    assert names == ["Kijani", "Mto Mwanga", None]
    for at, month in enumerate(table.months):
        shown = messages(
            lived_in.house,
            _sight(lived_in),
            MessageFilter(month=f"{month:%Y-%m}"),
            lived_in.now,
        )
        assert table.in_all[at] == shown.in_all
        assert table.in_all[at].cost == Decimal("0.80") * table.in_all[at].segments
    own = messages_by_month(lived_in.house, _sight(lived_in, OFFICER), lived_in.now)
    assert own.lines == table.lines[:1]
