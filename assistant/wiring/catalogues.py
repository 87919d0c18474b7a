"""Opens the translations: gettext catalogues (.po) in memory, so nothing is compiled ahead."""

from functools import lru_cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from pathlib import Path

from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

import assistant
from assistant.wording.render import Catalogue

SOURCE = "en"
_LANGUAGES_KEPT = 32


class CatalogueError(Exception):
    """A catalogue cannot be used; the text says which file and what to do."""


def locales_folder() -> Path:
    """Where the catalogues lie: beside the package in a checkout, inside it once installed."""
    package = Path(assistant.__file__).parent
    places = (package.parent / "locales", package / "_locales")
    found = next((place for place in places if place.is_dir()), None)
    if found is None:
        raise CatalogueError(f"no catalogues at {places[0]}: install the package again")
    return found


def open_catalogue(language: str) -> Catalogue:
    """The catalogue of one language. English is the text of the messages themselves."""
    path = locales_folder() / language / "LC_MESSAGES" / "messages.po"
    if not path.is_file():
        if language == SOURCE:
            return Catalogue(language, NullTranslations())
        raise CatalogueError(f"no catalogue {path}: leave {language} out of NURSERY_LANGUAGES")
    return _parsed(language, path, path.stat().st_mtime_ns)


@lru_cache(maxsize=_LANGUAGES_KEPT)
def _parsed(language: str, path: Path, _changed_at: int) -> Catalogue:
    """Parsing takes a tenth of a second: once, until the file changes."""
    with path.open("rb") as file:
        catalogue = read_po(file, locale=language)
    compiled = BytesIO()
    write_mo(compiled, catalogue)
    compiled.seek(0)
    return Catalogue(language, GNUTranslations(compiled))
