"""Templates name only texts that there are: a name that is wrong shows itself only in the case
that needs it."""

import re
from pathlib import Path
from types import ModuleType

import pytest

import assistant.web
from assistant.wording import (
    messages_tasks,
    messages_web,
    messages_web_alerts,
    messages_web_calls,
    messages_web_desk,
    messages_web_door,
    messages_web_groups,
    messages_web_mend,
    messages_web_office,
    messages_web_people,
    messages_web_season,
)

TEMPLATES = sorted((Path(assistant.web.__file__).parent / "templates").glob("*.html"))
_NAMED = re.compile(r"(?<![\w.])([wtsapcdk]|mend|office|also)\.([A-Z][A-Z0-9_]+)")
WORDS: dict[str, ModuleType] = {
    "w": messages_web,
    "t": messages_tasks,
    "s": messages_web_season,
    "a": messages_web_alerts,
    "p": messages_web_people,
    "c": messages_web_calls,
    "d": messages_web_door,
    "k": messages_web_desk,
    "mend": messages_web_mend,
    "also": messages_web_groups,
    "office": messages_web_office,
}


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.name)
def test_a_template_names_only_texts_that_there_are(template: Path) -> None:
    """Of those modules that every template has."""
    named = _NAMED.findall(template.read_text(encoding="utf-8"))
    missing = [f"{m}.{name}" for m, name in named if not hasattr(WORDS[m], name)]
    assert missing == []
