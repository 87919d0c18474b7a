"""Work that is late, or was done against advice: what it moves is moved, and what it does not
is said."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done
from assistant.agronomy.lot.programme_variety import Breeding, ProgrammeVariety
from assistant.dialogue import conversations as talks
from assistant.dialogue.turns import turn
from assistant.dialogue.values import AnswerItem, CallForHelp, Item
from assistant.wiring.practices import open_practices
from assistant.wording import messages_care as c
from assistant.wording import messages_cautions as h
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording.render import render_all
from tests.corpus.talk import moments
from tests.corpus.talk.moments import bed_of, known_of
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)
PRACTICES = open_practices()


def bed(day: int, **given: object) -> Phone:
    """A mat bed so many days after its sowing."""
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=day > 0, **given))  # type: ignore[arg-type]


def weak(day: int = 0) -> Phone:
    """A bed whose seed must not be sown."""
    phone = Phone.enrolled(nursery(sow=TODAY - day * DAY))
    plan = phone.known.nurseries[0]
    held = replace(plan, inputs=replace(plan.inputs, germination=0.3))
    phone.known = replace(phone.known, nurseries=(held,))
    return phone


def two(first: int, second: int) -> Phone:
    beds = (
        nursery("A", sow=TODAY - first * DAY, sown=first > 0),
        nursery("B", sow=TODAY - second * DAY, sown=second > 0),
    )
    return Phone.enrolled(*beds)


# --- uncovered late --------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["1", "done", "we uncovered it today"])
def test_a_week_late_uncovering_says_what_moves_and_what_stays(words: str) -> None:
    """Seedlings age under their cover too, so the days of planting are those of before; leaves
    and colour are looked at once there is light."""
    phone = bed(12).asked(item(TaskCode.UNCOVER_FLOOD))
    before = phone.known.nurseries[0].anchors.transplant_date
    assert phone.hears(words) == [like(m.DONE_NOTED, m.UNCOVERED_LATE)]
    (kept,) = phone.known.nurseries
    days = {task.code: task.date for task in kept.tasks}
    assert kept.anchors.uncover_date == TODAY and kept.anchors.transplant_date == before
    assert days[TaskCode.COLOUR_CHECK] == TODAY + 3 * DAY
    assert days[TaskCode.LEAF_COUNT] == TODAY + DAY
    assert TODAY < days[TaskCode.DRAIN_BED] < before


def test_two_days_late_are_no_delay() -> None:
    phone = bed(7).asked(item(TaskCode.UNCOVER_FLOOD))
    assert phone.hears("done") == [like(m.DONE_NOTED)]


def test_uncovered_after_its_last_day_counts_from_the_last_that_can_be() -> None:
    """Not from the planned one: green leaves would be asked of shoots that had no light."""
    plan = nursery(sow=TODAY - 16 * DAY, sown=True)
    late = after(plan, Done(on=TODAY, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD))
    assert late.day(late.anchors.uncover_date) == 14


# --- sown though it must not be --------------------------------------------------------------


@pytest.mark.parametrize("words", ["I sowed it anyway", "we sowed it", "sowed anyway"])
def test_seed_sown_against_advice_is_told_what_will_come_of_it(words: str) -> None:
    phone = weak()
    assert phone.hears(words) == [like(m.SOWN_NOTED, m.SOWN_WEAK)]
    assert phone.known.nurseries[0].sown
    assert [each.about for each in phone.changes if isinstance(each, CallForHelp)] == ["seed"]


def test_so_is_seed_that_was_sown_yesterday() -> None:
    phone = weak()
    phone.says("we sowed yesterday")
    assert like(m.SOWN_WEAK) in phone.hears("yes")
    assert [each.about for each in phone.changes if isinstance(each, CallForHelp)] == ["seed"]


def test_good_seed_is_said_nothing_of() -> None:
    phone = bed(0).asked(item(TaskCode.SOW))
    assert phone.hears("done") == [like(m.SOWN_NOTED)]


# --- late, and no reason ---------------------------------------------------------------------

_LATE = {
    "en": "we are late",
    "sw": "tumechelewa",
    "fr": "nous sommes en retard",
    "pt": "estamos atrasados",
    "fil": "nahuli kami",
    "hi": "देर हो गई",
    "bn": "দেরি হচ্ছে",
    "id": "kami terlambat",
    "vi": "chúng tôi bị trễ",
}


@pytest.mark.parametrize("language", _LATE)
def test_late_where_planting_was_asked_is_not_yet(language: str) -> None:
    """The mats get their water back, and why is asked."""
    known = moments.MOMENTS["transplant"](language)
    told = turn(_LATE[language], known)
    assert any(isinstance(each, AnswerItem) for each in told.changes)
    assert told.session is not None and told.session.conversation == talks.DELAY.name


def test_late_with_its_reason_asks_only_the_day() -> None:
    phone = bed(20, uncovered=True).asked(item(TaskCode.TRANSPLANT))
    (text,) = phone.hears("we are late. tractor broke")
    assert text == like(d.WATER_BACK, d.ASK_UNTIL)


@pytest.mark.parametrize("words", ["is it too late to plant?", "the officer came late today"])
def test_late_in_other_words_is_not(words: str) -> None:
    phone = bed(20, uncovered=True).asked(item(TaskCode.TRANSPLANT))
    assert not any(isinstance(each, AnswerItem) for each in phone.says(words).changes)


# --- one bed of two --------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["close b", "B close", "CLOSE B."])
def test_the_bed_that_is_named_is_closed(words: str) -> None:
    phone = two(18, 12)
    assert phone.hears(words) == [like(m.ASK_CLOSE, ...)]
    assert phone.hears("yes") == [like(m.CLOSED)]
    assert [each.label for each in phone.known.nurseries] == ["A"]


def test_a_variety_without_a_letter_asks_which_bed() -> None:
    early = ProgrammeVariety("early-1", "Early One", 105, Breeding.INBRED)
    phone = two(18, 12)
    phone.known = replace(phone.known, varieties=(early,))
    assert phone.hears("i have early-1 seed") == [like(m.ASK_NURSERY, ...)]
    phone.says("B")
    assert [each.ripens_d for each in phone.known.nurseries] == [None, 105]


def test_so_do_the_days_of_a_seed() -> None:
    phone = two(18, 12)
    assert phone.hears("my seed takes 120 days") == [like(m.ASK_NURSERY, ...)]
    phone.says("1")
    assert [each.ripens_d for each in phone.known.nurseries] == [120, None]


# --- left undone -----------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["nimeacha", "tumeacha", "nimesahau"])
def test_left_is_not_done_and_says_nothing_of_the_shoots(words: str) -> None:
    known = moments.MOMENTS["uncover"]("sw")
    told = turn(words, known)
    assert AnswerItem(known.items[0], "not_yet") in told.changes
    texts = [render_all(each.says, known.catalogue) for each in told.texts]
    assert len(texts) == 1 and "kifunikwe" not in texts[0]  # it is not said to stay covered


@pytest.mark.parametrize("language_words", [("sw", "nimeacha"), ("en", "i forgot")])
def test_left_on_the_sowing_day_is_not_yet(language_words: tuple[str, str]) -> None:
    language, words = language_words
    known = moments.MOMENTS["sow"](language)
    assert AnswerItem(known.items[0], "not_yet") in turn(words, known).changes


# --- eaten on the sowing day -----------------------------------------------------------------


@pytest.mark.parametrize(
    ("language", "words"),
    [("en", "rats ate the seed in 20 mats"), ("sw", "panya wamekula mbegu za mikeka 20")],
)
def test_seed_eaten_in_its_mats_is_sown_and_the_mats_are_counted(
    language: str, words: str
) -> None:
    known = moments.MOMENTS["sow"](language)
    told = turn(words, known)
    assert AnswerItem(known.items[0], "done") in told.changes
    kept = [each.nursery for each in told.changes if hasattr(each, "nursery")]
    assert (kept[-1].sown, kept[-1].lost_mats) == (True, 20)
    assert told.session is not None and told.session.conversation == talks.LOST_FILL.name


def test_mats_trampled_before_the_sowing_are_not_sown() -> None:
    known = known_of("en", bed_of(0), items=(Item(1, TaskCode.SOW, TODAY),))
    told = turn("goats trampled 20 mats", known)
    assert not any(isinstance(each, AnswerItem) for each in told.changes)


# --- brine -----------------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["sort seed in salt", "how do i sort seed with salt water"])
def test_where_the_brine_goes_is_said_with_the_sorting(words: str) -> None:
    phone = bed(-5)
    assert phone.hears(words) == [like(c.SALT_MIX), like(c.SALT_RINSE, h.SALT_AWAY)]


# --- a dry bed -------------------------------------------------------------------------------


def test_urea_for_a_bed_that_no_can_waters_is_the_officers() -> None:
    """400 m2 would take 1,200 L carried in cans."""
    plan = nursery(
        sow=TODAY - 14 * DAY, sown=True, uncovered=True, practice=PRACTICES["dry_bed"]
    )
    phone = Phone.enrolled(plan)
    for words in ("PROBLEM", "1", "8", "1", "1"):
        phone.says(words)
    (text,) = phone.hears("20")
    assert text == like(m.TOLD_OFFICER) and phone.known.nurseries[0].urea_on is None
    assert [each.about for each in phone.changes if isinstance(each, CallForHelp)] == ["yellow"]
