"""What text traffic and USSD share: the clock, the record, work to do, calls and retries."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import partial
from threading import Condition, Event, RLock
from typing import Any

from gateway_sim.agenda import Action, Agenda, Due
from gateway_sim.callbacks import Reply, ReportsLists, Side
from gateway_sim.handlers import Fates, Handler, InTransit, ask
from gateway_sim.record import EntryKind, RecordEntry


@dataclass(frozen=True)
class OperatorLimits:
    """What this operator allows. None of it is in a standard: operators differ.

    session_seconds: length of a whole USSD session
    screen_septets, screen_ucs2: room on one screen, by alphabet
    answer_seconds:  how long the assistant may take over one call
    receipts_at_once: of those that are due, how many are told in one call, where the line has
                     lists
    retry_seconds:   pauses before each new try of a call that was not taken
    """

    session_seconds: float = 180
    screen_septets: int = 182
    screen_ucs2: int = 80
    answer_seconds: float = 10
    receipts_at_once: int = 100
    retry_seconds: tuple[float, ...] = (5, 15, 60, 300, 900, 3600, 3600, 3600)


RECEIPT = "/gateway/receipt"


@dataclass(frozen=True)
class _Told:
    """A receipt that is to be told for the first time."""

    phone: str
    fields: Mapping[str, Any]
    alone: Action

    def __call__(self, due: datetime) -> None:
        self.alone(due)


class Core:
    """The operator's state that is not a phone. All of it is changed under `changed`.

    Arrivals are done inside the operator, calls need the assistant: they are kept apart so
    that a text handed in can arrive at once while calls wait for the operator's own thread
    (the assistant may be in the middle of handing in when a receipt is due).
    """

    def __init__(
        self,
        clock: Callable[[], datetime],
        assistant: Side,
        handler: Handler,
        limits: OperatorLimits,
    ) -> None:
        self.now = clock
        self.assistant = assistant
        self.handler = handler
        self.limits = limits
        self.record: list[RecordEntry] = []
        self.arrivals = Agenda()
        self.calls = Agenda()
        self.changed = Condition(RLock())
        self.wake = Event()  # set when there is new work, for the thread that does it
        self.closed = False
        self.on_entry: Callable[[RecordEntry], None] = lambda entry: None
        self._working = RLock()

    def note(
        self, kind: EntryKind, phone: str = "", at: datetime | None = None, **more: Any
    ) -> None:
        """Write down what happened, and wake whoever waits for news."""
        entry = RecordEntry(at or self.now(), kind, phone, **more)
        with self.changed:
            self.record.append(entry)
            self.changed.notify_all()
        self.on_entry(entry)

    def course(self, message: InTransit) -> Fates:
        """What the handler makes of a message."""
        with self.changed:
            return ask(self.handler, message.way, message, Fates())

    def wait(self, until: Callable[[], bool], seconds: float) -> bool:
        """Wait in real time until this is true or the operator stops; whether it is true."""
        with self.changed:
            self.changed.wait_for(lambda: self.closed or until(), seconds)
            return until()

    def close(self) -> None:
        """Let go of everybody who waits."""
        with self.changed:
            self.closed = True
            self.wake.set()
            self.changed.notify_all()

    def arrive_later(self, due: datetime, action: Action) -> Due:
        """Do at that time what needs nobody else."""
        with self.changed:
            self.wake.set()
            return self.arrivals.add(due, action)

    def call_later(
        self, path: str, phone: str, fields: Mapping[str, Any], due: datetime
    ) -> None:
        """Call the assistant at that time, and again under the same id until it is taken."""
        with self.changed:
            self.wake.set()
            action = partial(self._call, path, phone, fields, 0)
            told = _Told(phone, fields, action) if path == RECEIPT else action
            self.calls.add(due, told)

    def call(self, path: str, phone: str, fields: Mapping[str, Any]) -> Reply:
        """Call the assistant now and write down its answer."""
        reply = self.assistant.call(path, fields)
        self.note(
            EntryKind.CALLED,
            phone,
            id=fields["id"],
            detail=f"{path} {reply.detail}".strip(),
            code=reply.code,
        )
        return reply

    def _call(
        self, path: str, phone: str, fields: Mapping[str, Any], tries: int, due: datetime
    ) -> None:
        reply = self.call(path, phone, fields)
        pauses = self.limits.retry_seconds
        if reply.ok:
            return
        if reply.again and tries < len(pauses):
            again = self.now() + timedelta(seconds=pauses[tries])
            with self.changed:
                self.calls.add(again, partial(self._call, path, phone, fields, tries + 1))
            return
        why = f"{path} given up after {tries + 1} calls: {reply.code or ''} {reply.detail}"
        self.note(EntryKind.FAULT, phone, id=fields["id"], detail=why)

    def due(self) -> datetime | None:
        """When there is something to do next."""
        with self.changed:
            items = [item for item in (self.arrivals.next(), self.calls.next()) if item]
            return min(items).due if items else None

    def do_arrivals(self) -> None:
        """Do what is due and needs nobody else."""
        with self.changed:
            self._do_arrivals(self.now())

    def do_all(self) -> None:
        """Do all that is due, in order."""
        with self._working:
            now = self.now()
            while call := self._next_call(now):
                call()

    def _next_call(self, now: datetime) -> Callable[[], None] | None:
        """The next call due, after all that comes before it has arrived."""
        with self.changed:
            call = self.calls.next()
            self._do_arrivals(min(now, call.due) if call else now)
            call = self.calls.next()  # an arrival may have called for one
            if call is None or call.due > now:
                return None
            self.calls.take()
            several = self._with_receipts(call.action, now)
            if len(several) > 1:
                return partial(self._report, several)
            return partial(call.action, call.due)

    def _with_receipts(self, first: Action, now: datetime) -> list[_Told]:
        """A receipt with all that are due right behind it; empty for what is none, and where
        this line takes them one by one."""
        if not isinstance(self.assistant, ReportsLists) or not isinstance(first, _Told):
            return []
        found = [first]
        while len(found) < self.limits.receipts_at_once:
            item = self.calls.next()
            if item is None or item.due > now or not isinstance(item.action, _Told):
                break
            self.calls.take()
            found.append(item.action)
        return found

    def _report(self, receipts: list[_Told]) -> None:
        """Tell of many texts at once; where that is not taken, of each by itself."""
        assert isinstance(self.assistant, ReportsLists)
        reply = self.assistant.report_all([each.fields for each in receipts])
        for each in receipts:
            detail = f"/gateway/receipts {reply.detail}".strip()
            self.note(
                EntryKind.CALLED,
                each.phone,
                id=each.fields["id"],
                detail=detail,
                code=reply.code,
            )
            if not reply.ok:
                each(self.now())

    def _do_arrivals(self, until: datetime) -> None:
        while (item := self.arrivals.next()) and item.due <= until:
            self.arrivals.take()
            item.action(item.due)
