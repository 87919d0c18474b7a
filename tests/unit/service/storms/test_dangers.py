"""Warnings of other dangers than rain: whom they reach, what each stage is told, what waits."""

from datetime import timedelta

import pytest

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.alphabet import cost
from assistant.people import LANGUAGES, Village
from assistant.service.morning import gathered
from assistant.service.sight import sight_of
from assistant.service.storms import drafts
from assistant.service.storms.danger import InDanger
from assistant.service.storms.danger_words import words_of
from assistant.service.storms.headline import NO_HEADLINE
from assistant.store import AlertCertainty, Draft
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_dangers as d
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.checks import allowed
from assistant.wording.render import render_all
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    KIJANI,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    at,
    like,
    numbered,
    settle,
)

INDOORS = sorted(DANGERS.codes(lambda row: row.indoors))


def to_three_stages(valley: Valley) -> None:
    """Amina's bed is covered (day 2), Baraka's uncovered (day 10), Zawadi sows tomorrow; it is
    nine on 1 June."""
    settle(valley)
    valley.add_officer(KIJANI)
    for phone, sown in ((AMINA, "30 May"), (BARAKA, "22 May")):
        valley.enrol(phone)
        valley.sow(phone, sown)
    valley.enrol(ZAWADI)
    valley.plan(ZAWADI, "2 Jun")
    valley.text(ZAWADI, "yes")
    valley.go("1 Jun 09:00")
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.heard(phone)


@pytest.fixture
def stages(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_three_stages)


def warn(valley: Valley, word: str = "COLD", hours: str = "18-8") -> list[str]:
    """By text, confirmed."""
    valley.text(OFFICER, f"{word} {CODE} Kijani {hours}".strip())
    return valley.text(OFFICER, "1")


# --- what is said, and to whom ----------------------------------------------------------------


def test_each_bed_is_told_what_its_stage_asks_for(stages: Valley) -> None:
    """Straw stays on, water goes in at dusk, seed waits: an agronomist's three answers."""
    assert warn(stages) == [like(o.WARNED)]
    assert stages.heard(AMINA) == [like(d.HEAD, d.COLD_COVERED, d.KEYS)]
    assert stages.heard(BARAKA) == [like(d.HEAD, d.COLD_UNCOVERED, d.KEYS)]
    assert stages.heard(ZAWADI) == [like(d.HEAD, d.COLD_SOON, d.KEYS)]


def test_a_wind_says_nothing_to_who_has_no_bed_yet(stages: Valley) -> None:
    warn(stages, "WIND", "14-20")
    assert stages.heard(AMINA) == [like(d.HEAD, d.WIND_COVERED, d.KEYS)]
    assert stages.heard(BARAKA) == [like(d.HEAD, d.WIND_UNCOVERED, d.KEYS)]
    assert stages.heard(ZAWADI) == []


def test_a_bed_without_water_round_it_is_covered_on_a_cold_night(stages: Valley) -> None:
    """Two days before transplanting on 10 June, day 19, the mats are drained."""
    stages.go("8 Jun 09:00")
    stages.heard(BARAKA)
    warn(stages)
    assert stages.heard(BARAKA) == [like(d.HEAD, d.COLD_DRAINED, d.KEYS)]


def test_pests_are_told_by_days_without_a_remedy(stages: Valley) -> None:
    """The officer gives no hours; it stands a week."""
    asked = stages.text(OFFICER, f"PESTS {CODE} Kijani")
    assert asked == [like(d.ASK_WARN_DAYS, *numbered(m.YES, m.NO))]
    stages.text(OFFICER, "1")
    assert stages.heard(BARAKA) == [like(d.HEAD_DAYS, d.PESTS_UNCOVERED, d.KEYS)]


def _draft(
    valley: Valley, danger: str, begins_in: timedelta, certainty: AlertCertainty
) -> None:
    begins = valley.now + begins_in
    wanted = Draft(
        (KIJANI.id,), begins, begins + timedelta(hours=3), valley.now, certainty, danger=danger
    )
    with valley.house.store.work() as work:
        made = drafts.draft(work, wanted)
        drafts.send(work, valley.house, made.id, valley.now, work.people.officer(OFFICER))
    valley.send()


