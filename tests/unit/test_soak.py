"""The short form of `python -m tests.soak`, and that it would notice."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest

from assistant.channel import Fate, Handover
from assistant.dialogue.values import Kind
from assistant.store import Store
from tests.soak.count import wrong
from tests.soak.network import Network
from tests.soak.service import Soak

PHONES, DAYS = 24, 3

Begin = Callable[[], Soak]


@pytest.fixture
def begin(tmp_path: Path) -> Begin:
    """A soak in a file."""

    def begun() -> Soak:
        url = f"sqlite:///{tmp_path / 'soak.sqlite3'}"
        Store(url).migrate()
        return Soak(url, PHONES, seed=5)

    return begun


def test_some_days_leave_nothing_wrong(begin: Begin) -> None:
    """With faults of all kinds, and a quiet day at the end."""
    soak = begin()
    for _ in range(DAYS):
        soak.day()
    soak.day(quiet=True)
    assert list(wrong(soak)) == []
    assert soak.line.repeats and len(soak.faults) >= 3
    assert sum(map(len, soak.line.shown.values())) > PHONES * DAYS / 2


def test_what_is_wrong_is_found(begin: Begin, monkeypatch: pytest.MonkeyPatch) -> None:
    """A network that drops no repeats, texts that never leave, a text that nobody took."""
    soak = begin()
    soak.day(quiet=True)
    assert list(wrong(soak)) == []
    number, texts = next(iter(soak.line.shown.items()))
    with soak.house.store.look() as look:
        kept = look.outbox.of_phone(number)
    texts += [text.message_id for text in kept if text.kind is Kind.PROMPT]
    soak.people.wrote.add("in-never")
    gone = [Handover(Fate.TRY_LATER, "nobody", answered=False)]
    monkeypatch.setattr(Network, "send_all", lambda self, texts, now: gone * len(texts))
    soak.now += timedelta(hours=7)
    soak.round()
    soak.now += timedelta(hours=2)
    found = " ".join(wrong(soak))
    assert f"{number}: 2 of prompt" in found
    assert "text in-never was not taken" in found
    assert "is waiting" in found
