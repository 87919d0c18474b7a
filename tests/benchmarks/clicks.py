"""What each job at the officers' desk takes: clicks, screens, fields.

A click is a link or a button pressed, a fold opened, a list ticked as a whole; a screen is a
page that came; a field is one that was typed in, chosen or ticked. Each job begins on the page
that an officer sees after signing in. The pages are read as a browser without a script shows
them; only ticking a whole list needs one, and does here what the script does.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from io import BytesIO
from typing import Any
from urllib.parse import urljoin, urlsplit

from flask.testing import FlaskClient

from scenarios.page import (
    Node,
    PageError,
    button,
    field_of,
    filled,
    link,
    option_value,
    place,
    read_page,
)
from scenarios.page import options as choices
from tests.benchmarks.crowd import OFFICER
from tests.benchmarks.databases import SQLITE
from tests.benchmarks.desk_valley import LEAD, NEAR_STORM, DeskValley, settle
from tests.benchmarks.harness import table
from tests.unit.web.conftest import PASSWORD

SIZES = (600, 5_000)
MOST = 5  # clicks of a job, for one or for all that are ticked


@dataclass
class Hand:
    """Somebody at the pages, whose clicks are counted."""

    client: FlaskClient
    page: Node = field(default_factory=lambda: Node("page", {}))
    at: str = "/"
    clicks: int = 0
    screens: int = 0
    fields: int = 0
    _changed: dict[Node, str | None] = field(default_factory=dict)
    _files: dict[str, bytes] = field(default_factory=dict)
    _open: set[Node] = field(default_factory=set)

    def begin(self) -> None:
        """At the first page, with nothing counted."""
        self._get("/morning")
        self.clicks = self.screens = self.fields = 0

    # What a person does.

    def follow(self, words: str, where: str = "") -> None:
        """Presses a link."""
        within = place(self.page, where) if where else self.page
        address = link(within, words)
        node = next(
            each
            for each in within.all()
            if each.tag == "a" and each.attributes.get("href") == address
        )
        self._unfold(node)
        self._click()
        self._get(address)

    def to_village(self, name: str) -> None:
        """To what waits in one village, where the list is too long to open its groups."""
        try:
            self.follow(name, TO_SEE)
        except PageError:
            return  # it is a group of this page

    def press(self, words: str, where: str = "", bar: bool = False) -> None:
        """Presses a button of a form, in a place of the page."""
        within = self._bar() if bar else place(self.page, where) if where else self.page
        pressed = button(within, words)
        form = pressed.inside("form")
        assert form is not None, f"the button {words} needs a script"
        self._unfold(pressed)
        self._click()
        name = pressed.attributes.get("name")
        also = [(name, pressed.attributes.get("value", ""))] if name else []
        to = pressed.attributes.get("formaction") or form.attributes.get("action") or self.at
        if form.attributes.get("method", "get").lower() == "post":
            self._post(to, [*filled(form, self._changed), *also])
        else:
            query = "&".join(f"{key}={value}" for key, value in filled(form, self._changed))
            self._get(f"{to.partition('?')[0]}?{query}")

    def fill(self, label: str, words: str) -> None:
        """Types in a field, or chooses from a list."""
        node = field_of(self.page, self.page, label)
        self._unfold(node)
        self.fields += 1
        if node.tag == "select":
            found = next(each for each in choices(node) if words in each.text)
            words = option_value(found)
        self._changed[node] = words

    def tick(self, label: str) -> None:
        """Ticks a box, or chooses one of several."""
        node = field_of(self.page, self.page, label)
        self._unfold(node)
        self.fields += 1
        self._changed[node] = node.attributes.get("value", "on")

    def tick_some(self, name: str, count: int) -> None:
        """Ticks the first boxes of a list."""
        found = [each for each in self.page.all() if each.attributes.get("name") == name]
        for box in found[:count]:
            self.fields += 1
            self._changed[box] = box.attributes["value"]

    def attach(self, label: str, name: str, content: bytes) -> None:
        """Chooses a file."""
        self.fill(label, name)
        self._files[name] = content

    def tick_all(self, group: str) -> int:
        """Opens a group and ticks all of it, as the script does; how many boxes that were."""
        found = [each for each in self.page.all() if "data-tick" in each.attributes]
        pressed = next(
            each for each in found if each.inside("details") and group in _group(each).text
        )
        self._unfold(pressed)
        self._click()
        boxes = [each for each in _group(pressed).all() if _is_line(each)]
        for box in boxes:
            self._changed[box] = box.attributes["value"]
        return len(boxes)

    def sees(self, words: str) -> None:
        """What must stand on the page at the end."""
        assert words in self.page.text, f"no {words!r} at {self.at}: {self.page.text[:600]}"

    # What a browser does.

    def _click(self) -> None:
        self.clicks += 1

    def _unfold(self, node: Node) -> None:
        """Each fold that hides it is opened first, unless it is the fold's own head."""
        above = node.inside("details")
        while above is not None:
            if "open" not in above.attributes and above not in self._open:
                self._open.add(above)
                self._click()
            above = above.inside("details")

    def _bar(self) -> Node:
        return next(
            each for each in self.page.all() if each.attributes.get("class") == "deed-bar"
        )

    def _get(self, address: str) -> None:
        self._took(self.client.get(urljoin(self.at, address)))

    def _post(self, address: str, fields: list[tuple[str, str]]) -> None:
        data: dict[str, Any] = {}
        for name, value in fields:
            given = (BytesIO(self._files[value]), value) if value in self._files else value
            data.setdefault(name, []).append(given)
        self._took(self.client.post(urljoin(self.at, address), data=data))

    def _took(self, answer: Any) -> None:
        while answer.status_code in (302, 303):
            self.at = urljoin(self.at, answer.location)
            answer = self.client.get(self.at)
        assert answer.status_code in (200, 422), (answer.status_code, self.at)
        parts = urlsplit(answer.request.url)
        self.at = f"{parts.path}?{parts.query}" if parts.query else parts.path
        self.page = read_page(answer.text)
        self._changed, self._open = {}, set()
        self.screens += 1


