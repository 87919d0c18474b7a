"""The list of alerts that a service publishes: Atom (RFC 4287) or RSS 2.0, links to messages.

An address that a service gives out is mostly such a list; its entries tell little themselves.
"""

from collections.abc import Iterator
from urllib.parse import urljoin
from xml.etree.ElementTree import Element, ParseError

from defusedxml import DefusedXmlException
from defusedxml.ElementTree import fromstring

from assistant.alerts.document import LARGEST_BYTES

ATOM = "{http://www.w3.org/2005/Atom}"
CAP_TYPE = "application/cap+xml"
MOST_LINKS = 200  # the newest come first


def read_feed(raw: bytes, address: str) -> tuple[str, ...] | None:
    """The addresses of the messages in a list, made whole; None for what is no list."""
    if len(raw) > LARGEST_BYTES:
        return None
    try:
        root = fromstring(raw, forbid_dtd=True, forbid_entities=True, forbid_external=True)
    except (DefusedXmlException, ParseError, ValueError, LookupError):
        return None
    if root.tag == f"{ATOM}feed":
        links = _atom(root)
    elif root.tag == "rss":
        links = ((item.findtext("link") or "").strip() for item in root.iter("item"))
    else:
        return None
    whole = dict.fromkeys(_joined(address, link) for link in links if link)
    return tuple(link for link in whole if link)[:MOST_LINKS]


def _atom(root: Element) -> Iterator[str]:
    for entry in root.iter(f"{ATOM}entry"):
        links = entry.findall(f"{ATOM}link")
        ranked = sorted(links, key=lambda link: link.get("type") != CAP_TYPE)
        yield next((link.get("href", "").strip() for link in ranked if _leads(link)), "")


def _leads(link: Element) -> bool:
    return link.get("type") == CAP_TYPE or link.get("rel", "alternate") == "alternate"


def _joined(address: str, link: str) -> str:
    try:
        return urljoin(address, link)
    except ValueError:
        return ""
