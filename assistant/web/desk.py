"""What every page needs: the house, the time, who is signed in, and words in their language."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from typing import Any, cast
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

from babel.dates import format_date
from flask import (
    Flask,
    Response,
    abort,
    flash,
    g,
    make_response,
    redirect,
    render_template,
    request,
    url_for,
)
from flask.typing import ResponseReturnValue
from flask_login import UserMixin, current_user
from flask_wtf.csrf import generate_csrf
from jinja2 import StrictUndefined, pass_context
from markupsafe import Markup

from assistant.channel import Clock
from assistant.people import LANGUAGES, ending, spaced
from assistant.service.connections import Allows
from assistant.service.desk.accounts import prove
from assistant.service.desk.sessions import Member
from assistant.service.house import House
from assistant.service.in_force import InForce
from assistant.service.later import LATEST_D
from assistant.service.looked import Looks
from assistant.service.sight import Sight, served_villages
from assistant.web.fields import is_id
from assistant.wording import (
    messages_tasks,
    messages_web,
    messages_web_alerts,
    messages_web_brakes,
    messages_web_calls,
    messages_web_desk,
    messages_web_door,
    messages_web_groups,
    messages_web_lines,
    messages_web_mend,
    messages_web_office,
    messages_web_people,
    messages_web_privacy,
    messages_web_questions,
    messages_web_season,
    messages_web_settings,
    messages_web_story,
)
from assistant.wording.dangers import name_of
from assistant.wording.message import Message, Say, Slot
from assistant.wording.render import (
    Catalogue,
    clock,
    day,
    long_day,
    month,
    number,
    render,
    short_day,
)


class SignedIn(UserMixin):  # type: ignore[misc]  # the library has no types
    """What flask-login holds of a member."""

    def __init__(self, member: Member) -> None:
        self.member = member

    def get_id(self) -> str:
        return self.member.token


@dataclass(frozen=True)
class Desk:
    """Handed to every page.

    wake: called when texts wait in the outbox      clock: reads the time of each request
    https: officers reach the page by https only
    terms: what is set of each line, where a file of lines is
    looks: who looked at whom
    again: shows a grave form again as it was filled in, by its endpoint, where the officer did
        not show who they are
    """

    kept: InForce
    wake: Callable[[], None]
    clock: Clock
    https: bool = False
    terms: Mapping[str, Allows] = field(default_factory=dict)
    looks: Looks = field(default_factory=Looks)
    again: dict[str, Callable[..., ResponseReturnValue]] = field(default_factory=dict)

    @property
    def house(self) -> House:
        """The house as its pages have set it."""
        return self.kept.house

    @property
    def known_cookie(self) -> str:
        """The name of the cookie by which a browser is known that was here before."""
        return "__Host-nursery-known" if self.https else "nursery-known"

    @property
    def now(self) -> datetime:
        """The time of this request, the same all through it."""
        if "now" not in g:
            g.now = self.clock()
        return cast(datetime, g.now)

    @property
    def member(self) -> Member:
        """Who is signed in; no page but those in `OPEN` is reached without."""
        return cast(SignedIn, current_user).member

    @property
    def sight(self) -> Sight:
        """What they may see."""
        return self.member.sight

    def looks_at(self, farmer_id: int) -> None:
        """Who is signed in is shown what is kept of a farmer."""
        self.looks.at(self.house, self.sight, farmer_id, self.now)

    def needs_number(self, village_id: int | None) -> bool:
        """Whether who looks rings the farmers of a village: its officers do, a lead only where
        nobody else would."""
        officer = self.sight.officer
        if not officer.is_lead or village_id is None or village_id in officer.village_ids:
            return True
        if "served" not in g:
            g.served = served_villages(self.house)
        return village_id not in g.served

    @property
    def catalogue(self) -> Catalogue:
        """The language of this page: the officer's, else one that the browser asks for."""
        if current_user.is_authenticated:
            return self.house.catalogue(self.sight.officer.language)
        asked = request.accept_languages.best_match(self.house.languages)
        return self.house.catalogue(asked)

    def say(self, what: Message | Say, /, **slots: Slot) -> str:
        """Words in the language of this page."""
        return render(what(**slots) if isinstance(what, Message) else what, self.catalogue)

    # --- answers of a page -------------------------------------------------------------------

    def page(self, template: str, status: int = 200, **values: object) -> ResponseReturnValue:
        """A page from a template."""
        return render_template(template, **values), status

    def tell(self, what: Message | Say, *, wrong: bool = False) -> None:
        """Says something on the next page: what was done, or what was not and why."""
        flash(self.say(what() if isinstance(what, Message) else what), "no" if wrong else "yes")

    def to(self, endpoint: str, anchor: str | None = None, **more: Any) -> Response:
        """Sends the browser on to a page, after something was done."""
        return make_response(redirect(url_for(endpoint, _anchor=anchor, **more), 303))