def _group(node: Node) -> Node:
    return node.inside("details") or node.inside("section") or node


def _is_line(node: Node) -> bool:
    return node.tag == "input" and node.attributes.get("name") in ("line", "farmer")


# --- the jobs --------------------------------------------------------------------------------


def answer_a_call(hand: Hand) -> None:
    """With a set phrase in the farmer's language."""
    hand.follow("Answer by text", CALL)
    hand.tick("I will come to you today.")
    hand.press("Send the answer")
    hand.sees("goes out in a minute")


def undo(hand: Hand) -> None:
    """What was just done."""
    hand.press("Undo")
    hand.sees("Undone")


def close_a_call(hand: Hand) -> None:
    """That was dealt with by phone."""
    hand.press("I have seen to it", CALL)
    hand.sees("marked as seen")


def reopen_a_call(hand: Hand) -> None:
    """Closed by mistake an hour ago."""
    hand.follow("Messages")
    hand.follow("Sent by me")
    hand.press("Reopen")
    hand.sees("open again")


def visit_one(hand: Hand) -> None:
    """And back on the list."""
    hand.to_village(VILLAGE)
    hand.press("Visited", TO_SEE)
    hand.fill("What you saw and did", "All up.")
    hand.press("Record 1 visit")
    hand.sees("1 visit is recorded")


def visit_a_village(hand: Hand) -> None:
    """All that wait there, with one note."""
    hand.to_village("Bonde Jipya")
    ticked = hand.tick_all("Bonde Jipya")
    hand.press("Visited", bar=True)
    hand.press(f"Record {ticked} visit")
    hand.sees("recorded")


def visit_all(hand: Hand) -> None:
    """Every nursery that did not answer the same question, in whatever village."""
    hand.follow("By reason")
    ticked = hand.tick_all("No answer")
    hand.press("Visited", bar=True)
    hand.press(f"Record {ticked} visit")
    hand.sees("recorded")


def _write_to_the_silent(hand: Hand) -> None:
    hand.to_village(VILLAGE)
    hand.tick_all(VILLAGE)
    hand.press("Write", bar=True)
    hand.tick("Please answer the last question")


def text_the_silent(hand: Hand) -> None:
    """All of one village that did not answer."""
    _write_to_the_silent(hand)
    hand.press("Send to")
    hand.sees("in a minute")


