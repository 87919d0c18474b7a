"""Sends what waits in the outbox, and keeps what the operator says became of it."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime, timedelta

from assistant.channel import Fate, Gateway, Handover, Outgoing, Receipt
from assistant.dialogue.values import Kind
from assistant.reminders.retry import next_try
from assistant.service.house import House
from assistant.service.known import zone_of
from assistant.service.texts import after_quiet
from assistant.service.tick import was_lost
from assistant.store import OutboxText, Settled, Work

SILENT_REST = timedelta(seconds=2)  # an operator that did not answer may be starting
LONGEST_REST = timedelta(minutes=10)  # whatever it asks for: a warning may be waiting


def _for_ever() -> bool:
    return True


Carry = Callable[[Callable[[OutboxText], Handover], Iterable[OutboxText]], Iterable[Handover]]
"""How several texts are handed over: one after the other (map), or at once by a pool."""


def dispatch(
    house: House,
    gateway: Gateway,
    now: datetime,
    *,
    limit: int,
    lease: timedelta,
    in_time: Callable[[], bool] = _for_ever,
    hands: int = 1,
    carry: Carry = map,
) -> int:
    """Claims texts that may go now, hands them over, records the answers; how many went.

    An operator that does not answer, asks for a pause, or is so slow that it is no longer
    `in_time` before the lease ends, is not given the rest: that goes back, and a warning
    written meanwhile goes before it.

    The hand-over is outside any transaction: a crash between it and the record leads to a
    second hand-over under the same id, which the operator drops.

    Args:
        hands: how many texts are on their way at once, as `carry` carries them
    """
    with house.store.work() as work:
        may_send = work.running.line().may_send(now)
        claimed = work.outbox.claim(now, limit, lease) if may_send else ()
    took = False
    for start in range(0, len(claimed), hands):
        some = claimed[start : start + hands]
        answers = _hand_over(house, gateway, some, now, carry)
        took = took or any(each.fate is Fate.ACCEPTED for each in answers)
        halt = next((each for each in answers if _halts(each)), None)
        if halt or not in_time():
            gone = start + len(some)
            with house.store.work() as work:
                work.outbox.give_back(each.message_id for each in claimed[gone:])
                _note_line(work, halt or _ANSWERED, now, took=took)
            return 0 if halt else gone
    if claimed:
        with house.store.work() as work:
            _note_line(work, _ANSWERED, now, took=took)
    return len(claimed)


def _halts(handover: Handover) -> bool:
    """Whether the next text would fare no better."""
    return handover.rest is not None or not handover.answered


# What is noted where a whole batch went through, or never came to the line.
_ANSWERED = Handover(Fate.ACCEPTED)


def _note_line(work: Work, handover: Handover, now: datetime, *, took: bool) -> None:
    """Keeps how the operator answered; one that asked for a pause, or was silent, gets one."""
    if handover.answered:
        work.running.answered(now, took=took)
    rest = handover.rest if handover.answered else SILENT_REST
    if rest is not None:
        work.running.rest(now + min(rest, LONGEST_REST), handover.detail)


# Good enough in the morning; a prompt ends with its day, an answer was asked for.
_NEVER_AT_NIGHT = frozenset({Kind.NOTICE, Kind.ALL_CLEAR, Kind.LETTER, Kind.CONSENT})


def _hand_over(
    house: House, gateway: Gateway, texts: Sequence[OutboxText], now: datetime, carry: Carry
) -> list[Handover]:
    """Offers some texts and records what became of them; what the operator answered."""
    leaving = [text for text in texts if not _stays(house, text, now)]

    wrote_by = _wrote_by(house, leaving)

    def offer(text: OutboxText) -> Handover:
        line = wrote_by.get(text.phone, "") if text.kind is Kind.REPLY else ""
        return gateway.send(
            Outgoing(
                text.message_id, text.phone, text.text, text.not_after, text.kind.value, line
            ),
            now,
        )

    answers = list(carry(offer, leaving))
    both = list(zip(leaving, answers, strict=True))
    _taken(house, [each for each in both if each[1].fate is Fate.ACCEPTED], now)
    _put_off(house, [each for each in both if each[1].put_off_until], now)
    for text, handover in both:
        if handover.fate is not Fate.ACCEPTED and handover.put_off_until is None:
            _not_taken(house, text, handover, now)
    return answers


def _wrote_by(house: House, texts: Sequence[OutboxText]) -> Mapping[str, str]:
    """The lines by which the readers of answers last wrote, where there are several."""
    phones = {text.phone for text in texts if text.kind is Kind.REPLY}
    if not house.several_lines or not phones:
        return {}
    with house.store.look() as work:
        return work.lines.heard_by(phones)


def _put_off(house: House, both: Sequence[tuple[OutboxText, Handover]], now: datetime) -> None:
    """Texts that were offered to nobody: they wait, and it counts as no try. One whose time
    would be over by then is looked at again when it is, and given up by the clock."""
    until: dict[datetime, list[str]] = {}
    for text, handover in both:
        until.setdefault(handover.put_off_until or now, []).append(text.message_id)
    for moment, message_ids in until.items():
        with house.store.work() as work:
            work.lines.put_off(message_ids, moment)


def _taken(house: House, both: Sequence[tuple[OutboxText, Handover]], now: datetime) -> None:
    """Records the texts that the operator took, together."""
    if not both:
        return
    with house.store.work() as work:
        plain = [text.message_id for text, handover in both if not handover.detail]
        work.outbox.accepted(plain, now)
        for text, handover in both:
            if handover.detail:
                work.outbox.record(text.message_id, Fate.ACCEPTED, now, detail=handover.detail)
        _by_lines(work, both)
        early = [_parts(work, text, handover, now) for text, handover in both if handover.parts]
    for settled in filter(None, early):
        take_receipt(house, _receipt(settled), now)


def _by_lines(work: Work, both: Sequence[tuple[OutboxText, Handover]]) -> None:
    """Notes which lines took which texts, where they have names."""
    by_line: dict[str, list[str]] = {}
    for text, handover in both:
        if handover.line:
            by_line.setdefault(handover.line, []).append(text.message_id)
    for line, message_ids in by_line.items():
        work.lines.took(message_ids, line)


def _parts(work: Work, text: OutboxText, handover: Handover, now: datetime) -> Settled | None:
    """Keeps the operator's ids of a text; what faster receipts made of it already."""
    work.lock(_PARTS.format(handover.line))
    return work.lines.keep_parts(handover.line, handover.parts, text.message_id, now)


