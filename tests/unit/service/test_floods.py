"""A phone that writes without end: heard all the same, answered ever less, cries always."""

from dataclasses import replace
from datetime import timedelta

from assistant.people import Village
from assistant.service.brakes import let_go, stopped_words
from assistant.service.floods import (
    CRY_SOON,
    MOST_A_DAY_TO_STRANGERS,
    MOST_AN_HOUR,
    MOST_CRIES,
)
from assistant.service.sight import sight_of
from assistant.wording import messages_talk as m
from assistant.wording import messages_web_brakes as b
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


def _all_write(valley: Valley, count: int, words: str) -> list[str]:
    phones = [f"+4477009005{number:02}" for number in range(count)]
    return [phone for phone in phones if valley.text(phone, words)]


def test_many_strangers_get_so_many_answers_an_hour(valley: Valley) -> None:
    """A hundred numbers, a text each. All are kept, a lead hears of it once, and in an hour
    there are answers again."""
    valley.add_officer(phone=LEAD, lead=True)
    valley.house = replace(valley.house, strangers_hour_answers=30)
    assert len(_all_write(valley, 100, "hello there")) == 30
    assert valley.heard(LEAD) == [like(b.STRANGERS_TEXT, ...)]
    with valley.house.store.look() as work:
        assert len(work.story.heard("+447700900599", 5, valley.now - timedelta(days=1))) == 1
    valley.now += timedelta(minutes=61)
    assert len(_all_write(valley, 40, "hello again")) == 30
    assert valley.heard(LEAD) == []


def test_who_signs_up_is_answered_to_the_end(valley: Valley, kijani: Village) -> None:
    """Who was answered once goes on; a first text that had none opens no way round."""
    valley.house = replace(valley.house, strangers_hour_answers=1)
    assert valley.text(AMINA, "START")
    assert valley.text(STRANGER, "START") == []
    assert valley.text(STRANGER, "1") == []
    assert valley.text(AMINA, "1") and valley.text(AMINA, "1")


def test_a_talk_that_was_begun_is_no_way_round(valley: Valley) -> None:
    """A machine that begins to sign up, and again: answered for as long as signing up takes."""
    valley.house = replace(valley.house, strangers_hour_answers=1)
    answers = [valley.text(AMINA, "START")]
    answers += [valley.text(AMINA, ("HELP", "START")[number % 2]) for number in range(30)]
    assert sum(map(len, answers)) == MOST_A_DAY_TO_STRANGERS


def test_a_lead_lets_strangers_be_answered(valley: Valley) -> None:
    """On the day of a call by radio: until midnight, by the page of stopped texts."""
    valley.add_officer(phone=LEAD, lead=True)
    valley.house = replace(valley.house, strangers_hour_answers=5)
    _all_write(valley, 20, "hello there")
    with valley.house.store.look() as work:
        lead = work.people.officer(LEAD)
        (brake,) = work.brakes.standing(valley.now)
        assert lead is not None
        sight = sight_of(work, lead)
    assert let_go(valley.house, sight, brake.id, valley.now)
    assert len(_all_write(valley, 20, "hello again")) == 20
    assert stopped_words(valley.house, valley.now) == ()


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
    for number in range(8, 38):
        valley.text(AMINA, f"officer, my seed is mouldy {number}")
    with valley.house.store.look() as work:
        (call,) = work.calls.open()
    assert "mouldy 0" in call.words and len(call.words) < 1_000


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
        answers = [valley.text(phone, "a snake has bitten my son") for _ in range(100)]
        assert sum(map(len, answers)) == MOST_CRIES and all(answers[:MOST_CRIES])
        assert valley.text(phone, "now my wife drank the spray")
        valley.now += timedelta(minutes=11)
        assert valley.text(phone, "a snake has bitten my son")
    assert any("snake" in text for text in valley.heard(LEAD))


SNAKES = (
    "a snake has bitten my son",
    "help, snake bit my child",
    "my wife was bitten by a snake",
)


def _snakes(valley: Valley, phone: str, count: int) -> int:
    """Each in words that were not said before; how many were answered."""
    words = (f"{SNAKES[number % 3]} in field {number}" for number in range(count))
    return sum(bool(valley.text(phone, each)) for each in words)


def test_a_cry_in_ever_other_words_is_answered_less(valley: Valley, kijani: Village) -> None:
    """A machine that makes up sentences; after so many, one answer in a few minutes, and the
    officer has one notice. A danger that has another answer is answered at once."""
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    for phone in (STRANGER, AMINA):
        assert _snakes(valley, phone, 100) == MOST_CRIES
        assert valley.text(phone, "the water is over the mats, help")
        valley.now += CRY_SOON
        assert _snakes(valley, phone, 5) == 1
        assert valley.text(phone, "STOP") == [like(m.STOPPED)]
    assert sum("snake" in text for text in valley.heard(OFFICER)) == 1
    with valley.house.store.look() as work:
        calls = [each for each in work.calls.open() if each.farmer.phone == AMINA]
    snakes = next(each for each in calls if each.about == "snake")
    assert "field 0" in snakes.words and "field 99" in snakes.words
    assert len(snakes.words) < 2_000


def test_cries_in_a_few_words_in_turn_are_answered_less(valley: Valley) -> None:
    """Two sentences, again and again."""
    answers = [valley.text(STRANGER, SNAKES[number % 2]) for number in range(100)]
    assert sum(map(len, answers)) == MOST_CRIES
    assert valley.text(STRANGER, "my child drank the spray")
