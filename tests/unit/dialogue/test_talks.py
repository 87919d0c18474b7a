"""Sign-up, plan, corrections and going back, as a farmer types them."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.alphabet import cost
from assistant.dialogue import values as v
from assistant.wording import messages_care as c
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Say
from tests.talk import TODAY, Phone, nursery
from tests.valley import Like, like, numbered

YES_NO = numbered(m.YES, m.NO)
LANGUAGES = like(m.ASK_LANGUAGE, *numbered("English", "Kiswahili"))
VILLAGES = like(m.ASK_VILLAGE, *numbered("Kijani", "Mto Mwanga", m.OTHER_VILLAGE))
CONSENT = like(m.ASK_CONSENT, *YES_NO)
AREA, GERMINATION = like(m.ASK_AREA), like(m.ASK_GERMINATION)
PAIL, SOWING = like(m.ASK_PAIL, ...), like(m.ASK_SOWING)
UNTESTED = like(m.UNTESTED, *numbered(m.PLAN_AT_80, m.EXPLAIN_TEST))
SOWN = like(m.SOWN_THAT_DAY, *YES_NO)
MENU = like(m.ASK_MENU, ...)
NEXT = ("next", [like(m.RESULT_SEED, s.NEXT_HINT)])
PAGES = (
    NEXT,
    ("next", [like(m.RESULT_MIX, s.NEXT_HINT)]),
    ("next", [like(m.RESULT_DATES, c.DAYS_WARM, s.NEXT_HINT)]),
    ("next", [like(s.GROUND, s.NEXT_HINT)]),
)


def check(area: str, percent: float, litres: float, sowing: date) -> Like:
    """What was understood, shown back."""
    said: Say = m.CHECK(area=area, percent=percent, litres=litres, date=sowing)
    return like(said, *numbered(m.YES, m.CHANGE_IT))


TENTH = date(2026, 6, 10)
SIGNED_UP = (
    ("hello", [LANGUAGES]),
    ("1", [VILLAGES]),
    ("2", [CONSENT]),
)

# farmer: what she sends, and all the texts that she hears
TALKS = {
    "a farmer signs up by digits and plans": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("85", [PAIL]),
        ("10", [SOWING]),
        ("10 June", [check("0.4 ha", 85, 10, TENTH)]),
        ("1", [like(m.PLANNED)]),
        *PAGES,
    ),
    "she names her village and language in words": (
        ("hi", [LANGUAGES]),
        ("english", [VILLAGES]),
        ("kijani", [CONSENT]),
        ("yes", [like(m.ENROLLED, m.ASK_AREA)]),
    ),
    "she names her language as another language calls it": (
        ("hi", [LANGUAGES]),
        ("anglais", [VILLAGES]),
    ),
    "who does not agree is asked again only when they text again": (
        *SIGNED_UP,
        ("2", [like(m.NO_CONSENT)]),
        ("START", [LANGUAGES]),
    ),
    "she goes back over sign-up": (
        *SIGNED_UP,
        ("0", [VILLAGES]),
        ("back", [LANGUAGES]),
        ("1", [VILLAGES]),
    ),
    "she starts sign-up over": (
        *SIGNED_UP,
        ("START OVER", [LANGUAGES]),
    ),
    "three answers in one text are taken together": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha, 85%, 10 June", [PAIL]),
        ("2", [check("0.4 ha", 85, 15, TENTH)]),
    ),
    "seed that nobody tested is planned on an assumption, and said so": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("NO", [UNTESTED]),
        ("1", [PAIL]),
        ("1", [SOWING]),
        ("10 June", [check("0.4 ha", 80, 10, TENTH)]),
        ("1", [like(m.PLANNED, m.ASSUMED_80)]),
    ),
    "seed under 60 is not to be sown": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("40", [like(m.DO_NOT_SOW(percent=40))]),
        ("85", [PAIL]),
    ),
    "weak seed is planned and called weak": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("70", [PAIL]),
        ("1", [SOWING]),
        ("10 June", [check("0.4 ha", 70, 10, TENTH)]),
        ("1", [like(m.PLANNED, m.WEAK_SEED(percent=70))]),
    ),
    "a likely answer is asked back, and no means the question again": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("85", [PAIL]),
        ("1", [SOWING]),
        ("12", [like(m.CONFIRM_READING, *YES_NO)]),
        ("2", [SOWING]),
        ("10 June", [check("0.4 ha", 85, 10, TENTH)]),
    ),
    "an earlier answer is put right in the middle of the next question": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("no, 2 acres", [like(m.CORRECTED(reading="2 acres"), m.ASK_GERMINATION)]),
        ("85", [PAIL]),
        ("10", [SOWING]),
        ("10 June", [check("2 acres", 85, 10, TENTH)]),
        ("1 acre", [like(m.CORRECTED(reading="1 acre"), ...)]),
        ("1", [like(m.PLANNED)]),
    ),
    "half, where a pail is asked for, puts no germination right": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha 85%", [PAIL]),
        ("half", [like(m.AGAIN_LITRES, ...)]),
        ("1", [SOWING]),
        ("10 June", [check("0.4 ha", 85, 10, TENTH)]),
    ),
    "a day, where germination is asked for, is not taken for untested seed": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("tomorrow", [like(m.AGAIN_GERMINATION)]),
        ("85", [PAIL]),
    ),
    "a day that comes before its question is kept for it": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("10 June", [like(m.NOTED_EARLY(reading="Wednesday, 10 June 2026"), m.ASK_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("85", [PAIL]),
        ("1", [check("0.4 ha", 85, 10, TENTH)]),
    ),
    "so is germination, also where it is hopeless": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("40%", [like(m.NOTED_EARLY(reading="40%"), m.ASK_AREA)]),
        ("0.4 ha", [like(m.DO_NOT_SOW(percent=40))]),
        ("85%", [PAIL]),
    ),
    "she changes the pail at the end": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha, 85%, 10 June", [PAIL]),
        ("2", [check("0.4 ha", 85, 15, TENTH)]),
        ("2", [like(m.WHAT_TO_CHANGE, ...)]),
        ("3", [PAIL]),
        ("20", [check("0.4 ha", 85, 20, TENTH)]),
    ),
    "a past day is asked about before it is taken": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha, 85%, 28 May", [PAIL]),
        ("1", [SOWN]),
        ("1", [check("0.4 ha", 85, 10, date(2026, 5, 28))]),
        ("1", [like(m.PLANNED)]),
    ),
    "who has not sown on that day gives another": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("0.4 ha, 85%, 28 May", [PAIL]),
        ("1", [SOWN]),
        ("2", [SOWING]),
        ("10 June", [check("0.4 ha", 85, 10, TENTH)]),
    ),
    "absurd numbers are asked again": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("5000 ha", [like(m.ABSURD_AREA)]),
        ("0.4 ha", [GERMINATION]),
        ("140", [like(m.AGAIN_GERMINATION)]),
        ("85", [PAIL]),
        ("0.001", [like(m.AGAIN_LITRES, ...)]),
        ("10", [SOWING]),
        ("31 June", [like(m.AGAIN_IMPOSSIBLE)]),
        ("10 June", [check("0.4 ha", 85, 10, TENTH)]),
    ),
    "what nearly says STOP is asked, never done and never passed over": (
        *SIGNED_UP,
        ("1", [like(m.ENROLLED, m.ASK_AREA)]),
        ("stpo", [like(m.CONFIRM_READING(reading="stop"), *YES_NO)]),
        ("2", [like(m.KEPT_OPEN), like(m.KEPT_SO_FAR, m.ASK_AREA)]),
        ("stpo", [like(m.CONFIRM_READING(reading="stop"), *YES_NO)]),
        ("1", [like(m.STOPPED)]),
    ),
    "the language changes in the middle of sign-up and nothing is lost": (
        *SIGNED_UP,
        ("kiswahili", [like(m.ASK_CONSENT, *YES_NO, language="sw")]),
    ),
}


@pytest.mark.parametrize("rows", TALKS.values(), ids=TALKS.keys())
def test_a_talk(rows: tuple[tuple[str, list[Like]], ...]) -> None:
    """Each row of the talk is answered with exactly these texts."""
    phone = Phone.new()
    for sends, hears in rows:
        assert phone.hears(sends) == hears, sends


def opened(phone: Phone) -> v.SaveNursery:
    """The nursery that the last text opened."""
    (change,) = phone.changes
    assert isinstance(change, v.SaveNursery)
    return change


def talk(*texts: str, phone: Phone | None = None) -> Phone:
    """A phone after these texts."""
    phone = phone or Phone.enrolled()
    for text in texts:
        phone.says(text)
    return phone


def test_what_was_said_is_what_is_opened() -> None:
    """The area as it was typed, the numbers exact."""
    phone = talk("NEW", "1 acre", "85", "2", "10 June", "1")
    kept = opened(phone).nursery
    assert kept == replace(
        nursery(),
        id=0,
        area_typed="1 acre",
        inputs=replace(nursery().inputs, field_area_m2=4046.8564224, pail_litres=15.0),
    )


def test_change_date_takes_the_nursery_that_it_names() -> None:
    """With two nurseries "CHANGE DATE B" needs no question which."""
    two = (nursery("A"), replace(nursery("B"), name="Riverside"))
    for words in ("CHANGE DATE B", "change date riverside"):
        phone = Phone.enrolled(*two)
        assert phone.hears(words) == [like(m.ASK_WHICH_DATE, ...)], words
    assert Phone.enrolled(*two).hears("CHANGE DATE") == [like(m.ASK_NURSERY, ...)]


def test_a_sowing_day_put_right_to_a_coming_one_is_not_kept_as_sown() -> None:
    """She said yes to "did you sow on 28 May?" and then meant 10 June."""
    phone = talk("NEW", "1 acre", "85", "1", "28 May", "1", "10 June", "1")
    assert not opened(phone).nursery.sown
    assert opened(phone).nursery.sow_date == TENTH


def test_a_sowing_day_changed_to_another_past_one_is_asked_about_again() -> None:
    """A yes belongs to its day."""
    phone = talk("NEW", "1 acre", "85", "1", "28 May", "1", "2", "4")
    assert phone.hears("30 May") == [SOWN]


def test_germination_put_right_to_hopeless_seed_is_not_planned() -> None:
    """A correction goes the way of its value."""
    phone = talk("NEW", "1 acre", "85", "1", "10 June")
    assert phone.hears("40%") == [like(m.CORRECTED(reading="40%"), m.DO_NOT_SOW(percent=40))]


def test_a_half_finished_plan_waits_behind_the_menu_and_comes_back() -> None:
    """Today's work in between loses nothing."""
    phone = Phone.enrolled(nursery())
    talk("NEW", "1 acre", "MENU", phone=phone)
    texts = phone.hears("1")
    assert texts[-1] == like(m.KEPT_SO_FAR, m.ASK_GERMINATION)
    assert phone.hears("85") == [PAIL]


