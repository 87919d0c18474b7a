"""Answers told in a story: counts, colours and deeds beside words that are not known; what is
not sure is asked again and never written."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.acts import Act
from assistant.dialogue import conversations as talks
from assistant.dialogue.engine import begin
from assistant.dialogue.turns import turn
from assistant.dialogue.values import Focus, NoteUnread, RaiseAlarm, Turn
from assistant.hearing import understand
from tests.corpus.talk.judging import outcome
from tests.corpus.talk.moments import MOMENTS

TOLD = [
    ("en", "leaves", "3.5", "3.5"),
    ("en", "leaves", "3.5 leaves", "3.5"),
    ("en", "leaves", "on the bed i see say na 2 leaf", "2"),
    ("hi", "leaves", "बेटी ने गिना तीन पत्ते हैं", "3"),
    ("id", "leaves", "tadi anak saya hitung ada tiga daun", "3"),
    ("vi", "leaves", "con gái tôi đếm được ba lá", "3"),
    ("pt", "leaves", "o meu filho contou tres folhas", "3"),
    ("fil", "leaves", "binilang ng anak ko tatlong dahon", "3"),
    ("bn", "leaves", "মেয়ে গুনছে তিনটা পাতা", "3"),
    ("en", "colour", "my wife went to look, green she says", "green"),
    ("sw", "colour", "ni kijani kabisa, zinapendeza", "green"),
]
NOT_TOLD = [
    ("en", "leaves", "4 goats came in and ate the leaves"),
    ("en", "leaves", "three leaves are yellow"),
    ("en", "leaves", "my okra has three leaves"),
    ("en", "leaves", "it does not have three leaves"),
    ("en", "leaves", "three leaves, i counted ten plants, one had two"),
    ("en", "colour", "the neighbours bed is green"),
    ("en", "colour", "it was green last week"),
    ("en", "colour", "green but the tips are brown"),
    ("en", "colour", "green except one corner"),
    ("en", "colour", "green worms on the leaves"),
    ("en", "colour", "half green half pale"),
    ("en", "colour", "my okra is green"),
    ("en", "drain", "we drained the fish pond of my uncle with the bed sheet"),
    ("en", "sow", "the hens scattered the seed"),
    ("pt", "leaves", "compra 5 folhas de cartolina pra Nelinha"),
    ("hi", "leaves", "ताश के तीन पत्ते और सब हार गया हाहा"),
    ("bn", "uncover", "মশারি তুলে ফেলছি জানালা খুলে দিলাম"),
    ("id", "drain", "bak mandi sdh dikuras"),
    ("fil", "warning", "kinumutan ko na si baby malamig kasi"),
    ("sw", "transplant", "miche ya kahawa ya baba ilihamishwa mwaka juzi"),
]


@pytest.mark.parametrize(("language", "moment", "text", "value"), TOLD)
def test_what_a_sentence_tells_is_kept(
    language: str, moment: str, text: str, value: str
) -> None:
    assert outcome(turn(text, MOMENTS[moment](language))).written == {value}


@pytest.mark.parametrize(("language", "moment", "text"), NOT_TOLD)
def test_what_only_looks_like_it_is_not(language: str, moment: str, text: str) -> None:
    written = outcome(turn(text, MOMENTS[moment](language))).written
    assert not written & {"done", "covered", "green", "2", "3", "4"}


def test_work_in_words_no_rule_knows_is_asked_about_and_goes_to_nobody() -> None:
    known = MOMENTS["soak"]("en")
    text = "finally everything went under in the big drum thanks to my son"
    weights = understand(text, known.ears, "en").weights
    assert weights[Act.DONE] + weights[Act.NOTDONE] > 0.5
    answer = turn(text, known)
    assert outcome(answer).written <= {"done"}
    assert not any(isinstance(each, NoteUnread) for each in answer.changes)


SOWN_ON_SUNDAY = [
    ("hi", "buwai itwar ko ho gyi"),
    ("bn", "robibar bona shesh hoise"),
    ("en", "done the sowing on sunday"),
    ("sw", "Kusia kulimalizika jumapili"),
]


@pytest.mark.parametrize(("language", "text"), SOWN_ON_SUNDAY)
def test_work_that_is_over_was_on_the_sunday_gone_by(language: str, text: str) -> None:
    assert outcome(turn(text, MOMENTS["sow"](language))).written == {"done"}


LAST_YEAR = [
    ("en", "last year the flood took my bed"),
    ("sw", "mwaka jana mafuriko yalichukua kitalu changu"),
    ("fr", "l'an dernier l'inondation a pris mon semis"),
    ("id", "tahun lalu banjir menghanyutkan persemaian saya"),
    ("vi", "năm ngoái lũ cuốn hết mạ của tôi"),
    ("pt", "no ano passado a cheia levou o meu viveiro"),
    ("hi", "पिछले साल बाढ़ मेरी क्यारी ले गई"),
    ("bn", "গত বছর বন্যায় আমার বীজতলা গেছে"),
    ("fil", "noong isang taon tinangay ng baha ang punlaan ko"),
]


@pytest.mark.parametrize(("language", "text"), LAST_YEAR)
def test_a_flood_of_last_year_is_no_cry(language: str, text: str) -> None:
    assert "danger" not in outcome(turn(text, MOMENTS["nothing"](language))).reached


def test_like_last_year_is_one() -> None:
    text = "like last year the flood took my bed"
    assert "danger" in outcome(turn(text, MOMENTS["nothing"]("en"))).reached


BOTH = [
    ("uncover", "uncovered, then the dyke broke and water took it", "danger"),
    ("warning", "covered with straw but water is coming in", "written"),
    ("drain", "we are draining now and a snake bit my wife", "harm"),
    ("transplant", "planted all of it, then the snake bit my son", "harm"),
    ("soak", "seed in the drum but my son drank the water", "harm"),
    ("sow", "seed is on the bed but the flood took it", "danger"),
]


@pytest.mark.parametrize(("moment", "text", "who"), BOTH)
def test_a_cry_beside_work_is_no_work(moment: str, text: str, who: str) -> None:
    found = turn(text, MOMENTS[moment]("en"))
    assert not outcome(found).written & {"done", "covered"}
    assert who == "written" or who in outcome(found).reached
    alarms = [each for each in found.changes if isinstance(each, RaiseAlarm)]
    assert who != "harm" or [each.sure for each in alarms] == [True]


NOT_OF_THE_WORK = [
    ("uncover", "after church we took the straw off and let water in"),
    ("soak", "my wife was not home so i put the seed in the drum myself at six"),
]


@pytest.mark.parametrize(("moment", "text"), NOT_OF_THE_WORK)
def test_a_not_of_something_else_is_no_not_yet(moment: str, text: str) -> None:
    assert "not_yet" not in outcome(turn(text, MOMENTS[moment]("en"))).written


@pytest.mark.parametrize("text", ["planting on friday because there is a funeral"])
def test_a_reason_beside_a_day_leaves_the_day(text: str) -> None:
    assert outcome(turn(text, MOMENTS["transplant"]("en"))).written == {"not_yet"}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "i wish i had ten acres like the chief haha"),
        ("vi", "ong chu tui o Dak Lak co 5 hecta ca phe giau lam"),
    ],
)
def test_land_that_is_wished_for_is_asked_about(language: str, text: str) -> None:
    assert not outcome(turn(text, MOMENTS["signup"](language))).written


@pytest.mark.parametrize(
    ("language", "text"),
    [("pt", "cobri mas a agua esta a entrar"), ("hi", "dhak diya par pani aa raha hai")],
)
def test_what_stands_behind_a_but_is_asked_about(language: str, text: str) -> None:
    assert "danger" in outcome(turn(text, MOMENTS["nothing"](language))).reached


OF_ELSE = [
    ("leaves", "4 tomorrow", "4"),
    ("leaves", "weeds have 3 leaves", "3"),
    ("colour", "my neighbours is yellow", "yellow"),
    ("colour", "bed B yellow", "yellow"),
    ("warning", "my bed at the other farm is covered", "covered"),
    ("transplant", "planted 5 rows so far", "done"),
]


@pytest.mark.parametrize(("moment", "text", "fact"), OF_ELSE)
def test_another_bed_or_day_or_a_part_is_not_kept(moment: str, text: str, fact: str) -> None:
    assert fact not in outcome(turn(text, MOMENTS[moment]("en"))).written


UNDER = [
    ("pt", "coberto de agua"),
    ("id", "tertutup air"),
    ("vi", "nuoc phu het luong"),
    ("hi", "pani se dhak gaya"),
    ("fil", "natakpan ng lupa"),
]


@pytest.mark.parametrize(("language", "text"), UNDER)
def test_covered_by_water_or_mud_is_no_cover(language: str, text: str) -> None:
    got = outcome(turn(text, MOMENTS["warning"](language)))
    assert "covered" not in got.written and "danger" in got.reached


VIOLENCE_OR_MISSING = [
    ("en", "done. husband is beating me"),
    ("id", "suami pukul saya terus"),
    ("sw", "mume ananipiga kila siku"),
    ("hi", "bachhe nahi lote abhi tak nadi gaye the"),
    ("bn", "hoye gese kintu chele haraye gese"),
]


@pytest.mark.parametrize(("language", "text"), VIOLENCE_OR_MISSING)
def test_who_is_beaten_or_missing_is_heard(language: str, text: str) -> None:
    assert "harm" in outcome(turn(text, MOMENTS["sow"](language))).reached


def test_a_bare_yes_behind_what_was_answered_to_the_ear_is_no_deed() -> None:
    """Also where it was asked first whether somebody is hurt; and of a task of days ago."""
    known = MOMENTS["sow"]("en")
    talk = begin(talks.IF_HURT)
    question = Focus(question=f"{talk.conversation}.{talk.step}")
    asked = turn("1", replace(known, session=talk, focuses=(question, *known.focuses)))
    for day in (known.today, known.today - timedelta(days=3)):
        items = tuple(replace(each, day=day) for each in known.items)
        told = (each.focus for each in asked.texts if each.focus is not None)
        focuses = (*told, Focus(items=items))
        after = replace(known, session=asked.session, items=items, focuses=focuses)
        assert not outcome(turn("yes", after)).written


def focuses_of(answer: Turn) -> list[Focus]:
    """What a bare digit would answer after it."""
    return [text.focus for text in answer.texts if text.focus is not None]


def test_a_bare_yes_behind_advice_is_no_deed() -> None:
    """It may answer "call now"; the task is asked once more, and then it answers that."""
    known = MOMENTS["sow"]("en")
    told = turn("my wife fainted", known)
    after = replace(known, focuses=(*focuses_of(told), *known.focuses))
    for bare in ("yes", "1", "done"):
        again = turn(bare, after)
        assert not outcome(again).written
        asked = replace(after, focuses=(*focuses_of(again), *after.focuses))
        assert outcome(turn("1", asked)).written == {"done"}


HEARSAY = [
    ("en", "they said on the news a crocodile took a man in the south"),
    ("fr", "hier un enfant a failli tomber dans le canal, il joue deja au ballon"),
    ("hi", "कल टीवी पे दिखाया बाढ़ से कितने लोग डूब गए"),
    ("vi", "coi ti vi thấy ngoài trung lũ cuốn chết mấy người"),
]


@pytest.mark.parametrize(("language", "text"), HEARSAY)
def test_what_was_in_the_news_rings_no_sure_alarm(language: str, text: str) -> None:
    told = turn(text, MOMENTS["nothing"](language))
    assert not any(isinstance(each, RaiseAlarm) and each.sure for each in told.changes)
