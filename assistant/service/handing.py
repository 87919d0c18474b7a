"""How the texts of one look leave: in lists, by several hands, each phone's in their order."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from threading import Event
from typing import Any

from assistant.channel import Fate, Gateway, Handover, ListGateway, Outgoing
from assistant.dialogue.values import Kind
from assistant.store import OutboxText

PORTION = 4  # texts for each hand between two records

Carry = Callable[[Callable[[Any], Any], Iterable[Any]], Iterable[Any]]
"""How several texts are handed over: one after the other (map), or at once by a pool."""


def halts(handover: Handover) -> bool:
    """Whether the next text would fare no better."""
    return handover.rest is not None or not handover.answered


class Way:
    """The way out for one look. Nothing more is offered after an answer that stands for all.

    A phone has one text on its way at a time, and none after one that is to be tried again:
    the second half of an answer would otherwise arrive before the first.
    """

    def __init__(
        self, gateway: Gateway, now: datetime, in_time: Callable[[], bool], carry: Carry
    ) -> None:
        self._gateway, self._now, self._in_time, self._carry = gateway, now, in_time, carry
        self._lists = gateway if isinstance(gateway, ListGateway) else None
        self._halted = Event()
        self._stays: set[str] = set()

    def portion(self, hands: int) -> int:
        """How many texts are handed over before they are recorded."""
        by_hand = hands * PORTION if hands > 1 else 1
        return max(self._lists.at_once, by_hand) if self._lists else by_hand

    def offer(self, texts: Sequence[Outgoing]) -> list[Handover | None]:
        """What was said of each; None of those that were not offered."""
        said: dict[str, Handover | None] = {}
        for wave in _waves(texts):
            free = [text for text in wave if text.phone not in self._stays]
            for text, answer in zip(free, self._all(free), strict=True):
                said[text.message_id] = answer
                if answer is None or answer.fate is Fate.TRY_LATER:
                    self._stays.add(text.phone)
        return [said.get(text.message_id) for text in texts]

    def _all(self, texts: Sequence[Outgoing]) -> Iterable[Handover | None]:
        """Those that the other side takes in a list, then the others one by one."""
        lists = self._lists
        listed = [text for text in texts if lists and lists.in_lists(text, self._now)]
        if lists is None or len(listed) < 2:
            return self._carry(self._one, texts)
        answers = self._list(lists, listed)
        if len(listed) == len(texts):
            return answers
        said = dict(zip([text.message_id for text in listed], answers, strict=True))
        others = [text for text in texts if text.message_id not in said]
        by_hand = self._carry(self._one, others)
        said |= zip([text.message_id for text in others], by_hand, strict=True)
        return [said[text.message_id] for text in texts]

    def _list(self, lists: ListGateway, texts: Sequence[Outgoing]) -> Iterable[Handover | None]:
        if self._halted.is_set():
            return [None] * len(texts)
        answers = lists.send_all(texts, self._now)
        if answers is None:
            self._lists = None
            return self._carry(self._one, texts)
        if any(answer is not None and halts(answer) for answer in answers):
            self._halted.set()
        return answers

    def _one(self, text: Outgoing) -> Handover | None:
        if self._halted.is_set():
            return None
        answer = self._gateway.send(text, self._now)
        if halts(answer) or not self._in_time():
            self._halted.set()
        return answer


def _waves(texts: Sequence[Outgoing]) -> list[list[Outgoing]]:
    """The first text of each phone, then the second ones, and so on."""
    waves: list[list[Outgoing]] = []
    before: Counter[str] = Counter()
    for text in texts:
        place = before[text.phone]
        before[text.phone] += 1
        if place == len(waves):
            waves.append([])
        waves[place].append(text)
    return waves


def whole_answers(
    claimed: Sequence[OutboxText], limit: int
) -> tuple[Sequence[OutboxText], Sequence[OutboxText]]:
    """Claimed texts to hand over, and those to leave for the next claim: a limit may have cut
    an answer of several texts in two, and another process would send its end first."""
    if len(claimed) < limit or claimed[-1].kind is not Kind.REPLY:
        return claimed, ()
    end = len(claimed) - 1
    while end > 0 and answer_of(claimed[end - 1]) == answer_of(claimed[-1]):
        end -= 1
    return (claimed[:end], claimed[end:]) if end > 0 else (claimed, ())


def answer_of(text: OutboxText) -> tuple[str, datetime]:
    """What texts share that were written to a phone in the same moment."""
    return text.phone, text.created_at
