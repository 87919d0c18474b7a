"""Another provider's HTTP, by a mapping file: the operator's own reading of it.

The file says how a provider looks from outside; here the provider itself is played: what the
assistant hands in is read back out of its fields, and what phones do is told by the calls that
the file describes. Nothing is shared with the assistant but the file.
"""

import base64
import hashlib
import hmac
import json
import re
import socket
import tomllib
from collections import deque
from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qsl, urlsplit

import requests
from flask import Flask, Response, request

from gateway_sim import alphabet, wire
from gateway_sim.callbacks import Reply
from gateway_sim.record import EntryKind

if TYPE_CHECKING:
    from gateway_sim.network import Network

_NAMES = {"/gateway/text": "text", "/gateway/ring": "ring", "/gateway/ussd": "ussd"}
_NAMES["/gateway/receipt"] = "receipt"
FAULTS = ("busy", "lost", "half")
_SLOT = re.compile(r"\{([a-z0-9_]+)\}")
_USUAL_STATUS = {"taken": 200, "refused": 400, "busy": 503}


class SimulatedProvider:
    """A provider between the phones and the assistant. `faults` are taken one a request:

    busy: it is refused for now      lost: it is taken, and the connection ends unanswered
    half: it is taken, and half of the answer comes

    url: where the assistant's calls of this line begin, such as .../gateway/hill
    secrets: token, user, password, secret, as the mapping names them
    """

    def __init__(
        self,
        mapping: Path,
        url: str,
        secrets: Mapping[str, str],
        clock: Callable[[], datetime],
        answer_seconds: float,
    ) -> None:
        self.url = url
        self._says = tomllib.loads(mapping.read_text(encoding="utf-8"))
        self._secrets, self._clock, self._seconds = dict(secrets), clock, answer_seconds
        self.faults: deque[str] = deque()
        self._numbers = count(1)
        self._ours: dict[str, str] = {}  # by our own number of a text, whose id it came under
        self._segments: dict[tuple[str, str], dict[int, tuple[str, str]]] = {}
        self._parts: dict[str, list[str]] = {}  # of a joined text, the numbers of its segments
        self._so_far: dict[str, list[str]] = {}
        self._session = requests.Session()
        self._session.trust_env = False

    def close(self) -> None:
        """Give back the connections."""
        self._session.close()

    # --- what the assistant hands in ---------------------------------------------------------

    def serve(self, app: Flask, network: "Network") -> None:
        """Answer where the mapping says that texts are handed in."""
        send = self._says["send"]

        def handed_in() -> Response:
            fault = self.faults.popleft() if self.faults else ""
            if fault:
                network.core.note(EntryKind.HANDED_IN, detail=f"fault: {fault}", code=503)
            if fault == "busy":
                return self._answer("busy", "no room now")
            answer = self._handed_in(network)
            return _cut_short(answer, half=fault == "half") if fault else answer

        path = urlsplit(send["url"]).path
        app.add_url_rule(path, "provider", handed_in, methods=[send.get("method", "POST")])

    def _handed_in(self, network: "Network") -> Response:
        send = self._says["send"]
        slots = self._read(send)
        if slots is None:
            return self._answer("refused", "not ours", status=401)
        until = self._until(slots)
        phone = slots.get("phone") or "+" + slots["digits"]
        sender = slots.get("sender") or "+" + slots.get("sender_digits", "")
        theirs = f"pv-{next(self._numbers)}" if send.get("their_id") else ""
        number = theirs or slots.get("id", "")
        self._ours[number] = slots.get("id", number)
        whole = self._joined(phone, number, slots)
        if whole is None:
            return self._answer("taken", number=number)
        text = wire.HandedIn(number, phone, sender, whole, until)
        answer, repeated = network.hand_in(text)
        if repeated or answer.code in (202, 422):
            self._segments.pop((phone, slots.get("ref", "")), None)
        if repeated or answer.code == 202:
            return self._answer("taken", number=number)
        return self._answer("refused" if answer.code == 422 else "busy", answer.detail)

    def _joined(self, phone: str, number: str, slots: Mapping[str, str]) -> str | None:
        """A text whose segments are numbered, once the last of them is here."""
        count = int(slots.get("parts", 1))
        if count < 2 or "ref" not in slots:
            return slots["text"]
        found = self._segments.setdefault((phone, slots["ref"]), {})
        found[int(slots["part"])] = number, slots["text"]
        if len(found) < count:
            return None
        in_order = [found[each] for each in sorted(found)]
        self._parts[number] = [each for each, _ in in_order]
        return "".join(words for _, words in in_order)

    def _read(self, send: Mapping[str, Any]) -> dict[str, str] | None:
        """The slots as the assistant filled them; None where its secrets are not ours."""
        slots: dict[str, str] = {}
        said = self._said(send.get("body", "json"))
        for place, template in send["fields"].items():
            found = _slots_in(template, str(_at(said, place)))
            slots |= found or {}
        for name, template in send.get("headers", {}).items():
            slots |= _slots_in(template, request.headers.get(name, "")) or {}
        known = {name: value for name, value in self._secrets.items() if name in slots}
        right = all(slots[name] == value for name, value in known.items())
        return slots if right and self._is_sealed(send.get("sign"), slots) else None

    def _is_sealed(self, sign: Mapping[str, str] | None, slots: Mapping[str, str]) -> bool:
        """Whether a text bears the signature that the mapping wants."""
        if sign is None:
            return True
        at = request.headers.get(sign.get("time_header", ""), "")
        own = {"path": request.path, "now_unix": at}
        made = self._sealed(sign, {**slots, **own}, request.get_data())
        return hmac.compare_digest(made, request.headers.get(sign["header"], ""))

    def _said(self, body: str) -> Any:
        if body == "query":
            return request.args.to_dict()
        if body == "form":
            return dict(parse_qsl(request.get_data().decode(), keep_blank_values=True))
        return json.loads(request.get_data())

    def _until(self, slots: Mapping[str, str]) -> datetime:
        now = self._clock()
        if "until" in slots:
            return datetime.fromisoformat(slots["until"])
        if "until_unix" in slots:
            return datetime.fromtimestamp(int(slots["until_unix"]), UTC)
        left = timedelta(minutes=int(slots.get("minutes", 24 * 60)))
        return now + (timedelta(seconds=int(slots["seconds"])) if "seconds" in slots else left)

    def _answer(
        self, how: str, why: str = "", *, number: str = "", status: int | None = None
    ) -> Response:
        """An answer by which the assistant knows what became of its text."""
        send = self._says["send"]
        meets = send.get(how, {})
        fields: dict[str, Any] = {}
        if number and send.get("their_id"):
            fields[send["their_id"]] = number
        if meets.get("at") and meets["at"] not in fields:
            fields[meets["at"]] = meets.get("says", ["yes"])[0]
        if why and send.get("words"):
            fields[send["words"]] = why
        code = status or meets.get("status", [_USUAL_STATUS[how]])[0]
        for words in send.get("reads", ()):
            if set(_SLOT.findall(words)) <= fields.keys():
                return Response(_put(words, fields), code, content_type="text/plain")
        return Response(json.dumps(_nested(fields)), code, content_type="application/json")

    # --- what phones do ----------------------------------------------------------------------

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """Tell the assistant, as the mapping says; any failure is a Reply without a code."""
        name = _NAMES[path]
        heard = self._says.get(name)
        if heard is None:
            return Reply(200, detail=f"this provider tells of no {name}")
        if name == "receipt" and fields["fate"] not in heard["fates"].values():
            return Reply(200)
        reply = Reply(None)
        for said in self._told(name, heard, fields):
            reply = self._post(f"{self.url}/{name}", heard, said)
            if not reply.ok:
                break
        shows = name == "ussd" and fields["step"] != "end"
        return self._screen(heard, reply) if shows else reply

    def _told(
        self, name: str, heard: Mapping[str, Any], fields: Mapping[str, Any]
    ) -> list[dict[str, Any]]:
        """The fields of each request; the receipt of a joined text is one a segment."""
        of = self._parts.get(fields["id"]) if name == "receipt" else None
        ids = of or [fields["id"]]
        return [
            said for each in ids for said in self._pieces(name, heard, {**fields, "id": each})
        ]

    def _pieces(
        self, name: str, heard: Mapping[str, Any], fields: Mapping[str, Any]
    ) -> list[dict[str, Any]]:
        """The fields of each request: one, or one a segment where the mapping has pieces."""
        if name == "text" and heard.get("ref"):
            parts = alphabet.cut(fields["text"]).parts
            pieces: list[dict[str, Any]] = []
            own = (("ref", str(fields["id"])[-6:]), ("parts", len(parts)))
            for n, words in enumerate(parts, 1):
                piece = dict(fields) | {"text": words, "id": f"{fields['id']}-{n}"}
                said = self._fields(name, heard, piece)
                said |= {heard[key]: value for key, value in own} | {heard["part"]: n}
                pieces.append(said)
            return pieces
        return [self._fields(name, heard, fields)]

    def _fields(
        self, name: str, heard: Mapping[str, Any], fields: Mapping[str, Any]
    ) -> dict[str, Any]:
        at = datetime.fromisoformat(fields["at"])
        said: dict[str, Any] = {}
        for own, value in (
            ("phone", str(fields.get("from", "")).removeprefix("+")),
            ("id", fields["id"]),
            ("text", self._words(heard, fields)),
            ("session", fields.get("session", "")),
            ("at", _stamped(at, heard.get("at_as", "iso"))),
            ("detail", fields.get("detail", "")),
        ):
            if heard.get(own):
                said[heard[own]] = value
        if name == "ussd" and heard.get("step"):
            theirs = [k for k, v in heard.get("steps", {}).items() if v == fields["step"]]
            said[heard["step"]] = theirs[0] if theirs else "on"
        if name == "receipt":
            under = self._ours.get(fields["id"], fields["id"])
            ids = {"our_id": under, "their_id": fields["id"]}
            said |= {heard[own]: value for own, value in ids.items() if heard.get(own)}
            fates = {ours: theirs for theirs, ours in heard["fates"].items()}
            said[heard["fate"]] = fates[fields["fate"]]
        return said

    def _words(self, heard: Mapping[str, Any], fields: Mapping[str, Any]) -> str:
        """What a phone wrote; in a session all of its answers, where the mapping has it so."""
        words = str(fields.get("text", ""))
        if not heard.get("so_far") or "session" not in fields:
            return words
        told = self._so_far.setdefault(fields["session"], [])
        if fields["step"] == "answer":
            told.append(words)
        return str(heard["so_far"]).join(told)

    def _post(self, url: str, heard: Mapping[str, Any], said: dict[str, Any]) -> Reply:
        check, kind = self._says["check"], heard.get("body", "json")
        headers: dict[str, str] = {}
        token = _put(check.get("token", "{token}"), self._secrets)
        if check.get("header"):
            headers[check["header"]] = token
        if check.get("field"):
            said = said | {check["field"]: token}
        whole: Any = _nested(said)
        if heard.get("each"):
            # The secret of a call stands beside the list, not in each of its items.
            inner = {k: v for k, v in said.items() if k != check.get("field")}
            outer = {check["field"]: token} if check.get("field") else {}
            whole = _nested({heard["each"]: [_nested(inner)]} | outer)
        octets = json.dumps(whole, ensure_ascii=False).encode()
        as_kind: dict[str, dict[str, Any]] = {
            "json": {"data": octets},
            "form": {"data": said},
            "query": {"params": said},
        }
        if kind == "json":
            headers["Content-Type"] = "application/json"
        method = "GET" if kind == "query" else "POST"
        ready = requests.Request(method, url, headers=headers, **as_kind[kind]).prepare()
        self._sign(ready, check.get("sign"))
        try:
            answer = self._session.send(ready, timeout=self._seconds, allow_redirects=False)
        except requests.RequestException as silent:
            return Reply(None, detail=f"no answer from {url}: {type(silent).__name__}")
        return Reply(answer.status_code, answer.content, "" if answer.ok else answer.text[:200])

    def _sign(self, ready: requests.PreparedRequest, sign: Mapping[str, str] | None) -> None:
        if sign is None:
            return
        body = ready.body or b""
        octets = body.encode() if isinstance(body, str) else bytes(body)
        at = str(int(self._clock().timestamp()))
        slots = {"path": urlsplit(ready.url or "").path, "now_unix": at}
        ready.headers[sign["header"]] = self._sealed(sign, slots, octets)
        if sign.get("time_header"):
            ready.headers[sign["time_header"]] = at

    def _sealed(self, sign: Mapping[str, str], slots: Mapping[str, str], octets: bytes) -> str:
        """The signature over what the mapping says."""
        before, mark, after = sign.get("over", "{body}").partition("{body}")
        over = _put(before, slots).encode() + (octets if mark else b"")
        over += _put(after, slots).encode()
        secret, digest = self._secrets["secret"].encode(), sign.get("digest", "sha256")
        made = hmac.new(secret, over, getattr(hashlib, digest)).digest()
        in_hex = sign.get("spelled", "hex") == "hex"
        return made.hex() if in_hex else base64.b64encode(made).decode()

    def _screen(self, heard: Mapping[str, Any], reply: Reply) -> Reply:
        """The assistant's answer to a step, as our own wire has it."""
        if not reply.ok or reply.code == 204:
            return reply
        words = reply.body.decode()
        for name, more in (("answer_more", True), ("answer_last", False)):
            found = _slots_in(heard.get(name, "{text}"), words)
            if found is not None:
                text = found.get("text", "")
                if "json" in heard.get("answer_kind", ""):
                    text = json.loads(f'"{text}"')
                return Reply(200, wire.written({"text": text, "more": more}))
        return Reply(502, detail="an answer that the mapping does not describe")


