"""Official alerts: what a message in the Common Alerting Protocol says, and where it holds.

OASIS Standard CAP-V1.2 of 1 July 2010, <http://docs.oasis-open.org/emergency/cap/v1.2/>. Bytes
in, frozen values out: `read_alert` reads and checks a message, `judge` says whether it matters
here and for which places. What is done with it is for others.
"""

from assistant.alerts.judging import AlertOutcome, JudgedAlert, Threat, judge
from assistant.alerts.places import held
from assistant.alerts.reading import read_alert
from assistant.alerts.values import (
    Alert,
    AlertFault,
    AlertWrong,
    Area,
    Faulty,
    Info,
)

__all__ = [
    "Alert",
    "Area",
    "AlertFault",
    "Faulty",
    "Info",
    "JudgedAlert",
    "AlertOutcome",
    "Threat",
    "AlertWrong",
    "held",
    "judge",
    "read_alert",
]
