"""A list of texts on its way within the window, offered by one thread.

A thread for each text costs more than the text: handing it over and back wakes two of them.
Here one thread fills the window by a single write, and is woken when half of it came back.
"""

import threading
import time
from collections import deque
from collections.abc import Callable, Sequence
from datetime import datetime
from typing import Protocol

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.smpp.pdu import NamedResponse, Pdu, Short
from assistant.gateways.smpp.session import GoneError, Landed, SmppSession
from assistant.gateways.smpp.texts import Segment

LONGEST_S = 1.0  # in which texts leave; then a warning that was written meanwhile has its turn


class LineTexts(Protocol):
    """What a line knows of its texts."""

    def segments(self, outgoing: Outgoing) -> Sequence[Segment]:
        """A text in segments."""
        ...

    def taken(self, outgoing: Outgoing) -> tuple[str, ...]:
        """The operator's ids of the segments it has."""
        ...

    def is_known(self, outgoing: Outgoing, place: int, now: datetime) -> bool:
        """Whether a receipt told that the operator has a segment whose answer was lost."""
        ...

    def leaves(self, outgoing: Outgoing, place: int, segment: Segment, now: datetime) -> Short:
        """A segment that is about to leave."""
        ...

    def answered(self, outgoing: Outgoing, place: int, response: NamedResponse) -> None:
        """What the operator said of a segment, in time or late."""
        ...

    def stayed(self, outgoing: Outgoing, place: int) -> None:
        """A segment did not leave."""
        ...

    def refused(self, response: Pdu) -> Handover:
        """What a refusal means."""
        ...

    def in_doubt(self, why: str, now: datetime) -> Handover:
        """What it means that the answer was lost."""
        ...


class Flight:
    """Some texts; those of one phone must not be among them twice.

    Nothing more is offered after an answer that stands for the line, nor after `LONGEST_S`.
    """

    def __init__(
        self,
        session: SmppSession,
        desk: LineTexts,
        texts: Sequence[Outgoing],
        now: datetime,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._session, self._desk, self._texts, self._now = session, desk, texts, now
        self._clock, self._half = clock, max(session.window // 2, 1)
        self._answers: list[Handover | None] = [None] * len(texts)
        self._cut: dict[int, Sequence[Segment]] = {}
        self._ready: deque[tuple[int, int]] = deque((each, 0) for each in range(len(texts)))
        self._flying: dict[int, int] = {}
        self._landed: deque[tuple[int, Pdu | None]] = deque()
        self._lock, self._back = threading.Lock(), threading.Event()
        self._halted = False

    def fly(self) -> list[Handover | None]:
        """Offers them; what was said of each, None of those that were not offered."""
        end = self._clock() + LONGEST_S
        while True:
            if self._ready and not self._halted and self._clock() < end:
                self._launch()
            if not self._flying:
                return self._answers
            if not self._back.wait(self._session.answer_s):
                self._lose("no answer came")
                return self._answers
            self._take()

    # --- leaving -----------------------------------------------------------------------------

    def _launch(self) -> None:
        """Fills the window with what is ready, by one write."""
        leaving: list[tuple[Pdu, Landed]] = []
        steps: list[tuple[int, int]] = []
        while self._ready and self._session.enter(wait=not self._flying and not steps):
            step = self._next()
            if step is None:
                self._session.leave()
                break
            steps.append(step)
            leaving.append(self._leaving(*step))
        if not steps:
            if self._ready and not self._flying:
                self._stop(self._ready[0], "the window stayed full")
            return
        with self._lock:
            self._flying.update(steps)
        try:
            self._session.launch(leaving)
        except GoneError as fault:
            for step in steps:
                del self._flying[step[0]]
                self._session.leave()
                self._stop(step, str(fault))

    def _next(self) -> tuple[int, int] | None:
        """The next segment to offer; passes over what the operator has already."""
        while self._ready:
            index, place = self._ready.popleft()
            text = self._texts[index]
            if index not in self._cut:
                self._cut[index] = self._desk.segments(text)
                place = len(self._desk.taken(text))
            while place < len(self._cut[index]):
                if not self._desk.is_known(text, place, self._now):
                    return index, place
                place += 1
            self._answers[index] = Handover(Fate.ACCEPTED, parts=self._desk.taken(text))
        return None

    def _leaving(self, index: int, place: int) -> tuple[Pdu, Landed]:
        text = self._texts[index]
        pdu = self._desk.leaves(text, place, self._cut[index][place], self._now)

        def landed(response: Pdu | None) -> None:
            if isinstance(response, NamedResponse):
                self._desk.answered(text, place, response)
            self._note(index, response)

        return pdu, landed

    def _stop(self, step: tuple[int, int], why: str) -> None:
        """A segment that did not leave, and stands for the rest."""
        index, place = step
        self._desk.stayed(self._texts[index], place)
        self._answers[index] = Handover(Fate.TRY_LATER, why, answered=False)
        self._halted = True

    # --- coming back -------------------------------------------------------------------------

    def _note(self, index: int, response: Pdu | None) -> None:
        """In the reading thread: an answer is here."""
        with self._lock:
            if index not in self._flying:  # too late, nobody waits for it
                return
            self._landed.append((index, response))
            if len(self._landed) >= min(self._half, len(self._flying)):
                self._back.set()

    def _take(self) -> None:
        with self._lock:
            self._back.clear()
            landed, self._landed = self._landed, deque()
            back = [(index, self._flying.pop(index), answer) for index, answer in landed]
        for index, place, response in back:
            self._session.leave()
            self._judge(index, place, response)

    def _judge(self, index: int, place: int, response: Pdu | None) -> None:
        if response is None:
            said = self._desk.in_doubt(self._session.why, self._now)
        elif response.status:
            said = self._desk.refused(response)
        elif place + 1 < len(self._cut[index]):
            self._ready.appendleft((index, place + 1))
            return
        else:
            taken = self._desk.taken(self._texts[index])
            said = Handover(Fate.ACCEPTED, parts=taken)
        self._answers[index] = said
        self._halted |= said.rest is not None or not said.answered

    def _lose(self, why: str) -> None:
        """Those that are still out are in doubt."""
        self._take()
        with self._lock:
            lost, self._flying = self._flying, {}
        for index in lost:
            self._session.leave()
            self._answers[index] = self._desk.in_doubt(why, self._now)
