"""The ear: what is meant decides before what was asked, at every moment."""

from dataclasses import replace
from itertools import product

import pytest

from assistant.acts import Act
from assistant.channel import Channel
from assistant.dialogue import conversations as talks
from assistant.dialogue import values as v
from assistant.dialogue.ear import _DEEDS, DECISIONS, ORDER, Deed, Moment, moment_of
from assistant.dialogue.engine import begin
from assistant.dialogue.turns import turn
from assistant.hearing import Certainty
from assistant.hearing.kinds import HARMS
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m
from assistant.wording.message import slots_of
from tests.corpus.talk.judging import DEEDS, outcome
from tests.corpus.talk.moments import MOMENTS, NEARBY

AGREED = [name for name in MOMENTS if name not in ("consent", "stopped")]
NEVER = (
    "vomit milk salt oil charcoal cut suck tie tourniquet ice catch medicine dose remedy wait "
    "drink"
).split()


def said(got: v.Turn) -> set[object]:
    """The messages of a turn."""
    return {say.message for text in got.texts for say in text.says}


def test_every_act_at_every_moment_has_its_row() -> None:
    """A missing one would be a silence; there is no default."""
    assert set(DECISIONS) == set(Moment)
    for moment, act in product(Moment, ORDER):
        row = DECISIONS[moment][act]
        assert len(row) == len(Certainty)
        assert all(deed in _DEEDS or deed is Deed.PASS for deed in row)


@pytest.mark.parametrize("moment", MOMENTS)
def test_a_poisoned_child_reaches_a_person_at_every_moment(moment: str) -> None:
    """In the writer's own words; the answer is the text of the closed table, alone."""
    words = "my child drank the pesticide"
    got = turn(words, MOMENTS[moment]("en"))
    alarms = [change for change in got.changes if isinstance(change, v.RaiseAlarm)]
    assert [(alarm.kind, alarm.words, alarm.sure) for alarm in alarms] == [
        ("poison", words, True)
    ]
    assert said(got) == {aid.POISON}


@pytest.mark.parametrize("moment", MOMENTS)
def test_who_wants_to_die_is_answered_kindly_and_never_taken_as_a_refusal(moment: str) -> None:
    got = turn("i want to end my life", MOMENTS[moment]("en"))
    assert [change.kind for change in got.changes if isinstance(change, v.RaiseAlarm)] == [
        "die"
    ]
    assert said(got) == {aid.DIE}
    assert outcome(got).reached == {"die"}


@pytest.mark.parametrize("moment", AGREED)
def test_a_flood_in_own_words_is_no_deed_at_any_moment(moment: str) -> None:
    """Under a warning it is its answer: needs help."""
    got = turn("everything is ruined by the flood", MOMENTS[moment]("en"))
    assert not outcome(got).written & DEEDS
    assert "danger" in outcome(got).reached
    if moment == "warning":
        answer, *after = got.changes
        assert answer == v.AnswerWarning(7, "help", "everything is ruined by the flood")
        assert [type(each) for each in after] == [v.Happened, v.SaveNursery]  # asked tomorrow


@pytest.mark.parametrize("kind", sorted(HARMS))
def test_every_kind_of_harm_has_its_fixed_text(kind: str) -> None:
    """And only slots that a programme file fills."""
    assert slots_of(aid.BY_KIND[kind].text) <= {"emergency", "health_post", "vet"}


def test_no_emergency_text_says_what_may_never_be_said() -> None:
    """Nor does any say "not": a text that loses a word must turn into no harm."""
    texts = [aid.DIE, aid.DIE_HURT, aid.DIE_HERE, aid.HURT_HERE, *aid.BY_KIND.values()]
    for message in texts:
        words = message.text.lower().replace(".", " ").replace(",", " ").split()
        assert not set(words) & set(NEVER), message.text
        assert "never" not in words
        assert words.count("not") == message.text.count("You are not alone")


