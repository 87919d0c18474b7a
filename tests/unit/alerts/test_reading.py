"""Messages of the Common Alerting Protocol, read and checked.

What is right and wrong is from OASIS CAP-V1.2 (1 July 2010), section 3; the numbers name it.
"""

from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alert_terms import MessageType, Reference
from assistant.alerts import Alert, AlertFault, AlertWrong, Faulty, read_alert
from assistant.places import Circle, Geocode, Point
from tests.cap import RING, SENDER, Raw, area, cap, code, info, part


def read(raw: bytes) -> Alert:
    found = read_alert(raw)
    assert isinstance(found, Alert), found
    return found


def faults(raw: bytes) -> tuple[AlertFault, ...]:
    found = read_alert(raw)
    assert isinstance(found, Faulty), found
    return found.faults


def test_the_thunderstorm_of_the_standard_is_read() -> None:
    """Values of the example in CAP 1.2, appendix A.2."""
    storm = info(
        language=None,
        event="SEVERE THUNDERSTORM",
        responseType="Shelter",
        urgency="Immediate",
        certainty="Observed",
        eventCode=code("SAME", "SVR"),
        onset=None,
        expires="2003-06-17T16:00:00-07:00",
        area=area(
            areaDesc="SOUTHWESTERN ALPINE COUNTY",
            polygon="38.47,-120.14 38.34,-119.95 38.52,-119.74 38.62,-119.89 38.47,-120.14",
            geocode=[code("SAME", "006109"), code("SAME", "006009"), code("SAME", "006003")],
        ),
    )
    alert = read(cap(identifier="KSTO1055887203", sent="2003-06-17T14:57:00-07:00", info=storm))
    assert alert.key.sent == datetime(2003, 6, 17, 21, 57, tzinfo=UTC)
    (said,) = alert.infos
    assert (said.event, said.severity, said.urgency, said.certainty) == (
        "SEVERE THUNDERSTORM",
        "Severe",
        "Immediate",
        "Observed",
    )
    assert said.language == "en-US"  # 3.2.2 <language>: assumed where none is given
    assert said.expires == datetime(2003, 6, 17, 23, 0, tzinfo=UTC)
    assert said.event_codes == (Geocode("SAME", "SVR"),)
    (place,) = said.areas
    assert place.polygons[0][:2] == (Point(38.47, -120.14), Point(38.34, -119.95))
    assert [each.value for each in place.geocodes] == ["006109", "006009", "006003"]


def test_the_earthquake_of_the_standard_is_read() -> None:
    """Values of the example in CAP 1.2, appendix A.3: an update, and a circle of radius 0."""
    quake = info(
        category="Geo", area=area(polygon=None, circle="32.9525,-115.5527 0"), urgency="Past"
    )
    named = "trinet@caltech.edu,TRI13970876.1,2003-06-11T20:30:00-07:00"
    alert = read(cap(msgType="Update", references=named, info=quake))
    before = datetime(2003, 6, 12, 3, 30, tzinfo=UTC)
    assert alert.kind is MessageType.UPDATE
    assert alert.references == (Reference("trinet@caltech.edu", "TRI13970876.1", before),)
    assert alert.infos[0].areas[0].circles == (Circle(Point(32.9525, -115.5527), 0.0),)


def test_all_that_may_stand_in_a_message_may_stand_in_it() -> None:
    """Every element of the data dictionary, those that may be repeated twice (3.2)."""
    everything = info(
        category=["Met", "Env"],
        responseType=["Prepare", "None"],
        audience="farmers",
        eventCode=[code("a", "1"), code("b", "2")],
        effective="2026-06-12T06:00:00+03:00",
        description="d",
        instruction="i",
        web="https://weather.example.org/1",
        contact="c",
        parameter=[code("rain", "60 mm"), code("rain", "80 mm")],
        resource=[
            Raw(
                part("resourceDesc", "map")
                + part("mimeType", "image/png")
                + part("size", "1200")
                + part("uri", "map.png")
                + part("derefUri", "aGk=")
                + part("digest", "00")
            )
        ]
        * 2,
        area=[
            area(
                polygon=[RING, RING],
                circle=["-1,37 5.5", "-1,37 0"],
                geocode=[code("a", "1"), code("a", "2")],
                altitude="0",
                ceiling="5000.5",
            )
        ]
        * 2,
    )
    alert = read(
        cap(
            source="desk",
            restriction="none",
            addresses='one "and two"',
            code=["profile:1", "profile:2"],
            note="n",
            references=f"{SENDER},LWS-0,2026-06-11T06:00:00+03:00",
            incidents="flood-3",
            info=[everything, everything],
        )
    )
    assert len(alert.infos) == 2 and len(alert.infos[0].areas[1].polygons) == 2


