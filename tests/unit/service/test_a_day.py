"""The day's text: one for each phone, at its own hour, from the plan as it is then."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.channel import Fate, Handover
from assistant.people import Village
from assistant.reminders.values import State
from assistant.wording import messages_cautions as h
from assistant.wording import messages_practice as p
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Listed
from tests.valley import (
    AMINA,
    BARAKA,
    LEASE,
    Row,
    Staged,
    Valley,
    at,
    day,
    like,
    play,
    settle,
)

YES_NO_DONE = t.ASK_DONE


def to_amina(valley: Valley) -> None:
    """Amina sows on 10 June; it is the evening before, and she has read all so far."""
    settle(valley)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 20:30")
    valley.heard(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


def states(valley: Valley, task: TaskCode) -> dict[str, State]:
    """Where a task of the first nursery stands, by day."""
    with valley.house.store.work() as work:
        found = work.reminders.of_nursery(1)
    return {f"{each.day:%-d %b}": each.state for each in found if each.task is task}


# --- one text a day ---------------------------------------------------------------------------


def test_the_text_of_the_day_comes_at_six_and_only_then(amina: Valley) -> None:
    """Not a minute sooner, and never twice."""
    amina.go("10 Jun 05:59")
    assert amina.heard(AMINA) == []
    amina.go("10 Jun 06:00")
    assert amina.heard(AMINA) == [like(t.HEAD(label="A", day=0), t.P_SOW, t.ASK_DONE)]
    for minute in range(1, 60):
        amina.leap(at("10 Jun 06:00") + timedelta(minutes=minute))
    assert amina.heard(AMINA) == []


def test_two_nurseries_of_a_phone_share_one_text(amina: Valley) -> None:
    """Two tasks to be answered: the text says how to name them."""
    amina.plan(AMINA, "10 June", area="1 acre")
    amina.heard(AMINA)
    amina.go("10 Jun 06:00")
    assert amina.heard(AMINA) == [
        like(t.HEAD(label="A", day=0), t.P_SOW, t.HEAD(label="B", day=0), t.P_SOW, ...)
    ]


def test_a_whole_season_is_one_text_a_day(amina: Valley) -> None:
    """And one second asking a day at most, for the days on which it matters."""
    amina.go("1 Jul 20:00")
    texts: dict[tuple[str, str], int] = {}
    with amina.house.store.work() as work:
        for text in work.outbox.of_phone(AMINA):
            key = (text.created_at.isoformat()[:10], text.kind)
            texts[key] = texts.get(key, 0) + 1
    prompts = {when: n for (when, kind), n in texts.items() if kind == "prompt"}
    second = sorted(when for when, kind in texts if kind == "second")
    assert set(prompts.values()) == {1}
    assert second == ["2026-06-15", "2026-06-26"]  # uncover on day 5, drain on day 16


def test_each_village_has_its_own_morning(valley: Valley, kijani: Village) -> None:
    """Six in Nairobi is nine in Dhaka (UTC+3 and UTC+6 all year, IANA tz database)."""
    valley.add_village("Sonar", "Asia/Dhaka")
    valley.enrol(AMINA, village=1)
    valley.enrol(BARAKA, village=3)
    for phone in (AMINA, BARAKA):
        valley.plan(phone, "10 June")
    valley.go("9 Jun 21:00")
    valley.heard(AMINA), valley.heard(BARAKA)
    valley.leap(at("10 Jun 05:59", "Asia/Dhaka"))
    assert valley.heard(BARAKA) == []
    valley.leap(at("10 Jun 06:00", "Asia/Dhaka"))
    assert len(valley.heard(BARAKA)) == 1
    assert valley.heard(AMINA) == []
    valley.leap(at("10 Jun 06:00"))
    assert len(valley.heard(AMINA)) == 1


def test_nothing_that_is_due_leaves_in_the_quiet_hours(amina: Valley) -> None:
    """A worker that wakes at 20:05 waits for the morning."""
    amina.leap("10 Jun 20:05")
    amina.leap("11 Jun 05:29")
    assert amina.heard(AMINA) == []
    amina.leap("11 Jun 06:00")
    assert len(amina.heard(AMINA)) == 1


# --- what is answered -------------------------------------------------------------------------

ANSWERS = {
    "done": [("10 Jun 08:00", AMINA, "done", [like(m.SOWN_NOTED)])],
    "one": [("10 Jun 08:00", AMINA, "1", [like(m.SOWN_NOTED)])],
    "not yet moves the plan by a day and asks then": [
        ("10 Jun 08:00", AMINA, "2", [like(m.SOW_LATER_NOTED)]),
        ("11 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=0), t.P_SOW, t.ASK_DONE)]),
        ("11 Jun 08:00", AMINA, "NOT YET", [like(m.SOW_LATER_NOTED)]),
        ("12 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=0), t.P_SOW, t.ASK_DONE)]),
        ("12 Jun 08:00", AMINA, "done", [like(m.SOWN_NOTED)]),
        ("13 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=1), t.P_WATER)]),
    ],
    "a tardy done counts for its day": [
        ("11 Jun 05:00", AMINA, "done", [like(m.SOWN_NOTED)]),
        ("11 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=1), t.P_WATER)]),
    ],
    "done yesterday, said after the day's text": [
        ("11 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_WATER, t.SOW_ASSUMED)]),
        ("11 Jun 07:00", AMINA, "done yesterday", [like(m.SOWN_NOTED)]),
        ("12 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=2), t.P_WATER)]),
    ],
    "sown two days ago, said two days later": [
        ("11 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_WATER, t.SOW_ASSUMED)]),
        ("12 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=2), t.P_WATER)]),
        ("12 Jun 07:00", AMINA, "done 2 days ago", [like(m.SOWN_NOTED)]),
    ],
    "nobody asked": [
        ("10 Jun 08:00", AMINA, "1", [like(m.SOWN_NOTED)]),
        ("10 Jun 08:01", AMINA, "done", [like(m.NOTHING_OPEN)]),
    ],
}


@pytest.mark.parametrize("rows", ANSWERS.values(), ids=ANSWERS.keys())
def test_the_day_of_sowing_is_answered(amina: Valley, rows: list[object]) -> None:
    """Row by row, from six in the morning of 10 June."""
    amina.go("10 Jun 06:00")
    amina.heard(AMINA)
    play(amina, tuple(rows))  # type: ignore[arg-type]


def test_an_early_riser_says_done_before_the_text_of_the_day(amina: Valley) -> None:
    """TODAY shows the work of the day from midnight on, so it can be answered from then on."""
    before = (
        ("10 Jun 05:00", AMINA, "today", [like(t.HEAD(label="A", day=0), t.P_SOW)]),
        ("10 Jun 05:01", AMINA, "done", [like(m.SOWN_NOTED)]),
        ("10 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=0), t.P_WATER)]),
        ("11 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=1), t.P_WATER)]),
    )
    play(amina, before)


def test_after_midnight_done_is_about_the_evening_before(amina: Valley) -> None:
    """What was asked and is open goes before what will be asked in the morning."""
    amina.go("10 Jun 08:00")
    amina.heard(AMINA)
    amina.text(AMINA, "done")
    amina.go("15 Jun 08:00")
    amina.heard(AMINA)
    amina.go("16 Jun 04:00")
    amina.heard(AMINA)  # the second asking of the afternoon
    after = (
        ("16 Jun 04:00", AMINA, "done", [like(m.DONE_NOTED)]),
        ("16 Jun 06:00", AMINA, "", [like(t.HEAD(label="A", day=6), t.P_KEEP_WATER)]),
    )
    play(amina, after)
    assert states(amina, TaskCode.UNCOVER_FLOOD)["15 Jun"] is State.DONE


def test_the_season_follows_the_real_day_of_sowing(amina: Valley) -> None:
    """Sown two days late, uncovered two days later."""
    amina.go("10 Jun 06:00")
    for sends in ("2", "2", "1"):
        amina.text(AMINA, sends)
        amina.go(amina.now + timedelta(days=1))
    amina.go("17 Jun 05:00")
    amina.heard(AMINA)
    amina.go("17 Jun 06:00")
    assert amina.heard(AMINA) == [
        like(t.HEAD(label="A", day=5), t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)
    ]


def test_shoots_that_are_not_up_are_looked_at_again_tomorrow(amina: Valley) -> None:
    """Not up on day 5: covered and moist until they are; then pale for some days."""
    amina.go("10 Jun 08:00")
    amina.heard(AMINA)
    amina.text(AMINA, "done")
    amina.go("15 Jun 08:00")
    amina.heard(AMINA)
    again = [like(t.HEAD(label="A", day=6), t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)]
    rows = (
        ("15 Jun 08:00", AMINA, "2", [like(m.NOT_UP_NOTED(label="A", date=day("16 Jun")))]),
        ("16 Jun 06:00", AMINA, "", again),
        ("16 Jun 08:00", AMINA, "1", [like(m.DONE_NOTED)]),
        ("17 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_KEEP_WATER)]),
        ("18 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_KEEP_WATER)]),
        ("19 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_KEEP_WATER, t.P_COLOUR, t.ASK_COLOUR)]),
    )
    play(amina, rows)


def test_done_with_two_nurseries_open_asks_which(amina: Valley) -> None:
    """And takes the name with it, or after it."""
    amina.plan(AMINA, "10 June", area="1 acre")
    amina.go("10 Jun 08:00")
    amina.heard(AMINA)
    which = like(m.WHICH_TASK, ...)
    assert amina.text(AMINA, "DONE") == [which]
    assert amina.text(AMINA, "B") == [like(m.SOWN_NOTED(**sown("B")))]
    assert amina.text(AMINA, "DONE A") == [like(m.SOWN_NOTED(**sown("A")))]


def sown(label: str) -> dict[str, Any]:
    """The slots of what is said after sowing on 10 June."""
    return {"label": label, "sow": day("10 Jun"), "uncover": day("15 Jun")}


def test_done_b_takes_only_that_one(amina: Valley) -> None:
    """The other one stays open."""
    amina.plan(AMINA, "10 June", area="1 acre")
    amina.go("10 Jun 08:00")
    amina.heard(AMINA)
    assert amina.text(AMINA, "done B") == [like(m.SOWN_NOTED(**sown("B")))]
    assert states(amina, TaskCode.SOW)["10 Jun"] is State.SENT
    assert amina.text(AMINA, "1") == [like(m.SOWN_NOTED(**sown("A")))]


def test_leaves_are_counted_and_the_transplanting_day_chosen(amina: Valley) -> None:
    """The bed is drained two days before the day she chose."""
    amina.go("10 Jun 08:00")
    amina.text(AMINA, "done")
    amina.go("22 Jun 08:00")
    amina.heard(AMINA)
    rows = (
        ("22 Jun 08:00", AMINA, "3", [like(m.LEAVES_READY, m.ASK_TRANSPLANTING)]),
        ("22 Jun 08:01", AMINA, "27 June", [like(m.TRANSPLANT_SET)]),
        ("23 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_KEEP_WATER)]),
        ("24 Jun 06:00", AMINA, "", [like(t.HEAD, t.P_KEEP_WATER)]),
        (
            "25 Jun 06:00",
            AMINA,
            "",
            [like(t.HEAD, t.P_FIELD_LEVEL, t.P_DRAIN_BED, t.P_WINDOW, t.ASK_DONE)],
        ),
    )
    play(amina, rows)


def test_land_is_no_leaves(amina: Valley) -> None:
    """A plan of another field is half finished when the leaves are asked about."""
    amina.go("10 Jun 08:00")
    amina.text(AMINA, "done")
    amina.go("21 Jun 08:00")
    amina.text(AMINA, "NEW")
    amina.go("22 Jun 08:00")
    amina.heard(AMINA)
    assert amina.text(AMINA, "2 acres") == [like(m.ASK_GERMINATION)]
    assert states(amina, TaskCode.LEAF_COUNT)["22 Jun"] is State.SENT


# --- silence ----------------------------------------------------------------------------------


def test_an_unconfirmed_sowing_is_assumed_said_and_marked(amina: Valley) -> None:
    """The officer sees it; the farmer can put it right."""
    amina.go("11 Jun 06:00")
    assert amina.heard(AMINA)[-1] == like(t.HEAD, t.P_WATER, t.SOW_ASSUMED)
    assert states(amina, TaskCode.SOW) == {"10 Jun": State.UNANSWERED}
    amina.go("12 Jun 06:00")
    assert amina.heard(AMINA) == [like(t.HEAD(label="A", day=2), t.P_WATER)]


def test_an_unconfirmed_uncovering_is_asked_once_more_and_then_the_officers(
    amina: Valley,
) -> None:
    """At four in the afternoon, once."""
    amina.go("10 Jun 08:00")
    amina.text(AMINA, "done")
    amina.go("15 Jun 15:59")
    amina.heard(AMINA)
    again = like(t.SECOND_ASKING(label="A", what=t.N_UNCOVER()), t.ASK_UP)
    rows: tuple[Row, ...] = (
        ("15 Jun 16:00", AMINA, "", [again]),
        ("15 Jun 19:59", AMINA, "", []),
        ("16 Jun 06:00", AMINA, "", [like(t.HEAD, p.P_KEEP_UNSURE)]),
    )
    play(amina, rows)
    assert states(amina, TaskCode.UNCOVER_FLOOD) == {"15 Jun": State.UNANSWERED}


def test_the_second_asking_is_answered_like_the_first(amina: Valley) -> None:
    """Its digits are the last that reached the phone."""
    amina.go("15 Jun 16:00")
    amina.heard(AMINA)
    assert amina.text(AMINA, "1") == [like(m.DONE_NOTED)]
    assert states(amina, TaskCode.UNCOVER_FLOOD) == {"15 Jun": State.DONE}


def test_an_answer_before_the_afternoon_spares_the_second_asking(amina: Valley) -> None:
    """She said so in the morning."""
    amina.go("15 Jun 07:00")
    amina.heard(AMINA)
    amina.text(AMINA, "1")
    amina.go("15 Jun 19:00")
    assert amina.heard(AMINA) == []


# --- joining late, moving the plan ------------------------------------------------------------


def test_who_joins_after_sowing_hears_nothing_of_days_gone_by(
    valley: Valley, kijani: Village
) -> None:
    """On day 3 there is water and the rain to think of."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "29 May")
    valley.go("1 Jun 09:00")
    assert valley.heard(AMINA) == [like(t.HEAD(label="A", day=3), t.P_WATER)]
    valley.go("2 Jun 06:00")
    assert len(valley.heard(AMINA)) == 1