def hand_a_call_on(hand: Hand) -> None:
    """To another officer."""
    hand.follow("Give to a colleague")
    hand.fill("Give this to", "Neema")
    hand.press("Give 1 call")
    hand.sees("is with your colleague")


def text_later(hand: Hand) -> None:
    """On another day, to all of one village that did not answer."""
    _write_to_the_silent(hand)
    hand.fill("When it goes out", "17 Jun")
    hand.press("Send to")
    hand.sees("at the hour you chose")


def keep_a_group(hand: Hand) -> None:
    """Of farmers who are ticked."""
    hand.follow("Farmers")
    hand.tick_some("farmer", 3)
    hand.fill("Name of the group", "Seed growers")
    hand.press("Save those ticked as a group")
    hand.sees("in the group Seed growers")


def write_to_a_group(hand: Hand) -> None:
    """To the one that was just kept."""
    hand.follow("Farmers")
    hand.follow("My groups")
    hand.follow("Write to them")
    hand.fill("Your words", "Seed comes on Monday.")
    hand.press("Show whom it reaches")
    hand.press("Send to")
    hand.sees("on its way")


def send_a_draft(hand: Hand) -> None:
    """Of an official alert."""
    hand.follow("Look and decide")
    hand.press("Send to")
    hand.sees("The warning is going out")


def warn_all(hand: Hand) -> None:
    """Twelve villages, by hand."""
    hand.follow("Warnings")
    hand.tick("All of them")
    hand.fill("Until, time", "23:00")
    hand.press("Show whom it reaches")
    hand.press("Send to")
    hand.sees("The warning is going out")


def second_text(hand: Hand) -> None:
    """To those who have not answered a warning."""
    hand.follow(NEAR_STORM, "Warnings that stand")
    hand.press("a second text")
    hand.sees("A second text goes to")


def all_clear(hand: Hand) -> None:
    """For all villages of a warning."""
    hand.follow(NEAR_STORM, "Warnings that stand")
    hand.press("Yes, the danger is over")
    hand.sees("The all-clear goes out")


def take_a_warning_back(hand: Hand) -> None:
    """It was a mistake: the one that was just sent by hand."""
    hand.follow("to 23:00", "Warnings that stand")
    hand.press("Call it back")
    hand.sees("Called back")


def import_a_list(hand: Hand) -> None:
    """Of farmers, from a file."""
    hand.follow("Farmers")
    hand.follow("Import a list")
    hand.attach("File", "new.csv", LIST.encode())
    hand.press("Read the file")
    hand.press("See what would happen")
    hand.press("Import the list")


def find_a_farmer(hand: Hand) -> None:
    """By a name as people spell it."""
    hand.page.children.append("")  # Enter in the field above every page
    hand._click()
    hand._get("/find?q=mwende+hasan")
    hand.follow("Hassan Mwende")
    hand.sees("Correct name, village or language")


def move_a_farmer(hand: Hand) -> None:
    """To the village where they live."""
    find_a_farmer(hand)
    hand.fill("Village", "Ukingo")
    hand.press("Save", "Language of texts to this farmer")
    hand.sees("It is corrected")


def months_cost(hand: Hand) -> None:
    """By village."""
    hand.follow("Messages")
    hand.sees("KES")


def results_file(hand: Hand) -> None:
    """As a workbook."""
    hand.follow("Season results")
    link(hand.page, "XLSX")
    hand._click()


def another_language(hand: Hand) -> None:
    """Of the pages and of texts to oneself."""
    hand.follow("Asha")
    hand.fill("Language of this page", "Kiswahili")
    hand.press("Save", "Language of this page")
    hand.fill("Lugha ya ukurasa huu", "English")
    hand.press("Hifadhi", "Lugha ya ukurasa huu")
    hand.clicks, hand.screens, hand.fields = hand.clicks - 1, hand.screens - 1, hand.fields - 1


def add_a_village(hand: Hand) -> None:
    """By the lead."""
    hand.follow("Villages")
    hand.fill("Name of the village", "Kilima")
    hand.press("Add a village")
    hand.sees("Kilima is added")


