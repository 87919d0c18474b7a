"""Templates name only texts that there are: a name that is wrong shows itself only in the case
that needs it."""

import re
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest
from flask import Flask

import assistant.web
from assistant.web.app import PAGES, PARTS
from assistant.web.desk import furnish

ROOM = Path(assistant.web.__file__).parent
TEMPLATES = sorted((ROOM / "templates").glob("*.html"))
_NAMED = re.compile(r"(?<![\w.])([a-z]+)\.([A-Z][A-Z0-9_]+)")


def _words() -> dict[str, ModuleType]:
    """The modules of texts that every template has, by the names it has them under."""
    app = Flask(__name__)
    nobody: Any = SimpleNamespace(say=None, needs_number=None)
    furnish(app, nobody)
    given = app.jinja_env.globals.items()
    return {name: each for name, each in given if isinstance(each, ModuleType)}


WORDS = _words()


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.name)
def test_a_template_names_only_texts_that_there_are(template: Path) -> None:
    """Of those modules that every template has."""
    named = _NAMED.findall(template.read_text(encoding="utf-8"))
    missing = [f"{m}.{x}" for m, x in named if m in WORDS and not hasattr(WORDS[m], x)]
    assert missing == []


def test_every_module_with_pages_is_hung_up() -> None:
    """One that is in neither `PAGES` nor `PARTS` answers nothing, and nobody is told."""
    found = (import_module(f"assistant.web.{each.name}") for each in iter_modules([str(ROOM)]))
    homes = {each.__name__ for each in found if hasattr(each, "pages")}
    assert homes == {pages.__module__ for pages in PAGES} | set(PARTS.values())
