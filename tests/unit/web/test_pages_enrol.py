"""Enrolling one farmer on the page, how farmers stand, and numbers that change."""

import pytest

from assistant.channel import Fate, Handover
from assistant.wording import messages_people as p
from assistant.wording import messages_talk as m
from tests.unit.web.conftest import Browser, NewBrowser, give_password, nowhere
from tests.valley import AMINA, BARAKA, LEAD, ZAWADI, Valley, like, numbered

YES_NO = numbered(m.YES, m.NO)


def way(valley: Valley) -> None:
    """An officer of Kijani, signed in."""
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    give_password(valley)


@pytest.fixture
def officer(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    browser = new_browser()
    browser.come_in()
    browser.open("/farmers")
    return browser


def enrol(browser: Browser, phone: str = AMINA, **more: str) -> str:
    fields = {"phone": phone, "name": "Amina Juma", "village": "1", "language": "en", **more}
    return browser.send("/farmers/enrol", **fields)


def test_a_farmer_is_enrolled_and_asked(officer: Browser, valley: Valley) -> None:
    """And stands as asked until the answer."""
    page = enrol(officer)
    assert "Amina Juma is enrolled and is asked to agree" in page
    assert "Enrolled by Asha" in page and "asked Mon 1 Jun, no answer yet" in page
    assert valley.heard(AMINA) == [like(p.INVITED(officer="Asha"), *YES_NO)]
    assert "Amina Juma" in officer.open("/farmers?standing=asked")
    assert "Amina Juma" not in officer.open("/farmers?standing=agreed")
    valley.text(AMINA, "1")
    assert "Amina Juma" in officer.open("/farmers?standing=agreed")


def test_a_nursery_on_the_form_is_planned_once_they_agree(
    officer: Browser, valley: Valley
) -> None:
    """Field with its unit, day of sowing."""
    enrol(officer, area="0.4 ha", sowing="2026-06-10", germination="85")
    valley.heard(AMINA)
    assert valley.text(AMINA, "yes")[:2] == [like(p.WELCOME_PLANNED), like(m.PLANNED)]


def test_a_field_without_a_day_of_sowing_stands_on_the_farmers_page(
    officer: Browser, valley: Valley
) -> None:
    """As it was written, until a nursery is planned."""
    page = enrol(officer, area="0.4 ha")
    assert "No nursery planned yet." in page and "Field 0.4 ha" in page
    valley.heard(AMINA)
    valley.text(AMINA, "yes")
    assert "Field 0.4 ha" in officer.open("/farmers/1")


WRONG = {
    "phone": ("12", "is not a phone number"),
    "area": ("0.4", "has no unit"),
    "germination": ("many", "cannot be read as a germination"),
    "name": ("???", "is not a name"),
    "village": ("2", "The village is missing"),
}


@pytest.mark.parametrize("field", WRONG)
def test_what_cannot_be_used_is_said_and_the_form_keeps_what_was_typed(
    officer: Browser, field: str
) -> None:
    """Nothing is enrolled."""
    typed, words = WRONG[field]
    page = enrol(officer, **{field: typed})
    assert words in page
    assert 'value="Amina Juma"' in officer.page.text or field == "name"
    assert "No farmers found" in officer.open("/farmers")


def test_a_known_number_under_another_name_is_asked_about(
    officer: Browser, valley: Valley
) -> None:
    """Nothing happens before it is answered."""
    enrol(officer)
    page = enrol(officer, name="Rehema Paulo")
    assert "known as Amina Juma, in the list Rehema Paulo" in page
    page = enrol(officer, name="Rehema Paulo", owner="rename")
    assert "Rehema Paulo&#39;s details are changed" in page


def test_who_said_no_is_shown_as_such_and_not_asked_again(
    officer: Browser, valley: Valley
) -> None:
    """By the number alone; the name is gone."""
    enrol(officer)
    valley.text(AMINA, "2")
    valley.heard(AMINA)
    assert "said no Mon 1 Jun" in officer.open("/farmers?standing=no")
    assert "Amina Juma" not in officer.words()
    assert "This farmer said no and is not asked again" in enrol(officer)
    assert valley.heard(AMINA) == []


def test_the_list_is_held_to_a_stage(officer: Browser, valley: Valley) -> None:
    """Of those who have a nursery at it; with the other choices, and without a script."""
    for phone, name in ((AMINA, "Amina Juma"), (BARAKA, "Baraka Ali")):
        enrol(officer, phone, name=name)
        valley.text(phone, "1")
    valley.sow(AMINA, "30 May")
    valley.plan(BARAKA, "6 June")
    assert "Amina Juma" in officer.open("/farmers?stage=covered")
    assert "Baraka Ali" not in officer.words()
    assert "Baraka Ali" in officer.open("/farmers?stage=planned&standing=agreed")
    assert "Amina Juma" not in officer.words()
    assert "No farmers found" in officer.open("/farmers?stage=old")
    assert "Amina Juma" in officer.open("/farmers?stage=nonsense")


def test_who_does_not_answer_and_whom_no_text_reaches(officer: Browser, valley: Valley) -> None:
    """Tasks asked about twice; numbers that the operator refuses."""
    enrol(officer)
    valley.text(AMINA, "1")
    valley.sow(AMINA, "30 May")
    assert "No farmers found" in officer.open("/farmers?standing=unanswered")
    valley.go("8 Jun 12:00")
    assert "Amina Juma" in officer.open("/farmers?standing=unanswered")
    assert "Amina Juma" in officer.open("/farmers?standing=unanswered&stage=growing")
    assert "No farmers found" in officer.open("/farmers?standing=unanswered&stage=planned")
    assert "No farmers found" in officer.open("/farmers?standing=dead")
    valley.operator.answers = [Handover(Fate.FAILED, "not in use")] * 2
    for _ in range(2):
        officer.open("/farmers/1")
        officer.send("/farmers/1/text", words="Come to the office")
        valley.send()
    assert "Amina Juma" in officer.open("/farmers?standing=dead")


def test_silence_after_two_askings_is_shown(officer: Browser, valley: Valley) -> None:
    """Three days after the second."""
    enrol(officer)
    valley.go("8 Jun 08:00")
    assert "asked twice" in officer.open("/farmers?standing=silent")


def test_another_number_is_asked_before_anything_goes_to_it(
    officer: Browser, valley: Valley
) -> None:
    """The nurseries stay; the old number hears nothing more, its story is kept."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("1 Jun 09:00")
    officer.open("/farmers/1")
    page = officer.send("/farmers/1/number", phone=BARAKA)
    assert "the new one is asked to agree" in page and f"had {AMINA} until" in page
    # The latest of what passed over the old number; the rest is one press away.
    assert "On which day will you sow" in page and "Earlier messages" in page
    assert valley.heard(BARAKA) == [like(p.INVITED(officer="Asha"), *YES_NO)]
    valley.go("8 Jun 07:00")
    assert valley.heard(AMINA) == []
    assert like(p.INVITED(officer="Asha"), *YES_NO) in valley.heard(BARAKA), "asked again"
    assert valley.text(BARAKA, "1")[:2] == [like(p.WELCOME_PLANNED), like(m.PLANNED, ...)]
    valley.go("9 Jun 07:00")
    assert any("Drain" in text for text in valley.heard(BARAKA))


def test_a_number_of_another_farmer_cannot_be_given(officer: Browser, valley: Valley) -> None:
    """It says so."""
    valley.enrol(AMINA)
    valley.enrol(BARAKA)
    assert "That number belongs to another farmer" in officer.send(
        "/farmers/1/number", phone=BARAKA
    )
    assert "is not a phone number" in officer.send("/farmers/1/number", phone="12")


@pytest.mark.parametrize("way", [nowhere])
def test_the_new_owner_of_a_number_does_not_see_the_old_ones_messages(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """Each has their own story; the old one has no number any more."""
    valley.add_village("Kijani")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    lead = new_browser()
    lead.sign_in(LEAD)
    lead.open("/farmers")
    enrol(lead)
    valley.text(AMINA, "1")
    valley.go("1 Jun 09:00")
    lead.open("/farmers")
    page = enrol(lead, name="Rehema Paulo", owner="new")
    assert "Rehema Paulo is enrolled" in page and "How big is the field" not in page
    assert "put you on my list" in page
    old = lead.open("/farmers/1")
    assert "no number any more" in old and "How big is the field" in old
    assert "number to a new owner" in lead.open("/trail")


def test_a_farmer_elsewhere_is_not_touched(officer: Browser, valley: Valley) -> None:
    """Not by the form, not by another number."""
    valley.enrol(ZAWADI, village=2)
    assert "in a village that is not yours" in enrol(officer, phone=ZAWADI)
    officer.send("/farmers/1/number", phone=BARAKA)
    assert officer.page.status_code == 404
