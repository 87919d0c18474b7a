"""Plain deeds are taken at once, and what only looks like a deed never is.

The texts are our own, written as farmers text (tests/corpus/deeds). Here each trap is played at
every other moment, and its neighbour at the others; `python -m tests.corpus.deeds` plays all.
"""

import pytest

from assistant.people import LANGUAGES
from tests.corpus.deeds.__main__ import AT, NO_DEED, is_right, rows

TAKEN = 0.97  # of plain deeds, with the day they name
FEWEST_DEEDS, FEWEST_TRAPS = 60, 40


@pytest.mark.parametrize("language", LANGUAGES)
def test_plain_deeds_are_taken_and_traps_are_not(language: str) -> None:
    found = list(rows("worked", language))
    deeds = [row for row in found if row.deed != NO_DEED]
    traps = [row for row in found if row.deed == NO_DEED]
    assert len(deeds) >= FEWEST_DEEDS and len(traps) >= FEWEST_TRAPS
    wrong = [row.text for at, row in enumerate(traps) if not is_right(row, AT[at % 2 :: 2])]
    assert wrong == []
    missed = [row.text for row in deeds if not is_right(row)]
    assert len(missed) <= (1 - TAKEN) * len(deeds), missed
