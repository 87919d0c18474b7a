"""Yes, no, done and not yet."""

import pytest

from assistant.reading import Outcome, Reason, read_confirm, read_deeds


@pytest.mark.parametrize(
    ("language", "text", "meaning"),
    [
        ("en", "yes", "yes"),
        ("en", "NO!!", "no"),
        ("en", "1", "yes"),
        ("en", "2.", "no"),
        ("en", "1️⃣", "yes"),
        ("en", "👍🏾", "yes"),
        ("en", "❌", "no"),
        ("en", "doen", "done"),
        ("en", "yes done", "done"),
        ("en", "done yesterday", "done"),
        ("en", "DONE B", "done"),
        ("en", "no not yet", "not_yet"),
        ("en", "I have not done it yet", "not_yet"),
        ("en", "no problem", "yes"),
        ("sw", "ndyo", "yes"),
        ("sw", "bado sijamaliza", "not_yet"),
        ("fr", "c fait", "done"),
        ("fr", "pas fini", "not_yet"),
        ("hi", "जी नहीं", "no"),
        ("hi", "accha", "yes"),
        ("hi", "ho gaya", "done"),
        ("hi", "२", "no"),
        ("bn", "হয়নি", "not_yet"),
        ("bn", "হয়ে গেছে", "done"),
        ("id", "belum selesai pak", "not_yet"),
        ("vi", "đúng rồi", "yes"),
        ("vi", "dạ chưa", "not_yet"),
        ("vi", "xong roi", "done"),
        ("pt", "ainda não acabei", "not_yet"),
        ("fil", "hindi", "no"),
        ("fil", "hindii pa", "not_yet"),
        ("fil", "opo tapos na po", "done"),
    ],
)
def test_an_answer_is_understood(lexicons, language, text, meaning):
    """By word, sign or digit, with manners and typing mistakes."""
    reading = read_confirm(text, lexicons[language])
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, meaning)
    assert reading.words == lexicons[language].answers[meaning]


@pytest.mark.parametrize(
    ("language", "text", "meaning"),
    [
        ("en", "no water", "no"),
        ("en", "yes tomorrow", "yes"),
        ("sw", "nitafika kesho", "not_yet"),
        ("en", "ston", "not_yet"),  # soon, or stop
        ("vi", "dung", "yes"),  # đúng is right, dừng is stop
        ("fr", "iui", "yes"),
    ],
)
def test_a_doubtful_answer_is_read_back(lexicons, language, text, meaning):
    """Other words beside it, a later day, a slip that may be another word."""
    reading = read_confirm(text, lexicons[language])
    assert (reading.outcome, reading.value) == (Outcome.CONFIRM, meaning)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("yes no", Reason.TWO_VALUES),
        ("1 no", Reason.TWO_VALUES),
        ("maybe", Reason.NOT_READ),
        ("don't know", Reason.NOT_KNOWN),
        ("3", Reason.NOT_READ),
        ("1 2", Reason.NOT_READ),
        ("-1", Reason.NOT_READ),
        ("yes?", Reason.NOT_READ),
        ("2 acres", Reason.NOT_READ),
        ("", Reason.EMPTY),
    ],
)
def test_anything_else_is_asked_again(lexicons, text, reason):
    """Both, neither, a question."""
    reading = read_confirm(text, lexicons["en"])
    assert (reading.outcome, reading.reason) == (Outcome.AGAIN, reason)


def test_digits_are_answers_only_where_the_prompt_had_them(lexicons):
    """A 1 after a question without numbers says nothing."""
    assert read_confirm("1", lexicons["en"], digits=False).outcome is Outcome.AGAIN


@pytest.mark.parametrize(
    ("language", "text", "deeds"),
    [
        ("en", "we have transplanted", "transplant"),
        ("en", "planted today", "sow transplant"),
        ("en", "done", ""),
        ("sw", "tumepandikiza yote", "transplant"),
        ("sw", "nimeshaloweka", "soak"),
        ("fr", "jai repiqué tout", "transplant"),
        ("fr", "g mis de l'eau", "flood"),
        ("hi", "ropai ho gayi", "transplant"),
        ("hi", "भिगो दिया", "soak"),
        ("bn", "রোপণ করেছি", "transplant"),
        ("id", "udah tanam pindah pak", "transplant"),
        ("vi", "cấy xong rồi", "transplant"),
        ("vi", "da thao nuoc", "drain"),
        ("pt", "ja transplantei tudo", "transplant"),
        ("pt", "tirei a agua", "drain"),
        ("fil", "nailipat ko na lahat", "transplant"),
        ("fil", "inalis ko na ang takip", "uncover"),
    ],
)
def test_a_deed_says_done_and_what(lexicons, language, text, deeds):
    """The verb of the work is an answer too."""
    assert read_confirm(text, lexicons[language]).value == "done"
    assert read_deeds(text, lexicons[language]) == set(deeds.split())


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "not transplanted yet"),
        ("sw", "bado nimepandikiza"),
        ("fr", "pas encore repiqué"),
        ("pt", "ainda não transplantei"),
        ("id", "belum sudah direndam"),
        ("vi", "chưa cấy xong"),
        ("fil", "di pa nailipat"),
    ],
)
def test_a_deed_that_is_not_done_yet(lexicons, language, text):
    """The small word goes before the verb."""
    assert read_confirm(text, lexicons[language]).value == "not_yet"
