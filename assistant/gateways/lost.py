"""Hand-overs whose answer was lost: what the operator's receipts say of them afterwards.

Neither SMPP nor a modem can be asked about a text whose answer never came, since only that
answer would have named it. But a receipt does: one that bears our own mark (user_message_
reference, or a modem's next count) or begins as the text did, under an id that nobody knows, is
that of the text. So a text in doubt waits a little, and is not sent twice where it had gone.
"""

import threading
from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TypeVar

KEPT = 10_000
LASTS = timedelta(hours=1)
ENOUGH = 10  # characters of a text that tell it from another to the same phone


@dataclass(frozen=True)
class _Doubt:
    words: str
    at: datetime


class Lost:
    """What was reported under ids that nobody knows, by phone and mark; texts in doubt.

    Marks are told by receipts of texts in doubt only, or of those that another process handed
    over before it died: what was answered is never in here (`answered`).
    """

    def __init__(self) -> None:
        self._doubts: OrderedDict[tuple[str, str], _Doubt] = OrderedDict()
        self._found: OrderedDict[tuple[str, str], tuple[str, datetime]] = OrderedDict()
        self._lock = threading.Lock()

    def doubt(self, phone: str, mark: str, words: str, now: datetime) -> None:
        """A segment leaves; until it is `answered` nobody knows whether it was taken."""
        with self._lock:
            _put(self._doubts, (phone, mark), _Doubt(words, now))

    def answered(self, phone: str, mark: str) -> None:
        """It was answered, or never left: no receipt is needed to tell."""
        with self._lock:
            self._doubts.pop((phone, mark), None)
            self._found.pop((phone, mark), None)

    def reported(self, phone: str, mark: str, words: str, part: str, now: datetime) -> None:
        """A receipt under an id that nobody knows, with the mark or the words that it bears."""
        with self._lock:
            mark = mark or self._by_words(phone, words, now)
            if mark:
                _put(self._found, (phone, mark), (part, now))

    def _by_words(self, phone: str, words: str, now: datetime) -> str:
        if len(words) < ENOUGH:
            return ""
        for (of, mark), doubt in self._doubts.items():
            if of == phone and doubt.words.startswith(words) and now - doubt.at <= LASTS:
                return mark
        return ""

    def taken(self, phone: str, mark: str, now: datetime) -> str:
        """The operator's id of a segment that was taken after all; empty: none was told."""
        with self._lock:
            part, at = self._found.pop((phone, mark), ("", now))
            self._doubts.pop((phone, mark), None)
            return part if now - at <= LASTS else ""


_T = TypeVar("_T")


def _put(kept: OrderedDict[tuple[str, str], _T], key: tuple[str, str], value: _T) -> None:
    kept[key] = value
    kept.move_to_end(key)
    while len(kept) > KEPT:
        kept.popitem(last=False)
