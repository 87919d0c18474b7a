"""Phrases by the thousands, packed: found as in a dict, and with their accents."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from assistant.reading.text.fold import read_tokens
from assistant.reading.text.lexicon import BESIDE_A_DEED, Lexicon, Sort
from assistant.reading.text.phrases import PackedPhrases, as_said
from assistant.reading.text.spot import items

WITH = PackedPhrases.of([("my", "wife"), ("my", "wife", "and", "i"), ("my",), ("o'clock",)])
TONAL = PackedPhrases.of(
    [("vo", "toi"), ("vo",)],
    [(("vo", "toi"), ("vợ", "tôi")), (("vo",), ("vợ",)), (("vo",), ("vỡ",))],
)


def test_it_is_a_mapping_to_no_key() -> None:
    """As phrases of the other sorts are, so that all are asked in one way."""
    assert WITH["my", "wife"] == ""
    assert ("my", "wif") not in WITH
    assert ("wife",) not in WITH
    assert len(WITH) == 4
    assert set(WITH) == {("my", "wife"), ("my", "wife", "and", "i"), ("my",), ("o'clock",)}


@pytest.mark.parametrize(
    ("text", "lengths"),
    [
        ("my wife and i sowed", {1, 2, 4}),
        ("my wives", {1}),  # no phrase ends within a word
        ("myself", set()),
        ("wife", set()),
        ("", set()),
    ],
)
def test_one_look_tells_which_phrases_begin_here(text: str, lengths: set[int]) -> None:
    """However many there are."""
    assert set(WITH.lengths(as_said(text.split()))) == lengths


def test_spellings_with_accents_are_kept_to_their_phrase() -> None:
    """A shorter phrase has its own."""
    assert TONAL.spellings(("vo",)) == (("vỡ",), ("vợ",))
    assert TONAL.spellings(("vo", "toi")) == (("vợ", "tôi"),)
    assert TONAL.spellings(("ba",)) == ()
    assert len(list(TONAL.all_spellings())) == 3


def test_what_is_packed_is_unpacked_as_it_was() -> None:
    """For the next start."""
    again = PackedPhrases.unpacked(*TONAL.packed())
    assert dict(again) == dict(TONAL)
    assert set(again.all_spellings()) == set(TONAL.all_spellings())


def test_of_packed_and_other_phrases_the_longest_is_found(
    lexicons: Mapping[str, Lexicon],
) -> None:
    """And of two sorts the one that is named first."""
    listed = {("my", "wife"): "key", ("my", "wife", "has"): "key"}
    lexicon = replace(lexicons["en"], phrases={Sort.DEED: listed, Sort.PERSON: WITH})
    for sorts in ((Sort.PERSON, Sort.DEED), (Sort.DEED, Sort.PERSON)):
        for text, sort in (
            ("my wife", sorts[0]),
            ("my wife has", Sort.DEED),
            ("my wife and i", Sort.PERSON),
        ):
            (item,) = items(read_tokens(text), lexicon, sorts)
            assert (item.sort, item.text) == (sort, text)


def test_every_list_has_them_packed(lexicons: Mapping[str, Lexicon]) -> None:
    """In dicts they were forty megabytes."""
    for lexicon in lexicons.values():
        assert all(isinstance(lexicon.phrases[sort], PackedPhrases) for sort in BESIDE_A_DEED)


def test_accents_count_in_what_is_packed(lexicons: Mapping[str, Lexicon]) -> None:
    """Vietnamese: with others in the text, a word without its own is another word."""
    lexicon = lexicons["vi"]
    packed = lexicon.phrases[Sort.PERSON]
    assert isinstance(packed, PackedPhrases)
    phrase, spelling = next(
        (plain, marked) for plain, marked in packed.all_spellings() if plain != marked
    )
    assert spelling in lexicon.spellings(Sort.PERSON, phrase)
    (told,) = items(read_tokens(" ".join(spelling)), lexicon, (Sort.PERSON,))
    assert told.sort is Sort.PERSON
    bare = items(read_tokens(f"{' '.join(phrase)} đó"), lexicon, (Sort.PERSON,))
    assert bare[0].sort is (Sort.PERSON if phrase in packed.spellings(phrase) else None)
