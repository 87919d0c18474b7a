"""AT commands over a serial port: one at a time, with their answers; what the modem says of
itself meanwhile is kept apart."""

import queue
import re
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from typing import Protocol

PROMPT = "> "
END, ABORT = "\x1a", "\x1b"
ABORTED_S = 0.1  # a modem that says nothing for so long has said all
STALE = 50  # lines of it at most
_FINAL = re.compile(r"OK|ERROR|\+CM[ES] ERROR: .*|NO CARRIER|BUSY|NO ANSWER|NO DIALTONE")
_UNASKED = ("+CMTI:", "+CDSI:", "+CDS:", "+CMT:", "+CLIP:", "RING", "+CUSD:", "+CREG:")
_WITH_PDU = ("+CDS:", "+CMT:")  # the next line belongs to them


class Serial(Protocol):
    """What is used of a serial port."""

    def read(self, size: int = ...) -> bytes: ...
    def write(self, data: bytes, /) -> int | None: ...
    def close(self) -> None: ...
    @property
    def in_waiting(self) -> int: ...


class PortError(OSError):
    """The port is gone, or the modem does not answer."""


class CommandError(Exception):
    """The modem refused a command. `code` is that of +CMS or +CME ERROR, -1 without one."""

    def __init__(self, command: str, said: str) -> None:
        super().__init__(f"{command}: {said}")
        number = said.rpartition(":")[2].strip()
        self.code = int(number) if number.isdecimal() else -1
        self.is_sim = said.startswith("+CME")


class Port:
    """A modem's port, read in a thread of its own.

    Args:
        unasked: is given each line that no command asked for
    """

    def __init__(self, serial: Serial, unasked: Callable[[str], None]) -> None:
        self._serial, self._unasked = serial, unasked
        self._lines: queue.Queue[str | None] = queue.Queue()
        self._asking, self._asked = threading.Lock(), ""
        self._ended = self._follows = False
        self._thread = threading.Thread(target=self._read, name="modem", daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Ends the reading and gives the port back."""
        self._ended = True
        self._thread.join()
        self._serial.close()

    def abort(self) -> None:
        """Gives up a text that was begun and not ended, as by a process that died: the modem
        would take all commands for its words (TS 27.005 3.5.1, 4.3: ESC ends it unsent)."""
        with self._asking:
            self._write(ABORT + "\r")
            with suppress(queue.Empty):
                for _ in range(STALE):  # a late answer would be taken for that of the next
                    self._lines.get(timeout=ABORTED_S)

    def ask(
        self, command: str, seconds: float, *, body: str = "", wait_s: float = 60.0
    ) -> list[str]:
        """A command's lines before OK.

        Args:
            body: what is written after the prompt, where the command asks for more
            wait_s: how long to wait for a command before this one

        Raises:
            CommandError: the modem refused it.
            PortError: no answer in time, or the port is gone; TimeoutError where another
                command had the port for so long.
        """
        if not self._asking.acquire(timeout=wait_s):
            raise TimeoutError("the modem is busy with another text")
        try:
            self._asked = command
            self._drain()
            self._write(command + "\r")
            if body:
                self._until_prompt(command, seconds)
                self._write(body + END)
            return self._answer(command, seconds)
        finally:
            self._asked = ""
            self._asking.release()

    def _drain(self) -> None:
        while not self._lines.empty():
            self._lines.get_nowait()

    def _until_prompt(self, command: str, seconds: float) -> None:
        end = time.monotonic() + seconds
        while (line := self._next(command, end)) != PROMPT:
            if _FINAL.fullmatch(line):
                raise CommandError(command, line)

    def _answer(self, command: str, seconds: float) -> list[str]:
        found: list[str] = []
        end = time.monotonic() + seconds
        while True:
            line = self._next(command, end)
            if line == "OK":
                return found
            if _FINAL.fullmatch(line):
                raise CommandError(command, line)
            if line not in (PROMPT, command):
                found.append(line)

    def _next(self, command: str, end: float) -> str:
        try:
            line = self._lines.get(timeout=max(end - time.monotonic(), 0))
        except queue.Empty as silent:
            raise PortError(f"the modem does not answer {command}") from silent
        if line is None:
            raise PortError("the modem is gone: see that it is plugged in")
        return line

    def _write(self, words: str) -> None:
        try:
            self._serial.write(words.encode("ascii"))
        except OSError as fault:
            raise PortError("the modem is gone: see that it is plugged in") from fault

    def _read(self) -> None:
        held = ""
        try:
            while not self._ended:
                octets = self._serial.read(max(1, self._serial.in_waiting))
                held = self._take(held + octets.decode("latin-1"))
        except OSError:
            pass
        self._lines.put(None)

    def _take(self, held: str) -> str:
        *lines, rest = re.split(r"\r\n|\r|\n", held)
        for line in lines:
            self._line(line)
        if rest == PROMPT:
            self._lines.put(PROMPT)
            return ""
        return rest

    def _line(self, line: str) -> None:
        line = line.strip()
        if not line:
            return
        if line == PROMPT.strip():  # what the modem says unasked came right behind it
            self._lines.put(PROMPT)
            return
        name = self._asked.removeprefix("AT").partition("=")[0].partition("?")[0]
        is_ours = bool(name) and line.startswith(f"{name}:")
        if self._follows:
            self._follows = False
            self._unasked(line)
            return
        self._follows = line.startswith(_WITH_PDU)
        if line.startswith(_UNASKED) and not (is_ours and name != "+CUSD"):
            self._unasked(line)
        else:
            self._lines.put(line)
