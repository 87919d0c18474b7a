"""The story of a nursery in words: what happened on which day, and who said so."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from assistant.agronomy.life.events import (
    Assumed,
    By,
    Counted,
    Done,
    Event,
    Flooded,
    Found,
    Looked,
    Lost,
    NewSeed,
    PartDone,
    PutOff,
    SeedTestBegun,
    SeedTested,
    SowAgain,
    Why,
)
from assistant.agronomy.nursery import Nursery
from assistant.wording import messages_care as care
from assistant.wording import messages_delay as d
from assistant.wording import messages_seed as seed
from assistant.wording import messages_tasks as t
from assistant.wording import messages_web as web
from assistant.wording import messages_web_story as web_story
from assistant.wording import messages_web_told as told
from assistant.wording.day import what_of
from assistant.wording.message import Message, Say


@dataclass(frozen=True)
class StoryLine:
    """One event in words; `by` who said so."""

    on: date
    what: Say
    by: Message


def lines(nursery: Nursery, story: tuple[Event, ...]) -> tuple[StoryLine, ...]:
    """The story, the latest first."""
    return tuple(
        StoryLine(event.on, _SAYS[type(event)](nursery, event), web_story.BY[event.by])
        for event in reversed(story)
    )


def _done(nursery: Nursery, event: Done) -> Say:
    return web_story.DONE(what=what_of(event.task, nursery.practice))


def _part_done(nursery: Nursery, event: PartDone) -> Say:
    return web_story.PART_DONE(what=what_of(event.task, nursery.practice))


def _put_off(nursery: Nursery, event: PutOff) -> Say:
    what = what_of(event.task, nursery.practice)
    if event.why in _WHY:
        return web_story.PUT_OFF_WHY(what=what, date=event.until, why=_WHY[event.why]())
    text = (
        web_story.RAIN if event.why is Why.RAIN and event.by is By.CLOCK else web_story.PUT_OFF
    )
    return text(what=what, date=event.until)


_WHY: Mapping[Why, Message] = {
    Why.HANDS: d.HANDS,
    Why.WATER: d.WATER,
    Why.FIELD: d.FIELD,
    Why.OTHER: d.OTHER,
}


def _assumed(nursery: Nursery, event: Assumed) -> Say:
    return web_story.ASSUMED()


def _begun(nursery: Nursery, event: SeedTestBegun) -> Say:
    return web_story.BEGUN()


def _tested(nursery: Nursery, event: SeedTested) -> Say:
    return told.SPROUTED(count=event.sprouted, seeds=event.seeds)


def _new_seed(nursery: Nursery, event: NewSeed) -> Say:
    return seed.NEW_SEED()


def _lost(nursery: Nursery, event: Lost) -> Say:
    return web_story.LOST(mats=event.mats)


def _counted(nursery: Nursery, event: Counted) -> Say:
    return web.COUNTED_LEAVES(count=event.leaves)


def _looked(nursery: Nursery, event: Looked) -> Say:
    return _COLOURS.get(event.colour, t.YELLOW)()


_COLOURS: Mapping[str, Message] = {"green": t.GREEN, "pale": t.PALE}


def _flooded(nursery: Nursery, event: Flooded) -> Say:
    return care.P_FLOOD()


def _found(nursery: Nursery, event: Found) -> Say:
    return _STATES[event.state]()


_STATES: Mapping[str, Message] = {
    "stands": t.STANDS,
    "part": t.PART_GONE,
    "gone": t.ALL_GONE,
}


def _sow_again(nursery: Nursery, event: SowAgain) -> Say:
    return d.SOW_ANEW()


_SAYS: Mapping[type[Event], Callable[[Nursery, Any], Say]] = {
    Done: _done,
    PutOff: _put_off,
    PartDone: _part_done,
    Assumed: _assumed,
    SeedTestBegun: _begun,
    SeedTested: _tested,
    NewSeed: _new_seed,
    Counted: _counted,
    Looked: _looked,
    Flooded: _flooded,
    Found: _found,
    Lost: _lost,
    SowAgain: _sow_again,
}
