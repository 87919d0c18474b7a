"""What becomes of each message: handlers answer, the network obeys.

A handler has four methods that may be overridden (`WAYS` lists three of them by the way a
message goes) and no others that are public: a misspelt one is refused when the class is made,
since a handler that is silently never asked makes a test pass for nothing.

    op.handler = Chain(Delay(timedelta(minutes=5)), Repeat(phone="+447700900101", first=1))
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from difflib import get_close_matches
from random import Random
from typing import Literal, TypedDict, Unpack, get_args

from gateway_sim.errors import HandlerError

Way = Literal["to_phone", "to_assistant", "receipt", "ussd"]
WAYS: tuple[Way, ...] = get_args(Way)
TEXTS: tuple[Way, ...] = ("to_phone", "to_assistant")


@dataclass(frozen=True)
class InTransit:
    """Anything on its way: a text, a receipt (its text is the fate) or a USSD turn."""

    id: str
    way: Way
    phone: str
    text: str
    at: datetime
    not_after: datetime | None = None


@dataclass(frozen=True)
class Fates:
    """What becomes of a message: one copy after each delay; none is a loss.

    A `failure` ends it instead, and is what the receipt says.
    """

    delays: tuple[timedelta, ...] = (timedelta(0),)
    failure: str = ""


@dataclass(frozen=True)
class Answer:
    """What the assistant is told when it hands in a text: an HTTP code and why."""

    code: int = 202
    detail: str = ""


class Handler:
    """Lets everything through at once. Override what should go otherwise."""

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        declared = {*WAYS, "submission"}
        for name in vars(cls):
            if not name.startswith("_") and name not in declared:
                near = get_close_matches(name, declared, 1)
                hint = f" (did you mean {near[0]}?)" if near else ""
                raise HandlerError(
                    f"{cls.__name__}.{name} would never be asked{hint}: a handler's methods "
                    f"are {', '.join(sorted(declared))}; begin the name of a helper with _"
                )

    def submission(self, message: InTransit, answer: Answer) -> Answer:
        """What the assistant is told when it hands in this text."""
        return answer

    def to_phone(self, message: InTransit, course: Fates) -> Fates:
        """What becomes of an accepted text on its way to the phone."""
        return course

    def to_assistant(self, message: InTransit, course: Fates) -> Fates:
        """What becomes of a text that a phone sent."""
        return course

    def receipt(self, message: InTransit, course: Fates) -> Fates:
        """What becomes of the report on a text's fate."""
        return course

    def ussd(self, message: InTransit, course: Fates) -> Fates:
        """How often a USSD turn reaches the assistant; delays are not waited for."""
        return course


class Deliver(Handler):
    """A network without faults."""


class Chain(Handler):
    """Several handlers, each going on from what the one before made of it."""

    def __init__(self, *handlers: Handler) -> None:
        self._handlers = handlers

    def submission(self, message: InTransit, answer: Answer) -> Answer:
        for handler in self._handlers:
            answer = handler.submission(message, answer)
        return answer

    def to_phone(self, message: InTransit, course: Fates) -> Fates:
        return self._through("to_phone", message, course)

    def to_assistant(self, message: InTransit, course: Fates) -> Fates:
        return self._through("to_assistant", message, course)

    def receipt(self, message: InTransit, course: Fates) -> Fates:
        return self._through("receipt", message, course)

    def ussd(self, message: InTransit, course: Fates) -> Fates:
        return self._through("ussd", message, course)

    def _through(self, way: Way, message: InTransit, course: Fates) -> Fates:
        for handler in self._handlers:
            course = ask(handler, way, message, course)
        return course


def ask(handler: Handler, way: Way, message: InTransit, course: Fates) -> Fates:
    """Ask the handler's method for this way."""
    methods: dict[Way, Callable[[InTransit, Fates], Fates]] = {
        "to_phone": handler.to_phone,
        "to_assistant": handler.to_assistant,
        "receipt": handler.receipt,
        "ussd": handler.ussd,
    }
    return methods[way](message, course)


class MessageMatch(TypedDict, total=False):
    """Which messages a handler touches; without any of these, all texts.

    ways:  the ways a message may go (see `WAYS`)
    phone: only messages of this phone
    only:  only messages for which this is true
    first: only so many of these, then no more
    """

    ways: tuple[Way, ...]
    phone: str
    only: Callable[[InTransit], bool]
    first: int


