"""TLS on the operator's side: one thread reads a connection, any other may write to it. OpenSSL
takes one call at a time, so none of them waits while it holds the lock."""

import select
import ssl
from collections.abc import Callable
from functools import partial
from threading import Lock
from typing import TypeVar

T = TypeVar("T")


class TlsConnection:
    """What the message centre uses of a socket."""

    def __init__(self, secured: ssl.SSLSocket) -> None:
        secured.settimeout(0)
        self._secured, self._lock = secured, Lock()

    def recv(self, most: int) -> bytes:
        """The next octets, or none at the end."""
        octets = None
        while octets is None:
            octets = self._tried(partial(self._secured.recv, most), writes=False)
        return octets

    def sendall(self, octets: bytes) -> None:
        """All of them."""
        sent = 0
        while sent < len(octets):
            rest = memoryview(octets)[sent:]
            sent += self._tried(partial(self._secured.send, rest), writes=True) or 0

    def shutdown(self, how: int) -> None:
        """End both ways."""
        self._secured.shutdown(how)

    def close(self) -> None:
        """Give the socket back."""
        self._secured.close()

    def _tried(self, call: Callable[[], T], *, writes: bool) -> T | None:
        """What a call gives; None where it must be made again, once the socket is ready."""
        with self._lock:
            try:
                return call()
            except ssl.SSLWantReadError:
                writes = False
            except ssl.SSLWantWriteError:
                writes = True
        place = self._secured.fileno()
        if place < 0:
            raise OSError("closed")
        found = select.poll()
        found.register(place, select.POLLOUT if writes else select.POLLIN)
        found.poll()
        return None
