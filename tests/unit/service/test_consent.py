"""Farmers whom an officer enrolled: asked whether they agree, and nothing else before yes."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

import pytest

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.service.consent import Enroller, enrol_one
from assistant.store import Wish
from assistant.wording import messages_answers as a
from assistant.wording import messages_people as p
from assistant.wording import messages_talk as m
from tests.valley import (
    AMINA,
    CODE,
    KIJANI,
    MWANGA,
    OFFICER,
    Staged,
    Valley,
    day,
    like,
    numbered,
    settle,
)

YES_NO = numbered(m.YES, m.NO)
INVITED = like(p.INVITED(officer="Asha"), *YES_NO)


def to_one_enrolled(valley: Valley) -> None:
    """Officer Asha has enrolled Amina of Kijani, who has the text that asks."""
    settle(valley)
    valley.add_officer(KIJANI)
    enrol(valley)


def enrol(valley: Valley, language: str = "en", wishes: tuple[Wish, ...] = ()) -> Farmer:
    """Asha puts Amina on the roll."""
    farmer = Farmer(0, AMINA, language, KIJANI.id, None, None, "Amina Juma")
    with valley.house.store.work() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        who = Enroller(officer.id, officer.name)
        kept = enrol_one(work, valley.house, who, farmer, KIJANI, "page", valley.now, wishes)
    valley.round()
    return kept


def plant(valley: Valley, farmer: Farmer, sow: date, name: str | None = None) -> None:
    """A nursery that the office planned."""
    bed = Nursery(
        id=0,
        farmer_id=farmer.id,
        label="A",
        name=name,
        inputs=FieldInputs(field_area_m2=4000.0, germination=0.85),
        area_typed="0.4 ha",
        germination_known=True,
        sow_date=sow,
        made_on=day("1 Jun"),
    )
    with valley.house.store.work() as work:
        work.nurseries.save(bed, valley.now)


@pytest.fixture
def enrolled(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_one_enrolled)


def amina(valley: Valley) -> Farmer:
    with valley.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None
    return farmer


def test_the_text_says_who_enrolled_and_asks_yes_or_no(enrolled: Valley) -> None:
    """In the farmer's language; nothing else goes."""
    assert enrolled.heard(AMINA) == [INVITED]


def test_the_text_is_in_the_language_that_the_officer_gave(valley: Valley) -> None:
    """Not the programme's first."""
    valley.add_officer(KIJANI)
    enrol(valley, "sw")
    assert valley.heard(AMINA) == [like(p.INVITED, *YES_NO, language="sw")]


def test_where_replies_are_free_the_text_says_so(valley: Valley) -> None:
    """By a setting of the programme."""
    valley.add_officer(KIJANI)
    valley.house = replace(valley.house, replies_free=True)
    enrol(valley)
    assert valley.heard(AMINA) == [like(p.INVITED_FREE(officer="Asha"), *YES_NO)]
    assert valley.text(AMINA, "1") == [like(m.ENROLLED, m.ASK_AREA)]


@pytest.mark.parametrize("said", ["1", "yes", "ok"])
def test_yes_begins_the_plan_with_the_field(enrolled: Valley, said: str) -> None:
    """A farmer imported without a field is asked for it after yes."""
    enrolled.heard(AMINA)
    assert enrolled.text(AMINA, said) == [like(m.ENROLLED, m.ASK_AREA)]
    farmer = amina(enrolled)
    assert (farmer.consent_at, farmer.name) == (enrolled.now, "Amina Juma")
    assert farmer.village_id == KIJANI.id


def test_yes_at_a_screen_does_as_well(enrolled: Valley) -> None:
    """By USSD the question stands on the first screen."""
    enrolled.heard(AMINA)
    assert "Asha put you on my list" in enrolled.dial(AMINA).text
    assert "How big is the field" in enrolled.key(AMINA, "1").text


def test_what_is_no_answer_is_asked_again(enrolled: Valley) -> None:
    """Nothing is taken for a yes."""
    enrolled.heard(AMINA)
    question = (p.INVITED(officer="Asha"), *YES_NO)
    assert enrolled.text(AMINA, "rice") == [like(m.AGAIN_YES_NO, *question)]
    assert enrolled.text(AMINA, "who are you") == [like(a.WHO, *question)]
    assert amina(enrolled).consent_at is None


