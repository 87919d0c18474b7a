"""Wishes at any point."""

import pytest

from assistant.reading import Ask, Outcome, Wish, language_named, read_reply, read_wish


@pytest.mark.parametrize(
    ("language", "text", "wish"),
    [
        ("en", "0", Wish.BACK),
        ("en", "?", Wish.HELP),
        ("en", "MENU please", Wish.MENU),
        ("en", "hello there", Wish.MENU),
        ("en", "STOP", Wish.STOP),
        ("en", "please stop sending me messages", Wish.STOP),
        ("en", "stop the rain", Wish.RAIN),
        ("en", "how do i stop insects", Wish.PROBLEM),
        ("en", "how many kilos of seed do I need", Wish.QUANTITIES),
        ("en", "the leaves are yellow", Wish.PROBLEM),
        ("en", "hello, my leaves are yellow", Wish.PROBLEM),
        ("en", "call my officer", Wish.OFFICER),
        ("en", "OFFICER chickens are in my seedbed", Wish.OFFICER),
        ("en", "PROBLEM tell the officer the birds came", Wish.PROBLEM),
        ("en", "what do I do today", Wish.TODAY),
        ("en", "can i move the date", Wish.CHANGE_DATE),
        ("en", "menuu", Wish.MENU),
        ("en", "quantties", Wish.QUANTITIES),
        ("en", "Kiswahili", Wish.LANGUAGE),
        ("sw", "leo nifanye nini", Wish.TODAY),
        ("sw", "acha kutuma ujumbe", Wish.STOP),
        ("fr", "la pluie ne s'arrête pas", Wish.RAIN),
        ("hi", "संदेश मत भेजो", Wish.STOP),
        ("hi", "बारिश बंद नहीं हो रही", Wish.RAIN),
        ("bn", "কত কেজি বীজ লাগবে", Wish.QUANTITIES),
        ("id", "jangan kirim pesan lagi", Wish.STOP),
        ("vi", "cần mấy ký giống", Wish.QUANTITIES),
        ("pt", "liga-me", Wish.OFFICER),
        ("fil", "ayaw tumigil ng ulan", Wish.RAIN),
    ],
)
def test_a_wish_is_understood(lexicons, language, text, wish):
    """Short words, whole sentences, greetings and typing mistakes."""
    reading = read_wish(text, lexicons, language)
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, wish)


@pytest.mark.parametrize("language", ["en", "sw", "fr", "hi", "bn", "id", "vi", "pt", "fil"])
@pytest.mark.parametrize(
    "text",
    ["stop", "simamisha", "arrêter", "बंद", "বন্ধ", "berhenti", "dừng", "parar", "itigil"],
)
def test_stop_of_every_language_works_in_all(lexicons, language, text):
    """STOP is obeyed, or asked where the word may be another one."""
    assert read_wish(text, lexicons, language).value is Wish.STOP


PLAIN_ANSWERS = (
    "2 acres|85|41 of 50|10 June|tomorrow|yes|done|no problem|Riverside|dont stop|start stop|"
    "maybe|xkcdq wrrt|"
).split("|")


@pytest.mark.parametrize("text", PLAIN_ANSWERS)
def test_a_plain_answer_is_no_wish(lexicons, text):
    """Nothing is claimed that answers another question."""
    assert read_wish(text, lexicons, "en").outcome is Outcome.AGAIN


@pytest.mark.parametrize(
    ("language", "text"), [("en", "stpo"), ("hi", "acha"), ("hi", "dung"), ("fil", "para")]
)
def test_what_is_only_like_stop_is_asked(lexicons, language, text):
    """A likeness, or a word with another meaning here."""
    reading = read_wish(text, lexicons, language)
    assert (reading.outcome, reading.value) == (Outcome.CONFIRM, Wish.STOP)