def test_back_forgets_one_answer_and_keeps_the_others() -> None:
    """Back at the first question of a plan is the menu."""
    phone = talk("NEW", "1 acre", "85")
    assert phone.hears("back") == [GERMINATION]
    assert phone.hears("back") == [AREA]
    assert phone.hears("back") == [MENU]


def test_a_plan_of_an_earlier_release_starts_over_and_keeps_its_answers() -> None:
    """What was answered is passed over; the next question is asked."""
    phone = talk("NEW", "1 acre", "85")
    assert phone.known.session is not None
    old = replace(phone.known.session, version=0, step="gone")
    phone.known = replace(phone.known, session=old)
    assert phone.hears("2") == [SOWING]


def test_a_talk_that_no_release_knows_ends_quietly() -> None:
    """There is nothing to go on with."""
    phone = Phone.enrolled(nursery())
    phone.known = replace(phone.known, session=v.Session("gone", 1, "gone"))
    assert phone.hears("MENU") == [MENU]


def test_a_question_about_a_closed_nursery_is_asked_no_more() -> None:
    """The bed was transplanted before its farmer said on which day she would."""
    phone = Phone.enrolled(nursery("A", sow=TODAY), nursery("B", sow=TODAY))
    talk("CHANGE DATE", "A", "2", phone=phone)
    closed = phone.known.nurseries[1:]
    phone.known = replace(phone.known, nurseries=closed)
    assert phone.hears("TODAY")[-1] != like(m.KEPT_SO_FAR, ...)
    assert phone.known.session is None


