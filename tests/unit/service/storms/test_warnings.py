"""Rain warnings beyond the first text: limits, the silent, calling back, the trail."""

from dataclasses import replace

import pytest

from assistant.channel import Fate, Handover
from assistant.dialogue.officer import more_words
from assistant.service.dispatch import dispatch
from assistant.service.storms import drafts
from assistant.service.storms.warnings import ask_silent, call_back
from assistant.store import AlertCertainty, Draft, Progress
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    KIJANI,
    LEASE,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    at,
    like,
    numbered,
    settle,
)


def to_three_beds(valley: Valley) -> None:
    """Amina, Baraka and Zawadi of Kijani sowed two days ago; it is nine on 1 June."""
    settle(valley)
    valley.add_officer(KIJANI)
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.enrol(phone)
        valley.sow(phone, "30 May")
    valley.go("1 Jun 09:00")
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.heard(phone)


@pytest.fixture
def beds(staged: Staged) -> Valley:
    return staged(to_three_beds)


def warn(valley: Valley, hours: str = "14-20") -> None:
    """By text, confirmed; what goes out waits in the outbox."""
    valley.text(OFFICER, f"RAIN {CODE} Kijani {hours}")
    valley.post(OFFICER, "1")


def again(valley: Valley, warning_id: int = 1) -> int:
    with valley.house.store.work() as work:
        return ask_silent(work, valley.house, warning_id, valley.now, officer_id=1)


def recall(valley: Valley, warning_id: int = 1) -> tuple[int, int] | None:
    with valley.house.store.work() as work:
        return call_back(work, valley.house, warning_id, valley.now, officer_id=1)


# --- limits, by text --------------------------------------------------------------------------

REFUSED = {
    "RAIN {code} Kijani 5/6 8-12": r.TOO_FAR,
    "RAIN {code} Kijani 2 September 14-20": r.TOO_FAR,  # a month mistyped
    "RAIN {code} Kijani 1/5 14-20": o.HOURS_PAST,
}


@pytest.mark.parametrize("sends", REFUSED, ids=str)
def test_a_warning_with_a_wrong_month_is_not_given(beds: Valley, sends: str) -> None:
    """It would hold up the uncovering until then."""
    assert beds.text(OFFICER, sends.format(code=CODE)) == [like(REFUSED[sends])]
    assert beds.text(OFFICER, "1") != [like(o.WARNED)]
    with beds.house.store.look() as work:
        assert work.warnings.standing(KIJANI.id, beds.now) == ()


def test_three_days_ahead_can_be_warned_of(beds: Valley) -> None:
    """The last day that can be foreseen."""
    warn(beds, "4/6 8-12")
    beds.send()
    assert beds.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]


def test_a_yes_that_comes_when_the_rain_is_over_warns_of_nothing(beds: Valley) -> None:
    """The officer was shown the hours at nine and answers at noon."""
    beds.text(OFFICER, f"RAIN {CODE} Kijani 9-11")
    beds.go("1 Jun 12:00")
    assert beds.text(OFFICER, "1") == [like(o.OFFICER_HELP, more_words("en"))]
    assert beds.heard(AMINA) == []


def test_an_all_clear_for_nearly_a_village_is_asked_back(beds: Valley) -> None:
    """A warning is shown back with the village's right name before it goes; an all-clear goes
    at once, so it takes the right name only."""
    shown = beds.text(OFFICER, f"RAIN {CODE} kijan 14-20")
    assert shown[0].startswith("Warn Kijani: ")
    beds.text(OFFICER, "1")
    nearly = like(r.NEARLY(village="Kijani", example="CLEAR"))
    assert beds.text(OFFICER, f"CLEAR {CODE} kijan") == [nearly]
    assert beds.text(OFFICER, f"CLEAR {CODE} KIJANI") == [like(o.CLEARED(village="Kijani"))]


@pytest.mark.parametrize("loud", [True, False])
def test_at_night_warnings_and_all_clears_leave_at_once(beds: Valley, loud: bool) -> None:
    """Whatever a setting says of other urgent words."""
    beds.house = replace(beds.house, urgent_breaks_quiet=loud)
    beds.go("1 Jun 22:00")
    beds.heard(AMINA)
    warn(beds, "23-4")
    beds.send()
    assert beds.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]
    cleared = like(o.CLEARED(village="Kijani"))
    assert beds.text(OFFICER, f"CLEAR {CODE} Kijani")[-1:] == [cleared]
    assert beds.heard(AMINA) == [like(m.ALL_CLEAR, r.STAY_SAFE)]


