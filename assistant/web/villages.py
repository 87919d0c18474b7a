"""The villages: who serves them, their story, and handing one over."""

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue

from assistant.service.desk import villages as service
from assistant.service.desk.village_map import village_map
from assistant.service.desk.villages import Stays
from assistant.service.places import looks_turned, others_than, place_village, read_point
from assistant.service.village_beds import village_beds
from assistant.web.desk import Desk, lead_only
from assistant.web.forms import OfficerForm
from assistant.web.village_forms import HandOverForm, NewVillageForm, PlaceForm, forms_of
from assistant.wording import messages_web as web
from assistant.wording import messages_web_beds
from assistant.wording import messages_web_mend as mend
from assistant.wording import messages_web_rain as web_rain


def pages(desk: Desk) -> Blueprint:
    """The list and a page for each."""
    found = Blueprint("villages", __name__)

    @found.get("/villages")
    def villages() -> ResponseReturnValue:
        return villages_shown(desk, NewVillageForm())

    @found.get("/villages/<int:village>")
    def village(village: int) -> ResponseReturnValue:
        return village_shown(desk, village)

    @found.post("/villages/<int:village>/hand-over")
    def hand_over(village: int) -> ResponseReturnValue:
        lead_only(desk)
        form = HandOverForm.sent()
        if not form.validate():
            return village_shown(desk, village, hand_over=form)
        outcome = service.hand_over(
            desk.house,
            desk.sight,
            village,
            giver_id=form.giver.data,
            taker_id=form.taker.data,
            words=form.words.data,
            now=desk.now,
        )
        if outcome is None:
            abort(404)
        if isinstance(outcome, Stays):
            return village_shown(desk, village, hand_over=form.refuse(web.STAYS[outcome]))
        desk.wake()
        desk.tell(web.HANDED_OVER(village=outcome.village, officer=outcome.taker))
        return desk.to("villages.village", village=village)

    _placing(found, desk)
    return found


def villages_shown(desk: Desk, form: NewVillageForm, status: int = 200) -> ResponseReturnValue:
    """The list, with the form that adds one."""
    lines = service.list_villages(desk.house, desk.sight)
    return desk.page("villages.html", status, lines=lines, drawn=village_map(lines), form=form)


def village_shown(
    desk: Desk, village: int, *, turned: bool = False, **refused: OfficerForm
) -> ResponseReturnValue:
    """The page of a village; a form that was refused stands there as it was filled in.

    turned: its place looks turned round, and the officer is asked whether they are sure
    """
    story = service.village_story(desk.house, desk.sight, village)
    if story is None:
        abort(404)
    beds = village_beds(desk.house, desk.sight, village, desk.now)
    return desk.page(
        "village.html",
        422 if refused else 200,
        story=story,
        beds=beds,
        b=messages_web_beds,
        r=web_rain,
        others=tuple(each for each in desk.sight.villages if each.id != village),
        near=desk.house.phonebook.of(story.line.village),
        turned=turned,
        form={**forms_of(story, beds), **refused},
        refused=refused,
    )


def _placing(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/place")
    def place(village: int) -> ResponseReturnValue:
        form = PlaceForm.sent()
        point = read_point(form.place.data)
        others = others_than(desk.sight.villages, village)
        if not form.validate():
            return village_shown(desk, village, place=form)
        if form.place.data and point is None:
            return village_shown(desk, village, place=form.refuse(web_rain.PLACE_WRONG))
        if point and not form.sure.data and looks_turned(point, others):
            form.refuse(mend.PLACE_TURNED)
            return village_shown(desk, village, turned=True, place=form)
        if place_village(desk.house, desk.sight, village, point, desk.now) is None:
            abort(404)
        desk.tell(web_rain.PLACE_KEPT)
        return desk.to("villages.village", village=village)
