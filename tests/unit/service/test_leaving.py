"""Texts leave in lists and by several hands; receipts come in lists."""

from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from time import sleep

import pytest

from assistant.channel import Fate, Handover, Outgoing, Receipt
from assistant.dialogue.values import Kind
from assistant.service import dispatch as leaving
from assistant.service.dispatch import dispatch, take_receipts
from assistant.store import Lane, OutboxText, TextState
from assistant.store.errors import DatabaseAwayError
from tests.stages import stage
from tests.valley import LEASE, Valley

PAUSE = Handover(Fate.TRY_LATER, "429", rest=timedelta(seconds=30))


@dataclass
class Operator:
    """Answers by a rule; counts what it was offered."""

    rule: Callable[[Outgoing], Handover | None] = lambda text: Handover(Fate.ACCEPTED)
    offered: list[str] = field(default_factory=list)
    lists: int = 0

    def send(self, text: Outgoing, now: datetime) -> Handover:
        """One text."""
        self.offered.append(text.message_id)
        said = self.rule(text)
        assert said is not None
        return said

    def time(self) -> None:
        """It tells none."""


class ListOperator(Operator):
    """Takes lists."""

    speaks = True
    at_once = 500

    def in_lists(self, text: Outgoing, now: object) -> bool:
        """Any."""
        return True

    def send_all(
        self, texts: Sequence[Outgoing], now: datetime
    ) -> Sequence[Handover | None] | None:
        """Many texts."""
        if not self.speaks:
            return None
        self.lists += 1
        self.offered += [text.message_id for text in texts]
        return [self.rule(text) for text in texts]


@stage
def waiting(valley: Valley) -> None:
    """Twenty texts wait."""
    with valley.house.store.work() as work:
        work.outbox.add_all(_text(number, valley.now) for number in range(20))


def _text(number: int, now: datetime) -> OutboxText:
    return OutboxText(
        message_id=f"t{number:02}",
        phone=f"+4477009001{number:02}",
        text="Water the beds.",
        kind=Kind.PROMPT,
        due_at=now,
        not_after=now + timedelta(hours=9),
        created_at=now,
    )


def states(valley: Valley) -> dict[TextState, int]:
    """How many texts are in each state."""
    found: dict[TextState, int] = {}
    with valley.house.store.look() as work:
        for number in range(20):
            text = work.outbox.get(f"t{number:02}")
            assert text is not None
            found[text.state] = found.get(text.state, 0) + 1
    return found


def go(valley: Valley, operator: Operator, **how: object) -> int:
    """One look at the outbox."""
    return dispatch(valley.house, operator, valley.now, limit=100, lease=LEASE, **how)  # type: ignore[arg-type]


def test_a_list_is_offered_once_and_each_text_has_its_own_answer(waiting: Valley) -> None:
    """Accepted, refused for good, and later, in one answer."""
    said = {"t01": Handover(Fate.FAILED, "no such number"), "t02": Handover(Fate.TRY_LATER)}
    operator = ListOperator(lambda text: said.get(text.message_id, Handover(Fate.ACCEPTED)))
    assert go(waiting, operator) == 20
    assert operator.lists == 1
    assert states(waiting) == {
        TextState.ACCEPTED: 18,
        TextState.FAILED: 1,
        TextState.WAITING: 1,
    }


def test_who_takes_no_lists_is_offered_one_by_one(waiting: Valley) -> None:
    """All the same, each once."""
    operator = ListOperator()
    operator.speaks = False
    assert go(waiting, operator) == 20
    assert operator.offered == [f"t{number:02}" for number in range(20)]
    assert states(waiting) == {TextState.ACCEPTED: 20}


def test_a_pause_in_the_middle_of_many_hands_gives_back_what_was_not_offered(
    waiting: Valley,
) -> None:
    """It lost no try; nothing is offered while the line rests."""
    operator = Operator(
        lambda text: PAUSE if text.message_id == "t05" else Handover(Fate.ACCEPTED)
    )
    assert go(waiting, operator, hands=2, carry=_one_by_one) == 0
    assert operator.offered[-1] == "t05"
    assert states(waiting) == {TextState.ACCEPTED: 5, TextState.WAITING: 15}
    with waiting.house.store.look() as work:
        untouched = work.outbox.get("t06")
    assert untouched is not None and untouched.attempts == 0
    assert go(waiting, operator) == 0


def _one_by_one(
    offer: Callable[[Outgoing], Handover | None], texts: Iterable[Outgoing]
) -> list[Handover | None]:
    return [offer(text) for text in texts]


def test_many_hands_offer_each_text_once(waiting: Valley) -> None:
    """In whatever order."""
    operator = Operator()
    with ThreadPoolExecutor(8) as pool:
        assert go(waiting, operator, hands=8, carry=pool.map) == 20
    assert sorted(operator.offered) == [f"t{number:02}" for number in range(20)]
    assert states(waiting) == {TextState.ACCEPTED: 20}


def test_receipts_of_a_list_count_as_each_by_itself(waiting: Valley) -> None:
    """In any order, twice, of strangers' texts, and late."""
    go(waiting, Operator())
    later = waiting.now + timedelta(minutes=1)
    told = [Receipt(f"t{number:02}", Fate.DELIVERED, later) for number in range(18)]
    told += [Receipt("t18", Fate.FAILED, later, "off"), Receipt("t18", Fate.DELIVERED, later)]
    told += [
        Receipt("t19", Fate.EXPIRED, later),
        told[0],
        Receipt("not-ours", Fate.FAILED, later),
    ]
    assert take_receipts(waiting.house, told, later) == 20
    assert states(waiting) == {TextState.DELIVERED: 19, TextState.EXPIRED: 1}
    assert take_receipts(waiting.house, told, later) == 20
    assert states(waiting) == {TextState.DELIVERED: 19, TextState.EXPIRED: 1}


