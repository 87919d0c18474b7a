"""The season picture: every nursery on its time line, by village; what is due this week."""

from collections.abc import Mapping
from datetime import date
from enum import StrEnum
from typing import TypeVar

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.stages import Stage
from assistant.agronomy.tasks import TaskCode
from assistant.service.season.picture import Chosen, season_picture
from assistant.web.desk import Desk, asked_number
from assistant.web.fields import season_date
from assistant.wording.day import TASK_TEXTS

Name = TypeVar("Name", bound=StrEnum)

# How a stage is drawn beside its colour: a number that also stands in the legend.
NUMBERS: Mapping[Stage, int] = {stage: place for place, stage in enumerate(Stage, start=1)}


def pages(desk: Desk) -> Blueprint:
    """The picture."""
    found = Blueprint("season", __name__)

    @found.get("/season")
    def season() -> ResponseReturnValue:
        chosen = Chosen(
            village_id=asked_number("village"),
            stage=asked_name("stage", Stage),
            practice=request.args.get("practice") or None,
            task=asked_name("task", TaskCode),
            on=asked_date("on"),
            page=asked_number("page") or 1,
        )
        model = season_picture(desk.house, desk.sight, desk.now, chosen)
        return desk.page("season.html", model=model, numbers=NUMBERS, tasks=TASK_TEXTS)

    return found


def asked_name(name: str, names: type[Name]) -> Name | None:
    """One of a list of names in the address line; None where there is none of them."""
    text = request.args.get(name, "")
    return names(text) if text in names.__members__.values() else None


def asked_date(name: str) -> date | None:
    """A date of the address line; None where there is none."""
    return season_date(request.args.get(name, ""))
