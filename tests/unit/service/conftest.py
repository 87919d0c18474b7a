"""A deployment in a file of its own, with two villages; the way to where a test begins is gone
once and copied."""

import pytest

from assistant.people import Village
from tests.stages import furnish, stage, staged, stages
from tests.valley import AMINA, KIJANI, LEAD, MWANGA, OFFICER, Staged, Valley, settle

__all__ = ["furnish", "staged", "stages"]


@pytest.fixture
def valley(staged: Staged) -> Valley:
    """The first of June, eight in the morning; two villages and nobody in them."""
    return staged(settle)


@pytest.fixture
def kijani() -> Village:
    """The first village by name."""
    return KIJANI


@pytest.fixture
def mwanga() -> Village:
    """The second village by name."""
    return MWANGA


def lead_on(valley: Valley) -> None:
    """Amina has a nursery just sown; an officer serves her village, a lead all."""
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.sow(AMINA, "31 May")
    for phone in (AMINA, OFFICER, LEAD):
        valley.heard(phone)


led = stage(lead_on)
