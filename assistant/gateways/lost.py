"""Hand-overs whose answer was lost: what the operator's receipts say of them afterwards.

Neither SMPP nor a modem can be asked about a text whose answer never came, since only that
answer would have named it. But a receipt does: one that bears our own mark (user_message_
reference, or a modem's next count) or begins as the text did, under an id that nobody knows, is
that of the text. So a text in doubt waits a little, and is not sent twice where it had gone;
from its receipt on it is known to be on the phone, whose owner may answer at once. Where it
went again before a receipt told, one of the first copy counts for the second.
"""

import threading
from collections import OrderedDict
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TypeVar

from assistant.channel import Fate, Receipt

KEPT = 10_000
LASTS = timedelta(hours=1)
ENOUGH = 10  # characters of a text that tell it from another to the same phone


@dataclass(frozen=True)
class _Doubt:
    words: str
    at: datetime
    text: str


class UnknownReports:
    """What was reported under ids that nobody knows, by phone and mark; texts in doubt.

    Marks are told by receipts of texts in doubt only, or of those that another process handed
    over before it died: what was answered is never in here (`answered`).
    """

    def __init__(self) -> None:
        self._doubts: OrderedDict[tuple[str, str], _Doubt] = OrderedDict()
        self._found: OrderedDict[tuple[str, str], tuple[str, datetime]] = OrderedDict()
        self._goes_again: OrderedDict[tuple[str, str], bool] = OrderedDict()
        self._later: OrderedDict[tuple[str, str], str] = OrderedDict()
        self._lock = threading.Lock()

    def doubt(self, phone: str, mark: str, words: str, now: datetime, text: str = "") -> None:
        """A segment leaves; until it is `answered` nobody knows whether it was taken.

        Args:
            text: our id of the text, where this is its last segment
        """
        with self._lock:
            _put(self._doubts, (phone, mark), _Doubt(words, now, text))

    def answered(self, phone: str, mark: str, part: str = "") -> None:
        """It was answered, or never left: no receipt is needed to tell. Where it went for the
        second time, receipts of the first are those of the `part` that was taken now."""
        of = phone, mark
        with self._lock:
            for kept in (self._doubts, self._found, self._later):
                kept.pop(of, None)
            again = self._goes_again.pop(of, False)
            if again and part:
                _put(self._later, of, part)

    def told(
        self, receipt: Receipt, phone: str, mark: str, words: str, now: datetime, known: bool
    ) -> Receipt:
        """A receipt as it is to be brought: of the text itself, where it tells that the last
        segment of one in doubt is on the phone; else of the operator's own id.

        Args:
            mark, words: what it bears of the text
            known: whether its id is that of a segment that was answered; a modem, which counts
                anew, may mean another by it
        """
        with self._lock:
            of = phone, mark or ("" if known else self._by_words(phone, words, now))
            doubt, later = self._doubts.get(of), self._later.get(of)
            arrived = receipt.fate is Fate.DELIVERED
            if not of[1] or (known and doubt is None):
                return receipt
            if later is not None:
                return replace(receipt, part=later) if arrived else receipt
            _put(self._found, of, (receipt.part, now))
            if doubt is None or not doubt.text or not arrived:
                return receipt
            return replace(receipt, message_id=doubt.text)

    def _by_words(self, phone: str, words: str, now: datetime) -> str:
        if len(words) < ENOUGH:
            return ""
        for (of, mark), doubt in self._doubts.items():
            if of == phone and doubt.words.startswith(words) and now - doubt.at <= LASTS:
                return mark
        return ""

    def taken(self, phone: str, mark: str, now: datetime) -> str:
        """The operator's id of a segment that was taken after all; empty: none was told."""
        of = phone, mark
        with self._lock:
            part, at = self._found.pop(of, ("", now))
            if part and now - at <= LASTS:
                self._doubts.pop(of, None)
                return part
            if of in self._doubts:
                _put(self._goes_again, of, True)
            return ""


_T = TypeVar("_T")


def _put(kept: OrderedDict[tuple[str, str], _T], key: tuple[str, str], value: _T) -> None:
    kept[key] = value
    kept.move_to_end(key)
    while len(kept) > KEPT:
        kept.popitem(last=False)