@dataclass(frozen=True)
class PaperWords:
    """Words for a sheet of paper, which may be in another language than the page."""

    catalogue: Catalogue

    @property
    def language(self) -> str:
        """Its code."""
        return self.catalogue.language

    def say(self, what: Message | Say, /, **slots: Slot) -> str:
        """Words in the language of the sheet."""
        return render(what(**slots) if isinstance(what, Message) else what, self.catalogue)

    def day(self, value: date) -> str:
        """A date with its weekday."""
        return day(value, self.language)

    def short_day(self, value: date) -> str:
        """Day and month."""
        return short_day(value, self.language)

    def number(self, value: float) -> str:
        """A number."""
        return number(value, self.language)

    def weekday(self, value: date) -> str:
        """The name of the day of the week."""
        return format_date(value, format="EEEE", locale=self.language)


def lead_only(desk: Desk) -> None:
    """Ends the request for anybody but the lead; what they may not see is not there."""
    if not desk.sight.officer.is_lead:
        abort(404)


def proved(desk: Desk) -> bool:
    """Whether the officer has just shown who they are, or does so with this form (macro
    `prove`). Asked before what can do much harm."""
    if desk.member.proved(desk.now):
        return True
    password = request.form.get("own_password", "")
    return prove(desk.house, desk.member, password, typed("own_code", 12), desk.now)


MANY = 500  # phones, from which on it is asked who sends this


def may_reach(desk: Desk, phones: int) -> bool:
    """Whether so many phones may be texted by this form: from `MANY` on the officer shows once
    more who they are, and is told where that was not right. A warning never asks."""
    if phones < MANY or proved(desk):
        return True
    desk.tell(messages_web_door.NOT_PROVED, wrong=True)
    return False


def inside(path: str | None) -> str | None:
    """A path of our own to go on to; None for what leads elsewhere."""
    if not path or not path.startswith("/") or path.startswith("//") or "\\" in path:
        return None
    parts = urlsplit(path)
    return None if parts.scheme or parts.netloc else path


# --- what is typed ---------------------------------------------------------------------------


def typed(name: str, longest: int = 1000) -> str:
    """A field of the form, without blanks around it."""
    return request.form.get(name, "").strip()[:longest]


def ticked(name: str) -> list[int]:
    """The rows that were ticked, by their ids, where a form holds nothing else."""
    return [int(each) for each in request.form.getlist(name) if is_id(each)]


def _days_from(today: date) -> tuple[date, ...]:
    return tuple(today + timedelta(days=ahead) for ahead in range(LATEST_D + 1))


def asked_number(name: str) -> int | None:
    """A whole number of the address line; None where there is none."""
    text = request.args.get(name, "")
    return int(text) if is_id(text) else None


# --- words in templates ----------------------------------------------------------------------


def _token() -> Markup:
    """The hidden field that every form carries, so that no other site can send it."""
    return Markup('<input type="hidden" name="csrf_token" value="{}">').format(generate_csrf())


def _in_context(use: Callable[..., str]) -> Callable[..., str]:
    """A filter whose outcome depends on who looks: the compiler of templates would otherwise
    reckon that of a constant once, in the language of whoever comes first."""

    @pass_context
    def filtered(context: object, value: Any) -> str:
        return use(value)

    return filtered


def furnish(app: Flask, desk: Desk) -> None:
    """Gives templates their words: `say`, the messages as `w`, and dates, times, numbers."""

    def language() -> str:
        return desk.catalogue.language

    def when(moment: datetime) -> str:
        return f"{day(moment.date(), language())} {clock(moment.time(), language())}"

    filters: dict[str, Callable[..., str]] = {
        "spaced": spaced,
        "day": lambda value: day(value, language()),
        "short_day": lambda value: short_day(value, language()),
        "long_day": lambda value: long_day(value, language()),
        "month": lambda value: month(value, language()),
        "clock": lambda moment: clock(moment.time(), language()),
        "when": when,
        "hour": lambda value: clock(time(value), language()),
        "num": lambda value: number(value, language()),
        "here": lambda moment: when(moment.astimezone(ZoneInfo(desk.house.zone))),
    }
    app.jinja_env.filters.update({name: _in_context(use) for name, use in filters.items()})
    app.jinja_env.undefined = StrictUndefined
    app.jinja_env.globals.update(say=desk.say, token=_token, w=messages_web, t=messages_tasks)
    app.jinja_env.globals.update(s=messages_web_season, a=messages_web_alerts)
    app.jinja_env.globals.update(story=messages_web_story, danger_name=name_of)
    app.jinja_env.globals.update(p=messages_web_people, c=messages_web_calls)
    app.jinja_env.globals.update(
        d=messages_web_door,
        proved_lately=lambda: desk.member.proved(desk.now),
        has_factor=lambda: desk.member.has_factor,
        needs_number=desk.needs_number,
        ending=ending,
        many=MANY,
        privacy=messages_web_privacy,
    )
    app.jinja_env.globals.update(
        k=messages_web_desk,
        mend=messages_web_mend,
        stop=messages_web_brakes,
        also=messages_web_groups,
    )
    app.jinja_env.globals.update(days_from=_days_from, also=messages_web_groups)
    app.jinja_env.globals.update(ln=messages_web_lines, asks=messages_web_questions)
    app.jinja_env.globals.update(office=messages_web_office, sets=messages_web_settings)
    app.context_processor(
        lambda: {
            "language": language(),
            "programme": desk.house.programme,
            "officer": desk.sight.officer if current_user.is_authenticated else None,
            "now": desk.now,
            "language_names": LANGUAGES,
        }
    )