def test_one_is_no_yes_to_a_question_that_never_arrived(valley: Valley) -> None:
    """Who never saw the question is asked it."""
    valley.add_officer(KIJANI)
    valley.operator.down = True
    enrol(valley)
    valley.operator.down = False
    valley.post(AMINA, "1")
    assert amina(valley).consent_at is None


def test_another_language_is_spoken_before_the_yes_too(enrolled: Valley) -> None:
    """The farmer's own word on it goes before the officer's."""
    enrolled.heard(AMINA)
    heard = enrolled.text(AMINA, "kiswahili")
    assert heard == [like(m.ASK_CONSENT, *YES_NO, language="sw")]
    assert enrolled.text(AMINA, "1") == [like(m.ENROLLED, m.ASK_AREA, language="sw")]
    assert amina(enrolled).language == "sw"


# --- what the office knew --------------------------------------------------------------------


def test_a_nursery_of_the_office_is_said_back_and_prompted_from_then_on(
    valley: Valley,
) -> None:
    """Seed is soaked two days before sowing."""
    valley.add_officer(KIJANI)
    plant(valley, enrol(valley), day("10 Jun"))
    valley.heard(AMINA)
    heard = valley.text(AMINA, "1")
    assert heard[0] == like(p.WELCOME_PLANNED)
    assert heard[1:] == [like(m.PLANNED)]
    valley.go("8 Jun 06:00")
    assert any("Soak" in text for text in valley.heard(AMINA))


def test_without_a_yes_no_prompt_and_no_warning_goes(valley: Valley) -> None:
    """Not by the calendar, not by the officer."""
    valley.add_officer(KIJANI)
    plant(valley, enrol(valley), day("2 Jun"))
    valley.heard(AMINA)
    valley.go("3 Jun 08:00")
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    assert valley.heard(AMINA) == []


def test_a_sowing_day_that_went_by_is_asked_for(valley: Valley) -> None:
    """The yes came late."""
    valley.add_officer(KIJANI)
    plant(valley, enrol(valley), day("3 Jun"))
    valley.go("4 Jun 09:00")
    valley.heard(AMINA)
    asked = m.SOWN_THAT_DAY(date=day("3 Jun"))
    assert valley.text(AMINA, "yes") == [like(m.ENROLLED, asked, *YES_NO)]
    assert valley.text(AMINA, "1") == [like(m.SOWING_MOVED)]


def test_a_part_of_a_plan_is_asked_to_its_end(valley: Valley) -> None:
    """Field and name were known; pail and day were not."""
    valley.add_officer(KIJANI)
    wish: Wish = {
        "area": 4000.0,
        "area_words": "0.4 ha",
        "germination": 85,
        "name": "River",
    }
    enrol(valley, wishes=(wish,))
    valley.heard(AMINA)
    about = p.ABOUT_BED(label="River")
    assert valley.text(AMINA, "1") == [like(m.ENROLLED, about, m.ASK_PAIL, ...)]
    valley.text(AMINA, "1")
    assert valley.text(AMINA, "10 June") == [like(m.CHECK, ...)]
    assert valley.text(AMINA, "1")[0] == like(m.PLANNED, ...)
    with valley.house.store.work() as work:
        (bed,) = work.nurseries.of_farmer(amina(valley).id)
    assert (bed.name, bed.inputs.field_area_m2) == ("River", 4000.0)


# --- no, silence, stop -----------------------------------------------------------------------


def test_no_leaves_only_the_number_and_the_no(valley: Valley) -> None:
    """Name, village, nursery and words go; nobody asks again."""
    valley.add_officer(KIJANI)
    farmer = enrol(valley)
    plant(valley, farmer, day("10 Jun"))
    valley.heard(AMINA)
    valley.text(AMINA, "who is this")
    assert valley.text(AMINA, "2") == [like(m.NO_CONSENT)]
    assert amina(valley) == Farmer(farmer.id, AMINA, None, None, None, None)
    with valley.house.store.work() as work:
        assert work.nurseries.of_farmer(farmer.id, open_only=False) == ()
        assert work.story.heard(AMINA, 10) == ()
        kept = work.enrolments.get(farmer.id)
        assert kept is not None and kept.answer == "no"
    valley.go("20 Jun 12:00")
    assert valley.heard(AMINA) == []


