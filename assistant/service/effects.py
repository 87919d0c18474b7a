"""Carries out what a turn of the dialogue changes, in the transaction of its message."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from assistant.agronomy.dangers.rows import RAIN
from assistant.agronomy.life.rows import TASKS
from assistant.channel import Channel
from assistant.dialogue import values as v
from assistant.dialogue.callers import caller
from assistant.dialogue.officer import without_any_code
from assistant.dialogue.readers import shortened
from assistant.people import Farmer
from assistant.reminders.plan import local
from assistant.reminders.values import Reminder, State
from assistant.service.alarms.raising import (
    joins_private,
    raise_alarm,
    settle_alarm,
    with_more,
    writer,
)
from assistant.service.climate import follow_warmth, warmed_here
from assistant.service.consent import Enroller, enrol_one, forget, note_answer
from assistant.service.days import local_date, zone_of
from assistant.service.house import House
from assistant.service.limits import Ring, in_digest, rings
from assistant.service.pausing import pause, resume, set_pace
from assistant.service.privacy import ask_back, keep_after_all, keep_agreement
from assistant.service.replan import save_and_plan
from assistant.service.soaking import move_soaking
from assistant.service.stopped_here import hide_stop, show_stop
from assistant.service.storms.drafts import issue_warning
from assistant.service.storms.warnings import give_all_clear, in_storm
from assistant.service.tell import see_to, tell_farmer
from assistant.service.texts import REPLY_LASTS, Letter, after_quiet, post
from assistant.service.told import ABOUT, URGENT, answer_of
from assistant.service.village_beds import keep_warmth
from assistant.store import PRIVATE, PastCall, Work
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording.dangers import name_of
from assistant.wording.message import Say, Slot

ONE_DAY = timedelta(days=1)
SAME_CALL = timedelta(hours=1)


@dataclass(frozen=True)
class Scene:
    """Where changes happen: a transaction, the phone they come from, the time."""

    work: Work
    house: House
    phone: str
    channel: Channel
    now: datetime
    gateway_id: str = ""  # of the message that changes them

    def farmer(self) -> Farmer:
        """The farmer of this phone, as it is in this transaction."""
        farmer = self.work.people.farmer(self.phone)
        if farmer is None:
            raise LookupError(f"{self.phone} is not enrolled, so nothing can be kept for it")
        return farmer


def carry_out(changes: tuple[v.Change, ...], scene: Scene) -> None:
    """Makes all changes of a turn."""
    for change in changes:
        _CARRY_OUT[type(change)](change, scene)


def _enrol(change: v.Enrol, scene: Scene) -> None:
    known = scene.work.people.farmer(scene.phone)
    fresh = known or Farmer(0, scene.phone, None, None, None, None)
    scene.work.people.save_farmer(
        replace(
            fresh,
            language=change.language,
            village_id=change.village_id,
            consent_at=scene.now,
            stopped_at=None,
            paused_at=None,
        )
    )
    scene.house.journal(scene.phone, False, scene.now)
    note_answer(scene.work, scene.farmer(), "yes", scene.now)
    keep_agreement(
        scene.work,
        scene.house,
        scene.farmer().id,
        scene.channel.value,
        change.language,
        scene.now,
    )
    keep_after_all(scene.work, scene.phone)
    for bed in scene.work.nurseries.of_farmer(scene.farmer().id):
        warm = warmed_here(scene.work, scene.house, scene.farmer(), bed, scene.now)
        save_and_plan(scene.work, scene.house, scene.farmer(), warm, scene.now)


def _decline(change: v.Decline, scene: Scene) -> None:
    scene.house.journal(scene.phone, True, scene.now)
    forget(scene.work, scene.phone, scene.now)


def _add_farmer(change: v.AddFarmer, scene: Scene) -> None:
    """An officer enrols somebody by text; who is on the roll by now stays as they are."""
    work = scene.work
    work.lock(change.phone)
    officer = work.people.officer(scene.phone)
    village = work.people.village(change.village_id)
    if officer is None or village is None or work.people.on_roll(change.phone):
        return
    once = work.people.farmer(change.phone)  # cried for help from this phone
    kept = once.id if once else 0
    farmer = Farmer(kept, change.phone, change.language, village.id, None, None, change.name)
    who = Enroller(officer.id, officer.name)
    enrol_one(work, scene.house, who, farmer, village, "text", scene.now)


def _set_language(change: v.SetLanguage, scene: Scene) -> None:
    scene.work.people.save_farmer(replace(scene.farmer(), language=change.language))


def _stop(change: v.StopTexts, scene: Scene) -> None:
    scene.work.outbox.withdraw(scene.now, phone=scene.phone)
    scene.house.journal(scene.phone, True, scene.now)
    farmer = scene.work.people.on_roll(scene.phone)
    if farmer is not None:
        show_stop(scene.work, farmer, scene.now)
        scene.work.people.save_farmer(replace(farmer, stopped_at=scene.now, paused_at=None))
        if farmer.consent_at is None:
            note_answer(scene.work, farmer, "stop", scene.now)


def _ask_erasure(change: v.AskErasure, scene: Scene) -> None:
    farmer = scene.work.people.farmer(scene.phone)
    language = (farmer.language if farmer else None) or scene.house.languages[0]
    ask_back(scene.work, scene.house, scene.phone, language, scene.now)


def _start(change: v.StartTexts, scene: Scene) -> None:
    keep_after_all(scene.work, scene.phone)
    scene.work.people.save_farmer(replace(scene.farmer(), stopped_at=None, paused_at=None))
    hide_stop(scene.work, scene.farmer(), scene.now)
    scene.house.journal(scene.phone, False, scene.now)


def _save_nursery(change: v.SaveNursery, scene: Scene) -> None:
    save_and_plan(scene.work, scene.house, scene.farmer(), change.nursery, scene.now)


def _happened(change: v.Happened, scene: Scene) -> None:
    scene.work.events.add(change.nursery_id, change.event, scene.now)


def _keep_season(change: v.KeepSeason, scene: Scene) -> None:
    scene.work.seasons.save(replace(change.outcome, farmer_id=scene.farmer().id))


def _answer_item(change: v.AnswerItem, scene: Scene) -> None:
    item = change.item
    state = State.NOT_YET if change.answer == "not_yet" else State.DONE
    which = item.nursery_id, item.task, item.day
    reminder = scene.work.reminders.settle(which, state, change.answer, scene.now)
    if reminder is not None and state is State.NOT_YET and TASKS[item.task].again_tomorrow:
        _ask_tomorrow(reminder, scene)


def _ask_tomorrow(reminder: Reminder, scene: Scene) -> None:
    zone = zone_of(scene.work, scene.house, scene.farmer().village_id)
    day = local_date(scene.now, zone) + ONE_DAY
    hours = scene.house.hours
    again = Reminder(
        nursery_id=reminder.nursery_id,
        task=reminder.task,
        day=day,
        due_at=local(day, hours.prompt, zone),
        not_after=local(day, hours.quiet_from, zone),
    )
    scene.work.reminders.plan([again])


def _call(change: v.CallForHelp, scene: Scene) -> None:
    farmer = writer(scene.work, scene.phone)
    before = scene.work.story.calls_of(farmer.id)
    if _joined(change, before, scene):
        return
    ring = rings(before, change.about, scene.now)
    scene.work.calls.add(farmer.id, change.nursery_id, change.about, change.words, scene.now)
    village = scene.work.people.village(farmer.village_id) if farmer.village_id else None
    nursery = scene.work.nurseries.get(change.nursery_id) if change.nursery_id else None
    slots: dict[str, Slot] = {
        "phone": caller(farmer.name, farmer.phone),
        "village": village.name if village else "-",
        "label": nursery.called if nursery else "-",
        "about": ABOUT[change.about](),
    }
    words = answer_of(change.about, change.words.strip())
    if isinstance(words, str):
        words = shortened(words)
    says = o.HELP_NOTICE(**slots, words=words) if words else o.HELP_NOTICE_BARE(**slots)
    urgent = change.about in URGENT or (change.about == "question" and _rains(scene, farmer))
    if urgent:
        _notify(scene, farmer, (says, o.GO_SAFELY()), urgent=True)
    elif ring is not Ring.KEPT:
        last = (o.LAST_NOTICE(),) if ring is Ring.LAST else ()
        _notify(scene, farmer, (says, *last), urgent=False)


def _joined(change: v.CallForHelp, before: Iterable[PastCall], scene: Scene) -> bool:
    """Adds to the call for the same that was made a moment ago, of which the officer knows."""
    for call in before:
        lately = call.at > scene.now - SAME_CALL
        if call.about == change.about and call.handled_at is None and lately:
            words = with_more(call.words, change.words.strip())
            if words != call.words:
                scene.work.alarms.reword(call.id, call.about, words)
            return True
    return False


def _rains(scene: Scene, farmer: Farmer) -> bool:
    """Whether a warning of a storm stands where the farmer is: then a question does not
    wait."""
    return in_storm(scene.work, farmer.village_id, scene.now)


def _alarm(change: v.RaiseAlarm, scene: Scene) -> None:
    raise_alarm(scene.work, scene.house, scene.phone, change, scene.now)
    if change.kind == PRIVATE and scene.gateway_id:
        scene.work.inbox.hide(scene.gateway_id)


def _settle(change: v.SettleAlarm, scene: Scene) -> None:
    settle_alarm(scene.work, scene.house, scene.phone, change, scene.now)


def _notify(scene: Scene, farmer: Farmer, says: tuple[Say, ...], *, urgent: bool) -> None:
    """Tells the officers who serve the farmer's village, the leads where nobody does, by one
    text an hour (a lead of a country cannot read each call); outside quiet hours unless it is
    urgent, which no setting holds back."""
    people = scene.work.people
    here = farmer.village_id
    served = people.serving(here) if here is not None else ()
    told = served or tuple(officer for officer in people.officers() if officer.is_lead)
    zone = zone_of(scene.work, scene.house, farmer.village_id)
    due = scene.now if urgent else after_quiet(scene.house, zone, scene.now)
    for officer in told:
        joins = not served and not urgent
        if joins and in_digest(scene.work, scene.house, officer, due, scene.now):
            continue
        letter = Letter(
            phone=officer.phone,
            language=officer.language,
            says=says,
            kind=v.Kind.NOTICE,
            due_at=due,
            not_after=due + REPLY_LASTS,
            urgent=urgent,
        )
        post(scene.work, scene.house, letter, scene.now)


def _answer_warning(change: v.AnswerWarning, scene: Scene) -> None:
    scene.work.warnings.answer(change.warning_id, scene.phone, change.answer, scene.now)
    if change.answer != "help" or change.alarmed:
        return
    if change.words:  # a cry in the farmer's own words, which the officer reads whole
        _alarm(v.RaiseAlarm("danger", change.words), scene)
        return
    farmer = scene.farmer()
    before = scene.work.story.calls_of(farmer.id)
    standing = scene.work.warnings.get(change.warning_id)
    danger = standing.danger if standing else RAIN
    about = "rain" if danger == RAIN else "warned"
    if _joined(v.CallForHelp(about, "", None), before, scene):
        return
    scene.work.calls.add(farmer.id, None, about, "", scene.now)
    village = scene.work.people.village(farmer.village_id) if farmer.village_id else None
    who = caller(farmer.name, farmer.phone)
    slots: dict[str, Slot] = {"phone": who, "village": village.name if village else "-"}
    if danger == RAIN:
        says = o.HELP_IN_RAIN(**slots)
    else:
        says = dangers.HELP_WANTED(danger=name_of(danger), **slots)
    _notify(scene, farmer, (says,), urgent=True)


def _issue(change: v.IssueWarning, scene: Scene) -> None:
    issue_warning(scene.work, scene.house, scene.phone, change, scene.now)


def _all_clear(change: v.GiveAllClear, scene: Scene) -> None:
    officer = scene.work.people.officer(scene.phone)
    by = officer.id if officer else None
    give_all_clear(scene.work, scene.house, change.warning_id, scene.now, by)


def _keep_warmth(change: v.KeepWarmth, scene: Scene) -> None:
    officer = scene.work.people.officer(scene.phone)
    if officer is None:
        raise LookupError(f"{scene.phone} is no officer, so its temperature cannot be kept")
    keep_warmth(scene.work, change.village_id, change.warmth, officer.id, scene.now)
    move_soaking(scene.work, scene.house, change.village_id, change.warmth, scene.now)
    village = scene.work.people.village(change.village_id)
    if village is not None:
        follow_warmth(scene.work, scene.house, village, scene.now)


def _tell_farmer(change: v.TellFarmer, scene: Scene) -> None:
    tell_farmer(scene.work, scene.house, scene.phone, change, scene.now)


def _see_to(change: v.SeeTo, scene: Scene) -> None:
    see_to(scene.work, scene.phone, change, scene.now)


def _note_unread(change: v.NoteUnread, scene: Scene) -> None:
    work, phone = scene.work, scene.phone
    known = work.people.officer(phone) is not None
    text = without_any_code(change.text) if known else change.text
    if joins_private(work, phone, text):
        work.inbox.hide(scene.gateway_id)
        return
    farmer = work.people.on_roll(phone)
    language = (farmer.language if farmer else None) or scene.house.languages[0]
    farmer_id = farmer.id if farmer else None
    work.calls.unread(language, change.asked, text, scene.now, phone, farmer_id)
    if change.passed:
        _call(v.CallForHelp("question", text), scene)


def _pause(change: v.PauseTexts, scene: Scene) -> None:
    if pause(scene.work, scene.phone, scene.now) is not None:
        _call(v.CallForHelp("refused", change.words), scene)


def _resume(change: v.ResumeTexts, scene: Scene) -> None:
    resume(scene.work, scene.phone)


def _set_pace(change: v.SetPace, scene: Scene) -> None:
    set_pace(scene.work, scene.house, scene.farmer(), change.only_work, scene.now)


_CARRY_OUT: Mapping[type, Callable[[Any, Scene], None]] = {
    v.Enrol: _enrol,
    v.Decline: _decline,
    v.AddFarmer: _add_farmer,
    v.SetLanguage: _set_language,
    v.StopTexts: _stop,
    v.AskErasure: _ask_erasure,
    v.StartTexts: _start,
    v.SaveNursery: _save_nursery,
    v.Happened: _happened,
    v.KeepSeason: _keep_season,
    v.AnswerItem: _answer_item,
    v.CallForHelp: _call,
    v.AnswerWarning: _answer_warning,
    v.IssueWarning: _issue,
    v.GiveAllClear: _all_clear,
    v.KeepWarmth: _keep_warmth,
    v.NoteUnread: _note_unread,
    v.TellFarmer: _tell_farmer,
    v.SeeTo: _see_to,
    v.RaiseAlarm: _alarm,
    v.SettleAlarm: _settle,
    v.PauseTexts: _pause,
    v.ResumeTexts: _resume,
    v.SetPace: _set_pace,
}
