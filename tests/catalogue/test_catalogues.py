"""Every language's catalogue: whole, within its room, and naming words that are understood."""

import csv
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.alphabet import cost, plain
from assistant.dialogue.results import dates_text, quantity_texts
from assistant.reading import Outcome, read_area, read_date, read_germination, read_litres
from assistant.wiring import review as reviewing
from assistant.wiring.catalogues import locales_folder, open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import texts
from assistant.wording.checks import allowed
from assistant.wording.message import Message
from assistant.wording.render import render
from assistant.wording.texts import declared
from tests.catalogue import update

LANGUAGES = reviewing.catalogues()
TODAY = date(2026, 6, 3)  # a Wednesday


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_language_has_every_text_without_a_fault(code: str) -> None:
    """Slots, numbers, words to send, plural forms and room, in one list of what to mend."""
    assert [str(fault) for fault in reviewing.review(code).faults] == []


@pytest.mark.parametrize("code", [code for code in LANGUAGES if code != "en"])
def test_a_catalogue_holds_what_the_code_says_today(code: str) -> None:
    """Running the update would change nothing."""
    path = locales_folder() / code / "LC_MESSAGES" / "messages.po"
    before = path.read_text(encoding="utf-8")
    assert update.updated(code, before) == before


@pytest.mark.parametrize("code", [code for code in LANGUAGES if code != "en"])
def test_a_catalogue_says_who_has_reviewed_it(code: str) -> None:
    """A draft must not pass for a native speaker's work."""
    path = locales_folder() / code / "LC_MESSAGES" / "messages.po"
    head, _, _ = path.read_text(encoding="utf-8").partition("\n\n")
    assert '"X-Reviewed-By: ' in head


def test_every_module_of_texts_is_known_to_the_catalogues() -> None:
    """A new module of texts must not stay untranslated unseen."""
    folder = Path(texts.__file__).parent
    assert {path.stem for path in folder.glob("messages_*.py")} == {
        module.__name__.rpartition(".")[2] for module in texts.MODULES.values()
    }


# --- the examples that texts give ------------------------------------------------------------


@dataclass(frozen=True)
class Example:
    """An answer that a text recommends, and what it must be read as."""

    language: str
    place: str
    example: str
    ask: str
    value: str


def _examples() -> list[Example]:
    with (Path(__file__).parent / "examples.tsv").open(encoding="utf-8") as file:
        rows = csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)
        next(rows)
        return [Example(*row) for row in rows]


EXAMPLES = _examples()
_READERS: dict[str, Callable[..., Any]] = {
    "area": read_area,
    "germination": read_germination,
    "litres": read_litres,
    "date": lambda text, lexicon: read_date(text, lexicon, TODAY),
}


def _shown(value: object) -> str:
    return value.isoformat() if isinstance(value, date) else f"{value:g}"


@pytest.mark.parametrize("row", EXAMPLES, ids=lambda row: f"{row.language} {row.example}")
def test_an_example_in_a_text_is_read_as_it_is_meant(row: Example) -> None:
    """What a text tells people to write stands in it, and is understood without asking back."""
    messages = {text.place: text.message for text in declared()}
    catalogue = open_catalogue(row.language)
    assert row.example in catalogue.translations.gettext(messages[row.place].text)
    reading = _READERS[row.ask](row.example, open_lexicons()[row.language])
    assert (reading.outcome, _shown(reading.value)) == (Outcome.UNDERSTOOD, row.value)


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_language_has_its_examples_tried(code: str) -> None:
    """The five places where a text shows how to answer."""
    places = {row.place for row in EXAMPLES if row.language == code}
    wanted = ("ASK_AREA", "AGAIN_AREA", "ASK_SOWING", "AGAIN_DATE", "HELP_DATE")
    assert places >= {f"talk.{name}" for name in wanted}


# --- real plans ------------------------------------------------------------------------------

FIELDS_HA = (0.01, 0.05, 0.13, 0.4, 0.77, 1, 2.5, 7.3, 39.9)


def _nursery(hectares: float, germination: float, pail_litres: float) -> Nursery:
    sow = TODAY + timedelta(days=int(hectares * 10) % 28)
    return Nursery(
        id=1,
        farmer_id=1,
        label="A",
        name=None,
        inputs=FieldInputs(hectares * 10_000, germination, pail_litres=pail_litres),
        area_typed=f"{hectares} ha",
        germination_known=True,
        sow_date=sow,
        made_on=TODAY,
    )


@pytest.mark.parametrize("code", LANGUAGES)
def test_the_answers_to_real_plans_keep_to_their_room(code: str) -> None:
    """Fields from 100 m2 to 40 ha, poor and good seed, small and large pails."""
    catalogue = open_catalogue(code)
    for hectares in FIELDS_HA:
        for germination, pail in ((0.6, 5.0), (0.613, 22.7), (0.85, 10.0), (1.0, 20.0)):
            nursery = _nursery(hectares, germination, pail)
            says = [*quantity_texts(nursery, TODAY), dates_text(nursery, TODAY)]
            for say in (say for text in says for say in text.says):
                price = cost(plain(render(say, catalogue)))
                assert price.segments <= allowed(say.message.segments, price.encoding)


def test_a_message_is_never_made_outside_the_modules_of_texts() -> None:
    """Every text of the tables of questions and tasks is among the declared ones."""
    known = {id(text.message) for text in declared()}
    from assistant.dialogue.conversations import TABLES

    used: list[Message] = []
    for table in TABLES.values():
        for question in table.questions.values():
            used += [question.asks, question.help, question.again]
            used += [choice.label for choice in question.choices]
    assert [message.text for message in used if id(message) not in known] == []
