"""Bytes that nobody vouches for -> an XML tree without document type, entities or surprises."""

from xml.etree.ElementTree import Element, ParseError

from defusedxml import DefusedXmlException
from defusedxml.ElementTree import fromstring

from assistant.alerts.standard import NAMESPACE
from assistant.alerts.values import AlertFault, AlertWrong, Faulty

# Ten times the longest that we expect: a coast line of 5,000 corners is 100 kB.
LARGEST_BYTES = 1_000_000
SHOWN = 60  # characters of what was found


def open_document(raw: bytes) -> Element | Faulty:
    """The <alert> of a document, or why there is none."""
    if len(raw) > LARGEST_BYTES:
        return _faulty(AlertWrong.TOO_BIG, str(len(raw)))
    try:
        root = fromstring(raw, forbid_dtd=True, forbid_entities=True, forbid_external=True)
    except DefusedXmlException:
        return _faulty(AlertWrong.DTD)
    except (ParseError, ValueError, LookupError) as fault:  # also an encoding that is unknown
        return _faulty(AlertWrong.NOT_XML, str(fault))
    if root.tag != f"{{{NAMESPACE}}}alert":
        return _faulty(AlertWrong.NOT_CAP, root.tag)
    return root


def _faulty(wrong: AlertWrong, got: str = "") -> Faulty:
    return Faulty((AlertFault(wrong, "alert", got[:SHOWN]),))
