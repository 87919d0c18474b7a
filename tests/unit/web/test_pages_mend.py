"""What was entered wrong is put right on the page, and what was sent is found there."""

from datetime import date

import pytest

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, ZAWADI, Valley


def way(valley: Valley) -> None:
    """Amina sows on 5 June, in Kijani; Baraka is there too, Zawadi is another officer's."""
    kijani, _ = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani, valley.add_village("Bonde"))
    give_password(valley)
    for phone, village in ((AMINA, 2), (BARAKA, 2), (ZAWADI, 3)):
        valley.enrol(phone, village=village)
    valley.plan(AMINA, "5 June")
    valley.heard(AMINA)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    found.open("/nurseries/1")
    return found


def test_new_days_are_shown_with_their_text_before_anything_moves(
    valley: Valley, browser: Browser
) -> None:
    """Then they move; the text waits a minute, and undoing brings both back."""
    wanted = {"sow": "2026-06-08", "tell": "on"}
    shown = browser.send("/nurseries/1/dates", look="yes", **wanted)
    assert "Sowing: Fri 5 Jun, now Mon 8 Jun" in shown
    assert "changed your plan" in shown and "goes out in a minute" in shown
    assert _sow(valley) == date(2026, 6, 5) and valley.heard(AMINA) == []
    shown = browser.send("/nurseries/1/dates", **wanted)
    assert _sow(valley) == date(2026, 6, 8) and "Undo" in shown
    browser.send("/deeds/1/undo")
    assert _sow(valley) == date(2026, 6, 5)
    valley.go("1 Jun 09:00")
    assert valley.heard(AMINA) == []


def test_days_that_cannot_be_say_so_when_they_are_looked_at(browser: Browser) -> None:
    """Nothing is asked to be confirmed."""
    shown = browser.send("/nurseries/1/dates", sow="2026-09-01", sown="on", look="yes")
    assert "cannot have been sown" in shown and "What changes" not in shown
    assert browser.page.status_code == 422


def _sow(valley: Valley) -> date:
    with valley.house.store.look() as work:
        bed = work.nurseries.get(1)
    assert bed is not None
    return bed.sow_date


def test_a_bed_is_put_right(valley: Valley, browser: Browser) -> None:
    """Field and seed as the farmer says them; what cannot be read changes nothing."""
    assert "it was already like that" in browser.send("/nurseries/1/bed")
    assert "cannot be read as a field size" in browser.send("/nurseries/1/bed", area="a bit")
    assert "from 0.5 to 8" in browser.send("/nurseries/1/bed", leaves="40")
    shown = browser.send("/nurseries/1/bed", area="0.25 ha", percent="90")
    assert "The bed is corrected" in shown and "0.25 ha" in shown
    with valley.house.store.look() as work:
        bed = work.nurseries.get(1)
        detail = work.audit.latest(1)[0].detail
    assert bed is not None
    assert (bed.inputs.field_area_m2, bed.inputs.germination) == (2500, 0.9)
    assert "area_m2" in detail and "germination" in detail


def test_leaves_counted_by_the_officer_stand_in_the_story(
    valley: Valley, browser: Browser
) -> None:
    """They move the days as the farmer's own count does."""
    valley.go("5 Jun 06:00")
    valley.text(AMINA, "DONE")
    valley.go("16 Jun 08:00")
    browser.open("/nurseries/1")
    assert "The bed is corrected" in browser.send("/nurseries/1/bed", leaves="2.5")
    with valley.house.store.look() as work:
        bed = work.nurseries.get(1)
    assert bed is not None
    assert (bed.leaves, bed.leaves_on) == (2.5, date(2026, 6, 16))


def test_a_visit_is_mended_and_taken_away(valley: Valley, browser: Browser) -> None:
    """By who noted it; a day before there was a plan is refused."""
    browser.send("/nurseries/1/visit", on="2026-06-01", words="mats wet")
    assert "Correct this visit" in browser.words()
    shown = browser.send("/visits/1", on="2026-06-01", words="mats dry at noon")
    assert "The visit is corrected" in shown and "mats dry at noon" in shown
    assert "before the plan" in browser.send("/visits/1", on="2026-05-01", words="")
    browser.open("/nurseries/1")
    shown = browser.send("/visits/1", away="yes", on="2026-06-01")
    assert "The visit is deleted" in shown and "mats dry" not in shown
    browser.send("/visits/1", away="yes")
    assert browser.page.status_code == 404


