"""An officer by text: warn, count, clear, see who needs a visit."""

import re
from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.alphabet import cost
from assistant.dialogue.officer import more_words
from assistant.people import Village
from assistant.service.morning import gathered
from assistant.service.sight import sight_of
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    KIJANI,
    LEAD,
    MWANGA,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    like,
    numbered,
    settle,
)

YES_NO = numbered(m.YES, m.NO)


def to_valley_of_three(valley: Valley) -> None:
    """In Kijani Amina is on day 2 and Baraka sows tomorrow; in Mto Mwanga Zawadi is on day 9.

    The officer serves both villages. It is eight in the morning of 1 June."""
    settle(valley)
    valley.add_officer(KIJANI, MWANGA)
    valley.enrol(AMINA, village=1)
    valley.sow(AMINA, "30 May")
    valley.enrol(BARAKA, village=1, language=2)
    valley.plan(BARAKA, "2 June")
    valley.enrol(ZAWADI, village=2)
    valley.sow(ZAWADI, "23 May")
    valley.go("1 Jun 09:00")
    for phone in (AMINA, BARAKA, ZAWADI, OFFICER):
        valley.heard(phone)


@pytest.fixture
def valley_of_three(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_valley_of_three)


def ask_warn(hours: str, date: str, phones: int, young: int, soon: int) -> object:
    """What is shown back before a warning goes."""
    start, end = hours.split("-")
    say = o.ASK_WARN(
        village="Kijani",
        from_time=start,
        to_time=end,
        date=date,
        phones=phones,
        young=young,
        soon=soon,
    )
    return like(say, *YES_NO)


# what the officer sends: what is shown back
HOURS = {
    "RAIN {code} Kijani 14-20": ("14:00-20:00", "Mon 1 Jun"),
    "rain {code} kijani 14:30-16:00": ("14:30-16:00", "Mon 1 Jun"),
    "RAIN {code} Kijani 1430 - 1600h": ("14:30-16:00", "Mon 1 Jun"),
    "RAIN {code} Kijani 14 to 20": ("14:00-20:00", "Mon 1 Jun"),
    "RAIN {code} Kijani 22-4": ("22:00-04:00", "Mon 1 Jun"),
    "RAIN {code} Kijani 18-24": ("18:00-00:00", "Mon 1 Jun"),
    "RAIN {code} Kijani TOMORROW 6-12": ("06:00-12:00", "Tue 2 Jun"),
    "RAIN {code} Kijani 2/6 6-12": ("06:00-12:00", "Tue 2 Jun"),
    "RAIN {code} Kijani 2 June 6-12": ("06:00-12:00", "Tue 2 Jun"),
}


@pytest.mark.parametrize(("sends", "shown"), HOURS.items(), ids=HOURS.keys())
def test_the_hours_are_shown_back_with_who_is_in_danger(
    valley_of_three: Valley, sends: str, shown: tuple[str, str]
) -> None:
    """Amina's nursery is young, Baraka is about to sow, Zawadi lives elsewhere."""
    expected = ask_warn(*shown, phones=2, young=1, soon=1)
    assert valley_of_three.text(OFFICER, sends.format(code=CODE)) == [expected]


REFUSED = {
    "RAIN {code} Nowhere 14-20": o.NO_SUCH_VILLAGE,
    "RAIN {code} 14-20": o.NO_SUCH_VILLAGE,
    "RAIN {code} Kijani": o.NO_HOURS,
    "RAIN {code} Kijani 25-30": o.NO_HOURS,
    "RAIN {code} Kijani 14:70-20": o.NO_HOURS,
    "RAIN {code} Kijani 6-8": o.HOURS_PAST,
    "RAIN {code} Mto Mwanga 14-20": o.NOBODY_TO_WARN,
    "COUNT {code} Kijani": o.NO_WARNING,
    "CLEAR {code} Kijani": o.NO_WARNING,
    "COUNT {code}": o.NO_SUCH_VILLAGE,
    "WHO {code}": o.NOBODY_TO_SEE,
    "RAIN 000000 Kijani 14-20": o.NEED_CODE,
    "WHO": o.NEED_CODE,
    "good morning": o.OFFICER_HELP,
    "HELP": o.OFFICER_HELP,
}


