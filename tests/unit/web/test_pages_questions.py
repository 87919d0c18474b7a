"""The page of the answering desk: a lead adds, somebody else reads, farmers are answered."""

import pytest

from assistant.wording import messages_answers as a
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley, like

FERRY = {
    "language": "en",
    "where": "",
    "ways": "when does the ferry run\nferry hours",
    "answer": "The ferry runs at 7 and at 16.",
}


def way(valley: Valley) -> None:
    """A lead and an officer; Amina lives in Kijani and wrote what nobody could read."""
    kijani = valley.add_village("Kijani")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    valley.enrol(AMINA)
    valley.text(AMINA, "gobbledegook xyzzy")


@pytest.fixture
def lead(new_browser: NewBrowser) -> Browser:
    """The lead, signed in."""
    found = new_browser()
    found.come_in(LEAD)
    found.open("/questions")
    return found


@pytest.fixture
def officer(new_browser: NewBrowser) -> Browser:
    """The officer of Kijani, signed in."""
    found = new_browser()
    found.come_in(OFFICER)
    found.open("/questions")
    return found


def test_a_second_reader_finds_it_among_what_waits(lead: Browser, officer: Browser) -> None:
    """With a link, and counted; who added it does not, nor anybody once it is read."""
    lead.send("/questions/new", **FERRY)
    head = "Office answers for you to read"
    shown = officer.open("/morning")
    assert head in shown and "when does the ferry run" in shown
    assert 'href="/questions#to-read"' in officer.page.text
    assert head not in lead.open("/morning")
    officer.open("/questions")
    officer.send("/questions/1/use")
    assert head not in officer.open("/morning")


def test_a_question_of_another_village_waits_for_others(
    valley: Valley, lead: Browser, officer: Browser
) -> None:
    """Only who may read it sees it."""
    valley.add_village("Mto Mwanga")
    lead.send("/questions/new", **{**FERRY, "where": "Mto Mwanga"})
    assert "Office answers for you to read" not in officer.open("/morning")


def test_a_question_is_added_by_one_and_read_by_another(
    valley: Valley, lead: Browser, officer: Browser
) -> None:
    """The second reader sees the answer as a farmer gets it, and a figure is pointed at."""
    shown = lead.send("/questions/new", **FERRY)
    assert "Kept." in shown and "You added it" in shown and "It is right" not in shown
    assert lead.send("/questions/1/use") and lead.page.status_code == 404
    shown = officer.open("/questions")
    assert "Valley office: The ferry runs at 7 and at 16." in shown
    assert "It holds a figure" in shown and "It is right: use it" in shown
    shown = officer.send("/questions/1/use")
    assert "In use from now on." in shown and "Withdraw" not in shown
    said = a.OFFICE_SAYS(programme="Valley", answer=FERRY["answer"])
    assert valley.text(AMINA, "when does the ferry run?") == [like(said, ...)]
    shown = lead.open("/questions")
    assert "when does the ferry run office 1 0" in shown
    assert "Withdrawn" in lead.send("/questions/1/withdraw")
    with valley.house.store.look() as work:
        acts = [line.act for line in work.audit.latest(3)]
    assert acts == ["question_withdrawn", "question_read", "question_added"]


def test_what_is_wrong_is_shown_with_what_was_typed(lead: Browser) -> None:
    """Nothing is kept, nothing is lost."""
    shown = lead.send("/questions/new", **{**FERRY, "answer": "Spray in the morning."})
    assert lead.page.status_code == 422
    assert 'may be named: "spray*"' in shown.replace("&#34;", '"')
    assert "ferry hours" in lead.page.text and "Spray in the morning." in lead.page.text


def test_an_unread_reply_is_made_a_question(lead: Browser, officer: Browser) -> None:
    """By a lead, from the page of such replies; its month is counted."""
    lead.open("/messages/unread")
    assert "Make a question of it" in lead.words()
    lead.open("/questions/new?unread=1")
    assert "gobbledegook xyzzy</textarea>" in lead.page.text
    assert "1 reply could not be read" in lead.open("/questions")
    officer.open("/messages/unread")
    assert "Make a question of it" not in officer.words()
    for path in ("/questions/new", "/questions/new?unread=1"):
        officer.open(path)
        assert officer.page.status_code == 404
    officer.send("/questions/new", **FERRY)
    assert officer.page.status_code == 404


def test_a_question_is_added_like_another(lead: Browser) -> None:
    """Changing an answer is a new question, which is read anew."""
    lead.send("/questions/new", **{**FERRY, "where": "Kijani"})
    lead.open("/questions/new?like=1")
    assert "ferry hours</textarea>" in lead.page.text
    assert "<option selected>Kijani</option>" in lead.page.text