def test_a_farmer_with_many_nurseries_gets_labels_for_all() -> None:
    """After Z comes AA."""
    letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
    phone = Phone.enrolled(*(nursery(letter) for letter in letters))
    phone = talk("NEW", "1 acre", "85", "1", "10 June", "1", phone=phone)
    assert opened(phone).nursery.label == "AA"


def test_the_quantities_of_a_nursery_that_is_named_come_alone() -> None:
    """Who has two and asks for one pays for no text about the other; unnamed, both come."""
    both = Phone.enrolled(nursery("A"), nursery("B", sow=TODAY))
    only = both.hears("QUANTITIES B")
    assert only[0].startswith("Nursery B")
    assert 2 * len(only) == len(both.hears("QUANTITIES"))


def test_a_nursery_is_closed_only_after_a_yes() -> None:
    """No leaves it as it was."""
    phone = Phone.enrolled(nursery())
    assert phone.hears("CLOSE") == [like(m.ASK_CLOSE(label="A", area="0.4 ha"), *YES_NO)]
    assert phone.hears("2") == [like(m.KEPT_OPEN)]
    talk("CLOSE", "1", phone=phone)
    assert phone.changes == [v.SaveNursery(replace(nursery(), closed=True))]


def test_a_transplanting_day_that_cannot_be_is_asked_again() -> None:
    """Before sowing; an early one is kept and said to be early."""
    phone = Phone.enrolled(nursery(sow=TODAY))
    talk("CHANGE DATE", "2", phone=phone)
    assert phone.hears("3 June") == [like(m.NOT_A_TRANSPLANT_DAY, m.ASK_TRANSPLANTING)]
    assert phone.hears("12 June") == [like(m.TRANSPLANT_SET, m.TRANSPLANT_OUTSIDE)]
    chosen = replace(nursery(sow=TODAY), transplant_date=date(2026, 6, 12))
    assert phone.changes == [v.SaveNursery(chosen)]


