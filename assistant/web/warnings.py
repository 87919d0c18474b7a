"""Warnings: what stands, a new one with its reach, and the answers while it stands."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from flask import Blueprint
from flask.typing import ResponseReturnValue
from wtforms import BooleanField

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
from assistant.web.desk import Desk, asked_number
from assistant.web.fields import ChosenRow, Day, Hour, Number, OneOf, Ticked, TypedWords
from assistant.web.forms import OfficerForm
from assistant.web.storms import drafts, storms
from assistant.wording import messages_web_broadcast
from assistant.wording import messages_web_rain as web_rain
from assistant.wording.dangers import name_of

OFFERED = (AlertCertainty.OBSERVED, AlertCertainty.LIKELY, AlertCertainty.POSSIBLE)
USUAL_LENGTH = timedelta(hours=6)
ONE_DAY = timedelta(days=1)
ONE_HOUR = timedelta(hours=1)


def _codes() -> tuple[str, ...]:
    """The dangers that may be warned of; their table is filled when the program starts, after
    this module is read."""
    return tuple(row.code for row in DANGERS.all)


class WarningForm(OfficerForm):
    """Of what, where, when and how sure."""

    danger = OneOf(web_rain.DANGER, _codes, RAIN)
    all = BooleanField()
    village = Ticked()
    km = Number(web_rain.DISTANCE)
    near = ChosenRow(web_rain.OF_VILLAGE)
    point = TypedWords(web_rain.OF_POINT)
    from_day = Day(web_rain.FROM_DAY, render_kw={"required": True})
    from_time = Hour(web_rain.FROM_TIME, render_kw={"required": True})
    to_time = Hour(web_rain.TO_TIME, render_kw={"required": True})
    to_day = Day(web_rain.TO_DAY)
    sure = OneOf(web_rain.HOW_SURE, OFFERED, AlertCertainty.LIKELY)
    words = TypedWords(web_rain.ADD_WORDS, longest=LONGEST_ADDED)
    draft = ChosenRow(web_rain.WAITING)

    def wanted(self) -> Wanted:
        """What was filled in."""
        return Wanted(
            village_ids=set(self.village.data),
            everywhere=self.all.data,
            starts_on=self.from_day.data,
            starts=self.from_time.data,
            ends_on=self.to_day.data,
            ends=self.to_time.data,
            danger=self.danger.data,
            certainty=AlertCertainty(self.sure.data),
            words=self.words.data,
            ranged=self.km.data is not None or bool(self.point.data),
            km=self.km.data,
            centre=read_point(self.point.data),
            centre_id=self.near.data,
            instead_of=self.draft.data,
        )


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
        return _page(desk, _started(desk))

    @found.post("/warnings")
    def make_draft() -> ResponseReturnValue:
        form = WarningForm.sent()
        if not form.validate():
            return _page(desk, form, 422)
        made = make(desk.house, desk.sight, form.wanted(), desk.now)
        if not isinstance(made, Made):
            for fault in made:
                form.refuse(web_rain.fault(fault, DANGERS[form.danger.data].longest_d))
            return _page(desk, form, 422)
        if made.unplaced:
            names = ", ".join(village.name for village in made.unplaced)
            desk.tell(web_rain.NOT_LOOKED_AT(villages=names), wrong=True)
        return desk.to("warnings.draft", draft=made.draft_id)


# --- the form --------------------------------------------------------------------------------


def _page(desk: Desk, form: WarningForm, status: int = 200) -> ResponseReturnValue:
    """The list and the form, filled in as it was: nothing that was typed is lost."""
    model = warnings_page(desk.house, desk.sight, desk.now)
    return desk.page(
        "warnings.html",
        status,
        model=model,
        r=web_rain,
        form=form,
        beds={each.village.id: each.beds for each in model.villages},
        b=messages_web_broadcast,
        offered=OFFERED,
        dangers=[(code, name_of(code)) for code in _codes()],
    )


def _started(desk: Desk) -> WarningForm:
    """What stands in the form at first: from now on, or a draft that is to be changed."""
    number = asked_number("draft")
    model = draft_page(desk.house, desk.sight, number, desk.now) if number else None
    if model is None:
        local = _full_hour(desk)
        return WarningForm(data=_hours(local, local + USUAL_LENGTH))
    draft = model.line.draft
    return WarningForm(
        data=_hours(model.line.starts_at, model.line.ends_at),
        danger=draft.danger,
        sure=draft.certainty,
        words=draft.words,
        draft=draft.id,
        village=[village.id for village in model.line.villages],
    )


def _full_hour(desk: Desk) -> datetime:
    """The coming full hour in the officer's villages: a warning of an hour that is past would
    send nobody to the bed in time."""
    zones = {village.zone for village in desk.sight.villages}
    zone = ZoneInfo(zones.pop() if len(zones) == 1 else desk.house.zone)
    later = (desk.now + ONE_HOUR).astimezone(zone)
    return later.replace(minute=0, second=0, microsecond=0)


def _hours(start: datetime, end: datetime) -> dict[str, object]:
    return {
        "from_day": start.date(),
        "from_time": start.time(),
        "to_day": end.date() if end - start >= ONE_DAY else None,
        "to_time": end.time(),
    }