def test_who_said_no_may_begin_by_start(enrolled: Valley) -> None:
    """Any other word gets the same short answer."""
    enrolled.heard(AMINA)
    enrolled.text(AMINA, "no")
    assert enrolled.text(AMINA, "1") == [like(m.NO_CONSENT)]
    assert enrolled.text(AMINA, "START")[0] == like(m.ASK_LANGUAGE, ...)
    enrolled.text(AMINA, "1")
    enrolled.text(AMINA, "1")
    assert enrolled.text(AMINA, "1") == [like(m.ENROLLED, m.ASK_AREA)]


def test_silence_is_asked_about_once_by_day_and_then_left_alone(enrolled: Valley) -> None:
    """Three days later, and never again."""
    enrolled.heard(AMINA)
    enrolled.go("4 Jun 05:00")
    assert enrolled.heard(AMINA) == []
    enrolled.go("5 Jun 12:00")
    assert enrolled.heard(AMINA) == [INVITED]
    enrolled.go("30 Jun 12:00")
    assert enrolled.heard(AMINA) == []
    assert enrolled.text(AMINA, "1") == [like(m.ENROLLED, m.ASK_AREA)]


def test_stop_is_obeyed_before_any_answer(enrolled: Valley) -> None:
    """And ends the asking."""
    enrolled.heard(AMINA)
    assert enrolled.text(AMINA, "STOP") == [like(m.STOPPED)]
    enrolled.go("10 Jun 12:00")
    assert enrolled.heard(AMINA) == []
    assert enrolled.text(AMINA, "START")[0] == like(m.ASK_LANGUAGE, ...)


def test_nobody_is_asked_in_the_quiet_hours(valley: Valley) -> None:
    """The text waits for half past five."""
    valley.add_officer(KIJANI)
    valley.go("1 Jun 22:00")
    enrol(valley)
    assert valley.heard(AMINA) == []
    valley.go("2 Jun 05:31")
    assert valley.heard(AMINA) == [INVITED]


def test_who_refuses_to_sign_up_by_themselves_leaves_no_words(valley: Valley) -> None:
    """The operator's ids stay, so that a repeat is known; number and words go."""
    for words in ("hello", "1", "1"):
        valley.text(AMINA, words)
    assert valley.text(AMINA, "2", "the-last") == [like(m.NO_CONSENT)]
    with valley.house.store.work() as work:
        assert work.story.heard(AMINA, 10) == ()
        assert work.people.farmer(AMINA) is None
    assert valley.text(AMINA, "2", "the-last") == []


def test_each_answer_is_in_the_trail(enrolled: Valley) -> None:
    """Enrolled by Asha, then agreed."""
    enrolled.text(AMINA, "1")
    with enrolled.house.store.work() as work:
        done = [(each.act, each.officer) for each in work.audit.latest(10)]
    assert done == [("agreed", None), ("enrolled", "Asha")]


# --- ADD -------------------------------------------------------------------------------------


@pytest.fixture
def officers(staged: Staged) -> Iterator[Valley]:
    """An officer of two villages."""

    def way(valley: Valley) -> None:
        settle(valley)
        valley.add_officer(KIJANI, MWANGA)

    yield staged(way)


def shown(name: str, village: str, speaks: str = "English") -> object:
    return like(p.ASK_ADD(phone=AMINA, name=name, village=village, speaks=speaks), *YES_NO)


SENT = {
    "ADD {code} +447700900101 Kijani Amina Juma": ("Amina Juma", "Kijani", "English"),
    "add {code} 00447700900101 kijani": ("-", "Kijani", "English"),
    "ADD {code} +44 7700 900 101 Mto Mwanga Amina": ("Amina", "Mto Mwanga", "English"),
    "ADD {code} +447700900101 Kijani Amina Kiswahili": ("Amina", "Kijani", "Kiswahili"),
    "ADD {code} +447700900101 Kijani Amina sw": ("Amina", "Kijani", "Kiswahili"),
    "ADD {code} +447700900101 Kijni Amina": ("Amina", "Kijani", "English"),
    "ADD +447700900101 {code} Mto Mwanga": ("-", "Mto Mwanga", "English"),
}


