"""A talk that is crossed by the morning's text at each of its steps, to the same end."""

from collections.abc import Mapping

import pytest

from scenarios.ending import Ending
from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import parse

# A phone with one nursery, to be soaked on 8 June: that morning at 06:00 it is asked about.
BEFORE = """\
zone      Africa/Nairobi
languages en
villages  Kijani
phone     Amani +447700900101
2026-06-01 09:00
  Amani texts hello
  Amani texts 1
  Amani texts 1
  Amani texts yes
  Amani texts 0.4 ha
  Amani texts 85
  Amani texts 10 L
  Amani texts 10 June
  Amani texts yes
"""
# Planning a second one meanwhile. The last answer could be for the prompt as well as for the
# question, whichever came last; said twice, it is for both.
BY_SMS = ("NEW", "600 m2", "90 %", "20 litres", "20 June", "yes", "yes")
BY_USSD = ("NEW", "600 m2", "90", "3", "20 June", "1")


def planned(lines: list[str]) -> Mapping[str, Ending | None]:
    """How it ends, played on from the first nursery."""
    season = parse(BEFORE + "\n".join(lines), "crossed")
    return play(season, say_nothing, replay=Replay(forgiving=True))


def second_of(endings: Mapping[str, Ending | None]) -> tuple[float, float, float, str]:
    """The second nursery: field [m2], germination, pail [L], day of sowing."""
    ending = endings["Amani"]
    assert ending is not None and [n.label for n in ending.nurseries] == ["A", "B"]
    found = ending.nurseries[1]
    inputs = found.inputs
    sow = found.sow_date.isoformat()
    return inputs.field_area_m2, inputs.germination, inputs.pail_litres, sow


EXPECTED = (600, 0.9, 20, "2026-06-20")


@pytest.mark.parametrize("steps", range(1, 6))
def test_a_prompt_between_any_two_texts_of_a_talk_loses_no_answer(steps: int) -> None:
    """The talk begins so many minutes before 06:00, one text a minute."""
    talk = [f"  Amani texts {text}" for text in BY_SMS]
    assert second_of(planned([f"2026-06-08 05:{60 - steps}", *talk])) == EXPECTED


def test_a_prompt_in_the_middle_of_a_session_does_not_disturb_its_screens() -> None:
    """Digits pressed on a screen are for that screen; the session passes over 06:00."""
    keys = [f"  Amani presses {keys}" for keys in BY_USSD]
    dawn = ["2026-06-08 05:59", "  Amani dials *555*7#", "  Amani waits 50 seconds"]
    ending = planned([*dawn, *keys, "  Amani hears Soak", "  Amani hears B | plan is ready"])
    assert second_of(ending) == EXPECTED
