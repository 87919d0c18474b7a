"""SMPP v3.4: the open standard by which an operator's message centre is reached.

Source: SMPP Protocol Specification v3.4, Issue 1.2 (12 October 1999).
"""

from assistant.gateways.smpp.gateway import SmppGateway
from assistant.gateways.smpp.terms import SmppTerms

__all__ = ["SmppGateway", "SmppTerms"]
