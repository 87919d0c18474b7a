"""A form that is refused comes back as it was filled in, and says what is wrong."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.settings import Settings
from assistant.wiring.refit import refit_of
from assistant.wording import messages_web_door as d
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley

FAR = "99999999999999999999999"


def way(valley: Valley) -> None:
    """A lead, and Amina, whose bed is sown and was visited."""
    valley.add_village("Kijani")
    valley.add_village("Bonde")
    valley.add_officer(phone=LEAD, lead=True)
    valley.add_officer(valley.add_village("Mto"))
    give_password(valley, LEAD)
    give_password(valley, OFFICER)
    valley.enrol(AMINA, village=2)
    valley.sow(AMINA, "30 May")


@pytest.fixture
def set_up(valley: Valley) -> Valley:
    """The valley, as a machine's settings have made it."""
    valley.house = replace(valley.house, refit=refit_of(Settings(), valley.house))
    return valley


@pytest.fixture
def lead(set_up: Valley, new_browser: NewBrowser) -> Browser:
    """The lead, who has noted a visit."""
    found = new_browser()
    found.come_in(LEAD)
    found.open("/nurseries/1")
    found.send("/nurseries/1/visit", on="2026-06-01", words="All is well.")
    return found


NOTE = "Seen from the road, nobody at home."
WRONG: dict[str, tuple[str, dict[str, object], str, str]] = {
    "a visit without a day": (
        "/nurseries/1/visit",
        {"on": "", "words": NOTE},
        "Enter the day",
        NOTE,
    ),
    "a visit to come": (
        "/nurseries/1/visit",
        {"on": "2026-12-24", "words": NOTE},
        "in the future",
        NOTE,
    ),
    "a visit put right": ("/visits/1", {"on": "soon", "words": NOTE}, "soon is no date", NOTE),
    "a note without end": (
        "/nurseries/1/visit",
        {"on": "2026-06-01", "words": "w" * 2001},
        "at most 2,000 characters",
        "w" * 2001,
    ),
    "a wish that is no day": (
        "/nurseries/1/dates",
        {"sow": "2026-05-30", "sown": "on", "transplant": "12 June"},
        "12 June is no date",
        'value="12 June"',
    ),
    "days that cannot be": (
        "/nurseries/1/dates",
        {"sow": "2026-05-30", "sown": "on", "transplanted_on": "2026-07-20"},
        "transplant",
        'value="2026-07-20"',
    ),
    "a bed of nothing": ("/nurseries/1/bed", {"area": "a lot"}, "a lot", 'value="a lot"'),
    "an end without a reason": (
        "/nurseries/1/close",
        {"why": " "},
        "please fill",
        'name="why"',
    ),
    "a letter too long": (
        "/farmers/1/text",
        {"words": "w" * 301},
        "at most 300 characters",
        "w" * 301,
    ),
    "a number that is none": ("/farmers/1/number", {"phone": "twelve"}, "twelve", '"twelve"'),
    "a village that is none": (
        "/farmers/1/mend",
        {"name": "Zuri", "village": FAR, "language": "en"},
        "",
        'value="Zuri"',
    ),
    "a place": ("/villages/1/place", {"place": "the mill"}, "no place", 'value="the mill"'),
    "twelve months": ("/villages/1/climate", {"months": "20 21"}, "twelve", 'value="20 21"'),
    "a unit": ("/villages/1/units", {"units": "acre = 4000"}, "no unit", "acre = 4000"),
    "codes": ("/villages/1/codes", {"codes": "ward 3"}, "is not a code", "ward 3"),
    "helpers": (
        "/villages/1/mend",
        {"name": "Kijani", "emergency": "none", "vet": "Dr Otieno"},
        "number",
        'value="Dr Otieno"',
    ),
    "a village of that name": ("/villages", {"name": "Bonde"}, "Bonde", 'value="Bonde"'),
    "a joining without a tick": (
        "/villages/1/join",
        {"into": "2"},
        "Tick",
        'value="2" selected',
    ),
    "an officer": (
        "/officers",
        {"name": "Zuri", "phone": "twelve", "village": "2", "language": "en"},
        "number",
        'value="Zuri"',
    ),
    "a stop of nothing": (
        "/stop-texts",
        {"why": "Wrong seed days"},
        "",
        'value="Wrong seed days"',
    ),
    "a farmer": (
        "/farmers/enrol",
        {"phone": "12", "name": "Zuri", "village": "1", "language": "en"},
        "12",
        'value="Zuri"',
    ),
    "a question": (
        "/questions/new",
        {"language": "en", "ways": "when does it run\nis there a boat", "answer": ""},
        "please fill",
        "is there a boat",
    ),
}


@pytest.mark.parametrize(("path", "fields", "told", "kept"), WRONG.values(), ids=WRONG.keys())
def test_what_was_typed_is_not_lost(
    lead: Browser, path: str, fields: dict[str, object], told: str, kept: str
) -> None:
    """The page says what is wrong, in the form that was sent."""
    shown = lead.send(path, **fields)
    assert lead.page.status_code == 422
    assert 'role="alert"' in lead.page.text
    assert told in shown and kept in lead.page.text


def test_a_nursery_stays_open_without_a_reason(valley: Valley, lead: Browser) -> None:
    """And a wish that cannot be read is not taken for none."""
    lead.send("/nurseries/1/close", why="")
    day = {"sow": "2026-05-30", "sown": "on", "transplant": "2026-06-15"}
    lead.send("/nurseries/1/dates", **day)
    lead.send("/nurseries/1/dates", **{**day, "transplant": "15/6"})
    with valley.house.store.look() as work:
        kept = work.nurseries.get(1)
        assert kept is not None and not kept.closed
        assert str(kept.transplant_date) == "2026-06-15"


GRAVE = {
    "/officers": {"name": "Zuri", "phone": "+447700900055", "village": "2"},
    "/officers/2/mend": {"name": "Zuri", "phone": "+447700900055"},
    "/programme/settings/name": {"programme": "Zuri", "vet": "none"},
}


@pytest.mark.parametrize(("path", "fields"), GRAVE.items(), ids=GRAVE.keys())
def test_a_wrong_password_loses_nothing_either(
    valley: Valley, lead: Browser, path: str, fields: dict[str, str]
) -> None:
    """A grave form whose sender did not show who they are is not taken, and comes back."""
    valley.now += timedelta(minutes=20)
    shown = lead.send(path, own_password="a wrong one", **fields)
    assert d.NOT_PROVED.text in shown and 'value="Zuri"' in lead.page.text
    assert lead.page.status_code == 422
    with valley.house.store.look() as work:
        assert "Zuri" not in {each.name for each in work.people.officers()}


@pytest.mark.parametrize(("path", "fields"), GRAVE.items(), ids=GRAVE.keys())
def test_another_who_did_not_show_it_sees_nothing_by_it(
    set_up: Valley, new_browser: NewBrowser, path: str, fields: dict[str, str]
) -> None:
    """The pages of a lead are not there for an officer, by that way neither."""
    officer = new_browser()
    officer.come_in(OFFICER)
    officer.open("/morning")
    set_up.now += timedelta(minutes=20)
    officer.send(path, own_password="a wrong one", **fields)
    assert officer.page.status_code == 404


def test_a_row_that_cannot_be_is_nobody(lead: Browser) -> None:
    """No number is too large to be asked for; it was a fault of ours."""
    lead.send("/groups", name="North", farmer=FAR)
    assert lead.page.status_code == 200
    lead.send("/stop-texts", what="village", village=FAR, why="Flood")
    assert lead.page.status_code == 422
