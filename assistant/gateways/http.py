"""The way out over HTTP: one signed POST to the operator a text. The wire: WIRE.md."""

import json
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import requests

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.over_http import Sessions, moment_of, rest_of, unanswered
from assistant.gateways.signature import signed_headers

_DETAIL_MAX = 200  # characters of the operator's own words worth keeping
OK = 200
_LIST = "/list"
_NO_LISTS = frozenset({404, 405, 501})  # what an operator answers that has no such address
_ASK_AGAIN = timedelta(hours=1)
_OF_THE_LINK = frozenset({401, 403, 404})  # a secret, a clock or an address is wrong
_LINK_REST = timedelta(seconds=15)
_UNSAID = Handover(Fate.TRY_LATER, "the answer to the list says nothing of this text")


class HttpGateway:
    """Hands texts to an operator at `operator_url`. Each thread has a connection of its own."""

    at_once = 500

    def __init__(self, operator_url: str, sender: str, secret: str, timeout_s: float) -> None:
        self._url = operator_url.rstrip("/") + "/texts"
        # As it goes over the line, escapes and all. Raises ValueError for what is no address.
        self._path = requests.Request("POST", self._url).prepare().path_url
        self._sender = sender
        self._secret = secret
        self._timeout_s = timeout_s
        self._own = Sessions()
        self._no_lists_until: datetime | None = None

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offer one text. Trouble on the way is TRY_LATER; only the operator says FAILED."""
        body = json.dumps({**_told(outgoing), "from": self._sender}).encode()
        answer = self._post("", body, now)
        if isinstance(answer, Handover):
            return answer
        return replace(_handover(answer.status_code, answer.content), rest=_rest(answer, now))

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        """Any text, but within the hour after the operator took no list."""
        return self._no_lists_until is None or now >= self._no_lists_until

    def send_all(
        self, texts: Sequence[Outgoing], now: datetime
    ) -> Sequence[Handover | None] | None:
        """Offer many at once. None where the operator takes no lists, which is asked anew after
        an hour."""
        if not self.in_lists(texts[0], now):
            return None
        told = {"from": self._sender, "texts": [_told(each) for each in texts]}
        answer = self._post(_LIST, json.dumps(told).encode(), now)
        if isinstance(answer, Handover):
            return [answer] * len(texts)
        if answer.status_code in _NO_LISTS:
            self._no_lists_until = now + _ASK_AGAIN
            return None
        if answer.status_code != OK:
            of_all = _handover(answer.status_code, answer.content)
            first = replace(of_all, rest=_rest(answer, now))
            return [first, *([None] * (len(texts) - 1))]
        said = _answers(answer.content)
        return [said.get(each.message_id, _UNSAID) for each in texts]

    def _post(self, below: str, body: bytes, now: datetime) -> requests.Response | Handover:
        """The operator's answer, or what it means that there is none."""
        headers = signed_headers(self._secret, now, self._path + below, body)
        headers["Content-Type"] = "application/json; charset=utf-8"
        try:
            return self._own.session().post(
                self._url + below,
                data=body,
                headers=headers,
                timeout=self._timeout_s,
                allow_redirects=False,  # the signature covers the path
            )
        except OSError as trouble:  # every error of requests is one
            return unanswered(trouble, self._url)

    def time(self) -> datetime | None:
        """The operator's clock, by the Date that every answer of a server bears (RFC 9110,
        6.6.1); None where it does not answer or bears none."""
        try:
            answer = self._own.session().head(
                self._url, timeout=self._timeout_s, allow_redirects=False
            )
        except OSError:
            return None
        return moment_of(answer.headers.get("Date", ""))


def _rest(answer: requests.Response, now: datetime) -> timedelta | None:
    """How long the line is left in peace; None where the answer is about the text."""
    if answer.status_code in _OF_THE_LINK:
        return _LINK_REST
    return rest_of(answer.status_code, answer.headers.get("Retry-After", ""), now)


def _told(outgoing: Outgoing) -> dict[str, str]:
    """A text as it goes over the wire, but for its sender."""
    not_after = outgoing.not_after.astimezone(UTC)
    return {
        "id": outgoing.message_id,
        "to": outgoing.phone,
        "text": outgoing.text,
        "not_after": not_after.isoformat(timespec="seconds").replace("+00:00", "Z"),
    }


def _answers(content: bytes) -> dict[str, Handover]:
    """What an operator says of each text of a list, by its id."""
    try:
        said = json.loads(content)
        each = said["answers"]
        return {str(one["id"]): _one(one) for one in each}
    except (ValueError, RecursionError, KeyError, TypeError):
        return {}


def _one(said: dict[str, object]) -> Handover:
    fate, detail = said.get("fate"), str(said.get("detail") or "")[:_DETAIL_MAX]
    if fate == "accepted":
        return Handover(Fate.ACCEPTED)
    return Handover(Fate.FAILED if fate == "failed" else Fate.TRY_LATER, detail)


def _handover(status: int, content: bytes) -> Handover:
    """Trust a status only with the fate that belongs to it: others may answer in between."""
    try:
        said = json.loads(content)
    except (ValueError, RecursionError):
        said = None
    fate, detail = (
        (said.get("fate"), said.get("detail")) if isinstance(said, dict) else ("", "")
    )
    if status in (200, 202) and fate == "accepted":
        return Handover(Fate.ACCEPTED)
    words = f"{status} {detail or ''}".strip()[:_DETAIL_MAX]
    if status == 422 and fate == "failed":
        return Handover(Fate.FAILED, words)
    return Handover(Fate.TRY_LATER, words)