class Some(Handler):
    """Base of handlers that touch only some messages, said by the words of `MessageMatch`."""

    def __init__(self, **which: Unpack[MessageMatch]) -> None:
        self._ways = which.get("ways", TEXTS)
        self._phone = which.get("phone")
        self._only = which.get("only")
        self._left = which.get("first")
        unknown = [way for way in self._ways if way not in WAYS]
        if unknown:
            raise HandlerError(f"no such way: {', '.join(unknown)}; ways are {', '.join(WAYS)}")

    def to_phone(self, message: InTransit, course: Fates) -> Fates:
        return self._if_meant(message, course)

    def to_assistant(self, message: InTransit, course: Fates) -> Fates:
        return self._if_meant(message, course)

    def receipt(self, message: InTransit, course: Fates) -> Fates:
        return self._if_meant(message, course)

    def ussd(self, message: InTransit, course: Fates) -> Fates:
        return self._if_meant(message, course)

    def _if_meant(self, message: InTransit, course: Fates) -> Fates:
        meant = message.way in self._ways and self._meant(message)
        return self._alter(message, course) if meant else course

    def _meant(self, message: InTransit) -> bool:
        if self._phone not in (None, message.phone) or self._left == 0:
            return False
        if self._only is not None and not self._only(message):
            return False
        if self._left is not None:
            self._left -= 1
        return True

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        raise NotImplementedError


class _Refusal(Some):
    """A text that is not taken when it is handed in."""

    _code = 0
    _detail = ""

    def submission(self, message: InTransit, answer: Answer) -> Answer:
        return Answer(self._code, self._detail) if self._meant(message) else answer

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        return course


class Refuse(_Refusal):
    """Refuse texts for good (422), as for a number that is barred."""

    _code, _detail = 422, "refused by the operator"


class Busy(_Refusal):
    """Refuse texts for now (503), as when the queue is full; mostly with `first=N`."""

    _code, _detail = 503, "busy, try later"


class Sometimes(Handler):
    """Lets another handler have a share of the messages, by chance; the same seed is the same
    chance. Chained with each other they are a bad day of a network that can be had again."""

    def __init__(self, handler: Handler, share: float, seed: int) -> None:
        self._handler, self._share = handler, share
        self._chance = Random(seed)  # noqa: S311 a game of faults, no secret

    def _meant(self) -> bool:
        return self._chance.random() < self._share

    def submission(self, message: InTransit, answer: Answer) -> Answer:
        return self._handler.submission(message, answer) if self._meant() else answer

    def to_phone(self, message: InTransit, course: Fates) -> Fates:
        return self._by_chance("to_phone", message, course)

    def to_assistant(self, message: InTransit, course: Fates) -> Fates:
        return self._by_chance("to_assistant", message, course)

    def receipt(self, message: InTransit, course: Fates) -> Fates:
        return self._by_chance("receipt", message, course)

    def ussd(self, message: InTransit, course: Fates) -> Fates:
        return self._by_chance("ussd", message, course)

    def _by_chance(self, way: Way, message: InTransit, course: Fates) -> Fates:
        return ask(self._handler, way, message, course) if self._meant() else course


class MessageDelay(Some):
    """Let messages wait."""

    def __init__(self, by: timedelta, **which: Unpack[MessageMatch]) -> None:
        super().__init__(**which)
        self._by = by

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        return replace(course, delays=tuple(delay + self._by for delay in course.delays))


class Lose(Some):
    """Lose messages without a word; a lost text gets no receipt."""

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        return replace(course, delays=())


class Repeat(Some):
    """Bring messages twice, under the same id."""

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        return replace(course, delays=course.delays * 2)


class Reorder(MessageDelay):
    """Hold every other message back, so that the next one may overtake it."""

    _seen = 0

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        self._seen += 1
        return super()._alter(message, course) if self._seen % 2 else course


class Fail(Some):
    """Accept texts, then report that they failed: a phone that is gone."""

    def __init__(
        self, detail: str = "no such subscriber", **which: Unpack[MessageMatch]
    ) -> None:
        which.setdefault("ways", ("to_phone",))
        super().__init__(**which)
        self._detail = detail

    def _alter(self, message: InTransit, course: Fates) -> Fates:
        return Fates(delays=(), failure=self._detail)


class ReceiptLater(MessageDelay):
    """Let the report on a text's fate wait."""

    def __init__(self, by: timedelta, **which: Unpack[MessageMatch]) -> None:
        which["ways"] = ("receipt",)
        super().__init__(by, **which)


class NoReceipt(Lose):
    """Never report a text's fate."""

    def __init__(self, **which: Unpack[MessageMatch]) -> None:
        which["ways"] = ("receipt",)
        super().__init__(**which)
