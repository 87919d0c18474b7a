"""Cries for help: a person hears at once, and the next one where nobody answers."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.channel import Channel, Fate, Handover
from assistant.dialogue import turns
from assistant.dialogue import values as v
from assistant.dialogue.values import Change, RaiseAlarm, SettleAlarm
from assistant.people import Farmer, Village
from assistant.service.alarms.ladder import rungs
from assistant.service.effects import Scene, carry_out
from assistant.service.known import at_hand, know
from assistant.service.told import ABOUT
from assistant.store import Alarm
from assistant.wording import messages_alarms as a
from assistant.wording import messages_officer as o
from tests.stages import stage
from tests.valley import AMINA, BARAKA, CODE, KIJANI, LEAD, MWANGA, OFFICER, Valley, like

SECOND = "+447700900003"
ELSEWHERE = "+447700900004"
TEN = timedelta(minutes=10)


def cry(valley: Valley, *changes: Change, phone: str = AMINA) -> None:
    """What a turn of the dialogue changes when somebody cries for help."""
    with valley.house.store.work() as work:
        work.lock(phone)
        scene = Scene(work, valley.house, phone, Channel.SMS, valley.now)
        carry_out(changes, scene)
    valley.send()


def wait(valley: Valley, minutes: int = 10) -> None:
    """The clock goes on."""
    valley.leap(valley.now + timedelta(minutes=minutes))


def standing(valley: Valley, phone: str = AMINA) -> list[Alarm]:
    """The alarms of a phone that nobody has closed."""
    with valley.house.store.look() as work:
        farmer = work.people.farmer(phone)
        return list(work.alarms.standing(farmer.id, tuple(ABOUT))) if farmer else []


@stage
def office(valley: Valley) -> None:
    """Two officers of Kijani, one of another village, a lead; Amina of Kijani."""
    valley.add_officer(KIJANI)
    valley.add_officer(KIJANI, phone=SECOND)
    valley.add_officer(MWANGA, phone=ELSEWHERE)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA, village=1)
    valley.heard(AMINA)


def test_the_first_officer_hears_at_once_in_the_writers_own_words(office: Valley) -> None:
    """With name, number, village, what it is and what to do."""
    cry(office, RaiseAlarm("poison", "my son drank the soak water"))
    assert office.heard(OFFICER) == [
        "Urgent, ring now: +447700900101, Kijani: poison or spray. "
        '"my son drank the soak water"\n'
        "When it is seen to, send SEEN code 0101. In 10 minutes I tell the next person."
    ]
    assert office.heard(SECOND) == office.heard(LEAD) == office.heard(ELSEWHERE) == []


def test_no_quiet_hour_and_no_setting_holds_it_back(office: Valley) -> None:
    """Not even where warnings wait for the morning."""
    office.house = replace(office.house, urgent_breaks_quiet=False)
    office.leap("1 Jun 23:30")
    cry(office, RaiseAlarm("snake", "nyoka"))
    assert office.heard(OFFICER) == [like(a.HURT, a.SEEN_OR_NEXT)]


def test_the_next_person_hears_after_ten_minutes_until_all_were_told(office: Valley) -> None:
    """Officers of the village, then the lead; nobody of another village."""
    cry(office, RaiseAlarm("poison", "help"))
    office.heard(OFFICER)
    wait(office, 9)
    assert office.heard(SECOND) == []
    wait(office, 1)
    assert office.heard(SECOND) == [like(a.HURT, a.SEEN_OR_NEXT)]
    wait(office)
    assert office.heard(LEAD) == [like(a.HURT, a.SEND_SEEN)]
    wait(office, 60)
    for phone in (OFFICER, SECOND, LEAD, ELSEWHERE):
        assert office.heard(phone) == []
    assert len(standing(office)) == 1


@pytest.mark.parametrize("text", [f"SEEN {CODE} 0101", f"TELL {CODE} 0101 I come now"])
def test_seen_and_tell_end_the_ladder(office: Valley, text: str) -> None:
    """By SMS, from whoever was told."""
    cry(office, RaiseAlarm("poison", "help"))
    office.text(OFFICER, text)
    if text.startswith("TELL"):
        office.text(OFFICER, "1")
    wait(office, 30)
    assert office.heard(SECOND) == office.heard(LEAD) == []
    assert standing(office) == []


def test_a_phone_that_cries_again_is_one_alarm_with_all_its_words(office: Valley) -> None:
    """The officer is not told of each; the next one reads all."""
    cry(office, RaiseAlarm("hurt", "help"))
    office.heard(OFFICER)
    cry(office, RaiseAlarm("poison", "he drank poison"))
    cry(office, RaiseAlarm("poison", "he drank poison"))
    assert office.heard(OFFICER) == []
    wait(office)
    (notice,) = office.heard(SECOND)
    assert 'poison or spray. "help / he drank poison"' in notice


def test_who_cries_again_when_all_were_told_and_nobody_came_is_told_of_again(
    office: Valley,
) -> None:
    """From the first person on."""
    cry(office, RaiseAlarm("wound", "help"))
    for _ in range(3):
        wait(office)
    for phone in (OFFICER, SECOND, LEAD):
        office.heard(phone)
    cry(office, RaiseAlarm("wound", "nobody came"))
    assert office.heard(OFFICER) == [like(a.HURT, a.SEEN_OR_NEXT)]
    wait(office)
    assert office.heard(SECOND) == [like(a.HURT, a.SEEN_OR_NEXT)]


def test_where_it_is_not_sure_silence_tells_the_officer_too(office: Valley) -> None:
    """After the same minutes."""
    cry(office, RaiseAlarm("hurt", "dawa macho", sure=False))
    wait(office, 9)
    assert office.heard(OFFICER) == []
    wait(office, 1)
    assert office.heard(OFFICER) == [like(a.HURT_UNSURE, a.SEEN_OR_NEXT)]
    wait(office)
    assert office.heard(SECOND) == [like(a.HURT_UNSURE, a.SEEN_OR_NEXT)]


def test_where_somebody_is_hurt_indeed_a_person_hears_at_once(office: Valley) -> None:
    """And the farmer is not asked any more."""
    cry(office, RaiseAlarm("hurt", "dawa macho", sure=False))
    assert _is_asked(office)
    cry(office, SettleAlarm(hurt=True))
    assert office.heard(OFFICER) == [like(a.HURT, a.SEEN_OR_NEXT)]
    assert not _is_asked(office)


def test_where_nobody_is_hurt_it_is_closed_and_nobody_is_told(office: Valley) -> None:
    """Nothing stands open."""
    cry(office, RaiseAlarm("hurt", "dawa macho", sure=False), SettleAlarm(hurt=False))
    wait(office, 30)
    assert office.heard(OFFICER) == []
    assert standing(office) == [] and not _is_asked(office)


def test_nobody_hurt_after_the_officer_was_told_stays_until_a_person_closes_it(
    office: Valley,
) -> None:
    """But goes no further."""
    cry(office, RaiseAlarm("hurt", "dawa macho", sure=False))
    wait(office)
    office.heard(OFFICER)
    cry(office, SettleAlarm(hurt=False))
    wait(office, 30)
    assert office.heard(SECOND) == []
    assert len(standing(office)) == 1


def test_a_cry_that_is_sure_after_one_that_was_not_is_told_at_once(office: Valley) -> None:
    """It is the same alarm."""
    cry(office, RaiseAlarm("hurt", "macho", sure=False))
    cry(office, RaiseAlarm("eyes", "spray in the eyes"))
    assert office.heard(OFFICER) == [like(a.HURT, a.SEEN_OR_NEXT)]
    assert len(standing(office)) == 1


def _is_asked(valley: Valley, phone: str = AMINA) -> bool:
    with valley.house.store.work() as work:
        known = know(work, valley.house, phone, "", Channel.SMS, (), valley.now)
    return known.asked_if_hurt


# --- beds ------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["danger", "lost"])
def test_a_bed_in_danger_is_told_once_to_all_officers_of_the_village(
    office: Valley, kind: str
) -> None:
    """At once, also by night; nobody is told a second time."""
    office.house = replace(office.house, urgent_breaks_quiet=False)
    office.leap("1 Jun 23:30")
    cry(office, RaiseAlarm(kind, "all gone"), RaiseAlarm(kind, "come please"))
    for phone in (OFFICER, SECOND, LEAD):
        assert office.heard(phone) == [like(a.BED, o.GO_SAFELY)]
    wait(office, 60)
    assert office.heard(OFFICER) == office.heard(ELSEWHERE) == []
    (alarm,) = standing(office)
    assert alarm.call.words == "all gone / come please"


def test_a_bed_that_is_told_of_the_next_morning_is_told_anew(office: Valley) -> None:
    """Yesterday's call may still stand open."""
    cry(office, RaiseAlarm("danger", "water comes"))
    office.heard(OFFICER)
    wait(office, 7 * 60)
    cry(office, RaiseAlarm("danger", "water comes again"))
    assert office.heard(OFFICER) == [like(a.BED, o.GO_SAFELY)]


