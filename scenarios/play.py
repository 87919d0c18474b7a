"""Plays a season line by line and says where it went otherwise."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random
from typing import Any, get_args

from gateway_sim import Handler, OperatorError, Phone
from gateway_sim.handlers import Chain
from gateway_sim.phones import Received
from scenarios import season as season_acts
from scenarios.desk import OfficerBrowser
from scenarios.ending import Ending, endings
from scenarios.errors import Difference
from scenarios.heard import Expected, differences
from scenarios.lines import WIRE
from scenarios.page import PageError
from scenarios.printing import Printer, Say
from scenarios.stage import SeasonStage
from scenarios.weather import handler

# A text takes its writer a minute; a key on a screen much less, since a session is short.
TEXT_TAKES, KEY_TAKES = timedelta(minutes=1), timedelta(seconds=5)
PAGE_TAKES = timedelta(seconds=20)
READING_TAKES = timedelta(seconds=10)  # nobody answers what has not been read
MORE = "9"  # the rest of a long answer; a session dialled again has no rest to show
FULL_FOR, FULL_SHARE = timedelta(minutes=20), 1 / 3
ON_THE_WAY = timedelta(minutes=5)  # what a bad network still brings when all is said
LONGEST_WAIT = timedelta(hours=2)  # how long a line waits for its text, within its block


@dataclass(frozen=True)
class Replay:
    """How a season is played otherwise than its file says, to the same end.

    faults:    what the network does besides, all the time
    forgiving: no season is strict, silence is not asked for, and texts may take their time
    cut:       each USSD session breaks before its next answer, and is dialled again
    line:      the line it goes over (`scenarios.lines`)
    breaks:    what goes wrong on its connection, text by text
    full:      a seed by which a third of the phones is full for a while when a block begins
    """

    faults: Callable[[], Handler] | None = None
    forgiving: bool = False
    cut: bool = False
    line: str = WIRE
    breaks: tuple[str, ...] = ()
    full: int | None = None


AS_WRITTEN = Replay()
# No time for it to speak of.
_ONLY_LOOKS = (
    season_acts.PageReads,
    season_acts.LooksAt,
    season_acts.Fills,
    season_acts.Ticks,
    season_acts.Chooses,
    *get_args(season_acts.WithFiles),
)


def play(
    season: season_acts.Season, say: Say, *, replay: Replay = AS_WRITTEN, colour: bool = False
) -> Mapping[str, Ending | None]:
    """Plays a whole season.

    Returns:
        What is kept of each person at its end.

    Raises:
        Difference: an expectation of the file did not hold, or something broke on the way.
    """
    printer = Printer(season, say, colour=colour)
    printer.head(season)
    with SeasonStage(season, printer.note, replay.line, replay.breaks) as stage:
        printer.operator = stage.operator
        _Player(season, stage, printer, replay).all()
        return endings(season, stage.house)


def play_on(stage: SeasonStage, season: season_acts.Season, printer: Printer) -> None:
    """Plays a season on a stage that goes on afterwards.

    Raises:
        Difference: as `play`.
    """
    _Player(season, stage, printer, AS_WRITTEN).all()


@dataclass
class _Ear:
    """What a phone's owner has read: the place of the next text in the inbox, and what was read
    beyond it where texts overtook each other."""

    phone: Phone
    read: int = 0
    beyond: set[int] = field(default_factory=set)

    def fresh(self) -> list[Received]:
        return [self.phone.inbox[place] for place in self.unread()]

    def unread(self) -> list[int]:
        """Their places."""
        places = range(self.read, len(self.phone.inbox))
        return [place for place in places if place not in self.beyond]


def _differs(where: str, *lines: str) -> Difference:
    return Difference("\n  ".join([where, *lines]))


class _Player:
    def __init__(
        self, season: season_acts.Season, stage: SeasonStage, printer: Printer, replay: Replay
    ) -> None:
        self._season, self._stage, self._printer, self._replay = season, stage, printer, replay
        self._ears = {
            name: _Ear(stage.operator.phone(person.phone))
            for name, person in season.people.items()
        }
        self._strict = season.strict and not replay.forgiving
        self._faults: list[season_acts.NetworkFault] = []
        self._desks: dict[str, OfficerBrowser] = {}
        self._busy_until = stage.clock.now
        self._block_ends = stage.clock.now
        self._chance = Random(replay.full)  # noqa: S311 a game of faults, no secret
        self._set_handler()

    def all(self) -> None:
        """Every block, then a last look at what was never heard."""
        ends = [block.at for block in self._season.blocks[1:]]
        last = self._season.blocks[-1].at + LONGEST_WAIT
        for block, end in zip(self._season.blocks, [*ends, last], strict=True):
            self._begin(block, end)
            for step in block.steps:
                self._do(step)
        if self._replay.faults is not None:
            self._stage.run_to(self._stage.clock.now + ON_THE_WAY)
        self._close_ears("the end of the season")

    def _begin(self, block: season_acts.SeasonBlock, end: datetime) -> None:
        self._block_ends = end
        self._busy_until = block.at
        self._stage.run_before(block.at)
        self._close_ears(f"line {block.line}")
        self._fill_phones(block.at)
        self._stage.run_to(block.at)
        self._sound(f"{self._season.path}:{block.line}: before this time")

    def _fill_phones(self, at: datetime) -> None:
        """What comes in the next minutes waits for room on some phones."""
        if self._replay.full is None:
            return
        for ear in self._ears.values():
            if self._chance.random() < FULL_SHARE:
                ear.phone.fill_until(at + FULL_FOR)

    def _close_ears(self, where: str) -> None:
        """What nobody heard so far is over; in a strict season there must be none."""
        for name, ear in self._ears.items():
            self._read_all(name, ear, where)

    def _read_all(self, name: str, ear: _Ear, where: str) -> None:
        fresh, ear.read = ear.fresh(), len(ear.phone.inbox)
        if fresh and self._strict:
            raise Difference(
                f"{self._season.path}, before {where}: {name} heard what no line expects\n"
                f"  came: {self._shown(fresh)}"
            )

    def _do(self, step: season_acts.SeasonStep) -> None:
        """One line, and what broke in it if anything."""
        try:
            _DO[type(step.act)](self, step, step.act)
        except OperatorError as refused:
            raise self._difference(step, f"cannot be done: {refused}") from refused
        self._sound(self._place(step))

    def _sound(self, where: str) -> None:
        """Whether the assistant kept its countenance, and the operator had no complaint."""
        if self._stage.trouble:
            raise _differs(where, "the assistant failed:", *self._stage.trouble)
        faults = self._stage.operator.faults
        if faults:
            raise _differs(where, "the operator complains:", *map(str, faults))

    def _place(self, step: season_acts.SeasonStep) -> str:
        return f"{self._season.path}:{step.line}: {step.words}"

    def _difference(self, step: season_acts.SeasonStep, *lines: str) -> Difference:
        return _differs(self._place(step), *lines)

    def _shown(self, texts: list[Received]) -> str:
        if not texts:
            return "nothing"
        return "\n        ".join(
            f"{self._printer.time(each.at)}  {' / '.join(each.text.split(chr(10)))}"
            for each in texts
        )

    # What people do.

    def _act(self, step: season_acts.SeasonStep, takes: timedelta) -> Phone:
        """Lets the time pass that the line before took; the phone in hand."""
        self._stage.run_to(self._busy_until)
        self._busy_until = self._stage.clock.now + takes
        return self._ears[step.who].phone

    def _turn_to(self, step: season_acts.SeasonStep, takes: timedelta) -> Phone:
        """The same for who begins something, having read what came before."""
        phone = self._act(step, takes)
        self._read_all(step.who, self._ears[step.who], f"line {step.line}")
        return phone

    def texts(self, step: season_acts.SeasonStep, act: season_acts.SendsText) -> None:
        self._turn_to(step, TEXT_TAKES).text(act.text)
        self._stage.settle()

    def dials(self, step: season_acts.SeasonStep, act: season_acts.Dials) -> None:
        self._turn_to(step, KEY_TAKES).dial(act.code)
        self._stage.settle()

    def presses(self, step: season_acts.SeasonStep, act: season_acts.Presses) -> None:
        phone = self._act(step, KEY_TAKES)
        if self._replay.cut and act.keys != MORE:
            self._cut(phone)
        phone.answer(act.keys)
        self._stage.settle()

    def _cut(self, phone: Phone) -> None:
        """Loses the line, now reported and now not, and dials again."""
        if phone.session is None:
            return
        code = phone.session.code
        phone.drop(told=phone.session.turns % 2 == 0)
        self._stage.settle()
        phone.dial(code)

    def hangs_up(self, step: season_acts.SeasonStep, act: season_acts.HangsUp) -> None:
        self._act(step, KEY_TAKES).hang_up()
        self._stage.settle()

    def loses_the_line(
        self, step: season_acts.SeasonStep, act: season_acts.LosesTheLine
    ) -> None:
        self._act(step, KEY_TAKES).drop(told=act.told)
        self._stage.settle()

    def switches(self, step: season_acts.SeasonStep, act: season_acts.Switches) -> None:
        self._act(step, KEY_TAKES).power(act.on)
        self._stage.settle()

    def waits(self, step: season_acts.SeasonStep, act: season_acts.Waits) -> None:
        self._busy_until = max(self._busy_until, self._stage.clock.now + act.span)
        self._stage.run_to(self._busy_until)

    def network(self, step: season_acts.SeasonStep, act: season_acts.NetworkChange) -> None:
        self._faults = [*self._faults, act.fault] if act.fault else []
        self._set_handler()

    def _set_handler(self) -> None:
        weather = handler(self._faults)
        more = self._replay.faults
        self._stage.operator.handler = Chain(weather, more()) if more else weather

    def at_page(self, step: season_acts.SeasonStep, act: season_acts.AtPage) -> None:
        """What an officer does at the page, and what texts follow from it."""
        if step.who not in {officer.name for officer in self._season.officers}:
            raise self._difference(step, "only an officer has a way to the page")
        self._stage.run_to(self._busy_until)
        if not isinstance(act, _ONLY_LOOKS):
            self._busy_until = self._stage.clock.now + PAGE_TAKES
        desk = self._desks.get(step.who)
        if desk is None:
            desk = self._stage.desk(self._season.people[step.who].phone)
            self._desks[step.who] = desk
        try:
            desk.do(act)
        except PageError as fault:
            raise self._difference(step, str(fault)) from fault
        self._printer.at_page(self._stage.clock.now, step.who, step.words, desk.path)
        self._stage.settle()

    # What people must hear and see.

    def hears(self, step: season_acts.SeasonStep, act: season_acts.Hears) -> None:
        ear = self._ears[step.who]
        limit = self._stage.clock.now + LONGEST_WAIT
        if not self._replay.forgiving:
            limit = min(limit, self._block_ends - TEXT_TAKES)
        while not self._heard(ear, step, act.expected):
            if not self._stage.move(limit):
                raise self._otherwise(step, act.expected, ear.fresh())
        self._busy_until = max(self._busy_until, self._stage.clock.now + READING_TAKES)

    def _heard(self, ear: _Ear, step: season_acts.SeasonStep, expected: Expected) -> bool:
        """Whether the text came. Others may come before it, but in a strict season."""
        fresh, places = ear.fresh(), ear.unread()
        if self._strict and fresh and differences(expected, fresh[0].text):
            raise self._otherwise(step, expected, fresh[:1])
        for place, received in zip(places, fresh, strict=True):
            if differences(expected, received.text):
                continue
            if self._replay.forgiving:  # a text that was put off comes after the next one
                ear.beyond.add(place)
            else:
                ear.read = place + 1
            return True
        return False

    def _otherwise(
        self, step: season_acts.SeasonStep, expected: Expected, came: list[Received]
    ) -> Difference:
        wanted = [f"expected: {' | '.join(expected.pieces)}"]
        wanted += [f"without: {' | '.join(expected.without)}"] if expected.without else []
        faults = differences(expected, came[0].text) if len(came) == 1 else ()
        return self._difference(step, *wanted, f"came: {self._shown(came)}", *faults)

    def hears_nothing(
        self, step: season_acts.SeasonStep, act: season_acts.HearsNothing
    ) -> None:
        ear = self._ears[step.who]
        if act.until:
            self._stage.run_to(act.until)
        if ear.fresh() and not self._replay.forgiving:
            raise self._difference(
                step, "expected: nothing", f"came: {self._shown(ear.fresh())}"
            )

    def sees(self, step: season_acts.SeasonStep, act: season_acts.Sees) -> None:
        screen = self._ears[step.who].phone.screen
        text = screen.text if screen else ""
        faults = differences(act.expected, text)
        if not screen or faults:
            came = " / ".join(text.split("\n")) or "no screen"
            wanted = " | ".join(act.expected.pieces)
            raise self._difference(step, f"expected: {wanted}", f"came: {came}", *faults)

    def ends(self, step: season_acts.SeasonStep, act: season_acts.Ends) -> None:
        if self._ears[step.who].phone.in_session:
            raise self._difference(
                step, "expected: the session is over", "came: it is still open"
            )


_DO: Mapping[type, Callable[[_Player, season_acts.SeasonStep, Any], None]] = {
    season_acts.SendsText: _Player.texts,
    season_acts.Dials: _Player.dials,
    season_acts.Presses: _Player.presses,
    season_acts.HangsUp: _Player.hangs_up,
    season_acts.LosesTheLine: _Player.loses_the_line,
    season_acts.Switches: _Player.switches,
    season_acts.Waits: _Player.waits,
    season_acts.NetworkChange: _Player.network,
    season_acts.Hears: _Player.hears,
    season_acts.HearsNothing: _Player.hears_nothing,
    season_acts.Sees: _Player.sees,
    season_acts.Ends: _Player.ends,
    **dict.fromkeys(get_args(season_acts.AtPage), _Player.at_page),
}