def _cut_short(answer: Response, *, half: bool) -> Response:
    """Ends the connection before the answer, or in the middle of it."""
    connection: socket.socket = request.environ["werkzeug.socket"]
    if half:
        head = (
            f"HTTP/1.1 {answer.status}\r\nContent-Length: {answer.content_length + 1}\r\n\r\n"
        )
        connection.sendall(head.encode() + answer.get_data()[:1])
    connection.shutdown(socket.SHUT_RDWR)
    return answer


def _put(template: str, slots: Mapping[str, str]) -> str:
    return _SLOT.sub(lambda found: slots.get(found[1], found[0]), template)


def _slots_in(template: str, words: str) -> dict[str, str] | None:
    """What fills the slots of a template in these words; None where it does not fit them."""
    pattern, last = "", 0
    for found in _SLOT.finditer(template):
        pattern += re.escape(template[last : found.start()]) + f"(?P<{found[1]}>.*)"
        last = found.end()
    pattern += re.escape(template[last:])
    fits = re.fullmatch(pattern, words, re.DOTALL)
    return fits.groupdict() if fits else None


def _at(said: Any, place: str) -> Any:
    for name in place.split("."):
        said = said[int(name)] if isinstance(said, list) else said[name]
    return said


def _nested(fields: Mapping[str, Any]) -> Any:
    """Fields by dotted places as objects; a name of digits makes a list."""
    whole: dict[str, Any] = {}
    for place, value in fields.items():
        inner, names = whole, place.split(".")
        for name in names[:-1]:
            inner = inner.setdefault(name, {})
        inner[names[-1]] = value
    return _lists(whole)


def _lists(found: Any) -> Any:
    if not isinstance(found, dict):
        return found
    inner = {name: _lists(value) for name, value in found.items()}
    if inner and all(name.isdecimal() for name in inner):
        return [inner[name] for name in sorted(inner, key=int)]
    return inner


def _stamped(at: datetime, how: str) -> Any:
    if how == "iso":
        return wire.stamp(at)
    if how in ("unix", "unix_ms"):
        return int(at.timestamp() * (1000 if how == "unix_ms" else 1))
    return at.astimezone(UTC).strftime(how)
