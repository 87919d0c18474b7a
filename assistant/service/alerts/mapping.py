"""Which danger an official alert tells of, where its event says that plainly."""

import re
import unicodedata

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.alerts import Threat

_APART = re.compile(r"[\s,.;:/()\-]+")


def danger_of(threat: Threat) -> str:
    """The code of the danger whose words stand in the event, as the service wrote it in any of
    its languages. Words of none or of several dangers leave it with rain: then an officer sees
    it as before, and may choose another."""
    events = " ".join(f" {' '.join(_words(info.event))} " for info in threat.infos)
    found = {
        danger.code
        for danger in DANGERS.all
        if any(f" {word} " in events for word in danger.alert_words)
    }
    return found.pop() if len(found) == 1 else RAIN


def _words(text: str) -> list[str]:
    return [
        word for word in _APART.split(unicodedata.normalize("NFC", text).casefold()) if word
    ]
