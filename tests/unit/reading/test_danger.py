"""Which words of a call for help cannot wait for the morning.

The sentences are ours, written before the lists; no outside source exists for them (a native
reviewer has yet to sign the lists, as all word lists).
"""

from collections.abc import Mapping

import pytest

from assistant.reading import Lexicon, in_danger


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "The storm took the cover off my bed"),
        ("en", "WATER OVER THE BED pls come"),
        ("en", "flood"),
        ("en", "Water runs over the bed, the cover is gone"),
        ("en", "Heavy rain, river is rising"),
        ("sw", "Mafuriko yameingia kitaluni"),
        ("sw", "Mvua kubwa na upepo mkali"),
        ("fr", "Tout est inondé depuis hier"),
        ("fr", "L'eau passe par-dessus les plateaux"),
        ("hi", "mera bed baadh me doob gaya"),
        ("hi", "बाढ़ आ गई है"),
        ("bn", "বন্যা এসেছে"),
        ("id", "persemaian kebanjiran"),
        ("vi", "Mưa to quá, ruộng bị ngập"),
        ("vi", "bi ngap het roi"),
        ("pt", "Uma cheia, está tudo debaixo de água"),
        ("fil", "Binaha ang punlaan ko"),
    ],
)
def test_a_flood_or_a_storm_cannot_wait(
    lexicons: Mapping[str, Lexicon], language: str, words: str
) -> None:
    """In each language as people type it."""
    assert in_danger(words, lexicons[language])


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "Must I flood the bed today or tomorrow?"),
        ("en", "I flooded on day 5 and the leaves are yellow"),
        ("en", "the bund broke"),
        ("en", "rats eat my seed"),
        ("en", ""),
        ("en", "12"),
        ("sw", "Panya wanakula mbegu"),
        ("fr", "j'ai inondé hier, les feuilles jaunissent"),
        ("vi", "cái bao này mấy kg"),  # a sack, not a storm
        ("pt", "a lata está cheia?"),
        ("id", "daun kuning"),
    ],
)
def test_a_task_or_another_trouble_can(
    lexicons: Mapping[str, Lexicon], language: str, words: str
) -> None:
    """To flood is work of the trade, and nobody is woken for it."""
    assert not in_danger(words, lexicons[language])