@pytest.mark.parametrize("danger", INDOORS)
def test_nobody_is_sent_out_once_it_is_there(stages: Valley, danger: str) -> None:
    """Neither where it is seen already nor where its hours have begun."""
    for begins, certainty in (
        (timedelta(minutes=30), AlertCertainty.OBSERVED),
        (-timedelta(minutes=30), AlertCertainty.UNKNOWN),
    ):
        _draft(stages, danger, begins, certainty)
        sure = (d.BEGUN,) if certainty is AlertCertainty.OBSERVED else ()
        assert stages.heard(BARAKA) == [like(d.HEAD, d.STAY_IN, *sure, d.KEYS)]


@pytest.mark.parametrize("danger", INDOORS)
def test_rain_sends_nobody_out_while_another_danger_is_there(
    stages: Valley, danger: str
) -> None:
    """Rain is warned of as ever before the other comes, and once that is over."""
    begins, likely = timedelta(minutes=30), AlertCertainty.LIKELY
    _draft(stages, danger, timedelta(hours=1), likely)
    stages.heard(AMINA)
    _draft(stages, RAIN, begins, likely)
    covers = like(m.WARNING, r.SURE_LIKELY, r.COVERED_OR_HELP)
    assert stages.heard(AMINA) == [covers]
    stages.go("1 Jun 10:30")
    stages.heard(AMINA)
    _draft(stages, RAIN, begins, likely)
    assert stages.heard(AMINA) == [like(d.HEAD, d.STAY_IN, d.KEYS)]
    stages.go("1 Jun 13:30")
    stages.heard(AMINA)
    _draft(stages, RAIN, begins, likely)
    assert stages.heard(AMINA) == [covers]


def test_hail_that_was_seen_keeps_people_in_under_rain(stages: Valley) -> None:
    """Also before its hours, which are typed roughly."""
    _draft(stages, "hail", timedelta(minutes=50), AlertCertainty.OBSERVED)
    stages.heard(AMINA)
    _draft(stages, RAIN, timedelta(hours=1), AlertCertainty.OBSERVED)
    assert stages.heard(AMINA) == [like(d.HEAD, d.STAY_IN, d.BEGUN, d.KEYS)]


def test_a_text_that_sends_people_out_does_not_arrive_in_the_hail(stages: Valley) -> None:
    """A phone that is off until the hail falls gets no word of laying mats."""
    stages.text(OFFICER, f"HAIL {CODE} Kijani 14-20")
    stages.post(OFFICER, "1")
    stages.send()
    went = [each for each in stages.operator.offered if each.phone == BARAKA][-1]
    assert went.not_after == at("1 Jun 14:00")


# --- answers ----------------------------------------------------------------------------------


@pytest.mark.parametrize("word", ["COLD", "HAIL", "WIND", "DRY", "PESTS", "FLOOD"])
def test_help_is_heard_in_every_danger(stages: Valley, word: str) -> None:
    """By its digit or its words; the officer has it at once."""
    warn(stages, word, "14-20")
    stages.heard(AMINA)
    answer = stages.text(AMINA, "2")
    storm = word in ("HAIL", "WIND", "FLOOD")
    assert answer == [like(m.WARNING_HELP if storm else d.HELP_NOTED)]
    assert stages.heard(OFFICER) == [like(d.HELP_WANTED)]
    stages.heard(BARAKA)
    assert stages.text(BARAKA, "done") == [like(d.NOTED)]
    counted = stages.text(OFFICER, f"COUNT {CODE} Kijani")[0]
    assert "1 done, 1 need help" in counted


def test_on_a_screen_the_danger_is_named(stages: Valley) -> None:
    warn(stages)
    screen = stages.dial(AMINA)
    assert "cold night" in screen.text
    assert "1 Done" in screen.text
    assert stages.key(AMINA, "2").text.startswith("Noted: you need help")


def test_the_officer_sees_who_needs_help_after_a_cold_night(stages: Valley) -> None:
    warn(stages)
    stages.text(BARAKA, "2")
    with stages.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        _, found = gathered(work, stages.house, sight_of(work, officer), stages.now)
    said = {line.farmer.phone: line.reasons[0].say.message.text for line in found}
    assert said[BARAKA] == "Needs help: {danger}"
    assert said[AMINA] == "No answer to the warning: {danger}"


# --- several at once --------------------------------------------------------------------------