@pytest.mark.parametrize(("sends", "hears"), REFUSED.items(), ids=REFUSED.keys())
def test_what_cannot_be_done_is_said_with_what_to_send(
    valley_of_three: Valley, sends: str, hears: Message
) -> None:
    """And nothing goes to anybody."""
    more = (more_words("en"),) if hears is o.OFFICER_HELP else ()
    assert valley_of_three.text(OFFICER, sends.format(code=CODE)) == [like(hears, *more)]
    assert valley_of_three.heard(AMINA) == valley_of_three.heard(BARAKA) == []


def warn(valley: Valley, hours: str = "14-20") -> None:
    """The officer warns Kijani."""
    valley.text(OFFICER, f"RAIN {CODE} Kijani {hours}")
    assert valley.text(OFFICER, "1") == [like(o.WARNED(phones=2, village="Kijani"))]


def test_on_yes_the_warning_goes_to_those_phones_in_their_languages(
    valley_of_three: Valley,
) -> None:
    """Who is young covers, who is about to sow waits, who is elsewhere hears nothing."""
    warn(valley_of_three)
    assert valley_of_three.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]
    assert valley_of_three.heard(BARAKA) == [
        like(m.WARNING_WAIT, r.UNDERSTOOD_OR_HELP, language="sw")
    ]
    assert valley_of_three.heard(ZAWADI) == []


def test_on_no_nothing_goes(valley_of_three: Valley) -> None:
    """And a yes that comes later is a yes to nothing."""
    valley_of_three.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    assert valley_of_three.text(OFFICER, "2") == [like(m.KEPT_OPEN)]
    assert valley_of_three.text(OFFICER, "1") == [like(o.OFFICER_HELP, more_words("en"))]
    assert valley_of_three.heard(AMINA) == []


def test_a_yes_after_the_hours_are_over_warns_nobody(valley_of_three: Valley) -> None:
    """The officer's phone was off."""
    valley_of_three.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley_of_three.go("1 Jun 20:30")
    assert valley_of_three.text(OFFICER, "1") == [like(o.OFFICER_HELP, more_words("en"))]
    assert valley_of_three.heard(AMINA) == []


def test_a_yes_that_comes_twice_warns_once(valley_of_three: Valley) -> None:
    """The operator delivers it again."""
    valley_of_three.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley_of_three.text(OFFICER, "1", gateway_id="yes")
    assert valley_of_three.text(OFFICER, "1", gateway_id="yes") == []
    assert valley_of_three.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]


def count(valley: Valley, asked: int, delivered: int, covered: int, need: int) -> None:
    """What COUNT says."""
    answer = valley.text(OFFICER, f"COUNT {CODE} Kijani")[-1]
    assert answer.endswith(
        f"{asked} asked, {delivered} reached, {covered} covered, {need} need help."
    )


def test_the_answers_are_counted(valley_of_three: Valley) -> None:
    """Reached is what a receipt says."""
    valley_of_three.operator.receipts = False
    warn(valley_of_three)
    count(valley_of_three, 2, 0, 0, 0)
    valley_of_three.deliver(*valley_of_three.operator.delivered[-3:-1])
    valley_of_three.text(AMINA, "1")
    valley_of_three.text(BARAKA, "2")
    assert valley_of_three.heard(OFFICER) == [
        like(o.HELP_IN_RAIN(phone=BARAKA, village="Kijani"))
    ]


def test_covered_and_need_help_are_counted_apart(valley_of_three: Valley) -> None:
    """One each."""
    warn(valley_of_three)
    valley_of_three.text(AMINA, "1")
    valley_of_three.text(BARAKA, "2")
    count(valley_of_three, 2, 2, 1, 1)