def test_a_sowing_too_near_to_soak_for_is_said_to_be(valley: Valley, kijani: Village) -> None:
    """Dates already past are said so, never shifted."""
    valley.enrol(AMINA)
    texts = valley.plan(AMINA, "2 June")
    assert texts == [like(m.PLANNED, m.DATES_PAST, t.DUE_BEFORE)]
    texts = valley.sow(AMINA, "2 May")
    assert texts == [like(m.PLANNED, m.PAST_WINDOW)]


def test_a_plan_moved_while_its_text_waits_is_worded_anew(amina: Valley) -> None:
    """The operator is down at six; by USSD the sowing is moved; at eight it is up."""
    amina.operator.down = True
    amina.go("10 Jun 06:00")
    amina.dial(AMINA)
    for key in ("CHANGE DATE", "1", "9 June", "1"):
        amina.key(AMINA, key)
    amina.operator.down = False
    amina.go("10 Jun 08:00")
    prompts = [text for text in amina.heard(AMINA) if text.startswith("A day")]
    assert prompts == [like(t.HEAD(label="A", day=1), t.P_WATER)]


# --- the operator -----------------------------------------------------------------------------


def test_an_operator_that_is_down_is_asked_again_later_each_time(amina: Valley) -> None:
    """Half a minute, then twice as long each time, a quarter of an hour at most."""
    amina.operator.down = True
    amina.leap("10 Jun 06:00")
    tries = []
    while amina.now < at("10 Jun 07:30"):
        before = len(amina.operator.offered)
        amina.leap(amina.now + timedelta(seconds=30))
        if len(amina.operator.offered) > before:
            tries.append((amina.now - at("10 Jun 06:00")).total_seconds() / 60)
    waits = [b - a for a, b in zip([0.0, *tries], tries, strict=False)]
    assert waits == [0.5, 1, 2, 4, 8, 15, 15, 15, 15]


