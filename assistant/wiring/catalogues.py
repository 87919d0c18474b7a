"""Opens the translations: gettext catalogues (.po), compiled at the first start that sees them.

Nobody compiles them by hand: what is compiled is kept for the next start, as word lists are.
"""

from functools import lru_cache, partial
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from pathlib import Path

import assistant
from assistant.wiring.kept import digest_of, kept
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
    """Once, until the file changes."""
    raw = kept(f"texts-{language}", digest_of([path]), partial(_compiled, language, path), ())
    return Catalogue(language, GNUTranslations(BytesIO(raw)))


def _compiled(language: str, path: Path) -> bytes:
    """A catalogue as GNU gettext reads it."""
    # Only who compiles opens the library.
    from babel.messages.mofile import write_mo  # noqa: PLC0415
    from babel.messages.pofile import read_po  # noqa: PLC0415

    with path.open("rb") as file:
        catalogue = read_po(file, locale=language)
    compiled = BytesIO()
    write_mo(compiled, catalogue)
    return compiled.getvalue()