RIGHT: dict[str, bytes] = {
    "blank space round a text": cap(identifier="\n  LWS-1\n"),
    "no info at all, as in an acknowledgement": cap(msgType="Ack", info=None),
    "UTC as the standard writes it": cap(sent="2026-06-12T03:00:00-00:00"),
    "the end of a day as hour 24": cap(sent="2026-06-12T24:00:00+03:00"),
    "a comment": cap(note=Raw("a<!-- b -->c")),
    "a prefix instead of a default namespace": cap()
    .replace(
        b'<alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">',
        b'<c:alert xmlns="urn:oasis:names:tc:emergency:cap:1.2"'
        b' xmlns:c="urn:oasis:names:tc:emergency:cap:1.2">',
    )
    .replace(b"</alert>", b"</c:alert>"),
    "where its schema is": cap().replace(
        b"<alert ",
        b'<alert xmlns:i="http://www.w3.org/2001/XMLSchema-instance" i:schemaLocation="a b" ',
    ),
    "a byte order mark": b"\xef\xbb\xbf" + cap(),
    "other letters than ours": cap(info=info(headline="Mvua kubwa – भारी बारिश")),
    "UTF-16": '<?xml version="1.0" encoding="UTF-16"?>'.encode("utf-16")
    + cap().decode().encode("utf-16-le"),
}


@pytest.mark.parametrize("raw", RIGHT.values(), ids=RIGHT)
def test_what_the_standard_allows_is_read(raw: bytes) -> None:
    """Nobody's warning is lost for its writing."""
    read(raw)


def head(**changes: Any) -> bytes:
    return cap(**changes)


def danger(**changes: Any) -> bytes:
    return cap(info=info(**changes))


def place(**changes: Any) -> bytes:
    return cap(info=info(area=area(**changes)))