def test_without_numbers_the_text_promises_none() -> None:
    """Only in tests: `nursery check` fails without them."""
    known = replace(MOMENTS["nothing"]("en"), nearby=v.Nearby())
    assert said(turn("my child drank the pesticide", known)) == {aid.HURT_HERE}
    assert said(turn("i want to end my life", known)) == {aid.DIE_HERE}


def test_what_is_half_sure_is_asked_and_one_digit_says_it() -> None:
    """1 tells a person at once, 2 takes it back; silence is the service's to follow."""
    known = MOMENTS["nothing"]("en")
    session = v.Session("if_hurt", 1, "hurt")
    asked = replace(
        known, session=session, focuses=(v.Focus(question="if_hurt.hurt"),), asked_if_hurt=True
    )
    yes, no = turn("1", asked), turn("2", asked)
    assert yes.changes == (v.SettleAlarm(hurt=True),)
    assert said(yes) == {aid.HURT}
    assert no.changes == (v.SettleAlarm(hurt=False),)


def test_the_question_whether_somebody_is_hurt_goes_before_a_warnings_digits() -> None:
    known = MOMENTS["warning"]("en")
    session = v.Session("if_hurt", 1, "hurt")
    focuses = (v.Focus(question="if_hurt.hurt"), *known.focuses)
    got = turn("1", replace(known, session=session, focuses=focuses))
    assert got.changes[0] == v.SettleAlarm(hurt=True)
    assert v.AnswerWarning(7, "help", alarmed=True) in got.changes


def test_a_refusal_in_own_words_is_obeyed_at_once() -> None:
    got = turn("stop sending me these messages", MOMENTS["uncover"]("en"))
    assert v.StopTexts() in got.changes
    assert said(got) == {m.STOPPED}


def test_whoever_wants_their_number_deleted_is_told_how_and_the_officer_too() -> None:
    words = "delete my number from your system"
    got = turn(words, MOMENTS["nothing"]("en"))
    assert got.changes == (v.StopTexts(), v.CallForHelp("erase", words), v.AskErasure())
    assert said(got) == {aid.ERASE_TOLD}


def test_an_invited_person_who_refuses_is_let_go() -> None:
    got = turn("dont text me again", MOMENTS["consent"]("en"))
    assert got.changes == (v.Decline(),)


HALF_REFUSALS = (
    ("en", "no, find another farmer"),
    ("sw", "hapana nakataa"),
    ("fr", "non je refuse"),
    ("pt", "não, recuso"),
    ("fil", "hindi, iba na lang po"),
)


@pytest.mark.parametrize(("language", "text"), HALF_REFUSALS)
def test_half_a_refusal_of_an_invited_person_is_no(language: str, text: str) -> None:
    """They were asked yes or no; START undoes it, a question back costs them another text."""
    assert turn(text, MOMENTS["consent"](language)).changes == (v.Decline(),)


@pytest.mark.parametrize("text", ("i am in lima", "it is raining here", "i do farming"))
def test_a_story_that_opens_like_a_yes_is_no_consent(text: str) -> None:
    changes = turn(text, MOMENTS["consent"]("en")).changes
    assert not any(isinstance(each, v.Enrol) for each in changes)


def test_an_emergency_text_comes_on_the_screen_and_to_keep() -> None:
    """A USSD session ends; the text stays on the phone."""
    known = replace(MOMENTS["nothing"]("en"), channel=Channel.USSD)
    got = turn("a snake bit my son", known)
    assert said(got) == {aid.SNAKE}
    assert all(text.keep for text in got.texts)


def test_words_behind_officer_are_kept() -> None:
    got = turn("officer, my seed is mouldy", MOMENTS["nothing"]("en"))
    assert got.changes == (v.CallForHelp("officer", "officer, my seed is mouldy", 1),)


def test_yes_to_shoots_up_answers_what_was_asked() -> None:
    """And is no deed: the next question is whether the bed is open."""
    got = turn("yes", MOMENTS["uncover"]("en"))
    assert not outcome(got).written
    assert aid.UP_SO_UNCOVER in said(got)


