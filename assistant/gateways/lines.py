"""Several lines as one way out: which text goes by which, at what rate, up to what quota, and
by the next one where a line is down."""

import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal

from assistant.alphabet import cost
from assistant.channel import (
    Clock,
    Fate,
    Gateway,
    Handover,
    Listener,
    ListGateway,
    News,
    Outgoing,
    RouteStands,
    Screen,
    Take,
)
from assistant.gateways.pace import Pace, Turns
from assistant.gateways.rests import SILENT_REST, Rests, is_down

USED_LASTS = timedelta(minutes=1)  # after which the used segments are counted anew
NOTE_EVERY = timedelta(seconds=10)
LONGEST_WAIT_S = 1.0  # for the rate; a text that would wait longer is put off
NO_LINE = "no line is set for this number and kind of text; give it a route"


@dataclass(frozen=True)
class Route:
    """Which lines take texts to which numbers and of which kinds, in this order."""

    lines: tuple[str, ...]
    prefixes: tuple[str, ...] = ()  # such as "+254"; none: any number
    kinds: tuple[str, ...] = ()  # as `Outgoing.kind`; none: any

    def takes(self, outgoing: Outgoing) -> bool:
        """Whether a text goes this way."""
        near = not self.prefixes or outgoing.phone.startswith(self.prefixes)
        return near and (not self.kinds or outgoing.kind in self.kinds)


@dataclass(frozen=True)
class Terms:
    """What a line allows and takes: texts a second, segments a day, price of a segment; and its
    kind."""

    a_second: float | None = None
    a_day: int | None = None
    price: Decimal | None = None
    kind: str = ""


Used = Callable[[str, datetime], int]
"""Segments that a line took on the day of a moment."""

Note = Callable[[str, Handover, datetime], None]
"""Keeps how a line fared, for people to see."""


def way(routes: Sequence[Route], outgoing: Outgoing) -> tuple[str, ...]:
    """The lines for a text, the best first: that which its reader wrote by, then those of the
    first route that takes it."""
    if outgoing.only:
        return (outgoing.line,)
    found = next((route.lines for route in routes if route.takes(outgoing)), ())
    first = (outgoing.line,) if outgoing.line else ()
    return tuple(dict.fromkeys(first + found))


