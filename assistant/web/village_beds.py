"""A village's beds, as its officer sets them: kinds that are offered, and the temperature."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.constants import LEAF_COLDEST_C, LEAF_HOTTEST_C
from assistant.agronomy.growth.warmth import Warmth
from assistant.service import village_beds as service
from assistant.service.village_beds import WarmthNotKept
from assistant.web.desk import Desk, typed, typed_date
from assistant.wording import messages_web_beds as web_beds

LONGEST_NUMBER = 8
LONGEST_CLIMATE = 120


def pages(desk: Desk) -> Blueprint:
    """Two forms on the page of a village."""
    found = Blueprint("village_beds", __name__)

    @found.post("/villages/<int:village>/practices")
    def practices(village: int) -> ResponseReturnValue:
        codes = request.form.getlist("practice")
        names = service.set_practices(desk.house, desk.sight, village, codes, desk.now)
        if names is None:
            abort(404)
        desk.tell(web_beds.BEDS_KEPT(names=", ".join(names)))
        return desk.to("villages.village", village=village)

    @found.post("/villages/<int:village>/warmth")
    def warmth(village: int) -> ResponseReturnValue:
        outcome = service.note_warmth(
            desk.house,
            desk.sight,
            village,
            mean_c=_number(typed("degrees", LONGEST_NUMBER)),
            day=typed_date("on"),
            now=desk.now,
        )
        if outcome is None:
            abort(404)
        _answer(desk, village, outcome)
        return desk.to("villages.village", village=village, anchor="warmth")

    @found.post("/villages/<int:village>/climate")
    def climate(village: int) -> ResponseReturnValue:
        months = _months(typed("months", LONGEST_CLIMATE))
        outcome = service.note_climate(desk.house, desk.sight, village, months, desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, WarmthNotKept):
            desk.tell(web_beds.NO_CLIMATE, wrong=True)
        else:
            kept = web_beds.CLIMATE_KEPT if months else web_beds.CLIMATE_NONE
            desk.tell(kept(village=outcome.name))
        return desk.to("villages.village", village=village, anchor="climate")

    return found


def _months(text: str) -> tuple[float, ...] | None:
    """Twelve numbers with blanks between; None where nothing is written, none where it cannot
    be read."""
    words = text.split()
    try:
        return tuple(float(word.replace(",", ".")) for word in words) or None
    except ValueError:
        return ()


def _answer(desk: Desk, village_id: int, outcome: Warmth | WarmthNotKept) -> None:
    if outcome is WarmthNotKept.DAY:
        desk.tell(web_beds.NO_DAY, wrong=True)
    elif isinstance(outcome, WarmthNotKept):
        wrong = web_beds.NO_DEGREES(low=LEAF_COLDEST_C.value, high=LEAF_HOTTEST_C.value)
        desk.tell(wrong, wrong=True)
    else:
        village = desk.sight.village(village_id)
        name = village.name if village else ""
        kept = web_beds.WARMTH_KEPT(village=name, degrees=outcome.mean_c, date=outcome.day)
        desk.tell(kept)


def _number(text: str) -> float | None:
    """A plain decimal number, with a point or a comma; None for anything else."""
    plain = text.replace(",", ".", 1)
    digits = plain.replace(".", "", 1)
    return float(plain) if digits.isascii() and digits.isdecimal() else None