@pytest.mark.parametrize("text", ["i forgot", "tomorrow it will be done", "my brother does it"])
def test_what_is_no_deed_is_not_written_as_one(text: str) -> None:
    for moment in ("soak", "sow", "uncover", "transplant"):
        assert not outcome(turn(text, MOMENTS[moment]("en"))).written & DEEDS


def test_moments_are_told_apart() -> None:
    """The first that holds: an officer, a stranger, one who stopped, a warning, a question."""
    assert moment_of(MOMENTS["consent"]("en")) is Moment.STRANGER
    assert moment_of(MOMENTS["stopped"]("en")) is Moment.STOPPED
    assert moment_of(MOMENTS["warning"]("en")) is Moment.WARNING
    assert moment_of(MOMENTS["soak"]("en")) is Moment.ASKED
    assert moment_of(MOMENTS["nothing"]("en")) is Moment.FREE


def test_whom_to_turn_to_is_the_villages_own() -> None:
    """The slots are those of the programme file."""
    got = turn("my child drank the pesticide", MOMENTS["night"]("en"))
    (text,) = got.texts
    assert text.says[0].slots["emergency"] == NEARBY.emergency
    assert Act.HARM in ORDER


def test_start_brings_back_the_texts_that_rest() -> None:
    """Whoever did not answer whether to stop has a way back by one word."""
    known = MOMENTS["nothing"]("en")
    assert known.farmer is not None
    paused = replace(known, farmer=replace(known.farmer, paused_at=known.now))
    assert v.StartTexts() in turn("START", paused).changes


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "wrong number"),
        ("sw", "sitaki"),
        ("pt", "chega"),
        ("id", "batal"),
        ("vi", "thôi"),
    ],
)
def test_a_bare_refusal_is_asked_about_once_and_the_daily_texts_rest(
    language: str, words: str
) -> None:
    for moment in ("nothing", "sow"):
        got = turn(words, MOMENTS[moment](language))
        assert said(got) == {aid.ASK_STOP, m.NUMBERED}
        assert v.PauseTexts(words) in got.changes


def test_i_do_not_want_is_no_to_an_invitation() -> None:
    assert v.Decline() in turn("sitaki", MOMENTS["consent"]("sw")).changes


def test_enough_is_a_choice_where_it_was_offered() -> None:
    """ "Cukup" was the mats sufficed."""
    got = turn("cukup", MOMENTS["result"]("id"))
    assert {change.answer for change in got.changes if isinstance(change, v.AnswerItem)} == {
        "enough"
    }


@pytest.mark.parametrize("words", ["help", "I need help", "msaada", "au secours"])
def test_help_calls_for_it_under_a_warning_in_any_language(words: str) -> None:
    changes = turn(words, MOMENTS["warning"]("en")).changes
    assert any(isinstance(change, v.AnswerWarning) for change in changes)


@pytest.mark.parametrize("words", ["what is this", "who is this", "who are you"])
def test_a_question_under_a_warning_calls_for_nobody(words: str) -> None:
    """They are the wish HELP too, which tells how the line works."""
    changes = turn(words, MOMENTS["warning"]("en")).changes
    assert not any(isinstance(change, v.AnswerWarning) for change in changes)


def test_a_wish_for_a_person_where_words_were_asked_for_is_those_words() -> None:
    """They are not asked for once more, and the officer is called once."""
    known = MOMENTS["nothing"]("en")
    asked = turn("officer", known).session
    assert asked is not None and asked.conversation == "officer"
    got = turn("please call me", replace(known, session=asked))
    assert [type(change) for change in got.changes] == [v.CallForHelp]
    assert got.session is None