def test_two_entries_of_one_person_are_joined(valley: Valley, browser: Browser) -> None:
    """Both are shown first; nurseries keep apart, words go along, the number falls silent."""
    valley.plan(BARAKA, "7 June")
    valley.text(BARAKA, "OFFICER")
    valley.text(BARAKA, "This is my second SIM")
    shown = browser.open(f"/farmers/1/join?other={BARAKA.replace('+', '%2B')}")
    assert "Are these the same person?" in shown and "1 nursery" in shown
    assert "1 call for help" in shown
    assert "Tick the box first" in browser.send("/farmers/1/join", other=BARAKA)
    shown = browser.send("/farmers/1/join", other=BARAKA, sure="on")
    assert "They are one entry now" in shown and "second SIM" in shown
    with valley.house.store.look() as work:
        beds = work.nurseries.of_farmer(1)
        assert [bed.label for bed in beds] == ["A", "B"]
        assert work.people.farmer(BARAKA) is None
        assert BARAKA in work.audit.latest(1)[0].detail
    valley.heard(BARAKA)
    valley.go("7 Jun 06:00")
    assert valley.heard(BARAKA) == [] and valley.heard(AMINA)


@pytest.mark.parametrize(
    ("other", "why"),
    [
        (AMINA, "the same entry"),
        ("+447700900199", "Nobody in your villages"),
        (ZAWADI, "Nobody in your villages"),
    ],
)
def test_who_cannot_be_joined_is_not(browser: Browser, other: str, why: str) -> None:
    """Others' farmers are not there."""
    assert why in browser.open(f"/farmers/1/join?other={other.replace('+', '%2B')}")


def test_one_that_stopped_is_joined_to_nothing(valley: Valley, browser: Browser) -> None:
    """A STOP is one number's and is not carried over by a form."""
    valley.text(BARAKA, "STOP")
    shown = browser.open(f"/farmers/1/join?other={BARAKA.replace('+', '%2B')}")
    assert "has stopped texts" in shown


def test_a_known_number_is_moved_only_where_it_is_said(
    valley: Valley, browser: Browser
) -> None:
    """Another village in the form alone moves nobody: warnings go by the village."""
    browser.open("/farmers/enrol")
    form = {"phone": AMINA, "name": "", "village": "3", "language": "en"}
    shown = browser.send("/farmers/enrol", **form)
    assert "already registered in Kijani" in shown and "Move this farmer" in shown
    assert _village(valley) == 1
    browser.send("/farmers/enrol", moves="on", **form)
    assert _village(valley) == 3


def _village(valley: Valley) -> int | None:
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None
    return farmer.village_id


def test_what_was_sent_is_on_one_page_and_taken_back_while_it_waits(
    valley: Valley, browser: Browser
) -> None:
    """A letter by night waits; one by day has left; nobody else's can be touched."""
    browser.send("/farmers/1/text", words="Come on Monday")
    valley.send()
    valley.go("1 Jun 21:00")
    browser.open("/farmers/1")
    browser.send("/farmers/1/text", words="No, come on Tuesday")
    shown = browser.open("/sent")
    assert "Come on Monday" in shown and "waits until Tue 2 Jun, 05:30" in shown
    with valley.house.store.look() as work:
        texts = [each.message_id for each in work.outbox.of_phone(AMINA)]
    assert "It is taken back" in browser.send(f"/sent/{texts[-1]}")
    assert "has already gone out" in browser.send(f"/sent/{texts[-1]}")
    browser.send("/sent/none")
    assert browser.page.status_code == 404
    valley.go("2 Jun 08:00")
    assert not any("Tuesday" in text for text in valley.heard(AMINA))


def test_calls_that_were_closed_are_listed_and_opened_again(
    valley: Valley, browser: Browser
) -> None:
    """On the page of what one has done oneself."""
    with valley.house.store.work() as work:
        call = work.calls.add(1, 1, "other", "Goats were here", valley.now)
    browser.open("/morning")
    browser.send("/deeds/do", deed="seen", line=f"call-{call}")
    shown = browser.open("/sent")
    assert "Goats were here" in shown and "Reopen" in shown
    assert "The call is open again" in browser.send(f"/calls/{call}/reopen")
    assert "Goats were here" not in browser.open("/sent")
