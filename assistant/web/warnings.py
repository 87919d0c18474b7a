"""Warnings: what stands, a new one with its reach, and the answers while it stands."""

from collections.abc import Mapping
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.service.places import read_point
from assistant.service.storms.rain_drafts import draft_page, warnings_page
from assistant.service.storms.rain_wanted import (
    LONGEST_ADDED,
    AlertCertainty,
    Made,
    Wanted,
    make,
)
from assistant.web.desk import Desk, asked_number, typed, typed_date
from assistant.web.storms import drafts, storms
from assistant.wording import messages_web_broadcast
from assistant.wording import messages_web_rain as web_rain
from assistant.wording.dangers import name_of

OFFERED = (AlertCertainty.OBSERVED, AlertCertainty.LIKELY, AlertCertainty.POSSIBLE)
USUAL_LENGTH = timedelta(hours=6)
ONE_DAY = timedelta(days=1)
ONE_HOUR = timedelta(hours=1)


def pages(desk: Desk) -> Blueprint:
    """The list with the form, a draft, and a warning that was sent."""
    found = Blueprint("warnings", __name__)
    _list_and_form(found, desk)
    drafts(found, desk)
    storms(found, desk)
    return found


def _list_and_form(found: Blueprint, desk: Desk) -> None:
    @found.get("/warnings")
    def warnings() -> ResponseReturnValue:
        return _form(desk, _started(desk), ())

    @found.post("/warnings")
    def make_draft() -> ResponseReturnValue:
        made = make(desk.house, desk.sight, _wanted(), desk.now)
        if not isinstance(made, Made):
            return _form(desk, request.form, made, 422)
        if made.unplaced:
            names = ", ".join(village.name for village in made.unplaced)
            desk.tell(web_rain.NOT_LOOKED_AT(villages=names), wrong=True)
        return desk.to("warnings.draft", draft=made.draft_id)


# --- the form --------------------------------------------------------------------------------


def _form(
    desk: Desk, filled: Mapping[str, str], faults: tuple[str, ...], status: int = 200
) -> ResponseReturnValue:
    """The list and the form, filled in as it was: nothing that was typed is lost."""
    model = warnings_page(desk.house, desk.sight, desk.now)
    ticked = {int(each) for each in ticked_in(filled)}
    return desk.page(
        "warnings.html",
        status,
        model=model,
        r=web_rain,
        filled=filled,
        ticked=ticked,
        faults=faults,
        beds={each.village.id: each.beds for each in model.villages},
        b=messages_web_broadcast,
        offered=OFFERED,
        dangers=[(row.code, name_of(row.code)) for row in DANGERS.all],
        longest_d=DANGERS[_danger(filled.get("danger", ""))].longest_d,
        longest=LONGEST_ADDED,
    )


def ticked_in(filled: Mapping[str, str]) -> list[str]:
    """The ids of the villages that were ticked in a form."""
    every = filled.getlist("village") if hasattr(filled, "getlist") else []
    return [each for each in every if each.isascii() and each.isdecimal() and len(each) < 10]


def _started(desk: Desk) -> Mapping[str, str]:
    """What stands in the form at first: from now on, or a draft that is to be changed."""
    number = asked_number("draft")
    model = draft_page(desk.house, desk.sight, number, desk.now) if number else None
    if model is None:
        local = _full_hour(desk)
        return Filled(_hours(local, local + USUAL_LENGTH))
    draft = model.line.draft
    filled = _hours(model.line.starts_at, model.line.ends_at)
    filled |= {
        "danger": draft.danger,
        "sure": draft.certainty,
        "words": draft.words,
        "draft": str(draft.id),
    }
    return Filled(filled, tuple(str(village.id) for village in model.line.villages))


def _full_hour(desk: Desk) -> datetime:
    """The coming full hour in the officer's villages: a warning of an hour that is past would
    send nobody to the bed in time."""
    zones = {village.zone for village in desk.sight.villages}
    zone = ZoneInfo(zones.pop() if len(zones) == 1 else desk.house.zone)
    later = (desk.now + ONE_HOUR).astimezone(zone)
    return later.replace(minute=0, second=0, microsecond=0)


class Filled(dict[str, str]):
    """Fields of a form, several of them for the villages, as a form that was sent has them."""

    def __init__(self, fields: Mapping[str, str], villages: tuple[str, ...] = ()) -> None:
        super().__init__(fields)
        self._villages = villages

    def getlist(self, name: str) -> list[str]:
        """All values of a field."""
        return list(self._villages) if name == "village" else []


def _hours(start: datetime, end: datetime) -> dict[str, str]:
    return {
        "from_day": start.date().isoformat(),
        "from_time": f"{start:%H:%M}",
        "to_day": end.date().isoformat() if end - start >= ONE_DAY else "",
        "to_time": f"{end:%H:%M}",
    }


def _wanted() -> Wanted:
    """The form as it was sent."""
    form = request.form
    sure = form.get("sure", "")
    number = form.get("draft", "")
    ids = {int(each) for each in ticked_in(form)}
    near = form.get("near", "")
    return Wanted(
        village_ids=ids,
        everywhere="all" in form,
        starts_on=typed_date("from_day"),
        starts=_time("from_time"),
        ends_on=typed_date("to_day"),
        ends=_time("to_time"),
        danger=_danger(form.get("danger", "")),
        certainty=AlertCertainty(sure) if sure in OFFERED else AlertCertainty.LIKELY,
        words=typed("words"),
        ranged=bool(typed("km") or typed("point")),
        km=_kilometres(typed("km")),
        centre=read_point(typed("point")),
        centre_id=int(near) if near.isascii() and near.isdecimal() and len(near) < 10 else None,
        instead_of=int(number) if number.isascii() and number.isdecimal() else None,
    )


def _danger(code: str) -> str:
    return code if code in {row.code for row in DANGERS.all} else RAIN


def _time(name: str) -> time | None:
    try:
        return time.fromisoformat(request.form.get(name, ""))
    except ValueError:
        return None


def _kilometres(text: str) -> float | None:
    try:
        km = float(text.replace(",", "."))
    except ValueError:
        return None
    return km if 0 < km < float("inf") else None
