"""A person's talk at the terminal phone, by text or by USSD."""

from dataclasses import dataclass
from threading import Condition, Lock, Thread
from time import monotonic

from gateway_sim.alphabet import GSM_7BIT
from gateway_sim.errors import OperatorError
from gateway_sim.handset import Handset, HandsetText, RefusedError, Shown, UnreachableError
from gateway_sim.terminal import Terminal, clock_time, indented, segments

POLL_SECONDS = 20.0


@dataclass(frozen=True)
class PipePace:
    """How long lines from a pipe wait, in seconds of real time.

    answer: for the first text that answers a line, before the next is sent
    settle: for a second text right after it
    quiet:  at the end of the lines, for the last text
    most:   at the end of the lines, in all
    """

    answer: float = 4.0
    settle: float = 0.3
    quiet: float = 1.5
    most: float = 15.0


class TextPrinter:
    """Hears texts arrive and prints each; a thread of its own, so that typing never waits."""

    def __init__(self, handset: Handset, terminal: Terminal, after: int) -> None:
        self._handset, self._terminal, self._after = handset, terminal, after
        self.speaking = Lock()  # held while a line is sent: nothing heard is printed then
        self._news = Condition()
        self._heard = 0
        self._gone = self._hushed = False
        Thread(target=self._listen, name="ear", daemon=True).start()

    @property
    def heard(self) -> int:
        """How many texts came so far."""
        return self._heard

    def wait_beyond(self, heard: int, seconds: float) -> bool:
        """Wait until more than so many texts came; whether they did."""
        with self._news:
            self._news.wait_for(lambda: self._gone or self._heard > heard, seconds)
            return self._heard > heard

    def wait_quiet(self, quiet: float, most: float) -> None:
        """Wait until no text came for `quiet` seconds, or `most` have passed."""
        end = monotonic() + most
        while (left := end - monotonic()) > 0:
            if not self.wait_beyond(self._heard, min(quiet, left)):
                return

    def hush(self) -> None:
        """Print no more: the terminal is being put away."""
        self._hushed = True

    def _listen(self) -> None:
        try:
            while not self._hushed:
                for text in self._handset.inbox(self._after, POLL_SECONDS):
                    self._after = text.turn
                    self._hear(text)
        except OperatorError as gone:
            with self._news:
                self._gone = True
                self._news.notify_all()
            if not self._hushed:
                self._terminal.note(f"The phone lost its network: {gone}")

    def _hear(self, text: HandsetText) -> None:
        if self._hushed:
            return
        size = segments(text.segments)
        head = f"[{clock_time(text.at)}] from {text.sender} ({size})"
        with self.speaking:
            self._terminal.say(f"{head}: {indented(text.text)}")
        with self._news:
            self._heard += 1
            self._news.notify_all()


def talk_by_text(
    handset: Handset, terminal: Terminal, ear: TextPrinter, pace: PipePace
) -> None:
    """Send each line as a text; lines from a pipe take turns with the answers."""
    for line in terminal.lines():
        heard = ear.heard
        try:
            _send(handset, terminal, ear, line)
        except RefusedError as refused:
            terminal.note(f"Not sent: {refused}")
            continue
        if not terminal.typed and ear.wait_beyond(heard, pace.answer):
            ear.wait_quiet(pace.settle, pace.most)
    ear.wait_quiet(pace.quiet, pace.most)


def _send(handset: Handset, terminal: Terminal, ear: TextPrinter, line: str) -> None:
    """Send a line; a piped one is printed, before its answer however quick that is."""
    with ear.speaking:
        sent = handset.text(line)
        if not terminal.typed:
            head = f"[{clock_time(sent.at)}] to {handset.service} ({segments(sent.segments)})"
            terminal.say(f"{head}: {line}")


def talk_by_ussd(
    handset: Handset, terminal: Terminal, ear: TextPrinter, pace: PipePace, code: str
) -> None:
    """Dial the code and answer each screen with a line, until the session ends."""
    handset.hang_up()  # a session that an earlier terminal left behind
    try:
        screen = handset.dial(code)
        _show(terminal, f"dialled {code}", screen)
        if screen.more:
            screen = _answer_all(handset, terminal, screen)
    except KeyboardInterrupt:
        handset.hang_up()
        raise
    if screen.more:
        handset.hang_up()
        terminal.say("Session ended: hung up at the end of input.")
    else:
        terminal.say(f"Session ended: {screen.ended}.")
    ear.wait_quiet(pace.quiet, pace.most)


def _answer_all(handset: Handset, terminal: Terminal, screen: Shown) -> Shown:
    for line in terminal.lines():
        try:
            screen = handset.answer(line)
        except UnreachableError:
            raise
        except RefusedError as refused:
            return Shown("", False, screen.encoding, 0, screen.limit, str(refused))
        _show(terminal, f"answered {line}", screen)
        if not screen.more:
            break
    return screen


def _show(terminal: Terminal, done: str, screen: Shown) -> None:
    units = "septets" if screen.encoding == GSM_7BIT else "UCS-2 characters"
    if not terminal.typed:
        terminal.say(f"# {done}")
    terminal.say(f"({screen.size} of {screen.limit} {units})")
    terminal.say(f"    {indented(screen.text)}")