def test_somebody_hurt_is_not_lost_in_the_alarm_of_the_bed(office: Valley) -> None:
    """They are two."""
    cry(office, RaiseAlarm("danger", "water"), RaiseAlarm("drowning", "my child is in it"))
    assert office.heard(OFFICER) == [
        like(a.BED, o.GO_SAFELY),
        like(a.HURT, o.GO_SAFELY, a.SEEN_OR_NEXT),
    ]


# --- whoever cries ---------------------------------------------------------------------------


def test_a_number_that_nobody_enrolled_is_heard_by_the_lead(office: Valley) -> None:
    """Nothing but the number is kept, and it stands on no roll."""
    cry(office, RaiseAlarm("poison", "help"), phone=BARAKA)
    assert office.heard(LEAD) == [like(a.HURT, a.SEND_SEEN)]
    assert office.heard(OFFICER) == []
    with office.house.store.look() as work:
        assert work.roll.count(None) == 1
        assert work.roll.counts_by_village() == {1: 1}
        assert work.people.on_roll(BARAKA) is None
        known = know(work, office.house, BARAKA, "", Channel.SMS, (), office.now)
    assert known.farmer is None
    assert "call is marked as seen to" in office.text(LEAD, f"SEEN {CODE} 0102")[0]


def test_who_cried_for_help_can_be_enrolled_later(office: Valley) -> None:
    """By an officer's text, as anybody."""
    cry(office, RaiseAlarm("poison", "help"), phone=BARAKA)
    office.text(OFFICER, f"ADD {CODE} {BARAKA} Kijani Baraka")
    office.text(OFFICER, "1")
    with office.house.store.look() as work:
        farmer = work.people.on_roll(BARAKA)
        assert farmer is not None and farmer.name == "Baraka"
        assert work.enrolments.get(farmer.id) is not None


