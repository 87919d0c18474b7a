"""The serial port of a modem: its answers, whatever it says of itself between them."""

import queue

import pytest

from assistant.gateways.modem.port import END, Port


class Wire:
    """A modem that says what stands in its script, at each thing that is written to it."""

    def __init__(self, *said: bytes) -> None:
        self._script = list(said)
        self._read: queue.Queue[bytes] = queue.Queue()
        self.in_waiting = 0
        self.wrote = b""

    def read(self, size: int = 1) -> bytes:
        """What comes in one piece, as a busy machine reads it."""
        try:
            return self._read.get(timeout=0.01)
        except queue.Empty:
            return b""

    def write(self, data: bytes, /) -> int:
        """Each write is answered by the next line of the script."""
        self.wrote += data
        if self._script:
            self._read.put(self._script.pop(0))
        return len(data)

    def close(self) -> None:
        """Nothing is left open."""


PROMPTS = {
    "alone": b"\r\n> ",
    "with what came in behind it": b'\r\n> \r\n+CMTI: "SM",1\r\n',
    "with what came in before it": b'\r\n+CMTI: "SM",1\r\n\r\n> ',
}


@pytest.mark.parametrize("how", PROMPTS)
def test_the_prompt_is_seen_whatever_is_said_beside_it(how: str) -> None:
    """A text was not sent, and the modem waited for its words, where its own news followed the
    prompt in one piece."""
    unasked: list[str] = []
    wire = Wire(PROMPTS[how], b"\r\n+CMGS: 5\r\n\r\nOK\r\n")
    port = Port(wire, unasked.append)
    assert port.ask("AT+CMGS=20", 60, body="0011") == ["+CMGS: 5"]
    assert wire.wrote == f"AT+CMGS=20\r0011{END}".encode()
    port.close()
    assert len(unasked) == (how != "alone")


def test_a_late_answer_is_not_taken_for_that_of_the_next_command() -> None:
    """Of a process that died: its command was answered after it had gone."""
    wire = Wire(b"\r\nOK\r\n\r\n+CSQ: 9,99\r\n\r\nOK\r\n", b"\r\n+CPIN: READY\r\n\r\nOK\r\n")
    port = Port(wire, lambda line: None)
    port.abort()
    assert port.ask("AT+CPIN?", 60) == ["+CPIN: READY"]
    port.close()
