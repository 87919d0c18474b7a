"""The list of farmers, by village, with a search; enrolling one; another number for one."""

from flask import Blueprint, Response, abort, request
from flask.typing import ResponseReturnValue
from wtforms import BooleanField

from assistant.agronomy.stages import Stage
from assistant.service.desk.farmers import LONGEST_SEARCH, list_farmers
from assistant.service.desk.numbers import NotChanged, change_number
from assistant.service.desk.own_groups import group_names
from assistant.service.office.columns import Field
from assistant.service.office.judging import WhoQuestion
from assistant.service.office.single import EnrolledOne, Form, enrol_by_form
from assistant.service.privacy import erase_by_page, take_by_page
from assistant.service.standing import RollFilter
from assistant.web.desk import Desk, asked_number
from assistant.web.fields import ChosenRow, Needed, TypedWords
from assistant.web.forms import OfficerForm
from assistant.web.nursery import farmer_shown
from assistant.web.nursery_forms import NumberForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_people as web_people
from assistant.wording import messages_web_privacy as web_privacy
from assistant.wording import messages_web_season as web_season
from assistant.wording.message import Say
from assistant.wording.messages_web_mend import KNOWN_ELSEWHERE


class EnrolForm(OfficerForm):
    """One farmer, as an office writes down who comes to it; the cells are those of a list."""

    phone = TypedWords(web.PHONE, [Needed()], longest=40)
    name = TypedWords(web_people.NAME, longest=40)
    village = ChosenRow(web.VILLAGE)
    language = TypedWords(web_people.SPEAKS, longest=20)
    area = TypedWords(web_people.FIELD_AREA, longest=40)
    sowing = TypedWords(web_people.FIELD_SOWING, longest=40)
    germination = TypedWords(web_people.FIELD_GERMINATION, longest=40)
    nursery = TypedWords(web_people.FIELD_NURSERY, longest=40)
    owner = TypedWords(web_people.WHAT_HAPPENED, longest=20)
    moves = BooleanField()

    def read(self) -> Form:
        """What was filled in."""
        cells: dict[Field, str] = {
            what: self[what].data for what in Field if what is not Field.VILLAGE
        }
        return Form(cells, self.village.data, self.owner.data, self.moves.data)


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
            form=EnrolForm(village=asked_number("village")),
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
        return _enrol_page(desk, EnrolForm())

    @found.post("/farmers/enrol")
    def enrolled() -> ResponseReturnValue:
        form = EnrolForm.sent()
        if not form.validate():
            return _enrol_page(desk, form, 422)
        outcome = enrol_by_form(desk.house, desk.sight, form.read(), desk.now)
        if isinstance(outcome, EnrolledOne):
            desk.wake()
            desk.tell(outcome.says)
            return desk.to("nursery.farmer", farmer=outcome.farmer_id)
        if isinstance(outcome, Say):
            moves = outcome.message is KNOWN_ELSEWHERE
            return _enrol_page(desk, form.refuse(outcome), 422, moves=moves)
        return _enrol_page(desk, form, question=outcome)


def _enrol_page(
    desk: Desk,
    form: EnrolForm,
    status: int = 200,
    *,
    question: WhoQuestion | None = None,
    moves: bool = False,
) -> ResponseReturnValue:
    """The form, with what was typed still in it; `moves`: asks whether a farmer is moved."""
    return desk.page(
        "enrol.html",
        status,
        form=form,
        question=question,
        moves=moves or form.moves.data,
        villages=desk.sight.villages,
        languages=desk.house.languages,
    )


# --- another number --------------------------------------------------------------------------


def _numbers(found: Blueprint, desk: Desk) -> None:
    @found.post("/farmers/<int:farmer>/number")
    def number(farmer: int) -> ResponseReturnValue:
        form = NumberForm.sent()
        if not form.validate():
            return farmer_shown(desk, farmer, number=form)
        phone = form.phone.data
        outcome = change_number(desk.house, desk.sight, farmer, phone, desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, NotChanged):
            bad = outcome is NotChanged.BAD
            why = web_people.BAD_PHONE(words=phone) if bad else web_people.NUMBER_TAKEN()
            return farmer_shown(desk, farmer, number=form.refuse(why))
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
