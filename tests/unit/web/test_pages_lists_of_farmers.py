"""Taking in an office's list on the page."""

import io
import re
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from assistant.people import Village
from assistant.reminders.plan import planned
from assistant.reminders.values import Reminder
from assistant.service.known import local_date
from assistant.service.lists.sheets import MOST_ROWS
from assistant.wording import messages_people as p
from assistant.wording import messages_talk as m
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, LEAD, ZAWADI, Valley, like, numbered

LIST = f"""Simu;Jina;Kijiji;Shamba (ha);Kusia
{AMINA};Amina Juma;Kijani;0,4;2026-06-10
{BARAKA};Baraka Mosi;Kijanni;;
12;Zawadi;Kijani;;
{ZAWADI};Zawadi Asha;Mto Mwanga;;
"""


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
    return browser


def send_in(browser: Browser, content: str | bytes, name: str = "farmers.csv") -> str:
    """Sends a file in; the page that follows."""
    data = content.encode() if isinstance(content, str) else content
    browser.open("/lists")
    return browser.send("/lists", file=(io.BytesIO(data), name))


def approve(browser: Browser, number: int = 1, **more: Any) -> str:
    """Approves the columns as they were guessed."""
    columns = {f"column-{at}": what for at, what in enumerate(COLUMNS)}
    return browser.send(f"/lists/{number}", **columns, **more)


# The misspelt village, named on the same page.
NAMED: dict[str, Any] = {"named-0": "kijanni", "village-0": "1"}
COLUMNS = ("phone", "name", "village", "area", "sowing")


def take(browser: Browser, number: int = 1) -> str:
    """Takes it in as it was shown."""
    mark = browser.page.text.partition('name="mark" value="')[2].partition('"')[0]
    return browser.send(f"/lists/{number}/take", mark=mark)


def test_a_list_is_read_shown_and_taken_in(officer: Browser, valley: Valley) -> None:
    """With the columns approved and a misspelt village named."""
    page = send_in(officer, LIST)
    assert "1. What the columns contain" in page and "Kijanni" in page
    shown = approve(officer, **NAMED)
    assert "2 new farmers" in shown and "2 rows left out" in shown
    assert "is not a phone number" in shown and "is not one of your villages" in shown
    assert valley.heard(AMINA) == []
    done = take(officer)
    assert "The list is imported" in done and "2 new farmers" in done
    asked = like(p.INVITED(officer="Asha"), *numbered(m.YES, m.NO))
    valley.round()
    assert valley.heard(AMINA) == valley.heard(BARAKA) == [asked]
    assert valley.text(AMINA, "1")[0] == like(p.WELCOME_PLANNED)
    assert valley.text(BARAKA, "1") == [like(m.ENROLLED, m.ASK_AREA)]


def test_the_rows_left_out_come_as_a_file_that_can_be_sent_in_again(officer: Browser) -> None:
    """The same columns and the reason; nothing in it is a formula."""
    send_in(officer, LIST + "+1;\"=cmd|' /C calc'!A0\";Kijani;;\n")
    approve(officer)
    officer.open("/lists/1/rejects.csv")
    content = officer.page.data
    assert content.startswith(b"\xef\xbb\xbfSimu;Jina;Kijiji;Shamba (ha);Kusia;Reason\r\n")
    assert b"'=cmd|" in content and b"'+1;" in content
    assert "1. What the columns contain" in send_in(officer, content)
    again = approve(officer, 2)
    assert "0 new farmers" in again and "4 rows left out" in again


def test_the_same_list_twice_changes_nothing(officer: Browser) -> None:
    """Idempotent."""
    for number in (1, 2):
        send_in(officer, LIST)
        shown = approve(officer, number)
        if number == 1:
            take(officer, number)
    assert "0 new farmers" in shown and "There is nothing to import" in shown


def test_a_list_that_was_taken_in_is_not_taken_in_again(officer: Browser) -> None:
    """However often the button is pressed."""
    send_in(officer, LIST)
    approve(officer)
    mark = officer.page.text.partition('name="mark" value="')[2].partition('"')[0]
    officer.send("/lists/1/take", mark=mark)
    assert officer.send("/lists/1/take", mark=mark) and officer.page.status_code == 404
    assert "The list is imported" in officer.open("/lists/1")


