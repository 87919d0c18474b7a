"""What the head of a programme sets without a command line."""

from babel.dates import get_month_names
from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.alerts.standard import CERTAINTIES, SEVERITIES, URGENCIES
from assistant.people import LANGUAGES
from assistant.service.desk.settings_page import GROUPS, NotSet, set_group, settings_page
from assistant.web.desk import Desk, typed
from assistant.wording import messages_web_settings as words

WORDS = {
    "alerts_severities": ("severity", SEVERITIES),
    "alerts_urgencies": ("urgency", URGENCIES),
    "alerts_certainties": ("certainty", CERTAINTIES),
}
LISTS = frozenset({"languages", "season_months", *WORDS})  # boxes to tick
LONGEST = 3000


def pages(desk: Desk) -> Blueprint:
    """The page, and one form for each group of settings."""
    found = Blueprint("settings", __name__)

    @found.get("/programme/settings")
    def shown() -> ResponseReturnValue:
        model = settings_page(desk.house, desk.sight)
        if model is None:
            abort(404)
        months = get_month_names("wide", locale=desk.catalogue.language)
        return desk.page(
            "settings.html",
            model=model,
            house=desk.house,
            months=months,
            languages={**dict.fromkeys(desk.house.languages), **LANGUAGES},
            cap=WORDS,
        )

    @found.post("/programme/settings/<any({}):group>".format(", ".join(GROUPS)))
    def keep(group: str) -> ResponseReturnValue:
        given = {} if "back" in request.form else {n: _given(n) for n in GROUPS[group]}
        done = set_group(desk.house, desk.sight, group, given, desk.now)
        if done is None:
            abort(404)
        if isinstance(done, NotSet):
            why = words.STILL_SPOKEN if done is NotSet.SPOKEN else words.UNFIT[group]
            desk.tell(why, wrong=True)
        else:
            desk.wake()
            desk.tell(words.KEPT)
        return desk.to("settings.shown", anchor=None if done else group)

    return found


def _given(name: str) -> str:
    if name in LISTS:
        # None ticked is nothing that can be set, and not the same as leaving it to the file.
        return ",".join(request.form.getlist(name)) or "-"
    return typed(name, LONGEST)
