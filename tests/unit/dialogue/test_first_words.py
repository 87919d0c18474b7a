"""The first text is listened to: its language, what it asks for, and what it already says."""

from dataclasses import replace

import pytest

from assistant.dialogue import values as v
from assistant.people import LANGUAGES
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_talk as m
from tests.talk import VILLAGES, Phone
from tests.valley import CATALOGUES, like


def stranger() -> Phone:
    """A phone that nobody knows, where all languages are heard."""
    phone = Phone.new()
    phone.known = replace(phone.known, lexicons=open_lexicons())
    return phone


def test_a_greeting_in_a_language_is_answered_in_it() -> None:
    phone = stranger()
    outcome = phone.says("habari")
    assert outcome.language == "sw"
    assert outcome.texts[0].says[0].message is m.ASK_VILLAGE


@pytest.mark.parametrize("text", ["hello", "0.5 ha 85%", "ok"])
def test_where_the_language_is_not_clear_it_is_asked(text: str) -> None:
    phone = stranger()
    assert phone.says(text).texts[0].says[0].message is m.ASK_LANGUAGE


def test_the_name_of_a_language_is_taken() -> None:
    assert stranger().says("kiswahili").language == "sw"


def test_what_the_first_text_says_is_not_asked_again() -> None:
    phone = stranger()
    phone.says("0.5 ha 85%")
    for text in ("1", "1", "yes"):
        phone.says(text)
    assert phone.known.session is not None
    answers = phone.known.session.answers
    assert (answers["area"], answers["germination"]) == (5000.0, 85.0)
    assert phone.known.session.step == "pail"


def test_a_trouble_in_the_first_text_reaches_a_person_after_yes() -> None:
    phone = stranger()
    assert not phone.says("my rice is yellow").changes
    phone.says("1")
    outcome = phone.says("yes")
    calls = [each.words for each in outcome.changes if isinstance(each, v.CallForHelp)]
    assert calls == ["my rice is yellow"]


def test_a_village_that_is_not_in_the_list_reaches_a_person() -> None:
    phone = stranger()
    for text in ("hello", "1", str(len(VILLAGES) + 1)):
        phone.says(text)
    outcome = phone.says("yes")
    assert [e.about for e in outcome.changes if isinstance(e, v.CallForHelp)] == ["village"]


def test_a_greeting_later_goes_on_where_the_plan_was_left() -> None:
    phone = Phone.enrolled()
    phone.says("new")
    assert phone.hears("hello") == [like(m.KEPT_SO_FAR(), m.ASK_AREA())]
    assert phone.hears("menu") != [like(m.KEPT_SO_FAR(), m.ASK_AREA())]


def test_not_knowing_is_an_answer() -> None:
    """Seed is untested; a field is measured by steps that the help says."""
    phone = Phone.enrolled()
    phone.says("new")
    assert phone.hears("i don't know")[0].startswith(str(m.HELP_AREA.text)[:20])
    phone.says("1 acre")
    phone.says("i don't know")
    assert phone.known.session is not None and phone.known.session.step == "untested"


@pytest.mark.parametrize("language", LANGUAGES)
def test_not_knowing_is_no_refusal(language: str) -> None:
    """In no language is "I don't know" a wish for no more texts."""
    words = {"en": "i dont know", "sw": "sijui", "hi": "पता नहीं", "bn": "জানি না"}
    words |= {"vi": "không biết", "id": "tidak tahu", "fil": "hindi ko alam"}
    words |= {"fr": "je ne sais pas", "pt": "não sei"}
    phone = stranger()
    catalogue = replace(CATALOGUES["en"], language=language)
    phone.known = replace(phone.known, catalogue=catalogue)
    outcome = phone.says(words[language])
    ends = (v.Decline, v.PauseTexts, v.StopTexts, v.RaiseAlarm)
    assert not [each for each in outcome.changes if isinstance(each, ends)]