def test_what_changed_meanwhile_is_shown_before_anything_is_kept(
    officer: Browser, valley: Valley
) -> None:
    """Somebody signed up by themselves between looking and taking in."""
    send_in(officer, LIST)
    approve(officer)
    mark = officer.page.text.partition('name="mark" value="')[2].partition('"')[0]
    valley.enrol(AMINA)
    page = officer.send("/lists/1/take", mark=mark)
    assert "The farmers on record have changed" in page and "1 changed" in page
    with valley.house.store.work() as work:
        assert work.people.farmer(BARAKA) is None


def test_two_names_on_one_number_are_asked_and_not_merged(
    officer: Browser, valley: Valley
) -> None:
    """A family's phone becomes one farmer with a nursery for each name."""
    family = f"""Phone,Name,Village,Area (ha),Sowing
{AMINA},Amina Juma,Kijani,0.4,2026-06-10
{AMINA},Baraka Mosi,Kijani,0.2,2026-06-12
"""
    send_in(officer, family)
    page = approve(officer)
    assert "One number, several names" in page and "0 new farmers" in page
    page = officer.send("/lists/1/answers", **{f"shared-{AMINA}": "family"})
    assert "1 new farmer" in page and "2 new nurseries" in page
    take(officer)
    with valley.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None and farmer.name == "Amina Juma"
        assert {bed.name for bed in work.nurseries.of_farmer(farmer.id)} == {"Amina", "Baraka"}


def test_farmers_who_agreed_get_the_days_of_their_next_season(
    officer: Browser, valley: Valley
) -> None:
    """Each the days of the own nursery, also where two sow on the same day."""
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.enrol(phone)
    rows = ((AMINA, 10, 0.4), (BARAKA, 10, 0.8), (ZAWADI, 12, 0.4))
    listed = "".join(f"{p},Kijani,{a},2026-06-{d},85%\n" for p, d, a in rows)
    send_in(officer, "Phone,Village,Area (ha),Sowing,Germination\n" + listed)
    columns = ("phone", "village", "area", "sowing", "germination")
    officer.send("/lists/1", **{f"column-{at}": what for at, what in enumerate(columns)})
    assert "3 new nurseries" in take(officer)
    today = local_date(valley.now, "Africa/Nairobi")
    with valley.house.store.look() as work:
        for phone, _, _ in rows:
            farmer = work.people.farmer(phone)
            assert farmer is not None
            (bed,) = work.nurseries.of_farmer(farmer.id)
            wanted = planned(bed, "Africa/Nairobi", valley.house.hours, today)
            kept = [replace(each, id=0) for each in work.reminders.of_nursery(bed.id)]
            assert sorted(kept, key=_place) == sorted(wanted, key=_place) != []


def _place(reminder: Reminder) -> tuple[date, str]:
    return reminder.day, reminder.task


MIXED = f"""Phone,Name,Village
{AMINA},Amina Juma,Kijani
{AMINA},Baraka Mosi,Kijani
{ZAWADI},Zawadi Asha,Kijani
"""


def mark_of(browser: Browser) -> str:
    """What the button sends of the dry run that was shown."""
    return browser.page.text.partition('name="mark" value="')[2].partition('"')[0]


def test_rows_with_an_open_question_are_not_left_out_unsaid(
    officer: Browser, valley: Valley
) -> None:
    """How many they are stands beside the button, and has to be ticked."""
    send_in(officer, MIXED)
    page = approve(officer)
    assert "Leave out the 2 rows with open questions above" in page
    assert " checked>" not in officer.page.text
    page = officer.send("/lists/1/take", mark=mark_of(officer), asks="yes")
    assert "Nothing has been imported yet. Answer the questions" in page
    with valley.house.store.look() as work:
        assert work.people.farmer(ZAWADI) is None
    page = officer.send("/lists/1/take", mark=mark_of(officer), asks="yes", without="on")
    assert "The list is imported" in page and "1 new farmer" in page
    assert "2 rows left out" in page