def test_somebody_hurt_under_a_warning_needs_help(valley_of_three: Valley) -> None:
    """Counted so, and the officer is told once, of the person and not of the bed."""
    warn(valley_of_three)
    valley_of_three.text(BARAKA, "my wife has been bitten by a snake")
    assert len(valley_of_three.heard(OFFICER)) == 1
    count(valley_of_three, 2, 2, 0, 1)


def test_the_all_clear_goes_to_who_was_asked(valley_of_three: Valley) -> None:
    """Then no warning stands, and COUNT has nothing to count."""
    warn(valley_of_three)
    valley_of_three.heard(AMINA), valley_of_three.heard(BARAKA)
    cleared = like(o.CLEARED(village="Kijani"))
    assert valley_of_three.text(OFFICER, f"CLEAR {CODE} Kijani") == [cleared]
    assert valley_of_three.heard(AMINA) == [
        like(m.ALL_CLEAR(village="Kijani", labels="A"), r.STAY_SAFE)
    ]
    assert valley_of_three.heard(BARAKA) == [like(m.ALL_CLEAR, r.STAY_SAFE, language="sw")]
    assert valley_of_three.heard(ZAWADI) == []
    nothing = [like(o.NO_WARNING(village="Kijani"))]
    assert valley_of_three.text(OFFICER, f"COUNT {CODE} Kijani") == nothing


def test_who_stopped_is_not_warned(valley_of_three: Valley) -> None:
    """STOP is stop."""
    valley_of_three.text(AMINA, "STOP")
    shown = valley_of_three.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    assert shown == [ask_warn("14:00-20:00", "Mon 1 Jun", phones=1, young=0, soon=1)]


def test_a_warning_and_its_all_clear_break_the_quiet_hours(valley_of_three: Valley) -> None:
    """Rain does not wait for the morning, nor who watches over a bed in the dark."""
    valley_of_three.go("1 Jun 22:00")
    valley_of_three.heard(AMINA)
    warn(valley_of_three, "23-4")
    assert valley_of_three.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]
    valley_of_three.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert valley_of_three.heard(AMINA) == [like(m.ALL_CLEAR, r.STAY_SAFE)]


def test_the_hours_are_the_villages_own(valley: Valley) -> None:
    """14 to 20 in Dhaka (UTC+6) is 8 to 14 UTC; the programme is in Nairobi."""
    sonar = valley.add_village("Sonar", "Asia/Dhaka")
    valley.add_officer(sonar)
    valley.enrol(AMINA, village=3)
    valley.sow(AMINA, "30 May")
    valley.text(OFFICER, f"RAIN {CODE} 14-20")
    valley.text(OFFICER, "1")
    with valley.house.store.work() as work:
        (standing,) = work.warnings.standing(sonar.id, valley.now)
    hours = (standing.starts_at.isoformat(), standing.ends_at.isoformat())
    assert hours == ("2026-06-01T08:00:00+00:00", "2026-06-01T14:00:00+00:00")


def test_a_lead_serves_every_village(valley_of_three: Valley) -> None:
    """Without having been given any."""
    valley_of_three.add_officer(phone=LEAD, lead=True)
    assert valley_of_three.text(LEAD, f"RAIN {CODE} Kijani 14-20") == [
        ask_warn("14:00-20:00", "Mon 1 Jun", phones=2, young=1, soon=1)
    ]


def test_an_officer_cannot_warn_a_village_of_another(
    valley: Valley, kijani: Village, mwanga: Village
) -> None:
    """The names of the officer's own are said."""
    valley.add_officer(mwanga)
    hears = o.NO_SUCH_VILLAGE(villages="Mto Mwanga", example="RAIN")
    assert valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20") == [like(hears)]


