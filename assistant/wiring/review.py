"""Puts a language's catalogue before its checks: the file, its plural rule, its words."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from gettext import GNUTranslations, NullTranslations
from typing import Any

from babel import Locale
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po

from assistant.dialogue.officer import VERBS
from assistant.reading import Lexicon, Outcome, Reading, read_confirm, read_date, read_wish
from assistant.wiring.catalogues import SOURCE, locales_folder, open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording.checks import Language, Table, TextFault, Understands, faults
from assistant.wording.texts import Declared, declared

COUNTS = range(201)
_TODAY = date(2026, 6, 10)  # any day will do to read "tomorrow"


@dataclass(frozen=True)
class Review:
    """A language opened for review, with the faults of its file and of its texts."""

    language: Language
    file_faults: tuple[TextFault, ...]
    text_faults: tuple[TextFault, ...]

    @property
    def faults(self) -> tuple[TextFault, ...]:
        """All of them."""
        return (*self.file_faults, *self.text_faults)


def review(code: str) -> Review:
    """Opens and checks one language. Raises CatalogueError where it has no catalogue."""
    texts = declared()
    language, po = _opened(code)
    of_file = _file_faults(po, texts, language.catalogue.translations) if po else ()
    return Review(language, tuple(of_file), faults(texts, language))


def open_language(code: str) -> Language:
    """Opens one language for review and checks nothing yet."""
    return _opened(code)[0]


def _opened(code: str) -> tuple[Language, Catalog | None]:
    """A language, and its file where it has one."""
    catalogue = open_catalogue(code)
    po = None if code == SOURCE else _read(code)
    return Language(catalogue, _table(po) if po else {}, understands(code)), po


def catalogues() -> tuple[str, ...]:
    """English, and every language that has a catalogue, by code."""
    found = (path.parents[1].name for path in locales_folder().glob("*/LC_MESSAGES/*.po"))
    return (SOURCE, *sorted(found))


def _read(code: str) -> Catalog:
    path = locales_folder() / code / "LC_MESSAGES" / "messages.po"
    with path.open("rb") as file:
        return read_po(file, locale=code)


def _table(po: Catalog) -> Table:
    return {_id(message): _forms(message.string) for message in po if message.id}


def _id(message: Any) -> str:
    return str(message.id if isinstance(message.id, str) else message.id[0])


def _forms(string: Any) -> tuple[str, ...]:
    return (string,) if isinstance(string, str) else tuple(string or ())


# --- the file --------------------------------------------------------------------------------


def _file_faults(
    po: Catalog, texts: Iterable[Declared], translations: NullTranslations
) -> Iterable[TextFault]:
    """Entries that are not settled, and the plural rule."""
    places = {text.message.text: text.place for text in texts}
    for message in po:
        if message.id and message.fuzzy:
            yield TextFault(places.get(_id(message), "?"), "is fuzzy: the English has changed")
        if message.id and _id(message) not in places:
            yield TextFault(_id(message)[:40], "is no longer a text: run the update")
    if po.obsolete:
        yield TextFault("(file)", f"{len(po.obsolete)} obsolete entries: run the update")
    yield from (TextFault("(plural)", what) for what in plural_faults(po.locale, translations))


def plural_faults(locale: Locale | None, translations: NullTranslations) -> Iterable[str]:
    """Where gettext's plural form is not CLDR's category (Unicode CLDR, from Babel).

    Babel's own gettext rule is no help: it gives Hindi the rule of English, and for French an
    operand that Python's gettext refuses.
    """
    if locale is None or not isinstance(translations, GNUTranslations):
        yield "names no language that CLDR knows"
        return
    seen: dict[int, str] = {}
    for count in COUNTS:
        form, category = _form_of(translations, count), locale.plural_form(count)
        if seen.setdefault(form, category) != category:
            yield f"{count} takes form {form}, which was {seen[form]}; CLDR says {category}"
            return
    if len(set(seen.values())) != len(seen):
        yield f"two forms for one category: {seen}"


def _form_of(translations: GNUTranslations, count: int) -> int:
    return int(translations.plural(count))  # type: ignore[attr-defined]


# --- the words -------------------------------------------------------------------------------


def understands(code: str) -> Understands:
    """What words mean to the readers of a language."""
    lexicons = open_lexicons()

    def meanings(phrase: str) -> frozenset[str]:
        return frozenset(_meanings(phrase, lexicons, code))

    return meanings


def _meanings(phrase: str, lexicons: Mapping[str, Lexicon], code: str) -> Iterable[str]:
    wish = _sure(read_wish(phrase, lexicons, code))
    answer = _sure(read_confirm(phrase, lexicons[code], digits=False))
    day = _sure(read_date(phrase, lexicons[code], _TODAY))
    yield from (str(value) for value in (wish, answer) if value is not None)
    if day == _TODAY + timedelta(days=1):
        yield "tomorrow"
    if phrase in VERBS:
        yield phrase


def _sure(reading: Reading[Any]) -> object:
    return reading.value if reading.outcome is Outcome.UNDERSTOOD else None
