"""Where alerts are read: files, folders and addresses, over a real server of this machine."""

import socket
import threading
from collections.abc import Callable, Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alerts.sources import Stamp
from assistant.gateways.alert_address import AlertAddress
from assistant.gateways.alert_feed import read_feed
from assistant.gateways.alert_files import AlertFiles
from assistant.gateways.outside import is_outside
from tests.cap import cap

FRESH = Stamp()
TOO_MUCH = 1_000_001


class Service(BaseHTTPRequestHandler):
    """Answers from a table of (status, headers, body) and keeps what it was asked."""

    pages: dict[str, tuple[int, dict[str, str], bytes]] = {}
    asked: list[tuple[str, str]] = []

    def do_GET(self) -> None:
        """One answer."""
        wanted = self.headers.get("If-None-Match", "")
        self.asked.append((self.path, wanted))
        status, headers, body = self.pages.get(self.path, (404, {}, b""))
        if wanted and headers.get("ETag") == wanted:
            status, body = 304, b""
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        try:
            self.wfile.write(body)
        except ConnectionError:
            return  # who asked had enough

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing."""


@pytest.fixture
def service() -> Iterator[str]:
    """The address of a server with nothing on it."""
    Service.pages, Service.asked = {}, []
    server = ThreadingHTTPServer(("127.0.0.1", 0), Service)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


def source(address: str, seconds: Callable[[], float] = lambda: 0.0) -> AlertAddress:
    return AlertAddress(address, timeout_s=60, seconds=seconds)


# --- files and folders -----------------------------------------------------------------------


def test_a_folder_gives_each_message_until_it_was_kept(tmp_path: Path) -> None:
    """What could not be kept is given again; what changed is new."""
    for name in ("b.xml", "a.CAP", "read me.txt", ".half.xml"):
        (tmp_path / name).write_bytes(cap(note=name))
    folder = AlertFiles(tmp_path)
    found = folder.look(FRESH).found
    assert [each.raw for each in found] == [cap(note="a.CAP"), cap(note="b.xml")]
    folder.done(found[0].key)
    assert folder.look(FRESH).found == found[1:]
    (tmp_path / "a.CAP").write_bytes(cap(note="mended"))
    assert len(folder.look(FRESH).found) == 2


def test_one_file_is_a_source_too(tmp_path: Path) -> None:
    """Whatever its name ends in."""
    path = tmp_path / "alert"
    path.write_bytes(cap())
    assert AlertFiles(path).look(FRESH).found[0].raw == cap()


def test_what_is_not_there_is_told(tmp_path: Path) -> None:
    """And does not stop the rest."""
    look = AlertFiles(tmp_path / "nowhere").look(FRESH)
    assert look.found == () and "nowhere" in look.trouble
    (tmp_path / "folder.xml").mkdir()
    (tmp_path / "good.xml").write_bytes(cap())
    look = AlertFiles(tmp_path).look(FRESH)
    assert len(look.found) == 1 and "folder.xml" in look.trouble


def test_of_a_huge_file_only_so_much_is_read(tmp_path: Path) -> None:
    """One byte more than is allowed, so that it is seen to be too big."""
    (tmp_path / "huge.xml").write_bytes(b"x" * (TOO_MUCH + 5000))
    assert len(AlertFiles(tmp_path).look(FRESH).found[0].raw) == TOO_MUCH


# --- addresses -------------------------------------------------------------------------------


def test_an_address_is_asked_for_what_changed(service: str) -> None:
    """RFC 9110, 13.1: If-None-Match with the ETag of the last answer."""
    Service.pages["/now"] = (200, {"ETag": '"7"'}, cap())
    first = source(f"{service}/now").look(FRESH)
    assert first.found[0].raw == cap() and first.stamp.etag == '"7"' and not first.trouble
    again = source(f"{service}/now").look(first.stamp)
    assert again.found == () and again.stamp == first.stamp and not again.trouble
    assert Service.asked == [("/now", ""), ("/now", '"7"')]


ATOM = """<feed xmlns="http://www.w3.org/2005/Atom"><title>t</title>
<entry><link href="web/1"/><link href="cap/1" type="application/cap+xml"/></entry>
<entry><link href="/cap/2" rel="alternate"/></entry><entry/>
<entry><link href="https://elsewhere.example.org/3"/></entry></feed>"""
RSS = """<rss version="2.0"><channel><link>x</link><item><link>cap/1</link></item>
<item><link> /cap/2 </link></item><item><title>no link</title></item></channel></rss>"""


@pytest.mark.parametrize("listed", [ATOM, RSS], ids=["Atom", "RSS"])
def test_a_list_leads_to_its_messages_once_each(service: str, listed: str) -> None:
    """Links are of the list's own host; those that were kept are not fetched again."""
    Service.pages |= {
        "/list": (200, {"ETag": '"l"'}, listed.encode()),
        "/cap/1": (200, {}, cap(identifier="1")),
        "/cap/2": (200, {}, cap(identifier="2")),
    }
    feed = source(f"{service}/list")
    look = feed.look(FRESH)
    assert [each.raw for each in look.found] == [cap(identifier="1"), cap(identifier="2")]
    assert look.stamp.etag == '"l"' and not look.trouble
    for each in look.found:
        feed.done(each.key)
    assert feed.look(FRESH).found == ()
    assert [path for path, _ in Service.asked] == ["/list", "/cap/1", "/cap/2", "/list"]


