"""A village's beds, as its officer sets them: kinds that are offered, and the temperature."""

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue

from assistant.agronomy.constants import LEAF_COLDEST_C, LEAF_HOTTEST_C
from assistant.service import village_beds as service
from assistant.service.village_beds import WarmthNotKept
from assistant.web.desk import Desk
from assistant.web.village_forms import ClimateForm, KindsForm, WarmthForm
from assistant.web.villages import village_shown
from assistant.wording import messages_web_beds as web_beds
from assistant.wording.message import Say


def pages(desk: Desk) -> Blueprint:
    """The forms on the page of a village."""
    found = Blueprint("village_beds", __name__)

    @found.post("/villages/<int:village>/practices")
    def practices(village: int) -> ResponseReturnValue:
        codes = KindsForm.sent().practice.data
        names = service.set_practices(desk.house, desk.sight, village, codes, desk.now)
        if names is None:
            abort(404)
        desk.tell(web_beds.BEDS_KEPT(names=", ".join(names)))
        return desk.to("villages.village", village=village)

    _warmth(found, desk)
    _climate(found, desk)
    return found


def _warmth(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/warmth")
    def warmth(village: int) -> ResponseReturnValue:
        form = WarmthForm.sent()
        if not form.validate():
            return village_shown(desk, village, warmth=form)
        mean_c, day = form.degrees.data, form.on.data
        outcome = service.note_warmth(
            desk.house, desk.sight, village, mean_c=mean_c, day=day, now=desk.now
        )
        if outcome is None:
            abort(404)
        if isinstance(outcome, WarmthNotKept):
            return village_shown(desk, village, warmth=form.refuse(_why(outcome)))
        kept = desk.sight.village(village)
        name = kept.name if kept else ""
        desk.tell(web_beds.WARMTH_KEPT(village=name, degrees=outcome.mean_c, date=outcome.day))
        return desk.to("villages.village", village=village, anchor="warmth")


def _why(outcome: WarmthNotKept) -> Say:
    if outcome is WarmthNotKept.DAY:
        return web_beds.NO_DAY()
    return web_beds.NO_DEGREES(low=LEAF_COLDEST_C.value, high=LEAF_HOTTEST_C.value)


def _climate(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/climate")
    def climate(village: int) -> ResponseReturnValue:
        form = ClimateForm.sent()
        if not form.validate():
            return village_shown(desk, village, climate=form)
        months = form.read()
        outcome = service.note_climate(desk.house, desk.sight, village, months, desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, WarmthNotKept):
            return village_shown(desk, village, climate=form.refuse(web_beds.NO_CLIMATE))
        kept = web_beds.CLIMATE_KEPT if months else web_beds.CLIMATE_NONE
        desk.tell(kept(village=outcome.name))
        return desk.to("villages.village", village=village, anchor="climate")
