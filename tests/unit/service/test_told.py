"""Answers of a trouble talk are kept as codes and worded for who reads them."""

import pytest

from assistant.service.told import told
from assistant.wiring.catalogues import open_catalogue
from assistant.wording.message import Say
from assistant.wording.render import Catalogue, render

ENGLISH = open_catalogue("en")


def worded(say: Say | None, catalogue: Catalogue = ENGLISH) -> str:
    """As an officer reads it."""
    return render(say, catalogue) if say else ""


@pytest.mark.parametrize(
    ("about", "kept", "read"),
    [
        ("yellow", "spots", "Spots or rust on leaves"),
        ("yellow", "tip,patches", "Old leaves, from the tip, In patches"),
        ("not_up", "46 fill", "46 shoots in a square of 10 x 10 cm. The farmer: Sow more mats"),
        ("not_up", "12", "12 shoots in a square of 10 x 10 cm"),
        ("seed", "44/100", "44 of 100 sprouted"),
        # kept by an earlier release, in the farmer's words
        ("yellow", "Madoa au kutu", "Madoa au kutu"),
        ("not_up", "46 / 100 cm2: fill", "46 / 100 cm2: fill"),
    ],
)
def test_codes_are_read_in_words(about: str, kept: str, read: str) -> None:
    """What is no code is shown as it was kept."""
    assert worded(told(about, kept).answer) == f"Answered when asked: {read}"


def test_each_officer_reads_their_own_language() -> None:
    """The sign is worded in Swahili for who reads Swahili."""
    answer = worded(told("yellow", "spots").answer, open_catalogue("sw"))
    assert "Spots" not in answer and "spots" not in answer


def test_own_words_stay_own_words() -> None:
    """A number in them is no count of shoots."""
    assert told("officer", "46 fill").words == "46 fill"
