"""One turn: a text and what is known, to the answers and the changes.

In this order, and the first that understands the text has it:
1. an officer's texts with a code; a cover that wind took, or that is wanting, while no rain
   is near (`cover_gone.py`); what the ear hears (`ear.py`: somebody hurt, a bed in
   danger, a refusal, a wish for a person); then STOP and START, which hold at any time;
2. the warning that an officer is about to send;
3. the answers to a warning that is not answered yet, and what was open stands again;
4. a plain question is answered (`answers.py`), and what was open stands again; a day that is
   given to the work is read back (`dated.py`);
5. sign-up, where the phone is not enrolled;
6. what the last numbered text that reached the phone was about, a prompt or the question;
7. the other open things, without bare digits; then wishes; then corrections.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.acts import Act
from assistant.agronomy.dangers.rows import RAIN
from assistant.agronomy.life.rows import Ask as TaskAsk
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.accounted import is_accounted
from assistant.dialogue.advised import advised
from assistant.dialogue.after_cry import after_cry
from assistant.dialogue.answering import (
    almost_stop,
    answer_open,
    answer_question,
    extra_word,
    sure_wish,
)
from assistant.dialogue.answers import answered, answered_at_last
from assistant.dialogue.asked_back import asked_back
from assistant.dialogue.chains import chained
from assistant.dialogue.cover_gone import cover_gone, cover_wanting
from assistant.dialogue.dated import dated, dated_surely
from assistant.dialogue.ear import ask_stop, hear_first
from assistant.dialogue.endings_heard import go_on
from assistant.dialogue.endings_steps import read_on
from assistant.dialogue.engine import ask, begin, find
from assistant.dialogue.harvest import harvested
from assistant.dialogue.invited import NAMES as INVITED_TALKS
from assistant.dialogue.invited import asking, was_asked
from assistant.dialogue.items import answer_items, ask_of, once_more, perhaps_done, rained_off
from assistant.dialogue.items_seed import counted_unasked
from assistant.dialogue.labelled import labelled
from assistant.dialogue.lists import choice_names
from assistant.dialogue.matched import asks_how_to_stop
from assistant.dialogue.officer import more_words, officer_turn
from assistant.dialogue.reports import bereaved, filled, of_variety, reported
from assistant.dialogue.sown_after_all import sown_after_all
from assistant.dialogue.told_in_part import part_that_covers, story_tells
from assistant.dialogue.unread import not_understood, unread
from assistant.dialogue.values import (
    AnswerWarning,
    Focus,
    Invited,
    Kept,
    Known,
    NoteUnread,
    ResumeTexts,
    Session,
    Standing,
    Text,
    Turn,
)
from assistant.dialogue.warned import day_work, replies_to, warning_screen
from assistant.dialogue.wishes import WISHES
from assistant.hearing import understand
from assistant.reading import (
    Outcome,
    Wish,
    guess_language,
    is_name,
    language_named,
    read_choice,
    read_confirm,
    read_count,
    read_deeds,
    read_told,
    read_wish,
)
from assistant.reading.told import MOST_CHOICES
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording.day import offer, work_says
from assistant.wording.message import Say

_HEARD = {talks.IF_HURT.name, talks.IF_LOST.name, talks.STOP_ALL.name}
# No other talk before somebody has agreed.
_FIRST = {talks.SIGNUP.name, *INVITED_TALKS, *_HEARD}
LONGEST_FIRST = 160  # characters of a first text whose language is taken from it
SHORT_WORD, OWN_WORDS_ENGLISH = (
    2,
    2,
)  # letters of a word that tells none; words that tell English
LONGEST = 500  # characters of a text that are read; no answer to a question is longer

Stage = Callable[[str, Known], Turn | None]


def turn(text: str, known: Known) -> Turn:
    """What to answer to a text, and what changes."""
    text = " ".join(text[:LONGEST].split())
    known = _still_asked(replace(known, session=e.alive(known.session, known)))
    stages: tuple[Stage, ...] = (
        _officer_text,
        _go_on,
        cover_gone,
        cover_wanting,
        hear_first,
        bereaved,
        _stop_or_start,
        _officer_talk,
        after_cry,
        _warning,
        sown_after_all,
        dated_surely,
        of_variety,
        filled,
        answered,
        _dated,
        _sign_up,
        labelled,
        chained,
        harvested,
        reported,
        answered_at_last,
        _in_focus,
        _elsewhere,
        asked_back,
    )
    for stage in stages:
        found = stage(text, known)
        if found is not None:
            return found
    return _not_read(text, known)


# "Today" is a word to send, for today's work, before it is a day.
_NO_DAY_IN = frozenset({Wish.TODAY, Wish.DATES, Wish.NEXT, Wish.HOW, Wish.HELP, Wish.OFFICER})


def _dated(text: str, known: Known) -> Turn | None:
    return None if sure_wish(text, known) in _NO_DAY_IN else dated(text, known)


def open_line(known: Known) -> Turn:
    """The first screen of a USSD session: what is open, else the menu."""
    known = replace(known, session=e.alive(known.session, known))
    if known.farmer is None or known.farmer.consent_at is None:
        fresh = None if _refused(known) else known.invited
        return _resume_or(asking(fresh, known) if fresh else begin(talks.SIGNUP), known)
    if known.farmer.stopped_at is not None:
        return Turn(known.session, (e.said(m.YOU_ARE_STOPPED()),))
    if known.warning is not None and known.warning.answer is None:
        return Turn(known.session, (warning_screen(known.warning),))
    if _is_resting(known):
        return e.opened(begin(talks.STOP_ALL, held=e.lasting(known.session)), known)
    if (reading := read_on(known)) is not None:
        return reading
    lasting = e.lasting(known.session)
    if lasting is None and not known.nurseries:
        return e.start_plan(None, known)
    if lasting is None and known.items:
        return _open_items(known)
    return _resume_or(begin(talks.MENU), replace(known, session=lasting))


def _open_items(known: Known) -> Turn:
    """The tasks that wait for an answer: one with its sentence, several as a list."""
    if len(known.items) > 1 and sum(ask_of(item) is TaskAsk.DONE for item in known.items) > 1:
        return e.opened(begin(talks.WHICH), known)
    item = known.items[-1]
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        return e.menu(None, known)
    work = day_work(nursery, (item.task,), known)
    says = (*work_says(work), *offer([(nursery, item.task)], known.today))
    return Turn(None, (Text(says, Focus(items=(item,))),))


def _resume_or(fresh: Session, known: Known) -> Turn:
    session = known.session
    if session is None or find(session, talks.TABLES) is None:
        return e.opened(fresh, known)
    return Turn(session, (ask(session, known, talks.TABLES),))


# --- daily texts that rest -------------------------------------------------------------------


def _is_resting(known: Known) -> bool:
    """Whether the daily texts rest until a clear word."""
    farmer = known.farmer
    return farmer is not None and farmer.paused_at is not None and farmer.stopped_at is None


def _still_asked(known: Known) -> Known:
    """ "Shall I stop?" stands as long as the texts rest: no on another day is no to that."""
    if not _is_resting(known) or known.session is not None:
        return known
    return replace(known, session=begin(talks.STOP_ALL))


def _go_on(text: str, known: Known) -> Turn | None:
    """ "Yes, continue", before its yes is taken for one to "shall I stop?"."""
    asked = known.session is not None and known.session.conversation == talks.STOP_ALL.name
    if not (asked or _is_resting(known)):
        return None
    if is_name(text, known.lexicon.choices["go_on"]):
        return go_on(known.session, known)
    return _heard_again(text, known) if _works_on(text, known) else None


def _heard_again(text: str, known: Known) -> Turn:
    """The daily texts go on, and what was told of work is heard as on any day."""
    farmer, session = known.farmer, known.session
    held = session.held if session is not None else None
    awake = replace(farmer, paused_at=None) if farmer is not None else None
    told = turn(text, replace(known, farmer=awake, session=held))
    if any(isinstance(each, NoteUnread) for each in told.changes):
        return go_on(session, known)
    return replace(told, changes=(ResumeTexts(), *told.changes))


_WORKS, _NO_REFUSAL = 0.6, 0.1


def _works_on(text: str, known: Known) -> bool:
    """Whether a text tells of work, and weighs as no refusal: who goes on wants to be told."""
    heard = understand(text, known.ears, known.catalogue.language)
    told = sum(heard.weights[act] for act in (Act.DONE, Act.VALUE, Act.NOTDONE)) >= _WORKS
    answer = read_confirm(text, known.lexicon)
    plain = answer.outcome is Outcome.UNDERSTOOD
    deeds = bool(read_deeds(text, known.lexicon) - {"forgot"})
    return told and deeds and not plain and heard.weights[Act.REFUSE] < _NO_REFUSAL


# --- 1. an officer's texts, stop and start ---------------------------------------------------


def _officer_text(text: str, known: Known) -> Turn | None:
    return officer_turn(text, known, known.desk) if known.desk else None


def _stop_or_start(text: str, known: Known) -> Turn | None:
    stopped = known.farmer is not None and known.farmer.stopped_at is not None
    wish = sure_wish(text, known)
    if wish is Wish.STOP and not stopped and not asks_how_to_stop(text, known):
        return WISHES[wish](text, known)
    paused = known.farmer is not None and known.farmer.paused_at is not None
    if wish is Wish.START and (stopped or paused or known.farmer is None):
        return WISHES[wish](text, known)
    if stopped and not _warns(known):
        return _asked_by_ear(text, known) or Turn(known.session, (e.said(m.YOU_ARE_STOPPED()),))
    return None


def _asked_by_ear(text: str, known: Known) -> Turn | None:
    """The answer of who has stopped, and cried: whether somebody is hurt, or the bed lost."""
    session = known.session
    if session is None or session.conversation not in (talks.IF_HURT.name, talks.IF_LOST.name):
        return None
    return answer_question(text, known, session)


_DEEDS = talks.WARNINGS | {talks.ADDING.name, talks.TELLING.name, talks.TELLING_LATER.name}


def _warns(known: Known) -> bool:
    """Whether this is an officer who is asked whether a warning or words shall go, or somebody
    be enrolled."""
    session = known.session
    return session is not None and session.conversation in _DEEDS


# --- 2. officers -----------------------------------------------------------------------------


def _officer_talk(text: str, known: Known) -> Turn | None:
    """The warning to be confirmed; an officer who is no farmer gets the help for officers."""
    if known.desk is None:
        return None
    session = known.session
    if session is not None and _warns(known):
        farms = known.farmer is not None and known.farmer.stopped_at is None
        passes = farms and sure_wish(text, known) not in (None, Wish.HELP, Wish.BACK)
        return None if passes else answer_question(text, known, session)
    if known.farmer is None and session is None:
        return Turn(None, (e.said(o.OFFICER_HELP(), more_words(known.catalogue.language)),))
    return None


# --- 3. warnings -----------------------------------------------------------------------------


def _warning(text: str, known: Known) -> Turn | None:
    warning = known.warning
    if warning is None or known.farmer is None or _is_asked_by_ear(text, known):
        return None
    said_so = _said_of_warning(text, known, warning)
    if said_so is None or (said_so == _COVERED and _may_tell_of_more(text, known)):
        return _warning_again(text, known, warning)
    answer_code, message = replies_to(warning).noted[said_so]
    change = AnswerWarning(warning.id, answer_code)
    passing = begin(talks.MENU, held=e.lasting(known.session))
    return e.ended(passing, known, e.said(message()), changes=(change,))


_COVERED, _MOST_WORDS, _MAY_BE_DANGER = 0, 4, 0.2


def _may_tell_of_more(text: str, known: Known) -> bool:
    """Whether words beside "covered" may be of water that comes in all the same: that it is
    covered is asked once more rather than kept."""
    weights = understand(text, known.ears, known.catalogue.language).weights
    cries = weights[Act.DANGER] + weights[Act.HARM]
    return len(text.split()) > _MOST_WORDS and cries >= _MAY_BE_DANGER


def _is_asked_by_ear(text: str, known: Known) -> bool:
    """Whether it was asked if somebody is hurt, or the like: a digit answers that first. That
    the texts may stop is asked for days, so that a newer warning goes before it, and words of
    covering always do."""
    if known.session is None or known.session.conversation not in _HEARD:
        return False
    if known.session.conversation != talks.STOP_ALL.name:
        return True
    is_newer = bool(known.focuses) and known.focuses[0].warning_id is not None
    answer = read_confirm(text, known.lexicon).value
    return not is_newer and answer in ("yes", "no")


def _said_of_warning(text: str, known: Known, warning: Standing) -> int | None:
    """0 for covered or done, 1 for help, to a warning that reached the phone; its digits answer
    until they did so once, its words as long as it stands."""
    if all(focus.warning_id != warning.id for focus in known.focuses):
        return None
    names = [choice_names(code, label, known) for code, label in replies_to(warning).choices]
    plain = {name.casefold() for own in names for name in own}
    if warning.answer is not None and text.casefold() not in plain:
        return None
    if _calls_for_help(text, known):
        return 1
    chosen = read_choice(text, names, known.lexicon).value
    if chosen is not None and _is_sure(text, chosen, names, known):
        return chosen
    said_so, sure = _answers_warning(text, known, warning)
    deeds = read_deeds(text, known.lexicon)
    if said_so == "done" and sure:
        told = "cover" in deeds or not (known.items or (deeds and warning.danger == RAIN))
        return 0 if told else None
    if "cover" in deeds and _may_answer_warning(text, known, warning):
        reading = read_told(text, known.lexicon)
        if (reading.value, reading.outcome) == ("done", Outcome.UNDERSTOOD):
            return 0
    perhaps = said_so in (None, "done", "yes") and _is_asked_last(known, warning)
    tells = perhaps and (
        part_that_covers(text, known) or story_tells(text, frozenset({"cover"}), known)
    )
    return 0 if tells else None


def _calls_for_help(text: str, known: Known) -> bool:
    """Whether HELP is a call for it, in any language: "what is this?" is that wish too, and
    calls for nobody."""
    if sure_wish(text, known) is not Wish.HELP:
        calls = (name for words in known.lexicons.values() for name in words.choices["help"])
        return is_name(text, calls)
    heard = understand(text, known.ears, known.catalogue.language)
    return heard.likeliest not in (Act.QUESTION, Act.GREETING)


def _is_sure(text: str, chosen: int, names: Sequence[Sequence[str]], known: Known) -> bool:
    """Whether a choice is all that was said: "almost covered" and "covered tomorrow" are not
    covered, and help is called for wherever its word stands among known ones."""
    if text.strip().isdigit() or is_name(text, names[chosen]):
        return True
    if chosen == 1:
        return is_accounted(text, known)
    reading = read_told(text, known.lexicon)
    return reading.outcome is Outcome.UNDERSTOOD and reading.value in ("done", "yes")


def _answers_warning(text: str, known: Known, warning: Standing) -> tuple[str | None, bool]:
    """Done, yes, no or not yet, where the warning was asked last and no question since; and
    whether the words say that and nothing else."""
    if not _is_asked_last(known, warning):
        return None, False
    reading = read_told(text, known.lexicon)
    return reading.value, reading.outcome is Outcome.UNDERSTOOD


def _is_asked_last(known: Known, warning: Standing) -> bool:
    is_last = bool(known.focuses) and known.focuses[0].warning_id == warning.id
    return warning.answer is None and is_last and e.lasting(known.session) is None


def _may_answer_warning(text: str, known: Known, warning: Standing) -> bool:
    """Whether a reply may be to a warning of which no receipt has told yet: what came before it
    is settled, so that nothing else is open. Too little to note an answer by, but that the bed
    is covered."""
    waits = any(item in known.items for focus in known.focuses for item in focus.items)
    sent = any(focus.warning_id == warning.id for focus in known.focuses)
    if waits or not sent or warning.answer is not None or known.session is not None:
        return False
    return read_told(text, known.lexicon).value is not None


def _warning_again(text: str, known: Known, warning: Standing) -> Turn | None:
    """ "Not yet" or "ok" to a warning, or "done" where a task is open too: its two answers
    once more, since help may be wanted."""
    other_deeds = read_deeds(text, known.lexicon) - {"cover"}
    is_told = _answers_warning(text, known, warning)[0] is not None
    if other_deeds or not (is_told or _may_answer_warning(text, known, warning)):
        return None
    return Turn(known.session, (warning_screen(warning),))


# --- 5. sign-up ------------------------------------------------------------------------------


def _sign_up(text: str, known: Known) -> Turn | None:
    if known.farmer is not None and known.farmer.consent_at is not None:
        return None
    session = known.session
    signing = session is not None and session.conversation in _FIRST
    if session is not None and signing and find(session, talks.TABLES) is not None:
        return answer_question(text, known, session)
    if known.invited is None:
        return _first_words(text, known)
    return _invited(text, known, known.invited)


def _first_words(text: str, known: Known) -> Turn:
    """The sign-up, in the language that the first text names or is surely written in; what
    else it says is kept, and comes back after yes."""
    named = language_named(text)
    code = named or _written_in(text, known)
    kept: dict[str, Kept] = {"language": code} if code in known.languages else {}
    if named is None and (len(text.split()) > 1 or any(sign.isdigit() for sign in text)):
        kept["first"] = text
    turn = e.opened(begin(talks.SIGNUP, None, **kept), known)
    return replace(turn, language=code) if "language" in kept else turn


def _written_in(text: str, known: Known) -> str | None:
    """The language of a first text, by words that are its own; English is mixed in everywhere
    and needs more of them."""
    code = guess_language(text, known.lexicons)
    if code is None or len(text) > LONGEST_FIRST:
        return None
    words = {word.strip(".,!?").casefold() for word in text.split()}
    own = {word for word in words & known.lexicons[code].known if len(word) > SHORT_WORD}
    enough = OWN_WORDS_ENGLISH if code == "en" else 1
    return code if len(own) >= enough or not text.isascii() else None


def _invited(text: str, known: Known, invited: Invited) -> Turn:
    """Somebody else enrolled this farmer: the answer to the text that asks, or the question."""
    if invited.refused:
        if sure_wish(text, known) is Wish.START:
            return e.opened(begin(talks.SIGNUP), known)
        return Turn(None, (e.said(m.NO_CONSENT()),))
    session = asking(invited, known)
    if was_asked(known):
        return answer_question(text, replace(known, session=session), session)
    return e.opened(session, known)


def _refused(known: Known) -> bool:
    return known.invited is not None and known.invited.refused


# --- 6. and 7. what is open ------------------------------------------------------------------


def _open_focus(known: Known) -> Focus | None:
    """The last numbered text that reached the phone and is still open."""
    step = f"{known.session.conversation}.{known.session.step}" if known.session else None
    for focus in known.focuses:
        if focus.question is not None and focus.question == step:
            return focus
        if any(item in known.items for item in focus.items):
            return focus
    return None


def _beside(known: Known) -> Session | None:
    """The talk that stands while a task is answered."""
    return e.lasting(known.session)


def _in_focus(text: str, known: Known) -> Turn | None:
    focus = _open_focus(known)
    if focus is not None and focus.items:
        items = tuple(item for item in focus.items if item in known.items)
        return answer_items(_digit(text, known), known, items, True, _beside(known))
    if known.session is not None and find(known.session, talks.TABLES) is not None:
        return answer_open(text, known, known.session)
    return None


def _digit(text: str, known: Known) -> str:
    """The digit of a choice that was written as a word, "one"."""
    if not text.isalpha():
        return text
    count = read_count(text, known.lexicon)
    is_choice = count.outcome is Outcome.UNDERSTOOD and count.value in range(
        1, MOST_CHOICES + 1
    )
    return f"{count.value:.0f}" if is_choice and count.value is not None else text


def _elsewhere(text: str, known: Known) -> Turn | None:
    """Things that are open beside the one in focus, then wishes."""
    focus = _open_focus(known)
    if focus is not None and focus.items and known.session is not None:
        found = answer_open(text, known, known.session)
        if found is not None:
            return found
    extra = extra_word(text, known)
    if extra is not None:
        return extra
    wish = sure_wish(text, known)
    if wish is not None:
        return rained_off(wish, text, known) or WISHES[wish](text, known)
    return (
        answer_items(text, known, known.items, False, _beside(known))
        or counted_unasked(text, known)
        or _stop_without_marks(text, known)
        or perhaps_done(text, known)
        or _almost_a_wish(text, known)
        or _trouble(text, known)
    )


def _stop_without_marks(text: str, known: Known) -> Turn | None:
    """DUNG is "right", and the STOP word without its marks: asked, where nothing was asked."""
    words = [" ".join(phrase) for phrase in known.lexicon.wishes[Wish.STOP].words]
    tonal = known.lexicon.is_tonal and not known.items
    return ask_stop(text, known) if tonal and is_name(text, words) else None


def _trouble(text: str, known: Known) -> Turn | None:
    """What only the learned reader hears as a trouble: the list of them, and the words go to a
    person; what can be said of it at once goes before."""
    heard = understand(text, known.ears, known.catalogue.language)
    sure = heard.certainty(Act.TROUBLE) is not None and heard.likeliest is Act.TROUBLE
    if not sure or is_accounted(text, known):
        return None
    return advised(text, e.trouble_told(text, known), known)


# --- wishes and words ------------------------------------------------------------------------


def _almost_a_wish(text: str, known: Known) -> Turn | None:
    """A word that is nearly a wish is asked back by showing the menu."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if reading.outcome is not Outcome.CONFIRM:
        return None
    return almost_stop(text, known) or e.menu(known.session, known)


def _not_read(text: str, known: Known) -> Turn:
    note = unread("", text, known)
    says = (not_understood(note, known),)
    if known.session is not None and find(known.session, talks.TABLES) is not None:
        asked = ask(known.session, known, talks.TABLES, *says)
        return Turn(known.session, (asked,), (note,))
    focus = Focus(items=known.items) if known.items else None
    return Turn(None, (Text((*says, *_task_again(known)), focus),), (note,))


def _task_again(known: Known) -> tuple[Say, ...]:
    """Today's task, where it is the only one open: what was not read was probably about it."""
    item = known.items[0] if len(known.items) == 1 else None
    return once_more(item, known) if item and item.day == known.today else ()