def test_hopeless_seed_is_not_taken_for_a_nursery_that_is_open() -> None:
    """Changing the germination asks the same as planning."""
    phone = Phone.enrolled(nursery())
    talk("CHANGE DATE", "4", phone=phone)
    assert phone.hears("30") == [like(m.DO_NOT_SOW(percent=30))]
    assert phone.hears("90")[0] == like(m.AMENDED)


def test_a_sign_typed_in_its_words_is_that_sign() -> None:
    """ "Insects" is a choice where signs are listed, and elsewhere a problem."""
    phone = Phone.enrolled(nursery(sow=date(2026, 5, 20)))
    talk("PROBLEM", "yellow leaves", phone=phone)
    assert phone.hears("insects") == [like(m.TOLD_OFFICER)]
    assert phone.changes == [v.CallForHelp("yellow", "insects", 1)]


def test_only_leaves_without_another_sign_are_sprayed() -> None:
    """The advice holds its cautions in the same text; nobody need be called, but the day is
    kept: the officer sees it, and it is advised once only."""
    bed = nursery(sow=date(2026, 5, 20), uncovered=True)
    phone = Phone.enrolled(bed)
    talk("yellow", phone=phone)
    assert phone.hears("8") == [like(c.ASK_WHICH_LEAVES, ...)]
    assert phone.hears("1") == [like(c.ASK_WHERE, ...)]
    assert phone.hears("1") == [like(c.ASK_CAN, ...)]
    assert phone.hears("2") == [like(c.UREA_CAN)]
    advised = replace(bed, urea_on=TODAY)
    assert phone.changes == [v.SaveNursery(advised)]
    talk("yellow", "8", "1", "1", "2", phone=phone)
    assert phone.changes == [v.SaveNursery(advised)]  # read again on the same day
    phone.on(TODAY + timedelta(days=2))
    talk("yellow", "8", "1", "1", phone=phone)
    assert phone.hears("2") == [like(c.UREA_ONCE(label="A", date=TODAY))]
    assert phone.changes == [v.CallForHelp("yellow", "tip,even", 1)]


def test_yellow_leaves_before_day_7_are_the_officers_to_see() -> None:
    """No spray so early."""
    phone = Phone.enrolled(nursery(sow=date(2026, 5, 28)))
    talk("PROBLEM", phone=phone)
    assert phone.hears("1") == [like(m.UREA_EARLY)]
    assert phone.changes == [v.CallForHelp("yellow", "", 1)]


def test_words_for_the_officer_are_kept_as_written_and_shown_back() -> None:
    """Even where they hold braces or percent signs."""
    phone = Phone.enrolled(nursery())
    assert phone.hears("OFFICER") == [like(m.ASK_WORDS)]
    words = "is the {label} on my sack 100% right %s"
    assert phone.hears(words) == [like(m.CALL_NOTED(words=words))]
    assert phone.changes == [v.CallForHelp("officer", words, 1)]


def test_the_third_reply_in_a_row_that_cannot_be_read_offers_a_person():
    """The refusal twice, then how to reach the officer; an answer begins the count anew."""
    phone = Phone.enrolled()
    phone.says("NEW")
    for _ in range(2):
        assert phone.hears("blue sky") == [like(m.AGAIN_AREA)]
    assert phone.hears("blue sky") == [like(m.DID_NOT_UNDERSTAND, m.ASK_AREA)]
    assert phone.hears("0.4 ha") == [GERMINATION]
    assert phone.hears("blue sky") == [like(m.AGAIN_GERMINATION)]


@pytest.mark.parametrize("words", ["it rained 3 times", "we have 2 pumps only"])
def test_a_number_among_other_words_is_no_pail(words: str) -> None:
    """It is read back; a measure of water beside it makes it sure."""
    phone = Phone.enrolled()
    for sends in ("NEW", "0.4 ha", "85"):
        phone.says(sends)
    phone.says(words)
    assert phone.known.session is not None and "pail" not in phone.known.session.answers
    phone.says("no")
    phone.says("my jerrycan takes 20 litres")
    assert phone.known.session.answers["pail"] == 20.0


def test_hello_to_plan_is_nine_segments_read_and_the_plan_is_one() -> None:
    """In English by SMS, for seed that was tested; the amounts are there for the asking."""
    phone = Phone.new()
    sent = ("hello", "1", "2", "1", "0.4 ha", "85", "1", "10 June", "1")
    heard = [text for words in sent for text in phone.hears(words)]
    assert len(heard) == len(sent)
    assert sum(cost(text).segments for text in heard) == 9
    assert like(m.PLANNED(label="A", what=t.N_COLLECT(), date=date(2026, 6, 3))) == heard[-1]
