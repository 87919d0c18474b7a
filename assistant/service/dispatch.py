"""Sends what waits in the outbox, and keeps what the operator says became of it."""

import logging
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime, timedelta

from assistant.channel import Fate, Gateway, Handover, Outgoing, Receipt
from assistant.dialogue.values import Kind
from assistant.reminders.retry import next_try
from assistant.service.brakes import count_spent, stops
from assistant.service.handing import Carry, Way, answer_of, halts, whole_answers
from assistant.service.house import House
from assistant.service.known import zone_of
from assistant.service.texts import after_quiet
from assistant.service.tick import was_lost
from assistant.store import DatabaseAwayError, Lane, OutboxText, Settled, TextState, Work

log = logging.getLogger(__name__)

SILENT_REST = timedelta(seconds=2)  # an operator that did not answer may be starting
LONGEST_REST = timedelta(minutes=10)  # whatever it asks for: a warning may be waiting


Waits = dict[tuple[str, datetime], datetime | None]
"""Until when answers wait whose first text is to be tried again."""


def _for_ever() -> bool:
    return True


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
    with house.store.look() as look:
        if not look.outbox.any_due(now):
            return 0
    with house.store.work() as work:
        may_send = work.running.line().may_send(now)
        held = stops(work, house, now)
        taken = work.outbox.claim(now, limit, lease, held) if may_send else ()
    claimed, left = whole_answers(taken, limit)
    way = Way(gateway, now, in_time, carry)
    waits: Waits = {}
    gone = took = 0
    halt: Handover | None = None
    while gone < len(claimed) and halt is None and (gone == 0 or in_time()):
        some = claimed[gone : gone + way.portion(hands)]
        answers = _hand_over(house, way, some, waits, now)
        halt = next((each for each in answers if halts(each)), None)
        took += sum(each.fate is Fate.ACCEPTED for each in answers)
        gone += len(some)
    if claimed:
        _go_back(house, (*claimed[gone:], *left), waits)
        with house.store.work() as work:
            _note_line(work, halt or _ANSWERED, now, took=took > 0)
    return 0 if halt else gone


# What is noted where a whole batch went through, or never came to the line.
_ANSWERED = Handover(Fate.ACCEPTED)


def _note_line(work: Work, handover: Handover, now: datetime, *, took: bool) -> None:
    """Keeps how the operator answered; one that asked for a pause, or was silent, gets one."""
    before = work.running.line()
    if handover.answered:
        work.running.answered(now, took=took)
    rest = handover.rest if handover.answered else SILENT_REST
    if took and before.rests_until is not None:
        log.warning("the line takes texts again")
    if rest is not None:
        if took or before.rests_until is None:  # one line a standstill, not one a try
            log.warning("the line takes no texts now: %s", handover.detail or "no answer")
        work.running.rest(now + min(rest, LONGEST_REST), handover.detail)


# Good enough in the morning, where they are not urgent; a prompt ends with its day, an answer
# was asked for.
_NEVER_AT_NIGHT = frozenset({Kind.NOTICE, Kind.LETTER, Kind.CONSENT})


def _hand_over(
    house: House, way: Way, texts: Sequence[OutboxText], waits: Waits, now: datetime
) -> list[Handover]:
    """Offers some texts and records what became of them; what the operator answered."""
    leaving = _leaving(house, texts, now)
    wrote_by, wished = _wrote_by(house, leaving), _wished(house, leaving)
    answers = way.offer([_outgoing(text, wrote_by, wished) for text in leaving])
    both = [(text, said) for text, said in zip(leaving, answers, strict=True) if said]
    for _, said in both:
        house.meter.handed(said.fate)
    _taken(house, [each for each in both if each[1].fate is Fate.ACCEPTED], now)
    _doubted(house, [text for text, said in both if said.in_doubt], now)
    put_off = [(text, said) for text, said in both if said.put_off_until]
    _put_off(house, put_off)
    waits |= {answer_of(text): said.put_off_until for text, said in put_off}
    for text, handover in both:
        if handover.fate is not Fate.ACCEPTED and handover.put_off_until is None:
            waits[answer_of(text)] = _not_taken(house, text, handover, now)
    _go_back(house, [t for t, said in zip(leaving, answers, strict=True) if not said], waits)
    return [said for _, said in both]


def _doubted(house: House, texts: Sequence[OutboxText], now: datetime) -> None:
    """Texts that may have left: they are sent again, and what phones answer is understood."""
    if texts:
        with house.store.work() as work:
            work.lines.doubt([text.message_id for text in texts], now)


def _go_back(house: House, texts: Sequence[OutboxText], waits: Waits) -> None:
    """Texts that nobody was offered; where an earlier one of the same answer waits for its
    next try, they wait as long."""
    if not texts:
        return
    until = [(text, waits.get(answer_of(text))) for text in texts]
    later = [(text, moment) for text, moment in until if moment]
    _put_off(house, [(t, Handover(Fate.TRY_LATER, put_off_until=at)) for t, at in later])
    with house.store.work() as work:
        work.outbox.give_back(text.message_id for text, moment in until if not moment)


def _outgoing(
    text: OutboxText, wrote_by: Mapping[str, str], wished: Mapping[str, str]
) -> Outgoing:
    alone = wished.get(text.message_id, "")
    line = alone or (wrote_by.get(text.phone, "") if text.kind is Kind.REPLY else "")
    return Outgoing(
        text.message_id,
        text.phone,
        text.text,
        text.not_after,
        text.kind.value,
        line,
        only=bool(alone),
        urgent=text.lane == Lane.DANGER,
    )


