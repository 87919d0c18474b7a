"""The lines to the phones, out and in. Our own wire: WIRE.md."""

from assistant.gateways.callbacks import (
    WireError,
    read_receipt_callback,
    read_ring_callback,
    read_text_callback,
    read_ussd_callback,
    wire_hooks,
)
from assistant.gateways.http import HttpGateway
from assistant.gateways.signature import (
    AT_HEADER,
    SIGNATURE_HEADER,
    sign,
    signed_headers,
    verify,
    why_refused,
)

__all__ = [
    "AT_HEADER",
    "SIGNATURE_HEADER",
    "HttpGateway",
    "WireError",
    "read_receipt_callback",
    "read_ring_callback",
    "read_text_callback",
    "read_ussd_callback",
    "sign",
    "signed_headers",
    "verify",
    "why_refused",
    "wire_hooks",
]
