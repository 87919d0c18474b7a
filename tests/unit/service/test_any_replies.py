"""A farmer who answers anything at any time is never told two things that contradict another.

Two months of a season with replies drawn by a fixed seed; `NURSERY_REPLIES_SEED` draws others.
"""

import os
import random
import re
from dataclasses import dataclass
from datetime import datetime, timedelta

import pytest

from tests.stages import stage
from tests.valley import AMINA, CODE, KIJANI, OFFICER, Valley, at

DAYS = 52
START = "2 Jun 07:00"
TEMPERATURES = (15, 18, 26)
SAYS = (
    *("1", "1", "1", "2", "done", "done", "not yet", "yes", "no", "tomorrow", "today", "3"),
    *("we plant on friday", "we sow on friday", "change to 14 june", "20 june", "4 july"),
    *("half came up", "nothing came up", "green", "yellow", "leaves 2", "leaves 3", "85", "30"),
    *("40 of 50", "80 of 100", "sow again", "no seed", "not sown yet", "i soaked now"),
    *("uncovered yesterday", "we will uncover on saturday", "drained yesterday", "no water"),
    *("planted half", "rain", "no hands", "we are late", "rats ate 20 mats", "problem", "menu"),
    *("when", "my seed is a 120 day variety", "the plastic blew away", "water is back"),
)


@dataclass(frozen=True)
class Text:
    """What reached the phone, or came from it."""

    when: datetime
    words: str
    is_hers: bool = False


@dataclass(frozen=True)
class Rule:
    """After words of ours, others that must not come for some days, she having said nothing."""

    after: str
    never: str
    days: int = 0
    if_silent: bool = True


RULES = (
    Rule(r"Let water in again today|do not let the drained bed dry", r"Drain the bed today"),
    Rule(r"Drain the bed today", r"Keep \d cm of water round", if_silent=True),
    Rule(r"sown \w+ \d+ \w+\. Water twice", r"Soak [\d.]+ kg|Sow if roots", days=2),
    Rule(r"uncover and flood done", r"Not up|Shoots up\?", days=2),
    Rule(
        r"transplanted\. Well done", r"Drain the bed|Transplant |Keep \d cm of water r", days=2
    ),
    Rule(r"I hold this plan", r"Soak [\d.]+ kg|Sow if roots|This week collect", days=2),
    Rule(r"do not plant them", r"Transplant soon|Transplant \d", days=2, if_silent=False),
)


@stage
def planned(valley: Valley) -> None:
    """Amina's plan for the tenth, and an officer."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")


def story(valley: Valley, draw: random.Random) -> list[Text]:
    """The texts of two months, in their order."""
    told: list[Text] = []
    for day in range(DAYS):
        morning = at(START) + timedelta(days=day)
        _go(valley, morning, told)
        if draw.random() < 0.03:
            valley.text(OFFICER, f"TEMP {CODE} Kijani {draw.choice(TEMPERATURES)}")
        for hour in range(1, 1 + draw.choice((0, 1, 1, 2))):
            _go(valley, morning + timedelta(hours=hour), told)
            words = draw.choice(SAYS)
            told.append(Text(valley.now, words, is_hers=True))
            told += [Text(valley.now, each) for each in valley.text(AMINA, words)]
    return told


def _go(valley: Valley, when: datetime, told: list[Text]) -> None:
    valley.go(when)
    told += [Text(valley.now, each) for each in valley.heard(AMINA)]


def broken(told: list[Text]) -> list[str]:
    """Each pair of texts that a rule forbids."""
    return [
        f"{rule.after}: {first.words!r} then {later.words!r} on {later.when:%d %b}"
        for place, first in enumerate(told)
        for rule in RULES
        if not first.is_hers and re.search(rule.after, first.words)
        for later in _within(told[place + 1 :], first, rule)
        if re.search(rule.never, later.words)
    ]


def _within(rest: list[Text], first: Text, rule: Rule) -> list[Text]:
    """Our texts of the next days, up to her next word where that may change the plan."""
    until = first.when.date() + timedelta(days=rule.days)
    found: list[Text] = []
    for each in rest:
        if each.when.date() > until or (each.is_hers and rule.if_silent):
            break
        if not each.is_hers:
            found.append(each)
    return found


@pytest.mark.parametrize("seed", [int(os.environ.get("NURSERY_REPLIES_SEED", "7")), 23])
def test_no_two_texts_contradict_each_other(planned: Valley, seed: int) -> None:
    told = story(planned, random.Random(seed))
    assert sum(each.is_hers for each in told) > DAYS / 2
    assert broken(told) == []
