"""The ear: a text is read once for what the person means, before any question is asked of it.

Exact rules (`words/*.toml`, one file a language) say what must not depend on a score; the
learned reader (`acts`) hears the rest and only routes. The result is one frozen `Understood`.
"""

from assistant.hearing.asking import Question, Questions
from assistant.hearing.ears import Ears
from assistant.hearing.kinds import Kind
from assistant.hearing.reporting import Idea, Reports
from assistant.hearing.topics import Topic
from assistant.hearing.understood import Certainty, Understood, understand

__all__ = [
    "Certainty",
    "Ears",
    "Idea",
    "Kind",
    "Question",
    "Questions",
    "Reports",
    "Topic",
    "Understood",
    "understand",
]