def price_of_a_text(hand: Hand) -> None:
    """By the lead."""
    hand.follow("Programme")
    hand.follow("Settings")
    hand.fill("Price of a segment", "0.9")
    hand.press("Save", "Price of a segment")
    hand.sees("It applies from now on")


def test_text(hand: Hand) -> None:
    """To the lead's own phone."""
    hand.follow("Programme")
    hand.follow("Phone lines")
    hand.sees("Phone lines")


CALL, VILLAGE, TO_SEE = "wants you", "Njia Panda", "Nurseries to see today"
LIST = "Phone,Name,Village,Area (ha)\n+999001000001,New Person,Kijani,0.4\n"


@dataclass(frozen=True)
class Job:
    """One job; `before` are the clicks that it took before this desk."""

    name: str
    do: Callable[[Hand], None]
    before: str
    lead: bool = False


JOBS = (
    Job("answer a call", answer_a_call, "2"),
    Job("undo it", undo, "impossible"),
    Job("close a call", close_a_call, "1"),
    Job("reopen it later", reopen_a_call, "impossible"),
    Job("a visit, back on the list", visit_one, "3-4"),
    Job("text all silent of a village", text_the_silent, "impossible"),
    Job("visits of all with one reason", visit_all, "3 each"),
    Job("visits of all in a village", visit_a_village, "3 each"),
    Job("second text", second_text, "1, after a reload"),
    Job("all-clear", all_clear, "4"),
    Job("warn 12 villages", warn_all, "4"),
    Job("send the draft of an alert", send_a_draft, "3"),
    Job("take a warning back", take_a_warning_back, "4"),
    Job("import a list", import_a_list, "6"),
    Job("find a farmer", find_a_farmer, "3"),
    Job("move a farmer to another village", move_a_farmer, "impossible"),
    Job("hand a call to a colleague", hand_a_call_on, "impossible"),
    Job("text all silent of a village later", text_later, "impossible"),
    Job("keep a group of farmers", keep_a_group, "impossible"),
    Job("write to a group", write_to_a_group, "impossible"),
    Job("a month's cost", months_cost, "2"),
    Job("season results as a file", results_file, "2"),
    Job("pages in another language", another_language, "3"),
    Job("add a village", add_a_village, "impossible", lead=True),
    Job("set the price of a text", price_of_a_text, "impossible", lead=True),
    Job("the page for a test text", test_text, "impossible", lead=True),
)


@dataclass(frozen=True)
class Taken:
    """What a job took; `why` it could not be done."""

    job: Job
    clicks: int
    screens: int
    fields: int
    why: str = ""


def done(valley: DeskValley) -> Iterator[Taken]:
    """Each job in turn, in the same valley: one may use what another left."""
    app = valley.app()
    app.config["WTF_CSRF_ENABLED"] = False
    hands = {lead: _signed_in(app.test_client(), lead) for lead in (False, True)}
    for job in JOBS:
        hand = hands[job.lead]
        if job.do is not undo:
            hand.begin()
        else:
            hand.clicks = hand.screens = hand.fields = 0
        why = ""
        try:
            job.do(hand)
        except (PageError, AssertionError, StopIteration, KeyError) as fault:
            why = f"{type(fault).__name__}: {fault}"
        yield Taken(job, hand.clicks, hand.screens, hand.fields, why)


def _signed_in(client: FlaskClient, lead: bool) -> Hand:
    form = {"phone": LEAD if lead else OFFICER, "password": PASSWORD}
    assert client.post("/sign-in", data=form).status_code == 303
    return Hand(client)


HEAD = ("job", "before", "clicks", "screens", "fields")


def run() -> str:
    """The table, a part for each size."""
    parts = []
    for farmers in SIZES:
        with SQLITE.fresh() as url:
            valley = settle(url, farmers)
            lines = [_line(each) for each in done(valley)]
            valley.house.store.close()
        parts.append(f"{farmers:,} farmers\n{table(lines, HEAD)}")
    return "\n\n".join(parts)


def _line(taken: Taken) -> tuple[str, ...]:
    counts = (str(taken.clicks), str(taken.screens), str(taken.fields))
    return (
        taken.job.name,
        taken.job.before,
        *(counts if not taken.why else (taken.why, "", "")),
    )
