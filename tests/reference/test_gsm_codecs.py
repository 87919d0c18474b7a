"""Alphabet, octets and segments of texts in nine languages against codecs of other hands; all
10,000 by `python -m tests.reference.gsm_codecs`."""

from tests.reference.gsm_codecs import differences, languages, texts


def test_texts_of_all_languages_are_counted_and_cut_as_others_do() -> None:
    """Of an evenly drawn few hundred."""
    assert len(languages()) == 9
    assert list(differences(list(texts(450)))) == []
