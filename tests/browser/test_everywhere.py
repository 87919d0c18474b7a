"""Every page at every width: nothing is cut, nothing needs sideways scrolling but marked boxes.

WCAG 2.1, 1.4.10 (Reflow): content without scrolling in two directions at 320 CSS pixels, but
for parts that need it, such as data tables. 390 px is a phone held upright.
"""

from collections.abc import Iterator
from datetime import timedelta

import pytest
from playwright.sync_api import Browser, Page, expect

from assistant.service.sight import sight_of
from assistant.service.storms import broadcasts, drafts
from assistant.service.storms.broadcasts import Asked
from assistant.store import AlertCertainty, Draft
from tests.browser.conftest import Office, crowded, picture, sign_in, window_of
from tests.valley import LEAD

WIDTHS = (1280, 1024, 390)
# Pages below those of the menu. The storm has six farmers with a nursery each, in two villages.
BELOW = (
    "/round",
    "/deeds?deed=text&line=bed-1",
    "/nurseries/1",
    "/nurseries/1/calendar",
    "/farmers/1",
    "/farmers/enrol",
    "/lists",
    "/sent",
    "/groups",
    "/deeds?deed=hand&line=call-1",
    "/season?village=1",
    "/season?stage=covered",
    "/villages/1",
    "/villages/1/calendar",
    "/villages/1/calendar?form=weeks",
    "/warnings/1",
    "/warnings/drafts/3",
    "/broadcasts/1",
    "/broadcasts",
    "/alerts",
    "/lines",
    "/messages?which=heard",
    "/messages?village=1",
    "/messages/months",
    "/messages/unread",
    "/questions",
    "/questions/new",
    "/messages/months",
    "/results?village=2",
    "/officers/1",
    "/programme/settings",
    "/officers",
    "/trail",
    "/stop-texts",
    "/account",
    "/password",
    "/nowhere",
)
# What stands out at the right of the window or is cut by the box it is in, outside of boxes
# that scroll and can be reached by keyboard and are named.
STANDS_OUT = """() => {
  const said = [];
  const scrolls = (e) => ['auto', 'scroll'].includes(getComputedStyle(e).overflowX);
  const named = (e) => e.tabIndex === 0 && (e.ariaLabel || e.getAttribute('aria-labelledby'));
  for (const each of document.querySelectorAll('body *')) {
    const place = each.getBoundingClientRect();
    if (!place.width || each.closest('.unseen, .skip, thead, option')) continue;
    let box = each;
    while (box && !(scrolls(box) && box.tagName !== 'TEXTAREA')) box = box.parentElement;
    if (box && box.scrollWidth > box.clientWidth + 1 && !named(box)) said.push(box.outerHTML);
    if (!box && place.right > innerWidth + 1) said.push(each.outerHTML);
    const cut = getComputedStyle(each).overflowX === 'hidden' && each.tagName !== 'svg';
    if (cut && each.scrollWidth > each.clientWidth + 1) said.push(each.outerHTML);
  }
  return said.map((it) => it.slice(0, 160)).slice(0, 3);
}"""

DRAWN = "new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go)))"


@pytest.fixture
def window(chromium: Browser) -> Iterator[Page]:
    """A window to be made as wide as is wanted."""
    context = window_of(chromium, WIDTHS[0], 800)
    page = context.new_page()
    yield page
    context.close()


def test_nothing_is_cut_at_any_width(window: Page, busy: Office) -> None:
    """All pages of the menu, as a lead has them, and the main ones below."""
    _letters(busy)
    sign_in(window, busy, LEAD)
    menu = window.get_by_role("navigation").get_by_role("link")
    paths = [link.get_attribute("href") or "" for link in menu.all()]
    assert len(paths) == 9
    faults = []
    for path in (*paths, *BELOW):
        answer = window.goto(busy.url + path)
        assert answer is not None and (answer.ok or path == "/nowhere"), path
        for width in WIDTHS:
            window.set_viewport_size({"width": width, "height": 800})
            window.evaluate(DRAWN)
            window.name = f"{width}"  # type: ignore[attr-defined]
            picture(window, f"everywhere{path.translate(str.maketrans('/?=&', '----'))}")
            faults += [f"{path} at {width}: {it}" for it in window.evaluate(STANDS_OUT)]
            wide = window.evaluate("document.documentElement.scrollWidth")
            if wide > width:
                faults.append(f"{path} at {width}: the page is {wide} wide")
        window.set_viewport_size({"width": 1024, "height": 640})
        faults += [f"{path}: {it}" for it in crowded(window)]
    assert faults == [], "\n".join(faults)