def test_an_officer_who_farms_loses_no_talk_to_a_slip(valley: Valley, kijani: Village) -> None:
    """A warning, a wrong one and a count come between two answers about the own field."""
    valley.add_officer(kijani)
    valley.enrol(OFFICER)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.text(OFFICER, "0.4 ha")
    for sends in ("RAIN 000000 Kijani", f"RAIN {CODE} Nowhere 14-20", f"COUNT {CODE} Kijani"):
        valley.text(OFFICER, sends)
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    assert valley.text(OFFICER, "1")[-1] == like(m.KEPT_SO_FAR, m.ASK_GERMINATION)
    assert valley.text(OFFICER, "85") == [like(m.ASK_PAIL, ...)]


def test_an_officer_who_stopped_their_own_texts_can_still_warn(
    valley: Valley, kijani: Village
) -> None:
    """The farmer stopped, not the officer."""
    valley.add_officer(kijani)
    valley.enrol(OFFICER)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.text(OFFICER, "STOP")
    (shown,) = valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    assert shown == like(o.ASK_WARN, *YES_NO)
    assert valley.text(OFFICER, "1")[0] == like(o.WARNED)
    assert like(m.WARNING, r.COVERED_OR_HELP) in valley.heard(AMINA)


def test_who_needs_a_visit_is_told_with_the_reason(valley_of_three: Valley) -> None:
    """A call for help comes before a silence."""
    valley_of_three.text(ZAWADI, "OFFICER")
    valley_of_three.text(ZAWADI, "see my papers")
    notice = valley_of_three.heard(OFFICER)
    assert notice == [like(o.HELP_NOTICE)]
    valley_of_three.go("5 Jun 00:05")  # Amina's day 5 passed without an answer
    (who,) = valley_of_three.text(OFFICER, f"WHO {CODE}")
    lines = who.splitlines()
    assert lines[0].startswith(f"{ZAWADI} nursery")
    assert any(AMINA in line and "uncover" in line for line in lines)
    assert t.N_UNCOVER.text in who


def test_who_may_name_a_village(valley_of_three: Valley) -> None:
    """Then it is of that one alone; a call that is about no nursery names none."""
    valley = valley_of_three
    with valley.house.store.work() as work:
        work.calls.add(3, None, "officer", "", valley.now)
    valley.go("5 Jun 00:05")
    (there,) = valley.text(OFFICER, f"WHO {CODE} mto mwanga")
    assert there.startswith(f"{ZAWADI}, Mto Mwanga: ") and AMINA not in there
    (here,) = valley.text(OFFICER, f"WHO {CODE} Kijani")
    assert AMINA in here and ZAWADI not in here
    nowhere = valley.text(OFFICER, f"WHO {CODE} Nowhere")
    assert nowhere == [like(o.NO_SUCH_VILLAGE(villages="Kijani, Mto Mwanga", example="WHO"))]


def test_who_lists_what_the_page_of_the_morning_lists(valley_of_three: Valley) -> None:
    """One source for both: silence, signs, old seedlings, beds under a warning."""
    valley = valley_of_three
    valley.go("5 Jun 00:05")
    with valley.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        sight = sight_of(work, officer)
        _, to_see = gathered(work, valley.house, sight, valley.now)
    (who,) = valley.text(OFFICER, f"WHO {CODE}")
    assert [line.split()[0] for line in who.splitlines()] == [
        line.farmer.phone for line in to_see
    ]
    assert to_see


def test_a_call_in_the_night_waits_for_the_morning(valley_of_three: Valley) -> None:
    """Unless it rains."""
    valley_of_three.go("1 Jun 21:00")
    valley_of_three.text(ZAWADI, "OFFICER")
    valley_of_three.text(ZAWADI, "see my papers")
    assert valley_of_three.heard(OFFICER) == []
    valley_of_three.leap("2 Jun 05:30")
    assert valley_of_three.heard(OFFICER) == [like(o.HELP_NOTICE)]