def test_who_stopped_texts_is_heard(office: Valley) -> None:
    """STOP is about our texts, not theirs."""
    office.text(AMINA, "STOP")
    cry(office, RaiseAlarm("snake", "help"))
    assert office.heard(OFFICER) == [like(a.HURT, a.SEEN_OR_NEXT)]


def test_without_a_lead_any_officer_is_told_of_a_stranger(
    valley: Valley, kijani: Village
) -> None:
    """Who can then say that it is seen to."""
    valley.add_officer(kijani)
    cry(valley, RaiseAlarm("wire", "help"), phone=BARAKA)
    assert valley.heard(OFFICER) == [like(a.HURT, o.GO_SAFELY, a.SEND_SEEN)]
    valley.text(OFFICER, f"SEEN {CODE} 0102")
    assert standing(valley, BARAKA) == []


def test_where_there_is_no_officer_one_who_comes_later_is_told(
    valley: Valley, kijani: Village
) -> None:
    """The alarm waits for a person, for a day."""
    valley.enrol(AMINA)
    cry(valley, RaiseAlarm("poison", "help"))
    wait(valley, 15)
    valley.add_officer(kijani)
    wait(valley, 10)
    assert valley.heard(OFFICER) == [like(a.HURT, a.SEND_SEEN)]
    wait(valley, 10)
    assert valley.heard(OFFICER) == []


def test_an_officer_who_cries_is_not_told_of_it_themself(office: Valley) -> None:
    """The next one is."""
    cry(office, RaiseAlarm("wound", "help me"), phone=OFFICER)
    assert office.heard(OFFICER) == []
    assert office.heard(LEAD) == [like(a.HURT, a.SEND_SEEN)]


# --- what can go wrong -----------------------------------------------------------------------


def test_a_notice_that_is_lost_tells_the_next_person_at_once(office: Valley) -> None:
    """The first phone is gone for good."""
    office.operator.answers = [Handover(Fate.FAILED, "no such number")]
    cry(office, RaiseAlarm("poison", "help"))
    office.round()
    assert office.heard(OFFICER) == []
    assert office.heard(SECOND) == [like(a.HURT, a.SEEN_OR_NEXT)]


def test_two_workers_tell_nobody_twice(office: Valley) -> None:
    """The second finds that the step was made."""
    cry(office, RaiseAlarm("poison", "help"))
    office.now += TEN
    office.round()
    office.round()
    assert office.heard(SECOND) == [like(a.HURT, a.SEEN_OR_NEXT)]
    assert office.heard(LEAD) == []


def test_long_words_stand_whole_as_far_as_there_is_room(office: Valley) -> None:
    """Two segments of words do; the rest is on the page."""
    cry(office, RaiseAlarm("poison", "w" * 290))
    assert "w" * 290 in office.heard(OFFICER)[0]
    cry(office, RaiseAlarm("danger", "x" * 900))
    notice = office.heard(OFFICER)[0]
    assert "x" * 250 in notice and "..." in notice and "x" * 600 not in notice