_PARTS = "parts of {}"  # what a hand-over and its receipts wait for each other by


def _receipt(settled: Settled) -> Receipt:
    return Receipt(settled.message_id, settled.fate, settled.at, settled.detail)


def _not_taken(house: House, text: OutboxText, handover: Handover, now: datetime) -> None:
    """Records a text that is to be tried again, or that is lost, with what follows from it."""
    fate, retry_at = handover.fate, None
    if fate is Fate.TRY_LATER:
        retry_at = next_try(text.attempts + 1, now, text.not_after)
        fate = Fate.TRY_LATER if retry_at else Fate.EXPIRED
    with house.store.work() as work:
        work.outbox.record(
            text.message_id, fate, now, detail=handover.detail, retry_at=retry_at
        )
        if fate in (Fate.FAILED, Fate.EXPIRED):
            was_lost(work, house, text, now)


def _stays(house: House, text: OutboxText, now: datetime) -> bool:
    """Whether a claimed text does not leave now: held until morning, or taken back."""
    morning = _held_until(house, text, now)
    if morning is not None:
        with house.store.work() as work:
            work.outbox.record(text.message_id, Fate.TRY_LATER, now, retry_at=morning)
        return True
    return text.warning_id is not None and _taken_back(house, text, now)


def _taken_back(house: House, text: OutboxText, now: datetime) -> bool:
    """Lets go of a warning's text that was taken back after it was claimed: a batch of them
    takes a while to hand over."""
    with house.store.look() as work:
        if work.sending.may_leave(text.message_id, now):
            return False
    with house.store.work() as work:
        work.sending.let_go(text.message_id, now)
    return True


def _held_until(house: House, text: OutboxText, now: datetime) -> datetime | None:
    """The end of the quiet hours, for a text that was held up into them and may wait."""
    if text.urgent or text.kind not in _NEVER_AT_NIGHT:
        return None
    with house.store.work() as work:
        farmer, officer = work.people.farmer(text.phone), work.people.officer(text.phone)
        serves = officer.village_ids[:1] if officer else ()
        village_id = farmer.village_id if farmer else next(iter(serves), None)
        may_leave = after_quiet(house, zone_of(work, house, village_id), now)
    return may_leave if may_leave > now else None


def take_receipt(house: House, receipt: Receipt, now: datetime) -> bool:
    """Keeps a receipt; False for a text that is not ours. Repeats change nothing. One that
    bears the operator's id of a part is kept for that part, and is the text's once all parts
    arrived, or one is lost."""
    if not receipt.message_id:
        settled = _settled(house, receipt)
        return settled is not None and take_receipt(house, _receipt(settled), now)
    with house.store.work() as work:
        before = work.outbox.get(receipt.message_id)
        after = work.outbox.record(
            receipt.message_id, receipt.fate, receipt.at, detail=receipt.detail
        )
        if after is None or before is None:
            return False
        if after.state != before.state and after.state in ("failed", "expired"):
            was_lost(work, house, after, now)
        return True


def _settled(house: House, receipt: Receipt) -> Settled | None:
    with house.store.work() as work:
        work.lock(_PARTS.format(receipt.line))
        return work.lines.settle(
            receipt.line, receipt.part, receipt.fate, receipt.at, receipt.detail
        )
