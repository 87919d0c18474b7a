"""Which text a bare digit answers, as far as receipts tell which of them are on the phone."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.dialogue.values import Kind
from assistant.service.reached import likeliest_first
from assistant.store import OutboxText, TextState

NOON = datetime(2026, 6, 10, 9, 0, tzinfo=UTC)

# Latest first: a name, what the text is for, whether a receipt came; then the order expected.
CASES = {
    "all receipts come": ("prompt reply", "yy", "prompt reply"),
    "a prompt without a receipt may still be on its way": (
        "prompt reply",
        "ny",
        "reply prompt",
    ),
    "two prompts on their way keep their order": (
        "second prompt reply",
        "nny",
        "reply second prompt",
    ),
    "no receipt ever comes": ("prompt reply second", "nnn", "prompt reply second"),
    "our answer to the person's own text is read at once": (
        "reply prompt",
        "ny",
        "reply prompt",
    ),
    "receipts stopped coming before the last answer": (
        "prompt reply second",
        "nny",
        "prompt reply second",
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_what_is_surely_on_the_phone_is_answered_first(case: str) -> None:
    """Where receipts come, a text without one waits behind those that have one."""
    names, receipts, expected = CASES[case]
    kinds = {"prompt": Kind.PROMPT, "reply": Kind.REPLY, "second": Kind.SECOND}
    texts = [
        OutboxText(
            message_id=name,
            phone="+447700900101",
            text=name,
            kind=kinds[name],
            due_at=NOON,
            not_after=NOON + timedelta(days=1),
            created_at=NOON,
            state=TextState.DELIVERED if receipt == "y" else TextState.ACCEPTED,
        )
        for name, receipt in zip(names.split(), receipts, strict=True)
    ]
    assert " ".join(text.message_id for text in likeliest_first(texts)) == expected
