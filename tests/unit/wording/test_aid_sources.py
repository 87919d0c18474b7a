"""Every sentence of every emergency text stands with a publication that bears it."""

import re
from collections.abc import Mapping
from hashlib import sha256

import pytest

from assistant.agronomy.sourced import aid_sources
from assistant.agronomy.sourced.aid_sentences import AID_SENTENCES, AidSentence, cited
from assistant.agronomy.sourced.aid_sources import AidSource, Grade
from assistant.agronomy.sources_page import sources_page
from assistant.wording import messages_aid as aid
from assistant.wording.message import Message

TEXTS: Mapping[str, Message] = {
    **aid.BY_KIND,
    "hurt_here": aid.HURT_HERE,
    "die": aid.DIE,
    "die_hurt": aid.DIE_HURT,
    "die_here": aid.DIE_HERE,
}
SOURCES = tuple(each for each in vars(aid_sources).values() if isinstance(each, AidSource))
# Bodies that are no source here, as digests of their names so that no file names them.
REFUSED = frozenset(
    {
        "a65a2b4bac5de882",
        "c37c3e3aec2c934c",
        "f3fe67a022bbcbeb",
        "fbe45c9f8118cf4b",
        "9188940176bef0bf",
        "2dfd79e4b8684876",
        "fe5cb28787292b3c",
        "678d79727419813e",
    }
)


def sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return re.split(r"(?<=\.) ", text)


@pytest.mark.parametrize("name", TEXTS)
def test_every_sentence_of_a_text_has_its_sources_and_no_other_has(name: str) -> None:
    """In the order of the text: a changed sentence must be borne anew."""
    assert [row.words for row in AID_SENTENCES if row.text == name] == sentences(
        TEXTS[name].text
    )


def test_no_sentence_is_of_a_text_that_is_not_there() -> None:
    """What is no longer said needs no source."""
    assert {row.text for row in AID_SENTENCES} == set(TEXTS)


@pytest.mark.parametrize("row", AID_SENTENCES, ids=lambda row: f"{row.text}: {row.words}")
def test_a_sentence_has_a_source_and_says_where_all_are_poor(row: AidSentence) -> None:
    """Newspapers and pages that repeat an official text bear nothing unseen."""
    assert row.sources
    assert row.weak or any(source.grade is not Grade.REPEATED for source in row.sources)


@pytest.mark.parametrize("source", SOURCES, ids=lambda source: source.key)
def test_a_source_can_be_looked_up(source: AidSource) -> None:
    """Publisher, title, year, address; each is cited, under a key of its own."""
    assert all((source.publisher, source.title, source.year, source.address))
    assert source in cited(AID_SENTENCES)
    assert [each.key for each in SOURCES].count(source.key) == 1


@pytest.mark.parametrize("source", SOURCES, ids=lambda source: source.key)
def test_no_source_is_a_body_that_the_project_does_not_cite(source: AidSource) -> None:
    """Neither by name, nor by short name, nor by address; nor any other body for rice."""
    shown = " ".join((source.publisher, source.title, source.address, source.note)).lower()
    words = re.findall(r"[a-z]+", shown)
    runs = {" ".join(words[at : at + size]) for size in range(1, 5) for at in range(len(words))}
    assert not REFUSED & {digest(run) for run in runs}
    assert "rice" not in words


def digest(words: str) -> str:
    """A name as it stands in the list of those refused."""
    return sha256(words.encode()).hexdigest()[:16]


def test_the_page_says_that_nobody_has_signed_the_texts() -> None:
    """A reader of SOURCES.md must not take the table for a health worker's."""
    page = " ".join(sources_page(()).split())
    assert "No health worker and no vet has signed these texts" in page
    for row in AID_SENTENCES:
        assert f"| {row.text} | {row.words} | {row.sources[0].key}" in page