@pytest.mark.parametrize(("sends", "back"), SENT.items(), ids=SENT.keys())
def test_an_add_is_shown_back(officers: Valley, sends: str, back: tuple[str, str, str]) -> None:
    """Number, name, village and language as they were understood."""
    assert officers.text(OFFICER, sends.format(code=CODE)) == [shown(*back)]


def test_after_one_the_farmer_is_asked(officers: Valley) -> None:
    """And not before."""
    officers.text(OFFICER, f"ADD {CODE} {AMINA} Kijani Amina Juma")
    assert officers.heard(AMINA) == []
    assert officers.text(OFFICER, "1") == [like(p.ADDED(phone=AMINA))]
    assert officers.heard(AMINA) == [INVITED]
    assert amina(officers).name == "Amina Juma"
    assert officers.text(AMINA, "1") == [like(m.ENROLLED, m.ASK_AREA)]


def test_after_two_nobody_is_enrolled(officers: Valley) -> None:
    """Nothing changed."""
    officers.text(OFFICER, f"ADD {CODE} {AMINA} Kijani")
    assert officers.text(OFFICER, "2") == [like(m.KEPT_OPEN)]
    with officers.house.store.work() as work:
        assert work.people.farmer(AMINA) is None


def test_a_village_that_is_not_read_is_asked(officers: Valley) -> None:
    """By a list of the officer's own."""
    asked = officers.text(OFFICER, f"ADD {CODE} {AMINA}")
    villages = numbered("Kijani", "Mto Mwanga")
    assert asked == [like(p.ASK_ADD_VILLAGE(phone=AMINA), *villages)]
    assert officers.text(OFFICER, "2") == [shown("-", "Mto Mwanga")]


WRONG = {
    "ADD {code} 0770 Kijani Amina": p.ADD_HOW,
    "ADD {code} Kijani Amina": p.ADD_HOW,
    "ADD {code}": p.ADD_HOW,
}


@pytest.mark.parametrize("sends", WRONG)
def test_a_number_that_is_none_is_asked_for_again(officers: Valley, sends: str) -> None:
    """With an example."""
    assert officers.text(OFFICER, sends.format(code=CODE)) == [like(WRONG[sends])]


def test_who_is_on_the_roll_already_is_told(officers: Valley) -> None:
    """As asked, as agreed, under another name, as one who said no."""
    add = f"ADD {CODE} {AMINA} Kijani"
    officers.text(OFFICER, f"{add} Amina")
    officers.text(OFFICER, "1")
    asked = p.ADD_ASKED(phone=AMINA, date=day("1 Jun"))
    assert officers.text(OFFICER, add) == [like(asked)]
    other = p.ADD_OTHER_NAME(phone=AMINA, name="Amina")
    assert officers.text(OFFICER, f"{add} Zawadi") == [like(other)]
    officers.text(AMINA, "1")
    known = p.ADD_KNOWN(phone=AMINA, name="Amina", village="Kijani")
    assert officers.text(OFFICER, add) == [like(known)]


def test_who_said_no_is_not_asked_again(officers: Valley) -> None:
    """The officer is told why."""
    officers.text(OFFICER, f"ADD {CODE} {AMINA} Kijani")
    officers.text(OFFICER, "1")
    officers.text(AMINA, "2")
    told = officers.text(OFFICER, f"ADD {CODE} {AMINA} Kijani")
    assert told == [like(p.ADD_REFUSED(phone=AMINA))]
    assert officers.heard(AMINA)[-1:] == []


def test_a_farmer_of_another_officers_village_is_not_shown(valley: Valley) -> None:
    """No name and no village."""
    valley.add_officer(MWANGA)
    valley.enrol(AMINA, village=1)
    told = valley.text(OFFICER, f"ADD {CODE} {AMINA} Mto Mwanga")
    assert told == [like(p.ADD_ELSEWHERE(phone=AMINA))]


def test_the_number_is_not_kept_in_the_officers_texts(officers: Valley) -> None:
    """Codes and numbers are blanked in what is stored."""
    officers.text(OFFICER, f"ADD {CODE} {AMINA} Kijani")
    with officers.house.store.work() as work:
        (heard,) = work.story.heard(OFFICER, 5)
    assert CODE not in heard.text and AMINA[1:] not in heard.text
