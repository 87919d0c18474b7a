"""Limits by farmer's calls, village, officer; what leads are told; and that no limit keeps a
danger from anybody."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

from assistant.channel import Channel, Tariff
from assistant.dialogue.values import CallForHelp
from assistant.service.brakes import VILLAGE_DAY, let_go
from assistant.service.effects import Scene, carry_out
from assistant.service.floods import MOST_A_DAY
from assistant.service.limits import MOST_A_DAY as CALLS_A_DAY
from assistant.service.limits import MOST_AN_HOUR as CALLS_AN_HOUR
from assistant.service.limits import TooMany
from assistant.service.lists.keeping import refused
from assistant.service.sight import Sight, sight_of
from assistant.service.storms import broadcasts
from assistant.service.storms.broadcasts import Asked, NotSent
from assistant.store import Broadcast
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording import messages_web_brakes as b
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, ZAWADI, Valley, like

# Each of another kind, so that none is joined to the one before.
KINDS = ("officer", "yellow", "seed", "animals", "water", "spare", "leaves", "question")
WORDS = "officer please call me"


def _sight(valley: Valley, phone: str) -> Sight:
    with valley.house.store.look() as work:
        officer = work.people.officer(phone)
        assert officer is not None
        return sight_of(work, officer)


def _call(valley: Valley, *kinds: str, phone: str = AMINA) -> None:
    """Calls for help as talks make them."""
    for kind in kinds:
        with valley.house.store.work() as work:
            scene = Scene(work, valley.house, phone, Channel.SMS, valley.now)
            carry_out((CallForHelp(kind, "", None),), scene)
    valley.send()


def _calls(valley: Valley) -> int:
    with valley.house.store.look() as work:
        return len(work.calls.open())


# --- a farmer's calls ------------------------------------------------------------------------


def test_many_calls_of_a_farmer_are_a_few_notices(led: Valley) -> None:
    """All stand on the list; the last notice says so."""
    _call(led, *KINDS * 3)
    heard = led.heard(OFFICER)
    assert len(heard) == CALLS_AN_HOUR < _calls(led)
    assert heard[-1] == like(..., o.LAST_NOTICE)


def test_a_day_has_a_limit_too(led: Valley) -> None:
    """Also where each hour has few."""
    heard = []
    for hour in range(9):
        led.go(f"1 Jun {9 + hour:02}:00")
        _call(led, *KINDS[:2])
        heard += [each for each in led.heard(OFFICER) if "Help wanted" in each]
    assert len(heard) == CALLS_A_DAY


def test_no_number_of_calls_keeps_a_danger_from_the_officer(led: Valley) -> None:
    """Nor from being answered, at any hour; more of it is joined to what was told."""
    _call(led, *KINDS * 3)
    led.heard(OFFICER)
    answers = [led.text(AMINA, "a snake has bitten my son") for _ in range(20)]
    assert all(answers)
    assert len([each for each in led.heard(OFFICER) if "snake" in each]) == 1


# --- leads -----------------------------------------------------------------------------------


def test_leads_have_one_text_an_hour_of_places_without_an_officer(led: Valley) -> None:
    """The first call whole, then one text for all that came."""
    phones = [f"+4477009002{number:02}" for number in range(12)]
    for phone in phones:
        led.enrol(phone, village=2)
        led.text(phone, WORDS)
    assert len(led.heard(LEAD)) == 1
    led.go("1 Jun 10:30")
    assert led.heard(LEAD) == [like(o.MORE_CALLS)]
    assert _calls(led) >= len(phones)


def test_a_lead_hears_of_each_danger_at_once(led: Valley) -> None:
    """Whatever is in the digest."""
    for phone in (BARAKA, ZAWADI):
        led.enrol(phone, village=2)
        led.text(phone, WORDS)
    led.heard(LEAD)
    led.text(ZAWADI, "my child drank the urea")
    assert len(led.heard(LEAD)) == 1


# --- a village -------------------------------------------------------------------------------


def _full(valley: Valley) -> None:
    valley.house = replace(valley.house, village_segments=2)
    for words in ("MENU", "HELP", "MENU"):
        valley.text(AMINA, words)
    valley.send()


def test_a_village_that_had_its_day_waits_and_others_go_on(led: Valley) -> None:
    """The officer and the leads are told once; a lead lets it go."""
    led.enrol(BARAKA, village=2)
    _full(led)
    for phone in (OFFICER, LEAD):
        assert led.heard(phone) == [like(b.VILLAGE_LIMIT_TEXT)]
    led.heard(AMINA)
    assert led.text(AMINA, "HELP") == []
    assert led.text(BARAKA, "HELP")
    with led.house.store.look() as work:
        (brake,) = (each for each in work.brakes.standing(led.now) if each.village_id == 1)
    assert brake.what == VILLAGE_DAY
    assert let_go(led.house, _sight(led, LEAD), brake.id, led.now)
    assert led.text(AMINA, "MENU")


def test_a_full_village_is_still_warned_and_answered(led: Valley) -> None:
    """A cry, a STOP; the day after all is as before."""
    _full(led)
    for phone in (AMINA, OFFICER):
        led.heard(phone)
    assert led.text(AMINA, "a snake has bitten my son")
    assert any("snake" in each for each in led.heard(OFFICER))
    assert led.text(AMINA, "STOP") == [like(m.STOPPED)]
    led.now += timedelta(days=1)
    with led.house.store.look() as work:
        assert work.brakes.standing(led.now) == ()


# --- an officer ------------------------------------------------------------------------------


def _letter(valley: Valley, phone: str) -> bool | NotSent | None:
    sight = _sight(valley, phone)
    made = broadcasts.make(valley.house, sight, Asked("Seed has come", (), True), valley.now)
    assert isinstance(made, Broadcast)
    return broadcasts.send(valley.house, sight, made.id, valley.now)


def test_an_officer_writes_to_so_many_a_day(led: Valley) -> None:
    """Letters and invitations together; a lead may go on."""
    led.enrol(BARAKA)
    led.house = replace(led.house, officer_day_texts=3)
    assert _letter(led, OFFICER) is True
    assert _letter(led, OFFICER) == NotSent(over=TooMany(3, month=False))
    assert refused(led.house, _sight(led, OFFICER), 2, led.now) == NotSent(
        over=TooMany(3, month=False)
    )
    assert refused(led.house, _sight(led, OFFICER), 1, led.now) is None
    assert _letter(led, LEAD) is True
    led.now += timedelta(days=1)
    assert _letter(led, OFFICER) is True


def test_a_list_does_not_go_beyond_the_days_limit(led: Valley) -> None:
    """Each invitation is a segment at least."""
    led.house = replace(led.house, day_segments=50)
    found = refused(led.house, _sight(led, LEAD), 60, led.now)
    assert found is not None and 0 < found.left <= 50


# --- a phone ---------------------------------------------------------------------------------


def test_a_phone_has_so_many_answers_a_day(led: Valley) -> None:
    """Then cries and STOP only."""
    answers = 0
    for _hour in range(7):  # of thirty each, which no hour counts out
        led.now += timedelta(hours=1)
        for _ in range(15):
            answers += len(led.text(AMINA, "MENU") + led.text(AMINA, "HELP"))
    assert answers <= MOST_A_DAY + 20  # and the prompts of the day
    assert led.text(AMINA, "a snake has bitten my son")
    assert led.text(AMINA, "STOP") == [like(m.STOPPED)]


def test_limits_of_a_month_for_a_village_and_an_officer(led: Valley) -> None:
    """The village's by what it costs, its officer is told once; the officer's by phones."""
    tariff = Tariff(Decimal("0.80"), "KES")
    led.house = replace(led.house, tariff=tariff, village_month_money=Decimal("1.60"))
    led.enrol(BARAKA, village=2)
    for words in ("MENU", "HELP"):
        led.text(AMINA, words)
    assert led.heard(OFFICER) == [like(b.VILLAGE_MONTH_TEXT)]
    led.now += timedelta(days=1)  # another day of the same month
    assert led.text(AMINA, "HELP") == [] and led.text(BARAKA, "HELP")
    led.house = replace(led.house, village_month_money=Decimal(0), officer_month_texts=1)
    assert _letter(led, OFFICER) is True
    led.now += timedelta(days=1)
    assert _letter(led, OFFICER) == NotSent(over=TooMany(1, month=True))
    led.now += timedelta(days=31)
    with led.house.store.look() as work:
        assert work.brakes.standing(led.now) == ()
    assert _letter(led, OFFICER) is True


def test_a_letter_to_more_phones_is_sent_by_another_lead(led: Valley) -> None:
    """Not by who wrote it, lead or not; one to fewer by anybody."""
    led.house = replace(led.house, four_eyes=1)
    assert _letter(led, OFFICER) is True  # one phone
    led.enrol(BARAKA)
    other = "+447700900003"
    led.add_officer(phone=other, lead=True)
    for writer in (OFFICER, LEAD):
        asked = Asked(f"Seed has come, says {writer}", (), True)
        made = broadcasts.make(led.house, _sight(led, writer), asked, led.now)
        assert isinstance(made, Broadcast)
        own = broadcasts.send(led.house, _sight(led, writer), made.id, led.now)
        assert own == NotSent(phones=1)
        assert broadcasts.send(led.house, _sight(led, other), made.id, led.now) is True