def test_an_answer_given_beside_the_button_is_not_lost(officer: Browser) -> None:
    """It is counted in and shown once more; then nothing is asked any longer."""
    send_in(officer, MIXED)
    approve(officer)
    answer = {f"shared-{AMINA}": "family"}
    mark = mark_of(officer)
    page = officer.send("/lists/1/take", mark=mark, asks="yes", without="on", **answer)
    assert "Your answers are included" in page and "2 new farmers" in page
    assert "open question" not in page
    page = officer.send("/lists/1/take", mark=mark_of(officer), **answer)
    assert "The list is imported" in page and "2 new farmers" in page


def test_questions_without_an_answer_come_first(officer: Browser) -> None:
    """A page shows fifty: those answered make room for the others."""
    phones = [f"+447700900{n:03}" for n in range(60)]
    rows = "".join(f"{each},Amina,Kijani\n{each},Baraka,Kijani\n" for each in phones)
    send_in(officer, "Phone,Name,Village\n" + rows)
    approve(officer)
    asked = re.findall(r'"shared-([+0-9]+)" value="leave"', officer.page.text)
    assert asked == phones[:50]
    officer.send("/lists/1/answers", **{f"shared-{each}": "leave" for each in asked})
    asked = re.findall(r'"shared-([+0-9]+)" value="leave"', officer.page.text)
    assert asked[:10] == phones[50:]


