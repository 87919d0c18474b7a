"""TELL and SEEN: an officer away from the page answers a call for help.

TELL 123456 07700 900104 Keep the cover on, I come at ten      shown back before it goes
TELL 123456 0104 Keep the cover on                  the last digits do for one who called
SEEN 123456 0104                                    the call is done, nothing is sent
"""

from collections.abc import Iterator, Mapping
from datetime import time

from assistant.dialogue import conversations as talks
from assistant.dialogue.callers import caller
from assistant.dialogue.endings import Ending, ended, lasting, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.values import Known, OfficerScope, Session, Turn
from assistant.dialogue.values_tell import Addressee, SeeTo, SeveralCalled, TellFarmer
from assistant.wording import messages_tell as tell_texts
from assistant.wording.message import Say

LEAST_DIGITS = 4  # of a number's end
LONGEST_WORDS = 300  # characters, as on the page
_MARKS = " -().+/"


def numbers_in(rest: str) -> Iterator[tuple[str, str]]:
    """What may be the number at the start of an officer's text, the longest first, each with
    the words after it: a number may be written apart, and words may begin with a number."""
    words = rest.split()
    count = next((at for at, word in enumerate(words) if not _is_of_number(word)), len(words))
    for taken in range(count, 0, -1):
        number = "".join(words[:taken])
        if sum(ch.isdigit() for ch in number) >= LEAST_DIGITS:
            yield number, " ".join(words[taken:])


def _is_of_number(word: str) -> bool:
    return word.rstrip(",:;").strip(_MARKS).isdecimal()


def tell(rest: str, known: Known, desk: OfficerScope) -> Turn:
    """The turn for a TELL with the right code."""
    to = desk.addressee
    wrong = _wrong(to) or _wrong_words(to)
    if wrong is not None or not isinstance(to, Addressee):
        return Turn(known.session, (said(wrong or tell_texts.TELL_HOW()),))
    table = talks.TELLING_LATER if to.leaves_at else talks.TELLING
    asked = begin(
        table,
        lasting(known.session),
        farmer_id=to.farmer_id,
        name=to.name or "-",
        phone=to.phone,
        words=to.words,
        **({"time": to.leaves_at.strftime("%H:%M")} if to.leaves_at else {}),
    )
    return opened(asked, known)


def seen(rest: str, known: Known, desk: OfficerScope) -> Turn:
    """The turn for a SEEN with the right code."""
    to = desk.addressee
    wrong = _wrong(to)
    if wrong is not None or not isinstance(to, Addressee):
        return Turn(known.session, (said(wrong or tell_texts.TELL_HOW()),))
    who = caller(to.name, to.phone)
    if not to.calls:
        return Turn(known.session, (said(tell_texts.NO_CALL_OPEN(phone=who)),))
    return Turn(known.session, (said(tell_texts.SEEN_TO(phone=who)),), (SeeTo(to.farmer_id),))


def _wrong(to: Addressee | SeveralCalled | None) -> Say | None:
    if isinstance(to, SeveralCalled):
        return tell_texts.TELL_SEVERAL(digits=to.digits)
    return None if to else tell_texts.TELL_HOW()


def _wrong_words(to: Addressee | SeveralCalled | None) -> Say | None:
    if not isinstance(to, Addressee):
        return None
    if not to.may:
        return tell_texts.TELL_CANNOT(phone=caller(to.name, to.phone))
    if len(to.words) > LONGEST_WORDS:
        return tell_texts.TELL_LONG(n=LONGEST_WORDS)
    return None if to.words else tell_texts.TELL_HOW()


# --- shown back and decided ------------------------------------------------------------------


def _told(session: Session, known: Known) -> Turn:
    answers = session.answers
    who = caller(str(answers["name"]).strip("-"), str(answers["phone"]))
    later = answers.get("time")
    when = time.fromisoformat(str(later)) if later else None
    says = (
        tell_texts.TOLD_LATER(phone=who, time=when) if when else tell_texts.TOLD_NOW(phone=who)
    )
    change = TellFarmer(int(str(answers["farmer_id"])), str(answers["words"]))
    return ended(session, known, said(says), changes=(change,))


TELL_ENDINGS: Mapping[str, Ending] = {"!tell": _told}