def test_a_warning_and_its_all_clear_by_text_stand_in_the_trail(beds: Valley) -> None:
    """With the officer and the village."""
    warn(beds)
    beds.text(OFFICER, f"CLEAR {CODE} Kijani")
    with beds.house.store.look() as work:
        lines = [(each.act, each.officer, each.village) for each in work.audit.latest(2)]
    assert lines == [("warning_cleared", "Asha", "Kijani"), ("warned", "Asha", "Kijani")]


def test_who_has_not_agreed_to_texts_is_not_warned_by_one(beds: Valley) -> None:
    """An office enrolled her; she has yet to say yes."""
    with beds.house.store.work() as work:
        amina = work.people.farmer(AMINA)
        assert amina is not None
        work.people.save_farmer(replace(amina, consent_at=None))
    assert "Phones: 2." in beds.text(OFFICER, f"RAIN {CODE} Kijani 14-20")[0]


# --- answers ----------------------------------------------------------------------------------

TO_A_WARNING_ON_ITS_WAY = {
    "not yet": like(m.WARNING_STANDS, *numbered(m.W_COVERED, m.W_HELP)),
    "done": like(m.WARNING_STANDS, *numbered(m.W_COVERED, m.W_HELP)),
    "1": like(m.WARNING_COVERED),
    "we have covered it": like(m.WARNING_COVERED),
    "not covered": like(m.WARNING_STANDS, *numbered(m.W_COVERED, m.W_HELP)),
}


@pytest.mark.parametrize("words", TO_A_WARNING_ON_ITS_WAY)
def test_a_reply_to_a_warning_of_which_no_receipt_tells_is_no_reply_to_nothing(
    beds: Valley, words: str
) -> None:
    """Her other texts were receipted; this one's comes an hour late. "Done" may be about the
    sowing that she told before, so that nothing is noted by it; the two answers are asked."""
    beds.go("2 Jun 06:00")
    assert beds.text(AMINA, "done")
    beds.operator.receipts = False
    warn(beds)
    beds.send()
    assert beds.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]
    assert beds.text(AMINA, words) == [TO_A_WARNING_ON_ITS_WAY[words]]


# --- the second text --------------------------------------------------------------------------


def test_only_the_silent_are_asked_again_and_once(beds: Valley) -> None:
    """Amina has covered, Baraka needs help; Zawadi is silent."""
    warn(beds)
    beds.send()
    beds.text(AMINA, "1"), beds.text(BARAKA, "2"), beds.heard(ZAWADI)
    beds.go("1 Jun 12:00")
    assert (again(beds), again(beds)) == (1, 0)
    beds.send()
    assert beds.heard(ZAWADI) == [like(r.WARNING_AGAIN)]
    assert beds.heard(AMINA) == beds.heard(BARAKA) == []
    assert beds.text(ZAWADI, "1") == [like(m.WARNING_COVERED)]
    with beds.house.store.look() as work:
        assert work.warnings.tally(1) == (3, 3, 2, 1)


def test_who_has_not_had_the_first_text_is_not_asked_again(beds: Valley) -> None:
    """The operator has been down since."""
    beds.operator.down = True
    warn(beds)
    beds.send()
    assert again(beds) == 0


def test_nobody_is_asked_again_when_the_rain_is_over(beds: Valley) -> None:
    """There is nothing to cover."""
    warn(beds)
    beds.send()
    beds.go("1 Jun 20:00")
    assert again(beds) == 0


# --- calling back -----------------------------------------------------------------------------


def test_a_warning_called_back_leaves_no_more_and_is_corrected_where_it_is(
    beds: Valley,
) -> None:
    """One text was out when the officer saw the mistake."""
    warn(beds)
    dispatch(beds.house, beds.operator, beds.now, limit=1, lease=LEASE)
    told = [phone for phone in (AMINA, BARAKA, ZAWADI) if beds.heard(phone)]
    assert len(told) == 1
    assert recall(beds) == (2, 1)
    assert recall(beds) is None
    beds.go("1 Jun 21:00")
    for phone in (AMINA, BARAKA, ZAWADI):
        corrected = [like(r.RECALLED)] if phone in told else []
        assert beds.heard(phone) == corrected
    with beds.house.store.look() as work:
        assert work.warnings.standing(KIJANI.id, beds.now) == ()
        assert work.sending.progress([1]) == Progress(received=1, taken_back=2)
        assert work.audit.latest(1)[0].act == "warning_recalled"


def test_a_text_that_a_dispatcher_has_is_let_go_when_it_is_called_back(beds: Valley) -> None:
    """A batch takes a while; the texts at its end are looked at before they leave."""
    warn(beds)
    send = beds.operator.send

    def recalled_meanwhile(outgoing: object, now: object) -> Handover:
        beds.operator.send = send  # type: ignore[method-assign]
        handover = send(outgoing, now)  # type: ignore[arg-type]
        recall(beds)
        return handover

    with beds.house.store.work() as work:  # the officer's own text is out of the way
        work.outbox.withdraw(beds.now, phone=OFFICER)
    beds.operator.send = recalled_meanwhile  # type: ignore[method-assign]
    dispatch(beds.house, beds.operator, beds.now, limit=100, lease=LEASE)
    warned = [phone for phone in (AMINA, BARAKA, ZAWADI) if beds.heard(phone)]
    assert len(warned) == 1
    with beds.house.store.look() as work:
        assert work.sending.progress([1]) == Progress(sent=1, taken_back=2)


