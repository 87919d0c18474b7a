"""Signing what goes over the wire, in both directions: HMAC-SHA256 (RFC 2104, FIPS 180-4)."""

import hashlib
import hmac
from datetime import UTC, datetime

AT_HEADER = "X-Nursery-At"
SIGNATURE_HEADER = "X-Nursery-Signature"

TOLERANCE_S = 300
"""How far the two clocks may differ; also how long a caught request could be sent again."""


def sign(secret: str, at: str, path: str, body: bytes) -> str:
    """Compute the signature, in hex, of `body` sent to `path` at `at` [unix seconds]."""
    signed = f"{at}\n{path}\n".encode("utf-8", "replace") + body
    return hmac.new(secret.encode(), signed, hashlib.sha256).hexdigest()


def signed_headers(secret: str, now: datetime, path: str, body: bytes) -> dict[str, str]:
    """Make the two headers of a request that leaves now. `now` is aware."""
    at = str(int(now.timestamp()))
    return {AT_HEADER: at, SIGNATURE_HEADER: sign(secret, at, path, body)}


def verify(
    secret: str, *, at: str, signature: str, path: str, body: bytes, now: datetime
) -> bool:
    """Tell whether a request is signed with our secret and lately sent.

    `at` and `signature` are the values of the two headers, empty when missing. `path` is the
    path asked for, without a query. `now` is aware.
    """
    right = hmac.compare_digest(
        sign(secret, at, path, body).encode(), signature.encode("utf-8", "replace")
    )
    return right and _is_lately(at, now)


def why_refused(at: str, now: datetime) -> str:
    """Why a request was not let in, for a log: its time, or else its signature. Neither the
    body nor the path is said."""
    apart = _apart_s(at, now)
    if apart is None:
        return f"{AT_HEADER} is missing or no time"
    if abs(apart) > TOLERANCE_S:
        return f"the operator's clock is {apart:+.0f} s from ours; set the one that is wrong"
    return "the signature is wrong; compare the secrets"


def _is_lately(at: str, now: datetime) -> bool:
    apart = _apart_s(at, now)
    return apart is not None and abs(apart) <= TOLERANCE_S


def _apart_s(at: str, now: datetime) -> float | None:
    """Seconds from our clock to the time that a request bears; None where it bears none."""
    if not (at.isascii() and at.isdecimal() and len(at) <= 12):
        return None
    return int(at) - now.astimezone(UTC).timestamp()
