"""What a line by a mapping meets on a bad day: answers that never come, or come in half."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import Fate, Outgoing
from gateway_sim.provider import SimulatedProvider
from tests.contract.lines import LINES

AMINA = "+447700900101"


@pytest.mark.parametrize("fault", ["lost", "half"])
@pytest.mark.parametrize("name", ["http, JSON", "http, forms", "http, signed, in plain words"])
def test_a_text_whose_answer_was_lost_is_in_doubt_and_offered_again(
    name: str, fault: str
) -> None:
    """It was taken. A provider that is told our id, and gives none of its own, drops the
    second; by another a phone may show it twice."""
    now = datetime.now(UTC)
    text = Outgoing("t-41", AMINA, "Soak the seed today.", now + timedelta(hours=1))
    with LINES[name]() as line:
        provider = line.operator.network.core.assistant
        assert isinstance(provider, SimulatedProvider)
        provider.faults.append(fault)
        handover = line.gateway.send(text, now)
        assert (handover.fate, handover.answered) == (Fate.TRY_LATER, False)
        assert handover.in_doubt
        assert line.operator.phone(AMINA).wait_for(1)
        assert line.gateway.send(text, now).fate is Fate.ACCEPTED
        assert set(line.operator.phone(AMINA).texts) == {text.text}


def test_a_provider_without_room_is_left_in_peace() -> None:
    """And nothing of the text is taken."""
    now = datetime.now(UTC)
    with LINES["http, JSON"]() as line:
        provider = line.operator.network.core.assistant
        assert isinstance(provider, SimulatedProvider)
        provider.faults.append("busy")
        handover = line.gateway.send(Outgoing("t-41", AMINA, "hi", now + timedelta(1)), now)
        assert handover.answered and handover.rest is not None and not handover.in_doubt
        assert line.operator.phone(AMINA).texts == []
