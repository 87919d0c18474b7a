"""What is done from the list: a page that shows for whom and what it takes, then the deed.

The page changes nothing, so it may be asked for by a link (one line) or by a form (those that
are ticked).
"""

from collections.abc import Iterable
from datetime import date
from typing import Any

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.people import LANGUAGES
from assistant.service.days import local_date
from assistant.service.desk.visits import Wrong
from assistant.service.later import HOURS
from assistant.service.letters import LONGEST_WORDS, Unsent
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Did, Noted, Nothing, Outcome
from assistant.service.waiting.hand_on import colleagues, hand_on
from assistant.service.waiting.picks import Picked
from assistant.service.waiting.writing import Offer, beside, offers
from assistant.web.desk import Desk, asked_number, typed, typed_date, typed_later
from assistant.web.storms import priced
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as web_desk
from assistant.wording import messages_web_groups as web_groups
from assistant.wording import messages_web_rain
from assistant.wording.message import Say
from assistant.wording.messages_phrases import PHRASES

LONGEST_NOTE = 2000


def pages(desk: Desk) -> Blueprint:
    """The page of a deed, the deed, and the way back."""
    found = Blueprint("deeds", __name__)

    @found.route("/deeds", methods=["GET", "POST"])
    def begin() -> ResponseReturnValue:
        return _shown(desk, _deed(), _lines())

    @found.post("/deeds/cost")
    def cost() -> ResponseReturnValue:
        words = typed("words")
        shown = _offers(desk, _lines(), {"own": words}) if words else ()
        return desk.page("_cost.html", offers=shown, money=priced(desk), r=messages_web_rain)

    @found.post("/deeds/do")
    def do() -> ResponseReturnValue:
        deed, lines = _deed(), _lines()
        if "look" in request.form or not lines:
            return _shown(desk, deed, lines)
        outcome = _DO[deed](desk, lines)
        if outcome is None:
            desk.tell(
                web_groups.CHOOSE_COLLEAGUE if deed == "hand" else web_desk.CHOOSE_WORDS,
                wrong=True,
            )
            return _shown(desk, deed, lines)
        return _after(desk, deed, lines, outcome)

    @found.post("/deeds/<int:deed>/undo")
    def undo(deed: int) -> ResponseReturnValue:
        left = deeds.undo(desk.house, desk.sight, deed, desk.now)
        if left is None:
            desk.tell(web_desk.TOO_LATE, wrong=True)
        else:
            desk.tell(web_desk.UNDONE_BUT(n=left) if left else web_desk.UNDONE())
        return to_list(desk)

    return found


def to_list(desk: Desk) -> ResponseReturnValue:
    """Back to what waits, as it was chosen."""
    by = request.values.get("by") or None
    return desk.to("morning.morning", village=asked_number("village"), by=by)


def _deed() -> str:
    deed = request.values.get("deed", "")
    if deed not in deeds.DEEDS:
        abort(404)
    return deed


def _lines() -> list[str]:
    """The lines that were ticked, or the one whose own button was pressed."""
    only = request.args.get("only")
    return [only] if only else request.values.getlist("line")


# --- the page --------------------------------------------------------------------------------


def _shown(desk: Desk, deed: str, lines: list[str], status: int = 200) -> ResponseReturnValue:
    found = deeds.look_at(desk.house, desk.sight, lines, deed, desk.now)
    if lines and not (found.picks or found.refused):
        abort(404)
    if not found.picks and not found.refused:
        desk.tell(web_desk.NONE_TICKED, wrong=True)
        return to_list(desk)
    values: dict[str, Any] = {"deed": deed, "found": found, "r": messages_web_rain}
    values |= {"today": _today(desk), "money": priced(desk)}
    values |= _MORE.get(deed, _nothing)(desk, found)
    return desk.page("deed.html", status, **values)


def _nothing(desk: Desk, found: Picked) -> dict[str, Any]:
    return {}


