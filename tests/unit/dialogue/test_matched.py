"""What no exact rule hears is matched by the learned table: answered, offered, or passed on."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.dialogue import values as v
from assistant.dialogue.matched import LETTERS, OFFERED, SOMETHING_ELSE, offer_which
from assistant.hearing.matching import (
    Likeness,
    MatchError,
    MatchTable,
    read_match,
    written_match,
)
from assistant.hearing.topics import Topic
from assistant.people import LANGUAGES
from assistant.wiring.asked import open_asked, open_match
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, nursery
from tests.valley import EARS, like

YOUNG = nursery(sow=TODAY - timedelta(days=2), made_on=TODAY - timedelta(days=12), sown=True)
WAYS = 15  # of asking a question, in all languages together
LONGEST = 40  # letters of a way that is offered


class Says(MatchTable):
    """A table that says what it is told to, of any text."""

    def likest(self, text: str, ideas: object) -> tuple[Likeness, ...]:
        """Two questions that are as like, or none of ours."""
        return HALF


HALF = (Likeness(Topic.SEED_PRICE, 0.3), Likeness(Topic.UREA, 0.25), Likeness(None, 0.1))


def unsure() -> Phone:
    """A phone whose questions are never sure."""
    phone = Phone.enrolled(YOUNG)
    table = Says((), memoryview(b""), (), (), (), ())
    phone.known = replace(phone.known, ears=replace(phone.known.ears, match=table))
    return phone


def offered(phone: Phone) -> list[str]:
    """The questions that a phone is asked to choose from."""
    session = phone.known.session
    waiting = (session.waiting if session else None) or {}
    return [str(each) for name, each in waiting.items() if name.startswith("value")]


def test_every_question_has_ways_enough_and_one_to_show() -> None:
    asked = open_asked()
    for topic in Topic:
        assert sum(len(asked[code][topic]) for code in LANGUAGES) >= WAYS, topic
        assert all(len(asked[code][topic][0]) <= LONGEST for code in LANGUAGES), topic


def test_the_table_knows_its_own_ways() -> None:
    """Nearly all of them, in each language; what it was made from is the least it must know.
    One in four is asked, of each question others: there are ten thousand."""
    assert EARS.match is not None
    for code, rows in open_asked().items():
        found = [
            (topic, EARS.match.likest(way, EARS.questions.ideas(way, (code, "en")))[0].topic)
            for place, (topic, ways) in enumerate(rows.items())
            for way in ways[place % 4 :: 4]
        ]
        right = sum((got or "none") == topic for topic, got in found)
        assert right >= 0.97 * len(found), code


def test_a_table_that_is_cut_is_refused() -> None:
    raw = written_match(open_match())
    assert isinstance(read_match(raw), MatchTable)
    for bad in (raw[:-1], b"", raw[:40]):
        with pytest.raises(MatchError, match="table"):
            read_match(bad)


def test_a_question_in_new_words_is_answered() -> None:
    phone = Phone.enrolled(YOUNG)
    assert phone.hears("i have no ruler so 1 cm is what?") == [like(a.ONE_CM)]


def test_one_of_two_questions_is_offered_and_the_chosen_one_answered() -> None:
    phone = unsure()
    phone.says("and this urea, how is it per bag?")
    assert offered(phone) == ["seed_price", "urea", SOMETHING_ELSE]
    place = offered(phone).index("seed_price") + 1
    assert phone.hears(str(place)) == [like(a.NO_PRICES)]
    assert phone.known.session is None


def test_what_is_offered_fits_a_segment_and_keeps_the_last() -> None:
    """A third question is left out where it is too long, not the wish that is a word of it."""
    phone = Phone.enrolled(YOUNG)
    topics = [Topic.MANY_FIELDS, Topic.STORM_PLANT, Topic.GAPS]
    for letters in (LETTERS, 1):
        length = LETTERS // 2 if letters == 1 else letters // OFFERED
        labels = {"en": {str(topic): "x" * length for topic in topics}}
        known = replace(phone.known, ears=replace(phone.known.ears, labels=labels))
        session = offer_which("so?", topics, known).session
        assert session is not None and session.waiting is not None
        codes = [value for name, value in session.waiting.items() if name.startswith("value")]
        assert codes[-2:] == ["gaps", SOMETHING_ELSE]
        assert len(codes) == (OFFERED + 1 if letters == LETTERS else OFFERED)


def test_something_else_goes_to_a_person() -> None:
    phone = unsure()
    phone.says("and this urea, how is it per bag?")
    last = offered(phone)
    assert last[-1] == SOMETHING_ELSE
    outcome = phone.says(str(len(last)))
    assert phone.words(outcome)[0].startswith(phone_words(phone))
    assert [type(change) for change in outcome.changes] == [v.CallForHelp]


def phone_words(phone: Phone) -> str:
    """The first words of the text that says that a person has it."""
    return str(aid.PASSED_ON.text).partition("{")[0]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("the shop man asked how much powder goes on each kilo", None),
        ("shall we still go to the wedding today or what is there to do", "today"),
    ],
)
def test_a_wish_that_is_a_word_of_a_longer_question_is_offered(
    text: str, topic: str | None
) -> None:
    """Not answered with all amounts, or the day's work; its own question is among them."""
    phone = unsure()
    phone.says(text)
    assert offered(phone)[-1:] == [SOMETHING_ELSE]
    assert topic is None or topic in offered(phone)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("how many kg seed 4 my 1.5 acre", "1.5 acres"),
        ("how much seed for one bigha", "1 ha"),
        ("how many mats for 2 acres", "2 acres"),
    ],
)
def test_amounts_are_of_the_land_that_is_named(text: str, size: str) -> None:
    """Never the plan's, of another size: of a hectare where the unit is not known here."""
    heard = Phone.enrolled(YOUNG).hears(text)
    assert heard[0].startswith(f"For {size}: about")


def test_a_stranger_is_offered_nothing() -> None:
    """Who has not agreed is asked that first."""
    phone = Phone.new()
    phone.says("urea is how much per bag")
    assert not offered(phone)


@pytest.mark.parametrize(
    "text",
    ["how do i stop these later?", "will these texts cost me money?", "who sends this to me?"],
)
def test_asking_about_the_texts_ends_none(text: str) -> None:
    phone = Phone.enrolled(YOUNG)
    outcome = phone.says(text)
    ends = (v.StopTexts, v.PauseTexts)
    assert not [each for each in outcome.changes if isinstance(each, ends)]


def test_a_refusal_is_still_one() -> None:
    phone = Phone.enrolled(YOUNG)
    outcome = phone.says("stop sending me these texts")
    assert [each for each in outcome.changes if isinstance(each, v.StopTexts)]


def test_a_clear_question_that_nobody_knows_reaches_a_person_at_once() -> None:
    phone = Phone.enrolled(YOUNG)
    outcome = phone.says("how do i get a title for my land?")
    notes = [each for each in outcome.changes if isinstance(each, v.NoteUnread)]
    assert notes and notes[0].passed


def test_no_table_leaves_the_rules_as_they_were() -> None:
    phone = Phone.enrolled(YOUNG)
    phone.known = replace(phone.known, ears=replace(phone.known.ears, match=None))
    assert phone.hears("what is a mat?")[0].startswith("A mat")
    assert m.P_OTHER.text
