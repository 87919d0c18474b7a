"""What lines over HTTP share: a connection a thread, and the headers that speak of time."""

import threading
from datetime import UTC, datetime, timedelta
from email.utils import parsedate_to_datetime
from urllib.parse import urlsplit

import requests
from urllib3.exceptions import (
    ConnectTimeoutError,
    NameResolutionError,
    NewConnectionError,
)

from assistant.channel import Fate, Handover

_LINE_BUSY = frozenset({429, 502, 503, 504})
_REST = timedelta(seconds=15)  # where the operator does not say how long
_DIGITS_MAX = 6
_LOOK = "see whether the internet is there and the address is right"


class Sessions:
    """A connection for each thread. Settings are passed, never fetched: neither a proxy nor a
    password file of the machine may reroute or alter what we signed."""

    def __init__(self) -> None:
        self._own = threading.local()

    def session(self) -> requests.Session:
        """The connection of this thread."""
        if not hasattr(self._own, "session"):
            self._own.session = requests.Session()
            self._own.session.trust_env = False
        session: requests.Session = self._own.session
        return session


def unanswered(trouble: OSError, address: str) -> Handover:
    """What it means that an address did not answer, in words to act on. The text may have left
    where there was a connection."""
    where = urlsplit(address).netloc.rpartition("@")[2]  # without who signs in
    reason = _reason(trouble)
    words, left = f"the connection to {where} broke before it answered", True
    if isinstance(trouble, requests.exceptions.SSLError):
        words, left = f"{where} shows no certificate that this machine trusts", False
    elif isinstance(reason, NameResolutionError):
        words, left = f"no server is found by the name of {where}: {_LOOK}", False
    elif isinstance(reason, NewConnectionError | ConnectTimeoutError):
        words, left = f"nobody answers at {where}: {_LOOK}", False
    elif isinstance(trouble, requests.exceptions.Timeout):
        words = f"{where} did not answer in time"
    return Handover(Fate.TRY_LATER, words, answered=False, in_doubt=left)


def _reason(trouble: OSError) -> object:
    return getattr(next(iter(trouble.args), None), "reason", None)


def rest_of(status: int, retry_after: str, now: datetime) -> timedelta | None:
    """How long the operator wants to be left in peace (RFC 6585 4, RFC 9110 10.2.3 and 15.6.4);
    None where its answer is about the text."""
    if status not in _LINE_BUSY:
        return None
    if retry_after.isascii() and retry_after.isdecimal() and len(retry_after) <= _DIGITS_MAX:
        return timedelta(seconds=int(retry_after))
    until = moment_of(retry_after)
    return max(until - now, timedelta(0)) if until else _REST


def moment_of(http_date: str) -> datetime | None:
    """The time that a header of HTTP bears; None for what is none."""
    try:
        found = parsedate_to_datetime(http_date)
    except ValueError:
        return None
    return found if found.tzinfo else found.replace(tzinfo=UTC)