def test_a_text_put_off_by_the_operator_is_not_tried_again_after_the_recall(
    beds: Valley,
) -> None:
    """It was in the dispatcher's hands when the warning was called back."""
    warn(beds)
    with beds.house.store.work() as work:
        claimed = work.outbox.claim(beds.now, 100, LEASE)
    assert recall(beds) == (0, 3)
    with beds.house.store.work() as work:
        for text in claimed:
            work.outbox.record(text.message_id, Fate.TRY_LATER, beds.now)
    beds.go("1 Jun 12:00")
    for phone in (AMINA, BARAKA, ZAWADI):
        assert beds.heard(phone) == [like(r.RECALLED)]


def test_where_another_warning_stands_calling_one_back_corrects_nobody(beds: Valley) -> None:
    """Rain is to come all the same."""
    warn(beds)
    warn(beds, "14-22")
    beds.send()
    beds.heard(AMINA)
    assert recall(beds) == (0, 0)
    beds.go("1 Jun 10:00")
    assert beds.heard(AMINA) == []


def test_an_all_clear_goes_to_none_who_never_heard_of_the_warning(beds: Valley) -> None:
    """Their texts were still here."""
    warn(beds)
    dispatch(beds.house, beds.operator, beds.now, limit=1, lease=LEASE)
    told = [phone for phone in (AMINA, BARAKA, ZAWADI) if beds.heard(phone)]
    beds.text(OFFICER, f"CLEAR {CODE} Kijani")
    for phone in (AMINA, BARAKA, ZAWADI):
        heard = [like(m.ALL_CLEAR, r.STAY_SAFE)] if phone in told else []
        assert beds.heard(phone) == heard


def test_who_stopped_all_texts_gets_no_correction(beds: Valley) -> None:
    """STOP is stop."""
    warn(beds)
    beds.send()
    beds.text(AMINA, "STOP")
    assert recall(beds) == (0, 2)


# --- words ------------------------------------------------------------------------------------


def _warned_by(valley: Valley, **given: object) -> list[str]:
    wanted = Draft((KIJANI.id,), at("1 Jun 14:00"), at("1 Jun 20:00"), created_at=valley.now)
    with valley.house.store.work() as work:
        made = drafts.draft(work, replace(wanted, **given))  # type: ignore[arg-type]
        assert drafts.send(work, valley.house, made.id, valley.now)
    valley.send()
    return valley.heard(AMINA)


@pytest.mark.parametrize(
    ("certainty", "line"),
    [
        (AlertCertainty.OBSERVED, r.SURE_OBSERVED),
        (AlertCertainty.LIKELY, r.SURE_LIKELY),
        (AlertCertainty.POSSIBLE, r.SURE_POSSIBLE),
        (AlertCertainty.UNLIKELY, r.SURE_POSSIBLE),
    ],
)
def test_the_text_says_how_sure_it_is(
    beds: Valley, certainty: AlertCertainty, line: object
) -> None:
    """In a line of its own."""
    assert _warned_by(beds, certainty=certainty) == [like(m.WARNING, line, r.COVERED_OR_HELP)]  # type: ignore[arg-type]


def test_an_officers_words_are_data(beds: Valley) -> None:
    """Whatever signs stand in them."""
    words = "100% {village} %s {0} rise"
    added = like(m.WARNING, r.OFFICER_ADDS(words=words), r.COVERED_OR_HELP)
    assert _warned_by(beds, words=words) == [added]


def test_rain_over_more_than_a_day_names_both_days(beds: Valley) -> None:
    """From Monday 14:00 to Wednesday 06:00."""
    (text,) = _warned_by(beds, ends_at=at("3 Jun 06:00"))
    assert "heavy rain from Mon 1 Jun 2 pm to Wed 3 Jun 6 am." in text


def test_every_text_of_a_warning_puts_people_first() -> None:
    """Covering a bed is worth no life: common practice, no source for the wording."""
    sent = (
        m.WARNING,
        m.WARNING_WAIT,
        r.WARNING_DAYS,
        r.WARNING_WAIT_DAYS,
        r.WARNING_AGAIN,
        r.STAY_SAFE,
        m.WARNING_STANDS,
    )
    for message in sent:
        words = message.text.casefold()
        assert "people first" in words or "keep people safe" in words, message.text
