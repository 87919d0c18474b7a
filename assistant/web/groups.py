"""An officer's own groups."""

from flask import Blueprint, abort, redirect
from flask.typing import ResponseReturnValue

from assistant.service.desk.own_groups import (
    LONGEST_NAME,
    drop_group,
    keep_group,
    my_groups,
    take_out,
)
from assistant.web.desk import Desk, inside, ticked, typed
from assistant.wording import messages_web_desk as k
from assistant.wording import messages_web_groups as web_groups


def pages(desk: Desk) -> Blueprint:
    """The page, and what is done with a group."""
    found = Blueprint("groups", __name__)

    @found.get("/groups")
    def shown() -> ResponseReturnValue:
        return desk.page("groups.html", groups=my_groups(desk.house, desk.sight))

    @found.post("/groups")
    def keep() -> ResponseReturnValue:
        name, ids = typed("name", LONGEST_NAME), ticked("farmer")
        kept = keep_group(desk.house, desk.sight, name, ids, desk.now)
        if kept is None:
            desk.tell(web_groups.NO_NAME_YET if ids else k.NONE_TICKED, wrong=True)
            back = inside(typed("back", 400))
            return desk.to("farmers.farmers") if back is None else _to(back)
        desk.tell(web_groups.GROUP_KEPT(n=kept.count, name=kept.name))
        return desk.to("groups.shown", anchor=f"group-{kept.id}")

    @found.post("/groups/<int:group>/out")
    def out(group: int) -> ResponseReturnValue:
        count = take_out(desk.house, desk.sight, group, ticked("farmer"))
        if count is None:
            abort(404)
        desk.tell(web_groups.TAKEN_OUT(n=count) if count else k.NONE_TICKED(), wrong=not count)
        return desk.to("groups.shown", anchor=f"group-{group}")

    @found.post("/groups/<int:group>/drop")
    def drop(group: int) -> ResponseReturnValue:
        name = drop_group(desk.house, desk.sight, group)
        if name is None:
            abort(404)
        desk.tell(web_groups.GROUP_DROPPED(name=name))
        return desk.to("groups.shown")

    return found


def _to(path: str) -> ResponseReturnValue:
    return redirect(path, 303)
