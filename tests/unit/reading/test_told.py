"""Whether a task was done: sure only where a reply says nothing else. Sentences of our own."""

import pytest

from assistant.reading import Outcome, read_told
from assistant.wiring.lexicons import open_lexicons

LEXICONS = open_lexicons()


def told(language: str, words: str) -> str:
    """What a reply is taken for; with a question mark where it is asked back."""
    reading = read_told(words, LEXICONS[language])
    if reading.outcome is Outcome.AGAIN:
        return "again"
    return f"{reading.value}?" if reading.outcome is Outcome.CONFIRM else str(reading.value)


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "we finished transplanting"),
        ("en", "I have sown the seeds"),
        ("en", "sowing done"),
        ("sw", "tumeshapanda mbegu"),
        ("fr", "c'est déjà fait"),
        ("hi", "मैंने बीज बो दिया है"),
        ("bn", "ami kaj shesh korechi"),
        ("id", "saya sudah tabur benih"),
        ("vi", "chúng tôi đã gieo"),
        ("pt", "eu já semeei a semente"),
        ("fil", "naghasik na po ako"),
    ],
)
def test_done(language: str, words: str) -> None:
    assert told(language, words) == "done"


@pytest.mark.parametrize("words", ["yes", "y", "yeah sure", "Yes please", "✅"])
def test_a_yes_is_a_yes(words: str) -> None:
    assert told("en", words) == "yes"


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "ok"),
        ("en", "fine"),
        ("en", "👍"),
        ("sw", "sawa"),
        ("fr", "d'accord"),
        ("hi", "ठीक है"),
        ("bn", "আচ্ছা"),
        ("id", "oke"),
        ("vi", "được"),
        ("pt", "está bem"),
        ("fil", "sige po"),
    ],
)
def test_an_ok_may_only_mean_that_the_text_was_read(language: str, words: str) -> None:
    assert told(language, words) == "yes?"


@pytest.mark.parametrize("words", ["tomorrow", "I will do it tomorrow", "later", "I forgot"])
def test_put_off(words: str) -> None:
    assert told("en", words) == "not_yet"


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "I want to plan another field"),
        ("en", "I will call you later"),
        ("en", "can I come tomorrow"),
        ("en", "done with ploughing"),
        ("en", "I planted maize"),
        ("en", "it is raining"),
        ("en", "no money for seed"),
        ("en", "no fertilizer"),
        ("en", "wrong number"),
        ("sw", "nimenunua mbegu"),
        ("sw", "nimelima shamba"),
        ("sw", "sina mbegu"),
        ("fr", "j'ai planté du maïs"),
        ("hi", "मक्का बो दिया"),
        ("id", "saya sudah beli benih"),
        ("vi", "tôi đã mua giống"),
        ("pt", "não há água"),
        ("pt", "ligo mais tarde"),
        ("fil", "nagtanim ako ng mais"),
    ],
)
def test_other_talk_is_no_answer(language: str, words: str) -> None:
    assert told(language, words) not in ("yes", "no", "done", "not_yet")
