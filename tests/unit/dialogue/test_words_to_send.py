"""Every word and chain of digits that a text tells people to send works, in every language."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import replace

import pytest

from assistant.dialogue.turns import turn
from assistant.dialogue.values import Known, Turn
from assistant.people import LANGUAGES
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m
from assistant.wording.checks import QUOTING_LANGUAGES, SENT, STRESS, told_to_send
from assistant.wording.texts import Declared, declared
from tests.corpus.talk.judging import outcome
from tests.corpus.talk.moments import MOMENTS, catalogue

FARMERS = ("talk", "tasks", "seed", "care", "result", "practice", "planting", "people", "aid")
# Answers to what their own text asks, and words that a talk of an officer offers.
ELSEWHERE = frozenset({"NO", "DONE", "NOT YET", "ADD", "SMS", "TOMORROW"})
_CHAIN = re.compile(r"(?:[\s,]+\d)+")
CRIES = {"harm", "die", "danger"}


def _texts() -> Iterator[Declared]:
    return (text for text in declared() if text.place.partition(".")[0] in FARMERS)


def _sent(language: str) -> Iterator[tuple[str, str]]:
    """What a language's texts tell people to send, with the place of the text."""
    words = catalogue(language).translations
    for text in _texts():
        english = [w for w in told_to_send(text.message.text) if SENT[w] != STRESS]
        if not english or set(english) <= ELSEWHERE:
            continue
        form = words.gettext(text.message.text)
        for phrase in told_to_send(form, language in QUOTING_LANGUAGES):
            yield text.place, phrase
            yield from ((text.place, phrase + end) for end in _chains(form, phrase))


def _chains(form: str, phrase: str) -> Iterator[str]:
    """The digits that stand behind a word: "MENU, 9, 3"."""
    for found in re.finditer(re.escape(phrase), form):
        chain = _CHAIN.match(form, found.end() + (form[found.end() : found.end() + 1] == '"'))
        if chain:
            yield chain[0]


def _sent_for_stop(language: str) -> Iterator[str]:
    """The word for STOP, from the question for agreement."""
    form = catalogue(language).translations.gettext(m.ASK_CONSENT.text)
    yield from told_to_send(form, language in QUOTING_LANGUAGES)


ROWS = sorted({(language, phrase) for language in LANGUAGES for _, phrase in _sent(language)})


def _plain(text: str) -> str:
    """Without the marks of Latin letters, as most people type."""
    apart = unicodedata.normalize("NFD", text)
    latin = "".join(ch for ch in apart if not "\u0300" <= ch <= "\u036f")
    return unicodedata.normalize("NFC", latin).replace("Đ", "D").replace("đ", "d")


def _ways(phrase: str) -> Iterator[str]:
    """As printed, without marks, in small letters, without commas, with full stops."""
    for word in dict.fromkeys((phrase, _plain(phrase))):
        yield from (
            word,
            word.lower(),
            f"{word}.",
            word.replace(",", ""),
            word.replace(" ", "  "),
        )


def _not_understood(got: Turn) -> bool:
    said = {say.message for text in got.texts for say in text.says}
    return bool(said & {m.DID_NOT_UNDERSTAND, aid.PASSED_ON})


def _known(language: str) -> Known:
    return replace(MOMENTS["nothing"](language), region=None)


@pytest.mark.parametrize(("language", "phrase"), ROWS)
def test_what_a_text_tells_people_to_send_is_understood(language: str, phrase: str) -> None:
    """Whichever way it is typed; none of it is a cry, none writes a deed."""
    known = _known(language)
    for way in _ways(phrase):
        got = turn(way, known)
        assert not _not_understood(got), way
        assert not outcome(got).reached & CRIES, way
        assert not outcome(got).written, way


STOPS = sorted({(code, p) for code in LANGUAGES for p in _sent_for_stop(code)})


@pytest.mark.parametrize(("language", "phrase"), STOPS)
def test_the_word_that_ends_the_texts_ends_them_or_is_asked(language: str, phrase: str) -> None:
    """With and without marks: DUNG for DỪNG."""
    for way in _ways(phrase):
        assert "refuse" in outcome(turn(way, _known(language))).reached, way
