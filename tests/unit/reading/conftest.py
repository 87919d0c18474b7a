"""The word lists, opened once."""

from collections.abc import Mapping
from datetime import date

import pytest

from assistant.reading import Lexicon
from assistant.wiring.lexicons import open_lexicons


@pytest.fixture(scope="session")
def lexicons() -> Mapping[str, Lexicon]:
    """All nine."""
    return open_lexicons()


@pytest.fixture
def today() -> date:
    """A Wednesday (Gregorian calendar)."""
    return date(2026, 6, 10)