class Lines:
    """Offers each text to the lines of its route, in their order, until one takes it.

    A line that asked for a pause or did not answer is passed over meanwhile, and then tried
    with one text. What no line may take now is offered to nobody: it keeps its place where all
    its lines rest, and is put off where one is full or at its rate. Where an operator's answer
    was lost, the next line may be offered the same text: it may then arrive twice.

    Args:
        used: segments that a line took today, for its quota
        turns: of each line that several processes send by, how those share its rate
        note: keeps how a line fared
        wait: sleeps [s]
        seconds: runs on by itself [s], for the rate
    """

    def __init__(
        self,
        gateways: Mapping[str, Gateway],
        routes: Sequence[Route],
        terms: Mapping[str, Terms],
        *,
        used: Used = lambda line, now: 0,
        note: Note = lambda line, handover, now: None,
        turns: Mapping[str, Turns] | None = None,
        wait: Callable[[float], None] = time.sleep,
        seconds: Callable[[], float] = time.monotonic,
    ) -> None:
        self._gateways, self._terms = gateways, terms
        self._routes = tuple(routes) or (Route(tuple(gateways)),)
        self._used, self._note, self._wait = used, note, wait
        self._paces = {
            name: Pace(each.a_second, seconds, (turns or {}).get(name))
            for name, each in terms.items()
            if each.a_second
        }
        self._rests = Rests()
        self._counted: dict[str, tuple[datetime, int]] = {}
        self._noted: dict[str, datetime] = {}

    @property
    def terms(self) -> Mapping[str, Terms]:
        """What each line allows and takes."""
        return self._terms

    @property
    def names(self) -> tuple[str, ...]:
        """The lines, in the order in which they were set."""
        return tuple(self._gateways)

    def line(self, name: str) -> Gateway:
        """One line by itself."""
        return self._gateways[name]

    def all_rest(self, now: datetime) -> bool:
        """Whether no line may be offered anything."""
        return bool(self._gateways) and all(
            self._rests.until(name, now) for name in self._gateways
        )

    def routes_stand(self, now: datetime) -> tuple[RouteStands, ...]:
        """The routes in their order, and of which all lines rest."""
        return tuple(
            RouteStands(each.prefixes, each.kinds, self._route_rests(each, now))
            for each in self._routes
        )

    def _route_rests(self, route: Route, now: datetime) -> bool:
        names = [name for name in route.lines if name in self._gateways]
        return bool(names) and all(self._rests.until(name, now) for name in names)

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offers one text. FAILED is final: only a line that cannot now is passed over."""
        names = self._way(outgoing)
        if not names:
            return Handover(Fate.FAILED, NO_LINE)
        return self._onward(names, outgoing, now, self._try(names[0], outgoing, now))

    def _way(self, outgoing: Outgoing) -> list[str]:
        return [name for name in way(self._routes, outgoing) if name in self._gateways]

    def _onward(
        self, names: Sequence[str], outgoing: Outgoing, now: datetime, first: Handover
    ) -> Handover:
        """What became of a text that the first of its lines was offered: the next ones are,
        where that one cannot now."""
        handover, met = first, []
        for name in (*names[1:], None):
            if handover.put_off_until is None:
                return handover
            met.append(handover)
            if name is not None:
                handover = self._try(name, outgoing, now)
        return Handover(
            Fate.TRY_LATER,
            next((each.detail for each in reversed(met) if each.detail), ""),
            line=names[0],
            put_off_until=min(each.put_off_until for each in met if each.put_off_until),
            in_place=all(each.in_place for each in met),
            in_doubt=any(each.in_doubt for each in met),
        )

    # --- many at once ------------------------------------------------------------------------

    @property
    def at_once(self) -> int:
        """The longest list that a line takes; 0 where none takes any."""
        taking = (self._listing(name) for name in self._gateways)
        return max((each.at_once for each in taking if each), default=0)

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        """Whether the line of a text takes lists, and takes them now."""
        name = next(iter(self._way(outgoing)), "")
        lists = self._listing(name)
        return lists is not None and self._rests.is_up(name) and lists.in_lists(outgoing, now)

    def _listing(self, name: str) -> ListGateway | None:
        """A line that takes lists, and has neither a rate nor a quota of its own: those are
        kept text by text."""
        gateway, terms = self._gateways.get(name), self._terms.get(name, Terms())
        free = terms.a_second is None and terms.a_day is None
        return gateway if free and isinstance(gateway, ListGateway) else None

    def send_all(
        self, texts: Sequence[Outgoing], now: datetime
    ) -> Sequence[Handover | None] | None:
        """Offers texts, each in a list of the first of its lines; where that cannot now, those
        it was offered go on to the next."""
        by_line: dict[str, list[Outgoing]] = {}
        for text in texts:
            by_line.setdefault(self._way(text)[0], []).append(text)
        said: dict[str, Handover | None] = {}
        for name, some in by_line.items():
            if not self._in_portions(name, some, said, now):
                return None if not said else [said.get(text.message_id) for text in texts]
        return [said.get(text.message_id) for text in texts]

    def _in_portions(
        self,
        name: str,
        texts: Sequence[Outgoing],
        said: dict[str, Handover | None],
        now: datetime,
    ) -> bool:
        """Offers a line its texts, a few at first where it was down, and adds what was said of
        them; False where it takes no lists after all."""
        lists, gone = self._listing(name), 0
        while gone < len(texts) and self._rests.until(name, now) is None:
            some = texts[gone : gone + self._rests.most(name, len(texts))]
            answers = lists.send_all(some, now) if lists else None
            if answers is None:
                return False
            for text, answer in zip(some, answers, strict=True):
                alone = len(some) == 1
                said[text.message_id] = answer and self._fared(name, text, answer, alone, now)
            gone += len(some)
        return True

    def _fared(
        self, name: str, outgoing: Outgoing, answer: Handover, alone: bool, now: datetime
    ) -> Handover:
        """What became of a text of a list. One that was not alone in it is not to blame where
        the line went down."""
        handover = self._offered(name, outgoing, answer, now)
        if handover.put_off_until is None:
            return handover
        blameless = not alone and answer.put_off_until is None
        handover = replace(handover, in_place=blameless)
        return self._onward(self._way(outgoing), outgoing, now, handover)

    def time(self) -> datetime | None:
        """The clock of the first operator that tells one."""
        told = (gateway.time() for gateway in self._gateways.values())
        return next((moment for moment in told if moment), None)

    # --- those that keep a connection --------------------------------------------------------

    def open(self, take: Take, clock: Clock) -> None:
        """Opens the lines that listen; each says its name with what it brings."""
        for name, gateway in self._listeners():
            gateway.open(_named(name, take), clock)

    def close(self) -> None:
        """Closes them."""
        for _, gateway in self._listeners():
            gateway.close()

    def wait_up(self, seconds: float) -> bool:
        """Waits for the lines that listen, one after another."""
        return all(gateway.wait_up(seconds) for _, gateway in self._listeners())

    @property
    def why(self) -> str:
        """What keeps lines from sending."""
        return "; ".join(f"{name}: {why}" for name, why in self.whys().items() if why)

    def whys(self) -> Mapping[str, str]:
        """Of each line that keeps a connection, why it cannot send now; empty where it can."""
        return {name: gateway.why for name, gateway in self._listeners()}

    @property
    def listens(self) -> bool:
        """Whether one of the lines keeps a connection, which only one process may."""
        return any(True for _ in self._listeners())

    def _listeners(self) -> list[tuple[str, Listener]]:
        found: list[tuple[str, Listener]] = []
        for name, gateway in self._gateways.items():
            if isinstance(gateway, Listener):
                found.append((name, gateway))
        return found

    # --- one line ----------------------------------------------------------------------------

    def _try(self, name: str, outgoing: Outgoing, now: datetime) -> Handover:
        until, why = self._not_before(name, outgoing, now)
        if until is None and self._rests.may_try(name, now):
            return self._offered(name, outgoing, self._gateways[name].send(outgoing, now), now)
        rests = self._rests.until(name, now)
        return Handover(
            Fate.TRY_LATER,
            why or self._rests.why(name),
            line=name,
            put_off_until=until or rests or now + SILENT_REST,
            in_place=rests is not None,
        )

    def _offered(
        self, name: str, outgoing: Outgoing, answer: Handover, now: datetime
    ) -> Handover:
        """How a line answered, kept; where it is down the text waits as long as it rests."""
        handover = replace(answer, line=name)
        self._keep(name, outgoing, handover, now)
        if handover.put_off_until is None and is_down(handover):
            until = self._rests.until(name, now) or now + SILENT_REST
            return replace(handover, rest=None, answered=True, put_off_until=until)
        return handover

    def _not_before(
        self, name: str, outgoing: Outgoing, now: datetime
    ) -> tuple[datetime | None, str]:
        """Until when a line takes nothing, and why; None where it may be offered the text."""
        rests = self._rests.until(name, now)
        if rests is not None:
            return rests, self._rests.why(name)
        if self._is_full(name, outgoing, now):
            why = f"{name} has sent what its day allows"
            self._tell(name, Handover(Fate.TRY_LATER, why, rest=USED_LASTS), now)
            return now + USED_LASTS, why
        pace = self._paces.get(name)
        if pace is None:
            return None, ""
        seconds = pace.take(LONGEST_WAIT_S)
        if seconds > LONGEST_WAIT_S:
            return now + timedelta(seconds=seconds), f"{name} is at its rate"
        self._wait(seconds)
        return None, ""

    def _is_full(self, name: str, outgoing: Outgoing, now: datetime) -> bool:
        a_day = self._terms[name].a_day if name in self._terms else None
        if a_day is None or outgoing.urgent:  # a danger may cost what it costs
            return False
        at, count = self._counted.get(name, (None, 0))
        if at is None or now - at > USED_LASTS:
            at, count = now, self._used(name, now)
            self._counted[name] = at, count
        return count + cost(outgoing.text).segments > a_day

    def _keep(self, name: str, outgoing: Outgoing, handover: Handover, now: datetime) -> None:
        """Remembers how a line fared; people are shown it when it changes, and now and then."""
        if handover.fate is Fate.ACCEPTED and name in self._counted:
            at, count = self._counted[name]
            self._counted[name] = at, count + cost(outgoing.text).segments
        changed = self._rests.fared(name, handover, now)
        self._tell(name, handover, now, changed=changed)

    def _tell(
        self, name: str, handover: Handover, now: datetime, *, changed: bool = False
    ) -> None:
        noted = self._noted.get(name)
        if changed or noted is None or now - noted >= NOTE_EVERY:
            self._noted[name] = now
            self._note(name, handover, now)


def _named(line: str, take: Take) -> Take:
    def taken(news: News) -> Screen | None:
        return take(replace(news, line=line))

    return taken
