"""One phone's trouble is not the others'."""

import logging
from collections.abc import Sequence
from typing import Any

import pytest

from assistant.agronomy.nursery import Nursery
from assistant.people import Village
from assistant.reminders import compose as composing
from assistant.reminders import morning as batched
from assistant.reminders.compose import Composed
from assistant.reminders.values import Reminder
from assistant.service import tick as alone
from assistant.wording import messages_tasks as t
from tests.valley import AMINA, BARAKA, Valley, like


def test_a_phone_whose_text_cannot_be_made_holds_up_nobody(
    valley: Valley,
    kijani: Village,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    """Amina comes first by number, and fails; Baraka gets his text, and she gets hers once
    the fault is mended."""
    for phone in (AMINA, BARAKA):
        valley.enrol(phone)
        valley.plan(phone, "10 June")
    valley.go("9 Jun 20:30")
    valley.heard(AMINA), valley.heard(BARAKA)

    def compose(due: Sequence[tuple[Nursery, Sequence[Reminder]]], *given: Any) -> Composed:
        if any(nursery.farmer_id == 1 for nursery, _ in due):
            raise RuntimeError("a fault of ours")
        return composing.compose(due, *given)

    with monkeypatch.context() as patch, caplog.at_level(logging.ERROR):
        for module in (batched, alone):
            patch.setattr(module, "compose", compose)
        valley.go("10 Jun 06:00")
    sow = like(t.HEAD, t.P_SOW, t.ASK_DONE)
    assert [valley.heard(AMINA), valley.heard(BARAKA)] == [[], [sow]]
    assert any(record.exc_info for record in caplog.records)
    valley.leap("10 Jun 06:05")
    assert [valley.heard(AMINA), valley.heard(BARAKA)] == [[sow], []]