def _wished(house: House, texts: Sequence[OutboxText]) -> Mapping[str, str]:
    """The lines that a lead tries, by the texts that try them (`desk.lines`)."""
    ids = [text.message_id for text in texts if text.kind is Kind.NOTICE]
    if not house.several_lines or not ids:
        return {}
    with house.store.look() as work:
        return work.lines.wished(ids)


def _wrote_by(house: House, texts: Sequence[OutboxText]) -> Mapping[str, str]:
    """The lines by which the readers of answers last wrote, where there are several."""
    phones = {text.phone for text in texts if text.kind is Kind.REPLY}
    if not house.several_lines or not phones:
        return {}
    with house.store.look() as work:
        return work.lines.heard_by(phones)


def _put_off(house: House, both: Sequence[tuple[OutboxText, Handover]]) -> None:
    """Texts that no line takes now: they wait, and it counts as no try. One whose time would be
    over by then is looked at again when it is, and given up by the clock; why it never left
    stands at it."""
    alike: dict[tuple[datetime, str], list[str]] = {}
    for text, said in both:
        assert said.put_off_until is not None
        alike.setdefault((said.put_off_until, said.detail), []).append(text.message_id)
    for (until, why), message_ids in alike.items():
        with house.store.work() as work:
            work.lines.put_off(message_ids, until, why)


def _taken(house: House, both: Sequence[tuple[OutboxText, Handover]], now: datetime) -> None:
    """Records the texts that the operator took, together."""
    if not both:
        return
    with house.store.work() as work:
        plain = [text.message_id for text, handover in both if not handover.detail]
        work.outbox.accepted(plain, now)
        count_spent(work, house, (text for text, _ in both), now)
        for text, handover in both:
            if handover.detail:
                work.outbox.record(text.message_id, Fate.ACCEPTED, now, detail=handover.detail)
        _by_lines(work, both)
        early = _parts(work, both, now)
    for settled in early:
        take_receipt(house, settled.receipt, now)


def _by_lines(work: Work, both: Sequence[tuple[OutboxText, Handover]]) -> None:
    """Notes which lines took which texts, where they have names."""
    by_line: dict[str, list[str]] = {}
    for text, handover in both:
        if handover.line:
            by_line.setdefault(handover.line, []).append(text.message_id)
    for line, message_ids in by_line.items():
        work.lines.took(message_ids, line)


def _parts(
    work: Work, both: Sequence[tuple[OutboxText, Handover]], now: datetime
) -> list[Settled]:
    """Keeps the operator's ids of texts; those that faster receipts have settled already."""
    by_line: dict[str, dict[str, Sequence[str]]] = {}
    for text, handover in both:
        if handover.parts:
            by_line.setdefault(handover.line, {})[text.message_id] = handover.parts
    early: list[Settled] = []
    for line, parts in sorted(by_line.items()):
        work.lock(_PARTS.format(line))
        early += work.lines.keep_all(line, parts, now)
    return early


_PARTS = "parts of {}"  # what a hand-over and its receipts wait for each other by


def _not_taken(
    house: House, text: OutboxText, handover: Handover, now: datetime
) -> datetime | None:
    """Records a text that is to be tried again, or that is lost, with what follows from it;
    when it is tried again, if ever."""
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
            if handover.line:
                work.lines.took([text.message_id], handover.line)
    return retry_at


def _leaving(house: House, texts: Sequence[OutboxText], now: datetime) -> Sequence[OutboxText]:
    """Those of claimed texts that leave now: not held until morning, not taken back."""
    awake = [text for text in texts if not _sleeps(house, text, now)]
    warned = [text.message_id for text in awake if text.warning_id is not None]
    if not warned:
        return awake
    with house.store.look() as work:
        still = work.sending.may_leave(warned, now)
    gone = [message_id for message_id in warned if message_id not in still]
    if gone:  # a batch of them takes a while to hand over, in which they were taken back
        with house.store.work() as work:
            work.sending.let_go(gone, now)
    return [text for text in awake if text.message_id not in gone]


def _sleeps(house: House, text: OutboxText, now: datetime) -> bool:
    """Whether a text is held until morning, which is noted."""
    morning = _held_until(house, text, now)
    if morning is None:
        return False
    with house.store.work() as work:
        work.lines.hold([text.message_id], morning)
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
        return settled is not None and take_receipt(house, settled.receipt, now)
    return _take_some(house, [receipt], now) > 0


def take_receipts(house: House, receipts: Sequence[Receipt], now: datetime) -> int:
    """Keeps receipts that bear our ids, in one transaction; how many were of ours. Where what
    follows from one fails, each is kept by itself, and the fault is raised after the last."""
    try:
        return _take_some(house, receipts, now)
    except DatabaseAwayError:
        raise
    except Exception:
        log.exception("%d receipts could not be kept together", len(receipts))
    kept, faults = 0, []
    for receipt in receipts:
        try:
            kept += _take_some(house, [receipt], now)
        except Exception as fault:
            faults.append(fault)
    if faults:
        raise faults[0]
    return kept


def _take_some(house: House, receipts: Sequence[Receipt], now: datetime) -> int:
    with house.store.work() as work:
        found = work.outbox.settle(receipts)
        for before, after in found.values():
            if after.state != before and after.state in (TextState.FAILED, TextState.EXPIRED):
                was_lost(work, house, after, now)
    house.meter.receipts(len(found))
    return len(found)


def _settled(house: House, receipt: Receipt) -> Settled | None:
    with house.store.work() as work:
        work.lock(_PARTS.format(receipt.line))
        return work.lines.settle(
            receipt.line, receipt.part, receipt.fate, receipt.at, receipt.detail
        )
