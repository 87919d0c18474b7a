"""The list of farmers, by village, with a search; enrolling one; another number for one."""

from flask import Blueprint, Response, abort, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.stages import Stage
from assistant.service.desk.farmers import LONGEST_SEARCH, list_farmers
from assistant.service.desk.numbers import NotChanged, change_number
from assistant.service.desk.own_groups import group_names
from assistant.service.office.columns import Field
from assistant.service.office.judging import WhoQuestion
from assistant.service.office.single import EnrolledOne, Form, enrol_by_form
from assistant.service.privacy import erase_by_page, take_by_page
from assistant.service.standing import RollFilter
from assistant.web.desk import Desk, asked_number, typed
from assistant.wording import messages_web_people as web_people
from assistant.wording import messages_web_privacy as web_privacy
from assistant.wording import messages_web_season as web_season
from assistant.wording.message import Say
from assistant.wording.messages_web_mend import KNOWN_ELSEWHERE


def pages(desk: Desk) -> Blueprint:
    """The list."""
    found = Blueprint("farmers", __name__)

    @found.get("/farmers")
    def farmers() -> ResponseReturnValue:
        model = list_farmers(
            desk.house,
            desk.sight,
            desk.now,
            village_id=asked_number("village"),
            search=request.args.get("search", ""),
            page=asked_number("page") or 1,
            standing=_standing(),
            stage=_stage(),
        )
        return desk.page(
            "farmers.html",
            model=model,
            longest=LONGEST_SEARCH,
            s=web_season,
            languages=desk.house.languages,
            groups=group_names(desk.house, desk.sight),
        )

    _enrolling(found, desk)
    _numbers(found, desk)
    _kept(found, desk)
    return found


def _standing() -> RollFilter | None:
    asked = request.args.get("standing", "")
    return RollFilter(asked) if asked in set(RollFilter) else None


def _stage() -> Stage | None:
    asked = request.args.get("stage", "")
    return Stage(asked) if asked in set(Stage) else None


# --- enrolling one ---------------------------------------------------------------------------


def _enrolling(found: Blueprint, desk: Desk) -> None:
    @found.get("/farmers/enrol")
    def enrol() -> ResponseReturnValue:
        return _form(desk)

    @found.post("/farmers/enrol")
    def enrolled() -> ResponseReturnValue:
        cells: dict[Field, str] = {
            what: typed(what.value, 100) for what in Field if what is not Field.VILLAGE
        }
        village = typed("village")
        form = Form(
            cells=cells,
            village=int(village) if village.isdecimal() and len(village) < 10 else None,
            owner=typed("owner"),
            moves="moves" in request.form,
        )
        outcome = enrol_by_form(desk.house, desk.sight, form, desk.now)
        if isinstance(outcome, EnrolledOne):
            desk.wake()
            desk.tell(outcome.says)
            return desk.to("nursery.farmer", farmer=outcome.farmer_id)
        if isinstance(outcome, Say):
            desk.tell(outcome, wrong=True)
            return _form(desk, moves=outcome.message is KNOWN_ELSEWHERE)
        return _form(desk, outcome)


def _form(
    desk: Desk, question: WhoQuestion | None = None, *, moves: bool = False
) -> ResponseReturnValue:
    """The form, with what was typed still in it; `moves`: asks whether a farmer is moved."""
    return desk.page(
        "enrol.html",
        question=question,
        moves=moves or "moves" in request.form,
        villages=desk.sight.villages,
        languages=desk.house.languages,
    )


# --- another number --------------------------------------------------------------------------


def _numbers(found: Blueprint, desk: Desk) -> None:
    @found.post("/farmers/<int:farmer>/number")
    def number(farmer: int) -> ResponseReturnValue:
        outcome = change_number(desk.house, desk.sight, farmer, typed("phone", 40), desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, NotChanged):
            bad = web_people.BAD_PHONE(words=typed("phone", 40))
            desk.tell(bad if outcome is NotChanged.BAD else web_people.NUMBER_TAKEN, wrong=True)
        else:
            desk.wake()
            desk.tell(web_people.NUMBER_CHANGED)
        return desk.to("nursery.farmer", farmer=farmer)


# --- what is kept of somebody ----------------------------------------------------------------


def _kept(found: Blueprint, desk: Desk) -> None:
    @found.post("/farmers/<int:farmer>/kept.json")
    def kept(farmer: int) -> ResponseReturnValue:
        whole = take_by_page(desk.house, desk.sight, farmer, desk.now)
        if whole is None:
            abort(404)
        headers = {"Content-Disposition": f'attachment; filename="person-{farmer}.json"'}
        return Response(whole, headers=headers, content_type="application/json; charset=utf-8")

    @found.post("/farmers/<int:farmer>/erase")
    def erase(farmer: int) -> ResponseReturnValue:
        asked = erase_by_page(desk.house, desk.sight, farmer, desk.now)
        if asked is None:
            abort(404)
        desk.wake()
        desk.tell(web_privacy.ERASE_ASKED if asked else web_privacy.ERASE_WAS, wrong=not asked)
        return desk.to("nursery.farmer", farmer=farmer)