def test_a_kind_without_words_is_an_error(office: Valley) -> None:
    """It is ours, to be seen before a release."""
    with pytest.raises(KeyError, match="kind of alarm"):
        cry(office, RaiseAlarm("sad", "help"))


def test_a_no_to_texts_leaves_the_words_of_a_cry_that_stands(office: Valley) -> None:
    """They are wanted by whoever helps; the village too."""
    office.text(OFFICER, f"ADD {CODE} {BARAKA} Kijani Baraka")
    office.text(OFFICER, "1")
    cry(office, RaiseAlarm("poison", "he drank it"), phone=BARAKA)
    office.heard(OFFICER)
    office.text(BARAKA, "2")
    wait(office)
    (notice,) = office.heard(SECOND)
    assert "he drank it" in notice and "Kijani" in notice


# --- somebody who wants to die ---------------------------------------------------------------


def test_who_wants_to_die_is_told_to_one_person_then_to_the_leads(office: Valley) -> None:
    """No other officer hears of it."""
    cry(office, RaiseAlarm("die", "I cannot go on"))
    assert office.heard(OFFICER) == [like(a.PRIVATE, a.SEEN_OR_NEXT)]
    wait(office)
    assert office.heard(SECOND) == []
    assert office.heard(LEAD) == [like(a.PRIVATE, a.SEND_SEEN)]


@pytest.mark.parametrize(("phone", "sees"), [(OFFICER, True), (SECOND, False), (LEAD, True)])
def test_only_who_was_told_first_and_the_leads_hear_of_it(
    office: Valley, phone: str, sees: bool
) -> None:
    """Not in WHO, not by SEEN."""
    cry(office, RaiseAlarm("die", "I cannot go on"))
    office.heard(phone)
    assert ("may want to die" in " ".join(office.text(phone, f"WHO {CODE}"))) is sees
    office.text(phone, f"SEEN {CODE} 0101")
    assert (standing(office) == []) is sees


def test_its_message_and_the_answer_to_it_are_shown_nowhere(
    office: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nor what an officer answers."""
    _says(monkeypatch, RaiseAlarm("die", "I cannot go on"))
    office.text(AMINA, "I cannot go on")
    office.text(OFFICER, f"TELL {CODE} 0101 I come to you now")
    office.text(OFFICER, "1")
    with office.house.store.look() as work:
        heard = work.story.heard(AMINA, 1)
        sent = work.story.sent(AMINA, 2)
        detail = work.audit.latest(1)[0].detail
    assert [(each.text, each.private) for each in heard] == [("", True)]
    assert [(each.text, each.private) for each in sent] == [("", True)] * 2
    assert detail == ""
    assert "I come to you now" in office.heard(AMINA)[-1]


def _says(monkeypatch: pytest.MonkeyPatch, *changes: Change) -> None:
    """A talk that changes this at whatever is written by a farmer."""
    from assistant.service import receive

    def turn(text: str, known: v.Known) -> v.Turn:
        found = turns.turn(text, known)
        return found if known.desk else replace(found, changes=changes)

    monkeypatch.setattr(receive, "turn", turn)


def test_an_officers_answer_to_somebody_hurt_does_not_wait_for_the_morning(
    office: Valley,
) -> None:
    """Whatever the setting says."""
    office.house = replace(office.house, urgent_breaks_quiet=False)
    office.leap("1 Jun 23:30")
    cry(office, RaiseAlarm("snake", "help"))
    office.text(OFFICER, f"TELL {CODE} 0101 Lie still, the car comes")
    office.text(OFFICER, "1")
    assert "the car comes" in office.heard(AMINA)[-1]


@pytest.mark.parametrize("village", [1, 2, None])
@pytest.mark.parametrize("phone", [AMINA, OFFICER, ELSEWHERE])
def test_a_text_names_the_person_who_is_told_first(
    office: Valley, village: int | None, phone: str
) -> None:
    """As the ladder begins."""
    with office.house.store.work() as work:
        (first, *_) = rungs(work, village, "hurt", phone)
        kept = work.people.farmer(phone) or Farmer(0, phone, None, None, None, None)
        work.people.save_farmer(replace(kept, village_id=village))
        assert at_hand(work, phone, office.now).told_first == (first.name, first.phone)


def test_where_there_is_nobody_no_person_is_named(valley: Valley, kijani: Village) -> None:
    """So that no text promises one."""
    valley.enrol(AMINA)
    assert _nearby(valley) == ""
    valley.add_officer(kijani)
    assert _nearby(valley) == f"Asha {OFFICER}"


def _nearby(valley: Valley) -> str:
    with valley.house.store.work() as work:
        known = know(work, valley.house, AMINA, "", Channel.SMS, (), valley.now)
    return known.nearby.officer
