"""Questions that the office answers: read by a second person, told as the office's, counted."""

from dataclasses import replace
from datetime import date

import pytest

from assistant.hearing.office import Unfit
from assistant.service.desk.questions import (
    Draft,
    Refusal,
    add_question,
    draft_of,
    questions_page,
    use_question,
    withdraw_question,
)
from assistant.service.sight import Sight, sight_of
from assistant.store import KeptQuestion
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m
from tests.stages import stage
from tests.valley import AMINA, BARAKA, KIJANI, LEAD, MWANGA, OFFICER, Valley, like

FERRY = Draft(
    "en", ("when does the ferry run", "ferry hours"), "The ferry runs at 7 and at 16."
)
JUNE = date(2026, 6, 1)


@stage
def office(valley: Valley) -> None:
    """A lead, an officer of Kijani; Amina lives in Kijani, Baraka in Mto Mwanga."""
    valley.house = replace(valley.house, programme="Lindara")
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.enrol(BARAKA, village=MWANGA.id)
    for phone in (AMINA, BARAKA):
        valley.heard(phone)


def sight(valley: Valley, phone: str = LEAD) -> Sight:
    """What an officer may see."""
    with valley.house.store.look() as work:
        officer = work.people.officer(phone)
        assert officer is not None
        return sight_of(work, officer)


def add(valley: Valley, draft: Draft = FERRY) -> KeptQuestion:
    """A question that the lead has added."""
    kept = add_question(valley.house, sight(valley), draft, valley.now)
    assert isinstance(kept, KeptQuestion)
    return kept


def in_use(valley: Valley, draft: Draft = FERRY) -> KeptQuestion:
    """One that the officer has read."""
    kept = add(valley, draft)
    assert use_question(valley.house, sight(valley, OFFICER), kept.id, valley.now)
    return kept


SAID = a.OFFICE_SAYS(programme="Lindara", answer=FERRY.answer)


def test_no_farmer_is_answered_before_a_second_person_has_read_it(office: Valley) -> None:
    """Who added it cannot be that person; the answer says whose it is."""
    kept = add(office)
    assert office.text(AMINA, "when does the ferry run?") != [like(SAID, ...)]
    assert use_question(office.house, sight(office), kept.id, office.now) is None
    use_question(office.house, sight(office, OFFICER), kept.id, office.now)
    assert office.text(AMINA, "when does the ferry run?") == [like(SAID, ...)]
    assert office.text(BARAKA, "Ferry hours pls") == [like(SAID, ...)]
    withdraw_question(office.house, sight(office), kept.id, office.now)
    assert office.text(AMINA, "when does the ferry run?") != [like(SAID, ...)]


def test_a_question_of_one_village_is_answered_there_alone(office: Valley) -> None:
    """And the other villages go on as if it were not there."""
    in_use(office, replace(FERRY, village="Kijani"))
    assert office.text(AMINA, "when does the ferry run?") == [like(SAID, ...)]
    assert office.text(BARAKA, "when does the ferry run?") != [like(SAID, ...)]


def test_what_may_be_the_question_is_offered_and_never_guessed(office: Valley) -> None:
    """1 gives the answer; the last choice is a person."""
    in_use(office)
    (offered,) = office.text(AMINA, "when will the old ferry run again tomorrow?")
    assert "1 when does the ferry run" in offered and "Something else" in offered
    assert office.text(AMINA, "1") == [like(SAID, ...)]


@pytest.mark.parametrize(
    "text",
    [
        "snake bit my child at the ferry when does the ferry run",
        "stop sending me these when does the ferry run",
        "the mats are washed away when does the ferry run",
    ],
)
def test_a_text_of_danger_or_refusal_never_gets_it(office: Valley, text: str) -> None:
    """It is heard before, and what the office wrote is not offered either."""
    in_use(office)
    assert all("ferry" not in said for said in office.text(AMINA, text))


def test_what_is_open_stands_again_after_the_answer(office: Valley) -> None:
    """A talk that was interrupted is taken up."""
    in_use(office)
    office.text(AMINA, "NEW")
    first, *more = office.text(AMINA, "when does the ferry run?")
    assert first.startswith("Lindara office: The ferry runs") and (more or "\n" in first)
    assert office.text(AMINA, "0.5 acres") != [like(m.DID_NOT_UNDERSTAND)]


@pytest.mark.parametrize(
    ("draft", "why"),
    [
        (replace(FERRY, answer=""), Unfit.EMPTY),
        (replace(FERRY, ways=("ferry",)), Unfit.WAYS),
        (replace(FERRY, answer="Use a pesticide."), Unfit.REFUSED),
        (replace(FERRY, answer="Put 20 ml in a can."), Unfit.DOSE),
        (replace(FERRY, answer="w" * 150), Unfit.LENGTH),
        (replace(FERRY, ways=("snake bit my child",)), Unfit.HEARD),
        (replace(FERRY, ways=("stop sending me texts",)), Unfit.HEARD),
        (replace(FERRY, language="xx"), Unfit.PLACE),
        (replace(FERRY, village="Nowhere"), Unfit.PLACE),
    ],
)
def test_what_may_not_be_said_is_not_kept(office: Valley, draft: Draft, why: Unfit) -> None:
    """Each with the words that stand in the way."""
    found = add_question(office.house, sight(office), draft, office.now)
    assert isinstance(found, Refusal) and found.why is why


def test_an_officer_reads_and_adds_none(office: Valley) -> None:
    """Nor withdraws what is in use; what waits they may say no to."""
    officer = sight(office, OFFICER)
    assert add_question(office.house, officer, FERRY, office.now) is None
    used, waits = in_use(office), add(office)
    assert withdraw_question(office.house, officer, used.id, office.now) is None
    assert withdraw_question(office.house, officer, waits.id, office.now) is not None


def test_questions_are_counted_by_month_and_village(office: Valley) -> None:
    """Ours and the office's; what was chosen counts as answered; never who asked."""
    kept = in_use(office)
    office.text(AMINA, "when does the ferry run?")
    office.text(AMINA, "is it free?")
    office.text(BARAKA, "is it free?")
    office.text(AMINA, "when will the old ferry run again tomorrow?")
    office.text(AMINA, "1")
    page = questions_page(office.house, sight(office), "", None, office.now)
    counts = {each.count.code: each.count for each in page.lines}
    assert page.asked.month == JUNE
    assert counts["free"].answered == 2
    assert (counts[f"office:{kept.id}"].answered, counts[f"office:{kept.id}"].offered) == (2, 1)
    own = questions_page(office.house, sight(office, OFFICER), "", None, office.now)
    assert {each.count.code: each.count.answered for each in own.lines}["free"] == 1


def test_an_unread_reply_begins_a_question(office: Valley) -> None:
    """With its words and its language, for who may see it."""
    office.text(AMINA, "gobbledegook xyzzy")
    with office.house.store.look() as work:
        (unread,) = work.calls.unread_list()
    draft = draft_of(office.house, sight(office), unread_id=unread.id)
    assert draft == Draft("en", ("gobbledegook xyzzy",), "")
    page = questions_page(office.house, sight(office), "", None, office.now)
    assert page.asked.unread == 1


def test_questions_of_a_village_that_is_joined_go_with_it(office: Valley) -> None:
    """So that they are not lost."""
    kept = in_use(office, replace(FERRY, village="Kijani"))
    with office.house.store.work() as work:
        work.questions.move(KIJANI.id, MWANGA.id)
        found = work.questions.get(kept.id)
    assert found is not None and found.village_id == MWANGA.id