def test_one_receipt_that_fails_holds_up_no_other(
    waiting: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The operator hears that not all was kept, and repeats; that changes nothing twice."""
    go(waiting, Operator())

    def broken(work: object, house: object, text: OutboxText, now: object) -> None:
        raise LookupError(text.message_id)

    monkeypatch.setattr(leaving, "was_lost", broken)
    told = [Receipt(f"t{number:02}", Fate.DELIVERED, waiting.now) for number in range(1, 20)]
    with pytest.raises(LookupError, match="t00"):
        take_receipts(
            waiting.house, [Receipt("t00", Fate.FAILED, waiting.now), *told], waiting.now
        )
    assert states(waiting) == {TextState.ACCEPTED: 1, TextState.DELIVERED: 19}


def test_a_database_that_is_away_is_said_at_once(
    waiting: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And not tried once for each receipt."""
    tries: list[object] = []

    def away(house: object, receipts: object, now: object) -> int:
        tries.append(receipts)
        raise DatabaseAwayError("gone")

    monkeypatch.setattr(leaving, "_take_some", away)
    told = [Receipt(f"t{number:02}", Fate.DELIVERED, waiting.now) for number in range(20)]
    with pytest.raises(DatabaseAwayError):
        take_receipts(waiting.house, told, waiting.now)
    assert len(tries) == 1


# --- an answer of several texts ---------------------------------------------------------------


def answer(valley: Valley, count: int, phone: str, ago: timedelta = timedelta(0)) -> None:
    """An answer of so many texts to a phone waits."""
    at = valley.now - ago
    with valley.house.store.work() as work:
        work.outbox.add_all(
            replace(
                _text(0, at),
                message_id=f"{phone[-2:]}-{n}",
                phone=phone,
                kind=Kind.REPLY,
                lane=Lane.ANSWER,
            )
            for n in range(count)
        )


ANA, BEN = "+447700900130", "+447700900131"


@pytest.mark.parametrize("speaks", [True, False])
def test_a_phone_has_one_text_on_its_way_at_a_time(valley: Valley, speaks: bool) -> None:
    """Whichever hand is quicker: the first of an answer is with the operator before the
    second is offered."""
    out: list[str] = []

    def slow_to_begin_with(text: Outgoing) -> Handover:
        sleep(0.05 if text.message_id.endswith("0") else 0)
        out.append(text.message_id)
        return Handover(Fate.ACCEPTED)

    answer(valley, 3, ANA)
    answer(valley, 3, BEN)
    operator = ListOperator(slow_to_begin_with)
    operator.speaks = speaks
    with ThreadPoolExecutor(8) as pool:
        assert go(valley, operator, hands=8, carry=pool.map) == 6
    for phone in (ANA, BEN):
        of = [each for each in out if each.startswith(phone[-2:])]
        assert of == [f"{phone[-2:]}-{n}" for n in range(3)]


@pytest.mark.parametrize("kind", [Operator, ListOperator])
@pytest.mark.parametrize("why", ["this text not now", "in doubt", "the line rests"])
def test_the_end_of_an_answer_waits_for_its_beginning(
    valley: Valley, kind: type[Operator], why: str
) -> None:
    """Where the first text is to be tried again, the second is offered after it, and lost no
    try; who wrote at another time is not held up."""
    later = valley.now + timedelta(seconds=20)
    said = {
        "this text not now": Handover(Fate.TRY_LATER, why),
        "in doubt": Handover(Fate.TRY_LATER, why, put_off_until=later),
        "the line rests": PAUSE,
    }[why]
    refused = ["30-0"]

    def rule(text: Outgoing) -> Handover:
        return said if text.message_id in refused else Handover(Fate.ACCEPTED)

    answer(valley, 2, ANA)
    operator = kind(rule)
    go(valley, operator)
    assert operator.offered == ["30-0"]
    refused.clear()
    answer(valley, 1, BEN)
    valley.now += timedelta(minutes=5)
    go(valley, operator)
    assert [each for each in operator.offered[1:] if each != "31-0"] == ["30-0", "30-1"]
    with valley.house.store.look() as work:
        second = work.outbox.get("30-1")
    assert second is not None and second.attempts == 0


def test_an_answer_is_not_cut_between_two_processes(valley: Valley) -> None:
    """Where a claim ends within one, all of it is left to the next claim."""
    answer(valley, 1, BEN, timedelta(minutes=1))
    answer(valley, 3, ANA)
    operator = Operator()
    assert dispatch(valley.house, operator, valley.now, limit=2, lease=LEASE) == 1
    assert operator.offered == ["31-0"]
    assert dispatch(valley.house, operator, valley.now, limit=3, lease=LEASE) == 3
    assert operator.offered[1:] == ["30-0", "30-1", "30-2"]


def test_a_line_that_takes_nothing_is_logged_once(
    waiting: Valley, caplog: pytest.LogCaptureFixture
) -> None:
    """However often it is tried; and once when it takes texts again."""
    says = [PAUSE]
    operator = Operator(lambda text: says[0])
    for _ in range(5):
        dispatch(waiting.house, operator, waiting.now, limit=10, lease=LEASE)
        waiting.now += timedelta(seconds=31)
    says[0] = Handover(Fate.ACCEPTED)
    for _ in range(2):
        dispatch(waiting.house, operator, waiting.now, limit=10, lease=LEASE)
        waiting.now += timedelta(minutes=2)
    lines = [
        each.getMessage() for each in caplog.records if "the line takes" in each.getMessage()
    ]
    assert lines == ["the line takes no texts now: 429", "the line takes texts again"]