@pytest.mark.parametrize(
    ("language", "words"),
    [("vi", "cứu với"), ("pt", "socorro"), ("fil", "saklolo"), ("en", "help me")],
)
def test_a_cry_for_rescue_alone_is_asked_about_and_a_person_knows(
    language: str, words: str
) -> None:
    """To a warning it is the answer "help", else somebody may be hurt."""
    assert outcome(turn(words, MOMENTS["nothing"](language))).reached == {"harm"}
    assert outcome(turn(words, MOMENTS["warning"](language))).reached & {"danger", "harm"}


@pytest.mark.parametrize(
    ("language", "task", "words"),
    [
        ("vi", "leaves", "nhà có 3 con trâu"),
        ("pt", "transplant", "plantamos 3 talhoes dos 4"),
        ("hi", "soak", "लड़का हुआ है घर में"),
        ("fil", "soak", "opo salamat po"),
        ("en", "soak", "well done"),
        ("id", "sow", "boleh nyebar sore"),
        ("vi", "soak", "toi nay toi ngam"),
    ],
)
def test_what_only_sounds_like_a_deed_is_none(language: str, task: str, words: str) -> None:
    """Buffaloes, a part, a birth, thanks, praise, a question, tonight."""
    assert not outcome(turn(words, MOMENTS[task](language))).written - {"not_yet"}


@pytest.mark.parametrize(
    ("moment", "words"),
    [
        ("soak", "madam i have kept the paddy under water already tnx"),
        ("fill", "i don patch the farm finish"),
    ],
)
def test_a_rule_that_the_weights_contradict_rings_no_officer(moment: str, words: str) -> None:
    """It is asked about, or taken as the work that was asked for."""
    got = turn(words, MOMENTS[moment]("en"))
    assert not [change for change in got.changes if isinstance(change, v.RaiseAlarm)]


@pytest.mark.parametrize("moment", ["soak", "nothing"])
def test_the_same_in_earnest_rings_at_once(moment: str) -> None:
    got = turn(
        "flood water is over my bed and the seedlings are under it", MOMENTS[moment]("en")
    )
    assert [change.sure for change in got.changes if isinstance(change, v.RaiseAlarm)] == [True]


@pytest.mark.parametrize(
    ("language", "words"),
    [("fr", "c payant? alors jen veux pas"), ("hi", "पैसा कटता है क्या? हमको मत भेजिए")],
)
def test_a_refusal_that_asks_the_cost_is_a_refusal(language: str, words: str) -> None:
    assert "refuse" in outcome(turn(words, MOMENTS["nothing"](language))).reached


def test_leaves_told_in_a_sentence_are_no_question() -> None:
    got = turn("deux feuilles et la troisième commence à sortir", MOMENTS["leaves"]("fr"))
    assert "2" in outcome(got).written


@pytest.mark.parametrize("moment", ["nothing", "sow"])
def test_who_asks_how_to_stop_is_told_how_and_not_stopped(moment: str) -> None:
    got = turn(
        "how do I stop these messages if I dont want them any more", MOMENTS[moment]("en")
    )
    assert not [change for change in got.changes if isinstance(change, v.StopTexts)]
    assert "STOP" in "".join(
        str(say.message.text) + str(say.slots) for say in got.texts[0].says
    )


@pytest.mark.parametrize("words", ["stop", "stop these messages", "stop messages now please"])
def test_a_plain_stop_stops(words: str) -> None:
    got = turn(words, MOMENTS["nothing"]("en"))
    assert [change for change in got.changes if isinstance(change, v.StopTexts)]


def test_who_stopped_and_cried_is_heard_to_the_end() -> None:
    """The question whether somebody is hurt is answered, and then they are let alone again."""
    known = MOMENTS["stopped"]("en")
    asked = replace(known, session=begin(talks.IF_HURT))
    assert [type(each).__name__ for each in turn("1", asked).changes] == ["SettleAlarm"]
    assert [type(each).__name__ for each in turn("2", asked).changes] == ["SettleAlarm"]
    assert said(turn("1", known)) == {m.YOU_ARE_STOPPED}
