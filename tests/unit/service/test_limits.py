"""Limits by farmer's calls, village, officer; what leads are told; and that no limit keeps a
danger from anybody."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.channel import Channel
from assistant.dialogue.values import CallForHelp
from assistant.people import Village
from assistant.service.brakes import VILLAGE_DAY, let_go
from assistant.service.effects import Scene, carry_out
from assistant.service.floods import MOST_A_DAY
from assistant.service.limits import MOST_A_DAY as CALLS_A_DAY
from assistant.service.limits import MOST_AN_HOUR as CALLS_AN_HOUR
from assistant.service.office.keeping import refused
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


@pytest.fixture
def amina(valley: Valley, kijani: Village) -> Valley:
    """Amina has a nursery; an officer serves her village, a lead all."""
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.sow(AMINA, "31 May")
    for phone in (AMINA, OFFICER, LEAD):
        valley.heard(phone)
    return valley


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


def test_many_calls_of_a_farmer_are_a_few_notices(amina: Valley) -> None:
    """All stand on the list; the last notice says so."""
    _call(amina, *KINDS * 3)
    heard = amina.heard(OFFICER)
    assert len(heard) == CALLS_AN_HOUR < _calls(amina)
    assert heard[-1] == like(..., o.LAST_NOTICE)


def test_a_day_has_a_limit_too(amina: Valley) -> None:
    """Also where each hour has few."""
    heard = []
    for hour in range(9):
        amina.go(f"1 Jun {9 + hour:02}:00")
        _call(amina, *KINDS[:2])
        heard += [each for each in amina.heard(OFFICER) if "Help wanted" in each]
    assert len(heard) == CALLS_A_DAY


def test_no_number_of_calls_keeps_a_danger_from_the_officer(amina: Valley) -> None:
    """Nor from being answered, at any hour; more of it is joined to what was told."""
    _call(amina, *KINDS * 3)
    amina.heard(OFFICER)
    answers = [amina.text(AMINA, "a snake has bitten my son") for _ in range(20)]
    assert all(answers)
    assert len([each for each in amina.heard(OFFICER) if "snake" in each]) == 1


# --- leads -----------------------------------------------------------------------------------


def test_leads_have_one_text_an_hour_of_places_without_an_officer(amina: Valley) -> None:
    """The first call whole, then one text for all that came."""
    phones = [f"+4477009002{number:02}" for number in range(12)]
    for phone in phones:
        amina.enrol(phone, village=2)
        amina.text(phone, WORDS)
    assert len(amina.heard(LEAD)) == 1
    amina.go("1 Jun 10:30")
    assert amina.heard(LEAD) == [like(o.MORE_CALLS)]
    assert _calls(amina) >= len(phones)


def test_a_lead_hears_of_each_danger_at_once(amina: Valley) -> None:
    """Whatever is in the digest."""
    for phone in (BARAKA, ZAWADI):
        amina.enrol(phone, village=2)
        amina.text(phone, WORDS)
    amina.heard(LEAD)
    amina.text(ZAWADI, "my child drank the urea")
    assert len(amina.heard(LEAD)) == 1


# --- a village -------------------------------------------------------------------------------


def _full(valley: Valley) -> None:
    valley.house = replace(valley.house, village_segments=2)
    for words in ("MENU", "HELP", "MENU"):
        valley.text(AMINA, words)
    valley.send()


def test_a_village_that_had_its_day_waits_and_others_go_on(amina: Valley) -> None:
    """The officer and the leads are told once; a lead lets it go."""
    amina.enrol(BARAKA, village=2)
    _full(amina)
    for phone in (OFFICER, LEAD):
        assert amina.heard(phone) == [like(b.VILLAGE_LIMIT_TEXT)]
    amina.heard(AMINA)
    assert amina.text(AMINA, "HELP") == []
    assert amina.text(BARAKA, "HELP")
    with amina.house.store.look() as work:
        (brake,) = (each for each in work.brakes.standing(amina.now) if each.village_id == 1)
    assert brake.what == VILLAGE_DAY
    assert let_go(amina.house, _sight(amina, LEAD), brake.id, amina.now)
    assert amina.text(AMINA, "MENU")


def test_a_full_village_is_still_warned_and_answered(amina: Valley) -> None:
    """A cry, a STOP; the day after all is as before."""
    _full(amina)
    for phone in (AMINA, OFFICER):
        amina.heard(phone)
    assert amina.text(AMINA, "a snake has bitten my son")
    assert any("snake" in each for each in amina.heard(OFFICER))
    assert amina.text(AMINA, "STOP") == [like(m.STOPPED)]
    amina.now += timedelta(days=1)
    with amina.house.store.look() as work:
        assert work.brakes.standing(amina.now) == ()


# --- an officer ------------------------------------------------------------------------------


def _letter(valley: Valley, phone: str) -> bool | NotSent | None:
    sight = _sight(valley, phone)
    made = broadcasts.make(valley.house, sight, Asked("Seed has come", (), True), valley.now)
    assert isinstance(made, Broadcast)
    return broadcasts.send(valley.house, sight, made.id, valley.now)


def test_an_officer_writes_to_so_many_a_day(amina: Valley) -> None:
    """Letters and invitations together; a lead may go on."""
    amina.enrol(BARAKA)
    amina.house = replace(amina.house, officer_day_texts=3)
    assert _letter(amina, OFFICER) is True
    assert _letter(amina, OFFICER) == NotSent(today=3)
    assert refused(amina.house, _sight(amina, OFFICER), 2, amina.now) == NotSent(today=3)
    assert refused(amina.house, _sight(amina, OFFICER), 1, amina.now) is None
    assert _letter(amina, LEAD) is True
    amina.now += timedelta(days=1)
    assert _letter(amina, OFFICER) is True


def test_a_list_does_not_go_beyond_the_days_limit(amina: Valley) -> None:
    """Each invitation is a segment at least."""
    amina.house = replace(amina.house, day_segments=50)
    found = refused(amina.house, _sight(amina, LEAD), 60, amina.now)
    assert found is not None and 0 < found.left <= 50


# --- a phone ---------------------------------------------------------------------------------


def test_a_phone_has_so_many_answers_a_day(amina: Valley) -> None:
    """Then cries and STOP only."""
    answers = 0
    for _hour in range(14):
        amina.now += timedelta(hours=1)
        for _ in range(15):
            answers += len(amina.text(AMINA, "MENU") + amina.text(AMINA, "HELP"))
    assert answers <= MOST_A_DAY + 20  # and the prompts of the day
    assert amina.text(AMINA, "a snake has bitten my son")
    assert amina.text(AMINA, "STOP") == [like(m.STOPPED)]
