"""Connections that say half of something: they hold up nobody, and end."""

import socket
import threading
from collections.abc import Iterator
from contextlib import ExitStack
from typing import Any

import pytest
import requests
from waitress.wasyncore import close_all

from assistant.web.connections import MOST_OF_ONE, listen

HALF = b"POST /gateway/text HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Le"


def _app(environ: dict[str, Any], start: Any) -> list[bytes]:
    start("200 OK", [("Content-Type", "text/plain")])
    return [b"taken"]


@pytest.fixture
def port() -> Iterator[int]:
    """A server that gives a request's head two seconds."""
    server = listen(_app, "127.0.0.1", 0, threads=2, channel_timeout=2, cleanup_interval=1)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield server.effective_port  # type: ignore[union-attr]
    # In its own thread: a socket that another one closes is still being waited for there.
    server.trigger.pull_trigger(lambda: close_all(server._map))  # type: ignore[union-attr]
    thread.join(60)
    assert not thread.is_alive()
    server.task_dispatcher.shutdown()


def _half(port: int) -> socket.socket:
    client = socket.create_connection(("127.0.0.1", port))
    client.sendall(HALF)
    return client


def test_half_requests_do_not_keep_the_operator_out(port: int) -> None:
    """A hundred and fifty stopped all calls for 136 seconds."""
    with ExitStack() as held:
        for _ in range(150):
            held.enter_context(_half(port))
        answer = requests.post(f"http://127.0.0.1:{port}/gateway/text", b"x", timeout=60)
    assert answer.text == "taken"


def test_one_address_cannot_take_every_place(port: int) -> None:
    """The one after the last that it may have is closed at once; others have room."""
    with ExitStack() as held:
        for _ in range(MOST_OF_ONE):
            held.enter_context(_half(port))
        last = held.enter_context(socket.create_connection(("127.0.0.1", port)))
        last.settimeout(60)
        assert last.recv(1) == b""


def test_a_byte_now_and_then_buys_no_time(port: int) -> None:
    """The head must be there in time, however slowly it comes: the server hangs up."""
    with _half(port) as client:
        client.settimeout(0.2)
        for _ in range(300):  # a minute; the server closes it long before
            try:
                client.sendall(b"x")
                if client.recv(1) == b"":
                    return
            except TimeoutError:
                continue
            except OSError:  # hung up while we were sending
                return
    pytest.fail("the connection was still open after a minute")


def test_what_serves_is_not_told(port: int) -> None:
    """Nor its version: whoever looks for a hole need not be helped."""
    assert "Server" not in requests.get(f"http://127.0.0.1:{port}/", timeout=60).headers
