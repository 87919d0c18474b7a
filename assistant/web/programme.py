"""The programme for its head: a first day, the line, what is set, files; villages."""

from collections.abc import Iterable, Sequence

from flask import Blueprint, Response, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.copies import ask_for_copy
from assistant.service.desk import exports, village_office
from assistant.service.desk.programme import programme_page
from assistant.service.desk.village_office import NotKept
from assistant.service.land_units import NoUnit, set_units
from assistant.web.desk import Desk, lead_only
from assistant.web.results import KINDS
from assistant.web.sheets import csv_file, xlsx_file
from assistant.web.storms import priced
from assistant.web.village_forms import JoinForm, NewVillageForm, UnitsForm, VillageForm
from assistant.web.villages import village_shown, villages_shown
from assistant.wording import messages_web_office as web_office
from assistant.wording import messages_web_rain as web_rain
from assistant.wording.message import Message

_SHOWN = 60  # characters of a line that could not be read


def pages(desk: Desk) -> Blueprint:
    """The page, its files, and what is kept of villages."""
    found = Blueprint("programme", __name__)

    @found.get("/programme")
    def shown() -> ResponseReturnValue:
        model = programme_page(desk.house, desk.sight, desk.now)
        if model is None:
            abort(404)
        return desk.page(
            "programme.html", model=model, house=desk.house, r=web_rain, money=priced(desk)
        )

    @found.get("/programme/<any(people, messages, costs):what>.<any(csv, xlsx):kind>")
    def file(what: str, kind: str) -> ResponseReturnValue:
        lead_only(desk)
        if what == "people":
            rows = exports.people(desk.house, desk.sight, desk.now)
            return _file(desk, web_office.PEOPLE_FILE, kind, exports.PEOPLE_HEAD, rows)
        if what == "messages":
            rows = exports.messages(desk.house, desk.sight, desk.now)
            return _file(desk, web_office.MESSAGES_FILE, kind, exports.MESSAGES_HEAD, rows)
        rows = exports.costs(desk.house, desk.sight, desk.now)
        return _file(desk, web_office.COSTS_FILE, kind, exports.COSTS_HEAD, rows)

    @found.post("/programme/copy")
    def copy() -> ResponseReturnValue:
        asked = ask_for_copy(desk.house, desk.sight, desk.now)
        if asked is None:
            abort(404)
        desk.tell(web_office.COPY_ASKED if asked else web_office.COPY_NONE, wrong=not asked)
        return desk.to("programme.shown", anchor="copies")

    _villages(found, desk)
    _units(found, desk)
    _endings(found, desk)
    return found


def _file(
    desk: Desk,
    title: Message,
    kind: str,
    head: Iterable[Message],
    rows: Iterable[Sequence[exports.Value]],
) -> ResponseReturnValue:
    heads, lines = [desk.say(each) for each in head], list(rows)
    make = (
        xlsx_file(desk.say(title), heads, lines) if kind == "xlsx" else csv_file(heads, lines)
    )
    name = f"{request.path.rpartition('/')[2]}"
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(make, headers=headers, content_type=KINDS[kind])


def _villages(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages")
    def add() -> ResponseReturnValue:
        lead_only(desk)
        form = NewVillageForm.sent()
        if not form.validate():
            return villages_shown(desk, form, 422)
        made = village_office.add_village(desk.house, desk.sight, form.name.data, desk.now)
        if made is None:
            abort(404)
        if isinstance(made, NotKept):
            return villages_shown(desk, form.refuse(web_office.VILLAGE_NOT[made]), 422)
        desk.tell(web_office.VILLAGE_MADE(village=made.name))
        return desk.to("villages.village", village=made.id)

    _helpers(found, desk)


def _helpers(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/mend")
    def mend(village: int) -> ResponseReturnValue:
        lead_only(desk)
        form = VillageForm.sent()
        if not form.validate():
            return village_shown(desk, village, data=form)
        kept = village_office.mend_village(
            desk.house, desk.sight, village, form.name.data, form.helpers(), desk.now
        )
        if kept is None:
            abort(404)
        if isinstance(kept, NotKept):
            return village_shown(desk, village, data=form.refuse(web_office.VILLAGE_NOT[kept]))
        desk.tell(web_office.VILLAGE_KEPT)
        return desk.to("villages.village", village=village)


def _units(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/units")
    def units(village: int) -> ResponseReturnValue:
        lead_only(desk)
        form = UnitsForm.sent()
        if not form.validate():
            return village_shown(desk, village, units=form)
        kept = set_units(desk.house, desk.sight, village, form.units.data, desk.now)
        if kept is None:
            abort(404)
        if isinstance(kept, NoUnit):
            form.refuse(web_office.UNITS_WRONG(words=kept.line[:_SHOWN]))
            return village_shown(desk, village, units=form)
        desk.tell(web_office.UNITS_KEPT)
        return desk.to("villages.village", village=village, anchor="units")


def _endings(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/join")
    def join(village: int) -> ResponseReturnValue:
        lead_only(desk)
        form = JoinForm.sent()
        if not form.validate():
            return village_shown(desk, village, join=form)
        into = form.into.data
        joined = village_office.join_villages(desk.house, desk.sight, village, into, desk.now)
        if joined is None:
            abort(404)
        if isinstance(joined, NotKept):
            return village_shown(
                desk, village, join=form.refuse(web_office.VILLAGE_NOT[joined])
            )
        stays = desk.sight.village(into)
        desk.tell(web_office.VILLAGES_JOINED(n=joined, village=stays.name if stays else ""))
        return desk.to("villages.village", village=into)

    @found.post("/villages/<int:village>/retire")
    def retire(village: int) -> ResponseReturnValue:
        gone = village_office.retire_village(desk.house, desk.sight, village, desk.now)
        if gone is None:
            abort(404)
        if isinstance(gone, NotKept):
            desk.tell(web_office.VILLAGE_NOT[gone], wrong=True)
            return desk.to("villages.village", village=village)
        desk.tell(web_office.RETIRED(village=gone.name))
        return desk.to("villages.villages")