def test_a_cry_in_own_words_is_held_back_by_no_setting(valley_of_three: Valley) -> None:
    """Day or night."""
    valley = valley_of_three
    valley.go("1 Jun 23:00")
    valley.heard(OFFICER)
    valley.house = replace(valley.house, urgent_breaks_quiet=False)
    valley.text(ZAWADI, "a storm took the cover off")
    (notice,) = valley.heard(OFFICER)
    assert "a storm took the cover off" in notice and notice.endswith(o.GO_SAFELY.text)


def test_a_flood_or_storm_in_the_night_reaches_the_officer_at_once(
    valley_of_three: Valley,
) -> None:
    """As rain does, with the caution; chosen from a list too, whatever a setting says."""
    valley, sends = valley_of_three, ("PROBLEM", "5", "2")
    valley.go("1 Jun 23:00")
    valley.heard(OFFICER)
    for words in sends:
        valley.text(ZAWADI, words)
    (notice,) = valley.heard(OFFICER)
    assert "flood" in notice and notice.endswith(o.GO_SAFELY.text)
    valley.house = replace(valley.house, urgent_breaks_quiet=False)
    for words in sends:
        valley.text(AMINA, words)
    assert len(valley.heard(OFFICER)) == 1


def test_a_notice_and_the_list_name_the_farmer(valley_of_three: Valley) -> None:
    """Before the number, in one segment with the village; a long name is cut, no number is."""
    valley = valley_of_three
    with valley.house.store.work() as work:
        farmer = work.people.farmer(ZAWADI)
        assert farmer is not None
        long = "Zawadi Mwanahamisi Ramadhan wa Mtoni"
        work.people.save_farmer(replace(farmer, name=long))
    valley.text(ZAWADI, "OFFICER")
    valley.text(ZAWADI, "see my papers")
    (notice,) = valley.heard(OFFICER)
    assert notice.startswith(f"Help wanted: Zawadi Mwanahamis... {ZAWADI}, Mto Mwanga")
    assert cost(notice).segments == 1
    assert valley.text(OFFICER, f"WHO {CODE}")[0].startswith(f"Zawadi Mwanahamis... {ZAWADI}")


def test_a_call_held_up_by_the_operator_does_not_come_at_night(
    valley_of_three: Valley,
) -> None:
    """It could not leave at 19:55, and waits for the morning."""
    valley_of_three.go("1 Jun 19:55")
    valley_of_three.operator.down = True
    valley_of_three.text(ZAWADI, "OFFICER")
    valley_of_three.text(ZAWADI, "see my papers")
    valley_of_three.leap("1 Jun 20:05")
    valley_of_three.operator.down = False
    valley_of_three.leap("1 Jun 22:00")
    assert valley_of_three.heard(OFFICER) == []
    assert like(m.CALL_NOTED) in valley_of_three.heard(ZAWADI)  # she asked for an answer
    valley_of_three.leap("2 Jun 05:30")
    assert valley_of_three.heard(OFFICER) == [like(o.HELP_NOTICE)]


def test_one_all_clear_ends_two_warnings(valley_of_three: Valley) -> None:
    """The first was too short; the farmers asked by either hear once that it is over."""
    warn(valley_of_three)
    warn(valley_of_three, "14-23")
    valley_of_three.heard(AMINA)
    valley_of_three.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert valley_of_three.heard(AMINA) == [
        like(m.ALL_CLEAR(village="Kijani", labels="A"), r.STAY_SAFE)
    ]
    with valley_of_three.house.store.work() as work:
        assert work.warnings.standing(KIJANI.id, valley_of_three.now) == ()


def test_a_bed_closed_meanwhile_hears_no_all_clear(valley_of_three: Valley) -> None:
    """There is nothing to look at."""
    warn(valley_of_three)
    for sends in ("1", "CLOSE", "1"):  # covered; close it; yes
        valley_of_three.text(AMINA, sends)
    valley_of_three.heard(AMINA)
    valley_of_three.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert valley_of_three.heard(AMINA) == []


