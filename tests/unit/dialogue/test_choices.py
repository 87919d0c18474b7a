"""A choice from a list: a digit counts only where it stands alone."""

import pytest

from assistant.reading import read_choice
from tests.valley import LEXICONS

WARNING = [["Covered"], ["Need help"]]

# reply: the place of what was chosen, None where it must be asked again
REPLIES = {
    "1": 0,
    "2.": 1,
    "2 please": 1,
    "the 2nd": 1,
    "1 covered": 0,
    "covered": 0,
    "we need help": 1,
    "two": 1,
    "1 acre": None,
    "one acre": None,
    "2 acres": None,
    "2 June": None,
    "not 1": None,
    "not covered": None,
    "not yet covered": None,
    "it is covered": 0,
    "no, covered": 0,
    "1 child is hurt": None,
    "1 or 2": None,
    "3": None,
    "": None,
}


@pytest.mark.parametrize(("reply", "place"), REPLIES.items(), ids=REPLIES.keys())
def test_a_reply_chooses(reply: str, place: int | None) -> None:
    """ "1 acre" to a rain warning is no "covered", and to a summary no "yes"."""
    assert read_choice(reply, WARNING, LEXICONS["en"]).value == place