def test_an_all_clear_ends_its_own_danger_alone(stages: Valley) -> None:
    """The cold is over and the rain is not."""
    warn(stages, "RAIN", "14-20")
    warn(stages)
    asked = stages.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert asked == [like(d.WHICH(village="Kijani", words="RAIN, COLD", word="COLD"))]
    counted = stages.text(OFFICER, f"COUNT {CODE} Kijani")
    assert counted == [like(o.COUNTED, d.COUNTED)]
    for phone in (AMINA, BARAKA):
        stages.heard(phone)
    stages.text(OFFICER, f"CLEAR {CODE} Kijani COLD")
    assert stages.heard(AMINA) == [like(d.OVER, d.AFTER_COLD)]
    assert "RAIN" not in stages.text(OFFICER, f"CLEAR {CODE} Kijani")[0]
    assert stages.heard(AMINA) == [like(m.ALL_CLEAR, r.STAY_SAFE)]
    assert stages.heard(BARAKA) == [like(d.OVER, d.AFTER_COLD)]  # the rain did not concern it


def test_a_later_warning_of_others_does_not_hide_ones_own(stages: Valley) -> None:
    """The wind came last and did not concern who has not sown; her answer is to the rain."""
    warn(stages, "RAIN", "14-20")
    warn(stages, "WIND", "14-20")
    stages.heard(ZAWADI)
    assert stages.text(ZAWADI, "2") == [like(m.WARNING_HELP)]


# --- what waits -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("word", "waits"), [("COLD", True), ("HAIL", True), ("FLOOD", True), ("WIND", False)]
)
def test_sowing_waits_where_the_row_says_so(stages: Valley, word: str, waits: bool) -> None:
    """Zawadi's day to sow is 2 June."""
    warn(stages, word, "tomorrow 5-20")
    stages.heard(ZAWADI)
    stages.go("2 Jun 06:00")
    told = " ".join(stages.heard(ZAWADI))
    assert (d.SOW_WAITS.text in told) == waits
    stages.text(OFFICER, f"CLEAR {CODE} Kijani")
    stages.heard(ZAWADI)
    stages.go("3 Jun 06:00")
    assert (t.P_SOW.text[:12] in " ".join(stages.heard(ZAWADI))) == waits


def test_an_officers_word_of_any_language_is_his_and_no_farmers(stages: Valley) -> None:
    """Without a code it asks for one; a farmer's "cold" stays a farmer's."""
    assert stages.text(OFFICER, "BARIDI Kijani 18-8") == [like(o.NEED_CODE)]
    asked = stages.text(OFFICER, f"baridi {CODE} Kijani 18-8")
    assert asked == [like(d.ASK_WARN, *numbered(m.YES, m.NO))]
    stages.text(OFFICER, "2")
    assert like(o.NEED_CODE) != stages.text(AMINA, "cold")[0]


def test_hours_are_asked_for_with_the_officers_own_word(stages: Valley) -> None:
    said = stages.text(OFFICER, f"HAIL {CODE} Kijani")
    assert said == [like(d.NO_HOURS(village="Kijani", word="HAIL"))]
    said = stages.text(OFFICER, f"HAIL {CODE} Kijani 9/6 8-12")
    assert said == [like(d.TOO_FAR)]


# --- what it costs ----------------------------------------------------------------------------

LONGER = ("pests", "flood")  # nothing to be done alone; how to keep out of the water
LONG_HOURS = ("fil", "id", "sw")  # say the part of the day of each hour


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_warning_takes_one_segment(language: str) -> None:
    """To a phone with one bed in a village of six letters; what must be said longer, two."""
    village = Village(1, "Kijani", "Africa/Nairobi")
    begins = at("1 Jun 18:00")
    for danger in DANGERS.all:
        ends = begins + timedelta(days=6 if danger.by_days else 0, hours=10)
        draft = Draft((1,), begins, ends, begins, AlertCertainty.LIKELY, danger=danger.code)
        words = words_of(draft, village, NO_HEADLINE, begins - timedelta(hours=6))
        for stage in danger.stages if danger.code != RAIN else ():
            phone = InDanger(1, AMINA, None, language, True, ((stage, ("A",)),))
            price = cost(render_all(words.says(phone), open_catalogue(language)))
            most = 2 if danger.code in LONGER or language in LONG_HOURS else 1
            assert price.segments <= allowed(most, price.encoding), (danger.code, stage)
