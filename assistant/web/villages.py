"""The villages: who serves them, their story, and handing one over."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk import villages as service
from assistant.service.desk.village_map import village_map
from assistant.service.desk.villages import Stays
from assistant.service.land_units import units_text
from assistant.service.places import looks_turned, others_than, place_village, read_point
from assistant.service.village_beds import village_beds
from assistant.web.desk import Desk, lead_only, typed
from assistant.wording import messages_web as web
from assistant.wording import messages_web_beds
from assistant.wording import messages_web_mend as mend
from assistant.wording import messages_web_rain as web_rain


def pages(desk: Desk) -> Blueprint:
    """The list and a page for each."""
    found = Blueprint("villages", __name__)

    @found.get("/villages")
    def villages() -> ResponseReturnValue:
        lines = service.list_villages(desk.house, desk.sight)
        drawn = village_map(lines)
        return desk.page("villages.html", lines=lines, drawn=drawn)

    @found.get("/villages/<int:village>")
    def village(village: int) -> ResponseReturnValue:
        story = service.village_story(desk.house, desk.sight, village)
        if story is None:
            abort(404)
        beds = village_beds(desk.house, desk.sight, village, desk.now)
        others = tuple(each for each in desk.sight.villages if each.id != village)
        near = desk.house.phonebook.of(story.line.village)
        return desk.page(
            "village.html",
            story=story,
            beds=beds,
            b=messages_web_beds,
            r=web_rain,
            others=others,
            near=near,
            place=request.args.get("place", "")[:40],
            units=units_text(story.line.village.units),
        )

    @found.post("/villages/<int:village>/hand-over")
    def hand_over(village: int) -> ResponseReturnValue:
        lead_only(desk)
        outcome = service.hand_over(
            desk.house,
            desk.sight,
            village,
            giver_id=chosen("giver"),
            taker_id=chosen("taker"),
            words=typed("words"),
            now=desk.now,
        )
        if outcome is None:
            abort(404)
        if isinstance(outcome, Stays):
            desk.tell(web.STAYS[outcome], wrong=True)
        else:
            desk.wake()
            desk.tell(web.HANDED_OVER(village=outcome.village, officer=outcome.taker))
        return desk.to("villages.village", village=village)

    _placing(found, desk)
    return found


def _placing(found: Blueprint, desk: Desk) -> None:
    @found.post("/villages/<int:village>/place")
    def place(village: int) -> ResponseReturnValue:
        words = typed("place")
        point = read_point(words)
        others = others_than(desk.sight.villages, village)
        if words and point is None:
            desk.tell(web_rain.PLACE_WRONG, wrong=True)
        elif point and "sure" not in request.form and looks_turned(point, others):
            desk.tell(mend.PLACE_TURNED, wrong=True)
            return desk.to(
                "villages.village", village=village, anchor="place", place=words[:40]
            )
        elif place_village(desk.house, desk.sight, village, point, desk.now) is None:
            abort(404)
        else:
            desk.tell(web_rain.PLACE_KEPT)
        return desk.to("villages.village", village=village)


def chosen(name: str) -> int | None:
    """The number that was chosen in a list of the form; None where it is none."""
    text = request.form.get(name, "")
    return int(text) if text.isascii() and text.isdecimal() and len(text) < 10 else None