def test_seed_that_is_not_sown_yet_is_not_to_be_covered(valley_of_three: Valley) -> None:
    """On the morning of his day of sowing Baraka is told to wait."""
    valley_of_three.go("2 Jun 09:00")
    valley_of_three.heard(BARAKA)
    shown = valley_of_three.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    assert shown == [ask_warn("14:00-20:00", "Tue 2 Jun", phones=2, young=1, soon=1)]
    valley_of_three.text(OFFICER, "1")
    assert valley_of_three.heard(BARAKA) == [
        like(m.WARNING_WAIT, r.UNDERSTOOD_OR_HELP, language="sw")
    ]


def test_a_farmer_of_no_village_of_ours_reaches_the_lead(valley_of_three: Valley) -> None:
    """ "Not in this list" is no reason to be left alone."""
    valley_of_three.add_officer(phone=LEAD, lead=True)
    stranger = "+447700900199"
    valley_of_three.enrol(stranger, village=3)
    assert valley_of_three.heard(LEAD) == [like(o.HELP_NOTICE)]
    valley_of_three.leap(valley_of_three.now + timedelta(hours=2))  # sooner it is one call
    valley_of_three.text(stranger, "OFFICER")
    valley_of_three.text(stranger, "nobody comes here")
    assert valley_of_three.heard(LEAD) == [like(o.HELP_NOTICE)]
    assert valley_of_three.heard(OFFICER) == []


def test_all_the_words_of_a_call_are_kept_and_a_text_shows_what_it_has_room_for(
    valley_of_three: Valley,
) -> None:
    """The officer reads them whole on the page."""
    words = (
        "Water runs over the bed since noon. " * 4 + "My son carries the mats to the school."
    )
    valley_of_three.text(ZAWADI, "OFFICER")
    (noted,) = valley_of_three.text(ZAWADI, words)
    assert noted == like(m.CALL_NOTED(words=words[:97].rstrip() + "..."))
    (notice,) = valley_of_three.heard(OFFICER)
    assert '..."' in notice
    with valley_of_three.house.store.look() as work:
        assert [call.words for call in work.calls.open(None)] == [words]


@pytest.mark.parametrize(
    ("sends", "told"),
    [
        (("PROBLEM", "4"), "called: animals or insects, since"),
        (("OFFICER", "see my papers"), 'called: wants you, "see my papers", since'),
        (
            ("OFFICER", "see my papers and all of the forms I have"),
            'called: wants you, "see my papers and all...", since',
        ),
    ],
)
def test_who_tells_the_trouble_of_a_call(
    valley_of_three: Valley, sends: tuple[str, ...], told: str
) -> None:
    """In short words, so that a line of the list stays within a segment."""
    for words in sends:
        valley_of_three.text(ZAWADI, words)
    line = valley_of_three.text(OFFICER, f"WHO {CODE}")[-1].splitlines()[0]
    assert told in line
    assert cost(line).segments == 1


def test_an_officers_hours_are_in_the_digits_of_their_language(
    valley_of_three: Valley,
) -> None:
    """As all other numbers are (CLDR: Bengali counts in its own digits); what has to be typed
    back is in those of the keys."""
    valley = valley_of_three
    catalogues = {**valley.house.catalogues, "bn": open_catalogue("bn")}
    valley.house = replace(valley.house, catalogues=catalogues, lexicons=open_lexicons())
    with valley.house.store.work() as work:
        asha = work.people.officer(OFFICER)
        assert asha is not None
        work.accounts.set_language(asha.id, "bn")
    (asked,) = valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    words, _, keys = asked.partition("\n")
    assert "১৪:০০" in words and "২০:০০" in words and not re.search("[0-9]", words)
    assert keys.startswith("1 ")
