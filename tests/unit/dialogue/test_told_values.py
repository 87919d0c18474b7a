"""Counts and results told in a sentence are read; what happened to the bed by itself is no
deed of the farmer."""

import pytest

from assistant.dialogue.turns import turn
from tests.corpus.talk.judging import DEEDS, outcome
from tests.corpus.talk.moments import MOMENTS


@pytest.mark.parametrize(
    ("language", "text", "leaves"),
    [
        ("en", "two leaves and the third is just coming", "2"),
        ("sw", "majani matatu na la nne linatokeza", "3"),
        ("fr", "deux feuilles et la troisième commence à sortir", "2"),
        ("hi", "do patte hain teesra nikal raha hai", "2"),
        ("vi", "hai lá, lá thứ ba đang nhú", "2"),
        ("id", "daun tiga, yang keempat mau keluar", "3"),
        ("fil", "dalawang dahon na, lalabas na ang pangatlo", "2"),
    ],
)
def test_a_leaf_that_is_coming_is_not_counted(language: str, text: str, leaves: str) -> None:
    assert leaves in outcome(turn(text, MOMENTS["leaves"](language))).written


@pytest.mark.parametrize(
    ("language", "text", "result"),
    [
        ("en", "planting done, ten trays remained so my sister took them", "surplus"),
        ("pt", "as mudas acabaram, ficou um canto sem nada", "short"),
        ("id", "pas, ga lebih ga kurang", "enough"),
        ("bn", "chara shesh, ek kona khali roye gelo", "short"),
    ],
)
def test_a_result_is_told_in_a_sentence(language: str, text: str, result: str) -> None:
    got = outcome(turn(text, MOMENTS["result"](language)))
    assert got.written == {result} and "danger" not in got.reached


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "ten mats remained but the goats ate them"),
        ("en", "did six mats remain for my brother?"),
    ],
)
def test_more_than_a_result_is_not_kept_as_one(language: str, text: str) -> None:
    assert not outcome(turn(text, MOMENTS["result"](language))).written


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "rats cut the side and all water don go"),
        ("en", "the side opened by itself, water has gone"),
        ("fil", "binutasan ng daga ang gilid, tuyo na ang punlaan"),
        ("sw", "mafuriko yalibomoa ukingo, maji yametoka"),
        ("hi", "बाढ़ ने मेड़ तोड़ दी, पानी निकल गया"),
        ("id", "galengan bedah sendiri, air habis"),
        ("vi", "lũ làm vỡ bờ, nước rút hết rồi"),
    ],
)
def test_a_dyke_that_broke_has_drained_no_bed(language: str, text: str) -> None:
    assert not outcome(turn(text, MOMENTS["drain"](language))).written & DEEDS