INFO = "alert/info[1]/"
AREA = INFO + "area[1]/"
WRONG: dict[str, tuple[bytes, AlertWrong, str]] = {
    "nothing": (b"", AlertWrong.NOT_XML, "alert"),
    "no XML": (b"Heavy rain tomorrow", AlertWrong.NOT_XML, "alert"),
    "half a message": (cap()[:-30], AlertWrong.NOT_XML, "alert"),
    "an encoding that is not": (
        b'<?xml version="1.0" encoding="x-none"?><a/>',
        AlertWrong.NOT_XML,
        "alert",
    ),
    "another document": (b"<rss/>", AlertWrong.NOT_CAP, "alert"),
    "version 1.1": (cap("urn:oasis:names:tc:emergency:cap:1.1"), AlertWrong.NOT_CAP, "alert"),
    "version 1.0": (cap("http://www.incident.com/cap/1.0"), AlertWrong.NOT_CAP, "alert"),
    "no namespace": (cap(""), AlertWrong.NOT_CAP, "alert"),
    "a document type": (b"<!DOCTYPE alert>" + cap(), AlertWrong.DTD, "alert"),
    "no identifier": (head(identifier=None), AlertWrong.MISSING, "alert/identifier"),
    "an empty identifier": (head(identifier=" "), AlertWrong.EMPTY, "alert/identifier"),
    "a space in it (3.2.1)": (
        head(identifier="LWS 1"),
        AlertWrong.IDENTIFIER,
        "alert/identifier",
    ),
    "a comma in it (3.2.1)": (
        head(identifier="LWS,1"),
        AlertWrong.IDENTIFIER,
        "alert/identifier",
    ),
    "a < in it (3.2.1)": (head(identifier="LWS<1"), AlertWrong.IDENTIFIER, "alert/identifier"),
    "a & in it (3.2.1)": (head(sender="a&b"), AlertWrong.IDENTIFIER, "alert/sender"),
    "Z for a zone (3.3.2)": (head(sent="2026-06-12T03:00:00Z"), AlertWrong.TIME, "alert/sent"),
    "no zone": (head(sent="2026-06-12T03:00:00"), AlertWrong.TIME, "alert/sent"),
    "no seconds": (head(sent="2026-06-12T03:00+03:00"), AlertWrong.TIME, "alert/sent"),
    "parts of a second": (
        head(sent="2026-06-12T03:00:00.5+03:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "a day that is not": (
        head(sent="2026-02-30T03:00:00+03:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "year 0": (head(sent="0000-02-03T03:00:00+03:00"), AlertWrong.TIME, "alert/sent"),
    "before all services": (
        head(sent="0001-01-01T00:00:00+14:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "the end of the calendar": (
        head(sent="9999-12-31T24:00:00+00:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "a zone beyond all": (
        head(sent="2026-06-12T03:00:00+15:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "a zone of sixty minutes": (
        head(sent="2026-06-12T03:00:00+03:60"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "digits of another script": (
        head(sent="٢٠٢٦-06-12T03:00:00+03:00"),
        AlertWrong.TIME,
        "alert/sent",
    ),
    "status in small letters": (head(status="actual"), AlertWrong.WORD, "alert/status"),
    "a kind of our own": (head(msgType="Warning"), AlertWrong.WORD, "alert/msgType"),
    "scope Restricted without a rule": (
        head(scope="Restricted"),
        AlertWrong.NEEDS,
        "alert/scope",
    ),
    "scope Private without addresses": (head(scope="Private"), AlertWrong.NEEDS, "alert/scope"),
    "a reference of two parts": (
        head(references="a@example.org,1"),
        AlertWrong.REFERENCE,
        "alert/references",
    ),
    "a reference with Z": (
        head(references="a,1,2026-06-12T03:00:00Z"),
        AlertWrong.REFERENCE,
        "alert/references",
    ),
    "two senders": (head(sender=["a", "b"]), AlertWrong.TWICE, "alert/sender"),
    "an element that is not": (head(colour="red"), AlertWrong.UNKNOWN, "alert"),
    "an attribute": (
        cap().replace(b"<sent>", b'<sent a="1">'),
        AlertWrong.UNKNOWN,
        "alert/sent",
    ),
    "words between elements": (
        cap().replace(b"<sent>", b"x<sent>"),
        AlertWrong.UNKNOWN,
        "alert",
    ),
    "an element in a text": (head(note=Raw("<b>n</b>")), AlertWrong.UNKNOWN, "alert/note"),
    "no event": (danger(event=None), AlertWrong.MISSING, INFO + "event"),
    "no category": (danger(category=None), AlertWrong.MISSING, INFO + "category"),
    "a category that is not": (danger(category="Rain"), AlertWrong.WORD, INFO + "category[1]"),
    "a severity that is not": (danger(severity="Red"), AlertWrong.WORD, INFO + "severity"),
    "Very Likely, of version 1.0": (
        danger(certainty="Very Likely"),
        AlertWrong.WORD,
        INFO + "certainty",
    ),
    "a language with spaces": (danger(language="en US"), AlertWrong.WORD, INFO + "language"),
    "an area without words": (place(areaDesc=None), AlertWrong.MISSING, AREA + "areaDesc"),
    "three corners (3.2.4)": (
        place(polygon="1,1 2,2 1,1"),
        AlertWrong.RING,
        AREA + "polygon[1]",
    ),
    "a ring left open (3.2.4)": (
        place(polygon="1,1 2,2 3,1 4,4"),
        AlertWrong.RING,
        AREA + "polygon[1]",
    ),
    "longitude first": (
        place(polygon="136.9,-1 137,-1 137,-2 136.9,-1"),
        AlertWrong.POINT,
        AREA + "polygon[1]",
    ),
    "nan": (place(polygon="nan,1 2,2 3,1 nan,1"), AlertWrong.POINT, AREA + "polygon[1]"),
    "an exponent": (place(circle="1e1,1 2"), AlertWrong.POINT, AREA + "circle[1]"),
    "a circle without radius": (place(circle="1,1"), AlertWrong.POINT, AREA + "circle[1]"),
    "a radius below nothing": (place(circle="1,1 -2"), AlertWrong.NUMBER, AREA + "circle[1]"),
    "half a code": (
        place(geocode=Raw("<value>1</value>")),
        AlertWrong.MISSING,
        AREA + "geocode[1]/valueName",
    ),
    "a ceiling alone (3.2.4)": (place(ceiling="9"), AlertWrong.NEEDS, AREA + "ceiling"),
    "elements out of order": (
        cap(
            identifier=None, scope=Raw("Public</scope><identifier>1</identifier><x>"), info=None
        ).replace(b"<x></scope>", b""),
        AlertWrong.ORDER,
        "alert/identifier",
    ),
}


@pytest.mark.parametrize(("raw", "wrong", "where"), WRONG.values(), ids=WRONG)
def test_what_the_standard_forbids_is_told_with_its_place(
    raw: bytes, wrong: AlertWrong, where: str
) -> None:
    """One fault, or the one that counts among those that follow from it."""
    assert (wrong, where) in [(fault.wrong, fault.where) for fault in faults(raw)]


def test_all_faults_are_told_at_once_but_not_without_end() -> None:
    """So that a service can mend its message in one go."""
    found = faults(cap(sent="today", status="Real", info=info(urgency="Now")))
    assert [fault.wrong for fault in found] == [
        AlertWrong.TIME,
        AlertWrong.WORD,
        AlertWrong.WORD,
    ]
    assert [fault.got for fault in found] == ["today", "Real", "Now"]
    assert len(faults(cap(code=[Raw("<a/>")] * 500))) == 20


def test_who_sent_a_faulty_message_is_kept_where_it_can_be_read() -> None:
    """An officer can ask the service."""
    found = read_alert(cap(status="Real"))
    assert isinstance(found, Faulty) and found.key
    assert (found.key.sender, found.key.identifier) == (SENDER, "LWS-1")


_GROWING = b"".join(
    b'<!ENTITY lol%d "%s">' % (n, b"&lol%s;" % (b"" if n == 1 else b"%d" % (n - 1)) * 10)
    for n in range(1, 10)
)
LAUGHS = (
    b"""<!DOCTYPE lolz [<!ENTITY lol "lol">%s]><alert
xmlns="urn:oasis:names:tc:emergency:cap:1.2"><note>&lol9;</note></alert>"""
    % _GROWING
)
OUTSIDE = b"""<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/hostname">]><alert
xmlns="urn:oasis:names:tc:emergency:cap:1.2"><note>&e;</note></alert>"""
GETTER = b'<!DOCTYPE a SYSTEM "http://127.0.0.1:9/never.dtd"><a/>'


@pytest.mark.parametrize("raw", [LAUGHS, OUTSIDE, GETTER], ids=["laughs", "file", "address"])
def test_a_document_type_is_never_looked_into(raw: bytes) -> None:
    """Entities that grow without end, and files or addresses that they name."""
    assert faults(raw) == (AlertFault(AlertWrong.DTD, "alert"),)


def test_what_is_too_big_is_not_even_opened() -> None:
    """A million bytes; a coast line takes a tenth of it."""
    assert faults(b"<" * 1_000_001)[0].wrong is AlertWrong.TOO_BIG


def test_a_deep_document_is_refused_in_time() -> None:
    """As deep as its size allows."""
    deep = cap(note=Raw("<a>" * 140_000 + "</a>" * 140_000))
    assert (AlertWrong.UNKNOWN, "alert/note") in [
        (each.wrong, each.where) for each in faults(deep)
    ]


SIGNATURE = (
    '<Signature xmlns="http://www.w3.org/2000/09/xmldsig#"><SignedInfo a="1"/></Signature>'
)


def test_a_signature_is_seen_after_all_else() -> None:
    """3.3.4.1: an enveloped XML signature; what is in it is not looked at here."""
    signed = cap().replace(b"</alert>", SIGNATURE.encode() + b"</alert>")
    assert read(signed).signed and not read(cap()).signed


def test_what_follows_a_signature_is_out_of_order() -> None:
    """So that nothing hides behind one."""
    early = cap().replace(b"<info>", SIGNATURE.encode() + b"<info>", 1)
    assert (AlertWrong.ORDER, "alert/info[1]") in [
        (each.wrong, each.where) for each in faults(early)
    ]


WORDS = st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), max_size=12)


@given(st.binary(max_size=300))
def test_no_bytes_make_it_fail(raw: bytes) -> None:
    """Whatever comes, the answer is a value."""
    assert isinstance(read_alert(raw), Alert | Faulty)


@given(st.data())
def test_no_message_makes_it_fail(data: st.DataObject) -> None:
    """A good message with pieces cut out, doubled, swapped and written over."""
    raw = bytearray(cap(note="n", references=f"{SENDER},a,2026-06-11T06:00:00+03:00"))
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(raw)))
        end = min(len(raw), at + data.draw(st.integers(0, 40)))
        there = bytes(raw[at:end])
        new = data.draw(st.sampled_from([b"", there * 2, there[::-1]]) | st.binary(max_size=8))
        raw[at:end] = new
    assert isinstance(read_alert(bytes(raw)), Alert | Faulty)


@given(st.dictionaries(st.sampled_from("sent status references scope code".split()), WORDS))
def test_no_words_make_it_fail(words: dict[str, str]) -> None:
    """Any text in any element."""
    assert isinstance(read_alert(cap(**words)), Alert | Faulty)


@given(st.lists(WORDS | st.sampled_from(["1,1", "-1,-1", "90,180", "91,0"]), max_size=6))
def test_no_ring_makes_it_fail(pairs: list[str]) -> None:
    """Any list of corners."""
    assert isinstance(read_alert(place(polygon=" ".join(pairs))), Alert | Faulty)
