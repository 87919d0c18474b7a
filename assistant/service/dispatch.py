"""Sends what waits in the outbox, and keeps what the operator says became of it."""

import logging
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from assistant.channel import (
    Fate,
    Gateway,
    Handover,
    Outgoing,
    Receipt,
    RoutedGateway,
    RouteStands,
)
from assistant.dialogue.values import Kind
from assistant.reminders.retry import next_try
from assistant.service.awake import leaving
from assistant.service.brakes import count_spent, stops
from assistant.service.handing import Carry, Way, answer_of, halts, whole_answers
from assistant.service.house import House
from assistant.service.line_pause import TRIED_WITH, another, is_up, note_line
from assistant.service.tick import was_lost
from assistant.store import DatabaseAwayError, Lane, OutboxText, Settled, TextState, Work

log = logging.getLogger(__name__)


@dataclass
class Later:
    """What of a look is to leave later: `waits` is until when answers wait whose first text is
    to be tried again, `back` the texts that nobody was offered."""

    waits: dict[tuple[str, datetime], datetime | None] = field(default_factory=dict)
    back: list[OutboxText] = field(default_factory=list)


Said = list[tuple[OutboxText, Handover]]
"""Texts that were offered, each with the answer."""


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
    `in_time` before the lease ends, is not given the rest: that goes back to its places, and a
    warning written meanwhile goes before it. After a pause it is tried with a few. Of several
    lines each rests by itself; what goes by none of the others keeps its place.

    The hand-over is outside any transaction: a crash between it and the record leads to a
    second hand-over under the same id, which the operator drops.

    Args:
        hands: how many texts are on their way at once, as `carry` carries them
    """
    routed = gateway if isinstance(gateway, RoutedGateway) else None
    if (routed and routed.all_rest(now)) or not _any_due(house, now, lease):
        return 0
    routes = routed.routes_stand(now) if routed else ()
    trial, claimed, left = _claimed(house, now, limit, lease, routes)
    if not claimed:
        return 0
    way = Way(gateway, now, in_time, carry)
    most = way.portion(hands)
    later = Later()
    said: Said = []
    gone, halt = 0, None
    while gone < len(claimed) and halt is None and (gone == 0 or in_time()):
        some = claimed[gone : gone + (min(most, max(gone, 1)) if trial else most)]
        answers = _hand_over(house, way, some, later, now)
        said, halt, gone = said + answers, _halt(answers), gone + len(some)
    if trial and gone == 1 and halt:
        beside = Way(gateway, now, _for_ever, carry)
        said = _tried_beside(house, beside, claimed, said, later, now)
        halt = _halt(said)
    _stay(house, said)
    _go_back(house, (*later.back, *claimed[gone:], *left), later)
    if not said:
        return 0
    with house.store.work() as work:
        took = any(answer.fate is Fate.ACCEPTED for _, answer in said)
        note_line(work, halt or _ANSWERED, now, took=took)
    return 0 if halt else gone


def _any_due(house: House, now: datetime, lease: timedelta) -> bool:
    with house.store.look() as look:
        return look.outbox.any_due(now, lease)


# What is noted where a whole batch went through, or never came to the line.
_ANSWERED = Handover(Fate.ACCEPTED)


def _halt(said: Said) -> Handover | None:
    """The first answer that is about the line and not about a text."""
    return next((answer for _, answer in said if halts(answer)), None)


def _claimed(
    house: House,
    now: datetime,
    limit: int,
    lease: timedelta,
    routes: Sequence[RouteStands],
) -> tuple[bool, Sequence[OutboxText], Sequence[OutboxText]]:
    """Texts to offer now, and those left for the next claim; and whether a line that took
    nothing is tried with them, which may take an answer more of it."""
    with house.store.work() as work:
        line = work.running.line()
        if not line.may_send(now):
            return False, (), ()
        trial = line.took_nothing
        most, held_for = (min(limit, TRIED_WITH), lease * 1.5) if trial else (limit, lease)
        taken = work.outbox.claim(now, most, held_for, stops(work, house, now), routes)
    return trial, *whole_answers(taken, most)


def _tried_beside(
    house: House,
    way: Way,
    claimed: Sequence[OutboxText],
    said: Said,
    later: Later,
    now: datetime,
) -> Said:
    """Tries another text where the first was not taken. Where that one goes, the first was to
    blame and is tried again by itself, later; what was said of the line then."""
    (first, handover), *_ = said
    other = another(claimed, handover, now) if handover.put_off_until is None else None
    if other is None:
        return said
    second = _hand_over(house, way, [other], later, now)
    if not is_up([answer for _, answer in second]):
        return said + second
    later.waits[answer_of(first)] = _not_taken(house, first, handover, now)
    return second


def _hand_over(
    house: House, way: Way, texts: Sequence[OutboxText], later: Later, now: datetime
) -> Said:
    """Offers some texts and records what became of them, but for those that met an answer about
    the line; what the operator answered."""
    awake = leaving(house, texts, now)
    wrote_by, wished = _wrote_by(house, awake), _wished(house, awake)
    answers = way.offer([_outgoing(text, wrote_by, wished) for text in awake])
    both: Said = []
    for text, answer in zip(awake, answers, strict=True):
        if answer is None or (answer.in_place and not _is_directed(text, wished)):
            later.back.append(text)
        else:
            both.append((text, answer))
    in_doubt = [t for t, said in zip(awake, answers, strict=True) if said and said.in_doubt]
    for _, said in both:
        house.meter.handed(said.fate)
    _taken(house, [each for each in both if each[1].fate is Fate.ACCEPTED], now)
    _doubted(house, in_doubt, now)
    put_off = [(text, said) for text, said in both if said.put_off_until]
    _put_off(house, put_off)
    later.waits |= {answer_of(text): said.put_off_until for text, said in put_off}
    for text, handover in both:
        again = handover.put_off_until is None and not halts(handover)
        if handover.fate is not Fate.ACCEPTED and again:
            later.waits[answer_of(text)] = _not_taken(house, text, handover, now)
    return both


def _is_directed(text: OutboxText, wished: Mapping[str, str]) -> bool:
    """Whether a text may go by another line than those of its route, so that the claim cannot
    pass it over while they rest."""
    return text.kind is Kind.REPLY or text.message_id in wished


def _stay(house: House, said: Said) -> None:
    """Texts that met a line which is away or busy keep their places: it counts as no try."""
    met: dict[str, list[str]] = {}
    for text, answer in said:
        if halts(answer) and answer.put_off_until is None:
            met.setdefault(answer.detail, []).append(text.message_id)
    if met:
        with house.store.work() as work:
            for why, message_ids in met.items():
                work.lines.stay(message_ids, why)


def _doubted(house: House, texts: Sequence[OutboxText], now: datetime) -> None:
    """Texts that may have left: they are sent again, and what phones answer is understood."""
    if texts:
        with house.store.work() as work:
            work.lines.doubt([text.message_id for text in texts], now)


def _go_back(house: House, texts: Sequence[OutboxText], later: Later) -> None:
    """Texts that nobody was offered; where an earlier one of the same answer waits for its
    next try, they wait as long."""
    if not texts:
        return
    until = [(text, later.waits.get(answer_of(text))) for text in texts]
    waiting = [(text, moment) for text, moment in until if moment]
    _put_off(house, [(t, Handover(Fate.TRY_LATER, put_off_until=at)) for t, at in waiting])
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