def test_an_operator_that_does_not_answer_is_not_given_the_whole_batch(amina: Valley) -> None:
    """A hundred texts of ten seconds each would hold up a rain warning for a quarter of an
    hour; one silence is enough to know."""
    amina.enrol(BARAKA)
    amina.plan(BARAKA, "10 June")
    amina.operator.answers = [Handover(Fate.TRY_LATER, "no answer", answered=False)]
    amina.leap("10 Jun 06:00")
    assert [text.phone for text in amina.operator.offered[-1:]] == [AMINA]
    amina.heard(BARAKA)
    amina.leap("10 Jun 06:01")
    assert [len(amina.heard(AMINA)), len(amina.heard(BARAKA))] == [1, 1]


def test_a_text_that_is_put_off_keeps_its_id(amina: Valley) -> None:
    """So that the operator can drop a repeat."""
    amina.operator.answers = [Handover(Fate.TRY_LATER), Handover(Fate.TRY_LATER)]
    amina.go("10 Jun 06:00")
    amina.leap("10 Jun 06:10")
    amina.leap("10 Jun 06:20")
    ids = [text.message_id for text in amina.operator.offered[-3:]]
    assert len(set(ids)) == 1
    assert len(amina.heard(AMINA)) == 1


def test_a_crash_between_hand_over_and_record_sends_the_same_id_again(amina: Valley) -> None:
    """The lease runs out, and the operator drops the repeat."""
    amina.operator.receipts = False
    crash = RuntimeError("the power failed")
    send = amina.operator.send

    def lost_answer(outgoing: object, now: object) -> Handover:
        send(outgoing, now)  # type: ignore[arg-type]
        raise crash

    amina.operator.send = lost_answer  # type: ignore[method-assign]
    with pytest.raises(RuntimeError, match="the power failed"):
        amina.leap("10 Jun 06:00")
    amina.operator.send = send  # type: ignore[method-assign]
    amina.leap(amina.now + LEASE / 2)
    assert len(amina.operator.offered[-1:]) == 1
    offered = len(amina.operator.offered)
    amina.leap(amina.now + LEASE)
    assert len(amina.operator.offered) == offered + 1
    last, again = amina.operator.offered[-2:]
    assert replace(last) == again
    assert len(amina.heard(AMINA)) == 1


def test_a_plan_made_late_says_what_was_due_before(valley: Valley, kijani: Village) -> None:
    """Sown in two days: nothing was collected or mixed, no field ploughed; soaking is today."""
    valley.enrol(AMINA)
    planned = valley.plan(AMINA, "3 June")
    what = Listed((t.N_COLLECT(), t.N_FIELD_PLOUGH(), t.N_MIX()))
    assert planned == [like(m.PLANNED, t.DUE_BEFORE(label="A", tasks=what))]
    assert t.DUE_BEFORE.text[:20] not in valley.text(AMINA, "when")[-1]
