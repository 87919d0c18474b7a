"""A TLS connection that one thread reads while others write.

OpenSSL allows one call at a time on a connection, and Python before 3.13 does not see to it: a
read that waited beside a write lost what came, and a bind was never answered. So each call is
made under a lock and waits for nothing in it; what must be waited for is waited for outside.
"""

import selectors
import socket
import ssl
import threading

READ, WRITE = selectors.EVENT_READ, selectors.EVENT_WRITE


class SharedTls:
    """The calls of a socket that a bind needs, safe for several threads."""

    def __init__(self, connection: ssl.SSLSocket) -> None:
        connection.setblocking(False)
        self._connection = connection
        self._one_call = threading.Lock()

    def recv(self, most: int) -> bytes:
        """Waits for octets; none once the connection has ended. Raises OSError."""
        while True:
            waits_for = READ
            with self._one_call:
                try:
                    return self._connection.recv(most)
                except ssl.SSLWantReadError:
                    pass
                except ssl.SSLWantWriteError:
                    waits_for = WRITE
            self._wait(waits_for)

    def sendall(self, octets: bytes) -> None:
        """Writes all of it. Raises OSError."""
        left = memoryview(octets)
        while left:
            waits_for = WRITE
            with self._one_call:
                try:
                    left = left[self._connection.send(left) :]
                    continue
                except ssl.SSLWantWriteError:
                    pass
                except ssl.SSLWantReadError:
                    waits_for = READ
            self._wait(waits_for)

    def shutdown(self, how: int) -> None:
        """Ends it for both sides; whoever waits is woken. Raises OSError."""
        self._connection.shutdown(how)

    def close(self) -> None:
        """Gives the socket back."""
        self._connection.close()

    def _wait(self, event: int) -> None:
        try:
            with selectors.DefaultSelector() as waits:
                waits.register(self._connection, event)
                waits.select()
        except ValueError as fault:  # it was closed meanwhile
            raise OSError("the connection is closed") from fault


Connection = socket.socket | SharedTls
