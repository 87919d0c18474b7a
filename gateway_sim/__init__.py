"""A simulated mobile operator: texts, USSD sessions and receipts, over real HTTP.

It plays the operator's side of the wire to the assistant and shares no code with it. In a
test, on a clock of the test's own:

    with OperatorController(secret="s", clock=lambda: now) as op:
        op.callback_url = start_assistant(gateway=op.url)
        phone = op.phone("+447700900101")
        op.handler = Delay(timedelta(minutes=5), ways=("to_phone",))
        phone.text("0.4 ha")             # the assistant was called back when this returns
        now = op.due()                   # five minutes on
        op.advance()                     # the answer arrives, the receipt goes out
        assert "seed" in phone.texts[-1]
        assert "language" in phone.dial("*555*7#")
        assert not op.faults             # no screen too long, nothing unanswered

By hand: `python -m gateway_sim` runs it, `python -m gateway_sim phone 07700900101` is a phone.
"""

from gateway_sim.controller import OperatorController
from gateway_sim.core import OperatorLimits
from gateway_sim.errors import OperatorError
from gateway_sim.handlers import (
    Busy,
    Chain,
    Deliver,
    Fail,
    Handler,
    InTransit,
    Lose,
    MessageDelay,
    NoReceipt,
    ReceiptLater,
    Refuse,
    Reorder,
    Repeat,
    Sometimes,
)
from gateway_sim.phones import Phone, Received
from gateway_sim.record import EntryKind, RecordEntry
from gateway_sim.showing import Owner, Push, Showing

__all__ = [
    "Busy",
    "Chain",
    "MessageDelay",
    "Deliver",
    "RecordEntry",
    "Fail",
    "Handler",
    "EntryKind",
    "OperatorLimits",
    "Lose",
    "InTransit",
    "NoReceipt",
    "OperatorController",
    "OperatorError",
    "Owner",
    "Phone",
    "Push",
    "ReceiptLater",
    "Received",
    "Refuse",
    "Reorder",
    "Repeat",
    "Showing",
    "Sometimes",
]
