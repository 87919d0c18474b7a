"""The steps of the work by hand: there for every kind of bed, in order, short enough."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.making import ground_m2, laid_m2
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import quantities
from assistant.agronomy.tasks import TaskCode
from assistant.alphabet import Encoding, cost
from assistant.people import LANGUAGES
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.practices import open_practices
from assistant.wording import messages_steps as s
from assistant.wording.checks import allowed, form_for
from assistant.wording.day import TOLD_BY_STEPS
from assistant.wording.message import Message
from assistant.wording.steps import CHAPTERS, chapter_of, making_code, open_chapter, step
from assistant.wording.texts import declared
from assistant.wording.widest import widest
from tests.talk import TODAY, nursery

PRACTICES = tuple(open_practices().values())
TEXTS = {text.message: text for text in declared()}
CODES = [practice.code for practice in PRACTICES]


def order(practice: Practice, *codes: TaskCode) -> list[Message]:
    """The steps of several tasks, one after the other."""
    return [step for code in codes for step in chapter_of(code, practice)]


@pytest.mark.parametrize("practice", PRACTICES, ids=CODES)
def test_a_bed_is_made_in_an_order_that_can_be_done(practice: Practice) -> None:
    """Ground before bed, bed before seed, the sheet below before the mix, the cover last."""
    steps = order(practice, TaskCode.COLLECT, making_code(practice), TaskCode.SOW)
    wanted = (s.GROUND, s.LEVEL, s.PUDDLE, s.DIG, s.UNDER, s.SET, s.SPREAD, s.ABOVE, s.GUARD)
    found = [steps.index(each) for each in wanted if each in steps]
    assert found == sorted(found) and len(found) > 3


@pytest.mark.parametrize("practice", PRACTICES, ids=CODES)
def test_a_text_that_offers_steps_has_steps(practice: Practice) -> None:
    """Each task whose text names the word, where the practice has it."""
    for code in TOLD_BY_STEPS - ({TaskCode.MAKE_BED} if practice.bed.piece is None else set()):
        assert chapter_of(code, practice)


def test_the_steps_of_a_task_are_open_from_its_day_to_the_next() -> None:
    """Before the first day it is the first; when all is planted there is none."""
    bed = nursery(sow=TODAY)

    def on(day: int) -> TaskCode | None:
        return open_chapter(bed, TODAY + timedelta(days=day))

    assert [on(day) for day in (-30, -7, -3, -2, -1, 0)] == [
        *(TaskCode.COLLECT, TaskCode.COLLECT, TaskCode.MIX),
        *(TaskCode.SOAK, TaskCode.MAKE_BED, TaskCode.SOW),
    ]
    planted = nursery(sow=TODAY, sown=True, transplanted_on=TODAY + timedelta(days=18))
    assert open_chapter(planted, TODAY + timedelta(days=18)) is None


def test_the_last_step_is_followed_by_none() -> None:
    """So that the talk can say that it is over."""
    bed = nursery(sow=TODAY)
    count = len(chapter_of(TaskCode.MAKE_BED, bed.practice))
    assert step(bed, TaskCode.MAKE_BED, count - 1, TODAY) is not None
    assert step(bed, TaskCode.MAKE_BED, count, TODAY) is None


def test_the_ground_is_more_than_the_mats() -> None:
    """By hand: strips of 1.2 m with half a metre beside each take 17/12 of the bed."""
    assert ground_m2(12) == pytest.approx(17)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_step_and_the_way_on_are_one_segment(language: str) -> None:
    """Where the script allows; what is counted as UCS-2 has as many letters as the English."""
    catalogue = open_catalogue(language)
    hint = catalogue.translations.gettext(s.NEXT_HINT.text)
    for message in {m for kind in CHAPTERS.values() for steps in kind.values() for m in steps}:
        text = form_for(TEXTS[message], catalogue, 2)
        for slot in TEXTS[message].slots:
            text = text.replace("{" + slot + "}", widest(TEXTS[message], slot, catalogue))
        price = cost(text if message in LAST else f"{text}\n{hint}")
        most = 1 if price.encoding is Encoding.GSM7 else allowed(1, Encoding.UCS2)
        assert price.segments <= most, message.text


LAST = {steps[-1] for kind in CHAPTERS.values() for steps in kind.values()}


def test_trays_fit_on_the_ground_that_is_told() -> None:
    """120 trays of 60 x 30 cm outside are 21.6 m2, and strips have half a metre beside 1.2."""
    practice = open_practices()["tray"]
    q = quantities(FieldInputs(4000.0, 0.85, 30, 14, 4), practice)
    laid = laid_m2(replace(q, mats=120), practice)
    assert laid == pytest.approx(21.6) and ground_m2(laid) == pytest.approx(30.6)
