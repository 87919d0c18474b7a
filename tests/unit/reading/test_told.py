"""Whether a task was done: sure only where a reply says nothing else. Sentences of our own."""

import pytest

from assistant.reading import Outcome, is_accounted_for, read_told
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


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "i put straw on top"),
        ("en", "covered with nylon since noon"),
        ("en", "put it for bucket this dawn with grandma"),
        ("en", "lifted the leaves at 7, water 1cm"),
        ("en", "my husband soaked the seed at 5 am"),
        ("en", "the seed is in the water, soaking"),
        ("sw", "nimefunika kitalu kwa nyasi kavu"),
        ("sw", "mbegu ziko ndani ya maji"),
        ("sw", "nimetoa majani na kuweka maji"),
        ("sw", "shangazi amesia mikeka yote peke yake"),
        ("fr", "j'ai mis la paille dessus"),
        ("fr", "la semence est dans l'eau depuis 6h"),
        ("fr", "on a semé avec les enfants à l'aube"),
        ("fr", "paille enlevée et 1 cm d'eau mis"),
        ("pt", "pus lona e palha por cima patrão"),
        ("pt", "já tá na água desde as 5"),
        ("pt", "o meu filho tapou tudo"),
        ("fil", "natakpan na namin bago umulan"),
        ("fil", "nasa tubig na 12 kilo"),
        ("fil", "binabad ng asawa ko kaninang umaga"),
        ("id", "kmrn sore sy rendam"),
        ("id", "jerami sudah diangkat terus digenangi"),
        ("id", "udah saya tutup pakai terpal"),
    ],
)
def test_a_deed_is_told_in_many_words_where_each_is_accounted_for(
    language: str, words: str
) -> None:
    """Who did it, with what and when changes nothing of a deed."""
    assert told(language, words) == "done"


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "covered it but the wind took it"),
        ("en", "half covered"),
        ("en", "the bed is flooded"),
        ("en", "covered by water"),
        ("en", "seed is finished"),
        ("en", "everything is finished"),
        ("en", "my brother does it"),
        ("en", "i want the seed put in water"),
        ("sw", "nimesahau"),
        ("sw", "nimeona"),
        ("sw", "mbegu imeisha"),
        ("sw", "imekwisha yote"),
        ("sw", "nataka kufunua na kuweka maji"),
        ("sw", "kitalu kimefunikwa na matope"),
        ("fr", "je trempe cette nuit"),
        ("fr", "la planche est inondée"),
        ("fr", "ma planche est vide"),
        ("fr", "tout est fini"),
        ("fr", "c'est mon frère qui le fait"),
        ("fr", "je veux mettre la paille dessus"),
        ("pt", "já foi tudo"),
        ("pt", "pronto para semear"),
        ("pt", "já está na água o canteiro todo"),
        ("pt", "já cobriu tudo de lama"),
        ("fil", "natapon"),
        ("fil", "natakpan ng putik"),
        ("fil", "halos natakpan na"),
        ("fil", "gusto ko nakatakip"),
        ("id", "telat"),
        ("id", "susah"),
        ("id", "boleh dibuka"),
        ("id", "saya siram nanti sore"),
        ("id", "plastik lepas"),
        ("id", "anak saya sudah baik"),
    ],
)
def test_a_deed_that_was_lost_halved_or_only_meant_is_none(language: str, words: str) -> None:
    """The same words stand in cries and plans."""
    assert told(language, words) != "done"


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "my wife is not well"),
        ("sw", "mume wangu sio sawa"),
        ("fr", "ma femme n'est pas bien"),
    ],
)
def test_what_is_denied_of_a_person_is_neither_accounted_for_nor_an_answer(
    language: str, words: str
) -> None:
    """Who helped is passed over beside a deed only."""
    assert not is_accounted_for(words, LEXICONS[language])
    assert told(language, words) not in ("yes", "no", "done", "not_yet")
