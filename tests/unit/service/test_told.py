"""Answers of a trouble talk are kept as codes and worded for who reads them."""

import re
from pathlib import Path

import pytest

import assistant
from assistant.channel import Channel
from assistant.dialogue.conversations.trouble import TROUBLE
from assistant.dialogue.values import CallForHelp
from assistant.service.alarm_kinds import ALARMS
from assistant.service.effects import Scene, carry_out
from assistant.service.told import ABOUT, told
from assistant.wiring.catalogues import open_catalogue
from assistant.wording.message import Say
from assistant.wording.render import Catalogue, render
from tests.valley import AMINA, Valley

ENGLISH = open_catalogue("en")


def worded(say: Say | None, catalogue: Catalogue = ENGLISH) -> str:
    """As an officer reads it."""
    return render(say, catalogue) if say else ""


@pytest.mark.parametrize(
    ("about", "kept", "read"),
    [
        ("yellow", "spots", "Spots or rust on leaves"),
        ("yellow", "tip,patches", "Old leaves, from the tip, In patches"),
        ("not_up", "46 fill", "46 shoots in a square of 10 x 10 cm. The farmer: Sow more mats"),
        ("not_up", "12", "12 shoots in a square of 10 x 10 cm"),
        ("seed", "44/100", "44 of 100 sprouted"),
        # kept by an earlier release, in the farmer's words
        ("yellow", "Madoa au kutu", "Madoa au kutu"),
        ("not_up", "46 / 100 cm2: fill", "46 / 100 cm2: fill"),
    ],
)
def test_codes_are_read_in_words(about: str, kept: str, read: str) -> None:
    """What is no code is shown as it was kept."""
    assert worded(told(about, kept).answer) == f"Answered when asked: {read}"


def test_each_officer_reads_their_own_language() -> None:
    """The sign is worded in Swahili for who reads Swahili."""
    answer = worded(told("yellow", "spots").answer, open_catalogue("sw"))
    assert "Spots" not in answer and "spots" not in answer


def test_own_words_stay_own_words() -> None:
    """A number in them is no count of shoots."""
    assert told("officer", "46 fill").words == "46 fill"


def test_every_call_that_the_code_can_make_has_words() -> None:
    """What stands as the code of a call in the dialogue or the service, and the choices of the
    talk about trouble."""
    root = Path(assistant.__file__).parent
    source = "".join(
        path.read_text("utf-8")
        for folder in ("dialogue", "service")
        for path in (root / folder).rglob("*.py")
    )
    made = set(re.findall(r'(?:CallForHelp|RaiseAlarm|\bcall)\(\s*"(\w+)"', source))
    problem = TROUBLE.questions["problem"]
    assert {"seed", "leaves", "yellow"} <= made
    chosen = {choice.code for choice in problem.choices}
    assert made | chosen | ALARMS | {"question", "refused", "erase"} <= set(ABOUT)


def test_a_call_without_words_is_not_kept(valley: Valley) -> None:
    """It is a fault of ours, to be seen before a release."""
    valley.enrol(AMINA)
    with pytest.raises(KeyError), valley.house.store.work() as work:
        scene = Scene(work, valley.house, AMINA, Channel.SMS, valley.now)
        carry_out((CallForHelp("unheard of", "help"),), scene)
