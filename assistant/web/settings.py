"""What the head of a programme sets without a command line."""

from babel.dates import get_month_names
from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.alert_terms import CERTAINTIES, SEVERITIES, URGENCIES
from assistant.people import LANGUAGES
from assistant.service.desk.settings_page import GROUPS, NotSet, set_group, settings_page
from assistant.web.desk import Desk
from assistant.web.forms import OfficerForm
from assistant.web.settings_forms import FORMS, forms_of
from assistant.wording import messages_web_settings as words

WORDS = {
    "alerts_severities": ("severity", SEVERITIES),
    "alerts_urgencies": ("urgency", URGENCIES),
    "alerts_certainties": ("certainty", CERTAINTIES),
}


def pages(desk: Desk) -> Blueprint:
    """The page, and one form for each group of settings."""
    found = Blueprint("settings", __name__)

    @found.get("/programme/settings")
    def shown() -> ResponseReturnValue:
        return _shown(desk)

    @found.post("/programme/settings/<any({}):group>".format(", ".join(GROUPS)))
    def keep(group: str) -> ResponseReturnValue:
        form = FORMS[group].sent()
        back = "back" in request.form  # to what is said outside: nothing is read of the form
        if not back and not form.validate():
            return _shown(desk, **{group: form})
        given = {} if back else form.given()
        done = set_group(desk.house, desk.sight, group, given, desk.now)
        if done is None:
            abort(404)
        if isinstance(done, NotSet):
            why = words.STILL_SPOKEN if done is NotSet.SPOKEN else words.UNFIT[group]
            return _shown(desk, **{group: form.refuse(why)})
        desk.wake()
        desk.tell(words.KEPT)
        return desk.to("settings.shown")

    desk.again["settings.keep"] = lambda group: _shown(desk, **{group: FORMS[group].sent()})
    return found


def _shown(desk: Desk, **refused: OfficerForm) -> ResponseReturnValue:
    """The page; a form that was refused stands there as it was filled in."""
    model = settings_page(desk.house, desk.sight)
    if model is None:
        abort(404)
    return desk.page(
        "settings.html",
        422 if refused else 200,
        model=model,
        form={**forms_of(model), **refused},
        house=desk.house,
        months=get_month_names("wide", locale=desk.catalogue.language),
        languages={**dict.fromkeys(desk.house.languages), **LANGUAGES},
        cap=WORDS,
    )
