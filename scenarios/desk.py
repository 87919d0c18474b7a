"""An officer at the page: a browser without scripts, over HTTP, on the season's clock."""

import time
from collections.abc import Callable, Mapping
from email.message import Message as Head
from typing import Any
from urllib.parse import urljoin, urlsplit

import requests

from scenarios import season as season_acts
from scenarios.heard import differences
from scenarios.page import (
    Node,
    PageError,
    button,
    field_of,
    filled,
    link,
    option_value,
    options,
    place,
    read_page,
)

WAITS_S = 120.0  # of real time, for an answer of the server beside
LOOKS_EVERY_S = 0.1  # where a page says that it comes again by itself
OK = 200


class OfficerBrowser:
    """One officer's browser.

    Args:
        url: where the pages are
        one_time: makes a one-time password, as a lead does
    """

    def __init__(self, url: str, phone: str, one_time: Callable[[], str]) -> None:
        self._url, self._phone, self._one_time = url, phone, one_time
        self._password: str | None = None
        self._session = requests.Session()
        self._session.trust_env = False
        self._page, self._where, self._at = Node("page", {}), Node("page", {}), url
        self._changed: dict[Node, str | None] = {}
        self._files: dict[str, str] = {}

    def do(self, act: season_acts.AtPage) -> None:
        """One line of the season.

        Raises:
            PageError: what the line asks for is not there.
        """
        _DO[type(act)](self, act)

    def close(self) -> None:
        """Lets go of the server."""
        self._session.close()

    def cookies(self) -> dict[str, str]:
        """What the pages know this browser by."""
        return {cookie.name: cookie.value or "" for cookie in self._session.cookies}

    @property
    def path(self) -> str:
        """Where the officer is."""
        parts = urlsplit(self._at)
        return parts.path + (f"?{parts.query}" if parts.query else "")

    # What an officer does.

    def _signs_in(self, act: season_acts.SignsIn) -> None:
        """The first time with a one-time password, which has to be changed."""
        if self._password is not None:
            self._enter(self._password)
            return
        once, own = self._one_time(), f"seven herons at dawn {self._phone[-3:]}"
        self._enter(once)
        typed = {"old": once, "new": own, "again": own}
        form = next(node for node in self._page.all() if node.tag == "form" and _asks_new(node))
        self._send(form, typed)
        self._password = own
        self._refuse_door()

    def _enter(self, password: str) -> None:
        self._go("/sign-in")
        forms = [node for node in self._page.all() if node.tag == "form"]
        if "/sign-in" in self.path:
            self._send(forms[0], {"phone": self._phone, "password": password})
            self._refuse_door()

    def _refuse_door(self) -> None:
        if self.path.startswith("/sign-in"):
            raise PageError(f"the door stays closed: {self._page.text}")

    def _opens(self, act: season_acts.Opens) -> None:
        wanted = act.where if act.where.startswith("/") else link(self._page, act.where)
        self._go(wanted)
        if self.path.startswith("/sign-in") and self._password is not None:
            self._enter(self._password)  # a session ends after twelve hours
            self._go(wanted)

    def _follows(self, act: season_acts.Follows) -> None:
        self._go(link(self._where, act.link))

    def _looks_at(self, act: season_acts.LooksAt) -> None:
        self._where = (
            self._page if act.words == season_acts.WHOLE_PAGE else place(self._page, act.words)
        )

    def _fills(self, act: season_acts.Fills) -> None:
        self._changed[self._field(act.label)] = act.words

    def _ticks(self, act: season_acts.Ticks) -> None:
        box = self._field(act.label)
        for other in self._page.all():
            if box.attributes.get("type") == "radio" and _same_choice(other, box):
                self._changed[other] = None
        self._changed[box] = box.attributes.get("value", "on") if act.on else None

    def _chooses(self, act: season_acts.Chooses) -> None:
        chosen = self._field(act.label)
        listed = {each.text.casefold(): each for each in options(chosen)}
        wanted = act.option.casefold()
        found = listed.get(wanted) or next((o for t, o in listed.items() if wanted in t), None)
        if found is None:
            raise PageError(f"no choice: {act.option}; there are: {'; '.join(listed)}")
        self._changed[chosen] = option_value(found)

    def _adds_to(self, act: season_acts.AddsTo) -> None:
        self._files[act.file] = self._files.get(act.file, "") + act.line + "\n"

    def _mends(self, act: season_acts.Mends) -> None:
        text = self._file(act.file)
        if text.count(act.old) != 1:
            raise PageError(f"{act.old} stands {text.count(act.old)} times in:\n{text}")
        self._files[act.file] = text.replace(act.old, act.new)

    def _sends(self, act: season_acts.SendsFile) -> None:
        self._file(act.file)
        self._changed[self._field(act.label)] = act.file

    def _file(self, name: str) -> str:
        if name not in self._files:
            raise PageError(f"no file {name}; there are: {', '.join(self._files) or 'none'}")
        return self._files[name]

    def _clicks(self, act: season_acts.Clicks) -> None:
        pressed = button(self._where, act.button)
        form = pressed.inside("form")
        if form is None:
            raise PageError(f"the button {act.button} needs a script")
        also = (
            {pressed.attributes["name"]: pressed.attributes.get("value", "")}
            if "name" in pressed.attributes
            else {}
        )
        self._send(form, also, pressed.attributes.get("formaction"))

    def _reads(self, act: season_acts.PageReads) -> None:
        faults = differences(act.expected, self._where.text)
        if faults:
            raise PageError("; ".join(faults) + f"\n  {self.path}: {self._where.text[:1500]}")

    # What a browser does.

    def _field(self, label: str) -> Node:
        return field_of(self._page, self._where, label)

    def _go(self, address: str) -> None:
        self._ask("GET", urljoin(self._at, address))

    def _send(self, form: Node, typed: Mapping[str, str], to: str | None = None) -> None:
        fields = [pair for pair in filled(form, self._changed) if pair[0] not in typed]
        fields += list(typed.items())
        address = urljoin(self._at, to or form.attributes.get("action") or self._at)
        if form.attributes.get("method", "get").lower() == "post":
            self._ask("POST", address, **self._parted(form, fields))
        else:
            self._ask("GET", address, params=fields)

    def _parted(self, form: Node, fields: list[tuple[str, str]]) -> dict[str, Any]:
        """What a form sends, its files as such."""
        takes = {
            node.attributes["name"]
            for node in form.all()
            if node.attributes.get("type") == "file"
        }
        files = {name: (value, self._file(value)) for name, value in fields if name in takes}
        return {"data": [pair for pair in fields if pair[0] not in takes], "files": files}

    def _ask(self, method: str, address: str, **fields: Any) -> None:
        try:
            self._took(self._session.request(method, address, timeout=WAITS_S, **fields))
        except requests.RequestException as fault:
            raise PageError(f"no answer from {address}: {fault}") from fault

    def _took(self, answer: requests.Response) -> None:
        head = Head()
        head["Content-Disposition"] = answer.headers.get("Content-Disposition", "inline")
        if head.get_content_disposition() == "attachment":
            self._files[head.get_filename("file")] = answer.content.decode("utf-8-sig")
            return
        if "Refresh" in answer.headers:
            time.sleep(LOOKS_EVERY_S)
            self._go(answer.url)
            return
        self._at = answer.url
        self._page = self._where = read_page(answer.text)
        self._changed = {}
        if answer.status_code != OK and not self.path.startswith("/sign-in"):
            raise PageError(
                f"{self.path} answers {answer.status_code}: {self._page.text[:300]}"
            )


def _same_choice(one: Node, other: Node) -> bool:
    """Whether only one of two can be chosen."""
    names = [each.attributes.get("name") for each in (one, other)]
    return (
        one.tag == "input"
        and names[0] == names[1]
        and one.inside("form") is other.inside("form")
    )


def _asks_new(form: Node) -> bool:
    return any(node.attributes.get("name") == "new" for node in form.all())


_DO: Mapping[type, Callable[[OfficerBrowser, Any], None]] = {
    season_acts.SignsIn: OfficerBrowser._signs_in,
    season_acts.Opens: OfficerBrowser._opens,
    season_acts.Follows: OfficerBrowser._follows,
    season_acts.LooksAt: OfficerBrowser._looks_at,
    season_acts.Fills: OfficerBrowser._fills,
    season_acts.Ticks: OfficerBrowser._ticks,
    season_acts.Chooses: OfficerBrowser._chooses,
    season_acts.AddsTo: OfficerBrowser._adds_to,
    season_acts.Mends: OfficerBrowser._mends,
    season_acts.SendsFile: OfficerBrowser._sends,
    season_acts.Clicks: OfficerBrowser._clicks,
    season_acts.PageReads: OfficerBrowser._reads,
}
