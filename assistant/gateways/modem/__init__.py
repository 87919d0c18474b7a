"""A GSM modem on a serial port, by AT commands in PDU mode.

Sources: 3GPP TS 27.005 (messages), TS 27.007 (SIM, network, calls, USSD), TS 23.040 (the PDUs),
TS 23.038 (their alphabets).
"""

from assistant.gateways.modem.gateway import ModemGateway
from assistant.gateways.modem.terms import ModemTerms

__all__ = ["ModemGateway", "ModemTerms"]
