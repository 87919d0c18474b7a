"""The way out over HTTP: one signed POST to the operator a text. The wire: WIRE.md."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import requests

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.over_http import Sessions, moment_of, rest_of
from assistant.gateways.signature import signed_headers

_DETAIL_MAX = 200  # characters of the operator's own words worth keeping


class HttpGateway:
    """Hands texts to an operator at `operator_url`. Each thread has a connection of its own."""

    def __init__(self, operator_url: str, sender: str, secret: str, timeout_s: float) -> None:
        self._url = operator_url.rstrip("/") + "/texts"
        # As it goes over the line, escapes and all. Raises ValueError for what is no address.
        self._path = requests.Request("POST", self._url).prepare().path_url
        self._sender = sender
        self._secret = secret
        self._timeout_s = timeout_s
        self._own = Sessions()

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offer one text. Trouble on the way is TRY_LATER; only the operator says FAILED."""
        body = self._body(outgoing)
        headers = signed_headers(self._secret, now, self._path, body)
        headers["Content-Type"] = "application/json; charset=utf-8"
        try:
            answer = self._own.session().post(
                self._url,
                data=body,
                headers=headers,
                timeout=self._timeout_s,
                allow_redirects=False,  # the signature covers the path
            )
        except OSError as trouble:  # every error of requests is one
            detail = f"no answer: {trouble}"[:_DETAIL_MAX]
            return Handover(Fate.TRY_LATER, detail, answered=False)
        rest = rest_of(answer.status_code, answer.headers.get("Retry-After", ""), now)
        return replace(_handover(answer.status_code, answer.content), rest=rest)

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

    def _body(self, outgoing: Outgoing) -> bytes:
        not_after = outgoing.not_after.astimezone(UTC)
        return json.dumps(
            {
                "id": outgoing.message_id,
                "to": outgoing.phone,
                "from": self._sender,
                "text": outgoing.text,
                "not_after": not_after.isoformat(timespec="seconds").replace("+00:00", "Z"),
            }
        ).encode()


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