def test_a_list_is_read_again_where_a_message_could_not_be(service: str) -> None:
    """No stamp is kept, so that the server gives the whole list again."""
    Service.pages["/list"] = (200, {"ETag": '"l"'}, RSS.encode())
    Service.pages["/cap/2"] = (200, {}, cap())
    look = source(f"{service}/list").look(FRESH)
    assert len(look.found) == 1 and look.stamp == FRESH and "404" in look.trouble


def test_redirects_are_few_and_stay_safe(service: str) -> None:
    """To another page of the same server they are followed; in circles or to http they end."""
    Service.pages |= {
        "/old": (301, {"Location": "/new"}, b""),
        "/new": (200, {}, cap()),
        "/round": (302, {"Location": "/round"}, b""),
        "/unsafe": (302, {"Location": "http://alerts.example.org/"}, b""),
        "/file": (302, {"Location": "file:///etc/hostname"}, b""),
        "/lost": (302, {}, b""),
    }
    assert source(f"{service}/old").look(FRESH).found[0].raw == cap()
    for path, says in {
        "/round": "redirects",
        "/unsafe": "not https",
        "/file": "not https",
    }.items():
        look = source(f"{service}{path}").look(FRESH)
        assert look.found == () and says in look.trouble
    assert source(f"{service}/lost").look(FRESH).trouble


def test_a_redirect_never_leaves_its_host(service: str) -> None:
    """A feed once led us to a service of our own machine, whose answer officers could read."""
    local = ThreadingHTTPServer(("127.0.0.1", 0), Service)
    thread = threading.Thread(target=local.serve_forever)
    thread.start()
    there = f"http://127.0.0.1:{local.server_port}/phones"
    Service.pages |= {
        "/there": (302, {"Location": there}, b""),
        "/abroad": (302, {"Location": "https://alerts.example.org/a"}, b""),
        "/phones": (200, {}, b"names and numbers"),
    }
    try:
        for path in ("/there", "/abroad"):
            look = source(f"{service}{path}").look(FRESH)
            assert look.found == () and "leads off to" in look.trouble
        assert "/phones" not in [path for path, _ in Service.asked]
    finally:
        local.shutdown()
        local.server_close()
        thread.join()


def test_a_name_that_leads_into_the_own_network_is_not_spoken_to(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Whatever the name server says at that moment: the connection itself is looked at."""
    heard: list[bytes] = []
    with socket.create_server(("127.0.0.1", 0)) as listener:
        here = listener.getsockname()

        def answered(host: str, port: int, *more: object) -> list[object]:
            return [(socket.AF_INET, socket.SOCK_STREAM, 6, "", here)]

        monkeypatch.setattr(socket, "getaddrinfo", answered)
        look = source("https://alerts.example.org/list").look(FRESH)
        connection, _ = listener.accept()
        with connection:
            connection.settimeout(60)
            heard.append(connection.recv(100))
    assert look.found == () and look.trouble
    assert heard == [b""]  # hung up without a word


# IANA's registries of special-purpose addresses (RFC 6890), IPv4 within IPv6 (RFC 4291, 6052,
# 3056), and addresses that are public.
INSIDE = (
    "127.0.0.1 10.1.2.3 172.16.0.1 192.168.1.1 169.254.169.254 100.64.0.1 0.0.0.0 224.0.0.1 "
    "::1 fe80::1 fe80::1%eth0 fd00::1 ::ffff:10.0.0.1 ::ffff:127.0.0.1 64:ff9b::7f00:1 "
    "2002:7f00:1:: ff02::1 ::"
).split()
OUTSIDE = "8.8.8.8 2001:4860:4860::8888 64:ff9b::808:808 ::ffff:8.8.8.8".split()


@pytest.mark.parametrize(
    ("address", "outside"),
    [
        *((each, False) for each in INSIDE),
        *((each, True) for each in OUTSIDE),
    ],
)
def test_what_is_outside(address: str, outside: bool) -> None:
    """By the registries."""
    assert is_outside(address) is outside


@pytest.mark.parametrize(
    "address",
    ["http://alerts.example.org/a", "ftp://alerts.example.org/", "https://", "https://[", "a"],
)
def test_only_https_is_read(address: str) -> None:
    """Nobody on the way can write an alert."""
    look = source(address).look(FRESH)
    assert look.found == () and address in look.trouble


def test_an_endless_answer_is_cut_off(service: str) -> None:
    """By size, and by time."""
    Service.pages["/huge"] = (200, {}, b"x" * (2 * TOO_MUCH))
    assert "more than 1000000 bytes" in source(f"{service}/huge").look(FRESH).trouble
    ticks = iter(range(0, 100_000, 50))
    slow = source(f"{service}/huge", seconds=lambda: float(next(ticks)))
    assert "not done in 60 seconds" in slow.look(FRESH).trouble


def test_a_server_that_is_gone_is_told(service: str) -> None:
    """With the address and the kind of trouble."""
    look = source("http://127.0.0.1:9/never").look(FRESH)
    assert "http://127.0.0.1:9/never: ConnectionError" in look.trouble
    assert "404" in source(f"{service}/nothing").look(FRESH).trouble


def test_what_is_no_list_is_a_message(service: str) -> None:
    """Also a web page that a server sends instead: it is kept as faulty and seen."""
    Service.pages["/page"] = (200, {}, b"<html><body>Moved</body></html>")
    assert source(f"{service}/page").look(FRESH).found[0].raw.startswith(b"<html>")


@given(
    st.binary(max_size=200)
    | st.text(max_size=60).map(lambda t: RSS.replace("cap/1", t).encode())
)
def test_no_list_makes_it_fail(raw: bytes) -> None:
    """Whatever comes."""
    links = read_feed(raw, "https://alerts.example.org/list")
    assert links is None or all(isinstance(link, str) for link in links)
