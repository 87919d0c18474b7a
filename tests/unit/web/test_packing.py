"""Pages leave compressed, but never to a request that another site began.

Compression and secrets: Gluck, Harris, Prado, "BREACH: reviving the CRIME attack", 2013. Which
site began a request: W3C, Fetch Metadata Request Headers, `Sec-Fetch-Site`. Codings of content:
RFC 9110, 8.4.1 and 12.5.3; brotli: RFC 7932.
"""

import gzip
import re
from datetime import UTC, datetime, timedelta

import brotli
import pytest
from flask.testing import FlaskClient
from freezegun import freeze_time
from werkzeug.test import TestResponse

from assistant.web.app import create_app
from tests.unit.web.conftest import PASSWORD, give_password
from tests.valley import OFFICER, Valley

BROWSER = "gzip, deflate, br, zstd"  # as Chromium and Firefox say


@pytest.fixture
def client(valley: Valley) -> FlaskClient:
    """A browser whose officer is signed in, and that shows answers as they came."""
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley)
    app = create_app(valley.house, secret="wire", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    found = app.test_client()
    token = re.search(r'csrf_token" value="([^"]+)', found.get("/sign-in").text)
    assert token
    fields = {"csrf_token": token[1], "phone": OFFICER, "password": PASSWORD}
    assert found.post("/sign-in", data=fields).status_code == 303
    return found


def _asked(
    client: FlaskClient, path: str, accept: str = BROWSER, site: str | None = None
) -> TestResponse:
    headers = {"Accept-Encoding": accept} | ({"Sec-Fetch-Site": site} if site else {})
    return client.get(path, headers=headers, buffered=True)  # which closes files


@pytest.mark.parametrize("path", ["/morning", "/warnings", "/season", "/account"])
def test_a_page_leaves_compressed_and_is_the_same(client: FlaskClient, path: str) -> None:
    """About half or less; what a browser cannot read it is not sent."""
    plain = _asked(client, path, "identity")
    packed = _asked(client, path)
    assert "Content-Encoding" not in plain.headers
    assert packed.headers["Content-Encoding"] == "br"
    assert "Accept-Encoding" in packed.headers["Vary"]
    assert len(packed.data) < 0.55 * len(plain.data)
    unpacked = brotli.decompress(packed.data).decode()
    assert _without_tokens(unpacked) == _without_tokens(plain.text)
    old = _asked(client, path, "gzip, deflate")
    assert old.headers["Content-Encoding"] == "gzip"
    assert _without_tokens(gzip.decompress(old.data).decode()) == _without_tokens(plain.text)


def _without_tokens(page: str) -> str:
    return re.sub(r'csrf_token" value="[^"]+', "", page)


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_what_another_site_began_leaves_as_it_is(client: FlaskClient, site: str) -> None:
    """So nothing can be learned from its length; the length of a page is that of its words."""
    assert "Content-Encoding" not in _asked(client, "/farmers?search=Amina", site=site).headers
    for ours in ("same-origin", "none"):
        found = _asked(client, "/farmers?search=Amina", site=ours)
        assert found.headers["Content-Encoding"] == "br"


def test_cookies_do_not_travel_with_requests_of_other_sites(client: FlaskClient) -> None:
    """What browsers that do not say who began a request are held to."""
    cookie = client.get_cookie("nursery")
    assert cookie is not None and cookie.same_site == "Lax"


def test_the_token_of_the_forms_is_signed_anew_each_second(client: FlaskClient) -> None:
    """What is guessed of one fits no other."""
    signed = []
    for seconds in (1, 2):
        with freeze_time(datetime.now(UTC) + timedelta(seconds=seconds)):
            token = re.search(r'csrf_token" value="([^"]+)', client.get("/account").text)
            assert token
            signed.append(token[1].split("."))
    (_, moment, signature), (_, moment_after, signature_after) = signed
    assert moment != moment_after and signature != signature_after


@pytest.mark.parametrize("name", ["nursery.css", "nursery.js"])
def test_style_and_script_leave_compressed(client: FlaskClient, name: str) -> None:
    """They hold no secret, whoever asks."""
    packed = _asked(client, f"/static/{name}", site="cross-site")
    assert packed.headers["Content-Encoding"] == "br"
    assert brotli.decompress(packed.data) == _asked(client, f"/static/{name}", "identity").data


def test_the_gateway_is_answered_plainly(client: FlaskClient) -> None:
    """Its answers are short, and bridges are simple."""
    for rule in client.application.url_map.iter_rules():
        if rule.endpoint.startswith("gateway.") and "POST" in (rule.methods or ()):
            answer = client.post(rule.rule, headers={"Accept-Encoding": BROWSER})
            assert "Content-Encoding" not in answer.headers
            assert "Vary" not in answer.headers or "Accept" not in answer.headers["Vary"]