def test_two_wishes_in_one_text_are_both_offered(lexicons):
    """The safer one first."""
    reading = read_wish("it's raining, help", lexicons, "en")
    assert reading.outcome is Outcome.CONFIRM
    assert [option.value for option in reading.options] == [Wish.RAIN, Wish.HELP]


@pytest.mark.parametrize(
    ("language", "asked", "text"),
    [
        ("en", Ask.DATE, "today"),
        ("fil", Ask.CONFIRM, "hindi"),
        ("hi", Ask.CONFIRM, "acha"),
        ("vi", Ask.CONFIRM, "dung"),
    ],
)
def test_an_answer_to_the_open_question_is_no_wish(lexicons, language, asked, text):
    """Today is a day, hindi is a no."""
    assert read_wish(text, lexicons, language, asked).outcome is Outcome.AGAIN


@pytest.mark.parametrize(
    ("ask", "text", "value"),
    [
        (Ask.AREA, "0", Wish.BACK),
        (Ask.AREA, "stop", Wish.STOP),
        (Ask.AREA, "menu", Wish.MENU),
        (Ask.CONFIRM, "help", Wish.HELP),
        (Ask.CONFIRM, "no problem", "yes"),
        (Ask.COUNT, "3 rats", 3.0),
        (Ask.DATE, "today", None),
    ],
)
def test_a_reply_is_an_answer_or_a_wish(lexicons, today, ask, text, value):
    """A bare 0 and STOP first, then the answer, then the wish."""
    reading = read_reply(text, ask, lexicons, "en", today)
    assert reading.outcome is Outcome.UNDERSTOOD
    assert reading.value == (today if value is None else value)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("English", "en"),
        ("हिन्दी", "hi"),
        ("kiingereza", "en"),
        ("tiếng việt", "vi"),
        ("no", None),
    ],
)
def test_a_language_is_known_by_its_names(text, code):
    """In whatever language it is named."""
    assert language_named(text) == code


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "when do I transplant"),
        ("en", "is it time to flood"),
        ("en", "which day should I uncover?"),
        ("sw", "nipandikize lini"),
        ("sw", "napanda lini"),
        ("fr", "quand repiquer"),
        ("hi", "रोपाई कब करें"),
        ("bn", "কখন রোপণ করব"),
        ("id", "kapan tanam pindah"),
        ("vi", "khi nào cấy"),
        ("pt", "quando transplanto"),
        ("fil", "kailan po maglilipat tanim"),
    ],
)
def test_when(lexicons, language, text):
    reading = read_wish(text, lexicons, language)
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, Wish.DATES)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "thank you"),
        ("en", "Thanks!"),
        ("sw", "asante sana"),
        ("fr", "merci"),
        ("hi", "धन्यवाद"),
        ("bn", "ধন্যবাদ"),
        ("id", "terima kasih"),
        ("vi", "cảm ơn"),
        ("pt", "muito obrigado"),
        ("fil", "salamat po"),
    ],
)
def test_thanks(lexicons, language, text):
    assert read_wish(text, lexicons, language).value is Wish.THANKS


@pytest.mark.parametrize(
    ("language", "few", "all_of_them"),
    [
        ("en", "too many messages", "text me every day"),
        ("sw", "meseji ni nyingi sana", "tuma kila siku"),
        ("fr", "moins de messages svp", "tous les jours"),
        ("hi", "roz mat bhejo", "हर दिन भेजो"),
        ("bn", "শুধু কাজের দিন", "protidin"),
        ("id", "sms terlalu banyak", "setiap hari"),
        ("vi", "bot tin nhan di", "hằng ngày"),
        ("pt", "muitas mensagens", "todos os dias"),
        ("fil", "ang daming text", "araw araw"),
    ],
)
def test_how_often(lexicons, language, few, all_of_them):
    assert read_wish(few, lexicons, language).value is Wish.WORK_DAYS
    assert read_wish(all_of_them, lexicons, language).value is Wish.EVERY_DAY