def _writing(desk: Desk, found: Picked) -> dict[str, Any]:
    """Set texts with what they take, quiet hours, the last messages where it is for one."""
    keys = [pick.key for pick in found.picks]
    own = typed("words") if request.method == "POST" else ""
    only = found.picks[0] if len(found.picks) == 1 else None
    spoken = {pick.farmer.language or "" for pick in found.picks}
    return {
        "offers": _offers(desk, keys, dict.fromkeys(PHRASES, "")),
        "own": _offers(desk, keys, {"own": own}) if own else (),
        "words": own,
        "chosen": request.values.get("phrase", ""),
        "only": only,
        "languages": ", ".join(LANGUAGES[each] for each in sorted(spoken) if each in LANGUAGES),
        "aside": beside(desk.house, desk.sight, only, desk.now) if only else None,
        "longest": LONGEST_WORDS,
        "hours": () if only and deeds.cannot_wait(only) else HOURS,
    }


def _moving(desk: Desk, found: Picked) -> dict[str, Any]:
    """What the new day would change, once it is given."""
    day = typed_date("day")
    keys = [pick.key for pick in found.picks]
    changes = deeds.foresee_days(desk.house, desk.sight, keys, day, desk.now) if day else ()
    return {"day": day, "changes": changes, "wrong": web.WRONG}


def _handing(desk: Desk, found: Picked) -> dict[str, Any]:
    """To whom a call may be given."""
    villages = [pick.village.id for pick in found.picks if pick.village]
    return {"officers": colleagues(desk.house, desk.sight, villages)}


_MORE = {"text": _writing, "move": _moving, "hand": _handing}


def _offers(desk: Desk, lines: Iterable[str], words: dict[str, str]) -> tuple[Offer, ...]:
    said: dict[str, str | Say] = {key: own or PHRASES[key]() for key, own in words.items()}
    return offers(desk.house, desk.sight, lines, said, desk.now)


def _today(desk: Desk) -> date:
    return local_date(desk.now, desk.house.zone)


# --- the deed --------------------------------------------------------------------------------


def _visited(desk: Desk, lines: list[str]) -> Outcome:
    noted = Noted(typed_date("on"), typed("note", LONGEST_NOTE), "done" in request.form)
    return deeds.visit(desk.house, desk.sight, lines, noted, desk.now)


def _rang(desk: Desk, lines: list[str]) -> Outcome:
    noted = Noted(
        _today(desk),
        typed("note", LONGEST_NOTE),
        "done" in request.form,
        "covered" in request.form,
    )
    return deeds.visit(desk.house, desk.sight, lines, noted, desk.now, by_phone=True)


def _seen(desk: Desk, lines: list[str]) -> Outcome:
    return deeds.see(desk.house, desk.sight, lines, desk.now)


def _text(desk: Desk, lines: list[str]) -> Outcome | None:
    words, phrase = typed("words"), request.form.get("phrase", "")
    said = words or (PHRASES[phrase]() if phrase in PHRASES else None)
    if not said:
        return None
    urgent = "urgent" in request.form
    return deeds.write_to(
        desk.house, desk.sight, lines, said, desk.now, urgent=urgent, later=typed_later()
    )


def _hand(desk: Desk, lines: list[str]) -> Outcome | None:
    to = request.form.get("to", "")
    if not to.isdecimal() or len(to) > 9:
        return None
    return hand_on(desk.house, desk.sight, lines, int(to), desk.now)


def _move(desk: Desk, lines: list[str]) -> Outcome:
    day = typed_date("day")
    if day is None:
        return Wrong.NO_DAY
    tell = "tell" in request.form
    return deeds.move_days(desk.house, desk.sight, lines, day, desk.now, tell=tell)


_DO = {
    "visited": _visited,
    "rang": _rang,
    "seen": _seen,
    "text": _text,
    "move": _move,
    "hand": _hand,
}


def _after(desk: Desk, deed: str, lines: list[str], outcome: Outcome) -> ResponseReturnValue:
    if isinstance(outcome, Wrong):
        desk.tell(web.WRONG[outcome], wrong=True)
        return _shown(desk, deed, lines)
    if isinstance(outcome, Unsent):
        desk.tell(web.UNSENT[outcome], wrong=True)
        return _shown(desk, deed, lines)
    if isinstance(outcome, Nothing):
        return _shown(desk, deed, lines)
    return after(desk, outcome)


def after(desk: Desk, outcome: Did | Nothing) -> ResponseReturnValue:
    """Back to the list, which says what was done and offers to undo it."""
    if isinstance(outcome, Nothing):
        abort(404)
    desk.wake()
    return to_list(desk)