@pytest.mark.parametrize(
    ("answer", "old_has_phone", "open_beds"),
    [("rename", True, 1), ("heir", False, 1), ("new", False, 0)],
)
def test_a_number_under_another_name_is_decided_by_the_officer(
    officer: Browser, valley: Valley, answer: str, old_has_phone: bool, open_beds: int
) -> None:
    """The old story is kept; the nurseries stay, go along, or are closed."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    with valley.house.store.work() as work:
        kept = work.people.farmer(AMINA)
        assert kept is not None
        work.enrolments.mend_farmers({kept.id: {"name": "Amina Juma"}})
    send_in(officer, f"Phone,Name,Village\n{AMINA},Rehema Paulo,Kijani\n")
    page = approve(officer)
    assert "known as Amina Juma, in the list Rehema Paulo" in page
    assert "There is nothing to import" in page
    officer.send("/lists/1/answers", **{f"owner-{AMINA}": answer})
    take(officer)
    with valley.house.store.work() as work:
        old, now = work.people.farmer_by_id(kept.id), work.people.farmer(AMINA)
        assert old is not None and now is not None and now.name == "Rehema Paulo"
        assert bool(old.phone) is old_has_phone
        assert len(work.nurseries.of_farmer(now.id)) == open_beds
        assert (now.consent_at is not None) is old_has_phone


def test_a_list_is_for_its_own_officer_only(
    officer: Browser, valley: Valley, new_browser: NewBrowser
) -> None:
    """Not even for the lead: it holds what is not on the roll yet."""
    send_in(officer, LIST)
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    lead = new_browser()
    lead.sign_in(LEAD)
    lead.open("/lists/1")
    assert lead.page.status_code == 404


WRONG = {
    "nothing": (b"", "There is nothing in that file"),
    "blanks": (b"\n\n ;;\n", "There is nothing in that file"),
    "old": (b"\xd0\xcf\x11\xe0" + b"x" * 100, "Save it as XLSX or CSV"),
    "broken": (b"PK\x03\x04 no", "That file is damaged"),
    "long": (b"a;b\n" + b"1;2\n" * (MOST_ROWS + 2), "too many rows"),
}


@pytest.mark.parametrize("kind", WRONG)
def test_a_file_that_cannot_be_read_says_why(officer: Browser, kind: str) -> None:
    """And what to do."""
    content, words = WRONG[kind]
    assert words in send_in(officer, content)


def test_a_long_list_may_be_longer_than_other_forms(officer: Browser) -> None:
    """Others are held to 256 kB."""
    rows = "".join(f"+99900{n:07};Farmer;Kijani\n" for n in range(15_000))  # 460 kB
    page = send_in(officer, "Phone;Name;Village\n" + rows)
    assert "1. What the columns contain" in page


def test_an_example_can_be_had(officer: Browser) -> None:
    """Its columns are recognised when it comes back."""
    officer.open("/lists/example.csv")
    assert officer.page.data.decode("utf-8-sig").startswith("Phone number,Name of the farmer")


def test_a_list_taken_in_by_mistake_is_taken_back(officer: Browser, valley: Valley) -> None:
    """Who has not answered is off the roll with the text that waits; who agreed stays."""
    send_in(officer, LIST)
    approve(officer, **NAMED)
    take(officer)
    valley.round()
    valley.text(AMINA, "1")
    officer.open("/lists/1/outcome")
    assert "Tick the box first" in officer.send("/lists/1/withdraw")
    shown = officer.send("/lists/1/withdraw", sure="on")
    assert "1 farmer is removed again" in shown and "undone" in shown
    roll = officer.open("/farmers")
    assert "Amina Juma" in roll and "Baraka" not in roll
    officer.send("/lists/1/withdraw", sure="on")
    assert officer.page.status_code == 404


def test_a_list_moves_nobody_who_is_known_unless_it_is_said(
    officer: Browser, valley: Valley
) -> None:
    """Rain warnings are sent by village."""
    valley.add_officer(*_villages(valley))
    send_in(officer, LIST)
    approve(officer)
    take(officer)
    moved = f"Simu;Jina;Kijiji;Shamba (ha);Kusia\n{AMINA};Amina Juma;Mto Mwanga;;\n"
    send_in(officer, moved)
    shown = approve(officer, 2)
    assert (
        "1 known farmer lives in another village" in shown
        and "already registered in Kijani" in shown
    )
    shown = officer.send("/lists/2/answers", moves="yes")
    assert "village: Kijani -&gt; Mto Mwanga" in shown
    take(officer, 2)
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None and farmer.village_id == 2


def _villages(valley: Valley) -> tuple[Village, ...]:
    with valley.house.store.look() as work:
        return work.people.villages()


MESSY = f"""Phone,Name,Village,Area (ha),Sowing
{AMINA},Amina Juma,Kijani,3 bigha or so,mid December
{BARAKA},Baraka Mosi,Kijjjni,0.4,2026-06-10
"""


def test_rows_left_out_are_corrected_on_the_page(officer: Browser) -> None:
    """All reasons of a row stand beside its cells, and what is typed there counts."""
    send_in(officer, MESSY)
    page = approve(officer)
    assert "2 rows left out" in page
    assert "cannot be read as a field size" in page and "cannot be read as a date" in page
    cells = {"cell-2-3": "0.3", "cell-2-4": "2026-06-12", "cell-3-2": "Kijani"}
    page = officer.send("/lists/1/answers", **cells)
    assert "2 new farmers" in page and "0 rows left out" in page
    assert "The list is imported" in take(officer)


def test_people_are_taken_without_cells_that_cannot_be_read(officer: Browser) -> None:
    """By one button, which can be pressed back; each cell left out is named."""
    send_in(officer, MESSY)
    page = approve(officer)
    assert "1 person is left out only because of a cell" in page
    page = officer.send("/lists/1/answers", leave_cells="yes")
    assert "1 new farmer" in page and "left out: &#39;3 bigha" in officer.page.text
    page = officer.send("/lists/1/answers", leave_cells="no")
    assert "0 new farmers" in page and "2 rows left out" in page


def test_a_row_that_is_left_out_still_names_the_phones_other_owner(officer: Browser) -> None:
    """Husband and wife: hers cannot be read, so his does not take the phone unasked."""
    family = f"""Phone,Name,Village,Sowing
{AMINA},Baraka Mosi,Kijani,2026-06-10
{AMINA},Amina Juma,Kijani,when it rains
"""
    send_in(officer, family)
    columns = {f"column-{at}": what for at, what in enumerate(("phone", "name", "village"))}
    page = officer.send("/lists/1", **columns, **{"column-3": "sowing"})
    assert "One number, several names" in page and "0 new farmers" in page
    page = officer.send("/lists/1/answers", **{f"shared-{AMINA}": "family"})
    assert "1 new farmer" in page and "1 row left out" in page


def test_what_the_asking_takes_is_shown(officer: Browser) -> None:
    """Segments always; money where a price is set."""
    send_in(officer, LIST)
    assert "1 text asks for agreement: 2 segments, price not set" in approve(officer)
