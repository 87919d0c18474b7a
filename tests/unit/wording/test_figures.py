"""A number of the trade stands once: change its constant and every text follows, in every
language. What is typed into a text is a key, an example, or has its reason in `typed`."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from typing import Any

import pytest

from assistant.agronomy import constants as c
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.sourced.constant import Constant
from assistant.people import LANGUAGES
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers as a
from assistant.wording import messages_care as care
from assistant.wording import messages_plan as plan
from assistant.wording import messages_practice as p
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as talk
from assistant.wording import messages_tasks as t
from assistant.wording.day import about
from assistant.wording.figures import FIGURES
from assistant.wording.message import Message, Say
from assistant.wording.render import Catalogue, number, render
from assistant.wording.texts import Declared, declared
from assistant.wording.typed import BECAUSE, has_digits, typed
from assistant.wording.widest import usual
from tests.talk import TODAY, nursery

ODD = 77.0  # a value that no constant has
PHONES = [text for text in declared() if not text.printed]
TELLING = [text for text in PHONES if text.slots & FIGURES.keys()]


@cache
def catalogue(language: str) -> Catalogue:
    """The texts of a language, opened once."""
    return open_catalogue(language)


@contextmanager
def changed(constant: Constant, end: str, value: float) -> Iterator[None]:
    """A constant with another value, or another end of its range, for a while."""
    before = getattr(constant, end)
    object.__setattr__(constant, end, value)
    try:
        yield
    finally:
        object.__setattr__(constant, end, before)


def says(say: Say, language: str, value: float) -> bool:
    """Whether a number stands in a text as the language writes it."""
    wanted = re.escape(number(value, language))
    return bool(re.search(rf"(?<!\d){wanted}(?!\d)", render(say, catalogue(language))))


@pytest.mark.parametrize("text", TELLING, ids=lambda text: text.place)
def test_a_text_follows_each_constant_that_it_tells_in_every_language(text: Declared) -> None:
    """The widest and the plainest alike: nobody passes these slots."""
    given: dict[str, Any] = {
        slot: usual(text, slot) for slot in text.slots if slot not in FIGURES
    }
    for name in text.slots & FIGURES.keys():
        figure = FIGURES[name]
        say = text.message(**given)
        with changed(figure.constant, figure.end, ODD / figure.times):
            silent = [code for code in LANGUAGES if not says(say, code, ODD)]
            assert silent == [], name


@pytest.mark.parametrize(
    ("constant", "told", "messages"),
    [
        (c.MAT_DEPTH_M, 77, [talk.RESULT_MIX, talk.RESULT_MIX_SMALL, s.SET, s.FRAME]),
        (c.FLOOD_DEPTH_M, 77, [t.P_KEEP_WATER, p.P_KEEP_UNSURE, talk.GREEN_NOTED,
                               care.FLOOD_LATER, care.M_WATER, aid.UP_SO_UNCOVER, s.LET_IN,
                               plan.N_KEEP_DEEP, a.WATER_DEEP]),
        (c.LEAVES_FIRST, 77, [t.P_WINDOW, t.P_TRANSPLANT, t.P_OVERDUE, talk.LEAVES_FEW]),
        (c.LEAVES_LAST, 77, [t.P_WINDOW, t.P_TRANSPLANT, talk.LEAVES_FEW]),
        (c.TRANSPLANT_LAST_DAY, 77, [talk.TRANSPLANT_OUTSIDE, a.AGE, a.TOO_LATE]),
        (c.MAT_LENGTH_M, 77, [talk.RESULT_SEED, s.FRAME]),
        (c.SOIL_PARTS, 77, [t.P_MIX, t.P_MIX_SMALL, t.P_COLLECT_SMALL]),
    ],
    ids=lambda value: getattr(value, "name", None),
)  # fmt: skip
def test_what_differs_from_bed_to_bed_is_told_from_the_bed(
    constant: Constant, told: float, messages: list[Message]
) -> None:
    """A bed planned by another figure is told by it, in every language."""
    in_metres = constant.unit == "m"
    with changed(constant, "value", told / 100 if in_metres else told):
        bed = nursery(sow=TODAY)
        for message in messages:
            more: dict[str, Any] = (
                {"urea": "", "count": 2, "days": 30, "day": 9} if message in _ASKS_MORE else {}
            )
            wanted = {k: v for k, v in more.items() if "{" + k + "}" in message.text}
            say = about(message, bed, TODAY, **wanted)
            silent = [code for code in LANGUAGES if not says(say, code, told)]
            assert silent == [], message.text


_ASKS_MORE = {talk.RESULT_MIX, talk.RESULT_MIX_SMALL, talk.LEAVES_FEW, talk.TRANSPLANT_OUTSIDE}


def test_the_seedlings_a_hill_are_those_of_the_plan() -> None:
    """As they were asked for, not as usual."""
    bed = nursery(sow=TODAY, inputs=FieldInputs(4000.0, 0.85, seedlings_per_hill=3))
    assert all(says(about(t.P_TRANSPLANT, bed, TODAY), code, 3) for code in LANGUAGES)


def test_no_text_has_a_digit_typed_in_that_is_no_key_and_no_example() -> None:
    """Translations are held to the English digits by the checks of the catalogue."""
    assert {text.place: typed(text) for text in PHONES if typed(text)} == {}


@pytest.mark.parametrize("place", BECAUSE)
def test_each_reason_for_a_typed_digit_is_still_needed(place: str) -> None:
    """A text that lost its digits loses its excuse."""
    (text,) = (each for each in PHONES if each.place == place)
    assert has_digits(text.message)


def test_a_typed_figure_is_found() -> None:
    """The check can fail."""
    for words in (
        "Sow if roots are 2-3 mm.",
        "Keep 1 cm of water.",
        "Soak 24 h.",
        "1 Done 5 g",
    ):
        assert typed(Declared("talk.X", Message(words))) != [], words
    for words in (
        "1 Done 2 Not yet",
        "Send it, e.g. 0.4 ha.",
        "Send MENU, 9, 3.",
        "{n} of 100.",
    ):
        assert typed(Declared("talk.X", Message(words))) == [], words


def test_the_eyes_are_rinsed_as_long_as_the_source_says() -> None:
    """The emergency texts are fixed sentence by sentence and have no slot for it."""
    assert f"for {c.EYE_RINSE_MIN.value:g} minutes" in aid.EYES.text
