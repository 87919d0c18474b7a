"""Official alerts from a web address: one message, or a list (Atom, RSS) of links to them."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from ipaddress import ip_address
from urllib.parse import urljoin, urlsplit

import requests

from assistant.alerts.document import LARGEST_BYTES
from assistant.alerts.sources import FoundMessage, Look, Stamp
from assistant.gateways.alert_feed import read_feed
from assistant.gateways.outside import Outside

MOST_REDIRECTS = 3
MOST_NEW = 50  # messages fetched in one look; the rest at the next
WHOLE_LOOK_S = 60.0
PIECE = 16_384
HERE = frozenset({"127.0.0.1", "localhost", "::1"})  # http will do on this machine
_MOVED = frozenset({301, 302, 303, 307, 308})


class FetchError(Exception):
    """An address that could not be read; the text says why."""


@dataclass(frozen=True)
class _Answer:
    body: bytes
    stamp: Stamp
    address: str
    changed: bool = True


class AlertAddress:
    """Asks one address for what changed (ETag, Last-Modified).

    Only https, but on this machine; redirects are few and never leave the host, nor do links of
    a list; no name may lead to an address of a private net (`Outside`), unless it was set as a
    number; nothing larger than a message may be is read to its end.

    Args:
        timeout_s: for the connection and for each wait for more
        seconds: a clock that only counts, for the time that a whole look may take
    """

    def __init__(
        self, address: str, *, timeout_s: float, seconds: Callable[[], float] = time.monotonic
    ) -> None:
        self._address, self._timeout_s, self._seconds = address, timeout_s, seconds
        self._done: set[str] = set()

    @property
    def name(self) -> str:
        """The address, as it was set."""
        return self._address

    def done(self, key: str) -> None:
        """This one was kept."""
        self._done.add(key)

    def look(self, before: Stamp) -> Look:
        """What is new at the address."""
        until = self._seconds() + WHOLE_LOOK_S
        with requests.Session() as session:
            session.trust_env = False  # settings are passed, never fetched
            if not _is_number(self._address):
                session.mount("https://", Outside())
            try:
                answer = self._fetch(session, self._address, before, until)
                if not answer.changed:
                    return Look(stamp=before)
                links = read_feed(answer.body, answer.address)
                if links is None:
                    return Look((FoundMessage(answer.body, ""),), answer.stamp)
                return self._listed(session, answer, links, until)
            except FetchError as fault:
                return Look(trouble=str(fault))

    def _listed(
        self, session: requests.Session, answer: _Answer, links: tuple[str, ...], until: float
    ) -> Look:
        """The messages that a list leads to. Where one cannot be read the list is asked for
        again next time, whole."""
        host = urlsplit(answer.address).netloc
        own = [link for link in links if _netloc(link) == host]
        new = [link for link in own if link not in self._done]
        found, trouble = [], f"all links lead off {host}" if links and not own else ""
        for link in new[:MOST_NEW]:
            try:
                found.append(
                    FoundMessage(self._fetch(session, link, Stamp(), until).body, link)
                )
            except FetchError as fault:
                trouble = str(fault)
        whole = not trouble and len(new) <= MOST_NEW
        return Look(tuple(found), answer.stamp if whole else Stamp(), trouble)

    def _fetch(
        self, session: requests.Session, address: str, before: Stamp, until: float
    ) -> _Answer:
        for _ in range(MOST_REDIRECTS + 1):
            _allowed(address)
            try:
                with session.get(
                    address,
                    headers=_headers(before),
                    timeout=self._timeout_s,
                    stream=True,
                    allow_redirects=False,
                ) as response:
                    if response.status_code not in _MOVED:
                        return self._answered(response, address, until)
                    address = _onward(address, response.headers.get("Location", ""))
            except (requests.RequestException, ValueError, OSError) as fault:
                raise FetchError(f"{address}: {type(fault).__name__}") from fault
        raise FetchError(f"{address}: more than {MOST_REDIRECTS} redirects")

    def _answered(self, response: requests.Response, address: str, until: float) -> _Answer:
        if response.status_code == 304:
            return _Answer(b"", Stamp(), address, changed=False)
        if response.status_code != 200:
            raise FetchError(f"{address}: {response.status_code} {response.reason}")
        body = bytearray()
        for piece in response.iter_content(PIECE):
            body += piece
            if len(body) > LARGEST_BYTES:
                raise FetchError(f"{address}: more than {LARGEST_BYTES} bytes")
            if self._seconds() > until:
                raise FetchError(f"{address}: not done in {WHOLE_LOOK_S:g} seconds")
        said = response.headers
        stamp = Stamp(said.get("ETag", ""), said.get("Last-Modified", ""))
        return _Answer(bytes(body), stamp, address)


def _headers(before: Stamp) -> dict[str, str]:
    asked = {"If-None-Match": before.etag, "If-Modified-Since": before.modified}
    return {name: value for name, value in asked.items() if value}


def _netloc(link: str) -> str:
    try:
        return urlsplit(link).netloc
    except ValueError:
        return ""


def _onward(address: str, location: str) -> str:
    """Where a redirect leads.

    Raises:
        FetchError: to another host: whoever may write there could have anything read here.
    """
    onward = urljoin(address, location)
    _allowed(onward)
    if _netloc(onward) != _netloc(address):
        raise FetchError(f"{address}: leads off to {_netloc(onward)}; set that address itself")
    return onward


def _is_number(address: str) -> bool:
    """Whether the host is an IP address, or this machine: then a person meant exactly that."""
    try:
        host = urlsplit(address).hostname or ""
        return host in HERE or bool(ip_address(host))
    except ValueError:
        return False


def _allowed(address: str) -> None:
    """Holds to https, so that nobody on the way can write an alert.

    Raises:
        FetchError: another scheme, or no address.
    """
    try:
        parts = urlsplit(address)
    except ValueError:
        raise FetchError(f"{address}: no address") from None
    here = parts.scheme == "http" and parts.hostname in HERE
    if not (parts.hostname and (parts.scheme == "https" or here)):
        raise FetchError(f"{address}: not https")
