"""A phone that writes without end: heard all the same, answered ever less, cries always."""

from datetime import timedelta

from assistant.people import Village
from assistant.service.floods import MOST_A_DAY_TO_STRANGERS, MOST_AN_HOUR, MOST_CRIES
from assistant.wording import messages_talk as m
from tests.stages import stage
from tests.valley import AMINA, KIJANI, LEAD, OFFICER, Valley, like

STRANGER = "+447700900177"


def test_a_machine_that_answers_back_is_answered_a_few_times(valley: Valley) -> None:
    """Sixty rounds: each side answers the other."""
    answers = [valley.text(STRANGER, "I am driving. I call you later.") for _ in range(60)]
    assert sum(map(len, answers)) <= 6


def test_strangers_get_a_few_texts_a_day(valley: Valley) -> None:
    """Whatever they write; they are heard all the same."""
    for number in range(100):
        valley.text(STRANGER, f"x{number} y")
    with valley.house.store.look() as work:
        assert len(work.outbox.of_phone(STRANGER)) <= MOST_AN_HOUR + 1
    assert MOST_A_DAY_TO_STRANGERS < MOST_AN_HOUR


@stage
def talkative(valley: Valley) -> None:
    """Amina has been answered as often as there are answers in an hour."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    for _ in range(MOST_AN_HOUR // 2):
        valley.text(AMINA, "MENU")
        valley.text(AMINA, "HELP")


def test_a_farmer_is_told_once_and_answered_again_in_an_hour(talkative: Valley) -> None:
    """What she writes meanwhile is kept."""
    heard = [each for _ in range(20) for each in talkative.text(AMINA, "HELP")]
    assert [each for each in heard if each == like(m.MANY_TEXTS)] == heard[-1:]
    talkative.go("1 Jun 09:30")
    assert talkative.text(AMINA, "HELP") == [like(m.HELP, ...)]


def test_a_cry_and_a_stop_are_always_answered(talkative: Valley) -> None:
    """However many texts there were."""
    for _ in range(20):
        talkative.text(AMINA, "MENU")
    (answer,) = talkative.text(AMINA, "my child drank the urea")
    assert "health post" in answer
    assert talkative.text(AMINA, "STOP") == [like(m.STOPPED)]


def test_one_trouble_told_forty_times_is_one_notice(valley: Valley, kijani: Village) -> None:
    """The words are added to the call that stands."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    for number in range(8):
        valley.text(AMINA, f"officer, my seed is mouldy {number}")
    assert len(valley.heard(OFFICER)) == 1
    with valley.house.store.look() as work:
        (call,) = work.calls.open()
    assert "mouldy 0" in call.words and "mouldy 7" in call.words


def test_a_lead_is_told_of_a_call_only_where_nobody_serves(
    valley: Valley, kijani: Village
) -> None:
    """A country has two thousand calls a day."""
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.text(AMINA, "officer, my seed is mouldy")
    assert (len(valley.heard(OFFICER)), valley.heard(LEAD)) == (1, [])
    valley.enrol(STRANGER, village=2)
    valley.text(STRANGER, "officer, my seed is mouldy")
    assert len(valley.heard(LEAD)) == 1


def test_the_same_cry_without_end_is_answered_less(valley: Valley, kijani: Village) -> None:
    """A stranger's machine; another danger is answered at once, and the same after a while."""
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (STRANGER, AMINA):
        answers = [valley.text(phone, "a snake has bitten my son") for _ in range(300)]
        assert sum(map(len, answers)) == MOST_CRIES and all(answers[:MOST_CRIES])
        assert valley.text(phone, "now my wife drank the spray")
        valley.now += timedelta(minutes=11)
        assert valley.text(phone, "a snake has bitten my son")
    assert any("snake" in text for text in valley.heard(LEAD))
