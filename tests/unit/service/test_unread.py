"""What could not be read is kept with who wrote it, and goes to a person."""

from datetime import timedelta

from assistant.channel import Channel
from assistant.dialogue.values import CallForHelp, Change, NoteUnread, RaiseAlarm
from assistant.people import Village
from assistant.service.effects import Scene, carry_out
from assistant.service.known import know
from assistant.wording import messages_officer as o
from tests.stages import stage
from tests.valley import AMINA, BARAKA, CODE, KIJANI, LEAD, OFFICER, Valley, like

GIBBERISH = "gobbledegook xyzzy"


def change(valley: Valley, *changes: Change, phone: str = AMINA) -> None:
    """What a turn of the dialogue changes."""
    with valley.house.store.work() as work:
        scene = Scene(work, valley.house, phone, Channel.SMS, valley.now, "in-1")
        carry_out(changes, scene)
    valley.send()


def unread(valley: Valley, phone: str = AMINA) -> int:
    """How many texts of a phone could not be read since the last that could."""
    with valley.house.store.work() as work:
        return know(work, valley.house, phone, "", Channel.SMS, (), valley.now).unread


@stage
def office(valley: Valley) -> None:
    """An officer of Kijani, a lead, and Amina of Kijani."""
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.heard(AMINA)


def test_the_unread_texts_of_a_phone_are_counted_until_one_is_read(office: Valley) -> None:
    """Each phone for itself, for a day."""
    for _ in range(2):
        change(office, NoteUnread("", GIBBERISH))
    change(office, NoteUnread("", GIBBERISH), phone=BARAKA)
    assert (unread(office), unread(office, BARAKA)) == (2, 1)
    office.text(AMINA, "HELP")
    assert (unread(office), unread(office, BARAKA)) == (0, 1)
    office.leap(office.now + timedelta(hours=25))
    assert unread(office, BARAKA) == 0


def test_what_is_passed_on_is_a_question_to_the_officer(office: Valley) -> None:
    """With the words; more of it within the hour joins it."""
    change(office, NoteUnread("", GIBBERISH, passed=True))
    (notice,) = office.heard(OFFICER)
    assert notice == like(o.HELP_NOTICE) and GIBBERISH in notice and "question" in notice
    change(office, NoteUnread("", "and more", passed=True))
    assert office.heard(OFFICER) == []
    with office.house.store.look() as work:
        (call,) = work.calls.open()
    assert (call.about, call.words) == ("question", f"{GIBBERISH} / and more")
    office.leap(office.now + timedelta(hours=2))
    change(office, NoteUnread("", "a new one", passed=True))
    assert office.heard(OFFICER) == [like(o.HELP_NOTICE)]


def test_a_question_waits_for_the_morning_unless_a_warning_stands(office: Valley) -> None:
    """Under a warning nobody sleeps."""
    office.leap("1 Jun 21:00")
    change(office, NoteUnread("", GIBBERISH, passed=True))
    assert office.heard(OFFICER) == []
    office.text(OFFICER, f"RAIN {CODE} Kijani 22-24")
    office.text(OFFICER, "1")
    office.leap("1 Jun 22:30")
    office.heard(OFFICER)
    with office.house.store.look() as work:
        stands = bool(work.warnings.standing(1, office.now))
    change(office, NoteUnread("", "water?", passed=True))
    assert bool(office.heard(OFFICER)) is stands


def test_a_strangers_question_goes_to_the_lead(office: Valley) -> None:
    """With the number only; more of them within the hour stand on the page alone."""
    change(office, NoteUnread("", GIBBERISH, passed=True), phone=BARAKA)
    change(office, CallForHelp("officer", "call me"), phone=BARAKA)
    assert len(office.heard(LEAD)) == 1 and office.heard(OFFICER) == []
    with office.house.store.look() as work:
        assert len(work.calls.open()) == 2


def test_what_somebody_writes_on_who_wants_to_die_is_seen_by_nobody_else(
    office: Valley,
) -> None:
    """It joins what they said, and is not listed among what could not be read."""
    change(office, RaiseAlarm("die", "I cannot go on"))
    for phone in (OFFICER, LEAD):
        office.heard(phone)
    change(office, NoteUnread("", "nobody cares", passed=True))
    assert office.heard(OFFICER) == office.heard(LEAD) == []
    with office.house.store.look() as work:
        assert work.ledger.unread(9) == ()
        (call,) = work.calls.open()
    assert call.words == "I cannot go on / nobody cares"


def test_who_says_no_leaves_no_number_beside_what_they_wrote(
    valley: Valley, kijani: Village
) -> None:
    """The words stay, to mend word lists."""
    valley.add_officer(kijani)
    valley.text(OFFICER, f"ADD {CODE} {BARAKA} Kijani Baraka")
    valley.text(OFFICER, "1")
    change(valley, NoteUnread("", GIBBERISH), phone=BARAKA)
    valley.text(BARAKA, "2")
    with valley.house.store.look() as work:
        (reply,) = work.ledger.unread(9)
    assert (reply.text, reply.phone, reply.farmer) == (GIBBERISH, None, None)