LOOKED_AT = (
    "/season",
    "/season?village=1",
    "/results",
    "/results?village=2",
    "/warnings/1",
    "/messages",
)


@pytest.mark.parametrize("width", [1024, 390])
def test_what_is_looked_at_is_seen_whole(window: Page, busy: Office, width: int) -> None:
    """Season, results and answers to a warning need no scrolling even in a marked box."""
    sign_in(window, busy, LEAD)
    window.set_viewport_size({"width": width, "height": 640})
    for path in LOOKED_AT:
        window.goto(busy.url + path)
        hidden = window.evaluate(
            "[...document.querySelectorAll('.wide')].map((e) => e.scrollWidth - e.clientWidth)"
        )
        assert max(hidden) <= 1, path


def test_the_menu_folds_on_a_narrow_screen(window: Page, busy: Office) -> None:
    """One line with the place one is at; it opens by keyboard."""
    sign_in(window, busy, LEAD)
    window.set_viewport_size({"width": 390, "height": 780})
    window.goto(f"{busy.url}/villages/1")
    menu = window.get_by_role("navigation", name="Pages")
    expect(menu.get_by_role("link")).to_have_count(0)
    line = menu.get_by_text("Pages: Villages")
    line.focus()
    window.keyboard.press("Enter")
    expect(menu.get_by_role("link")).to_have_count(10)
    window.keyboard.press("Tab")
    expect(menu.get_by_role("link", name="Waiting for me")).to_be_focused()
    top = window.locator(".top").bounding_box()
    assert top is not None
    line.click()
    folded = window.locator(".top").bounding_box()
    assert folded is not None and folded["height"] < 120 < top["height"]


def _letters(office: Office) -> None:
    """A warning and a letter to many that nobody has sent yet."""
    valley = office.valley
    start, hours = valley.now + timedelta(hours=2), timedelta(hours=6)
    with valley.house.store.work() as work:
        officer = work.people.officer(LEAD)
        assert officer is not None
        villages = tuple(village.id for village in work.people.villages())
        storm = Draft(villages, start, start + hours, valley.now, AlertCertainty.LIKELY)
        assert drafts.draft(work, storm).id == 3
        sight = sight_of(work, officer)
    asked = Asked("Seed comes on Friday at the mill.", set(villages))
    assert not isinstance(broadcasts.make(valley.house, sight, asked, valley.now), tuple)


FOCUS = """() => {
  const at = document.activeElement;
  const place = at.getBoundingClientRect();
  const style = getComputedStyle(at);
  return {
    what: at.outerHTML.slice(0, 120),
    last: at === document.body,
    shown: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
    seen: place.bottom > 0 && place.top < innerHeight && place.width > 0,
    idle: at.matches('.wide') && at.scrollWidth <= at.clientWidth,
  };
}"""


@pytest.mark.parametrize(
    "path", ["/warnings", "/season", "/villages/1", "/results", "/account"]
)
def test_a_keyboard_goes_through_a_page(window: Page, busy: Office, path: str) -> None:
    """Each stop can be seen and is marked (WCAG 2.4.7), and each is one that does something."""
    sign_in(window, busy, LEAD)
    window.set_viewport_size({"width": 1024, "height": 640})
    window.goto(busy.url + path)
    stops = []
    for _ in range(80):
        window.keyboard.press("Tab")
        stops.append(window.evaluate(FOCUS))
        if stops[-1]["last"]:
            break
    assert len(stops) > 14  # past the list of pages
    for stop in stops[:-1]:
        assert stop["shown"] and stop["seen"] and not stop["idle"], stop["what"]
